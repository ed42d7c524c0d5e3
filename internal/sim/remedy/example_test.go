package remedy_test

import (
	"fmt"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/remedy"
)

// A remedy is a change of the plan that has been verified.
func ExampleSolve() {
	p := plan.Rooms()[0] // a single garage bay, too narrow for a ball off to the side
	p.Tees[0].Y = 3.0
	var lab fit.Lab
	all, err := remedy.Solve(&lab, plantest.Checked(p), "Host", "7-iron", "")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range all {
		if r.Kind == remedy.KindTee && r.Towards == remedy.TowardsRight {
			better, err := remedy.Apply(p, r.Edits)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Println(r.Edits[0].Path, better.Tees[0].Y < p.Tees[0].Y, r.Verdict)
		}
	}
	// Output:
	// tees[0].y true clear
}
