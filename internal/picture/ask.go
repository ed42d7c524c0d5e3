// Package picture draws an answer without a browser: the plan, the elevation that
// shows the tape best, and a strip of key frames, with the sentence of the verdict.
// It asks the solver what the page asks it and draws what the page is sent, so the
// picture of a plan is the page's.
package picture

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"

	"wideberth/internal/render/drawing"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/solver/protocol"
	"wideberth/internal/solver/reply"
	"wideberth/internal/solver/words"
)

// Answer is a plan's answer, ready to be drawn.
type Answer struct {
	title    string
	focus    protocol.Focus
	verdict  fit.Verdict // of the check looked at
	worst    fit.Verdict // of the plan
	headline string
	sentence string
	fields   map[string]string // figures as text, by their paths in the plan
	flat     drawing.Set
	reel     reel
}

// reel is what pictures need of the solver's reel.
type reel struct {
	Rate     float64
	Duration float64
	Tightest float64
	First    *float64
	Phases   []struct {
		Name       string
		Start, End float64
	}
	Parts []struct {
		Name string
		R    float64
	}
	Motion []int // mm, each frame after the first less the one before
	Face   bool
}

// Ask has the solver answer a plan, and looks at one of its checks: of those that
// focus allows, the worst.
func Ask(p plan.Checked, focus protocol.Focus) (Answer, error) {
	var solver protocol.Solver
	doc := json.RawMessage(p.Plan().JSON())
	var solved struct {
		Report    fit.Report
		Focus     protocol.Focus
		Sentences words.Sentences
		Flat      drawing.Set
		Figures   struct{ Fields map[string]string }
	}
	if err := handle(&solver, request{"solve", doc, focus}, &solved); err != nil {
		return Answer{}, err
	}
	at := solved.Focus
	for _, name := range []struct{ what, want, got string }{
		{"player", focus.Player, at.Player}, {"club", focus.Club, at.Club}, {"tee", focus.Tee, at.Tee},
	} {
		if name.want != "" && name.want != name.got {
			return Answer{}, fmt.Errorf("nothing to draw for the %s “%s”: the plan has no such check", name.what, name.want)
		}
	}
	looked := slices.IndexFunc(solved.Report.Checks, func(c fit.Check) bool {
		return c.Player == at.Player && c.Club == at.Club && c.Tee == at.Tee
	})
	if looked < 0 {
		return Answer{}, errors.New("this is a fault of the program, not of your plan: the answer looks at a check that it does not hold")
	}
	a := Answer{
		title: p.Plan().Title, focus: at,
		verdict: solved.Report.Checks[looked].Verdict, worst: solved.Report.Verdict,
		headline: solved.Sentences.Headline, sentence: solved.Sentences.Verdict,
		fields: solved.Figures.Fields, flat: solved.Flat,
	}
	return a, handle(&solver, request{"reel", doc, at}, &a.reel)
}

// request is one of the page's requests.
type request struct {
	Kind  string          `json:"kind"`
	Plan  json.RawMessage `json:"plan"`
	Focus protocol.Focus  `json:"focus"`
}

// handle asks the solver and reads its answer, or why there is none.
func handle(solver *protocol.Solver, r request, answer any) error {
	asked, err := json.Marshal(r)
	if err != nil {
		return err
	}
	said := solver.Handle(asked)
	var failed struct{ Error *reply.Problem }
	if err := json.Unmarshal(said, &failed); err != nil {
		return err
	}
	if failed.Error != nil {
		return errors.New(failed.Error.Message)
	}
	return json.Unmarshal(said, answer)
}
