package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strconv"
	"strings"

	"wideberth/internal/link"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/solver/words"
)

// check prints the report of a plan; the exit code is its verdict.
func check(_ context.Context, args []string, s streams) (int, error) {
	flags := newFlags("check", "PLAN.json", s)
	if err := flags.Parse(args); err != nil {
		return 0, err
	}
	p, err := readPlan(flags.Args(), s.in)
	if err != nil {
		return 0, err
	}
	var lab fit.Lab
	report, err := lab.Check(p)
	if err != nil {
		return 0, err
	}
	if err := words.Advise(&lab, p, &report); err != nil {
		return 0, err
	}
	if err := printJSON(s.out, report, "  "); err != nil {
		return 0, err
	}
	return exitCode(report.Verdict)
}

// exitCode is the verdict as the caller's shell sees it.
func exitCode(verdict fit.Verdict) (int, error) {
	switch verdict {
	case fit.Clear:
		return exitClear, nil
	case fit.Tight:
		return exitTight, nil
	case fit.Strikes:
		return exitStrikes, nil
	}
	return 0, fmt.Errorf("the report's verdict %q is none that this command knows", verdict)
}

// readPlan reads the one plan that the arguments name: a file, - for in, or the
// address of a page that holds a plan. What the plan only carries is checked too.
func readPlan(args []string, in io.Reader) (plan.Checked, error) {
	if len(args) != 1 {
		return plan.Checked{}, fmt.Errorf("name one plan, a file, a page's address or - for standard input, after the flags; got %d", len(args))
	}
	p, err := namedPlan(args[0], in)
	if err == nil {
		_, err = spec.Of(p)
	}
	return p, err
}

func namedPlan(name string, in io.Reader) (plan.Checked, error) {
	if strings.Contains(name, link.Prefix) {
		return link.Decode(name)
	}
	data, err := readInput(name, in)
	if err != nil {
		return plan.Checked{}, err
	}
	p, err := plan.Parse(data)
	if err != nil {
		return plan.Checked{}, fmt.Errorf("%s: %w", shown(name), err)
	}
	return p, nil
}

// shown is a file's name on one line.
func shown(name string) string {
	if quoted := strconv.Quote(name); quoted != `"`+name+`"` {
		return quoted
	}
	return name
}

// maxInput is more than the largest plan that plan.Parse takes (1 MB): what is
// longer is refused there, and never read whole.
const maxInput = 1<<20 + 1

func readInput(name string, in io.Reader) ([]byte, error) {
	if name != "-" {
		file, err := os.Open(name)
		if path := new(fs.PathError); errors.As(err, &path) {
			return nil, fmt.Errorf("%s: %w", shown(name), path.Err)
		}
		defer file.Close()
		in = file
	}
	if in == nil {
		return nil, errors.New("there is no standard input to read")
	}
	return io.ReadAll(io.LimitReader(in, maxInput))
}

// printJSON writes v as JSON, one value a line at the given indent, "" for all
// in one line.
func printJSON(w io.Writer, v any, indent string) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", indent)
	return enc.Encode(v)
}
