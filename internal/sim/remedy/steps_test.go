package remedy

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

// TestMoved: a tee goes along one axis or both, and each step says which way and how far.
func TestMoved(t *testing.T) {
	from := plan.Tee{Name: "middle", X: 3, Y: 2}
	for _, c := range []struct {
		name string
		to   fit.Spot
		want []string
	}{
		{"nowhere", fit.Spot{X: 3, Y: 2}, nil},
		{"to the screen", fit.Spot{X: 3.25, Y: 2}, []string{"middle target 0.25 tees[1].x=3.25"}},
		{"to the back", fit.Spot{X: 2.5, Y: 2}, []string{"middle back wall 0.50 tees[1].x=2.50"}},
		{"to the left", fit.Spot{X: 3, Y: 2.75}, []string{"middle left wall 0.75 tees[1].y=2.75"}},
		{"back and to the right", fit.Spot{X: 2, Y: 1.5}, []string{"middle back wall 1.00 tees[1].x=2.00", "middle right wall 0.50 tees[1].y=1.50"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, r := range moved(from, 1, c.to) {
				if r.Kind != KindTee || len(r.Edits) != 1 || r.Edits[0].Value != r.Value {
					t.Errorf("step %+v is not one edit of a tee", r)
				}
				got = append(got, fmt.Sprintf("%s %s %.2f %s=%.2f", r.Subject, r.Towards, r.Amount, r.Edits[0].Path, r.Value))
			}
			if !slices.Equal(got, c.want) {
				t.Errorf("steps %q, want %q", got, c.want)
			}
		})
	}
}

// TestSides: a tee that is moved to one side alone changes one of its places.
func TestSides(t *testing.T) {
	p := plan.Demo().WithDefaults()
	p.Players, p.Clubs = p.Players[1:2], p.Clubs[:1] // who strikes, beside whom there is room
	p.Players[0].Clubs = nil
	var lab fit.Lab
	r, err := lab.Check(plantest.Checked(p))
	if err != nil {
		t.Fatal(err)
	}
	c := r.Checks[0]
	all, err := Solve(&lab, plantest.Checked(p), c.Player, c.Club, c.Tee)
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, one := range all {
		if one.Kind != KindTee {
			continue
		}
		seen++
		axis, sign := map[string]string{TowardsTarget: "x", TowardsBack: "x", TowardsLeft: "y", TowardsRight: "y"}[one.Towards], 1.0
		from := p.Tees[0].X
		if axis == "y" {
			from = p.Tees[0].Y
		}
		if one.Towards == TowardsBack || one.Towards == TowardsRight {
			sign = -1
		}
		for _, e := range one.Edits {
			if e.Path != "tees[0]."+axis && valueAt(p, e.Path) != e.Value {
				t.Errorf("towards %s, %s becomes %g", one.Towards, e.Path, e.Value)
			}
			if d := sign * (e.Value - from); e.Path == "tees[0]."+axis && (d <= 0 || math.Abs(d-one.Amount) > 1e-9) {
				t.Errorf("towards %s by %g, %s goes from %g to %g", one.Towards, one.Amount, e.Path, from, e.Value)
			}
		}
	}
	if seen == 0 {
		t.Errorf("no tee is moved: %+v", all)
	}
}

// TestAim: whoever is to be helped must reach the level, and may not begin to strike;
// everybody else keeps the verdict they have.
func TestAim(t *testing.T) {
	const margin, level = 0.15, -0.02
	strikes, tight, clear := fit.Check{Verdict: fit.Strikes}, fit.Check{Verdict: fit.Tight}, fit.Check{Verdict: fit.Clear}
	j := job{p: plan.Plan{Margin: margin}, pairs: []pair{
		{check: strikes, wanted: true}, {check: tight, wanted: true}, {check: strikes}, {check: tight}, {check: clear, wanted: true}, {check: clear},
	}}
	j.aim(level, func(x pair) bool { return x.check.Verdict != fit.Clear })
	for i, want := range []float64{level, 0, math.Inf(-1), 0, margin, margin} {
		if got := j.pairs[i].level; got != want {
			t.Errorf("pair %d (%s, wanted %v) must reach %g, want %g", i, j.pairs[i].check.Verdict, j.pairs[i].wanted, got, want)
		}
	}
}

// TestLevers: only clubs that somebody lacks room with are made shorter, only things
// that are in the way are raised or taken down, and only the tee of the check is moved.
func TestLevers(t *testing.T) {
	p := plantest.Loft()
	p.Tees = append(p.Tees, plan.Tee{Name: "other", X: 3.2, Y: 1.9})
	p.Hung = append(p.Hung, plan.Hung{Name: "lamp", Min: [3]float64{1, 1, 2.2}, Max: [3]float64{1.2, 1.2, 2.4}})
	j := job{p: p, casts: []fit.Cast{{Player: p.Players[0], Club: p.Clubs[0]}, {Player: p.Players[0], Club: p.Clubs[1]}},
		pairs: []pair{{cast: 0, tee: 1, wanted: true}, {cast: 1, tee: 0}}}
	var got []string
	for _, l := range j.levers(func(x pair) bool { return x.wanted }, map[string]bool{"lamp": true}) {
		r := l.pull(l.most)
		got = append(got, r.Kind+" "+r.Subject)
	}
	for _, want := range []string{KindTee + " other", KindClub + " driver", KindRaise + " lamp", KindRemove + " lamp"} {
		if !slices.Contains(got, want) {
			t.Errorf("levers %q, want %q among them", got, want)
		}
	}
	for _, other := range []string{KindTee + " middle", KindClub + " 7-iron", KindRaise + " projector", KindRemove + " projector"} {
		if slices.Contains(got, other) {
			t.Errorf("levers %q, want %q not among them", got, other)
		}
	}
}

// TestThings: what hangs outside the room is in nobody's way, what hangs in it is told of
// with its remedies.
func TestThings(t *testing.T) {
	p := lowLamp(t)
	outside := p.Hung[0]
	outside.Name, outside.Min[0], outside.Max[0] = "lamp next door", p.Room.Length+1, p.Room.Length+2
	p.Hung = append(p.Hung, outside)
	casts, err := new(fit.Lab).Casts(p, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	got := Things(p, casts)
	if len(got) != 1 || got[0].Name != "lamp" || got[0].Verdict == fit.Clear || len(got[0].Remedies) == 0 {
		t.Errorf("things %+v, want the lamp alone, too near, and what helps", got)
	}
}
