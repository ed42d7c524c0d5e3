package swing

import (
	"testing"

	"wideberth/internal/sim/body"
	"wideberth/internal/sim/plan"
)

// clubNamed returns a club of the default set.
func clubNamed(name string) Club {
	kind := map[string]string{"driver": "driver", "wedge": "wedge", "3-wood": "wood", "hybrid": "hybrid"}[name]
	if kind == "" {
		kind = "iron"
	}
	return NewClub(plan.DefaultClub(kind, name))
}

// clubOf returns a club of the default set, for children one cut to their size.
func clubOf(height float64, name string) Club {
	c := clubNamed(name)
	if height < 1.45 {
		return NewClub(plan.Club{Kind: c.Kind, Length: c.Length * height / 1.6, Lie: c.Lie / degree})
	}
	return c
}

// golfer returns the body of somebody of whom only the height is known.
func golfer(height float64) body.Body {
	return body.New(plan.Player{Name: "golfer", Height: height, Shoe: plan.DefaultShoe})
}

// referenceHeight is the stature (m) of the golfer whose figures model.csv keeps:
// the one whom the package published compares with measured swings.
const referenceHeight = 1.75

// A measurement is looked up by its name, which therefore names one.
func TestMeasurementNames(t *testing.T) {
	s, err := New(golfer(referenceHeight), clubNamed("driver"), Style{})
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, m := range Measure(s) {
		if seen[m.Name] {
			t.Errorf("%q is measured twice", m.Name)
		}
		seen[m.Name] = true
	}
}
