package remedy

import (
	"math"
	"slices"
	"testing"

	"wideberth/internal/fuzzed"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

// remedyTolerance (m) is how far a remedy's clearance may lie from the one that
// a check of the changed plan finds: what searches leave open on both sides.
const remedyTolerance = 0.001

// checkOf runs the changed plan by a lab that did not search for the change.
func checkOf(t *testing.T, lab *fit.Lab, p plan.Plan, c fit.Check) fit.Check {
	t.Helper()
	r, err := lab.Check(plantest.Checked(p))
	if err != nil {
		t.Fatalf("the changed plan: %v", err)
	}
	for _, x := range r.Checks {
		if x.Player == c.Player && x.Club == c.Club && x.Tee == c.Tee {
			return x
		}
	}
	t.Fatalf("the changed plan has no check of %s with %s", c.Player, c.Club)
	return fit.Check{}
}

// scaled returns the edits of a remedy that goes less far by d.
func scaled(p plan.Plan, r Remedy, d float64) []Edit {
	out := slices.Clone(r.Edits)
	k := 1 - d/r.Amount
	for i := range out {
		was := valueAt(p, out[i].Path)
		out[i].Value = was + k*(out[i].Value-was)
	}
	return out
}

// valueAt reads a number of a plan by trial: an edit that changes nothing.
func valueAt(p plan.Plan, path string) float64 {
	want := string(p.WithDefaults().JSON())
	for _, v := range []float64{p.Tees[0].X, p.Tees[0].Y, p.Room.Height, p.Room.Length, p.Room.Width, p.Screen.X, p.Screen.Width, p.Screen.Centre} {
		if q, err := Apply(p, []Edit{{Path: path, Value: v}}); err == nil && string(q.JSON()) == want {
			return v
		}
	}
	for _, s := range p.Room.Slopes {
		if q, err := Apply(p, []Edit{{Path: path, Value: s.KneeHeight}}); err == nil && string(q.JSON()) == want {
			return s.KneeHeight
		}
	}
	return math.NaN()
}

// lowLamp is a plan in which nothing but a lamp is too near.
func lowLamp(t *testing.T) plan.Plan {
	t.Helper()
	p := plantest.Rooms()["lamp"]
	p.Room.Height = 3.1
	h := &p.Hung[0]
	h.Min[2], h.Max[2] = 1.75, 2.05 // nobody swings higher than 1.95 m less the margin there
	return p
}

func TestRemediesAreVerified(t *testing.T) {
	if testing.Short() {
		t.Skip("takes long; says nothing that differs from one machine to the next")
	}
	plans := map[string]plan.Plan{"demo": plantest.OneClub("7-iron"), "lamp": lowLamp(t)}
	side := plantest.OneClub("7-iron")
	side.Players = side.Players[:1]
	side.Room.Solids, side.Room.Slopes, side.Hung = nil, nil, nil
	side.Tees[0].Y = 3.1
	plans["off to the side"] = side
	low := side
	low.Tees = []plan.Tee{{Name: "middle", X: 2.9, Y: 2.0}}
	low.Room.Height = 2.67
	plans["low"] = low
	kinds := map[string]int{}
	for name, p := range plans {
		var lab, second fit.Lab
		r, err := lab.Check(plantest.Checked(p))
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range r.Checks {
			all, err := Solve(&lab, plantest.Checked(p), c.Player, c.Club, c.Tee)
			if err != nil {
				t.Fatal(err)
			}
			for _, rem := range all {
				kinds[rem.Kind]++
				what := name + ": " + c.Player + ": " + rem.Kind + " " + rem.Subject + " " + rem.Towards
				q, err := Apply(p, rem.Edits)
				if err != nil {
					t.Errorf("%s: %v", what, err)
					continue
				}
				got := checkOf(t, &second, q, c)
				if got.Verdict != fit.Clear || rem.Verdict != fit.Clear {
					t.Errorf("%s by %.3f m: a check finds %.4f (%s), the remedy says %.4f", what, rem.Amount, got.Clearance, got.Verdict, rem.Clearance)
				}
				if math.Abs(got.Clearance-rem.Clearance) > remedyTolerance {
					t.Errorf("%s: a check finds %.4f, the remedy says %.4f", what, got.Clearance, rem.Clearance)
				}
				if rem.PlanClearance > rem.Clearance {
					t.Errorf("%s: the plan is clear by %.4f, this check by %.4f", what, rem.PlanClearance, rem.Clearance)
				}
				// Nothing smaller does, but for what a step and the searches allow.
				if rem.Kind == KindTee || rem.Kind == KindCeiling {
					less, err := Apply(p, scaled(p, rem, math.Copysign(0.004, rem.Amount)))
					if err != nil {
						t.Fatal(err)
					}
					if rem.Amount < 0 { // a lower ceiling than the lowest
						less, err = Apply(p, scaled(p, rem, -math.Copysign(0.004, rem.Amount)))
						if err != nil {
							t.Fatal(err)
						}
					}
					if less.Validate() == nil {
						if got := checkOf(t, &second, less, c); got.Clearance >= p.Margin+remedyTolerance {
							t.Errorf("%s: 4 mm less than %.3f m still has %.4f", what, rem.Amount, got.Clearance)
						}
					}
				}
			}
		}
	}
	for _, k := range []string{KindTee, KindCeiling, KindFloor, KindRaise, KindShift, KindRemove, KindLength, KindWidth} {
		if kinds[k] == 0 {
			t.Errorf("no plan has a remedy of kind %q", k)
		}
	}
	t.Log(kinds)
}

func TestLimits(t *testing.T) {
	p := plantest.OneClub("7-iron")
	p.Players = p.Players[:1]
	p.Room.Solids, p.Room.Slopes, p.Hung = nil, nil, nil
	for _, height := range []float64{2.57, 2.75} {
		p.Room.Height = height
		var lab, second fit.Lab
		r, err := lab.Check(plantest.Checked(p))
		if err != nil {
			t.Fatal(err)
		}
		all, err := Limits(&lab, plantest.Checked(p), "", "", "")
		if err != nil {
			t.Fatal(err)
		}
		for _, rem := range all {
			q, err := Apply(p, rem.Edits)
			if err != nil {
				t.Fatal(err)
			}
			if got := checkOf(t, &second, q, r.Checks[0]); got.Verdict != fit.Clear || math.Abs(got.Clearance-rem.Clearance) > remedyTolerance {
				t.Errorf("height %.2f: %s %.3f m: a check finds %.4f, want %.4f and clear", height, rem.Kind, rem.Value, got.Clearance, rem.Clearance)
			}
			if rem.Amount < 0 == (r.Checks[0].Verdict == fit.Clear) && rem.Amount != 0 {
				t.Errorf("height %.2f: a %s check may change %s by %.3f m", height, r.Checks[0].Verdict, rem.Kind, rem.Amount)
			}
		}
		if len(all) != 2 {
			t.Errorf("height %.2f (%s %.3f): %d limits, want the club's and the golfer's", height, r.Checks[0].Verdict, r.Checks[0].Clearance, len(all))
		}
	}
}

func TestApply(t *testing.T) {
	p := plantest.Loft()
	for _, c := range []struct {
		name  string
		edit  Edit
		holds func(q plan.Plan) bool
	}{
		{"a number", Edit{Path: "room.height", Value: 3}, func(q plan.Plan) bool { return q.Room.Height == 3 }},
		{"in a list", Edit{Path: "players[1].height", Value: 1.9}, func(q plan.Plan) bool { return q.Players[1].Height == 1.9 }},
		{"a corner", Edit{Path: "hung[0].min[2]", Value: 2.5}, func(q plan.Plan) bool { return q.Hung[0].Min[2] == 2.5 }},
		{"behind a pointer", Edit{Path: "screen.x", Value: 5.5}, func(q plan.Plan) bool { return q.Screen.X == 5.5 }},
		{"a ball", Edit{Path: "clubs[0].ball.speed", Value: 50}, func(q plan.Plan) bool { return q.Clubs[0].Ball.Speed == 50 }},
		{"away", Edit{Path: "hung[0]", Remove: true}, func(q plan.Plan) bool { return len(q.Hung) == 0 }},
	} {
		q, err := Apply(p, []Edit{c.edit})
		if err != nil || !c.holds(q) {
			t.Errorf("%s: %v, %+v", c.name, err, c.edit)
		}
	}
	for _, bad := range []Edit{
		{Path: ""}, {Path: "room"}, {Path: "room.heigt"}, {Path: "players[9].height"}, {Path: "players[-1].height"},
		{Path: "players[x].height"}, {Path: "title"}, {Path: "sensor.min[0]"}, {Path: "room.height", Remove: true},
		{Path: "hung[0].min[0]", Remove: true}, {Path: "hung[0].min[3]"}, {Path: "players[0"}, {Path: "[0]"}, {Path: "version"},
	} {
		if q, err := Apply(p, []Edit{bad}); err == nil {
			t.Errorf("Apply(%+v) = %+v, want an error", bad, q)
		}
	}
	if string(p.JSON()) != string(plantest.Loft().JSON()) {
		t.Error("Apply changed the plan it was given")
	}
}

func FuzzApply(engine *testing.F) {
	f := fuzzed.New(engine)
	for _, path := range []string{"room.height", "hung[0].min[2]", "players[1]", "a[[1].b", "screen.x", "..", "tees[0"} {
		f.Add(path, 1.5, false)
		f.Add(path, -1.0, true)
	}
	p := plantest.Loft()
	f.Fuzz(func(t *testing.T, path string, v float64, remove bool) {
		if q, err := Apply(p, []Edit{{path, v, remove}}); err == nil {
			_ = q.Validate() // must not panic
		}
	})
}

// The room that a first visit opens shows the point at once: one guest with one
// club strikes, and one move of the tee puts everybody right.
func TestDemoIsPutRightByOneMove(t *testing.T) {
	doc := plantest.Checked(plan.Demo())
	var lab fit.Lab
	report, err := lab.Check(doc)
	if err != nil {
		t.Fatal(err)
	}
	var striking []fit.Check
	for _, c := range report.Checks {
		if c.Verdict == fit.Strikes {
			striking = append(striking, c)
		}
	}
	if len(report.Checks) != 8 || len(striking) != 1 {
		t.Fatalf("%d of %d checks strike, want 1 of 8", len(striking), len(report.Checks))
	}
	c := striking[0]
	found, err := Solve(&lab, doc, c.Player, c.Club, c.Tee)
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(found, func(r Remedy) bool { return r.Kind == KindTee && r.PlanVerdict == fit.Clear })
	if i < 0 {
		t.Fatalf("no move of the tee among %+v puts everybody right", found)
	}
	p, err := Apply(plan.Demo(), found[i].Edits)
	if err != nil {
		t.Fatal(err)
	}
	after, err := lab.Check(plantest.Checked(p))
	if err != nil || after.Verdict != fit.Clear {
		t.Errorf("with the tee moved the room is %s, %v, want clear", after.Verdict, err)
	}
}
