// Package fuzzed has what fuzz targets share: changed texts and numbers, and a second way
// to ask a target's question. Go's engine chooses its inputs by what they cover and hands
// each of them from process to process, which costs more than most of the questions do;
// -long asks as many as it says in one process, about inputs made of what the engine kept.
package fuzzed

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"path/filepath"
	"reflect"
	"runtime"
	"strings"
	"testing"
	"time"
)

var (
	long   = flag.Int("long", 0, "how many inputs a fuzz target makes of its seeds and of what the engine kept, beside these")
	within = flag.Duration("within", 0, "the time after which -long makes no more of them; without it all")
	seed   = flag.Uint64("seed", 1, "what the inputs of -long are drawn by")
)

// longest (bytes) is the longest of the engine's files that inputs are made of: it makes
// some of many kB, which say little that is new and take the time of a hundred others.
const longest = 1000

// Target is a fuzz target that can be run by Go's engine and by -long.
type Target struct {
	*testing.F
	corpus corpus
	pkg    string // import path of the package with the target
}

// corpus are the arguments that inputs are made of.
type corpus [][]any

// New wraps the engine's target. It is called by the target itself.
func New(f *testing.F) *Target {
	t := &Target{F: f}
	pc, _, _, _ := runtime.Caller(1)
	t.pkg, _, _ = strings.Cut(runtime.FuncForPC(pc).Name(), ".")
	return t
}

// Add takes a seed up.
func (t *Target) Add(args ...any) {
	t.Helper()
	t.F.Add(args...)
	t.corpus = append(t.corpus, args)
}

// Fuzz asks the question, a function of *testing.T and what the seeds hold, about the
// seeds and whatever else it is run with. The question returns where it has nothing to
// say about an input; it does not skip.
func (t *Target) Fuzz(question any) {
	t.Helper()
	if *long == 0 {
		t.F.Fuzz(question)
		return
	}
	finds := filepath.Join("testdata", "fuzz", t.Name())
	t.corpus = append(t.corpus, kept(finds, math.MaxInt64)...)
	t.corpus = append(t.corpus, kept(filepath.Join(engineCache(), t.pkg, t.Name()), longest)...)
	ask, asked := reflect.ValueOf(question), false
	t.F.Fuzz(reflect.MakeFunc(ask.Type(), func(args []reflect.Value) []reflect.Value {
		out := ask.Call(args)
		one := args[0].Interface().(*testing.T)
		if asked || one.Failed() {
			return out
		}
		asked = true // by the first seed's test, for all of them
		start := time.Now()
		n := t.corpus.many(rand.New(rand.NewPCG(*seed, 10)), *long, finds, func() bool { return *within > 0 && time.Since(start) > *within }, func(input []any) bool {
			for i, v := range input {
				args[1+i] = reflect.ValueOf(v)
			}
			ask.Call(args)
			return !one.Failed()
		})
		one.Logf("%d inputs made of %d in %v", n, len(t.corpus), time.Since(start).Round(time.Second))
		return out
	}).Interface())
}

// many asks about n inputs made of the corpus. Where the answer is false or does not come,
// because of a panic or of the end of the test, the input is kept in the folder. It says
// about how many it asked: fewer than n when it is enough before.
func (c corpus) many(rnd *rand.Rand, n int, finds string, enough func() bool, ask func(input []any) bool) (asked int) {
	var input []any
	done := false
	defer func() {
		if !done {
			fmt.Printf("input %d fails, ", asked+1)
			keep(finds, input)
		}
	}()
	for ; asked < n && !enough(); asked++ {
		if input = c.changed(rnd); !ask(input) {
			return asked + 1
		}
	}
	done = true
	return asked
}

// changed is one of the corpus with at least one of its arguments changed.
func (c corpus) changed(rnd *rand.Rand) []any {
	one, other := c[rnd.IntN(len(c))], c[rnd.IntN(len(c))]
	out := make([]any, len(one))
	copy(out, one)
	sure := rnd.IntN(len(out))
	for i := range out {
		if i == sure || rnd.IntN(3) == 0 {
			out[i] = changed(rnd, one[i], other[i])
		}
	}
	return out
}
