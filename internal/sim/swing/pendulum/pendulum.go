// Package pendulum integrates the downswing's double pendulum: an arm that turns
// about a hub and a club hinged to it at the wrists, in one plane. Package swing
// says whose arm and club, and what drives them. Metres, kilograms, seconds, rad.
package pendulum

import (
	"errors"
	"math"

	"wideberth/internal/sim/ode"
)

// Gravity is standard gravity, m/s² (ISO 80000-3).
const Gravity = 9.80665

// Pendulum is the planar model of the downswing: an arm that turns about a hub
// between the shoulders, and a club hinged to it at the wrists. Angles are
// radians from straight down the plane, positive on the backswing side; both
// fall through 0 near the ball.
//
// Model: A. J. Cochran and J. Stobbs 1968, Search for the Perfect Swing;
// T. P. Jorgensen 1970, Am. J. Phys. 38:644–651. With A = J + M R², B = S R,
// d = φ − θ, g' = g sin(slope), the equations are
//
//	A θ″ + B cos d φ″ = −Q + W + B sin d φ′² − (SA + M R)(g' sin θ − a cos θ)
//	I φ″ + B cos d θ″ = −W − B sin d θ′² − S (g' sin φ − a cos φ)
type Pendulum struct {
	ArmInertia float64 // J: of the arms about the hub, kg m²
	ArmMoment  float64 // SA: first moment of the arms about the hub, kg m
	ArmLength  float64 // R: hub to wrists, m
	ClubMass   float64 // M, kg
	ClubMoment float64 // S: first moment of the club about the wrists, kg m
	ClubSpin   float64 // I: inertia of the club about the wrists, kg m²
	ClubLength float64 // L: wrists to clubhead, m
	Slope      float64 // of the plane to the ground, rad
	Gravity    float64 // m/s²; 0 for none
	HubAccel   float64 // a: of the hub towards the target, m/s²
}

// State is the pendulum at one instant.
type State struct {
	Theta, Phi float64 // arm and club angle, rad
	W, V       float64 // their rates, rad/s
}

// Drive is what the golfer does to the pendulum.
type Drive struct {
	Hub   func(t float64, s State) float64 // Q: turns the arm towards 0, N m
	Wrist func(t float64, s State) float64 // W: opens the wrist once it is free, N m; nil for none
	// Stop makes the starting wrist angle a one-way stop: arm and club turn as
	// one until the stop would have to pull.
	Stop bool
	// HoldUntil keeps the wrist locked until this time whatever the stop says, s.
	HoldUntil float64
}

// Run is one integrated downswing.
type Run struct {
	Times   []float64
	States  []State
	Release float64 // when the wrist came free, s; 0 if it never was held
	End     float64 // when the club reached the end angle, s
	Final   State
}

// ErrNoImpact says that the club never came down to the ball.
var ErrNoImpact = errors.New("the downswing never reaches the ball")

// errMasses says that no arm and club of this world have such inertias: moving
// them would take no energy, or less.
var errMasses = errors.New("the inertias of arm and club do not go together")

// ClubheadSpeed returns the speed of the clubhead, m/s.
func (p Pendulum) ClubheadSpeed(s State) float64 {
	r, l := p.ArmLength*s.W, p.ClubLength*s.V
	return math.Sqrt(max(r*r+l*l+2*r*l*math.Cos(s.Phi-s.Theta), 0)) // rounding may take it below
}

// HandSpeed returns the speed of the wrists, m/s.
func (p Pendulum) HandSpeed(s State) float64 { return math.Abs(p.ArmLength * s.W) }

// Energy returns kinetic plus potential energy, J, the potential being 0 with
// arm and club straight down. It is conserved without drive and hub motion.
func (p Pendulum) Energy(s State) float64 {
	return p.Kinetic(s) - p.Gravity*math.Sin(p.Slope)*
		((p.ArmMoment+p.ClubMass*p.ArmLength)*(math.Cos(s.Theta)-1)+p.ClubMoment*(math.Cos(s.Phi)-1))
}

// Kinetic returns the kinetic energy, J.
func (p Pendulum) Kinetic(s State) float64 {
	a, b := p.ArmInertia+p.ClubMass*p.ArmLength*p.ArmLength, p.ClubMoment*p.ArmLength
	return a*s.W*s.W/2 + p.ClubSpin*s.V*s.V/2 + b*math.Cos(s.Phi-s.Theta)*s.W*s.V
}

// loads returns the gravity and hub terms of the two equations, N m.
func (p Pendulum) loads(s State) (arm, club float64) {
	g := p.Gravity * math.Sin(p.Slope)
	return (p.ArmMoment + p.ClubMass*p.ArmLength) * (g*math.Sin(s.Theta) - p.HubAccel*math.Cos(s.Theta)),
		p.ClubMoment * (g*math.Sin(s.Phi) - p.HubAccel*math.Cos(s.Phi))
}

// locked returns the common angular acceleration while the wrist is held, and
// the wrist torque that holding takes (negative: the hands hold the club back).
func (p Pendulum) locked(s State, hub float64) (accel, wrist float64) {
	a, b := p.ArmInertia+p.ClubMass*p.ArmLength*p.ArmLength, p.ClubMoment*p.ArmLength
	sin, cos := math.Sincos(s.Phi - s.Theta)
	armLoad, clubLoad := p.loads(s)
	accel = (-hub - armLoad - clubLoad) / (a + p.ClubSpin + 2*b*cos)
	return accel, -(p.ClubSpin+b*cos)*accel - b*sin*s.W*s.W - clubLoad
}

// free returns both angular accelerations with hub torque hub and wrist torque wrist.
func (p Pendulum) free(s State, hub, wrist float64) (armAccel, clubAccel float64) {
	a, b := p.ArmInertia+p.ClubMass*p.ArmLength*p.ArmLength, p.ClubMoment*p.ArmLength
	sin, cos := math.Sincos(s.Phi - s.Theta)
	armLoad, clubLoad := p.loads(s)
	f := -hub + wrist + b*sin*s.V*s.V - armLoad
	g := -wrist - b*sin*s.W*s.W - clubLoad
	det := a*p.ClubSpin - b*b*cos*cos
	return (p.ClubSpin*f - b*cos*g) / det, (a*g - b*cos*f) / det
}

// Swing integrates from start until the club angle falls to end, or fails after
// three seconds. Steps carry a local error of tol (relative and absolute); the
// release and the end are found by root, not by step.
func (p Pendulum) Swing(start State, d Drive, end, tol float64) (Run, error) {
	run := Run{Times: []float64{0}, States: []State{start}}
	a, b := p.ArmInertia+p.ClubMass*p.ArmLength*p.ArmLength, p.ClubMoment*p.ArmLength
	if !(a > 0 && p.ClubSpin > 0 && a*p.ClubSpin > b*b) {
		return run, errMasses
	}
	wristTorque := func(t float64, s State) float64 {
		if d.Wrist == nil {
			return 0
		}
		return d.Wrist(t, s)
	}
	const limit = 3.0
	t, s := 0.0, start
	opt := ode.Options{Tol: tol, Step: 1e-3, MaxStep: 0.01, MaxSteps: 5000} // of a golfer's some hundred
	record := func(seg *ode.Segment, until float64) {
		y := make([]float64, len(seg.Y0))
		seg.At(until, y)
		t, s = until, fromVector(y)
		run.Times, run.States = append(run.Times, t), append(run.States, s)
	}

	reached := false
	past := func(_ float64, y []float64) float64 { return y[1] - end }
	if d.Stop || d.HoldUntil > 0 {
		excess := func(t float64, y []float64) float64 {
			if t < d.HoldUntil {
				return -1
			}
			if !d.Stop {
				return 1
			}
			s := fromVector(y)
			_, wrist := p.locked(s, d.Hub(t, s))
			return wrist
		}
		f := func(t float64, y, dy []float64) {
			s := fromVector(y)
			accel, _ := p.locked(s, d.Hub(t, s))
			dy[0], dy[1], dy[2], dy[3] = s.W, s.V, accel, accel
		}
		err := ode.Integrate(f, 0, limit, s.vector(), opt, func(seg *ode.Segment) bool {
			until, done := seg.Root(excess)
			if !done {
				until = seg.T1
			}
			if at, down := seg.Root(past); down && at < until {
				until, reached = at, true // down before the wrist came free
			}
			record(seg, until)
			return !done && !reached
		})
		if err != nil {
			return run, err
		}
		run.Release = t
		if reached {
			return p.ended(run, t, s)
		}
	}

	f := func(t float64, y, dy []float64) {
		s := fromVector(y)
		dy[0], dy[1] = s.W, s.V
		dy[2], dy[3] = p.free(s, d.Hub(t, s), wristTorque(t, s))
	}
	err := ode.Integrate(f, t, limit, s.vector(), opt, func(seg *ode.Segment) bool {
		until, done := seg.Root(past)
		if !done {
			until = seg.T1
		}
		record(seg, until)
		reached = done
		return !done
	})
	if err != nil {
		return run, err
	}
	if !reached {
		return run, ErrNoImpact
	}
	return p.ended(run, t, s)
}

// ended is the run that came down at t, if it did so in numbers.
func (p Pendulum) ended(run Run, t float64, s State) (Run, error) {
	sum := s.Theta + s.Phi + s.W + s.V + p.ClubheadSpeed(s)
	if math.IsNaN(sum - sum) { // no number, or one without bounds
		return run, ErrNoImpact
	}
	run.End, run.Final = t, s
	return run, nil
}

func (s State) vector() []float64  { return []float64{s.Theta, s.Phi, s.W, s.V} }
func fromVector(y []float64) State { return State{y[0], y[1], y[2], y[3]} }
