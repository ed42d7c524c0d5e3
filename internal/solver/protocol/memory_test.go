package protocol

import (
	"flag"
	"fmt"
	"runtime"
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
)

var (
	edits   = flag.Int("edits", 5, "how many heights TestMemoryHasABound types")
	largest = flag.Bool("largest", false, "weigh the largest plan too (minutes)")
)

// asked has a solver answer a request about a plan as the worker does, in slices.
func asked(t *testing.T, s *Solver, p plan.Plan, kind, more string) {
	t.Helper()
	body := fmt.Sprintf(`{"kind":%q,"plan":%s%s}`, kind, p.JSON(), more)
	job := s.Begin([]byte(body))
	for {
		runtime.Gosched() // as the worker does between two slices: the collector is one of those who wait
		if _, out := job.Next(); out == nil {
			continue
		} else if string(out[:8]) == `{"error"` {
			t.Fatalf("%s: %.200s", kind, out)
		}
		return
	}
}

// held is what is in use and what was taken, in bytes.
func held(t *testing.T) (use, taken uint64) {
	t.Helper()
	var m runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&m)
	t.Logf("%d MB held, %d MB taken", m.HeapAlloc>>20, m.Sys>>20)
	return m.HeapAlloc, m.Sys
}

// TestMemoryHasABound: whatever is typed and looked at, a solver holds no more than the
// demonstration room's families with all that maps are made from, and a few beside
// them. In the browser, where memory is never given back, what the program took
// counts.
func TestMemoryHasABound(t *testing.T) {
	const (
		mostHeld  = 130 << 20
		mostTaken = 240 << 20 // with GOMEMLIMIT=300MiB, as the worker's script has it
		mostEdits = 150 << 20 // the same without maps
	)
	var s Solver
	p := plan.Demo()
	bounded := func(most uint64) {
		t.Helper()
		use, taken := held(t)
		if use > mostHeld {
			t.Errorf("%d bytes are held, want at most %d", use, mostHeld)
		}
		if runtime.GOARCH == "wasm" && taken > most {
			t.Errorf("%d bytes were taken, want at most %d", taken, most)
		}
	}
	for i := range *edits {
		p.Players[0].Height = 1.75 + 0.003*float64(i%100)
		asked(t, &s, p, "solve", "")
	}
	bounded(mostEdits)
	p.Players[1].Height = 1.85
	asked(t, &s, p, "solve", "")
	for _, of := range []string{ofStand, ofHang, ofWatch, ofMarks} {
		asked(t, &s, p, "maps", `,"of":"`+of+`"`)
	}
	bounded(mostTaken)
	runtime.KeepAlive(&s)
}

// TestMemoryOfTheLargest: nor does the largest plan that is answered take more than a
// phone has: as many pairs as there may be, and maps of as many as are made for.
func TestMemoryOfTheLargest(t *testing.T) {
	if !*largest {
		t.Skip("it takes minutes: -largest")
	}
	const mostTaken, clubs = 400 << 20, 4
	p := plan.Demo()
	p.Room.Length, p.Room.Width, p.Room.Height = 12, 9, 4
	p.Room.Slopes, p.Room.Solids = nil, nil
	p.Tees = []plan.Tee{{Name: "a", X: 3, Y: 4}, {Name: "b", X: 3.2, Y: 4}}
	p.Clubs = nil
	for i := range clubs {
		p.Clubs = append(p.Clubs, plan.Club{Name: fmt.Sprint("club ", i), Kind: plan.KindIron, Length: 0.9 + 0.02*float64(i)})
	}
	p.Players = nil
	for i := range plan.MaxPairs / clubs {
		p.Players = append(p.Players, plan.Player{Name: fmt.Sprint("player ", i), Height: 1.6 + 0.03*float64(i)})
	}
	p = p.WithDefaults()
	if n := p.Pairs(); n != plan.MaxPairs {
		t.Fatalf("it has %d pairs, want %d", n, plan.MaxPairs)
	}
	var s Solver
	weigh := func(what string) {
		t.Helper()
		t.Log(what)
		if _, taken := held(t); taken > mostTaken {
			t.Errorf("%d bytes were taken, want at most %d", taken, mostTaken)
		}
	}
	asked(t, &s, p, "solve", "")
	weigh("answered")
	asked(t, &s, p, "changes", "")
	weigh("changes")
	p.Players = p.Players[:fit.MostMapped/clubs]
	asked(t, &s, p, "solve", "")
	for _, of := range []string{ofStand, ofHang, ofWatch, ofMarks} {
		asked(t, &s, p, "maps", `,"of":"`+of+`"`)
		weigh(of)
	}
	runtime.KeepAlive(&s)
}
