package fit

import "testing"

func TestVerdictOf(t *testing.T) {
	for _, c := range []struct {
		name              string
		clearance, margin float64
		want              Verdict
	}{
		{"past", -0.001, 0.15, Strikes},
		{"touching", 0, 0.15, Tight},
		{"short of the margin", 0.149, 0.15, Tight},
		{"the margin", 0.15, 0.15, Clear},
		{"more", 2, 0.15, Clear},
		{"touching, no margin", 0, 0, Clear},
		{"past, no margin", -0.001, 0, Strikes},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := VerdictOf(c.clearance, c.margin); got != c.want {
				t.Errorf("VerdictOf(%g, %g) = %s, want %s", c.clearance, c.margin, got, c.want)
			}
		})
	}
}

func TestWorse(t *testing.T) {
	rising := []Verdict{Clear, Tight, Strikes}
	for i, a := range rising {
		for k, b := range rising {
			if got, want := a.Worse(b), rising[max(i, k)]; got != want {
				t.Errorf("%s.Worse(%s) = %s, want %s", a, b, got, want)
			}
		}
	}
}
