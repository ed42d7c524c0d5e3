package answer

import (
	"strings"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/say"
)

// spares reports whether a remedy gives room up rather than making some.
func (w words) spares(r fit.Remedy) bool {
	switch r.Kind {
	case fit.KindClub, fit.KindPlayer:
		return r.Amount > 0
	}
	return r.Amount < 0
}

// change says what a remedy does. What must be added is rounded up, what is
// allowed rounded down.
func (w words) change(p plan.Plan, r fit.Remedy) string {
	more := r.Amount >= 0
	size := func() string { return w.up(r.Value) }
	switch r.Kind {
	case fit.KindTee:
		return say.Sprintf("Move the %s %s towards %s", teeName(r.Subject), w.up(r.Amount), side(r.Towards))
	case fit.KindCeiling:
		what := "the ceiling"
		if len(p.Room.Slopes) > 0 {
			what = "the ceiling and its slopes"
		}
		if more {
			return say.Sprintf("Raise %s %s, the ceiling to %s", what, w.up(r.Amount), size())
		}
		return say.Sprintf("Lowest ceiling that would do: %s", size())
	case fit.KindLength, fit.KindWidth:
		long := "long"
		if r.Kind == fit.KindWidth {
			long = "wide"
		}
		if more {
			return say.Sprintf("Make the room %s %s", size(), long)
		}
		return say.Sprintf("Smallest room that would do for everybody: %s %s", size(), long)
	case fit.KindFloor:
		return say.Sprintf("Take %s off the floor build-up, down to %s", w.up(r.Amount), plan.LabelDown(r.Value, w.units))
	case fit.KindClub:
		if r.Amount > 0 {
			return say.Sprintf("Longest %s that would do: %s", r.Subject, plan.LabelDown(r.Value, w.units))
		}
		return say.Sprintf("Shorten the %s to %s", r.Subject, plan.LabelDown(r.Value, w.units))
	case fit.KindPlayer:
		return say.Sprintf("Tallest golfer in place of %s: %s", r.Subject, plan.LabelDown(r.Value, w.units))
	case fit.KindRaise:
		return say.Sprintf("Raise the %s %s, its underside to %s", r.Subject, w.up(r.Amount), size())
	case fit.KindShift:
		return say.Sprintf("Shift the %s %s towards %s", r.Subject, w.up(r.Amount), side(r.Towards))
	case fit.KindRemove:
		return say.Sprintf("Take the %s away", r.Subject)
	}
	return upperFirst(r.Kind)
}

func side(name string) string { return "the " + name }

// teeName is a tee's name with the word.
func teeName(name string) string {
	if strings.HasSuffix(strings.ToLower(name), "tee") {
		return name
	}
	return name + " tee"
}
