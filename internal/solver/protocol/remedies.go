package protocol

import (
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/remedy"
	"wideberth/internal/solver/words"
)

// remediesAnswer is what would make one check clear, each solved and verified.
type remediesAnswer struct {
	Focus    Focus        `json:"focus"`
	Remedies []remedyText `json:"remedies"`
}

// remedyText is one remedy in words, with the edits that make it.
type remedyText struct {
	Kind      string        `json:"kind"`
	Text      string        `json:"text"`  // what to do
	After     string        `json:"after"` // what that leads to
	Spare     bool          `json:"spare"` // for a check that is clear: how much could be given up
	Clearance float64       `json:"clearance"`
	Verdict   fit.Verdict   `json:"verdict"`
	Edits     []remedy.Edit `json:"edits"`
}

// remedies serves requests of kind remedies, and of kind limits, which take
// longer: a longest club and a tallest golfer.
func (s *Solver) remedies(req request) (any, error) {
	doc, r, focus, _, err := s.check(req)
	if err != nil {
		return nil, err
	}
	c := r.Checks[focus]
	solve := remedy.Solve
	if req.Kind == "limits" {
		solve = remedy.Limits
	}
	found, err := solve(&s.cache.lab, doc, c.Player, c.Club, c.Tee)
	if err != nil {
		return nil, err
	}
	p := doc.Plan()
	w := words.WordsOf(p)
	out := remediesAnswer{Focus: Focus{c.Player, c.Club, c.Tee}, Remedies: []remedyText{}}
	for _, one := range found {
		out.Remedies = append(out.Remedies, remedyOf(w, p, one))
	}
	return out, nil
}

// changesAnswer is what would do for the whole room, and for the check in the
// focus where that is not the same.
type changesAnswer struct {
	words.Advice
	Focus Focus         `json:"focus"`
	Check []words.Offer `json:"check"` // for the check in the focus alone
}

// changes serves a request of kind changes.
func (s *Solver) changes(req request) (any, error) {
	doc, r, focus, _, err := s.check(req)
	if err != nil {
		return nil, err
	}
	c := r.Checks[focus]
	out := changesAnswer{Focus: Focus{c.Player, c.Club, c.Tee}, Check: []words.Offer{}}
	if out.Advice, err = words.AdviseRoom(&s.cache.lab, doc, r); err != nil {
		return nil, err
	}
	alone := true // what helps everybody helps this check, and there is nobody else
	for i, other := range r.Checks {
		alone = alone && (i == focus || other.Verdict == fit.Clear)
	}
	if c.Verdict != fit.Clear && !alone {
		out.Check, err = words.AdviseCheck(&s.cache.lab, doc, r, c)
	}
	return out, err
}

// apply serves a request of kind apply: the plan with edits made.
func (s *Solver) apply(req request) (any, error) {
	doc, err := plan.FromTree(req.Plan)
	if err != nil {
		return nil, err
	}
	p, err := remedy.Apply(doc.Plan(), req.Edits)
	if err != nil {
		return nil, err
	}
	if doc, err = plan.Check(p); err != nil {
		return nil, err
	}
	return planAnswer{Plan: doc.Plan()}, nil
}

func remedyOf(w words.Words, p plan.Plan, r remedy.Remedy) remedyText {
	return remedyText{Kind: r.Kind, Text: w.Change(p, r), After: w.After(r), Spare: w.Spares(r), Clearance: r.Clearance, Verdict: r.Verdict, Edits: r.Edits}
}
