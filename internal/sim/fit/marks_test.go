package fit

import (
	"math"
	"testing"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

func TestMarks(t *testing.T) {
	p := plantest.OneClub("driver", "7-iron")
	p.Tees = append(p.Tees, plan.Tee{Name: "other", X: 3.1, Y: 1.9})
	var lab Lab
	marks, err := lab.Marks(plantest.Checked(p), "")
	if err != nil {
		t.Fatal(err)
	}
	r, err := lab.Check(plantest.Checked(p))
	if err != nil {
		t.Fatal(err)
	}
	if len(marks) != len(r.Checks) {
		t.Fatalf("%d marks for %d checks", len(marks), len(r.Checks))
	}
	for i, m := range marks {
		c := r.Checks[i]
		if m.Player != c.Player || m.Club != c.Club || m.Tee != c.Tee {
			t.Fatalf("mark %d is of %s, %s, %s; the check of %s, %s, %s", i, m.Player, m.Club, m.Tee, c.Player, c.Club, c.Tee)
		}
		back := 1.0 // the side of the golfer's back
		if m.Hand == plan.HandLeft {
			back = -1
		}
		for name, f := range map[string]Foot{"lead": m.Lead, "trail": m.Trail} {
			out := back * (f.Heel[1] - m.Ball[1])
			if math.Abs(out-c.Heels) > 0.03 || out < back*(f.Toe[1]-m.Ball[1])+0.15 {
				t.Errorf("%s with %s: the %s heel is %.3f m behind the ball, want about %.3f, and the toe nearer", m.Player, m.Club, name, out, c.Heels)
			}
			if d := math.Hypot(f.Heel[0]-f.Toe[0], f.Heel[1]-f.Toe[1]); d < 0.2 || d > 0.35 {
				t.Errorf("%s: the %s foot is %.3f m long", m.Player, name, d)
			}
		}
		if m.Lead.Heel[0] < m.Trail.Heel[0]+0.15 {
			t.Errorf("%s: the lead foot is not nearer the target", m.Player)
		}
		wall := map[plan.Hand]string{plan.HandRight: "left wall", plan.HandLeft: "right wall"}[m.Hand]
		if m.Behind.Wall != wall || math.Abs(m.Behind.Clearance-c.BySurface[wall]) > 1e-9 || math.Abs(m.Behind.Typical-c.TypicalBySurface[wall]) > 1e-9 {
			t.Errorf("%s: behind %+v, the check has %.4f and %.4f to the %s", m.Player, m.Behind, c.BySurface[wall], c.TypicalBySurface[wall], wall)
		}
		if m.Behind.Part == "" || m.Behind.Phase == "" {
			t.Errorf("%s: nothing is said to come nearest to the wall", m.Player)
		}
		for _, tape := range m.Tapes {
			if d := math.Hypot(tape.A[0]-tape.B[0], tape.A[1]-tape.B[1]); math.Abs(d-tape.Distance) > 1e-9 || d > 6.4 {
				t.Errorf("%s: tape %+v is %.3f long", m.Player, tape, d)
			}
		}
		if want := map[string]float64{"middle": 0, "other": math.Hypot(0.2, 0.31)}[m.Tee]; math.Abs(m.Moved[2]-want) > 1e-9 {
			t.Errorf("%s on %s: moved by %.3f, want %.3f", m.Player, m.Tee, m.Moved[2], want)
		}
	}
	if _, err := lab.Marks(plantest.Checked(p), "Nobody"); err == nil {
		t.Error("Marks of somebody who is not in the plan: want an error")
	}
}
