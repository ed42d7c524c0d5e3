package remedy

import (
	"math"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// step (m) is how finely remedies are solved, upwards: a tape measure's reading.
const step = 0.001

// walk is a search along a line for the first place where a clearance reaches
// a margin. No clearance changes by more than the way gone, so it may go as far
// as is missing each time and cannot step over such a place.
type walk struct {
	margin, most float64 // m
	// look returns a clearance at a distance along the line; it need not be right
	// beyond the margin. ok is false where the line ends.
	look func(s float64) (v float64, ok bool)
}

// first returns the first distance from s on, rounded up to a whole step, where
// the clearance reaches the margin.
func (w walk) first(s float64) (float64, bool) {
	const tries = 4000
	for range tries {
		s = math.Ceil(s/step-1e-6) * step
		if s > w.most {
			return 0, false
		}
		v, ok := w.look(s)
		if !ok {
			return 0, false
		}
		if v >= w.margin {
			return s, true
		}
		s += max(w.margin-v, step)
	}
	return 0, false
}

// stand is one cast on one tee, the subject of a check.
type stand struct {
	*fit.Cast
	tee  int // index in the plan
	at   fit.Spot
	flat []flatOf
	box  []sweep.Surface
}

type flatOf struct {
	fit.Ramp
	surface sweep.Surface
}

func newStand(p plan.Plan, c *fit.Cast, tee int) stand {
	s := stand{Cast: c, tee: tee, at: fit.Spot{X: p.Tees[tee].X, Y: p.Tees[tee].Y}}
	for _, f := range sweep.Surfaces(p) {
		if f.Kind.Flat() {
			s.flat = append(s.flat, flatOf{c.Ramp(f), f})
		} else {
			s.box = append(s.box, f)
		}
	}
	return s
}

// flatAt returns the clearance to the flat surfaces, at most limit.
func (s *stand) flatAt(at fit.Spot, limit float64) float64 {
	for i := range s.flat {
		limit = min(limit, s.flat[i].At(at))
	}
	return limit
}

// cautious returns the clearance at a spot as a Reading has it, at most limit.
func (s *stand) cautious(at fit.Spot, limit float64) float64 {
	limit = s.flatAt(at, limit)
	for _, b := range s.box {
		limit, _ = s.BoxWithin(b.Box, at, limit)
	}
	return limit
}

// exact returns the clearance at a spot as a Check has it, at most limit.
func (s *stand) exact(at fit.Spot, limit float64) float64 {
	limit = s.flatAt(at, limit)
	for _, b := range s.box {
		limit = s.BoxExact(b.Box, at, limit)
	}
	return limit
}

// first solves a walk for the clearance that a Check would find: with the
// farthest-reaching members, which no member surpasses but near boxes, and from
// there with every member.
func (s *stand) first(margin, most float64, at func(s float64) (*stand, fit.Spot, bool)) (float64, bool) {
	rough := walk{margin, most, func(d float64) (float64, bool) {
		t, on, ok := at(d)
		if !ok {
			return 0, false
		}
		v := t.flatAt(on, margin)
		for _, b := range t.box {
			rosy := t.Kin.Atlas().Rosy()
			if w, near := t.BoxWithin(b.Box, on, v-rosy); near {
				v = min(v, w+rosy)
			}
		}
		return v, true
	}}
	start, ok := rough.first(0)
	if !ok {
		return 0, false
	}
	fine := rough
	fine.look = func(d float64) (float64, bool) {
		if v, ok := rough.look(d); !ok || v < margin {
			return v, ok
		}
		t, on, ok := at(d)
		if !ok {
			return 0, false
		}
		return t.exact(on, margin), true
	}
	return fine.first(start)
}
