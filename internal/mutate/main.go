// Command mutate asks what the tests would notice: it puts small faults into
// the source, one at a time and for the compiler only, and runs the tests of
// the package each is in. What survives is a line that nobody checks, or a fault
// that makes no difference.
//
//	go run ./internal/mutate -sample 40 -seed 1 ./internal/...
package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

func main() {
	sample := flag.Int("sample", 40, "how many mutants to try, drawn from all those of the packages")
	seed := flag.Uint64("seed", 1, "which sample")
	flag.Usage = func() {
		fmt.Fprintln(os.Stderr, "usage: go run ./internal/mutate [flags] packages...")
		flag.PrintDefaults()
	}
	flag.Parse()
	if flag.NArg() == 0 {
		flag.Usage()
		os.Exit(2)
	}
	if err := mutate(os.Stdout, flag.Args(), *sample, *seed); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// listed is what go list says of a package.
type listed struct {
	ImportPath, Dir string
	GoFiles         []string
}

// candidate is a mutant and its package.
type candidate struct {
	mutant
	pkg int
}

// mutate tries a sample of the packages' mutants and prints what became of them.
func mutate(w io.Writer, patterns []string, sample int, seed uint64) error {
	packages, err := list(patterns)
	if err != nil {
		return err
	}
	var all []candidate
	for i, p := range packages {
		for _, f := range p.GoFiles {
			name := filepath.Join(p.Dir, f)
			source, err := os.ReadFile(name)
			if err != nil {
				return err
			}
			found, err := mutants(name, source)
			if err != nil {
				return err
			}
			for _, m := range found {
				all = append(all, candidate{m, i})
			}
		}
	}
	fmt.Fprintf(w, "%d mutants in %d packages, seed %d\n", len(all), len(packages), seed)
	random := rand.New(rand.NewPCG(seed, 0))
	random.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })

	scratch, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return err
	}
	defer os.RemoveAll(scratch)
	here, err := os.Getwd()
	if err != nil {
		return err
	}
	trials := make([]*trial, len(packages))
	tally := make([]map[outcome]int, len(packages))
	for tried := 0; tried < sample && len(all) > 0; {
		m := all[0]
		all = all[1:]
		p := packages[m.pkg]
		if trials[m.pkg] == nil {
			trials[m.pkg], tally[m.pkg] = &trial{path: p.ImportPath, dir: p.Dir, scratch: scratch}, map[outcome]int{}
			if err := trials[m.pkg].baseline(); err != nil {
				return err
			}
		}
		got, err := trials[m.pkg].try(m.mutant)
		if err != nil {
			return err
		}
		tally[m.pkg][got]++
		if got == stillborn {
			continue // another one is drawn in its place
		}
		tried++
		name, err := filepath.Rel(here, m.file)
		if err != nil {
			name = m.file
		}
		fmt.Fprintf(w, "%-8s %s:%d: %s\n", got, name, m.line, m.what)
	}
	report(w, packages, tally)
	return nil
}

// report prints how many were killed, by package and in all.
func report(w io.Writer, packages []listed, tally []map[outcome]int) {
	dead, tried := 0, 0
	for i, t := range tally {
		if n := t[killed] + t[survived]; n > 0 {
			dead, tried = dead+t[killed], tried+n
			fmt.Fprintf(w, "%3d of %3d killed in %s\n", t[killed], n, packages[i].ImportPath)
		}
	}
	fmt.Fprintf(w, "%3d of %3d killed\n", dead, tried)
}

// list asks the go command for the packages that have files of their own.
func list(patterns []string) ([]listed, error) {
	var complaint strings.Builder
	cmd := exec.Command("go", append([]string{"list", "-json=ImportPath,Dir,GoFiles"}, patterns...)...)
	cmd.Stderr = &complaint
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w: %s", err, complaint.String())
	}
	var packages []listed
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p listed
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		packages = append(packages, p)
	}
	packages = slices.DeleteFunc(packages, func(p listed) bool { return len(p.GoFiles) == 0 })
	if len(packages) == 0 {
		return nil, errors.New("none of these packages has a file to change")
	}
	return packages, nil
}
