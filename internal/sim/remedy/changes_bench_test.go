package remedy

import (
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

// BenchmarkChanges is what would put the demo's room right for everybody, once its
// verdict stands.
func BenchmarkChanges(b *testing.B) {
	doc := plantest.Checked(plan.Demo())
	everybody := func(fit.Check) bool { return true }
	for b.Loop() {
		b.StopTimer()
		var lab fit.Lab
		report, err := lab.Check(doc)
		if err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
		if _, err := Changes(&lab, doc, report, everybody); err != nil {
			b.Fatal(err)
		}
	}
}
