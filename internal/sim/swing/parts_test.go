package swing

import (
	"math"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
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
	var c curves
	for k, x := range times {
		c.value[k][chTheta] = parabola(x)
	}
	c.bend(&times)
	at := func(x float64) float64 {
		m, j := momentAt(&times, x), joints{}
		c.at(&m, &j)
		return j[chTheta]
	}
	for x := times[1]; x < times[numKeys-2]; x += 0.01 {
		near(t, "curve", at(x), parabola(x), 1e-12)
	}
	for _, x := range []float64{-1, 0, 3.2, 9} {
		near(t, "rest", at(x), parabola(max(0, min(3.2, x))), 1e-12)
	}
}

// TestTurns holds sines and cosines against those of package math: at the stops, half way between
// them and beside, everywhere that a golfer turns, and where nobody does.
func TestTurns(t *testing.T) {
	const within = 0x1p-52 // the last bit
	var angles []float64
	for k := range 4 * steps {
		at := float64(k) * math.Pi / steps
		angles = append(angles, at, math.Nextafter(at, 0), math.Nextafter(at, 1e9), at+0.0017*float64(k%7), 137*at, 1e300*at)
	}
	angles = append(angles, 5e-324, 1e-9, 1<<20, math.Nextafter(1<<20, 0), 1<<29, math.Inf(1), math.NaN())
	same := func(x, y float64) bool { return math.Abs(x-y) <= within || math.IsNaN(x) && math.IsNaN(y) }
	for _, angle := range angles {
		for _, angle := range [2]float64{angle, -angle} {
			got := turnOf(angle)
			if s, c := math.Sincos(angle); !same(got.sin, s) || !same(got.cos, c) {
				t.Errorf("turn of %v: %v, want %v and %v", angle, got, s, c)
			}
		}
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
	f.Poses(&s, AllParts, poses)
	for i, at := range times {
		if want := f.Central.PoseAt(at); poses[i] != want {
			t.Fatalf("pose at %.3f s = %v, want %v", at, poses[i], want)
		}
	}
}

func TestClubParts(t *testing.T) {
	for _, c := range []struct {
		name  string
		parts Parts
		want  bool
	}{
		{"nothing", 0, true},
		{"the grip", Grip.Set(), true},
		{"the whole club", Grip.Set() | Shaft.Set() | Clubhead.Set(), true},
		{"a hand and the club", TrailHand.Set() | Shaft.Set(), false},
		{"the trail foot, the last of the body", TrailFoot.Set(), false},
		{"the head, the first", Head.Set(), false},
	} {
		if got := c.parts.Club(); got != c.want {
			t.Errorf("%s: Club() = %v, want %v", c.name, got, c.want)
		}
	}
}

// TestLevel holds level unit vectors to the bit against those of package r3.
func TestLevel(t *testing.T) {
	for k := range 500 {
		x, y := math.Sin(float64(k)), 3*math.Cos(1.7*float64(k))
		if got, want := level(x, y), r3.Unit(geom.Vec{X: x, Y: y}); got != want {
			t.Errorf("along %v, %v: %v, want %v", x, y, got, want)
		}
	}
}

// TestPartsAlone: whichever parts are wanted, they are those of the whole pose, and
// unless they hang together with one that is, the others are left alone.
func TestPartsAlone(t *testing.T) {
	f, err := NewFamily(golfer(1.71), clubNamed("7-iron"), Style{})
	if err != nil {
		t.Fatal(err)
	}
	s, err := f.Member(Variations(1, 7)[0])
	if err != nil {
		t.Fatal(err)
	}
	times := []float64{0, 0.4, 0.9, 1.1, 1.2, 1.31, 1.5, 2}
	f.SetTimes(times)
	whole := make([]Pose, len(times))
	f.Poses(s, AllParts, whole)
	var wants []Parts
	for p := range NumParts {
		wants = append(wants, p.Set(), p.Set()|ClubParts, AllParts&^p.Set())
	}
	for _, want := range append(wants, 0, ClubParts, BodyParts) {
		poses, own := make([]Pose, len(times)), make([]Pose, len(times))
		each := make([]Parts, len(times))
		for i := range each {
			each[i] = want
		}
		f.Poses(s, want, poses)
		f.PosesOf(s, each, own)
		for i, at := range times {
			if poses[i] != own[i] {
				t.Errorf("parts %b at %v s: %v one way, %v the other", want, at, poses[i], own[i])
			}
			for p := range NumParts {
				is := poses[i][p]
				if is != whole[i][p] && (want.Has(p) || is != (geom.Capsule{})) {
					t.Errorf("parts %b at %v s: %v is %v, want %v", want, at, p, is, whole[i][p])
				}
			}
			if want.Club() && poses[i][Head] != (geom.Capsule{}) {
				t.Errorf("parts %b: the head is %v, want it left alone", want, poses[i][Head])
			}
		}
	}
	if got := s.PartAt(1.1, LeadForearm); got != whole[3][LeadForearm] {
		t.Errorf("forearm at the top: %v alone, %v in the pose", got, whole[3][LeadForearm])
	}
}
