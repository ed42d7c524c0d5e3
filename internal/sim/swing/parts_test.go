package swing

import (
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.6f, want %.6f (± %.2g)", what, got, want, tol)
	}
}

func TestCrossing(t *testing.T) {
	const tol = 1e-9
	for _, c := range []struct {
		name         string
		f            func(float64) float64
		lo, hi, want float64
	}{
		{"line", func(x float64) float64 { return 3*x - 1 }, 0, 1, 1. / 3},
		{"falling", func(x float64) float64 { return 2 - x*x*x }, 0, 4, math.Cbrt(2)},
		{"steep at one end", func(x float64) float64 { return math.Exp(9*x) - 2 }, -1, 1, math.Ln2 / 9},
		{"step", func(x float64) float64 { return math.Copysign(1, x-0.3) }, 0, 1, 0.3},
		{"never, nearer at the top", func(x float64) float64 { return x - 2 }, 0, 1, 1},
		{"never, nearer at the bottom", func(x float64) float64 { return x + 2 }, 0, 1, 0},
	} {
		near(t, c.name, crossing(c.lo, c.hi, tol, c.f), c.want, 10*tol)
	}
}

// TestCurve asks for what cubic Bessel interpolation promises: parabolas come
// back exactly between inner keys, and the ends rest.
func TestCurve(t *testing.T) {
	times := keys{0, 0.3, 0.5, 1.1, 1.2, 1.7, 1.8, 2.1, 2.4, 2.5, 3, 3.2}
	parabola := func(x float64) float64 { return 2 - x + 0.7*x*x }
	var c curve
	for k, x := range times {
		c.value[k] = parabola(x)
	}
	w := bendWeights(&times)
	c.bend(&w)
	for x := times[1]; x < times[numKeys-2]; x += 0.01 {
		m := momentAt(&times, x)
		near(t, "curve", c.at(&m), parabola(x), 1e-12)
	}
	for _, x := range []float64{-1, 0, 3.2, 9} {
		m := momentAt(&times, x)
		near(t, "rest", c.at(&m), parabola(max(0, min(3.2, x))), 1e-12)
	}
}

func TestPhases(t *testing.T) {
	s, err := New(golfer(1.75), clubNamed("driver"), Style{})
	if err != nil {
		t.Fatal(err)
	}
	seen := map[Phase]bool{}
	phases := Phases()
	for i, p := range phases {
		if i > 0 && s.TimeOf(p) <= s.TimeOf(phases[i-1]) {
			t.Errorf("%v begins at %.3f s, want after %v at %.3f s", p, s.TimeOf(p), phases[i-1], s.TimeOf(phases[i-1]))
		}
		if got := s.PhaseAt(s.TimeOf(p)); got != p {
			t.Errorf("PhaseAt(%.3f s) = %v, want %v", s.TimeOf(p), got, p)
		}
		seen[p] = true
	}
	if len(seen) != len(phases) || seen[""] {
		t.Errorf("phases %v, want %d different ones", seen, len(phases))
	}
	if s.TimeOf(Finish) >= s.Duration() {
		t.Errorf("the finish begins at %.3f s of %.3f s", s.TimeOf(Finish), s.Duration())
	}
}

// TestFamilySharesItsPoses: Poses at the central swing's own variation is PoseAt.
func TestFamilySharesItsPoses(t *testing.T) {
	f, err := NewFamily(golfer(1.75), clubNamed("driver"), Style{})
	if err != nil {
		t.Fatal(err)
	}
	var times []float64
	for at := 0.0; at < f.Central.Duration(); at += 0.013 {
		times = append(times, at)
	}
	f.SetTimes(times)
	poses := make([]Pose, len(times))
	var s Swing
	// Whatever a swing held before, filling it again gives the same.
	for _, v := range append(Variations(3, 5), Variation{}) {
		if err := f.Fill(v, &s); err != nil {
			t.Fatal(err)
		}
	}
	f.Poses(&s, poses)
	for i, at := range times {
		if want := f.Central.PoseAt(at); poses[i] != want {
			t.Fatalf("pose at %.3f s = %v, want %v", at, poses[i], want)
		}
	}
}
