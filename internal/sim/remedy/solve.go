package remedy

import (
	"math"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

// Solve solves what would make one check clear: moving the tee to each side,
// a higher ceiling, a longer or wider room, a thinner floor, and for hung things
// in the way raising, shifting or removing them. Kinds that do not help, however
// large, are left out. Player, club and tee are named; an empty name takes the
// first the player has.
//
// The club and the golfer are in Limits, which takes longer.
func Solve(l *fit.Lab, given plan.Checked, player, club, tee string) ([]Remedy, error) {
	q, err := ask(l, given, player, club, tee)
	if err != nil {
		return nil, err
	}
	out := []Remedy{}
	if !q.clear {
		for _, s := range sides {
			if err := l.Rest(0, 0); err != nil {
				return nil, err
			}
			out = q.add(out, q.moveTee(s.name, s.x, s.y))
		}
	}
	out = q.add(out, q.ceiling())
	out = q.add(out, q.floor())
	for i := range q.p.Hung {
		if err := l.Rest(0, 0); err != nil {
			return nil, err
		}
		if !q.clear {
			out = append(out, q.hung(i)...)
		}
	}
	for _, axis := range []int{0, 1} {
		out = q.add(out, q.room(axis))
	}
	return out, nil
}

// question is one check to be made clear.
type question struct {
	lab   *fit.Lab
	p     plan.Plan
	casts []fit.Cast
	asked stand
	clear bool
}

// ask models everybody and finds the check that is asked.
func ask(l *fit.Lab, given plan.Checked, player, club, tee string) (*question, error) {
	p := given.Plan()
	pl, c, t, err := p.Named(player, club, tee)
	if err != nil {
		return nil, err
	}
	casts, err := l.Casts(p, nil, nil)
	if err != nil {
		return nil, err
	}
	q := &question{lab: l, p: p, casts: casts}
	for k := range casts {
		if casts[k].Player.Name == pl.Name && casts[k].Club.Name == c.Name {
			q.asked = newStand(p, &casts[k], indexOf(p.Tees, t.Name, func(t plan.Tee) string { return t.Name }))
		}
	}
	q.clear = q.asked.exact(q.asked.at, p.Margin) >= p.Margin
	return q, nil
}

// after is a changed plan, with how a cast stands on a tee of it.
type after struct {
	p     plan.Plan
	stand func(c *fit.Cast, tee int) stand
}

// plain is the change of a plan that leaves directions of walls and the floor's
// height as they are.
func plain(p plan.Plan) after {
	return after{p, func(c *fit.Cast, tee int) stand { return newStand(p, c, tee) }}
}

// verify fills in what a remedy leads to; nil when the plan would not be valid or
// the check not clear after all.
func (q *question) verify(r Remedy, a after) *Remedy {
	if a.p.Validate() != nil {
		return nil
	}
	s := a.stand(q.asked.Cast, q.asked.tee)
	r.Clearance = s.exact(s.at, math.Inf(1))
	r.Verdict = fit.VerdictOf(r.Clearance, q.p.Margin)
	if r.Verdict != fit.Clear {
		return nil
	}
	r.PlanClearance = r.Clearance
	for k := range q.casts {
		c := &q.casts[k]
		for i, t := range a.p.Tees {
			if c.Player.Uses(t) && (c != q.asked.Cast || i != q.asked.tee) {
				s := a.stand(c, i)
				r.PlanClearance = s.cautious(s.at, r.PlanClearance)
			}
		}
	}
	r.PlanVerdict = fit.VerdictOf(r.PlanClearance, q.p.Margin)
	return &r
}

func (q *question) add(out []Remedy, r *Remedy) []Remedy {
	if r != nil {
		out = append(out, *r)
	}
	return out
}

// edited returns the plan with a remedy's edits.
func (q *question) edited(r Remedy) (plan.Plan, bool) {
	p, err := Apply(q.p, r.Edits)
	return p, err == nil
}

// moveTee solves the smallest move of the tee to one side.
func (q *question) moveTee(towards string, dx, dy float64) *Remedy {
	s := q.asked
	if s.hopeless(q.p.Margin) {
		return nil
	}
	d, ok := s.first(q.p.Margin, geom.Hypot(q.p.Room.Length, q.p.Room.Width), func(d float64) (*stand, fit.Spot, bool) {
		at := fit.Spot{X: s.at.X + d*dx, Y: s.at.Y + d*dy}
		return &s, at, fit.BallFits(q.p, at)
	})
	if !ok {
		return nil
	}
	t := q.p.Tees[s.tee]
	r := Remedy{Kind: KindTee, Subject: t.Name, Towards: towards, Amount: d}
	if dx != 0 {
		r.Value = t.X + d*dx
		r.Edits = []Edit{{Path: path("tees", s.tee, ".x"), Value: r.Value}}
	} else {
		r.Value = t.Y + d*dy
		r.Edits = []Edit{{Path: path("tees", s.tee, ".y"), Value: r.Value}}
	}
	p, ok := q.edited(r)
	if !ok {
		return nil
	}
	return q.verify(r, plain(p))
}

// hopeless reports whether something is too near from everywhere.
func (s *stand) hopeless(margin float64) bool {
	for _, f := range s.flat {
		if f.Level() && f.At0 < margin {
			return true
		}
	}
	return false
}

// ceiling solves how high the ceiling must be, the slopes rising with it. Beams
// and hung things stay; those built against the ceiling follow it with their
// upper side.
func (q *question) ceiling() *Remedy {
	s := q.asked
	need := math.Inf(-1)
	rest := math.Inf(1) // clearance to all that does not rise
	for _, f := range s.flat {
		v := f.At(s.at)
		if n := f.surface.Plane.N.Z; n < 0 {
			need = max(need, (q.p.Margin-v)/-n)
		} else {
			rest = min(rest, v)
		}
	}
	for _, b := range s.box {
		rest = s.BoxExact(b.Box, s.at, rest)
	}
	if rest < q.p.Margin || math.IsInf(need, 0) {
		return nil
	}
	h := math.Ceil(need/step-1e-6) * step
	r := raisedCeiling(q.p, h)
	p, ok := q.edited(r)
	if !ok {
		return nil
	}
	return q.verify(r, after{p, func(c *fit.Cast, tee int) stand {
		s := newStand(q.p, c, tee)
		for i := range s.flat {
			if n := s.flat[i].surface.Plane.N.Z; n < 0 {
				s.flat[i].At0 -= n * h
			}
		}
		return s
	}})
}

// floor solves how thin what lies on the floor must be. Layers give way in
// proportion; the mat only when they are used up, or as far as it is inset.
func (q *question) floor() *Remedy {
	now := q.p.Floor.Standing()
	if q.clear || now <= 0 {
		return nil
	}
	lowered := func(h float64) (plan.Plan, Remedy) {
		r := thinnerFloor(q.p, h)
		p, _ := q.edited(r)
		return p, r
	}
	onto := func(p plan.Plan) func(c *fit.Cast, tee int) stand {
		return func(c *fit.Cast, tee int) stand {
			own := *c
			own.At.Ball.Z = p.Floor.Standing()
			return newStand(p, &own, tee)
		}
	}
	h, ok := q.asked.first(q.p.Margin, now, func(h float64) (*stand, fit.Spot, bool) {
		p, _ := lowered(h)
		s := onto(p)(q.asked.Cast, q.asked.tee)
		return &s, s.at, true
	})
	if !ok {
		return nil
	}
	p, r := lowered(h)
	return q.verify(r, after{p, onto(p)})
}
