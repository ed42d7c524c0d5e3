package words

import (
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/remedy"
)

// Advise adds to a report what would do for the whole room, and to every check
// that is not clear what would make it so, in words: what remedy.Changes and
// remedy.Solve find, in their order. The page asks for them itself, once the verdict
// stands.
func Advise(lab *fit.Lab, given plan.Checked, report *fit.Report) error {
	p := given.Plan()
	w := WordsOf(p)
	advice, err := AdviseRoom(lab, given, *report)
	if err != nil {
		return err
	}
	for _, o := range advice.Offers {
		report.Changes = append(report.Changes, o.Sentence)
	}
	for _, x := range advice.Plays {
		report.Changes = append(report.Changes, "As it is, "+x.Text)
	}
	if o := advice.Compromise; o != nil {
		report.Changes = append(report.Changes, o.Sentence)
	}
	for i := range report.Checks {
		c := &report.Checks[i]
		if c.Verdict == fit.Clear {
			continue
		}
		found, err := remedy.Solve(lab, given, c.Player, c.Club, c.Tee)
		if err != nil {
			return err
		}
		for _, r := range found {
			c.Remedies = append(c.Remedies, w.Change(p, r)+": "+w.After(r))
		}
	}
	return nil
}

// After says what a remedy leads to.
func (w Words) After(r remedy.Remedy) string {
	after := "clear by " + w.Gap(r.Clearance)
	switch r.PlanVerdict {
	case fit.Strikes:
		after += "; elsewhere in the plan something still strikes"
	case fit.Tight:
		after += "; elsewhere in the plan something is still tight"
	}
	return after
}
