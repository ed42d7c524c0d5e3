package family

import (
	"testing"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// benchRelatives is the first golfer of the demo with its first club.
func benchRelatives(b *testing.B) *Relatives {
	p := plan.Demo().WithDefaults()
	r, err := New(p.Players[0], p.Clubs[0], Directions(sweep.Surfaces(p)))
	if err != nil {
		b.Fatal(err)
	}
	return r
}

// BenchmarkAtlas is what maps are made from, of a family that is known.
func BenchmarkAtlas(b *testing.B) {
	r := benchRelatives(b)
	for b.Loop() {
		r.forgetMaps()
		r.Atlas()
	}
}

// BenchmarkFootprint is that of a family whose atlas is known.
func BenchmarkFootprint(b *testing.B) {
	r := benchRelatives(b)
	for b.Loop() {
		r.Atlas().print = nil
		r.Footprint()
	}
}
