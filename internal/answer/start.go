package answer

import (
	"strings"

	"wideberth/internal/sim/plan"
)

// planAnswer is a plan to begin with. Error says why it is not the plan asked for.
type planAnswer struct {
	Plan  plan.Plan `json:"plan"`
	Notes []string  `json:"notes,omitempty"`
	Error *Problem  `json:"error,omitempty"`
}

// start picks the plan that the page begins with: the address's, else the one
// saved from the last visit, else the demo. The first that is there but cannot
// be used is reported. An address that ends in some other anchor holds no plan.
func start(req request) planAnswer {
	var out planAnswer
	try := func(p plan.Plan, err error) bool {
		if err == nil {
			out.Plan, out.Notes = p, p.Notes()
			return true
		}
		if out.Error == nil {
			problem := problemOf(err)
			out.Error = &problem
		}
		return false
	}
	if strings.HasPrefix(req.Link, "#p=") && try(plan.FromLink(req.Link)) {
		return out
	}
	if req.Saved != "" && try(plan.Parse([]byte(req.Saved))) {
		return out
	}
	try(plan.Demo(), nil)
	return out
}
