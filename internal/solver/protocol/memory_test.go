package protocol

import (
	"fmt"
	"runtime"
	"testing"

	"wideberth/internal/sim/plan"
)

// TestMemoryHasABound: whatever is typed and looked at, a solver holds no more than the
// demonstration room's families with all that maps are made from, and a few beside
// them. In the browser, where memory is never given back, what the program took
// counts.
func TestMemoryHasABound(t *testing.T) {
	const (
		mostHeld  = 130 << 20
		mostTaken = 240 << 20 // with GOGC=60, as the worker's script has it
		mostEdits = 150 << 20 // the same without maps
	)
	var s Solver
	p := plan.Demo()
	ask := func(kind, more string) {
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
	taken := func(most uint64) {
		t.Helper()
		var m runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&m)
		t.Logf("%d MB held, %d MB taken", m.HeapAlloc>>20, m.Sys>>20)
		if m.HeapAlloc > mostHeld {
			t.Errorf("%d bytes are held, want at most %d", m.HeapAlloc, mostHeld)
		}
		if runtime.GOARCH == "wasm" && m.Sys > most {
			t.Errorf("%d bytes were taken, want at most %d", m.Sys, most)
		}
	}
	for i := range 5 {
		p.Players[0].Height = 1.75 + 0.003*float64(i)
		ask("solve", "")
	}
	taken(mostEdits)
	for i := range 1 {
		p.Players[1].Height = 1.85 + 0.01*float64(i)
		ask("solve", "")
		for _, of := range []string{ofStand, ofHang, ofWatch, ofMarks} {
			ask("maps", `,"of":"`+of+`"`)
		}
	}
	taken(mostTaken)
	runtime.KeepAlive(&s)
}
