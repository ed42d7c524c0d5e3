package ball

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/r3"
)

var materials = []Material{Cloth, Steel, Foam, Hard, Ground}

func TestRestitutionOfConcrete(t *testing.T) {
	// Speeds off over speeds on as listed for the formula: 70 → 46 m/s and so on.
	for on, off := range map[float64]float64{70: 46, 60: 41, 45: 33, 30: 23, 20: 16} {
		if got := on * Hard.Restitution(on, Likely); math.Abs(got-off) > 0.5 {
			t.Errorf("%g m/s onto concrete comes back at %.1f m/s, want %g (rounded)", on, got, off)
		}
	}
	for _, m := range materials {
		for v := 0.0; v < 110; v++ {
			low, likely, high := m.Restitution(v, Low), m.Restitution(v, Likely), m.Restitution(v, High)
			if !(0 < low && low <= likely && likely <= high && high < 1) {
				t.Fatalf("%s at %g m/s: restitution %.2f, %.2f, %.2f is no range within 0–1", m, v, low, likely, high)
			}
		}
	}
}

// spinning energy included
func motionEnergy(s State) float64 {
	return Mass*r3.Norm2(s.V)/2 + inertiaFactor*Mass*Radius*Radius*r3.Norm2(s.W)/2
}

func TestBounce(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 9))
	vec := func(k float64) geom.Vec {
		return geom.Vec{X: k * rng.NormFloat64(), Y: k * rng.NormFloat64(), Z: k * rng.NormFloat64()}
	}
	for i := range 2000 {
		n := r3.Unit(vec(1))
		s := State{V: vec(30), W: vec(400)}
		if r3.Dot(s.V, n) > 0 {
			s.V = r3.Scale(-1, s.V)
		}
		c := Contact{Material: materials[i%len(materials)], Arrival: s, Normal: n}
		g := Give(i % 3)
		out := bounce(c, g)
		on := -r3.Dot(s.V, n)
		if off, want := r3.Dot(out.V, n), on*c.Material.Restitution(on, g); math.Abs(off-want) > 1e-9 {
			t.Fatalf("case %d: normal speed off = %g, want %g", i, off, want)
		}
		if before, after := motionEnergy(s), motionEnergy(out); after > before*(1+1e-12) {
			t.Fatalf("case %d: a bounce off %s raises the energy from %g to %g J", i, c.Material, before, after)
		}
		// About the point of touch nothing turns the ball: angular momentum stays.
		arm := r3.Scale(-Radius, n)
		moment := func(s State) geom.Vec {
			return r3.Sub(r3.Scale(inertiaFactor*Radius*Radius, s.W), r3.Cross(arm, s.V))
		}
		if d := r3.Norm(r3.Sub(moment(out), moment(s))); d > 1e-9 {
			t.Fatalf("case %d: angular momentum about the touch changes by %g", i, d)
		}
	}
	// With grip enough the ball rolls off: no slip is left.
	s := State{V: geom.Vec{X: -20, Z: 2}, W: geom.Vec{Y: 50}}
	out := bounce(Contact{Material: Hard, Arrival: s, Normal: geom.Vec{X: 1}}, Likely)
	slip := r3.Add(out.V, r3.Cross(out.W, geom.Vec{X: -Radius}))
	if math.Abs(slip.Z) > 1e-12 {
		t.Errorf("slip after a gripping bounce = %g m/s, want 0", slip.Z)
	}
}

// A level ball off a bare wall: e·v back, then a parabola (no air).
func TestBackInAVacuum(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	p.Screen, p.Room.Solids, p.Hung = nil, nil, nil
	s, tee := NewScene(p), p.Tees[0]
	s.Air = Vacuum
	l := Launch{From: geom.Vec{Z: 1.2}, Speed: 40}
	c := s.First(tee, l)
	r := s.Back(c, tee, Likely)
	out := p.Room.Length - Radius - tee.X
	// The wall also grips: falling at g·t the ball keeps 1 − 2/7 of that.
	off := 40 * (0.86 - 0.0029*40)
	t1, t2 := out/40, out/off
	fall := Gravity * t1 * (1 - rolling)
	drop := Gravity*t1*t1/2 + fall*t2 + Gravity*t2*t2/2
	if !r.Reaches || !r.Warn {
		t.Fatalf("return = %+v, want one that reaches the golfer with a warning", r)
	}
	if want := math.Hypot(off, fall+Gravity*t2); math.Abs(r.Speed-want) > 1e-6 {
		t.Errorf("speed at the golfer = %.7f, want %.7f", r.Speed, want)
	}
	if math.Abs(r.Height-(1.2-drop)) > 1e-6 || math.Abs(r.Time-t1-t2) > 1e-8 || math.Abs(r.Side) > 1e-9 {
		t.Errorf("height, time, side = %.7f, %.7f, %g, want %.7f, %.7f, 0", r.Height, r.Time, r.Side, 1.2-drop, t1+t2)
	}
}

func TestBackIsMilderFromSofterThings(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	p.Screen = nil
	s, tee := NewScene(p), p.Tees[0]
	c := s.First(tee, FromClub(p.Clubs[0], 0))
	last := math.Inf(1)
	for _, m := range []Material{Hard, Foam, Cloth} {
		c.Material = m
		low, high := s.Back(c, tee, Low), s.Back(c, tee, High)
		if !high.Reaches || high.Speed >= last || (low.Reaches && low.Speed > high.Speed) {
			t.Errorf("%s: low %+v, high %+v, want less than %.1f m/s and low under high", m, low, high, last)
		}
		last = high.Speed
	}
}

func TestWarning(t *testing.T) {
	if v := math.Sqrt(2 * WarnEnergy / Mass); math.Abs(v-6.60) > 0.01 || math.Abs(v*v/(2*Gravity)-2.22) > 0.01 {
		t.Errorf("the warning starts at %.2f m/s, a drop of %.2f m; the comment says 2.2 m", v, v*v/(2*Gravity))
	}
}

func TestToppedBallRunsUnderAHighScreen(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	topped := func() Contact {
		for _, m := range Misses(FromClub(p.Clubs[1], 0), plan.HandRight) {
			if m.Name == "topped" {
				return NewScene(p).pastFloor(m.Launch.At(p, p.Tees[0]).State())
			}
		}
		panic("no topped ball")
	}
	if c := topped(); c.Kind != KindScreen {
		t.Errorf("screen 0.05 m up: %s (%s), want the screen", c.Surface, c.Kind)
	}
	p.Screen.Bottom = 0.60
	if c := topped(); c.Kind != KindGap || c.Beside != "under" {
		t.Errorf("screen 0.60 m up: %s (%s %s), want under it", c.Surface, c.Kind, c.Beside)
	}
}

func TestTraceIsConnected(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	s := NewScene(p)
	legs := s.Trace(p.Tees[0], FromClub(p.Clubs[2], 0), Likely)
	if len(legs) < 2 {
		t.Fatalf("%d legs, want the way there and back", len(legs))
	}
	for i, leg := range legs {
		first, last := leg.Trail[0], leg.Trail[len(leg.Trail)-1]
		if first.Time != 0 || math.Abs(last.Time-leg.End.Time) > 1e-12 || r3.Norm(r3.Sub(last.P, leg.End.Arrival.P)) > 1e-9 {
			t.Errorf("leg %d: trail runs from %v to %v, want from 0 to its contact", i, first.Time, last)
		}
		if i > 0 && r3.Norm(r3.Sub(first.P, legs[i-1].End.Arrival.P)) > 0 {
			t.Errorf("leg %d starts away from where leg %d ended", i, i-1)
		}
	}
}

func ExampleScene_Back() {
	p := plantest.Loft().WithDefaults()
	p.Screen = nil // a bare front wall
	s, tee := NewScene(p), p.Tees[0]
	r := s.Back(s.First(tee, FromClub(p.Clubs[0], 0)), tee, Likely)
	fmt.Printf("back at the golfer at %.0f m/s, warn: %v\n", r.Speed, r.Warn)
	// Output: back at the golfer at 41 m/s, warn: true
}
