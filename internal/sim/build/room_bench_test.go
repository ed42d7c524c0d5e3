package build

import (
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

// BenchmarkRoom answers for the demo, its families modelled already: what an edit of
// a sheet waits for.
func BenchmarkRoom(b *testing.B) {
	var lab fit.Lab
	c := plantest.Checked(plan.Demo())
	if _, err := Room(&lab, c, All); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := Room(&lab, c, All); err != nil {
			b.Fatal(err)
		}
	}
}
