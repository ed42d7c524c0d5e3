package body

import (
	"math"
	"testing"

	"wideberth/internal/sim/plan"
)

// TestArmInertiaByHand works one arm out on paper: 100 kg body, segments of
// 0.3, 0.25 and 0.06 m to the grip (palm 0.12 m), for each arm
//
//	upper arm 2.8 kg at 0.1308 m, gyration 0.0966 m
//	forearm   1.6 kg at 0.4075 m, gyration 0.07575 m
//	hand      0.6 kg at 0.61072 m, gyration 0.03564 m
func TestArmInertiaByHand(t *testing.T) {
	b := Body{UpperArm: 0.3, Forearm: 0.25, Hand: 0.06, Mass: 100}
	mass, first, inertia := b.ArmInertia()
	const tol = 1e-5 // the figures below have five decimals
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"mass", mass, 10},
		{"first moment", first, 2 * (0.36624 + 0.65200 + 0.36643)},
		{"inertia", inertia, 2 * (0.04790 + 0.02613 + 0.26569 + 0.00918 + 0.22379 + 0.00076)},
	} {
		if math.Abs(c.got-c.want) > 3*tol {
			t.Errorf("%s = %.6f, want %.6f (tol %g)", c.name, c.got, c.want, 3*tol)
		}
	}
}

func TestArmInertiaOfPeople(t *testing.T) {
	// Published double pendulums give 1.0–1.3 kg·m² about the hub for a man's
	// arms (from memory: a range, not a figure).
	if _, _, got := New(plan.Player{Height: 1.78, Sex: "man"}).ArmInertia(); got < 1.0 || got > 1.3 {
		t.Errorf("inertia of a man of 1.78 m = %.3f kg·m², want 1.0–1.3", got)
	}
	for _, h := range []float64{0.9, 1.4, 1.7, 2.0, 2.4} {
		b := New(plan.Player{Height: h})
		mass, first, inertia := b.ArmInertia()
		if first*first >= mass*inertia {
			t.Errorf("%.1f m: first moment %v is too large for mass %v and inertia %v", h, first, mass, inertia)
		}
		if r := first / mass; r < 0.35*b.Arm() || r > 0.55*b.Arm() {
			t.Errorf("%.1f m: centre of mass at %.3f m of an arm of %.3f m", h, r, b.Arm())
		}
		long := New(plan.Player{Height: h, Arm: 1.1 * b.Arm()})
		_, longFirst, longInertia := long.ArmInertia()
		if math.Abs(longFirst-1.1*first) > exactTol || math.Abs(longInertia-1.21*inertia) > exactTol {
			t.Errorf("%.1f m: a 10 %% longer arm has moments %v, %v, want %v, %v", h, longFirst, longInertia, 1.1*first, 1.21*inertia)
		}
	}
}
