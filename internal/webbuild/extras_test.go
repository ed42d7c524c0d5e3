package webbuild

import (
	"bytes"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The licences are those of everything that is linked, ours first, each once.
func TestLicences(t *testing.T) {
	made, err := Licences(t.Context(), "../..", Solver, Scene).Make()
	if err != nil {
		t.Fatal(err)
	}
	text := string(made)
	for _, part := range []string{"\nWide Berth\n====", "MIT License", "\nThe Go runtime and standard library\n", "\ngithub.com/hajimehoshi/ebiten/v2 v2", "Apache License"} {
		if n := strings.Count(text, part); n == 0 || n > 1 && strings.HasPrefix(part, "\n") {
			t.Errorf("%q is there %d times, want it, and parts once", part, n)
		}
	}
	if ours := strings.Index(text, "MIT License"); ours > strings.Index(text, "\nThe Go runtime") {
		t.Error("our own licence does not stand first")
	}
	if strings.Contains(text, "chromedp") {
		t.Error("the licences name a part that only the tests use")
	}
	dir := t.TempDir()
	write(t, filepath.Join(dir, "go.mod"), "module bare\n")
	write(t, filepath.Join(dir, "main.go"), "package main\nfunc main() {}\n")
	if _, err := Licences(t.Context(), dir, Program{".", "bare.wasm"}).Make(); err == nil || !strings.Contains(err.Error(), "no file with its licence") {
		t.Errorf("a part without a licence: %v, want a sentence", err)
	}
	write(t, filepath.Join(dir, "LICENSE"), "ours")
	write(t, filepath.Join(dir, "public", "vendor", "knot.js"), "export {}")
	write(t, filepath.Join(dir, "public", "vendor", "knot-licence.txt"), "theirs")
	if made, err := Licences(t.Context(), dir, Program{".", "bare.wasm"}).Make(); err != nil || !strings.Contains(string(made), "\nThe script knot.js\n==================\n\ntheirs\n") {
		t.Errorf("with a script of others the licences are %q (%v)", made, err)
	}
}

// The pictures of the build are what the pages say of them.
func TestPictures(t *testing.T) {
	made := map[string][]byte{}
	for _, d := range Pictures {
		content, err := d.Make()
		if err != nil {
			t.Fatalf("%s: %v", d.File, err)
		}
		made[d.File] = content
	}
	for file, want := range map[string][2]int{"preview.png": {1200, 630}, "icon-180.png": {180, 180}, "icon-512.png": {512, 512}} {
		if c, err := png.DecodeConfig(bytes.NewReader(made[file])); err != nil || c.Width != want[0] || c.Height != want[1] {
			t.Errorf("%s is %d by %d (%v), want %v", file, c.Width, c.Height, err, want)
		}
	}
	for _, file := range []string{"poster.svg", "poster-dark.svg"} {
		if len(made[file]) > 20_000 || !bytes.Contains(made[file], []byte("<title>Carriage-house loft</title>")) {
			t.Errorf("%s has %d bytes and begins with %.200q", file, len(made[file]), made[file])
		}
	}
	page, err := os.ReadFile("../../public/index.html")
	if err != nil {
		t.Fatal(err)
	}
	for _, named := range []string{`content="build/preview.png"`, `og:image:width" content="1200"`, `og:image:height" content="630"`, `href="build/icon-180.png"`, `href="build/licences.txt"`} {
		if !strings.Contains(string(page), named) {
			t.Errorf("index.html does not say %s", named)
		}
	}
}
