package family

import (
	"math"
	"runtime"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

// inUse is what the program holds, bytes.
func inUse() int {
	runtime.GC()
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int(m.HeapAlloc)
}

// TestFamilyBytes: what a store believes a family takes is about what it takes, and
// what it holds does not grow with how many it was asked for.
func TestFamilyBytes(t *testing.T) {
	p := plan.Demo().WithDefaults()
	var s Store
	s.Expect(2)
	of := func(height float64) *Relatives {
		player := p.Players[1] // a loose follow-through goes farthest
		player.Height, player.Span = height, 0
		r, err := s.Of(player, p.Clubs[0], append([]geom.Vec{}, axes...))
		if err != nil {
			t.Fatal(err)
		}
		r.near(&geom.Box{}, math.Inf(1))
		r.Spread()
		return r
	}
	of(1.6) // and with it what is made once for all
	before := inUse()
	r := of(1.7)
	holds := func(what string, most int) {
		t.Helper()
		now := inUse()
		t.Logf("%s: %.2f MB", what, float64(now-before)/1e6)
		if took := now - before; took > most || took < most/2 {
			t.Errorf("%s takes %d bytes, the store counts %d", what, took, most)
		}
		before = now
	}
	holds("a family", bytesOfFamily)
	r.Atlas()
	holds("an atlas", bytesOfAtlas)
	r.Footprint()
	holds("a footprint", bytesOfFootprint)

	for i := range 12 {
		of(1.71 + 0.01*float64(i)).Footprint()
	}
	if now, most := inUse(), before+2*(bytesOfFamily+bytesOfAtlas+bytesOfFootprint)+spare*bytesOfFamily; now > most {
		t.Errorf("after twelve golfers more than two and %d spare ones are held: %d bytes, want at most %d", spare, now, most)
	}
	if len(s.kept) != 2+spare {
		t.Errorf("%d families are kept, want 2 and %d spare ones", len(s.kept), spare)
	}
	again := s.kept[4].Relatives
	if got := of(1.71 + 0.01*7); got != again || s.kept[0].Relatives != again {
		t.Error("a family that is kept is swung again, or is not the newest then")
	}
}

// TestLargestPlanIsKept: all the families of the largest plan, and the spare ones, have
// room at once, so that moving a tee swings nobody anew.
func TestLargestPlanIsKept(t *testing.T) {
	if most := (plan.MaxPairs + spare) * bytesOfFamily; most > mostBytes {
		t.Errorf("the largest plan's families take %d bytes, more than the %d that are kept", most, mostBytes)
	}
}
