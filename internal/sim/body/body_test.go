package body

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"wideberth/internal/sim/plan"
)

// exactTol is rounding only.
const exactTol = 1e-12

var sexes = []string{"man", "woman", ""}

// spreadFields are the fields of Body that need not grow with stature.
var spreadFields = map[string]bool{
	"Shoe": true, "ArmSD": true, "ShoulderHeightSD": true, "ArmShoulderCorr": true, "ShoulderRise": true,
}

// TestGrowsWithStature: over the whole range a plan allows, far outside the
// people measured, every length is positive, none shrinks as stature grows,
// and the joints stay in order.
func TestGrowsWithStature(t *testing.T) {
	for _, sex := range sexes {
		before := reflect.Value{}
		for mm := 900; mm <= 2400; mm += 5 {
			h := float64(mm) / 1000
			b := New(plan.Player{Height: h, Sex: sex, Shoe: 0.025})
			v := reflect.ValueOf(b)
			for i := range v.NumField() {
				name := v.Type().Field(i).Name
				if v.Field(i).Kind() != reflect.Float64 {
					continue
				}
				got := v.Field(i).Float()
				if !(got > 0) || math.IsInf(got, 0) {
					t.Fatalf("sex %q, %.3f m: %s = %v, want positive", sex, h, name, got)
				}
				if before.IsValid() && !spreadFields[name] && got <= before.Field(i).Float() {
					t.Fatalf("sex %q, %.3f m: %s = %v, not above %v of the stature before", sex, h, name, got, before.Field(i).Float())
				}
			}
			before = v
			ladder := []float64{0, b.AnkleHeight, b.KneeHeight, b.HipHeight, b.ShoulderHeight, b.NeckBaseHeight, b.Stature}
			for i := 1; i < len(ladder); i++ {
				if ladder[i] <= ladder[i-1] {
					t.Fatalf("sex %q, %.3f m: heights out of order: %v", sex, h, ladder)
				}
			}
			if grip := b.ShoulderHeight - b.Arm(); grip <= b.KneeHeight || grip >= b.HipHeight {
				t.Fatalf("sex %q, %.3f m: a hanging fist is %.3f m up, want between knee %.3f and hip %.3f",
					sex, h, grip, b.KneeHeight, b.HipHeight)
			}
			if b.HeadHeight < b.HeadLength || b.ShoulderWidth < b.HipWidth {
				t.Fatalf("sex %q, %.3f m: head %.3f × %.3f, shoulders %.3f, hips %.3f",
					sex, h, b.HeadHeight, b.HeadLength, b.ShoulderWidth, b.HipWidth)
			}
		}
	}
}

func TestMeasuredArm(t *testing.T) {
	for _, sex := range sexes {
		guess := New(plan.Player{Height: 1.80, Sex: sex})
		// A measured arm beats a measured span.
		b := New(plan.Player{Height: 1.80, Sex: sex, Arm: 0.72, Span: 1.70})
		if got := b.Arm(); math.Abs(got-0.72) > exactTol {
			t.Errorf("sex %q: Arm() = %v, want 0.72", sex, got)
		}
		k := 0.72 / guess.Arm()
		for name, pair := range map[string][2]float64{
			"UpperArm": {b.UpperArm, k * guess.UpperArm},
			"Forearm":  {b.Forearm, k * guess.Forearm},
			"Hand":     {b.Hand, k * guess.Hand},
		} {
			if math.Abs(pair[0]-pair[1]) > exactTol {
				t.Errorf("sex %q: %s = %v, want %v", sex, name, pair[0], pair[1])
			}
		}
		if b.ArmSD != armTapeSD || b.ArmShoulderCorr != 0 {
			t.Errorf("sex %q: ArmSD, ArmShoulderCorr = %v, %v, want %v, 0", sex, b.ArmSD, b.ArmShoulderCorr, armTapeSD)
		}
		if b.ShoulderHeight != guess.ShoulderHeight || b.ShoulderWidth != guess.ShoulderWidth {
			t.Errorf("sex %q: a measured arm moved the shoulders", sex)
		}
	}
}

func TestArmFromSpan(t *testing.T) {
	rows := map[[2]string]record{}
	for _, r := range readRecords(t, "ansur2_regressions.csv") {
		rows[[2]string{r["measure"], r["sex"]}] = r
	}
	for _, sex := range sexes {
		spanLine := rows[[2]string{"span", sex}]
		onSpan := rows[[2]string{"acromion to grip on stature and span", sex}]
		for _, h := range []float64{1.50, 1.65, 1.80} {
			guess := New(plan.Player{Height: h, Sex: sex})
			usual := spanLine.must(t, "slope")*h + spanLine.must(t, "intercept_mm")/1000
			// The usual span for a height says nothing new about the arm.
			b := New(plan.Player{Height: h, Sex: sex, Span: usual})
			if got, want := b.Arm(), guess.Arm(); math.Abs(got-want) > lineTol {
				t.Errorf("sex %q, %.2f m, usual span %.3f m: Arm() = %.4f, want %.4f (tol %g)", sex, h, usual, got, want, lineTol)
			}
			wide := usual + 0.10
			b = New(plan.Player{Height: h, Sex: sex, Span: wide})
			want := onSpan.must(t, "slope")*h + onSpan.must(t, "span_slope")*wide + onSpan.must(t, "intercept_mm")/1000
			if got := b.Arm(); math.Abs(got-want) > lineTol {
				t.Errorf("sex %q, %.2f m, span %.3f m: Arm() = %.4f, want %.4f (tol %g)", sex, h, wide, got, want, lineTol)
			}
			residual := onSpan.must(t, "residual_sd_mm") / 1000
			if b.ArmSD <= residual || b.ArmSD >= guess.ArmSD {
				t.Errorf("sex %q, %.2f m: ArmSD with span = %.4f, want above the survey's %.4f and below the guess's %.4f",
					sex, h, b.ArmSD, residual, guess.ArmSD)
			}
		}
	}
}

func TestOutsideTheSurvey(t *testing.T) {
	cases := []struct {
		name      string
		player    plan.Player
		note      string // part of the note; empty: none
		armFactor float64
	}{
		{"man inside", plan.Player{Height: 1.99, Sex: "man"}, "", 1},
		{"tall man", plan.Player{Height: 1.993 + 0.125, Sex: "man"}, "Taller than anyone among the men measured (tallest 1.99 m)", 1.5},
		{"tall woman", plan.Player{Height: 1.829 + 0.25, Sex: "woman"}, "Taller than anyone among the women measured (tallest 1.83 m)", 2},
		{"woman inside", plan.Player{Height: 1.42, Sex: "woman"}, "", 1},
		{"short man", plan.Player{Height: 1.491 - 0.05, Sex: "man"}, "Shorter than anyone among the men measured (shortest 1.49 m)", 1.2},
		{"child", plan.Player{Height: 1.409 - 0.25}, "above all for a child", 2},
		{"pooled inside", plan.Player{Height: 1.95}, "", 1},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b := New(c.player)
			inside := New(plan.Player{Height: 1.70, Sex: c.player.Sex})
			if got := strings.Join(b.Notes, " "); !strings.Contains(got, c.note) || (c.note == "") != (got == "") {
				t.Errorf("Notes = %q, want one with %q", got, c.note)
			}
			if got := b.ArmSD / inside.ArmSD; math.Abs(got-c.armFactor) > 1e-9 {
				t.Errorf("ArmSD is %.3f of that inside, want %.3f", got, c.armFactor)
			}
			if got := b.ShoulderHeightSD / inside.ShoulderHeightSD; math.Abs(got-c.armFactor) > 1e-9 {
				t.Errorf("ShoulderHeightSD is %.3f of that inside, want %.3f", got, c.armFactor)
			}
		})
	}
}

func TestStrangeTape(t *testing.T) {
	for name, c := range map[string]struct {
		player plan.Player
		notes  int
	}{
		"plausible arm":  {plan.Player{Height: 1.80, Arm: 0.72}, 0},
		"arm mistyped":   {plan.Player{Height: 1.80, Arm: 0.95}, 1},
		"plausible span": {plan.Player{Height: 1.92, Span: 2.01}, 0},
		"span mistyped":  {plan.Player{Height: 1.92, Span: 1.60}, 1},
	} {
		if got := New(c.player).Notes; len(got) != c.notes {
			t.Errorf("%s: notes %q, want %d", name, got, c.notes)
		}
	}
}

func ExampleNew() {
	guessed := New(plan.Player{Name: "Tall guest", Height: 1.92, Sex: "man"})
	measured := New(plan.Player{Name: "Tall guest", Height: 1.92, Sex: "man", Span: 2.01})
	fmt.Printf("from height: shoulder %.2f m, arm %.3f m ± %.0f mm\n", guessed.ShoulderHeight, guessed.Arm(), 1000*guessed.ArmSD)
	fmt.Printf("from span:   shoulder %.2f m, arm %.3f m ± %.0f mm\n", measured.ShoulderHeight, measured.Arm(), 1000*measured.ArmSD)
	// Output:
	// from height: shoulder 1.59 m, arm 0.725 m ± 18 mm
	// from span:   shoulder 1.59 m, arm 0.734 m ± 12 mm
}
