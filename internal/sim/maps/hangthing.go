package maps

import (
	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/remedy"
	"wideberth/internal/units"
)

// Hanging is a thing that may be hung from the ceiling, m.
type Hanging struct {
	Name   string  // as the plan would call it
	X, Y   float64 // the middle of its footprint
	Length float64 // along the room
	Width  float64 // across
	Drop   float64 // how far it comes down from the lowest of the ceiling over it
}

// HangCheck says how a thing would fare, before it hangs.
type HangCheck struct {
	Thing plan.Hung        // as the plan would have it
	Check remedy.HungCheck // of all swings: what a full check then finds
	Spot  HangSpot         // how low its whole footprint may hang
	// Verdict is that of the check, and no better than tight where ordinary balls
	// ask for more height.
	Verdict fit.Verdict
}

// leastHung (m) is the least size of a thing to hang.
const leastHung = 0.01

// HangThing checks a thing against everybody's swings from all tees, and says how
// low its whole footprint may hang. It is moved so far that it lies within the
// walls. How low is as cautious as HangAt, but never says that a thing which is
// clear where it would hang may not hang there.
func HangThing(l *fit.Lab, given plan.Checked, h Hanging) (HangCheck, error) {
	p := given.Plan()
	label := func(m float64) string { return units.LabelShort(m, p.Units) }
	sizes := []struct {
		field, what string
		v, most     float64
	}{{"length", "long", h.Length, p.Room.Length}, {"width", "wide", h.Width, p.Room.Width}, {"drop", "its drop", h.Drop, p.Room.Height}}
	for _, s := range sizes {
		if !(s.v >= leastHung && s.v <= s.most) {
			return HangCheck{}, &plan.FieldError{Field: s.field, Message: fmt.Sprintf("%s: %s is not from %s to the room's %s", s.what, label(s.v), label(leastHung), label(s.most))}
		}
	}
	alongX, alongY := h.Length/2, h.Width/2
	x := min(max(h.X, alongX), p.Room.Length-alongX)
	y := min(max(h.Y, alongY), p.Room.Width-alongY)
	low, high := p.Room.Height, 0.0 // of the ceiling, which bulges upward only
	for _, c := range [4][2]float64{{-1, -1}, {-1, 1}, {1, -1}, {1, 1}} {
		v := p.Room.CeilingAt(x+c[0]*alongX, y+c[1]*alongY)
		low, high = min(low, v), max(high, v)
	}
	under := low - h.Drop
	if under < 0 {
		return HangCheck{}, &plan.FieldError{Field: "drop", Message: fmt.Sprintf("its drop: %s is more than the %s under the ceiling there", label(h.Drop), label(low))}
	}
	casts, err := l.Casts(p, nil, nil)
	if err != nil {
		return HangCheck{}, err
	}
	out := HangCheck{
		Thing: plan.Hung{Name: h.Name, Min: [3]float64{x - alongX, y - alongY, under}, Max: [3]float64{x + alongX, y + alongY, high}},
		Spot:  HangSpot{X: x, Y: y, Ceiling: low},
	}
	out.Check = remedy.Thing(p, casts, out.Thing)
	out.Verdict = out.Check.Verdict
	out.Spot.overSwings(p, casts, alongX, alongY)
	if out.Verdict == fit.Clear {
		out.Spot.Lowest = min(out.Spot.Lowest, under)
	}
	out.Spot.overBalls(p, casts, geom.Hypot(alongX, alongY))
	if out.Spot.Ball && out.Spot.Lowest > under {
		out.Verdict = out.Verdict.Worse(fit.Tight)
	}
	return out, nil
}
