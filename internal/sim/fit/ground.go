package fit

import (
	"math"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// Comfort (m) is the clearance from which people stop flinching: 12 in, common
// practice, no source.
const Comfort = 0.30

// Usual distances from tee to screen, m: 8–12 ft, common practice, no source.
// Nearer brings a hard rebound, farther spreads misses.
const (
	UsualNearest  = 2.4
	UsualFarthest = 3.7
)

// Ground is the room as several casts meet it, for a ball on any spot.
type Ground struct {
	Cap   float64 // m: clearances from here on are not told apart
	Casts []Cast
	Ramps []Side          // per flat surface, whoever reaches farthest
	Boxes []sweep.Surface // room frame
}

// Side is a flat surface with the cast that comes nearest to it.
type Side struct {
	Ramp
	Surface string
	Cast    int
}

// RoomToSpare (m) is how much beyond comfort and margin clearances are told
// apart.
const RoomToSpare = 0.20

// NewGround is the room of a plan for some casts.
func NewGround(p plan.Plan, casts []Cast) *Ground {
	f := &Ground{Cap: max(Comfort, p.Margin) + RoomToSpare, Casts: casts}
	for _, s := range sweep.Surfaces(p) {
		if !s.Kind.Flat() {
			f.Boxes = append(f.Boxes, s)
			continue
		}
		least := Side{Ramp{At0: math.Inf(1)}, s.Name, -1}
		for i := range casts {
			if r := casts[i].Ramp(s); r.At0 < least.At0 {
				least.Ramp, least.Cast = r, i
			}
		}
		if least.Cast >= 0 {
			f.Ramps = append(f.Ramps, least)
		}
	}
	return f
}

// Flat returns the clearance to the flat surfaces, at most limit, and which.
func (f *Ground) Flat(at Spot, limit float64) (v float64, which int) {
	v, which = limit, -1
	for i := range f.Ramps {
		if d := f.Ramps[i].At(at); d < v {
			v, which = d, i
		}
	}
	return v, which
}

// Tightest is the tightest meeting anywhere.
type Tightest struct {
	Clearance float64
	Surface   string
	Cast      int // index; −1 for none
}

// Tightest returns the cautious clearance at a spot, if it is under limit.
func (f *Ground) Tightest(at Spot, limit float64) Tightest {
	t := Tightest{limit, "", -1}
	if v, which := f.Flat(at, limit); which >= 0 {
		t = Tightest{v, f.Ramps[which].Surface, f.Ramps[which].Cast}
	}
	for i := range f.Casts {
		for _, s := range f.Boxes {
			if v, near := f.Casts[i].BoxWithin(s.Box, at, t.Clearance); near {
				t = Tightest{v, s.Name, i}
			}
		}
	}
	return t
}
