package answer

import (
	"math"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/say"
)

// guest is what a guest is told: the one sentence about the wall behind them,
// and what comes nearer than it. It encourages nobody to a swing that strikes.
func (w words) guest(m fit.Mark, c fit.Check) (sentence, more string) {
	n := c.Nearest
	if c.Verdict == fit.Strikes {
		return say.Sprintf("Do not swing the %s here: %s can strike %s.", m.Club, part(n.Part), surface(n.Surface)),
			say.Sprintf("The loosest swing goes %s past it %s.", w.past(c.Clearance), phase(n.Phase))
	}
	b := m.Behind
	sentence = say.Sprintf("%s passes %s from the wall behind you, even on your loosest swing.", upperFirst(part(b.Part)), w.gap(b.Clearance))
	if n.Surface != b.Wall && c.Clearance < b.Clearance {
		more = say.Sprintf("Nearer is %s: %s %s passes it by %s.", surface(n.Surface), phase(n.Phase), part(n.Part), w.gap(c.Clearance))
	}
	if c.Verdict == fit.Tight {
		if more != "" {
			more += " "
		}
		more += "That is " + w.tighter(c.Clearance) + ": make the first swings slow."
	}
	return sentence, more
}

// moved says how far a mark is from the plan's first tee.
func (w words) moved(p plan.Plan, m fit.Mark) string {
	const nothing = 0.0005 // m
	if m.Moved[2] < nothing || len(p.Tees) == 0 {
		return ""
	}
	var ways []string
	for k, towards := range [2][2]string{{"the target", "the back wall"}, {"the left wall", "the right wall"}} {
		if d := m.Moved[k]; math.Abs(d) >= nothing {
			way := towards[0]
			if d < 0 {
				way = towards[1]
			}
			ways = append(ways, say.Sprintf("%s towards %s", plan.LabelShort(math.Abs(d), w.units), way))
		}
	}
	return say.Sprintf("The ball lies %s from the %s.", list(ways), teeName(p.Tees[0].Name))
}
