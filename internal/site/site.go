// Package site serves the built page. It is a plain static file server with
// four things the standard one lacks: it sends the .br or .gz twin that the
// build wrote beside a file when the browser takes it, it names the content
// type of every file itself (a WebAssembly program only streams as
// application/wasm), it sets the security headers the page is written for, and
// it lists no directory.
//
// Nothing here is needed in production: any static host will do.
package site

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net/http"
	"path"
	"strconv"
	"strings"
	"time"
)

// policy is what the pages' meta tags say too. A browser holds a page to both.
const policy = "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob:; " +
	"worker-src 'self' blob:; object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors "

// Policies of content: what a meta tag cannot say is who may frame a page.
const (
	Policy      = policy + "'self'" // the page frames its scene, and shows what its embed looks like
	EmbedPolicy = policy + "*"
)

// Embed is the page that anybody may frame.
const Embed = "embed.html"

const policyHeader = "Content-Security-Policy"

// headers are sent with every answer, errors too.
var headers = map[string]string{
	policyHeader:             Policy,
	"X-Content-Type-Options": "nosniff",
	// A plan travels in the fragment of the address, which no browser sends;
	// no-referrer keeps the rest of the address at home as well.
	"Referrer-Policy":    "no-referrer",
	"Permissions-Policy": "camera=(), microphone=(), geolocation=(), payment=(), usb=()",
	// A frame in a sandbox has no origin: to it every file is another host's. There is
	// nothing here that is not public.
	"Access-Control-Allow-Origin": "*",
}

// types names what each extension is. The list is ours, because the operating
// system's own list differs between machines and wasm is missing from some.
var types = map[string]string{
	".css":         "text/css; charset=utf-8",
	".html":        "text/html; charset=utf-8",
	".ico":         "image/x-icon",
	".js":          "text/javascript; charset=utf-8",
	".json":        "application/json",
	".mjs":         "text/javascript; charset=utf-8",
	".png":         "image/png",
	".svg":         "image/svg+xml",
	".txt":         "text/plain; charset=utf-8",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
	".woff2":       "font/woff2",
}

// Handler serves the files of root. Use an os.Root's FS where the folder may
// hold symbolic links, so that none of them leads out of it.
//
// The address of a folder answers with its index.html, or 404. Files whose name
// starts with a dot, files of a type this package does not know and the twins
// themselves answer 404. A twin older than its file is stale and not used.
func Handler(root fs.FS) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		for name, value := range headers {
			w.Header().Set(name, value)
		}
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "only GET and HEAD are answered here", http.StatusMethodNotAllowed)
			return
		}
		if err := serve(w, r, root); errors.Is(err, fs.ErrNotExist) {
			http.Error(w, "no such page", http.StatusNotFound)
		} else if err != nil {
			http.Error(w, "the file could not be read", http.StatusInternalServerError)
		}
	})
}

// serve answers one request. It returns an error only while nothing has been
// sent yet.
func serve(w http.ResponseWriter, r *http.Request, root fs.FS) error {
	name, err := fileName(r.URL.Path)
	if err != nil {
		return err
	}
	contentType, known := types[path.Ext(name)]
	if !known {
		return fmt.Errorf("%s: unknown type: %w", name, fs.ErrNotExist)
	}
	plain, err := stat(root, name)
	if err != nil {
		return err
	}

	chosen, encoding := name, ""
	for _, twin := range twins {
		if !accepts(r.Header.Get("Accept-Encoding"), twin.encoding) {
			continue
		}
		if info, err := stat(root, name+twin.suffix); err == nil && !info.ModTime().Before(plain.ModTime()) {
			chosen, encoding = name+twin.suffix, twin.encoding
			break
		}
	}
	file, err := root.Open(chosen)
	if err != nil {
		return err
	}
	defer file.Close()
	content, seekable := file.(io.ReadSeeker)
	if !seekable {
		return fmt.Errorf("%s cannot be read from the middle", chosen)
	}
	info, err := file.Stat()
	if err != nil {
		return err
	}

	h := w.Header()
	if name == Embed {
		h.Set(policyHeader, EmbedPolicy)
	}
	h.Set("Content-Type", contentType)
	h.Set("Vary", "Accept-Encoding")
	// File names do not change between builds, so every use asks whether the
	// copy at hand is still good; the answer is one small 304.
	h.Set("Cache-Control", caching)
	h.Set("ETag", etag(info, encoding))
	if encoding != "" {
		h.Set("Content-Encoding", encoding)
		h.Set("Content-Length", strconv.FormatInt(info.Size(), 10))
	}
	http.ServeContent(w, r, name, time.Time{}, content)
	return nil
}

// fileName turns the path of an address into the name of a file, or fs.ErrNotExist.
func fileName(urlPath string) (string, error) {
	name := strings.TrimPrefix(urlPath, "/")
	if name == "" || strings.HasSuffix(name, "/") {
		name += "index.html"
	}
	if !fs.ValidPath(name) || strings.ContainsAny(name, "\\\x00") {
		return "", fmt.Errorf("%q is no file name: %w", urlPath, fs.ErrNotExist)
	}
	for part := range strings.SplitSeq(name, "/") {
		if strings.HasPrefix(part, ".") {
			return "", fmt.Errorf("%q is hidden: %w", urlPath, fs.ErrNotExist)
		}
	}
	return name, nil
}

// stat is fs.Stat that takes only plain files: what cannot be one, a name too long, a
// folder that is a file, a way out of the root, is not there either.
func stat(root fs.FS, name string) (fs.FileInfo, error) {
	info, err := fs.Stat(root, name)
	if err != nil {
		return nil, fmt.Errorf("%w: %w", fs.ErrNotExist, err)
	}
	if !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s is no plain file: %w", name, fs.ErrNotExist)
	}
	return info, nil
}

// etag tells apart the versions of a file, and its twins from each other.
func etag(info fs.FileInfo, encoding string) string {
	return fmt.Sprintf(`"%x-%x%s"`, info.Size(), info.ModTime().UnixNano(), encoding)
}
