package webbuild

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"text/tabwriter"

	"github.com/andybalholm/brotli"
)

// Budgets in bytes over the wire at brotli's best quality, and one ratio.
const (
	FirstVerdictBudget = 900_000   // everything that is fetched before the first verdict
	FirstVisitBudget   = 3_000_000 // everything
	AskedBudget        = 900_000   // what the sheets Build and Projector add when one is opened
	SceneRatioBudget   = 1.25      // the scene's program over the empty engine program
)

// Sizes is what a first visit transfers, in bytes at brotli's best quality.
type Sizes struct {
	FirstVerdict int     // page, styles, scripts and solver
	FirstVisit   int     // the same, the scene, the ball's part and the table of how sure this is
	Asked        int     // what is fetched only when its sheet is opened
	SceneRatio   float64 // scene.wasm over empty.wasm
	Files        []FileSize
}

// FileSize is one file of a visit.
type FileSize struct {
	Name   string
	Bytes  int
	Brotli int
	Later  bool // fetched after the verdict
	Asked  bool // fetched only when its sheet is opened, and no part of a first visit
}

// Measure adds up a first visit: every file of the public folder but the
// twins and what the page never fetches, as if a host compressed each at the best
// quality. It errs on the high side: a file counts whether or not a visit fetches
// it. Programs are not compressed again; their sizes come from the manifest of a
// Build at the best quality. empty is the size of the empty engine program's brotli twin.
func Measure(public string, manifest Manifest, empty int) (Sizes, error) {
	var s Sizes
	err := filepath.WalkDir(public, func(file string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		rel, err := filepath.Rel(public, file)
		if err != nil {
			return err
		}
		name := filepath.ToSlash(rel)
		if ext := path.Ext(name); ext == ".br" || ext == ".gz" || strings.HasPrefix(path.Base(name), ".") || isElsewhere(name) {
			return nil
		}
		size, err := fileSize(file, name, manifest)
		if err != nil {
			return err
		}
		s.Files = append(s.Files, size)
		if size.Asked {
			s.Asked += size.Brotli
			return nil
		}
		s.FirstVisit += size.Brotli
		if !size.Later {
			s.FirstVerdict += size.Brotli
		}
		return nil
	})
	if err != nil {
		return Sizes{}, err
	}
	if scene, ok := manifest[Scene.File]; ok && empty > 0 {
		s.SceneRatio = float64(scene.Brotli) / float64(empty)
	}
	slices.SortFunc(s.Files, func(a, b FileSize) int { return b.Brotli - a.Brotli })
	return s, nil
}

// later are the parts of the public folder that the page fetches only once the
// first verdict stands: folders, and what is built for them.
//
// A newcomer's first verdict is in what is known, and the solver comes later; whoever
// brings a plan waits for the solver. The solver is the more, so it is what counts.
var later = []string{"build/known", "scene/", "ball/", "maps/", "model/", "pictures/", "room/", "stage/", "drawings/", "build/scene", "build/sure", "build/build.json",
	"form/form.js", "form/form.css", "form/list.js", "form/field.js", "form/typing.js", "answer/causes.js", "help/glossary.js", "help/keys.js", "solver/last.js", "app/whole.js", "app/late.css", "help/word.js", "app/toolbar.js", "help/", "offline/", "manifest.webmanifest", worker, Files}

// elsewhere is what the page never fetches: the embed is a page of its own, preview and
// icons are for those who show links.
var elsewhere = []string{"embed", "posters/", "build/poster", "build/preview", "build/icon", "build/licences"}

func isElsewhere(name string) bool {
	return slices.ContainsFunc(elsewhere, func(part string) bool { return strings.HasPrefix(name, part) })
}

// early is what such folders hold and the first verdict has all the same: styles that
// keep the places.
var early = []string{"stage/stage.css"}

// asked are the parts that belong to a sheet or a dialog of their own: whoever never opens
// it never fetches them.
var asked = []string{"build/builder", "builder/", "share/", "keep/", "print/", "vendor/", "stage/shade"}

func isAsked(name string) bool {
	return slices.ContainsFunc(asked, func(part string) bool { return strings.HasPrefix(name, part) })
}

func isLater(name string) bool {
	return !slices.Contains(early, name) && slices.ContainsFunc(later, func(part string) bool { return strings.HasPrefix(name, part) })
}

func fileSize(file, name string, manifest Manifest) (FileSize, error) {
	base := path.Base(name)
	size := FileSize{Name: name, Later: isLater(name), Asked: isAsked(name)}
	if built, ok := manifest[base]; ok && path.Dir(name) == "build" {
		size.Bytes, size.Brotli = built.Bytes, built.Brotli
		return size, nil
	}
	plain, err := os.ReadFile(file)
	if err != nil {
		return FileSize{}, err
	}
	var twin bytes.Buffer
	if err := writeAll(brotli.NewWriterLevel(&twin, BestQuality), plain); err != nil {
		return FileSize{}, err
	}
	// A picture does not shrink; a host sends whichever is smaller.
	size.Bytes, size.Brotli = len(plain), min(len(plain), twin.Len())
	return size, nil
}

// Check returns one sentence for each budget that is exceeded.
func (s Sizes) Check() []string {
	var over []string
	if s.FirstVerdict > FirstVerdictBudget {
		over = append(over, fmt.Sprintf("before the first verdict %d bytes are transferred, %d more than the budget of %d",
			s.FirstVerdict, s.FirstVerdict-FirstVerdictBudget, FirstVerdictBudget))
	}
	if s.FirstVisit > FirstVisitBudget {
		over = append(over, fmt.Sprintf("a first visit transfers %d bytes, %d more than the budget of %d",
			s.FirstVisit, s.FirstVisit-FirstVisitBudget, FirstVisitBudget))
	}
	if s.Asked > AskedBudget {
		over = append(over, fmt.Sprintf("the sheets Build and Projector transfer %d bytes, %d more than the budget of %d",
			s.Asked, s.Asked-AskedBudget, AskedBudget))
	}
	if s.SceneRatio > SceneRatioBudget {
		over = append(over, fmt.Sprintf("the scene's program is %.3f times the empty engine program, over the budget of %.2f",
			s.SceneRatio, SceneRatioBudget))
	}
	return over
}

// Print writes the sizes as a table.
func (s Sizes) Print(w io.Writer) error {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "bytes\tbrotli\t  file\t")
	for _, f := range s.Files {
		when := ""
		switch {
		case f.Asked:
			when = " (with its sheet)"
		case f.Later:
			when = " (after the verdict)"
		}
		fmt.Fprintf(t, "%d\t%d\t  %s%s\t\n", f.Bytes, f.Brotli, f.Name, when)
	}
	fmt.Fprintf(t, "\t%d\t  before the first verdict, budget %d\t\n", s.FirstVerdict, FirstVerdictBudget)
	fmt.Fprintf(t, "\t%d\t  whole first visit, budget %d\t\n", s.FirstVisit, FirstVisitBudget)
	fmt.Fprintf(t, "\t%d\t  with the sheets Build and Projector, once one of them is opened, budget %d\t\n", s.Asked, AskedBudget)
	if s.SceneRatio > 0 {
		fmt.Fprintf(t, "\t%.3f\t  scene over empty engine program, budget %.2f\t\n", s.SceneRatio, SceneRatioBudget)
	}
	return t.Flush()
}
