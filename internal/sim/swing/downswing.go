package swing

import (
	"math"

	"wideberth/internal/sim/body"
	"wideberth/internal/sim/swing/pendulum"
)

// Downswing is the result of the forward dynamics: how arm and club come down.
type Downswing struct {
	Pendulum    pendulum.Pendulum
	HubTorque   float64 // N m, at its height
	WristTorque float64 // N m, late in the downswing, found so that the club meets the ball
	Duration    float64 // top to impact, s
	Release     float64 // from the top until the wrists come free, s
	ArmSpeed    float64 // rate of the arm at impact, rad/s (negative)
	ClubSpeed   float64 // rate of the club at impact, rad/s (negative)
	HeadSpeed   float64 // of the planar model, m/s

	arm, club [profileSteps + 1]float64 // share of the way back to the top still to go
}

// profileSteps is how finely the downswing's course is kept.
const profileSteps = 48

// The golfer's drive. The hub torque rises over rampTime and holds. The wrists
// add a torque late, at its full size from an arm angle of 30° below level on
// (E. J. Sprigings and R. J. Neal 2000, J. Appl. Biomech. 16:356–366, read in
// the abstract), which falls with the speed of uncocking as a muscle's does;
// the speed at which it is gone is that of their wrist muscles (from memory).
// The hub torque's size is set so that a golfer of mean size swings a driver at a
// club golfer's 40–45 m/s, inside the 60–110 N m of published models; it grows
// with mass × stature, as muscle force × lever would.
const (
	hubTorque   = 76.0 // N m for referenceMass and referenceStature
	rampTime    = 0.03 // s
	wristFrom   = 100 * degree
	wristFull   = 60 * degree
	uncockSpeed = 60.0  // rad/s
	wristLeast  = -15.0 // N m
	wristMost   = 120.0 // N m

	referenceMass    = 78.0 // kg
	referenceStature = 1.75 // m
)

// bringDown integrates the downswing from the top to the ball: a double
// pendulum of the golfer's own arms and club, in the plane of the shaft at
// impact. The one free number, the late wrist torque, is found so that the arm
// is at its impact angle when the club is.
func bringDown(b body.Body, c Club, s *score, hubToHands float64) (*Downswing, error) {
	_, armMoment, armInertia := b.ArmInertia()
	d := &Downswing{
		Pendulum: pendulum.Pendulum{
			ArmInertia: armInertia, ArmMoment: armMoment, ArmLength: hubToHands,
			ClubMass: c.Mass, ClubMoment: c.Moment, ClubSpin: c.Spin, ClubLength: c.Reach(),
			Slope: s[chClubSlope][kImpact], Gravity: pendulum.Gravity,
		},
		HubTorque: hubTorque * b.Mass / referenceMass * b.Stature / referenceStature,
	}
	start := pendulum.State{Theta: s[chTheta][kTop], Phi: s[chPhi][kTop]}
	wantArm, end := s[chTheta][kImpact], s[chPhi][kImpact]
	swing := func(wrist, tol float64) (pendulum.Run, error) {
		return d.Pendulum.Swing(start, d.drive(wrist), end, tol)
	}
	// More wrist torque brings the club down earlier, with less of the arm's way done.
	d.WristTorque = crossing(wristLeast, wristMost, 0.01, func(wrist float64) float64 {
		run, err := swing(wrist, 1e-5)
		if err != nil {
			return -math.Pi // too weak to bring the club down at all
		}
		return run.Final.Theta - wantArm
	})
	run, err := swing(d.WristTorque, 1e-8)
	if err != nil {
		return d, err
	}
	d.Duration, d.Release = run.End, run.Release
	d.ArmSpeed, d.ClubSpeed = run.Final.W, run.Final.V
	d.HeadSpeed = d.Pendulum.ClubheadSpeed(run.Final)
	d.keep(run)
	return d, nil
}

// drive returns the torques of a golfer who adds up to wrist N m late.
func (d *Downswing) drive(wrist float64) pendulum.Drive {
	return pendulum.Drive{
		Stop: true,
		Hub:  func(t float64, _ pendulum.State) float64 { return d.HubTorque * min(1, t/rampTime) },
		Wrist: func(_ float64, s pendulum.State) float64 {
			return wrist * smooth((wristFrom-s.Theta)/(wristFrom-wristFull)) * max(0, 1-(s.W-s.V)/uncockSpeed)
		},
	}
}

// smooth is the cubic step from 0 at x ≤ 0 to 1 at x ≥ 1.
func smooth(x float64) float64 {
	x = max(0, min(1, x))
	return x * x * (3 - 2*x)
}

// keep resamples the run on even steps, as the share of the arc still to go.
func (d *Downswing) keep(run pendulum.Run) {
	first, last := run.States[0], run.Final
	seg := 0
	for i := range d.arm {
		t := run.End * float64(i) / profileSteps
		for seg < len(run.Times)-2 && t > run.Times[seg+1] {
			seg++
		}
		h := run.Times[seg+1] - run.Times[seg]
		a, b := run.States[seg], run.States[seg+1]
		x := (t - run.Times[seg]) / h
		d.arm[i] = (hermite(a.Theta, a.W, b.Theta, b.W, h, x) - last.Theta) / (first.Theta - last.Theta)
		d.club[i] = (hermite(a.Phi, a.V, b.Phi, b.V, h, x) - last.Phi) / (first.Phi - last.Phi)
	}
}

// hermite is the cubic from value p0 and slope m0 to p1 and m1 over a length h.
func hermite(p0, m0, p1, m1, h, x float64) float64 {
	x2, x3 := x*x, x*x*x
	return p0*(2*x3-3*x2+1) + m0*h*(x3-2*x2+x) + p1*(3*x2-2*x3) + m1*h*(x3-x2)
}

// share returns how much of the arc is still to go at time t after the top.
func (d *Downswing) share(profile *[profileSteps + 1]float64, t float64) float64 {
	x := max(0, min(1, t/d.Duration)) * profileSteps
	i := min(int(x), profileSteps-1)
	slope := func(k int) float64 {
		if k == 0 {
			return 0
		}
		if k == profileSteps {
			return 1.5*profile[k] - 2*profile[k-1] + 0.5*profile[k-2]
		}
		return (profile[k+1] - profile[k-1]) / 2
	}
	return hermite(profile[i], slope(i), profile[i+1], slope(i+1), 1, x-math.Floor(float64(i)))
}
