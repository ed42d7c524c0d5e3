package webbuild

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
)

func TestFileList(t *testing.T) {
	page := fstest.MapFS{
		"index.html":           {Data: []byte("page")},
		"app/app.js":           {Data: []byte("export {}")},
		"build/solver.wasm":    {Data: []byte("solver")},
		"build/solver.wasm.br": {Data: []byte("twin")},
		"build/solver.wasm.gz": {Data: []byte("twin")},
		"build/files.js":       {Data: []byte("the list of before")},
		"sw.js":                {Data: []byte("worker")},
		".hidden":              {Data: []byte("hidden")},
		"_headers":             {Data: []byte("for the host")},
	}
	list := func() string {
		t.Helper()
		out, err := FileList(page)
		if err != nil {
			t.Fatal(err)
		}
		return string(out)
	}
	first := list()
	// The sums are those of `printf page | sha256sum` and so on.
	const want = "// Made by the build: the files of this version and the heads of their SHA-256.\nself.FILES = {\n" +
		"  \"app/app.js\": \"@app\",\n  \"build/solver.wasm\": \"@solver\",\n  \"index.html\": \"@index\"\n};\n"
	sums := strings.NewReplacer("@app", "f4c5cf9bb78e85f1", "@solver", "b8789db0c2da6b48", "@index", "3660315a9af3df25")
	if first != sums.Replace(want) {
		t.Errorf("the list is\n%s\nwant\n%s", first, sums.Replace(want))
	}
	page["build/solver.wasm.br"] = &fstest.MapFile{Data: []byte("better twin")}
	page["sw.js"] = &fstest.MapFile{Data: []byte("another worker")}
	if list() != first {
		t.Error("a twin or the worker, which browsers compare by themselves, made another list")
	}
	page["app/app.js"] = &fstest.MapFile{Data: []byte("export {};")}
	if list() == first {
		t.Error("another script made no other list")
	}
}

// Whatever was changed after the build, the list that is written anew is of the files
// as they are.
func TestListFiles(t *testing.T) {
	page := t.TempDir()
	write(t, filepath.Join(page, "index.html"), "page")
	write(t, filepath.Join(page, "build", "solver.wasm"), "solver")
	for _, content := range []string{"page", "page with its address"} {
		write(t, filepath.Join(page, "index.html"), content)
		if err := ListFiles(page); err != nil {
			t.Fatal(err)
		}
		want, err := FileList(os.DirFS(page))
		if err != nil || !bytes.Equal(read(t, filepath.Join(page, "build", "files.js")), want) {
			t.Errorf("with %q the list is not that of the files: %v", content, err)
		}
	}
}
