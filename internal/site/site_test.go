package site

import (
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"wideberth/internal/fuzzed"
)

var (
	built = time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC)
	tree  = fstest.MapFS{
		"index.html":           {Data: []byte("<!doctype html>page"), ModTime: built},
		"js/app.js":            {Data: []byte("export {}"), ModTime: built},
		"build/solver.wasm":    {Data: []byte("plain solver"), ModTime: built},
		"build/solver.wasm.br": {Data: []byte("br"), ModTime: built.Add(time.Second)},
		"build/solver.wasm.gz": {Data: []byte("gz"), ModTime: built.Add(time.Second)},
		"build/old.wasm":       {Data: []byte("newer than its twin"), ModTime: built.Add(time.Hour)},
		"build/old.wasm.br":    {Data: []byte("stale"), ModTime: built},
		".hidden.txt":          {Data: []byte("hidden"), ModTime: built},
		"notes.xyz":            {Data: []byte("unknown type"), ModTime: built},
	}
)

func get(t *testing.T, h http.Handler, method, target string, header map[string]string) *http.Response {
	t.Helper()
	req := httptest.NewRequest(method, "http://localhost/", nil)
	req.URL.Path = target // as a hostile client could send it, not as a library would clean it
	for k, v := range header {
		req.Header.Set(k, v)
	}
	rec := httptest.NewRecorder()
	h.ServeHTTP(rec, req)
	return rec.Result()
}

func body(t *testing.T, res *http.Response) string {
	t.Helper()
	b, err := io.ReadAll(res.Body)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func TestHandlerFiles(t *testing.T) {
	tests := []struct {
		name, method, path, accept string
		status                     int
		contentType, encoding      string
		body                       string
	}{
		{"root is the page", "GET", "/", "", 200, "text/html; charset=utf-8", "", "<!doctype html>page"},
		{"module", "GET", "/js/app.js", "", 200, "text/javascript; charset=utf-8", "", "export {}"},
		{"wasm plain", "GET", "/build/solver.wasm", "", 200, "application/wasm", "", "plain solver"},
		{"wasm brotli", "GET", "/build/solver.wasm", "gzip, deflate, br", 200, "application/wasm", "br", "br"},
		{"wasm gzip", "GET", "/build/solver.wasm", "gzip", 200, "application/wasm", "gzip", "gz"},
		{"brotli refused", "GET", "/build/solver.wasm", "br;q=0, gzip", 200, "application/wasm", "gzip", "gz"},
		{"anything goes", "GET", "/build/solver.wasm", "*", 200, "application/wasm", "br", "br"},
		{"all refused", "GET", "/build/solver.wasm", "*;q=0", 200, "application/wasm", "", "plain solver"},
		{"stale twin", "GET", "/build/old.wasm", "br", 200, "application/wasm", "", "newer than its twin"},
		{"no twin", "GET", "/js/app.js", "br, gzip", 200, "text/javascript; charset=utf-8", "", "export {}"},
		{"twin by its own name", "GET", "/build/solver.wasm.br", "", 404, "text/plain; charset=utf-8", "", "no such page\n"},
		{"folder with slash", "GET", "/build/", "", 404, "text/plain; charset=utf-8", "", "no such page\n"},
		{"folder without slash", "GET", "/build", "", 404, "text/plain; charset=utf-8", "", "no such page\n"},
		{"missing", "GET", "/nothing.js", "", 404, "text/plain; charset=utf-8", "", "no such page\n"},
		{"hidden", "GET", "/.hidden.txt", "", 404, "text/plain; charset=utf-8", "", "no such page\n"},
		{"unknown type", "GET", "/notes.xyz", "", 404, "text/plain; charset=utf-8", "", "no such page\n"},
		{"parent", "GET", "/../go.mod", "", 404, "text/plain; charset=utf-8", "", "no such page\n"},
		{"parent inside", "GET", "/js/../../go.mod", "", 404, "text/plain; charset=utf-8", "", "no such page\n"},
		{"backslash", "GET", `/js\..\index.html`, "", 404, "text/plain; charset=utf-8", "", "no such page\n"},
		{"double slash", "GET", "//index.html", "", 404, "text/plain; charset=utf-8", "", "no such page\n"},
		{"nul byte", "GET", "/index.html\x00", "", 404, "text/plain; charset=utf-8", "", "no such page\n"},
		{"post", "POST", "/", "", 405, "text/plain; charset=utf-8", "", "only GET and HEAD are answered here\n"},
		{"head", "HEAD", "/build/solver.wasm", "br", 200, "application/wasm", "br", ""},
	}
	h := Handler(tree)
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			res := get(t, h, tt.method, tt.path, map[string]string{"Accept-Encoding": tt.accept})
			if res.StatusCode != tt.status {
				t.Errorf("status = %d, want %d", res.StatusCode, tt.status)
			}
			if got := res.Header.Get("Content-Type"); got != tt.contentType {
				t.Errorf("Content-Type = %q, want %q", got, tt.contentType)
			}
			if got := res.Header.Get("Content-Encoding"); got != tt.encoding {
				t.Errorf("Content-Encoding = %q, want %q", got, tt.encoding)
			}
			if got := body(t, res); got != tt.body {
				t.Errorf("body = %q, want %q", got, tt.body)
			}
			for name, want := range headers {
				if got := res.Header.Get(name); got != want {
					t.Errorf("%s = %q, want %q", name, got, want)
				}
			}
		})
	}
}

func TestHandlerRevalidates(t *testing.T) {
	h := Handler(tree)
	first := get(t, h, "GET", "/build/solver.wasm", map[string]string{"Accept-Encoding": "br"})
	if got := first.Header.Get("Content-Length"); got != "2" {
		t.Errorf("Content-Length of the twin = %q, want 2", got)
	}
	if got := first.Header.Get("Vary"); got != "Accept-Encoding" {
		t.Errorf("Vary = %q, want Accept-Encoding", got)
	}
	tag := first.Header.Get("ETag")
	again := get(t, h, "GET", "/build/solver.wasm", map[string]string{"Accept-Encoding": "br", "If-None-Match": tag})
	if again.StatusCode != http.StatusNotModified {
		t.Errorf("second visit with ETag %s = %d, want 304", tag, again.StatusCode)
	}
	other := get(t, h, "GET", "/build/solver.wasm", map[string]string{"If-None-Match": tag})
	if other.StatusCode != http.StatusOK {
		t.Errorf("plain file with the twin's ETag = %d, want 200", other.StatusCode)
	}
}

// A symbolic link that leads out of the folder must not be followed when the
// handler gets an os.Root's FS, as the server gives it.
func TestHandlerKeepsInside(t *testing.T) {
	dir := t.TempDir()
	secret := filepath.Join(dir, "secret.txt")
	public := filepath.Join(dir, "public")
	for _, err := range []error{
		os.WriteFile(secret, []byte("secret"), 0o600),
		os.Mkdir(public, 0o755),
		os.Symlink(secret, filepath.Join(public, "link.txt")),
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
	root, err := os.OpenRoot(public)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	res := get(t, Handler(root.FS()), "GET", "/link.txt", nil)
	if got := body(t, res); res.StatusCode == http.StatusOK || strings.Contains(got, "secret") {
		t.Errorf("GET /link.txt = %d %q, want an error without the file's text", res.StatusCode, got)
	}
	if err := os.WriteFile(filepath.Join(public, "index.html"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for name, path := range map[string]string{"a file as a folder": "/index.html/", "a very long name": "/" + strings.Repeat("a", 5000) + ".js", "a link out": "/link.txt"} {
		if res := get(t, Handler(root.FS()), "GET", path, nil); res.StatusCode != http.StatusNotFound {
			t.Errorf("%s: %d, want 404", name, res.StatusCode)
		}
	}
}

func TestAccepts(t *testing.T) {
	tests := []struct {
		header, encoding string
		want             bool
	}{
		{"", "br", false},
		{"br", "br", true},
		{"BR", "br", true},
		{"gzip;q=1.0, br ; q=0.1", "br", true},
		{"br;q=0.000", "br", false},
		{"br;q=nonsense", "br", false},
		{"br;level=5", "br", false},
		{"*", "gzip", true},
		{"*;q=0, gzip", "gzip", true},
		{"gzip;q=0, *", "gzip", false},
		{"brotli", "br", false},
	}
	for _, tt := range tests {
		if got := accepts(tt.header, tt.encoding); got != tt.want {
			t.Errorf("accepts(%q, %q) = %t, want %t", tt.header, tt.encoding, got, tt.want)
		}
	}
}

func FuzzFileName(engine *testing.F) {
	f := fuzzed.New(engine)
	for _, s := range []string{"/", "/index.html", "/../go.mod", "//x", "/a/./b", "/a\\b", "/.git/config", "/a/..", ""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		name, err := fileName(s)
		if err != nil {
			return
		}
		if !filepath.IsLocal(name) || strings.Contains(name, "/.") || strings.HasPrefix(name, ".") {
			t.Errorf("fileName(%q) = %q, want an error: it leaves the folder or names a hidden file", s, name)
		}
	})
}
