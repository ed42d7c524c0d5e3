package words

import (
	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/fit"
)

// Headline is the worst verdict of everybody and how many of their checks share
// it: "Strikes: 4 of 8." It is the same whichever check is looked at.
func Headline(verdicts []fit.Verdict) string {
	worst := Worst(verdicts)
	n, all := times(verdicts)[worst], len(verdicts)
	switch {
	case all <= 1:
		return UpperFirst(string(worst)) + "."
	case n == all:
		return fmt.Sprintf("%s: all %d.", UpperFirst(string(worst)), all)
	}
	return fmt.Sprintf("%s: %d of %d.", UpperFirst(string(worst)), n, all)
}

// Worst is the worst of some verdicts.
func Worst(verdicts []fit.Verdict) fit.Verdict {
	worst := fit.Clear
	for _, v := range verdicts {
		worst = worst.Worse(v)
	}
	return worst
}

// times counts how often each verdict was given.
func times(verdicts []fit.Verdict) map[fit.Verdict]int {
	count := map[fit.Verdict]int{}
	for _, v := range verdicts {
		count[v]++
	}
	return count
}

// verdictsOf are the verdicts of a report's checks.
func verdictsOf(checks []fit.Check) []fit.Verdict {
	out := make([]fit.Verdict, len(checks))
	for i, c := range checks {
		out[i] = c.Verdict
	}
	return out
}

// worstIs names who decides the plan: "Worst: Tall guest with the driver." Nothing
// where there is only one check.
func worstIs(checks []fit.Check, worst fit.Check) string {
	if len(checks) < 2 {
		return ""
	}
	who := With(worst.Player, worst.Club)
	for _, c := range checks {
		if c.Tee != worst.Tee {
			who += " from the " + TeeName(worst.Tee)
			break
		}
	}
	lead := map[fit.Verdict]string{fit.Strikes: "Worst", fit.Tight: "Tightest", fit.Clear: "Closest"}[worst.Verdict]
	return fmt.Sprintf("%s: %s.", lead, who)
}

// others says how everybody fares, to somebody who fares better; else nothing.
func others(checks []fit.Check, mine fit.Verdict) string {
	n := times(verdictsOf(checks))
	does := ""
	switch strikes, tight := n[fit.Strikes], n[fit.Tight]; {
	case mine != fit.Strikes && strikes > 0:
		does = plural(strikes, "strikes something", "strike something")
	case mine == fit.Clear && tight > 0:
		does = plural(tight, "is tight", "are tight")
	default:
		return ""
	}
	return fmt.Sprintf("This is yours alone: of everybody's %d checks in this room, %s.", len(checks), does)
}

// plural says how many do what: "1 strikes", "2 strike".
func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
