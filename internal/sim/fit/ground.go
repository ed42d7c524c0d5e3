package fit

import (
	"math"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// Ground is the room as several casts meet it, for a ball on any spot.
type Ground struct {
	Casts []Cast
	Sides []Side          // the flat surfaces
	Boxes []sweep.Surface // room frame
}

// Side is a flat surface with the clearance of the cast that comes nearest to it.
type Side struct {
	Ramp
	Surface string // its name
	Cast    int    // index
}

// NewGround is the room of a plan for some casts.
func NewGround(p plan.Plan, casts []Cast) *Ground {
	g := &Ground{Casts: casts}
	for _, s := range sweep.Surfaces(p) {
		if !s.Kind.Flat() {
			g.Boxes = append(g.Boxes, s)
			continue
		}
		least := Side{Ramp{At0: math.Inf(1)}, s.Name, -1}
		for i := range casts {
			if r := casts[i].Ramp(s); r.At0 < least.At0 {
				least.Ramp, least.Cast = r, i
			}
		}
		if least.Cast >= 0 {
			g.Sides = append(g.Sides, least)
		}
	}
	return g
}

// Flat returns the clearance (m) to the flat surfaces, at most limit, and which
// side that is; −1 for none.
func (g *Ground) Flat(at Spot, limit float64) (v float64, which int) {
	v, which = limit, -1
	for i := range g.Sides {
		if d := g.Sides[i].At(at); d < v {
			v, which = d, i
		}
	}
	return v, which
}

// Tightest is the tightest meeting anywhere.
type Tightest struct {
	Clearance float64 // m
	Surface   string  // its name
	Cast      int     // index; −1 for none
}

// Tightest returns the cautious clearance (m) at a spot, if it is under limit.
func (g *Ground) Tightest(at Spot, limit float64) Tightest {
	t := Tightest{limit, "", -1}
	if v, which := g.Flat(at, limit); which >= 0 {
		t = Tightest{v, g.Sides[which].Surface, g.Sides[which].Cast}
	}
	for i := range g.Casts {
		for _, s := range g.Boxes {
			if v, near := g.Casts[i].BoxWithin(s.Box, at, t.Clearance); near {
				t = Tightest{v, s.Name, i}
			}
		}
	}
	return t
}
