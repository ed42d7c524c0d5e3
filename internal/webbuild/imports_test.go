package webbuild

import (
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// TestSolverImports keeps out of the solver what would cost a visitor much for
// little; DEVELOPERS.md has the figures and says what to use instead.
func TestSolverImports(t *testing.T) {
	instead := map[string]string{
		"fmt":                           "internal/lean/fmt",
		"encoding/json":                 "internal/lean/json",
		"compress/flate":                "the browser's own, in public/app/link.js",
		"embed":                         "a literal",
		"os":                            "nothing: the solver has no files",
		"time":                          "nothing: the solver has no clock",
		"gonum.org/v1/gonum/spatial/r3": "internal/sim/r3",
		"gonum.org/v1/gonum/mat":        "a few lines of one's own",
	}
	cmd := exec.Command("go", "list", "-deps", "-f", `{{.ImportPath}}: {{join .Imports " "}}`, Solver.Package)
	cmd.Dir = "../.."
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list of the solver's packages: %v", err)
	}
	lines := strings.Split(strings.TrimSpace(string(out)), "\n")
	if len(lines) < 20 {
		t.Fatalf("go list names %d packages, want the solver's dozens", len(lines))
	}
	for _, line := range lines {
		importer, imports, _ := strings.Cut(line, ": ")
		if !strings.HasPrefix(importer, "wideberth/") {
			continue
		}
		for _, pkg := range strings.Fields(imports) {
			if use, banned := instead[pkg]; banned {
				t.Errorf("%s imports %s: use %s", importer, pkg, use)
			}
		}
	}
	for _, pkg := range []string{"wideberth/internal/modeltable", "wideberth/internal/sim/swing/published"} {
		if slices.ContainsFunc(lines, func(l string) bool { return strings.HasPrefix(l, pkg+": ") }) {
			t.Errorf("the solver holds %s: the table is made when the page is built", pkg)
		}
	}
	// What the packages of other people bring along.
	for pkg := range instead {
		if slices.ContainsFunc(lines, func(l string) bool { return strings.HasPrefix(l, pkg+": ") }) {
			t.Errorf("the solver holds %s", pkg)
		}
	}
}

// Pictures without a browser are for the command line: neither program holds them,
// nor the fonts and the rasteriser that they are made with.
func TestNoPicturesInPrograms(t *testing.T) {
	cmd := exec.Command("go", "list", "-deps", Solver.Package, Scene.Package)
	cmd.Dir = "../.."
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	out, err := cmd.Output()
	if err != nil || !strings.Contains(string(out), "wideberth/internal/render/drawing\n") {
		t.Fatalf("go list of the programs' packages: %v, %d bytes", err, len(out))
	}
	for pkg := range strings.Lines(string(out)) {
		if strings.HasPrefix(pkg, "wideberth/internal/picture") || strings.HasPrefix(pkg, "golang.org/x/image") {
			t.Errorf("a program holds %s", strings.TrimSpace(pkg))
		}
	}
}
