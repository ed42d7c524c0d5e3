package pendulum

import (
	"fmt"
	"math"
	"testing"
)

// closedTol is the agreement asked of results that can be written down: the
// integration runs at 1e-11 a step.
const closedTol = 1e-6

// afloat is p without gravity.
func afloat(p Pendulum) Pendulum {
	p.Gravity = 0
	return p
}

// cocked is a start with the arm at theta and the club at cock degrees from it.
func cocked(theta, cock float64) State { return State{Theta: theta * deg, Phi: (theta + cock) * deg} }

// coupling returns A, B and I of the equations of motion.
func (p Pendulum) coupling() (a, b, i float64) {
	return p.ArmInertia + p.ClubMass*p.ArmLength*p.ArmLength, p.ClubMoment * p.ArmLength, p.ClubSpin
}

var closedCases = []struct {
	name string
	p    Pendulum
	cock float64 // deg
}{{"A", afloat(setA()), 90}, {"B", afloat(setB(0.352, 0)), 120}}

// With the wrist locked and a steady torque, the arm has turned
// Q t² / (2 (A + I + 2 B cos d)).
func TestLockedWrist(t *testing.T) {
	for _, c := range closedCases {
		for _, q := range []float64{25, 60, 100} {
			const hold = 0.2 // s
			run, err := c.p.Swing(cocked(135, c.cock), Drive{Hub: steady(q), HoldUntil: hold}, 0, 1e-11)
			if err != nil {
				t.Fatal(err)
			}
			at := 0
			for at < len(run.Times)-1 && run.Times[at] < run.Release {
				at++
			}
			a, b, i := c.p.coupling()
			want := q * hold * hold / (2 * (a + i + 2*b*math.Cos(c.cock*deg)))
			near(t, fmt.Sprintf("%s, %g N m: turned", c.name, q), 135*deg-run.States[at].Theta, want, closedTol)
		}
	}
}

// A wrist held by a one-way stop comes free when the arm has turned
// (I + B cos d) / (2 B sin d), whatever the torque (the effect that
// W. M. Pickering and G. T. Vickers 1999, Sports Eng. 2:161–172, describe).
func TestNaturalRelease(t *testing.T) {
	want := map[string]float64{"A": 50.827, "B": 40.372}    // deg, computed by hand
	times := map[float64]float64{60: 0.21964, 100: 0.17013} // s, set A
	const printed = 5e-4                                    // deg: the hand computation's last digit
	for _, c := range closedCases {
		a, b, i := c.p.coupling()
		sin, cos := math.Sincos(c.cock * deg)
		angle := (i + b*cos) / (2 * b * sin)
		near(t, c.name+": release angle by hand, deg", angle/deg, want[c.name], printed)
		for _, q := range []float64{10, 60, 100, 300} {
			run, err := c.p.Swing(cocked(135, c.cock), Drive{Hub: steady(q), Stop: true}, 0, 1e-11)
			if err != nil {
				t.Fatal(err)
			}
			// Steady acceleration: the time says how far the arm has turned.
			turned := q * run.Release * run.Release / (2 * (a + i + 2*b*cos))
			near(t, fmt.Sprintf("%s, %g N m: release angle", c.name, q), turned, angle, closedTol)
			if s, ok := times[q]; ok && c.name == "A" {
				near(t, fmt.Sprintf("%g N m: release time", q), run.Release, s, 5e-6)
			}
		}
	}
}

// inLine lets a swing that turns rigidly at 1 rad/s go and returns its state
// when club and arm are in line. Without gravity only the wrist angle matters:
// the start is found from which both pass 0 together.
func inLine(t *testing.T, p Pendulum, cock float64) State {
	t.Helper()
	run := func(theta float64) State {
		s := cocked(theta, cock)
		s.W, s.V = -1, -1
		r, err := p.Swing(s, Drive{Hub: steady(0)}, 0, 1e-12)
		if err != nil {
			t.Fatal(err)
		}
		return r.Final
	}
	lo, hi := 0.0, 135.0 // deg
	for range 50 {
		mid := (lo + hi) / 2
		if run(mid).Theta < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return run((lo + hi) / 2)
}

// The undriven swing keeps momentum and energy, so that both rates follow where
// club and arm are in line; the arm gives up most of its energy to the club
// (R. White 2006, Am. J. Phys. 74:1088–1094).
func TestUndrivenSwing(t *testing.T) {
	want := map[string][4]float64{ // arm, club, clubhead over R + L at 1 rad/s, club's share of energy
		"A": {0.495024, 1.734746, 2.215135, 0.827267},
		"B": {0.308840, 1.770245, 2.138750, 0.924413},
	}
	for _, c := range closedCases {
		a, b, i := c.p.coupling()
		cos := math.Cos(c.cock * deg)
		h, e := a+i+2*b*cos, (a+i+2*b*cos)/2
		// (A+B) w + (I+B) v = H and A w²/2 + I v²/2 + B w v = E, the root with v > w.
		k, m := h/(i+b), (a+b)/(i+b) // v = k − m w
		qa, qb, qc := a/2+i*m*m/2-b*m, b*k-i*k*m, i*k*k/2-e
		w := (-qb - math.Sqrt(qb*qb-4*qa*qc)) / (2 * qa)
		v := k - m*w

		got := inLine(t, c.p, c.cock)
		near(t, c.name+": arm rate", -got.W, w, closedTol)
		near(t, c.name+": club rate", -got.V, v, closedTol)
		head := c.p.ClubheadSpeed(got)
		near(t, c.name+": clubhead", head, c.p.ArmLength*w+c.p.ClubLength*v, closedTol)
		// The club's energy is that of its own mass centre and spin: all but the arm's.
		share := 1 - c.p.ArmInertia*got.W*got.W/2/c.p.Kinetic(got)
		for n, pair := range [][2]float64{{w, want[c.name][0]}, {v, want[c.name][1]}, {head, want[c.name][2]}, {share, want[c.name][3]}} {
			near(t, fmt.Sprintf("%s: printed figure %d", c.name, n), pair[0], pair[1], 2e-6)
		}
	}
}

// The arm stops dead, and all its energy is the club's, when
// I (A + I + 2 B cos d) = (I + B)².
func TestFullTransfer(t *testing.T) {
	for n, printed := range []float64{0.32538, 0.57896} {
		c := closedCases[n]
		_, b, i := c.p.coupling()
		c.p.ArmInertia = (i+b)*(i+b)/i - i - 2*b*math.Cos(c.cock*deg) - c.p.ClubMass*c.p.ArmLength*c.p.ArmLength
		near(t, c.name+": arm inertia", c.p.ArmInertia, printed, 5e-6)
		near(t, c.name+": arm rate in line", inLine(t, c.p, c.cock).W, 0, closedTol)
	}
}

// Kinetic energy at impact is what hub, wrist and gravity have done.
func TestEnergyAudit(t *testing.T) {
	p := setB(0.352, 0)
	const q, w = 100.0, 10.0
	start := cocked(135, 120)
	run, err := p.Swing(start, Drive{Hub: steady(q), Wrist: steady(w)}, 0, 1e-11)
	if err != nil {
		t.Fatal(err)
	}
	end := run.Final
	height := func(s State) float64 {
		return (p.ArmMoment+p.ClubMass*p.ArmLength)*math.Cos(s.Theta) + p.ClubMoment*math.Cos(s.Phi)
	}
	work := q*(start.Theta-end.Theta) + p.Gravity*(height(end)-height(start)) +
		w*((start.Phi-start.Theta)-(end.Phi-end.Theta))
	near(t, "kinetic energy, J", p.Kinetic(end), work, closedTol*work)
	near(t, "kinetic energy, J", p.Kinetic(end), 394.809, 5e-4)
}
