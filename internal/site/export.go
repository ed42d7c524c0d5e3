package site

import (
	"bytes"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// Export says what a folder for another host is to hold.
type Export struct {
	// Twins has the compressed twins copied too, for hosts that send them.
	Twins bool
	// Address is where the page will stand, for whoever shows links as cards: they do
	// not resolve the preview's address. "" where that is not known.
	Address string
}

// Write copies what Handler would serve of root into a folder, and puts beside it
// what hosts read headers from. Addresses in the page are relative, so the folder
// works wherever it is put.
func (e Export) Write(root fs.FS, dir string) error {
	var pages []string
	err := fs.WalkDir(root, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		_, err = fileName(name)
		_, known := types[path.Ext(strings.TrimSuffix(strings.TrimSuffix(name, ".br"), ".gz"))]
		twin := path.Ext(name) == ".br" || path.Ext(name) == ".gz"
		if err != nil || !known || twin && !e.Twins {
			return nil // nothing of the page's
		}
		content, err := fs.ReadFile(root, name)
		if err != nil {
			return err
		}
		if path.Ext(name) == ".html" {
			pages = append(pages, name)
		}
		if name == "index.html" {
			if content, err = e.addressed(content); err != nil {
				return err
			}
		}
		return put(dir, name, content)
	})
	if err != nil {
		return err
	}
	for name, text := range map[string]string{"_headers": headersFile(pages), ".htaccess": htaccess()} {
		if err := put(dir, name, []byte(text)); err != nil {
			return err
		}
	}
	return nil
}

func put(dir, name string, content []byte) error {
	file := filepath.Join(dir, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		return err
	}
	return os.WriteFile(file, content, 0o644)
}

// previewMeta is how index.html names its preview.
const previewMeta = `<meta property="og:image" content="`

// addressed makes the preview's address whole.
func (e Export) addressed(page []byte) ([]byte, error) {
	if e.Address == "" {
		return page, nil
	}
	base := strings.TrimSuffix(e.Address, "/") + "/"
	if !bytes.Contains(page, []byte(previewMeta)) {
		return nil, fmt.Errorf("index.html names no preview: a line with %s is expected", previewMeta)
	}
	return bytes.Replace(page, []byte(previewMeta),
		[]byte(`<meta property="og:url" content="`+base+"\">\n"+previewMeta+base), 1), nil
}

// caching is what Handler says of every file: names do not change between builds.
const caching = "no-cache"

// sent are the headers of every file in the order of their names.
func sent() [][2]string {
	all := maps.Clone(headers)
	all["Cache-Control"] = caching
	var out [][2]string
	for _, name := range slices.Sorted(maps.Keys(all)) {
		out = append(out, [2]string{name, all[name]})
	}
	return out
}

// headersFile is for hosts that read a file of paths with headers below them. Where
// two paths fit, a browser is sent both policies and holds the page to each: so every
// page has its own, and none stands for all.
func headersFile(pages []string) string {
	var b strings.Builder
	b.WriteString("/*\n")
	for _, h := range sent() {
		if h[0] != policyHeader {
			fmt.Fprintf(&b, "  %s: %s\n", h[0], h[1])
		}
	}
	for _, page := range pages {
		policy := Policy
		if page == Embed {
			policy = EmbedPolicy
		}
		if page == "index.html" {
			fmt.Fprintf(&b, "/\n  %s: %s\n", policyHeader, policy)
		}
		fmt.Fprintf(&b, "/%s\n  %s: %s\n", page, policyHeader, policy)
	}
	fmt.Fprintf(&b, "/*.wasm\n  Content-Type: %s\n", types[".wasm"])
	return b.String()
}

// htaccess is for hosts that read one file of directives in each folder.
func htaccess() string {
	var b strings.Builder
	for _, ext := range slices.Sorted(maps.Keys(types)) {
		kind, _, _ := strings.Cut(types[ext], ";")
		fmt.Fprintf(&b, "AddType %s %s\n", kind, ext)
	}
	b.WriteString("AddDefaultCharset utf-8\nOptions -Indexes\n<IfModule mod_headers.c>\n")
	for _, h := range sent() {
		fmt.Fprintf(&b, "  Header set %s %q\n", h[0], h[1])
	}
	fmt.Fprintf(&b, "  <Files %q>\n    Header set %s %q\n  </Files>\n</IfModule>\n", Embed, policyHeader, EmbedPolicy)
	return b.String()
}
