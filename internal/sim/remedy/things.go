package remedy

import (
	"math"
	"slices"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// HungCheck is the answer for one hung thing: the tightest of all swings from
// all tees against it alone.
type HungCheck struct {
	Name      string      `json:"name"`
	Verdict   fit.Verdict `json:"verdict"`
	Clearance float64     `json:"clearance"` // m, as a Check's BySurface
	Player    string      `json:"player"`
	Club      string      `json:"club"`
	Tee       string      `json:"tee"`
	Remedies  []Remedy    `json:"remedies"` // raise, shift, remove; none when clear
}

// Things checks the hung things of a plan that are in its room.
func Things(p plan.Plan, casts []fit.Cast) []HungCheck {
	out := []HungCheck{}
	for i, h := range p.Hung {
		if !p.Room.Touches(h.Min, h.Max) {
			continue
		}
		c := hungCheck(p, casts, hungSurface(p, h.Name), math.Inf(1))
		c.Remedies = []Remedy{}
		if c.Verdict != fit.Clear {
			c.Remedies = hungRemedies(p, casts, i)
		}
		out = append(out, c)
	}
	return out
}

// Thing checks a hung thing that the plan has not got yet, without remedies.
func Thing(p plan.Plan, casts []fit.Cast, h plan.Hung) HungCheck {
	p.Hung = []plan.Hung{h}
	return hungCheck(p, casts, hungSurface(p, h.Name), math.Inf(1))
}

// hungSurface finds a hung thing among the surfaces of its plan.
func hungSurface(p plan.Plan, name string) sweep.Surface {
	all := sweep.Surfaces(p)
	return all[slices.IndexFunc(all, func(s sweep.Surface) bool { return s.Kind == sweep.Hung && s.Name == name })]
}

// hungCheck measures one thing, if anything comes nearer to it than limit.
func hungCheck(p plan.Plan, casts []fit.Cast, s sweep.Surface, limit float64) HungCheck {
	h := HungCheck{Name: s.Name, Clearance: limit}
	for k := range casts {
		c := &casts[k]
		for _, tee := range p.TeesOf(c.Player) {
			at := fit.Spot{X: tee.X, Y: tee.Y}
			if c.Apart(s.Box, at) >= h.Clearance {
				continue
			}
			if v := c.BoxExact(s.Box, at, h.Clearance); v < h.Clearance {
				h.Clearance, h.Player, h.Club, h.Tee = v, c.Player.Name, c.Club.Name, tee.Name
			}
		}
	}
	h.Verdict = fit.VerdictOf(h.Clearance, p.Margin)
	return h
}

// roughHung returns the clearance of the farthest-reaching members to a box, at
// most limit: that of all members is no more.
func roughHung(p plan.Plan, casts []fit.Cast, s sweep.Surface, limit float64) float64 {
	for k := range casts {
		for _, tee := range p.TeesOf(casts[k].Player) {
			rosy := casts[k].Kin.Atlas().Rosy()
			if v, near := casts[k].BoxWithin(s.Box, fit.Spot{X: tee.X, Y: tee.Y}, limit-rosy); near {
				limit = min(limit, v+rosy)
			}
		}
	}
	return limit
}
