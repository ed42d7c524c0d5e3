package swing

import (
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
