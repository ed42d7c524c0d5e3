package fit

import (
	"math"
	"slices"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// Reading is the answer while a tee is being moved: the clearances alone, in
// microseconds. The Check of the place where it is let go tells the rest.
type Reading struct {
	Tee     string       `json:"tee"`
	X       float64      `json:"x"` // m
	Y       float64      `json:"y"`
	Verdict Verdict      `json:"verdict"` // the worst
	Checks  []QuickCheck `json:"checks"`
	Free    bool         `json:"free"` // a ball may lie there
}

// QuickCheck is what is known at once of a player with a club on the moved tee.
//
// To flat surfaces (walls, ceiling, slopes, screen) Clearance is that of a Check.
// Near a box (a beam, a projector, a return) it is that of some members of the
// family less what any other may be nearer, some 0.08 m; a Check, which tries every
// member, finds up to Caution more.
type QuickCheck struct {
	Player    string  `json:"player"`
	Club      string  `json:"club"`
	Verdict   Verdict `json:"verdict"`
	Clearance float64 `json:"clearance"` // m
	Surface   string  `json:"surface"`   // the nearest
	Caution   float64 `json:"caution"`   // m; 0 at a flat surface
}

// At reads the clearances of everybody who uses a tee with that tee moved to
// (x, y); other tees do not matter. The tee is named; "" is the first.
func (l *Lab) At(given plan.Checked, tee string, x, y float64) (Reading, error) {
	p := given.Plan()
	i := slices.IndexFunc(p.Tees, func(t plan.Tee) bool { return tee == "" || t.Name == tee })
	if i < 0 {
		return Reading{}, fmt.Errorf("tee %q is not in the plan", tee)
	}
	if math.IsNaN(x+y) || math.IsInf(x+y, 0) {
		return Reading{}, fmt.Errorf("tee %q: %g, %g is no place", p.Tees[i].Name, x, y)
	}
	casts, err := l.Casts(p, nil, nil)
	if err != nil {
		return Reading{}, err
	}
	at := Spot{x, y}
	r := Reading{Tee: p.Tees[i].Name, X: x, Y: y, Verdict: Clear, Checks: []QuickCheck{},
		Free: BallFits(p, at)}
	for k := range casts {
		if err := l.Rest(k, len(casts)); err != nil {
			return Reading{}, err
		}
		c := &casts[k]
		if !slices.ContainsFunc(p.TeesOf(c.Player), func(t plan.Tee) bool { return t.Name == r.Tee }) {
			continue
		}
		f := NewGround(p, casts[k:k+1])
		flat, _ := f.Flat(at, math.Inf(1))
		place := c.Placed(at)
		// An atlas costs more than a check: it is made for boxes only that may decide.
		boxes := f.Boxes
		f.Boxes = nil
		for _, s := range boxes {
			if !c.Kin.Beyond(place.Surface(s).Box, flat) {
				f.Boxes = append(f.Boxes, s)
			}
		}
		t := f.Tightest(at, math.Inf(1))
		q := QuickCheck{
			Player: c.Player.Name, Club: c.Club.Name,
			Verdict: VerdictOf(t.Clearance, p.Margin), Clearance: t.Clearance, Surface: t.Surface,
		}
		if slices.ContainsFunc(f.Boxes, func(s sweep.Surface) bool { return s.Name == t.Surface }) {
			q.Caution = c.Kin.Atlas().Caution()
		}
		r.Checks = append(r.Checks, q)
		r.Verdict = r.Verdict.Worse(q.Verdict)
	}
	return r, nil
}
