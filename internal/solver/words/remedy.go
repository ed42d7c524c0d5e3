package words

import (
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/units"
)

// Spares reports whether a remedy gives room up rather than making some.
func (w Words) Spares(r fit.Remedy) bool {
	switch r.Kind {
	case fit.KindClub, fit.KindPlayer:
		return r.Amount > 0
	}
	return r.Amount < 0
}

// Change says what a remedy does. What must be added is rounded up, what is
// allowed rounded down.
func (w Words) Change(p plan.Plan, r fit.Remedy) string {
	more := r.Amount >= 0
	size := func() string { return w.Up(r.Value) }
	switch r.Kind {
	case fit.KindTee:
		return fmt.Sprintf("Move the %s %s towards %s", TeeName(r.Subject), w.Up(r.Amount), side(r.Towards))
	case fit.KindCeiling:
		what := "the ceiling"
		if len(p.Room.Slopes) > 0 {
			what = "the ceiling and its slopes"
		}
		if more {
			return fmt.Sprintf("Raise %s %s, the ceiling to %s", what, w.Up(r.Amount), size())
		}
		return fmt.Sprintf("Lowest ceiling that would do: %s", size())
	case fit.KindLength, fit.KindWidth:
		long := "long"
		if r.Kind == fit.KindWidth {
			long = "wide"
		}
		if more {
			return fmt.Sprintf("Make the room %s %s", size(), long)
		}
		return fmt.Sprintf("Smallest room that would do for everybody: %s %s", size(), long)
	case fit.KindFloor:
		return fmt.Sprintf("Take %s off the floor build-up, down to %s", w.Up(r.Amount), units.LabelDown(r.Value, w.Units))
	case fit.KindClub:
		if r.Amount > 0 {
			return fmt.Sprintf("Longest %s that would do: %s", r.Subject, units.LabelDown(r.Value, w.Units))
		}
		return fmt.Sprintf("Shorten the %s to %s", r.Subject, units.LabelDown(r.Value, w.Units))
	case fit.KindPlayer:
		return fmt.Sprintf("Tallest golfer in place of %s: %s", r.Subject, units.LabelDown(r.Value, w.Units))
	case fit.KindRaise:
		return fmt.Sprintf("Raise the %s %s, its underside to %s", r.Subject, w.Up(r.Amount), size())
	case fit.KindShift:
		return fmt.Sprintf("Shift the %s %s towards %s", r.Subject, w.Up(r.Amount), side(r.Towards))
	case fit.KindRemove:
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
