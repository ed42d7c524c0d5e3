package body

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat"

	"wideberth/internal/sim/plan"
)

// girthTol: eight men stand for all, whose girths vary by 6–10 % (so a mean of
// eight by about 3 %), and the radii are rounded up.
const girthTol = 0.08

// TestThickness holds the capsule radii, which rest on remembered means,
// against men whose girths were read.
func TestThickness(t *testing.T) {
	round := func(girth string) func(record) float64 {
		return func(r record) float64 { return r.must(t, girth+"_mm") / 1000 / (2 * math.Pi) }
	}
	half := func(breadth string) func(record) float64 {
		return func(r record) float64 { return r.must(t, breadth+"_mm") / 1000 / 2 }
	}
	men := readRecords(t, "ansur2_girths.csv")
	for name, c := range map[string]struct {
		model    func(Body) float64
		measured func(record) float64
	}{
		"neck":      {func(b Body) float64 { return b.NeckRadius }, round("neck_girth")},
		"upper arm": {func(b Body) float64 { return b.UpperArmRadius }, round("upper_arm_girth")},
		"forearm":   {func(b Body) float64 { return b.ForearmRadius }, round("forearm_girth")},
		"thigh":     {func(b Body) float64 { return b.ThighRadius }, round("thigh_girth")},
		"shank":     {func(b Body) float64 { return b.ShankRadius }, round("calf_girth")},
		"pelvis":    {func(b Body) float64 { return b.PelvisRadius }, half("buttock_depth")},
		"hand":      {func(b Body) float64 { return b.HandRadius }, half("hand_breadth")},
		"hips":      {func(b Body) float64 { return b.HipBreadth / 2 }, half("hip_breadth")},
		"over the shoulders": {
			func(b Body) float64 { return b.ShoulderWidth/2 + b.UpperArmRadius },
			half("bideltoid_breadth"),
		},
	} {
		ratios := make([]float64, len(men))
		for i, man := range men {
			b := New(plan.Player{Height: man.must(t, "stature_mm") / 1000, Sex: "man"})
			ratios[i] = c.model(b) / c.measured(man)
		}
		if got := stat.Mean(ratios, nil); math.Abs(got-1) > girthTol {
			t.Errorf("%s: model over measured = %.3f, want 1 (tol %g)", name, got, girthTol)
		}
	}
}

// TestOverTheShoulders: joints and upper arms together are as broad as the
// survey's mean bideltoid breadth, which nothing in the package uses.
func TestOverTheShoulders(t *testing.T) {
	const tol = 0.010 // the inset is known to 5 mm a side
	for sex, c := range map[string]struct{ stature, bideltoid float64 }{
		"man":   {1.7562, 0.5104},
		"woman": {1.6285, 0.4503},
	} {
		b := New(plan.Player{Height: c.stature, Sex: sex})
		if got := b.ShoulderWidth + 2*b.UpperArmRadius; math.Abs(got-c.bideltoid) > tol {
			t.Errorf("%s: %.4f m over the shoulders, want %.4f (tol %g)", sex, got, c.bideltoid, tol)
		}
	}
}

// TestCapsulesCover: no part is thicker than its capsule.
func TestCapsulesCover(t *testing.T) {
	for _, sex := range sexes {
		for h := 0.9; h <= 2.4; h += 0.1 {
			b := New(plan.Player{Height: h, Sex: sex})
			for name, pair := range map[string][2]float64{
				"chest depth":  {2 * b.TrunkRadius, b.ChestDepth},
				"chest width":  {2 * b.TrunkRadius, b.ChestWidth},
				"head length":  {2 * b.HeadRadius, b.HeadLength},
				"foot breadth": {2 * b.FootRadius, b.FootBreadth},
				"foot height":  {2 * b.FootRadius, b.AnkleHeight},
				"hip breadth":  {b.HipBreadth, 2 * b.PelvisRadius},
			} {
				if pair[0] < pair[1] {
					t.Errorf("sex %q, %.1f m: %s: %.3f m, want at least %.3f", sex, h, name, pair[0], pair[1])
				}
			}
		}
	}
}
