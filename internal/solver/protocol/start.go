package protocol

import (
	"wideberth/internal/form"
	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/plan"
	"wideberth/internal/solver/reply"
)

// planAnswer is a plan to begin with. Error says why it is not the plan asked for.
type planAnswer struct {
	Plan  plan.Plan      `json:"plan"`
	Notes []string       `json:"notes,omitempty"`
	Error *reply.Problem `json:"error,omitempty"`
}

// startAnswer is what a visit begins with: a plan, and the form to change it by.
type startAnswer struct {
	planAnswer
	Cards []form.Card `json:"cards"`
}

// open picks a plan: the link's, else the one saved, else the demo. Both come as
// the text of a plan, "" for none. The first that is there but cannot be used is
// reported.
func open(req request) planAnswer {
	var out planAnswer
	try := func(c plan.Checked, err error) bool {
		if err == nil {
			out.Plan = c.Plan()
			out.Notes = out.Plan.Notes()
			return true
		}
		if out.Error == nil {
			problem := reply.ProblemOf(err)
			out.Error = &problem
		}
		return false
	}
	if req.Linked != "" {
		c, err := plan.Parse([]byte(req.Linked))
		if err != nil {
			err = fmt.Errorf("the link holds a plan that does not work: %w", err)
		}
		if try(c, err) {
			return out
		}
	}
	if req.Saved != "" && try(plan.Parse([]byte(req.Saved))) {
		return out
	}
	out.Plan = plan.Demo()
	return out
}
