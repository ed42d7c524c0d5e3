package pendulum

import (
	"math"
	"testing"
)

const deg = math.Pi / 180

// setA is the parameter set of reference run A: sizes as published by
// Cochran and Stobbs 1968, Jorgensen 1970 and Penner 2003 (from memory).
func setA() Pendulum {
	return Pendulum{ArmInertia: 1.15, ArmMoment: 1.15, ArmLength: 0.62, ClubMass: 0.394, ClubMoment: 0.30,
		ClubSpin: 0.33, ClubLength: 1.10, Slope: 50 * deg, Gravity: 9.80665}
}

// setB is the listing of D. M. Bourg and B. Bywalec 2013, Physics for Game
// Developers, ch. 19 (constants read in public copies of the listing), with the
// club's inertia given.
func setB(spin, accel float64) Pendulum {
	return Pendulum{ArmInertia: 1.15, ArmMoment: 7.3 * 0.62 * 0.5, ArmLength: 0.62, ClubMass: 0.4,
		ClubMoment: 0.4 * 1.1 * 0.75, ClubSpin: spin, ClubLength: 1.1, Slope: math.Pi / 2, Gravity: 9.8, HubAccel: accel}
}

func steady(q float64) func(float64, State) float64 {
	return func(float64, State) float64 { return q }
}

// relTol is the agreement asked of runs that were integrated independently with
// other programs (Runge–Kutta, other step sizes).
const relTol = 1e-3

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.6f, want %.6f (± %.2g)", what, got, want, tol)
	}
}

func TestPendulumReferenceRuns(t *testing.T) {
	startA := State{Theta: 135 * deg, Phi: 225 * deg}
	startB := State{Theta: 135 * deg, Phi: 255 * deg}
	tests := []struct {
		name                     string
		p                        Pendulum
		start                    State
		drive                    Drive
		time, head, hands, theta float64
		release                  float64
	}{
		{"A 60 N m", setA(), startA, Drive{Hub: steady(60), Stop: true}, 0.4052, 30.764, 6.958, -42.025, 0.2089},
		{"A 80 N m", setA(), startA, Drive{Hub: steady(80), Stop: true}, 0.3566, 34.953, 8.053, -43.059, 0.1831},
		{"A 100 N m", setA(), startA, Drive{Hub: steady(100), Stop: true}, 0.3221, 38.693, 9.019, -43.721, 0.1650},
		{"B light club", setB(0.08, 0), startB, Drive{Hub: steady(100), Wrist: steady(10)}, 0.300250, 42.561543, 12.165899, -47.90106, 0},
		{"B light club, hub forward", setB(0.08, 0.98), startB, Drive{Hub: steady(100), Wrist: steady(10)}, 0.299502, 42.735785, 12.095420, -48.342696, 0},
		{"B", setB(0.352, 0), startB, Drive{Hub: steady(100), Wrist: steady(10)}, 0.304250, 45.361050, 7.804520, -68.633516, 0},
		{"B, hub forward", setB(0.352, 0.98), startB, Drive{Hub: steady(100), Wrist: steady(10)}, 0.303077, 45.237022, 7.659000, -67.446223, 0},
		{"B, hub back", setB(0.352, -0.98), startB, Drive{Hub: steady(100), Wrist: steady(10)}, 0.305445, 45.480332, math.NaN(), math.NaN(), 0},
		{"B stop", setB(0.352, 0), startB, Drive{Hub: steady(100), Stop: true}, 0.305003, 42.848, 7.776, -51.61, 0.1396},
		{"B stop, hub forward", setB(0.352, 0.98), startB, Drive{Hub: steady(100), Stop: true}, 0.303774, 42.678, 7.670, -50.67, 0.1374},
		{"B held 0.05 s", setB(0.35225, 0.98), startB, Drive{Hub: steady(100), HoldUntil: 0.05}, 0.3125, 41.846, 10.000, -89.73, 0.05},
		{"B held 0.10 s", setB(0.35225, 0.98), startB, Drive{Hub: steady(100), HoldUntil: 0.10}, 0.3051, 42.919, 7.868, -56.32, 0.10},
		{"B held 0.15 s", setB(0.35225, 0.98), startB, Drive{Hub: steady(100), HoldUntil: 0.15}, 0.3040, 42.691, 7.694, -51.30, 0.15},
		{"B held 0.20 s", setB(0.35225, 0.98), startB, Drive{Hub: steady(100), HoldUntil: 0.20}, 0.3084, 42.637, 8.438, -64.22, 0.20},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			run, err := tt.p.Swing(tt.start, tt.drive, 0, 1e-9)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "time", run.End, tt.time, relTol*tt.time)
			near(t, "clubhead speed", tt.p.ClubheadSpeed(run.Final), tt.head, relTol*tt.head)
			if !math.IsNaN(tt.hands) {
				near(t, "hand speed", tt.p.HandSpeed(run.Final), tt.hands, relTol*tt.hands)
				near(t, "arm angle, deg", run.Final.Theta/deg, tt.theta, relTol*math.Abs(tt.theta))
			}
			near(t, "release", run.Release, tt.release, relTol*tt.release+1e-12)
		})
	}
}
