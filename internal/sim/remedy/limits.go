package remedy

import (
	"math"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
)

// What is tried when looking for limits, m.
const (
	clubFrom   = 0.75             // shares of the club's length down to which a shorter one is sought
	clubTo     = plan.LongestClub // the longest club that may be played
	golferFrom = plan.ShortestMeasured
	golferTo   = 2.10 // tall enough for anybody who will come
)

// modelled is how many families a limit may model: each halves the range, to
// under 4 mm for a driver and under 6 mm for a golfer.
const modelled = 7

// Limits solves the two questions for which golfers must be modelled anew: the
// longest club of this kind that this player clears with on this tee, and the
// tallest golfer, of the player's manner and everything else at its default
// proportions, who clears with this club. It takes up to 16 times what a
// newcomer takes. The names are as in Remedies. PlanClearance takes everybody
// else with the clubs they have now, also when the changed club is theirs too.
func Limits(l *fit.Lab, given plan.Checked, player, club, tee string) ([]Remedy, error) {
	q, err := ask(l, given, player, club, tee)
	if err != nil {
		return nil, err
	}
	c := q.asked.Club
	out := q.add(nil, q.longest(c))
	out = q.add(out, q.tallest(q.asked.Player))
	if out == nil {
		out = []Remedy{}
	}
	return out, nil
}

// longest solves the longest club.
func (q *question) longest(c plan.Club) *Remedy {
	i := indexOf(q.p.Clubs, c.Name, func(x plan.Club) string { return x.Name })
	low, high := clubFrom*c.Length, c.Length
	if q.clear {
		low, high = c.Length, max(clubTo, c.Length)
	}
	r := Remedy{Kind: KindClub, Subject: c.Name}
	return q.largest(r, low, high, c.Length, func(v float64) []Edit {
		return []Edit{{Path: path("clubs", i, ".length"), Value: v}}
	})
}

// tallest solves the tallest golfer. What was measured of arms and stance goes
// with the height it was measured at, so it is left to the proportions.
func (q *question) tallest(pl plan.Player) *Remedy {
	i := indexOf(q.p.Players, pl.Name, func(x plan.Player) string { return x.Name })
	low, high := min(golferFrom, pl.Height), pl.Height
	if q.clear {
		low, high = pl.Height, max(golferTo, pl.Height)
	}
	// As tall as fits under the ceiling at all.
	high = min(high, q.p.Headroom()-pl.Shoe)
	r := Remedy{Kind: KindPlayer, Subject: pl.Name}
	return q.largest(r, low, high, pl.Height, func(v float64) []Edit {
		out := []Edit{{Path: path("players", i, ".height"), Value: v}}
		for _, measured := range []struct {
			field string
			value float64
		}{{".span", pl.Span}, {".arm", pl.Arm}, {".ballToToes", pl.BallToToes}, {".ballToHands", pl.BallToHands}} {
			if measured.value > 0 {
				out = append(out, Edit{Path: path("players", i, measured.field)})
			}
		}
		return out
	})
}

// largest solves the largest value of a number, of which less is clearer, for
// which the check is clear, from low (which must be) to high. now is what it is.
func (q *question) largest(r Remedy, low, high, now float64, edits func(v float64) []Edit) *Remedy {
	type tried struct {
		value float64
		p     plan.Plan
		stand stand
		clear bool
	}
	try := func(v float64) tried {
		v = math.Floor(v/step+1e-6) * step
		t := tried{value: v}
		if q.lab.Rest(0, 0) != nil {
			return t // nobody waits for it
		}
		p, err := Apply(q.p, edits(v))
		if err != nil || p.Validate() != nil {
			return t
		}
		c, err := fit.NewCast(p, q.asked.Player.Name, q.asked.Club.Name)
		if err != nil {
			return t // no stance: such a golfer or club does not clear
		}
		t.p, t.stand = p, newStand(p, &c, q.asked.tee)
		t.clear = t.stand.exact(t.stand.at, p.Margin) >= p.Margin
		return t
	}
	if high < low {
		return nil
	}
	best := try(high)
	if !best.clear {
		if best = try(low); !best.clear {
			return nil
		}
		for range modelled - 2 {
			if high-low <= step {
				break
			}
			if t := try((low + high) / 2); t.clear {
				best, low = t, t.value
			} else {
				high = t.value
			}
		}
	}
	r.Value, r.Amount, r.Edits = best.value, best.value-now, edits(best.value)
	r.Clearance = best.stand.exact(best.stand.at, math.Inf(1))
	r.Verdict = fit.VerdictOf(r.Clearance, q.p.Margin)
	// The others as they are, with the clubs they have now.
	r.PlanClearance = r.Clearance
	for k := range q.casts {
		c := &q.casts[k]
		for i, t := range q.p.Tees {
			if c.Player.Uses(t) && (c != q.asked.Cast || i != q.asked.tee) {
				s := newStand(q.p, c, i)
				r.PlanClearance = s.cautious(s.at, r.PlanClearance)
			}
		}
	}
	r.PlanVerdict = fit.VerdictOf(r.PlanClearance, q.p.Margin)
	return &r
}
