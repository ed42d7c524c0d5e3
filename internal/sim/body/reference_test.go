package body

import (
	"fmt"
	"math"
	"testing"

	"wideberth/internal/sim/plan"
)

const (
	// lineTol covers slopes written to four and intercepts to one decimal.
	lineTol = 0.001
	// roundTol adds the half millimetre that the round-height table drops.
	roundTol = lineTol + 0.0005
	// sdTol is the last decimal of a standard deviation in millimetres.
	sdTol = 0.00011
	// biasTol: the stated bias is a mean over people, taken here at one stature.
	biasTol = 0.0015
)

// fields names what New fills in from each measure of the survey.
var fields = map[string]func(Body) float64{
	"acromial height":      func(b Body) float64 { return b.ShoulderHeight },
	"cervicale height":     func(b Body) float64 { return b.NeckBaseHeight },
	"trochanterion height": func(b Body) float64 { return b.HipHeight },
	"knee height":          func(b Body) float64 { return b.KneeHeight },
	"biacromial breadth":   func(b Body) float64 { return b.ShoulderWidth + 2*shoulderInset },
	"acromion-radiale":     func(b Body) float64 { return b.UpperArm },
	"radiale-stylion":      func(b Body) float64 { return b.Forearm },
	"acromion to wrist":    func(b Body) float64 { return b.UpperArm + b.Forearm },
	"acromion to grip":     func(b Body) float64 { return b.Arm() },
	"palm length":          func(b Body) float64 { return 2 * b.Hand },
	"eye to crown":         func(b Body) float64 { return b.HeadHeight / 2 },
	"head length":          func(b Body) float64 { return b.HeadLength },
	"chest depth":          func(b Body) float64 { return b.ChestDepth },
	"foot length":          func(b Body) float64 { return b.FootLength },
}

// spreads names the standard deviations that a Body carries.
var spreads = map[string]func(Body) float64{
	"acromial height":  func(b Body) float64 { return b.ShoulderHeightSD },
	"acromion to grip": func(b Body) float64 { return b.ArmSD },
}

func TestSurveyLines(t *testing.T) {
	tested := map[string]bool{}
	for _, r := range readRecords(t, "ansur2_regressions.csv") {
		measure, sex := r["measure"], r["sex"]
		field := fields[measure]
		if field == nil {
			continue // span itself and the plane on span: TestArmFromSpan
		}
		tested[measure] = true
		t.Run(fmt.Sprintf("%s, sex %q", measure, sex), func(t *testing.T) {
			for _, h := range []float64{1.50, 1.65, 1.80} {
				b := New(plan.Player{Height: h, Sex: sex})
				want := r.must(t, "slope")*h + r.must(t, "intercept_mm")/1000
				if got := field(b); math.Abs(got-want) > lineTol {
					t.Errorf("at %.2f m: %s = %.4f m, want %.4f (tol %g)", h, measure, got, want, lineTol)
				}
				if sd := spreads[measure]; sd != nil {
					want := r.must(t, "residual_sd_mm") / 1000
					if got := sd(b); math.Abs(got-want) > sdTol {
						t.Errorf("at %.2f m: SD of %s = %.4f m, want %.4f (tol %g)", h, measure, got, want, sdTol)
					}
				}
			}
		})
	}
	for measure := range fields {
		if !tested[measure] {
			t.Errorf("no regression row for %q", measure)
		}
	}
}

func TestRoundHeights(t *testing.T) {
	for _, r := range readRecords(t, "ansur2_predictions.csv") {
		h := r.must(t, "stature_mm") / 1000
		t.Run(fmt.Sprintf("%s of %.2f m", r["sex"], h), func(t *testing.T) {
			b := New(plan.Player{Height: h, Sex: r["sex"]})
			for column, measure := range map[string]string{
				"acromial_height_mm":   "acromial height",
				"acromion_to_wrist_mm": "acromion to wrist",
				"biacromial_mm":        "biacromial breadth",
			} {
				want := r.must(t, column) / 1000
				if got := fields[measure](b); math.Abs(got-want) > roundTol {
					t.Errorf("%s = %.4f m, want %.3f (tol %g)", measure, got, want, roundTol)
				}
			}
		})
	}
}

// TestHandbook holds New against the handbook fractions: equal where they are
// used, off by the survey's own measure of their bias where they are not.
func TestHandbook(t *testing.T) {
	points := map[string]func(Body) float64{
		"ankle height":    func(b Body) float64 { return b.AnkleHeight },
		"knee height":     fields["knee height"],
		"hip height":      fields["trochanterion height"],
		"shoulder height": fields["acromial height"],
		"upper arm":       fields["acromion-radiale"],
		"forearm":         fields["radiale-stylion"],
		"shoulder width":  fields["biacromial breadth"],
		"foot length":     fields["foot length"],
		"foot breadth":    func(b Body) float64 { return b.FootBreadth },
		"chest width":     func(b Body) float64 { return b.ChestWidth },
		"hip width":       func(b Body) float64 { return b.HipBreadth },
		"head height":     func(b Body) float64 { return b.HeadHeight },
	}
	// The head is not from the handbook but must come out like it; women have larger
	// heads for their height (7 mm).
	loose := map[string]float64{"head height": 0.007}
	meanStature := map[string]float64{"man": 1.7562, "woman": 1.6285}
	for _, r := range readRecords(t, "drillis_contini.csv") {
		point := points[r["point"]]
		if point == nil {
			t.Errorf("handbook point %q is not compared", r["point"])
			continue
		}
		for sex, h := range meanStature {
			bias, _ := r.num(t, "bias_"+sex+"_mm")
			want := r.must(t, "fraction")*h - bias/1000
			tol := max(biasTol, loose[r["point"]])
			if got := point(New(plan.Player{Height: h, Sex: sex})); math.Abs(got-want) > tol {
				t.Errorf("%s, %s of %.3f m: %.4f m, want %.4f (tol %g)", r["point"], sex, h, got, want, tol)
			}
		}
	}
}
