// Package webbuild makes what the page loads from public/build: the three
// WebAssembly programs, the loader script of the Go version that compiled them,
// the table that says how sure the model is, compressed twins of each, files.js, by
// which the page is kept for use without a network, and build.json with sizes, which the page needs for its progress bars (a
// compressed answer does not say how long it is when unpacked). It also
// measures what a visitor has to transfer and holds that to the budgets.
package webbuild

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"wideberth/internal/modeltable"
	"wideberth/internal/webbuild/strip"
)

// Program is one WebAssembly program: the package it is built from, relative
// to the module, and the name of its file.
type Program struct {
	Package, File string
}

var (
	// Solver computes the answer; the page cannot speak without it.
	Solver = Program{"./wasm/solver", "solver.wasm"}
	// Scene draws the room and the swing; it comes after the answer.
	Scene = Program{"./wasm/scene", "scene.wasm"}
	// Builder works out the sheets Build and Projector; it is fetched when one of them
	// is opened.
	Builder = Program{"./wasm/builder", "builder.wasm"}
	// Empty is the engine drawing nothing. It is never shipped: it is the
	// yardstick that the scene's size is held against.
	Empty = Program{"./internal/webbuild/empty", "empty.wasm"}
)

// Data is a file that is worked out rather than compiled.
type Data struct {
	File string
	Make func() ([]byte, error)
}

// Sureness is the model beside every measured figure. The page fetches it when
// somebody asks how sure it is.
var Sureness = Data{"sure.json", modeltable.JSON}

// Built describes one file of the build, as build.json has it. Sizes in bytes.
type Built struct {
	Bytes  int    `json:"bytes"`
	Gzip   int    `json:"gzip"`
	Brotli int    `json:"brotli"`
	Hash   string `json:"hash"` // first 16 hex digits of the SHA-256
}

// Manifest is build.json: file name to what is known of it.
type Manifest map[string]Built

// Options says what to build and where to put it.
type Options struct {
	Root     string    // folder of go.mod
	Out      string    // folder to write to, relative to Root
	Cache    string    // folder that keeps compressed twins between builds, relative to Root
	Programs []Program // what to compile
	Data     []Data    // what to work out
	Quality  int       // brotli quality, 0 to 11; a cached twin of a higher one is taken too
}

// Build compiles the programs, works out the data, copies the loader script, and
// writes the twins and build.json. A file that did not change is left untouched,
// so that browsers keep their copy and twins stay valid. The folder that Out lies in
// is the page's: the list of its files comes last.
func Build(ctx context.Context, o Options) (Manifest, error) {
	out := filepath.Join(o.Root, o.Out)
	if err := os.MkdirAll(out, 0o755); err != nil {
		return nil, err
	}
	var files []string
	for _, p := range o.Programs {
		if err := compile(ctx, o.Root, p, filepath.Join(out, p.File)); err != nil {
			return nil, err
		}
		files = append(files, p.File)
	}
	for _, d := range o.Data {
		content, err := d.Make()
		if err != nil {
			return nil, fmt.Errorf("making %s: %w", d.File, err)
		}
		if err := install(filepath.Join(out, d.File), content); err != nil {
			return nil, err
		}
		files = append(files, d.File)
	}
	if err := copyLoader(ctx, filepath.Join(out, loader)); err != nil {
		return nil, err
	}
	files = append(files, loader)

	manifest, err := compressAll(out, filepath.Join(o.Root, o.Cache), files, o.Quality)
	if err != nil {
		return nil, err
	}
	text, err := json.MarshalIndent(manifest, "", "  ")
	if err != nil {
		return nil, err
	}
	if err := install(filepath.Join(out, "build.json"), append(text, '\n')); err != nil {
		return nil, err
	}
	return manifest, ListFiles(filepath.Dir(out))
}

// withoutInlining are the packages whose helpers are called rather than copied into
// every caller: of ours those that make sentences, JSON and answers rather than
// swings, of Go's the runtime and what text is made with. It saves some 75 kB of the
// solver; what it costs is in DEVELOPERS.md.
var withoutInlining = []string{
	"wideberth/internal/solver/protocol", "wideberth/internal/solver/reply", "wideberth/internal/solver/words", "wideberth/internal/form", "wideberth/internal/units",
	"wideberth/internal/sim/plan", "wideberth/internal/lean/json", "wideberth/internal/lean/fmt",
	"wideberth/internal/render/scene/wire", "wideberth/internal/render/scene/record",
	"wideberth/internal/sim/remedy", "wideberth/internal/sim/ball/enclosure", "wideberth/internal/sim/fit", "wideberth/internal/sim/maps", "wideberth/internal/sim/contour", "wideberth/internal/sim/body",
	"wideberth/internal/sim/swing/pendulum", "wideberth/internal/sim/ode", "wideberth/internal/sim/nearest", "wideberth/internal/sim/rules", "wideberth/wasm/solver",
	"runtime", "reflect", "internal/strconv", "unicode/utf8", "internal/reflectlite", "syscall/js", "bytes", "strings",
	"wideberth/internal/sim/ball", "wideberth/internal/lean/halton", "unicode", "errors", "iter", "sync", "sync/atomic", "internal/sync",
	"internal/bytealg", "internal/runtime/maps", "internal/runtime/atomic", "internal/runtime/sys", "internal/abi", "math/bits",
}

// compile builds one program for the browser, without symbol tables, the
// machine's paths or the state of version control: the same source gives the
// same bytes.
func compile(ctx context.Context, root string, p Program, file string) error {
	dir, err := os.MkdirTemp("", "webbuild")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	fresh := filepath.Join(dir, p.File)
	args := []string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", fresh}
	if p == Solver || p == Builder {
		for _, pkg := range withoutInlining {
			args = append(args, "-gcflags="+pkg+"=-l")
		}
	}
	cmd := exec.CommandContext(ctx, "go", append(args, p.Package)...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if report, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("building %s for the browser: %w\n%s", p.Package, err, bytes.TrimSpace(report))
	}
	program, err := os.ReadFile(fresh)
	if err != nil {
		return err
	}
	return install(file, lighter(program, p.File, os.Stderr))
}

// lighter is a program without what no visitor needs. One that a newer Go lays out in
// a way we do not know stays as it is: it works, and size says whether it is too large.
func lighter(program []byte, name string, warn io.Writer) []byte {
	bare, err := strip.Program(program)
	if err != nil {
		fmt.Fprintf(warn, "warning: %s stays as heavy as it was linked: %v\n", name, err)
		return program
	}
	return bare
}

// loader is the script that starts a Go program in a browser.
const loader = "wasm_exec.js"

// copyLoader takes the loader from the Go installation that compiles: it only
// fits programs of its own version, so it is never kept in the repository.
func copyLoader(ctx context.Context, file string) error {
	goroot, err := exec.CommandContext(ctx, "go", "env", "GOROOT").Output()
	if err != nil {
		return fmt.Errorf("asking go for its GOROOT: %w", err)
	}
	script, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(goroot)), "lib", "wasm", loader))
	if err != nil {
		return fmt.Errorf("copying the loader of this Go version: %w", err)
	}
	return install(file, script)
}

// install writes a file in one step, and only when its content changes.
func install(file string, content []byte) error {
	if old, err := os.ReadFile(file); err == nil && bytes.Equal(old, content) {
		return nil
	}
	tmp, err := os.CreateTemp(filepath.Dir(file), ".new-*")
	if err != nil {
		return err
	}
	defer os.Remove(tmp.Name())
	_, err = tmp.Write(content)
	if closeErr := tmp.Close(); err == nil {
		err = closeErr
	}
	if err == nil {
		err = os.Chmod(tmp.Name(), 0o644)
	}
	if err == nil {
		err = os.Rename(tmp.Name(), file)
	}
	return err
}

// Yardstick builds the empty engine program into the cache folder and returns its sizes
// at the best quality.
func Yardstick(ctx context.Context, root, cache string) (Built, error) {
	dir := filepath.Join(root, cache)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return Built{}, err
	}
	file := filepath.Join(dir, Empty.File)
	if err := compile(ctx, root, Empty, file); err != nil {
		return Built{}, err
	}
	return weigh(file, dir, filepath.Join(root, weighed), BestQuality)
}

// weighed keeps the sizes of the empty engine program. It changes with the version of Go
// or of the engine and with what strip leaves only, and compressing it to know what it weighs would take half a
// minute of every clean build.
const weighed = "internal/webbuild/empty/weighed.json"

// weigh returns the sizes of file, from the note where that is of the same bytes; else
// file is compressed and the note written anew.
func weigh(file, cache, note string, quality int) (Built, error) {
	plain, err := os.ReadFile(file)
	if err != nil {
		return Built{}, err
	}
	var noted Built
	if text, err := os.ReadFile(note); err == nil && json.Unmarshal(text, &noted) == nil && noted.Hash == short(hashOf(plain)) {
		return noted, nil
	}
	built, err := compressFile(file, cache, quality)
	if err != nil {
		return Built{}, err
	}
	text, err := json.Marshal(built)
	if err != nil {
		return Built{}, err
	}
	return built, install(note, append(text, '\n'))
}
