package words

import (
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/remedy"
	"wideberth/internal/units"
)

// Spares reports whether a remedy gives room up rather than making some.
func (w Words) Spares(r remedy.Remedy) bool {
	switch r.Kind {
	case remedy.KindClub, remedy.KindPlayer:
		return r.Amount > 0
	}
	return r.Amount < 0
}

// Change says what a remedy does. What must be added is rounded up, what is
// allowed rounded down.
func (w Words) Change(p plan.Plan, r remedy.Remedy) string {
	more := r.Amount >= 0
	size := func() string { return w.Up(r.Value) }
	switch r.Kind {
	case remedy.KindTee:
		return fmt.Sprintf("Move the %s %s towards %s", TeeName(r.Subject), w.Up(r.Amount), side(r.Towards))
	case remedy.KindCeiling:
		what := "the ceiling"
		if len(p.Room.Slopes) > 0 {
			what = "the ceiling and its slopes"
		}
		if more {
			return fmt.Sprintf("Raise %s %s, the ceiling to %s", what, w.Up(r.Amount), size())
		}
		return fmt.Sprintf("Lowest ceiling that would do: %s", size())
	case remedy.KindLength, remedy.KindWidth:
		long := "long"
		if r.Kind == remedy.KindWidth {
			long = "wide"
		}
		if more {
			return fmt.Sprintf("Make the room %s %s", size(), long)
		}
		return fmt.Sprintf("Smallest room that would do for everybody: %s %s", size(), long)
	case remedy.KindFloor:
		return fmt.Sprintf("Take %s off the floor build-up, down to %s", w.Up(r.Amount), units.LabelDown(r.Value, w.Units))
	case remedy.KindClub:
		if r.Amount > 0 {
			return fmt.Sprintf("Longest %s that would do: %s", r.Subject, units.LabelDown(r.Value, w.Units))
		}
		return fmt.Sprintf("Shorten the %s to %s", r.Subject, units.LabelDown(r.Value, w.Units))
	case remedy.KindPlayer:
		return fmt.Sprintf("Tallest golfer in place of %s: %s", r.Subject, units.LabelDown(r.Value, w.Units))
	case remedy.KindRaise:
		return fmt.Sprintf("Raise the %s %s, its underside to %s", r.Subject, w.Up(r.Amount), size())
	case remedy.KindShift:
		return fmt.Sprintf("Shift the %s %s towards %s", r.Subject, w.Up(r.Amount), side(r.Towards))
	case remedy.KindRemove:
		return fmt.Sprintf("Take the %s away", r.Subject)
	}
	return UpperFirst(r.Kind)
}

func side(name string) string { return "the " + name }

// TeeName is a tee's name with the word.
func TeeName(name string) string {
	if strings.HasSuffix(strings.ToLower(name), "tee") {
		return name
	}
	return name + " tee"
}
