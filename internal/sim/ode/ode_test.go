package ode

import (
	"math"
	"testing"
)

// oscillator is y” = −y, whose solution from (1, 0) is cos t.
func oscillator(_ float64, y, dy []float64) { dy[0], dy[1] = y[1], -y[0] }

func TestIntegrateFollowsClosedForm(t *testing.T) {
	const tol = 1e-8 // global error allowed for a local tolerance of 1e-10 over one turn
	var last, worst float64
	buf := make([]float64, 2)
	err := Integrate(oscillator, 0, 2*math.Pi, []float64{1, 0}, Options{Tol: 1e-10}, func(s *Segment) bool {
		for _, x := range []float64{0.25, 0.5, 0.75, 1} {
			at := s.T0 + x*(s.T1-s.T0)
			s.At(at, buf)
			worst = max(worst, math.Abs(buf[0]-math.Cos(at)))
		}
		last = s.T1
		return true
	})
	if err != nil || last != 2*math.Pi {
		t.Fatalf("Integrate stopped at %v, err %v", last, err)
	}
	if worst > tol {
		t.Errorf("largest error, dense output included, = %.2g, want ≤ %g", worst, tol)
	}
}

func TestRootFindsTheCrossing(t *testing.T) {
	const tol = 1e-8
	got := 0.0
	_ = Integrate(oscillator, 0, 10, []float64{1, 0}, Options{Tol: 1e-10}, func(s *Segment) bool {
		at, ok := s.Root(func(_ float64, y []float64) float64 { return y[0] })
		if ok {
			got = at
		}
		return !ok
	})
	if math.Abs(got-math.Pi/2) > tol {
		t.Errorf("first zero of cos = %.12f, want π/2", got)
	}
}

func TestTighterToleranceIsFifthOrder(t *testing.T) {
	errAt := func(step float64) float64 {
		var y [2]float64
		_ = Integrate(oscillator, 0, 4, []float64{1, 0}, Options{Tol: 1, Step: step, MaxStep: step}, func(s *Segment) bool {
			copy(y[:], s.Y1)
			return true
		})
		return math.Hypot(y[0]-math.Cos(4), y[1]+math.Sin(4))
	}
	if ratio := errAt(0.1) / errAt(0.05); ratio < 24 || ratio > 40 {
		t.Errorf("halving the step divides the error by %.1f, want about 2⁵ = 32", ratio)
	}
}

func TestStepsRunOut(t *testing.T) {
	err := Integrate(oscillator, 0, 100, []float64{1, 0}, Options{MaxSteps: 5}, func(*Segment) bool { return true })
	if err != ErrSteps {
		t.Errorf("err = %v, want ErrSteps", err)
	}
}
