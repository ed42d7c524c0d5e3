package protocol

import "wideberth/internal/sim/plan"

// checked is a plan that a test made, which must be valid.
func checked(p plan.Plan) plan.Checked {
	c, err := plan.Check(p)
	if err != nil {
		panic(err)
	}
	return c
}
