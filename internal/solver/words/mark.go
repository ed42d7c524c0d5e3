package words

import (
	"math"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/units"
)

// Guest is what a guest is told: the one sentence about the wall behind them,
// and what comes nearer than it. It encourages nobody to a swing that strikes.
func (w Words) Guest(m fit.Mark, c fit.Check) (sentence, more string) {
	n := c.Nearest
	if c.Verdict == fit.Strikes {
		return fmt.Sprintf("Do not swing the %s here: %s can strike %s.", m.Club, part(n.Part), Surface(n.Surface)),
			fmt.Sprintf("The loosest swing goes %s past it %s.", w.past(c.Clearance), phase(n.Phase))
	}
	b := m.Behind
	sentence = fmt.Sprintf("%s passes %s from the wall behind you, even on your loosest swing.", UpperFirst(part(b.Part)), w.Gap(b.Clearance))
	if n.Surface != b.Wall && c.Clearance < b.Clearance {
		more = fmt.Sprintf("Nearer is %s: %s %s passes it by %s.", Surface(n.Surface), phase(n.Phase), part(n.Part), w.Gap(c.Clearance))
	}
	if c.Verdict == fit.Tight {
		if more != "" {
			more += " "
		}
		more += "That is " + w.tighter(c.Clearance) + ": make the first swings slow."
	}
	return sentence, more
}

// Moved says how far a mark is from the plan's first tee.
func (w Words) Moved(p plan.Plan, m fit.Mark) string {
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
			ways = append(ways, fmt.Sprintf("%s towards %s", units.LabelShort(math.Abs(d), w.Units), way))
		}
	}
	return fmt.Sprintf("The ball lies %s from the %s.", List(ways), TeeName(p.Tees[0].Name))
}
