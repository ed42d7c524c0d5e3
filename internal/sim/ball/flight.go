package ball

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/ode"
	"wideberth/internal/sim/r3"
)

// Options of a flight; the zero value suits a room.
type Options struct {
	Aero    *Aero   // nil: BearmanHarvey
	Tol     float64 // local error of the integration (m, m/s); 0: 1e-6
	MaxTime float64 // s; 0: 5, longer than a ball can stay off the floor of a room
	Trail   bool    // keep the way there, not only its end
}

// Path is a flight from launch to first contact.
type Path struct {
	End   Contact
	Trail []Sample // only with Options.Trail: in order of time, both ends included
}

// Sample is the ball at one time (s after launch).
type Sample struct {
	Time float64
	State
}

const (
	// touch (m) is the gap at which a ball that closes in has arrived. It is
	// far finer than the 0.1 mm promised, since the search converges as fast as
	// Newton's.
	touch = 1e-10
	// inside (m) is an overlap too deep to be rounding: the ball starts in there.
	inside = 1e-4
	// trailStep (s) is the longest time between samples of a trail: 0.2 m at 80 m/s.
	trailStep = 0.0025
)

// Fly follows a ball from launch until its surface first touches a target. With
// no target in reach it ends after MaxTime with KindNone.
//
// The spin vector stays as it is: a ball loses spin with a time constant of
// about 24 s at 45 m/s (A. J. Smits and D. R. Smith 1994, as quoted by
// A. M. Nathan 2008), under 1 % in the 0.15 s it takes to cross a room.
func Fly(l Launch, air Air, targets []Target, opt Options) Path {
	return fly(l.State(), air, targets, opt)
}

func fly(start State, air Air, targets []Target, opt Options) Path {
	aero := opt.Aero
	if aero == nil {
		aero = &BearmanHarvey
	}
	tol, maxTime := opt.Tol, opt.MaxTime
	if tol == 0 {
		tol = 1e-6
	}
	if maxTime == 0 {
		maxTime = 5
	}
	f := forces{air: air, aero: aero, drag: air.Density * area / (2 * Mass)}
	if spin := geom.Norm(start.W); spin > 0 {
		f.spin, f.axis = spin, r3.Scale(1/spin, start.W)
	}
	p := Path{}
	if opt.Trail {
		p.Trail = append(p.Trail, Sample{0, start})
	}
	last, lastTime, arrived := start, 0.0, false
	y0 := [6]float64{start.P.X, start.P.Y, start.P.Z, start.V.X, start.V.Y, start.V.Z}
	step := ode.Options{Tol: tol, Step: 0.02, MaxStep: 0.1}
	// The only error is that steps run out; the ball then ends where it got to,
	// as nothing met, which a caller has to deal with in any case.
	_ = ode.Integrate(f.derivative, 0, maxTime, y0[:], step, func(seg *ode.Segment) bool {
		last, lastTime = stateOf(seg.Y1, start.W), seg.T1
		i, s, t := f.meet(seg, start.W, targets)
		if i >= 0 {
			last, lastTime, arrived = s, t, true
			p.End = contactOf(&targets[i], s, t)
		}
		if opt.Trail {
			p.Trail = trail(p.Trail, seg, lastTime, start.W)
		}
		return !arrived
	})
	if !arrived {
		p.End = Contact{Kind: KindNone, Time: lastTime, Speed: geom.Norm(last.V), Arrival: last,
			Point: [3]float64{last.P.X, last.P.Y, last.P.Z}}
	}
	return p
}

// forces are the constants of one flight.
type forces struct {
	air  Air
	aero *Aero
	drag float64  // ρA/2m, 1/m
	spin float64  // rad/s
	axis geom.Vec // unit vector of the spin, zero without spin
}

// derivative is the equation of motion; y holds position and velocity. Lift is
// ½ρAC_L|V| (ŵ×V): along the Magnus force, and less where spin is not square to
// the motion.
func (f *forces) derivative(_ float64, y, dy []float64) {
	v := geom.Vec{X: y[3], Y: y[4], Z: y[5]}
	a := geom.Vec{Z: -Gravity}
	if speed := geom.Norm(v); f.drag > 0 && speed > 0 {
		cd, cl := f.aero.At(speed, f.spin, f.air)
		a = r3.Sub(a, r3.Scale(f.drag*cd*speed, v))
		a = r3.Add(a, r3.Scale(f.drag*cl*speed, r3.Cross(f.axis, v)))
	}
	dy[0], dy[1], dy[2] = v.X, v.Y, v.Z
	dy[3], dy[4], dy[5] = a.X, a.Y, a.Z
}

// meet returns the first target that the ball touches within the step, with the
// state and the time, or -1.
//
// It is conservative advancement with a bound on acceleration: between ball and
// convex target lies a plane that the ball must reach first; with closing speed
// c and acceleration at most a that takes at least the h of gap = ch + ah²/2.
// So no target can be stepped over, however thin.
func (f *forces) meet(seg *ode.Segment, w geom.Vec, targets []Target) (int, State, float64) {
	y := make([]float64, 6)
	start := stateOf(seg.Y0, w)
	fastest := geom.Norm(start.V) + Gravity*(seg.T1-seg.T0) // drag and lift only slow
	a := 1.01 * (Gravity + f.drag*f.aero.Bound*fastest*fastest)
	hit, best, found := -1, seg.T1, State{}
	for i := range targets {
		t, s := seg.T0, start
		for {
			gap, n := targets[i].gap(s.P)
			c := -r3.Dot(s.V, n)
			h := 0.0
			switch root := math.Sqrt(c*c + 2*a*max(gap, 0)); {
			case gap < -inside, gap <= touch && c > 0:
			case c > 0:
				h = 2 * max(gap, 0) / (c + root)
			default:
				h = (root - c) / a
			}
			if h < 1e-13 { // touching, or as good as at rest on the target
				hit, best, found = i, t, s
				break
			}
			if t += h; t >= best {
				break
			}
			seg.At(t, y)
			s = stateOf(y, w)
		}
	}
	return hit, found, best
}

func stateOf(y []float64, w geom.Vec) State {
	return State{P: geom.Vec{X: y[0], Y: y[1], Z: y[2]}, V: geom.Vec{X: y[3], Y: y[4], Z: y[5]}, W: w}
}

// trail appends evenly spaced samples of the step up to the time until.
func trail(to []Sample, seg *ode.Segment, until float64, w geom.Vec) []Sample {
	span := until - seg.T0
	n := max(1, int(math.Ceil(span/trailStep)))
	y := make([]float64, 6)
	for i := 1; i <= n; i++ {
		t := seg.T0 + span*float64(i)/float64(n)
		seg.At(t, y)
		to = append(to, Sample{t, stateOf(y, w)})
	}
	return to
}
