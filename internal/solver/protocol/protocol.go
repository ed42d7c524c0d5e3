// Package protocol is what the page talks to: requests come in as JSON, answers
// go out as JSON, and nothing that comes in makes it panic. It puts the report
// into words, has it drawn flat, and makes the recording for the scene.
//
// Requests are objects with a "kind":
//
//	start   linked, saved          → plan, notes, cards, error?
//	open    linked, saved          → plan, notes, error?
//	solve   plan, focus, walls     → solveAnswer; figures of the plan may be as typed
//	reel    plan, focus            → reelAnswer, the swing of a check frame by frame
//	show    plan, focus            → bytes (Show only)
//	length  text, units            → metres, label
//	ball    plan, focus, catch     → what the ball meets, see ballAnswer
//	rooms                          → rooms, plans to start from
//	room    plan                   → plan, all that follows from its walls and players
//	maps    plan, of, focus        → standAnswer, hangAnswer, watchAnswer or marksAnswer
//	drag    plan, focus (tee), x, y → what is known at once of a moved tee
//	hangAt  plan, x, y             → how low a thing may hang there
//	remedies, limits  plan, focus  → what would make the check clear
//	changes plan, focus            → what would do for the whole room, see changesAnswer
//	apply   plan, edits            → plan, with the edits of a remedy made
//
// A request that cannot be served gives {"error": {"message", "field"}}: a
// sentence for a person, and where it applies the path of the field at fault.
package protocol

import (
	"wideberth/internal/form"
	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/remedy"
	"wideberth/internal/solver/reply"
)

// Solver answers requests and remembers what it worked out for the last ones.
// The zero value is ready. It is not for concurrent use.
type Solver struct {
	cache cache
}

// request is any request; each kind reads its own fields.
type request struct {
	Kind   string  `json:"kind"`
	Linked string  `json:"linked"` // a plan's text, like Saved
	Saved  string  `json:"saved"`
	Plan   any     `json:"plan"` // as json.Decode reads it
	Focus  Focus   `json:"focus"`
	Text   string  `json:"text"`
	Units  string  `json:"units"`
	Catch  float64 `json:"catch"` // share of balls to be caught
	Of     string  `json:"of"`    // kind of a map
	X      float64 `json:"x"`     // a place on the floor, m
	Y      float64 `json:"y"`
	Length float64 `json:"length"` // of a thing to hang, m
	Width  float64 `json:"width"`
	Drop   float64 `json:"drop"`

	Walls plan.Walls    `json:"walls"` // before the edit that made Plan, for what follows them
	Edits []remedy.Edit `json:"edits"` // of a remedy
}

// Handle serves one request. It always returns one JSON object.
func (s *Solver) Handle(body []byte) []byte {
	return reply.Handle(func() (any, error) { return s.serve(body) })
}

// Show serves a request of kind show: the bytes that package wire reads.
func (s *Solver) Show(body []byte) ([]byte, error) {
	return reply.Guarded(func() ([]byte, error) {
		req, err := read(body)
		if err != nil {
			return nil, err
		}
		if req.Kind != "show" {
			return nil, fmt.Errorf("the page asked to be shown %q, which this program does not know: reload the page", fmt.Clip(req.Kind))
		}
		return s.show(req)
	})
}

func read(body []byte) (req request, err error) {
	err = reply.Read(body, &req)
	return req, err
}

func (s *Solver) serve(body []byte) (any, error) {
	req, err := read(body)
	if err != nil {
		return nil, err
	}
	switch req.Kind {
	case "start":
		return startAnswer{open(req), form.Cards()}, nil
	case "open":
		return open(req), nil
	case "solve":
		return s.solve(req)
	case "reel":
		return s.reel(req)
	case "length":
		return length(req)
	case "ball":
		return s.ball(req)
	case "rooms":
		return rooms(), nil
	case "room":
		return room(req)
	case "maps":
		return s.mapsOf(req)
	case "drag":
		return s.drag(req)
	case "hangAt":
		return s.hangAt(req)
	case "hangThing":
		return s.hangThing(req)
	case "remedies", "limits":
		return s.remedies(req)
	case "changes":
		return s.changes(req)
	case "apply":
		return s.apply(req)
	}
	return nil, fmt.Errorf("the page asked for %q, which this program does not know: reload the page", fmt.Clip(req.Kind))
}
