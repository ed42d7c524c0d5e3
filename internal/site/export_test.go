package site

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// What is exported is what is served, twins if they are asked for, and files for
// hosts that take headers; nothing hidden and nothing of another kind.
func TestExport(t *testing.T) {
	for _, c := range []struct {
		name  string
		twins bool
		want  []string
	}{
		{"with twins", true, []string{".htaccess", "_headers", "build/old.wasm", "build/old.wasm.br", "build/solver.wasm", "build/solver.wasm.br", "build/solver.wasm.gz", "index.html", "js/app.js"}},
		{"without", false, []string{".htaccess", "_headers", "build/old.wasm", "build/solver.wasm", "index.html", "js/app.js"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "new", "folder")
			if err := (Export{Twins: c.twins}).Write(tree, dir); err != nil {
				t.Fatal(err)
			}
			var got []string
			err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
				if err == nil && !d.IsDir() {
					got = append(got, name)
				}
				return err
			})
			if err != nil || !slices.Equal(got, c.want) {
				t.Errorf("exported %q (%v), want %q", got, err, c.want)
			}
			if page, err := os.ReadFile(filepath.Join(dir, "index.html")); err != nil || string(page) != "<!doctype html>page" {
				t.Errorf("the page = %q (%v), want it as it was", page, err)
			}
		})
	}
}

// The preview's address is made whole where the page's own is known.
func TestExportAddress(t *testing.T) {
	page := fstest.MapFS{"index.html": {Data: []byte(`<meta property="og:image" content="build/preview.png">`)}}
	dir := t.TempDir()
	if err := (Export{Address: "https://example.org/golf"}).Write(page, dir); err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(filepath.Join(dir, "index.html"))
	if err != nil {
		t.Fatal(err)
	}
	want := `<meta property="og:url" content="https://example.org/golf/">` + "\n" + `<meta property="og:image" content="https://example.org/golf/build/preview.png">`
	if string(got) != want {
		t.Errorf("the page = %s, want %s", got, want)
	}
	if err := (Export{Address: "https://example.org"}).Write(tree, t.TempDir()); err == nil || !strings.Contains(err.Error(), "preview") {
		t.Errorf("a page without a preview: %v, want a sentence about it", err)
	}
}

// The files for other hosts say what our own server says.
func TestSampleHeaders(t *testing.T) {
	embed := fstest.MapFS{"index.html": tree["index.html"], Embed: {Data: []byte("embed")}}
	h := Handler(embed)
	for _, file := range []struct{ name, text, line string }{
		{"_headers", headersFile([]string{Embed, "index.html"}), "  %: $\n"},
		{".htaccess", htaccess(), `Header set % "$"` + "\n"},
	} {
		for _, page := range []string{"/", "/" + Embed} {
			for name, values := range get(t, h, "GET", page, nil).Header {
				if slices.Contains([]string{"Content-Type", "Vary", "Etag", "Content-Length", "Accept-Ranges", "Last-Modified"}, name) {
					continue // of the file, not of the site
				}
				line := strings.NewReplacer("%", name, "$", values[0]).Replace(file.line)
				if !strings.Contains(file.text, line) {
					t.Errorf("%s does not say %q, which our server says of %s", file.name, line, page)
				}
			}
		}
	}
	if policy := get(t, h, "GET", "/", nil).Header.Get("Content-Security-Policy"); !strings.HasSuffix(policy, "frame-ancestors 'self'") {
		t.Errorf("the page's policy = %q, want others kept from framing it", policy)
	}
	if policy := get(t, h, "GET", "/"+Embed, nil).Header.Get("Content-Security-Policy"); !strings.HasSuffix(policy, "frame-ancestors *") {
		t.Errorf("the embed's policy = %q, want anybody to be let frame it", policy)
	}
}
