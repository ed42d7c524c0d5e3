// Package builder is what the sheets Build and Projector talk to: the second program
// of the page's arithmetic, fetched when one of them is opened. Requests come in as
// JSON, answers go out as JSON, and nothing that comes in makes it panic.
//
// Requests are objects with a "kind":
//
//	build      plan                      → BuildAnswer
//	projector  plan                      → ProjectorAnswer
//	lens       plan, at                  → LensAnswer, the projector with its lens elsewhere
//	film       plan, player, club, tee,  → FilmAnswer, the shadow frame by frame
//	           variation
//	amounts    plan                      → AmountsAnswer, the list of quantities alone
//	set        plan, path, text          → SetAnswer, the plan's members with a field changed
//	add        plan, path                → SetAnswer, with a new thing of that kind
//	remove     plan, path                → SetAnswer, without that thing
//
// A request that cannot be served gives {"error": {"message", "field"}}.
package builder

import (
	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/build"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
	"wideberth/internal/solver/reply"
	"wideberth/internal/units"
)

// Builder answers requests and keeps the swings that it has modelled. The zero value
// is ready. It is not for concurrent use.
type Builder struct{ lab fit.Lab }

// Request is any request; each kind reads its own fields.
type Request struct {
	Kind   string `json:"kind"`
	Plan   any    `json:"plan"` // as json.Decode reads it
	Player string `json:"player"`
	Club   string `json:"club"`
	Tee    string `json:"tee"`
	// Variation is the member of the family that is filmed, as a check has it; without,
	// the usual swing.
	Variation swing.Variation `json:"variation"`
	At        [3]float64      `json:"at"`   // of the lens, room frame, m
	Path      string          `json:"path"` // of a field
	Text      string          `json:"text"` // that was typed into it
}

// Handle serves one request. It always returns one JSON object.
func (b *Builder) Handle(body []byte) []byte {
	return reply.Handle(func() (any, error) { return b.serve(body) })
}

func (b *Builder) serve(body []byte) (any, error) {
	var req Request
	if err := reply.Read(body, &req); err != nil {
		return nil, err
	}
	switch req.Kind {
	case "set", "add", "remove":
		return set(req)
	}
	c, err := plan.FromTree(req.Plan)
	if err != nil {
		return nil, err
	}
	switch req.Kind {
	case "build":
		return b.build(c)
	case "projector":
		return b.projector(c)
	case "lens":
		return b.lens(c, req.At)
	case "film":
		return film(c, req)
	case "amounts":
		return b.amounts(c)
	}
	return nil, fmt.Errorf("the page asked for %q, which this program does not know: reload the page", fmt.Clip(req.Kind))
}

// Figure is a line of a sheet: what, how much, and the rule that it comes from.
type Figure struct {
	Term string `json:"term"`
	Text string `json:"text"`
	Rule string `json:"rule,omitempty"` // the ID of a build.Rule
	Mark string `json:"mark,omitempty"` // a verdict, where it is one
}

// Common is what both sheets have.
type Common struct {
	Said     []Figure     `json:"said"` // what is said first
	Groups   []Group      `json:"groups"`
	Fields   []Shown      `json:"fields"`
	Rules    []build.Rule `json:"rules"`
	Cautions []Caution    `json:"cautions"`
	Notes    []string     `json:"notes"`
}

// Group is figures under a heading.
type Group struct {
	ID      string   `json:"id"`
	Title   string   `json:"title"`
	Figures []Figure `json:"figures"`
}

// Caution is one line of care.
type Caution struct {
	Line   string `json:"line"`
	Source string `json:"source"`
}

func cautionsOf(r build.Report, topics ...string) []Caution {
	out := []Caution{}
	for _, topic := range topics {
		for _, c := range r.Cautions {
			if c.Topic == topic {
				source := c.Code
				if c.Status != build.Practice {
					source += ", " + string(c.Status)
				}
				out = append(out, Caution{c.Line, source})
			}
		}
	}
	return out
}

// pen writes lengths in the units of a plan.
type pen struct{ units string }

func (p pen) long(m float64) string  { return units.Label(m, p.units) }
func (p pen) short(m float64) string { return units.LabelShort(m, p.units) }

// clearance is rounded down, as everywhere.
func (p pen) clearance(m float64) string {
	if m < 0 {
		return units.LabelShort(-m, p.units) + " past it"
	}
	return units.LabelDown(m, p.units)
}

// signed is a small distance over or under something; what a label would show as
// nothing is level.
func (p pen) signed(m float64, over, under string) string {
	way, size := over, m
	if m < 0 {
		way, size = under, -m
	}
	text := units.LabelShort(size, p.units)
	if text == units.LabelShort(0, p.units) {
		return "level"
	}
	return text + " " + way
}

// percent writes a share; one that is not nothing never reads as nothing.
func percent(v float64) string {
	switch {
	case v == 0:
		return "none"
	case v < 0.001:
		return "under 0.1 %"
	case v < 0.1:
		return fmt.Sprintf("%.1f %%", 100*v)
	}
	return fmt.Sprintf("%.0f %%", 100*v)
}

func mark(fine bool) string {
	if fine {
		return string(fit.Clear)
	}
	return string(fit.Strikes)
}

// room is the part of the rest of the room that a sheet shows, and what the plan says of it.
func (b *Builder) room(c plan.Checked, of build.Part) (build.Report, spec.Spec, error) {
	r, err := build.Room(&b.lab, c, of)
	if err != nil {
		return build.Report{}, spec.Spec{}, err
	}
	s, err := spec.Of(c)
	return r, s, err
}
