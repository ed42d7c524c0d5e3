// Package ode integrates small systems of ordinary differential equations with
// error control and finds events between steps. The registries hold no kept Go
// library for this (gonum has none), hence our own: the Dormand–Prince 5(4)
// pair with its fourth-order dense output.
//
// Sources: J. R. Dormand and P. J. Prince 1980, J. Comput. Appl. Math. 6:19–26;
// dense output and step control as in E. Hairer, S. P. Nørsett and G. Wanner
// 1993, Solving Ordinary Differential Equations I, sections II.4 and II.6.
package ode

import (
	"errors"
	"math"
)

// Func writes the derivative of y at t into dy; both have the same length.
type Func func(t float64, y, dy []float64)

// Options bound the error and the work of an integration.
type Options struct {
	Tol      float64 // local error per step, absolute and relative; 0 means 1e-9
	Step     float64 // first step; 0 means (end − start)/100
	MaxStep  float64 // longest step; 0 means no bound
	MaxSteps int     // give up after this many tries; 0 means 100,000
}

// ErrSteps says that the steps ran out before the end was reached.
var ErrSteps = errors.New("integration needs more steps than allowed")

// Segment is one accepted step with its interpolant.
type Segment struct {
	T0, T1 float64
	Y0, Y1 []float64
	coef   [5][]float64
}

// At writes the solution at t, T0 ≤ t ≤ T1, into y.
func (s *Segment) At(t float64, y []float64) {
	x := (t - s.T0) / (s.T1 - s.T0)
	for i := range y {
		y[i] = s.coef[0][i] + x*(s.coef[1][i]+(1-x)*(s.coef[2][i]+x*(s.coef[3][i]+(1-x)*s.coef[4][i])))
	}
}

// Root returns the time in the segment at which g crosses zero, to 1e-13 of the
// step, and whether it does: g must differ in sign at the two ends.
func (s *Segment) Root(g func(t float64, y []float64) float64) (float64, bool) {
	y := make([]float64, len(s.Y0))
	lo, hi := s.T0, s.T1
	gLo, gHi := g(lo, s.Y0), g(hi, s.Y1)
	if gLo == 0 {
		return lo, true
	}
	if gLo*gHi > 0 {
		return 0, false
	}
	for range 60 {
		mid := (lo + hi) / 2
		s.At(mid, y)
		if v := g(mid, y); v*gLo > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi, true
}

// Butcher table of the 5(4) pair.
var (
	nodes = [7]float64{0, 1. / 5, 3. / 10, 4. / 5, 8. / 9, 1, 1}
	table = [7][6]float64{
		{},
		{1. / 5},
		{3. / 40, 9. / 40},
		{44. / 45, -56. / 15, 32. / 9},
		{19372. / 6561, -25360. / 2187, 64448. / 6561, -212. / 729},
		{9017. / 3168, -355. / 33, 46732. / 5247, 49. / 176, -5103. / 18656},
		{35. / 384, 0, 500. / 1113, 125. / 192, -2187. / 6784, 11. / 84},
	}
	errorWeights = [7]float64{71. / 57600, 0, -71. / 16695, 71. / 1920, -17253. / 339200, 22. / 525, -1. / 40}
	denseWeights = [7]float64{-12715105075. / 11282082432, 0, 87487479700. / 32700410799, -10690763975. / 1880347072,
		701980252875. / 199316789632, -1453857185. / 822651844, 69997945. / 29380423}
)

// Integrate carries y0 from start to end and hands every accepted step to each,
// which may stop the integration by returning false. The Segment is reused: it
// is only good during the call.
func Integrate(f Func, start, end float64, y0 []float64, opt Options, each func(*Segment) bool) error {
	tol, h, most := opt.Tol, opt.Step, opt.MaxSteps
	if tol == 0 {
		tol = 1e-9
	}
	if h == 0 {
		h = (end - start) / 100
	}
	if most == 0 {
		most = 100_000
	}
	n := len(y0)
	buf := make([]float64, 14*n)
	take := func() []float64 { s := buf[:n:n]; buf = buf[n:]; return s }
	seg := Segment{Y0: take(), Y1: take()}
	for i := range seg.coef {
		seg.coef[i] = take()
	}
	var k [7][]float64
	for i := range k {
		k[i] = take()
	}
	copy(seg.Y0, y0)
	t := start
	f(t, seg.Y0, k[0])
	for range most {
		if t >= end {
			return nil
		}
		if opt.MaxStep > 0 {
			h = min(h, opt.MaxStep)
		}
		h = min(h, end-t)
		for s := 1; s < 7; s++ {
			for i := range n {
				sum := 0.0
				for j := range s {
					sum += table[s][j] * k[j][i]
				}
				seg.Y1[i] = seg.Y0[i] + h*sum
			}
			f(t+nodes[s]*h, seg.Y1, k[s])
		}
		norm := 0.0
		for i := range n {
			e := 0.0
			for s := range 7 {
				e += errorWeights[s] * k[s][i]
			}
			e *= h / (tol * (1 + max(math.Abs(seg.Y0[i]), math.Abs(seg.Y1[i]))))
			norm += e * e
		}
		norm = math.Sqrt(norm / float64(n))
		if norm > 1 || math.IsNaN(norm) {
			h *= max(0.2, 0.9/fifthRoot(min(norm, 1e10)))
			if math.IsNaN(norm) {
				h = h0(t, end)
			}
			continue
		}
		seg.T0, seg.T1 = t, t+h
		for i := range n {
			dy := seg.Y1[i] - seg.Y0[i]
			b := h*k[0][i] - dy
			d := 0.0
			for s := range 7 {
				d += denseWeights[s] * k[s][i]
			}
			seg.coef[0][i], seg.coef[1][i], seg.coef[2][i] = seg.Y0[i], dy, b
			seg.coef[3][i], seg.coef[4][i] = dy-h*k[6][i]-b, h*d
		}
		if !each(&seg) {
			return nil
		}
		t = seg.T1
		copy(seg.Y0, seg.Y1)
		copy(k[0], k[6])
		h *= min(5, 0.9/fifthRoot(max(norm, 1e-10)))
	}
	return ErrSteps
}

// fifthRoot returns the positive fifth root of x > 0 by Newton's method, close
// enough to control steps with and, unlike the standard library's powers, the
// same to the last bit on every machine.
func fifthRoot(x float64) float64 {
	y := math.Sqrt(math.Sqrt(x))
	for range 8 {
		y4 := y * y * y * y
		y -= (y*y4 - x) / (5 * y4)
	}
	return y
}

// h0 restarts after a step that left the domain of the equations.
func h0(t, end float64) float64 { return (end - t) / 1e4 }
