package webbuild

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/andybalholm/brotli"
)

// fast is a brotli quality for tests, which look at the plumbing and not at
// the sizes.
const fast = 1

func write(t *testing.T, file, content string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(content), 0o644); err != nil {
		t.Fatal(err)
	}
}

func read(t *testing.T, file string) []byte {
	t.Helper()
	b, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func modTime(t *testing.T, file string) time.Time {
	t.Helper()
	info, err := os.Stat(file)
	if err != nil {
		t.Fatal(err)
	}
	return info.ModTime()
}

// The whole build on the smallest program there is, in a module of its own.
func TestBuild(t *testing.T) {
	root := t.TempDir()
	write(t, filepath.Join(root, "go.mod"), "module tiny\n\ngo 1.26\n")
	write(t, filepath.Join(root, "hello", "main.go"), "package main\n\nfunc main() { println(\"hello\") }\n")
	options := Options{Root: root, Out: "public/build", Cache: ".cache", Quality: fast,
		Programs: []Program{{"./hello", "hello.wasm"}},
		Data:     []Data{{"hello.json", func() ([]byte, error) { return []byte(`{"hello":true}`), nil }}}}
	manifest, err := Build(t.Context(), options)
	if err != nil {
		t.Fatal(err)
	}

	out := filepath.Join(root, "public", "build")
	program := read(t, filepath.Join(out, "hello.wasm"))
	if !bytes.HasPrefix(program, []byte("\x00asm")) {
		t.Errorf("hello.wasm starts with %q, want a WebAssembly program", program[:4])
	}
	for _, file := range []string{"hello.wasm", "hello.json", "wasm_exec.js"} {
		plain := read(t, filepath.Join(out, file))
		br, err := io.ReadAll(brotli.NewReader(bytes.NewReader(read(t, filepath.Join(out, file+".br")))))
		if err != nil || !bytes.Equal(br, plain) {
			t.Errorf("%s.br does not unpack to %s: %v", file, file, err)
		}
		z, err := gzip.NewReader(bytes.NewReader(read(t, filepath.Join(out, file+".gz"))))
		if err != nil {
			t.Fatal(err)
		}
		gz, err := io.ReadAll(z)
		if err != nil || !bytes.Equal(gz, plain) {
			t.Errorf("%s.gz does not unpack to %s: %v", file, file, err)
		}
		built := manifest[file]
		if built.Bytes != len(plain) || built.Gzip == 0 || built.Brotli == 0 || len(built.Hash) != 16 {
			t.Errorf("manifest of %s = %+v, want %d bytes, both twins and a hash", file, built, len(plain))
		}
	}
	var told Manifest
	if err := json.Unmarshal(read(t, filepath.Join(out, "build.json")), &told); err != nil {
		t.Fatal(err)
	}
	if told["hello.wasm"] != manifest["hello.wasm"] {
		t.Errorf("build.json says %+v, want %+v", told["hello.wasm"], manifest["hello.wasm"])
	}

	before := modTime(t, filepath.Join(out, "hello.wasm"))
	if _, err := Build(t.Context(), options); err != nil {
		t.Fatal(err)
	}
	if after := modTime(t, filepath.Join(out, "hello.wasm")); !after.Equal(before) {
		t.Errorf("a second build of the same source rewrote hello.wasm")
	}
}

func TestBuildTellsTheCompilersWords(t *testing.T) {
	root := t.TempDir()
	write(t, filepath.Join(root, "go.mod"), "module tiny\n\ngo 1.26\n")
	write(t, filepath.Join(root, "broken", "main.go"), "package main\n\nfunc main() { missing() }\n")
	_, err := Build(t.Context(), Options{Root: root, Out: "out", Cache: "cache", Quality: fast,
		Programs: []Program{{"./broken", "broken.wasm"}}})
	if err == nil || !strings.Contains(err.Error(), "undefined: missing") {
		t.Errorf("Build of a broken program = %v, want the compiler's message", err)
	}
}

// A program that cannot be made lighter is shipped as it was linked, and said so.
func TestHeavyIsShipped(t *testing.T) {
	var told strings.Builder
	odd := []byte("\x00asm\x01\x00\x00\x00\x0b\x07\x01\x00\x41\x00\x0b\x01x")
	if got := lighter(odd, "odd.wasm", &told); !bytes.Equal(got, odd) {
		t.Errorf("what is shipped is %q", got)
	}
	if want := "warning: odd.wasm stays as heavy as it was linked: the table of functions is not as Go 1.20 and later have it\n"; told.String() != want {
		t.Errorf("it says %q, want %q", told.String(), want)
	}
}

func TestCachedTwin(t *testing.T) {
	cache := t.TempDir()
	plain := []byte(strings.Repeat("a swing is not a clock ", 400))
	low, err := cached(cache, "abc", 1, plain)
	if err != nil {
		t.Fatal(err)
	}
	write(t, cacheFile(cache, "abc", 1), "kept")
	if again, _ := cached(cache, "abc", 1, plain); string(again) != "kept" {
		t.Errorf("the same quality again was compressed anew, want the kept twin")
	}
	best, err := cached(cache, "abc", BestQuality, plain)
	if err != nil {
		t.Fatal(err)
	}
	if string(best) == "kept" || len(best) > len(low) {
		t.Errorf("a better quality gave %d bytes, want a new twin of at most %d", len(best), len(low))
	}
	if got, _ := cached(cache, "abc", 1, plain); !bytes.Equal(got, best) {
		t.Errorf("a lower quality after a better one = %d bytes, want the better twin", len(got))
	}
}

// What is noted of a program counts while it is the same program, and is noted anew of another.
func TestWeigh(t *testing.T) {
	dir := t.TempDir()
	file, note := filepath.Join(dir, "empty.wasm"), filepath.Join(dir, "weighed.json")
	write(t, file, strings.Repeat("nothing is drawn ", 300))
	first, err := weigh(file, dir, note, fast)
	if err != nil || first.Brotli == 0 || first.Brotli >= first.Bytes {
		t.Fatalf("weigh = %+v, %v, want it compressed", first, err)
	}
	write(t, note, strings.Replace(string(read(t, note)), fmt.Sprintf(`"brotli":%d`, first.Brotli), `"brotli":7`, 1))
	if again, err := weigh(file, dir, note, fast); err != nil || again.Brotli != 7 {
		t.Errorf("the same program again = %+v, %v, want what is noted", again, err)
	}
	write(t, file, strings.Repeat("nothing is drawn either ", 300))
	other, err := weigh(file, dir, note, fast)
	if err != nil || other.Brotli == 7 || other.Hash == first.Hash {
		t.Errorf("another program = %+v, %v, want it compressed", other, err)
	}
	var noted Built
	if err := json.Unmarshal(read(t, note), &noted); err != nil || noted != other {
		t.Errorf("noted is %+v (%v), want %+v", noted, err, other)
	}
}

func TestMeasure(t *testing.T) {
	public := t.TempDir()
	write(t, filepath.Join(public, "index.html"), strings.Repeat("<p>page</p>", 100))
	write(t, filepath.Join(public, "scene", "scene.html"), "<!doctype html>")
	write(t, filepath.Join(public, "build", "solver.wasm"), "plain")
	write(t, filepath.Join(public, "build", "solver.wasm.br"), "twin")
	write(t, filepath.Join(public, "build", "scene.wasm"), "plain")
	write(t, filepath.Join(public, "build", "sure.json"), "plain")
	write(t, filepath.Join(public, "build", "preview.png"), "never fetched")
	write(t, filepath.Join(public, "embed.html"), "a page of its own")
	sizes, err := Measure(public, Manifest{
		"solver.wasm": {Bytes: 2_000_000, Brotli: 500_000},
		"scene.wasm":  {Bytes: 9_000_000, Brotli: 1_800_000},
		"sure.json":   {Bytes: 40_000, Brotli: 5_000},
	}, 1_500_000)
	if err != nil {
		t.Fatal(err)
	}
	if len(sizes.Files) != 5 {
		t.Errorf("measured %d files, want 5: no twins and nothing of other pages", len(sizes.Files))
	}
	if page := sizes.FirstVerdict - 500_000; page <= 0 || page > 200 {
		t.Errorf("the page counts %d bytes beside the solver, want it compressed to 1–200", page)
	}
	if rest := sizes.FirstVisit - sizes.FirstVerdict - 1_805_000; rest <= 0 || rest > 30 {
		t.Errorf("the scene counts %d bytes beside its program and the table, want scene.html only", rest)
	}
	if sizes.SceneRatio != 1.2 {
		t.Errorf("scene ratio = %v, want 1.2", sizes.SceneRatio)
	}
	if over := sizes.Check(); len(over) != 0 {
		t.Errorf("Check() = %q, want nothing over budget", over)
	}
}

// What comes with a sheet of its own is counted apart from a visit.
func TestMeasureAsked(t *testing.T) {
	public := t.TempDir()
	write(t, filepath.Join(public, "index.html"), "x")
	write(t, filepath.Join(public, "build", "builder.wasm"), "plain")
	write(t, filepath.Join(public, "builder", "builder.js"), "x")
	sizes, err := Measure(public, Manifest{"builder.wasm": {Bytes: 4_000_000, Brotli: 700_000}}, 0)
	if err != nil {
		t.Fatal(err)
	}
	if sizes.Asked != 700_001 || sizes.FirstVisit != 1 || sizes.FirstVerdict != 1 {
		t.Errorf("%d with a sheet, %d a visit, %d before the verdict; want 700001, and the page's one byte", sizes.Asked, sizes.FirstVisit, sizes.FirstVerdict)
	}
}

func TestCheckBudgets(t *testing.T) {
	tests := []struct {
		name  string
		sizes Sizes
		want  string
	}{
		{"verdict", Sizes{FirstVerdict: FirstVerdictBudget + 1}, "before the first verdict 900001 bytes are transferred, 1 more than the budget of 900000"},
		{"visit", Sizes{FirstVisit: FirstVisitBudget + 20}, "a first visit transfers 3000020 bytes, 20 more than the budget of 3000000"},
		{"sheets", Sizes{Asked: AskedBudget + 5}, "the sheets Build and Projector transfer 900005 bytes, 5 more than the budget of 900000"},
		{"scene", Sizes{SceneRatio: 1.3}, "the scene's program is 1.300 times the empty engine program, over the budget of 1.25"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := tt.sizes.Check()
			if len(got) != 1 || got[0] != tt.want {
				t.Errorf("Check() = %q, want %q", got, tt.want)
			}
		})
	}
}

func TestBuildTellsWhatCannotBeMade(t *testing.T) {
	_, err := Build(t.Context(), Options{Root: t.TempDir(), Out: "out", Cache: "cache", Quality: fast,
		Data: []Data{{"sums.json", func() ([]byte, error) { return nil, errors.New("the sums do not come out") }}}})
	if err == nil || err.Error() != "making sums.json: the sums do not come out" {
		t.Errorf("Build of data that cannot be made = %v, want its name and why", err)
	}
}
