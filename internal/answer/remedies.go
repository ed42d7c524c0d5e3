package answer

import (
	"strings"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/say"
)

// remediesAnswer is what would make one check clear, each solved and verified.
type remediesAnswer struct {
	Focus    Focus        `json:"focus"`
	Remedies []remedyText `json:"remedies"`
}

// remedyText is one remedy in words, with the edits that make it.
type remedyText struct {
	Kind      string     `json:"kind"`
	Text      string     `json:"text"`  // what to do
	After     string     `json:"after"` // what that leads to
	Spare     bool       `json:"spare"` // for a check that is clear: how much could be given up
	Clearance float64    `json:"clearance"`
	Verdict   string     `json:"verdict"`
	Edits     []fit.Edit `json:"edits"`
}

// remedies serves requests of kind remedies, and of kind limits, which take
// longer: a longest club and a tallest golfer.
func (s *Solver) remedies(req request) (any, error) {
	doc, r, focus, _, err := s.check(req)
	if err != nil {
		return nil, err
	}
	c := r.Checks[focus]
	solve := s.cache.lab.Remedies
	if req.Kind == "limits" {
		solve = s.cache.lab.Limits
	}
	found, err := solve(doc, c.Player, c.Club, c.Tee)
	if err != nil {
		return nil, err
	}
	p := doc.Plan()
	w := words{units: p.Units, margin: p.Margin}
	out := remediesAnswer{Focus: Focus{c.Player, c.Club, c.Tee}, Remedies: []remedyText{}}
	for _, one := range found {
		out.Remedies = append(out.Remedies, w.remedy(p, one))
	}
	return out, nil
}

// apply serves a request of kind apply: the plan with edits made.
func (s *Solver) apply(req request) (any, error) {
	doc, err := plan.FromTree(req.Plan)
	if err != nil {
		return nil, err
	}
	p, err := fit.Apply(doc.Plan(), req.Edits)
	if err != nil {
		return nil, err
	}
	if doc, err = plan.Check(p); err != nil {
		return nil, err
	}
	return planAnswer{Plan: doc.Plan()}, nil
}

func (w words) remedy(p plan.Plan, r fit.Remedy) remedyText {
	out := remedyText{Kind: r.Kind, Text: w.change(p, r), Spare: w.spares(r), Clearance: r.Clearance, Verdict: r.Verdict, Edits: r.Edits}
	out.After = "clear by " + w.gap(r.Clearance)
	switch r.PlanVerdict {
	case fit.Strikes:
		out.After += "; elsewhere in the plan something still strikes"
	case fit.Tight:
		out.After += "; elsewhere in the plan something is still tight"
	}
	return out
}

// spares reports whether a remedy gives room up rather than making some.
func (w words) spares(r fit.Remedy) bool {
	switch r.Kind {
	case fit.KindClub, fit.KindPlayer:
		return r.Amount > 0
	}
	return r.Amount < 0
}

// change says what a remedy does. What must be added is rounded up, what is
// allowed rounded down.
func (w words) change(p plan.Plan, r fit.Remedy) string {
	more := r.Amount >= 0
	size := func() string { return w.up(r.Value) }
	switch r.Kind {
	case fit.KindTee:
		return say.Sprintf("Move the %s %s towards %s", teeName(r.Subject), w.up(r.Amount), side(r.Towards))
	case fit.KindCeiling:
		what := "the ceiling"
		if len(p.Room.Slopes) > 0 {
			what = "the ceiling and its slopes"
		}
		if more {
			return say.Sprintf("Raise %s %s, the ceiling to %s", what, w.up(r.Amount), size())
		}
		return say.Sprintf("Lowest ceiling that would do: %s", size())
	case fit.KindLength, fit.KindWidth:
		long := "long"
		if r.Kind == fit.KindWidth {
			long = "wide"
		}
		if more {
			return say.Sprintf("Make the room %s %s", size(), long)
		}
		return say.Sprintf("Smallest room that would do for everybody: %s %s", size(), long)
	case fit.KindFloor:
		return say.Sprintf("Take %s off the floor build-up, down to %s", w.up(r.Amount), plan.LabelDown(r.Value, w.units))
	case fit.KindClub:
		if r.Amount > 0 {
			return say.Sprintf("Longest %s that would do: %s", r.Subject, plan.LabelDown(r.Value, w.units))
		}
		return say.Sprintf("Shorten the %s to %s", r.Subject, plan.LabelDown(r.Value, w.units))
	case fit.KindPlayer:
		return say.Sprintf("Tallest golfer in place of %s: %s", r.Subject, plan.LabelDown(r.Value, w.units))
	case fit.KindRaise:
		return say.Sprintf("Raise the %s %s, its underside to %s", r.Subject, w.up(r.Amount), size())
	case fit.KindShift:
		return say.Sprintf("Shift the %s %s towards %s", r.Subject, w.up(r.Amount), side(r.Towards))
	case fit.KindRemove:
		return say.Sprintf("Take the %s away", r.Subject)
	}
	return upperFirst(r.Kind)
}

func side(name string) string { return "the " + name }

// teeName is a tee's name with the word.
func teeName(name string) string {
	if strings.HasSuffix(strings.ToLower(name), "tee") {
		return name
	}
	return name + " tee"
}
