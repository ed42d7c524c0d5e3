package fit

import (
	"math"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// The kinds of remedy.
const (
	KindTee     = "tee"     // move the tee Subject by Amount Towards a side
	KindCeiling = "ceiling" // raise the ceiling and its slopes; Value is the room's height
	KindLength  = "length"  // the shortest room for everybody on the tee Subject
	KindWidth   = "width"   // the narrowest room for everybody on the tee Subject
	KindFloor   = "floor"   // a thinner floor build-up; Value is its height
	KindClub    = "club"    // the longest club Subject; Value is its length
	KindPlayer  = "player"  // the tallest golfer in place of Subject; Value is their height
	KindRaise   = "raise"   // raise the hung thing Subject
	KindShift   = "shift"   // shift the hung thing Subject Towards a side
	KindRemove  = "remove"  // take the hung thing Subject away
)

// The sides that things are moved towards.
const (
	TowardsTarget = "target"
	TowardsBack   = "back wall"
	TowardsLeft   = "left wall"
	TowardsRight  = "right wall"
)

var sides = []struct {
	name string
	x, y float64
}{{TowardsTarget, 1, 0}, {TowardsBack, -1, 0}, {TowardsLeft, 0, 1}, {TowardsRight, 0, -1}}

// Remedy is the smallest change of one kind that makes a check clear, found by
// computation and verified on the changed plan. For a check that is clear
// already the room, the ceiling, the club and the golfer say how much less room,
// or how much more golfer, would still be.
type Remedy struct {
	Kind    string  `json:"kind"`
	Subject string  `json:"subject"`           // the name of what changes; "" for the room
	Towards string  `json:"towards,omitempty"` // a side, for what moves
	Amount  float64 `json:"amount"`            // m; negative: as much could be given up
	Value   float64 `json:"value"`             // the new value, m, where there is one
	Edits   []Edit  `json:"edits"`             // the change of the plan

	// Clearance and Verdict are the check's after the change.
	Clearance float64 `json:"clearance"`
	Verdict   string  `json:"verdict"`
	// PlanClearance and PlanVerdict are the tightest of all checks after it, as
	// cautious as a Reading's: the change may help one golfer and hurt another.
	PlanClearance float64 `json:"planClearance"`
	PlanVerdict   string  `json:"planVerdict"`
}

// step (m) is how finely remedies are solved, upwards: a tape measure's reading.
const step = 0.001

// walk is a search along a line for the first place where a clearance reaches
// a margin. No clearance changes by more than the way gone, so it may go as far
// as is missing each time and cannot step over such a place.
type walk struct {
	margin, most float64
	step         float64 // m
	// look returns a clearance at a distance along the line; it need not be right
	// beyond the margin. ok is false where the line ends.
	look func(s float64) (v float64, ok bool)
}

// first returns the first distance from s on, rounded up to a whole step, where
// the clearance reaches the margin.
func (w walk) first(s float64) (float64, bool) {
	const tries = 4000
	for range tries {
		s = math.Ceil(s/w.step-1e-6) * w.step
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
		s += max(w.margin-v, w.step)
	}
	return 0, false
}

// stand is one cast on one tee, the subject of a check.
type stand struct {
	*cast
	tee  int // index in the plan
	at   spot
	flat []flatOf
	box  []sweep.Surface
}

type flatOf struct {
	ramp
	surface sweep.Surface
}

func newStand(p plan.Plan, c *cast, tee int) stand {
	s := stand{cast: c, tee: tee, at: spot{p.Tees[tee].X, p.Tees[tee].Y}}
	for _, f := range sweep.Surfaces(p) {
		if f.Kind.Flat() {
			s.flat = append(s.flat, flatOf{c.ramp(f), f})
		} else {
			s.box = append(s.box, f)
		}
	}
	return s
}

// flatAt returns the clearance to the flat surfaces, at most limit.
func (s *stand) flatAt(at spot, limit float64) float64 {
	for i := range s.flat {
		limit = min(limit, s.flat[i].at(at))
	}
	return limit
}

// cautious returns the clearance at a spot as a Reading has it, at most limit.
func (s *stand) cautious(at spot, limit float64) float64 {
	limit = s.flatAt(at, limit)
	for _, b := range s.box {
		limit, _ = s.boxWithin(b.Box, at, limit)
	}
	return limit
}

// exact returns the clearance at a spot as a Check has it, at most limit.
func (s *stand) exact(at spot, limit float64) float64 {
	limit = s.flatAt(at, limit)
	for _, b := range s.box {
		limit = s.boxExact(b.Box, at, limit)
	}
	return limit
}

// rosy (m) is what no box is ever farther away than a cautious clearance says:
// what that one takes off, and what a coarse look does.
func (c *cast) rosy() float64 { return c.kin.atlas().hollow + coarseLoss }

// coarseLoss bounds what a coarse look takes off a clearance, m: the strays at
// coarseTolerance, which are estimated from second differences with a margin.
const coarseLoss = 0.03

// first solves a walk for the clearance that a Check would find: with the
// farthest-reaching members, which no member surpasses but near boxes, and from
// there with every member.
func (s *stand) first(margin, most float64, at func(s float64) (*stand, spot, bool)) (float64, bool) {
	rough := walk{margin, most, step, func(d float64) (float64, bool) {
		t, on, ok := at(d)
		if !ok {
			return 0, false
		}
		v := t.flatAt(on, margin)
		for _, b := range t.box {
			rosy := t.rosy()
			if w, near := t.boxWithin(b.Box, on, v-rosy); near {
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
