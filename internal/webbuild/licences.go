package webbuild

import (
	"bytes"
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// vendored are the licences of scripts that lie with the page as they were published:
// NAME-licence.txt beside them.
const vendored = "public/vendor/*-licence.txt"

// Licences are the texts of the licences of everything that is linked into programs,
// ours first, and of the scripts of others: what the page's foot points to.
func Licences(ctx context.Context, root string, programs ...Program) Data {
	return Data{"licences.txt", func() ([]byte, error) { return licences(ctx, root, programs) }}
}

// pkg is what "go list" tells of a package.
type pkg struct {
	ImportPath string
	Dir        string
	Standard   bool
	Module     *struct {
		Path, Version, Dir string
		Main               bool
	}
}

func licences(ctx context.Context, root string, programs []Program) ([]byte, error) {
	args := []string{"list", "-deps", "-json=ImportPath,Dir,Standard,Module"}
	for _, p := range programs {
		args = append(args, p.Package)
	}
	cmd := exec.CommandContext(ctx, "go", args...)
	cmd.Dir, cmd.Env = root, append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	listed, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("asking go what the programs are made of: %w", err)
	}
	goroot, err := exec.CommandContext(ctx, "go", "env", "GOROOT").Output()
	if err != nil {
		return nil, fmt.Errorf("asking go for its GOROOT: %w", err)
	}

	texts := map[string][]string{} // title of a module to the files of its licences
	var titles []string
	add := func(title string, files []string) {
		if _, known := texts[title]; !known {
			titles = append(titles, title)
		}
		for _, file := range files {
			if !slices.Contains(texts[title], file) {
				texts[title] = append(texts[title], file)
			}
		}
	}
	for d := json.NewDecoder(bytes.NewReader(listed)); ; {
		var p pkg
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		top, title := strings.TrimSpace(string(goroot)), "The Go runtime and standard library"
		if !p.Standard {
			top, title = p.Module.Dir, strings.TrimSpace(p.Module.Path+" "+p.Module.Version)
			if p.Module.Main {
				title = ours
			}
		}
		files, err := licenceFiles(p.Dir, top)
		if err != nil {
			return nil, err
		}
		add(title, files)
	}
	scripts, err := filepath.Glob(filepath.Join(root, filepath.FromSlash(vendored)))
	if err != nil {
		return nil, err
	}
	for _, file := range scripts {
		add("The script "+strings.TrimSuffix(filepath.Base(file), "-licence.txt")+".js", []string{file})
	}
	slices.SortFunc(titles, func(a, b string) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), strings.Compare(a, b))
	})

	var out bytes.Buffer
	fmt.Fprintf(&out, "The programs of this page are made of these parts, under these licences.\n")
	for _, title := range titles {
		if len(texts[title]) == 0 {
			return nil, fmt.Errorf("%s is part of the page and has no file with its licence", title)
		}
		for _, file := range texts[title] {
			text, err := os.ReadFile(file)
			if err != nil {
				return nil, err
			}
			fmt.Fprintf(&out, "\n%s\n%s\n\n%s\n", title, strings.Repeat("=", len(title)), bytes.TrimSpace(text))
		}
	}
	return out.Bytes(), nil
}

const ours = "Wide Berth"

// rank is 0 for what stands first.
func rank(title string) int {
	if title == ours {
		return 0
	}
	return 1
}

var licenceName = regexp.MustCompile(`(?i)^(licen[cs]e|copying|notice)(\.(md|txt))?$`)

// licenceFiles are those of a folder and of every one above it, up to top: a part
// that was taken over may keep its own beside it.
func licenceFiles(dir, top string) (files []string, err error) {
	for {
		entries, err := os.ReadDir(dir)
		if err != nil {
			return nil, err
		}
		for _, e := range entries {
			if !e.IsDir() && licenceName.MatchString(e.Name()) {
				files = append(files, filepath.Join(dir, e.Name()))
			}
		}
		if dir == top || dir == filepath.Dir(dir) {
			return files, nil
		}
		dir = filepath.Dir(dir)
	}
}
