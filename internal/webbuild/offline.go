package webbuild

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
)

// Files is the script that tells the page's service worker which files belong to a
// version; a name in the folder of the page.
const Files = "build/files.js"

// worker is the service worker, which browsers keep by themselves.
const worker = "sw.js"

// FileList writes the script Files for the page in a folder: every file that a
// visit may ask for, with the first 16 hex digits of its SHA-256. Two versions of
// the page differ in it, so browsers notice a new one by it.
func FileList(public fs.FS) ([]byte, error) {
	sums := map[string]string{}
	err := fs.WalkDir(public, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !isServed(name) {
			return err
		}
		content, err := fs.ReadFile(public, name)
		sum := sha256.Sum256(content)
		sums[name] = hex.EncodeToString(sum[:8])
		return err
	})
	if err != nil {
		return nil, err
	}
	list, err := json.MarshalIndent(sums, "", "  ") // names in order
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	out.WriteString("// Made by the build: the files of this version and the heads of their SHA-256.\nself.FILES = ")
	out.Write(list)
	out.WriteString(";\n")
	return out.Bytes(), nil
}

// isServed leaves out what no visit asks for by name, and hosts may keep to
// themselves: twins, hidden files, files without a type, the worker and its list.
func isServed(name string) bool {
	switch path.Ext(name) {
	case "", ".br", ".gz":
		return false
	}
	return name != worker && name != Files && !strings.HasPrefix(path.Base(name), ".")
}

// WriteFileList keeps the list beside the page in a folder, when anything changed.
func WriteFileList(public string) error {
	list, err := FileList(os.DirFS(public))
	if err != nil {
		return err
	}
	return install(filepath.Join(public, filepath.FromSlash(Files)), list)
}
