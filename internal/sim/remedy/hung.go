package remedy

import (
	"math"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
)

// recess (m) is how much of a hung thing must stay under the ceiling.
const recess = 0.05

// hungMoves tries to raise a hung thing and to shift it to each side, up to the
// walls. solve finds the least distance up to most that helps, given the plan for
// each; finish verifies.
func hungMoves(p plan.Plan, i int,
	solve func(most float64, changed func(d float64) (plan.Plan, bool)) (float64, bool),
	finish func(Remedy, plan.Plan) *Remedy,
) (out []Remedy) {
	h := p.Hung[i]
	try := func(r Remedy, most float64, edits func(d float64) []Edit) {
		changed := func(d float64) (plan.Plan, bool) {
			q, err := Apply(p, edits(d))
			return q, err == nil
		}
		d, ok := solve(most, changed)
		if !ok {
			return
		}
		r.Subject, r.Amount, r.Edits = h.Name, d, edits(d)
		if r.Kind == KindRaise {
			r.Value = h.Min[2] + d
		}
		if q, ok := changed(d); ok {
			if r := finish(r, q); r != nil {
				out = append(out, *r)
			}
		}
	}
	try(Remedy{Kind: KindRaise}, p.Room.Height-recess-h.Min[2], func(d float64) []Edit { return raised(p, i, d) })
	for k, most := range [4]float64{p.Room.Length - h.Max[0], h.Min[0], p.Room.Width - h.Max[1], h.Min[1]} {
		s := sides[k]
		try(Remedy{Kind: KindShift, Towards: s.name}, most, func(d float64) []Edit { return shifted(h, i, d*s.x, d*s.y) })
	}
	return out
}

// hung solves what to do about a hung thing so that the check is clear.
func (q *question) hung(i int) []Remedy {
	// Without it, is the rest clear? If not no other place helps either.
	r := Remedy{Kind: KindRemove, Subject: q.p.Hung[i].Name, Edits: []Edit{{Path: path("hung", i, ""), Remove: true}}}
	p, ok := q.edited(r)
	if !ok {
		return nil
	}
	removed := q.verify(r, plain(p))
	if removed == nil {
		return nil
	}
	moves := hungMoves(q.p, i, func(most float64, changed func(d float64) (plan.Plan, bool)) (float64, bool) {
		return q.asked.first(q.p.Margin, most, func(d float64) (*stand, fit.Spot, bool) {
			p, ok := changed(d)
			if !ok {
				return nil, fit.Spot{}, false
			}
			s := newStand(p, q.asked.Cast, q.asked.tee)
			return &s, s.at, true
		})
	}, func(r Remedy, p plan.Plan) *Remedy { return q.verify(r, plain(p)) })
	return append(moves, *removed)
}

// raised lifts a hung thing; its upper side stops at the ceiling.
func raised(p plan.Plan, i int, d float64) []Edit {
	h := p.Hung[i]
	out := []Edit{
		{Path: path("hung", i, ".min[2]"), Value: h.Min[2] + d},
		{Path: path("hung", i, ".max[2]"), Value: max(h.Max[2], min(h.Max[2]+d, p.Room.Height))},
	}
	if h.LensHeight > 0 {
		out = append(out, Edit{Path: path("hung", i, ".lensHeight"), Value: h.LensHeight + d})
	}
	return out
}

// shifted moves a hung thing along the floor.
func shifted(h plan.Hung, i int, dx, dy float64) []Edit {
	var out []Edit
	for axis, d := range [2]float64{dx, dy} {
		if d != 0 {
			k := string(rune('0' + axis))
			out = append(out,
				Edit{Path: path("hung", i, ".min["+k+"]"), Value: h.Min[axis] + d},
				Edit{Path: path("hung", i, ".max["+k+"]"), Value: h.Max[axis] + d})
		}
	}
	return out
}

// hungRemedies solves what would bring everybody's swings clear of one hung
// thing alone. Clearance is that to the thing.
func hungRemedies(p plan.Plan, casts []fit.Cast, i int) []Remedy {
	name := p.Hung[i].Name
	out := hungMoves(p, i, func(most float64, changed func(d float64) (plan.Plan, bool)) (float64, bool) {
		w := walk{p.Margin, most, func(d float64) (float64, bool) {
			q, ok := changed(d)
			if !ok {
				return 0, false
			}
			s := hungSurface(q, name)
			// The farthest-reaching members first: none does better.
			if v := roughHung(q, casts, s, p.Margin); v < p.Margin {
				return v, true
			}
			return hungCheck(q, casts, s, p.Margin).Clearance, true
		}}
		return w.first(0)
	}, func(r Remedy, q plan.Plan) *Remedy {
		if q.Validate() != nil {
			return nil
		}
		c := hungCheck(q, casts, hungSurface(q, name), math.Inf(1))
		r.Clearance, r.Verdict = c.Clearance, c.Verdict
		r.PlanClearance, r.PlanVerdict = planClearance(q, casts)
		return &r
	})
	gone := []Edit{{Path: path("hung", i, ""), Remove: true}}
	if q, err := Apply(p, gone); err == nil {
		r := Remedy{Kind: KindRemove, Subject: name, Edits: gone}
		r.PlanClearance, r.PlanVerdict = planClearance(q, casts)
		r.Clearance, r.Verdict = r.PlanClearance, r.PlanVerdict
		out = append(out, r)
	}
	return out
}

// planClearance returns the tightest clearance of all casts from all tees, as
// cautious as a Reading's.
func planClearance(p plan.Plan, casts []fit.Cast) (float64, fit.Verdict) {
	v := math.Inf(1)
	for k := range casts {
		for i, t := range p.Tees {
			if casts[k].Player.Uses(t) {
				s := newStand(p, &casts[k], i)
				v = s.cautious(s.at, v)
			}
		}
	}
	return v, fit.VerdictOf(v, p.Margin)
}
