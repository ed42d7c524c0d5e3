package maps

import (
	"math/rand/v2"
	"strings"
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

// hungClearance hangs a thing in a plan and returns what the full check finds
// between it and everybody.
func hungClearance(t *testing.T, lab *fit.Lab, p plan.Plan, h plan.Hung) float64 {
	t.Helper()
	p.Hung = append(append([]plan.Hung{}, p.Hung...), h)
	report, err := lab.Check(plantest.Checked(p))
	if err != nil {
		t.Fatal(err)
	}
	least := 1e6
	for _, c := range report.Checks {
		least = min(least, c.BySurface[h.Name])
	}
	return least
}

// What is called clear before it hangs is clear once it hangs, by the full check,
// and so is the same thing hung as low as its footprint may hang.
func TestHangThingIsNeverOptimistic(t *testing.T) {
	p := plantest.OneClub("driver")
	p.Room.Slopes = append(p.Room.Slopes, plan.Slope{Name: "eave", Wall: plan.WallRight, KneeHeight: 2.2, Run: 1.2})
	var lab fit.Lab
	rnd := rand.New(rand.NewPCG(20, 21))
	seen := map[fit.Verdict]int{}
	for range 24 {
		h := Hanging{Name: "trial", X: 6.4 * rnd.Float64(), Y: 4.42 * rnd.Float64(), Length: 0.1 + 1.2*rnd.Float64(), Width: 0.1 + 0.8*rnd.Float64(), Drop: 0.05 + 0.7*rnd.Float64()}
		got, err := HangThing(&lab, plantest.Checked(p), h)
		if err != nil {
			t.Fatal(err)
		}
		under := got.Thing.Min[2]
		for _, x := range [2]float64{got.Thing.Min[0], got.Thing.Max[0]} {
			for _, y := range [2]float64{got.Thing.Min[1], got.Thing.Max[1]} {
				if lowest := p.Room.CeilingAt(x, y); under > lowest-h.Drop+1e-9 {
					t.Errorf("%+v hangs at %.3f m, less than its drop under a ceiling of %.3f m", h, under, lowest)
				}
			}
		}
		seen[got.Verdict]++
		full := hungClearance(t, &lab, p, got.Thing)
		if verdict := fit.VerdictOf(full, p.Margin-truthTolerance); got.Check.Verdict == fit.Clear && verdict != fit.Clear {
			t.Errorf("%+v is called clear (%.4f m); the full check finds %.4f m", h, got.Check.Clearance, full)
		}
		if got.Verdict.Worse(got.Check.Verdict) != got.Verdict {
			t.Errorf("%+v is %s, better than its check's %s", h, got.Verdict, got.Check.Verdict)
		}
		if fit.VerdictOf(full, p.Margin+truthTolerance) == fit.Clear && got.Check.Verdict != fit.Clear {
			t.Errorf("%+v is called %s (%.4f m); the full check finds %.4f m", h, got.Check.Verdict, got.Check.Clearance, full)
		}
		if low := got.Spot.Lowest; low > 0 && low < got.Thing.Max[2] {
			as := got.Thing
			as.Min[2] = low
			if full := hungClearance(t, &lab, p, as); full < p.Margin-truthTolerance {
				t.Errorf("%+v may hang down to %.3f m; there the full check finds %.4f m", h, low, full)
			}
		}
	}
	for _, v := range []fit.Verdict{fit.Clear, fit.Tight, fit.Strikes} {
		if seen[v] == 0 {
			t.Errorf("of 24 things none is %s: %v", v, seen)
		}
	}
}

// A footprint asks for no less height than any place within it.
func TestHangThingCoversItsFootprint(t *testing.T) {
	p := plantest.OneClub("driver")
	lab := labOf("loft")
	rnd := rand.New(rand.NewPCG(22, 23))
	for range 6 {
		h := Hanging{Name: "strip", X: 2 + 3*rnd.Float64(), Y: 1 + 2*rnd.Float64(), Length: 1, Width: 0.6, Drop: 2}
		got, err := HangThing(lab, plantest.Checked(p), h)
		if err != nil {
			t.Fatal(err)
		}
		for range 6 {
			x, y := got.Spot.X+h.Length*(rnd.Float64()-0.5), got.Spot.Y+h.Width*(rnd.Float64()-0.5)
			one, err := HangAt(lab, plantest.Checked(p), HangOptions{Ball: true}, x, y)
			if err != nil {
				t.Fatal(err)
			}
			if got.Check.Verdict != fit.Clear && one.Lowest > got.Spot.Lowest+truthTolerance {
				t.Errorf("over (%.2f, %.2f) nothing may hang lower than %.3f m; the whole footprint %.3f m", x, y, one.Lowest, got.Spot.Lowest)
			}
		}
	}
}

func TestHangThingRefusals(t *testing.T) {
	p := plantest.OneClub("driver")
	lab := labOf("loft")
	for _, c := range []struct {
		name string
		h    Hanging
		want string
	}{
		{"no length", Hanging{Width: 0.3, Drop: 0.3}, "long: "},
		{"wider than the room", Hanging{Length: 0.3, Width: 9, Drop: 0.3}, "wide: "},
		{"through the floor", Hanging{Length: 0.3, Width: 0.3, Drop: 60}, "its drop: "},
	} {
		if _, err := HangThing(lab, plantest.Checked(p), c.h); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want it to name %q", c.name, err, c.want)
		}
	}
	got, err := HangThing(lab, plantest.Checked(p), Hanging{X: -3, Y: 99, Length: 0.4, Width: 0.2, Drop: 0.3})
	if err != nil || got.Thing.Min[0] != 0 || got.Thing.Max[1] != p.Room.Width {
		t.Errorf("a thing outside the walls hangs at %v–%v (%v), want it moved inside", got.Thing.Min, got.Thing.Max, err)
	}
}
