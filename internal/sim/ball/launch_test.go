package ball

import (
	"math"
	"testing"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/r3"
)

func TestStateOfLaunch(t *testing.T) {
	l := Launch{Speed: 50, Elevation: 30 * degree, Azimuth: 20 * degree, Spin: 300, Tilt: 10 * degree}
	s := l.State()
	if got := r3.Norm(s.V); math.Abs(got-50) > 1e-12 {
		t.Errorf("speed = %v, want 50", got)
	}
	if s.V.Y <= 0 || math.Abs(math.Atan2(s.V.Y, s.V.X)-l.Azimuth) > 1e-12 {
		t.Errorf("V = %v: a positive azimuth must go left, by 20°", s.V)
	}
	if d := r3.Dot(s.V, s.W); math.Abs(d) > 1e-9 {
		t.Errorf("spin axis and motion: dot = %g, want square to each other", d)
	}
	if lift := r3.Cross(s.W, s.V); lift.Z <= 0 {
		t.Errorf("backspin pushes along %v, want upwards", lift)
	}
	side := r3.Cross(s.W, s.V)
	if left := -side.X*math.Sin(l.Azimuth) + side.Y*math.Cos(l.Azimuth); left <= 0 {
		t.Errorf("a positive tilt pushes %g to the left, want more than 0", left)
	}
}

// Ball over clubhead speed of radar averages of tour players (from memory).
func TestSmashAgainstAverages(t *testing.T) {
	const tol = 0.05 // one assumed head mass, restitution and attack angle per kind
	for _, c := range []struct {
		name, kind         string
		head, ball, launch float64
	}{
		{name: "men driver", kind: plan.KindDriver, head: 113, ball: 167, launch: 10.9},
		{name: "men 3-wood", kind: plan.KindWood, head: 107, ball: 158, launch: 9.2},
		{name: "men 5-iron", kind: plan.KindIron, head: 94, ball: 132, launch: 12.1},
		{name: "men 7-iron", kind: plan.KindIron, head: 90, ball: 120, launch: 16.3},
		{name: "men 9-iron", kind: plan.KindIron, head: 85, ball: 109, launch: 20.4},
		{name: "men pitching wedge", kind: plan.KindWedge, head: 83, ball: 102, launch: 24.2},
		{name: "women driver", kind: plan.KindDriver, head: 94, ball: 140, launch: 13.2},
		{name: "women 7-iron", kind: plan.KindIron, head: 76, ball: 104, launch: 19.0},
		{name: "women pitching wedge", kind: plan.KindWedge, head: 70, ball: 86, launch: 25.6},
	} {
		club := plan.Club{Kind: c.kind, Ball: &plan.Ball{Speed: 50, Launch: c.launch, Spin: 5000}}
		if got, want := Smash(club), c.ball/c.head; math.Abs(got/want-1) > tol {
			t.Errorf("%s: Smash = %.3f, want %.3f (tol %g of it)", c.name, got, want, tol)
		}
	}
}

func TestFromClub(t *testing.T) {
	driver := plan.Club{Name: "driver", Kind: plan.KindDriver, Ball: &plan.Ball{Speed: 62, Launch: 12.5, Spin: 2700}}
	own := FromClub(driver, 0)
	if own.Speed != 62 || math.Abs(own.Elevation-12.5*degree) > 1e-12 || math.Abs(own.Spin-2700*rpm) > 1e-9 {
		t.Errorf("FromClub(driver, 0) = %+v, want the club's own ball", own)
	}
	one, two := FromClub(driver, 40), FromClub(driver, 50)
	for name, r := range map[string]float64{"speed": two.Speed / one.Speed, "spin": two.Spin / one.Spin} {
		if math.Abs(r-1.25) > 1e-12 {
			t.Errorf("%s at 50 over 40 m/s of clubhead = %v, want 1.25", name, r)
		}
	}
	if one.Elevation != own.Elevation {
		t.Errorf("launch angle changes with head speed: %v and %v", one.Elevation, own.Elevation)
	}
	iron := FromClub(plan.Club{Name: "7-iron", Kind: plan.KindIron}, 0)
	if want := plan.DefaultClub(plan.KindIron, "7-iron").Ball.Speed; iron.Speed != want || iron.From.Z != Radius {
		t.Errorf("FromClub(7-iron without a ball) = %+v, want %g m/s from the mat", iron, want)
	}
}

func TestMissesAreMirrored(t *testing.T) {
	l := FromClub(plan.DefaultClub(plan.KindIron, "7-iron"), 0)
	right, left := Misses(l, plan.HandRight), Misses(l, plan.HandLeft)
	hosel := 0
	for i := range right {
		a, b := right[i], left[i]
		if a.Name != b.Name || a.Launch.Azimuth != -b.Launch.Azimuth || a.Launch.Elevation != b.Launch.Elevation {
			t.Errorf("%s: right %+v, left %+v, want mirror images", a.Name, a.Launch, b.Launch)
		}
		if a.Launch.Azimuth != 0 {
			hosel++
			if d := -a.Launch.Azimuth / degree; d < 30-1e-9 || d > 60+1e-9 {
				t.Errorf("%s leaves %.0f° to the right, want 30–60", a.Name, d)
			}
		}
	}
	if hosel != 3 {
		t.Errorf("%d hosel shots, want 3", hosel)
	}
}

func TestDraws(t *testing.T) {
	const n = 4096
	d := Draws(n)
	var mean, square, cross [3]float64
	for _, v := range d {
		z := [3]float64{v.Direction, v.Launch, v.Speed}
		for j := range 3 {
			mean[j] += z[j] / n
			square[j] += z[j] * z[j] / n
			cross[j] += z[j] * z[(j+1)%3] / n
		}
	}
	const tol = 0.02 // a random sample would scatter by 0.016
	for j := range 3 {
		if math.Abs(mean[j]) > tol/4 || math.Abs(square[j]-1) > tol || math.Abs(cross[j]) > tol {
			t.Errorf("variable %d: mean %.4f, square %.4f, product with the next %.4f, want 0, 1, 0", j, mean[j], square[j], cross[j])
		}
	}
	for i, v := range Draws(n) {
		if v != d[i] {
			t.Fatalf("Draws(%d)[%d] differs from one call to the next", n, i)
		}
	}
	for _, n := range []int{1, 2, 3} {
		for _, v := range Draws(n) {
			if math.IsInf(v.Direction+v.Launch+v.Speed, 0) || math.IsNaN(v.Direction+v.Launch+v.Speed) {
				t.Errorf("Draws(%d) = %v, want finite", n, v)
			}
		}
	}
}

func TestSkillWidens(t *testing.T) {
	steady, average, wild := SkillOf(plan.Player{Skill: "steady"}), SkillOf(plan.Player{}), SkillOf(plan.Player{Skill: "wild"})
	if !(steady.Direction < average.Direction && average.Direction < wild.Direction &&
		steady.Launch < average.Launch && average.Launch < wild.Launch && steady.Speed < average.Speed && average.Speed < wild.Speed) {
		t.Errorf("spreads %v, %v, %v do not widen from steady to wild", steady, average, wild)
	}
	if SkillOf(plan.Player{Skill: "average"}) != average {
		t.Error("no skill and average differ")
	}
}
