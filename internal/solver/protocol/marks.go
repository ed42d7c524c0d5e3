package protocol

import (
	"wideberth/internal/render/drawing"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/solver/words"
	"wideberth/internal/units"
)

// marksAnswer is where everybody stands, in a room of a size (m).
type marksAnswer struct {
	Size  [2]float64  `json:"size"`
	Marks []guestMark `json:"marks"`
}

// guestMark is one player with one club on one tee: what to tape to the floor, and
// what to tell them.
type guestMark struct {
	Player   string      `json:"player"`
	Club     string      `json:"club"`
	Tee      string      `json:"tee"`
	Hand     plan.Hand   `json:"hand"`
	Verdict  fit.Verdict `json:"verdict"`          // of their worst check on this tee
	Brief    string      `json:"brief"`            // the same in few words
	Sentence string      `json:"sentence"`         // for the player
	Beside   string      `json:"beside,omitempty"` // what must stand beside the sentence
	More     string      `json:"more,omitempty"`   // all there is to tell besides
	Moved    string      `json:"moved,omitempty"`
	Ball     [2]float64  `json:"ball"`
	Lead     fit.Foot    `json:"lead"`
	Trail    fit.Foot    `json:"trail"`
	Tapes    []tapeText  `json:"tapes"`

	Nearest drawing.Mark   `json:"nearest"` // the surface of the sentence, and where
	Lines   []drawing.Line `json:"lines"`   // of the room, with the mat under them
	Figure  []drawing.Limb `json:"figure"`  // at the ball, from above
}

// tapeText is one distance to measure.
type tapeText struct {
	fit.Tape
	Label string `json:"label"`
}

func (s *Solver) marks(doc plan.Checked, w words.Words) (any, error) {
	p := doc.Plan()
	r, err := s.cache.report(doc)
	if err != nil {
		return nil, err
	}
	list, err := s.cache.lab.Marks(doc, "")
	if err != nil {
		return nil, err
	}
	out := marksAnswer{Size: [2]float64{p.Room.Length, p.Room.Width}, Marks: []guestMark{}}
	for _, m := range list {
		one := guestMark{Player: m.Player, Club: m.Club, Tee: m.Tee, Hand: m.Hand, Ball: m.Ball, Lead: m.Lead, Trail: m.Trail, Moved: w.Moved(p, m)}
		i := worstOf(r.Checks, Focus{m.Player, m.Club, m.Tee})
		if i < 0 {
			continue
		}
		nearest := r.Checks[worstOf(r.Checks, Focus{Player: m.Player, Tee: m.Tee})]
		one.Verdict, one.Brief = nearest.Verdict, w.Brief(nearest)
		one.Beside = w.Beside(r.Checks[i], nearest, r.Checks)
		one.Nearest = drawing.Mark{Name: nearest.Nearest.Surface, At: drawing.Point{nearest.Nearest.At[0], nearest.Nearest.At[1]}}
		one.Lines, one.Figure = drawing.Standing(p, m.At, m.Address)
		one.Sentence, one.More = w.Guest(m, r.Checks[i], nearest, r.Checks)
		for _, t := range m.Tapes {
			one.Tapes = append(one.Tapes, tapeText{t, units.Label(t.Distance, w.Units)})
		}
		out.Marks = append(out.Marks, one)
	}
	return out, nil
}
