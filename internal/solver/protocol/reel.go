package protocol

import (
	"math"

	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/rules"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
	"wideberth/internal/solver/words"
)

// reelRate is the number of frames a second of a reel, that of the scene's
// recording too: in one a clubhead of 50 m/s goes 0.2 m.
const reelRate = 240

// reelAnswer is the swing that the flat drawings show, frame by frame, and what it
// comes near to when. Lengths of Motion and Ball are whole millimetres in room
// coordinates, times seconds from address; text is in the plan's units.
type reelAnswer struct {
	Focus    Focus       `json:"focus"`
	Rate     float64     `json:"rate"` // frames a second
	Duration float64     `json:"duration"`
	Impact   float64     `json:"impact"`
	Tightest float64     `json:"tightest"`
	First    *float64    `json:"first,omitempty"` // when anybody of the family first touches anything
	Phases   []reelPhase `json:"phases"`
	Parts    []reelPart  `json:"parts"`
	// Motion is, frame by frame and part by part, the part's two ends, x y z x y z:
	// those of the first frame, then by how much each has changed since the frame
	// before, which keeps the text short.
	Motion []int `json:"motion"`
	// Ball is the ball from impact to the end of the swing: time (ms after impact), x, y, z.
	Ball []int `json:"ball"`
	// Said is, frame by frame, which of Texts says what is nearest to anything.
	Said    []int        `json:"said"`
	Texts   []string     `json:"texts"`
	Moments []reelMoment `json:"moments"`
	// Face says that the end elevation shows the tape longer than the side does.
	Face bool `json:"face"`
}

// reelPhase is one phase of the swing.
type reelPhase struct {
	Name  string  `json:"name"`
	Start float64 `json:"start"` // s
	End   float64 `json:"end"`
}

// reelPart is one capsule of golfer or club.
type reelPart struct {
	Name string  `json:"name"`
	R    float64 `json:"r"` // m
}

// reelMoment is a stretch in which it is tight or something is struck.
type reelMoment struct {
	Start   float64     `json:"start"` // s
	End     float64     `json:"end"`
	Time    float64     `json:"time"` // of the least clearance
	Verdict fit.Verdict `json:"verdict"`
	Surface string      `json:"surface"`
	Part    string      `json:"part"`
}

// reel serves a request of kind reel: the check that is looked at, moving.
func (s *Solver) reel(req request) (any, error) {
	at, err := s.deciding(req)
	if err != nil {
		return nil, err
	}
	p, r, c, who := at.plan, at.report, at.check, at.who
	place := sweep.Place(p, who.tee, who.player)
	pass := fit.Pass(at.swing, place, sweep.Surfaces(p), c, p.Margin, reelRate)
	out := reelAnswer{
		Focus: Focus{c.Player, c.Club, c.Tee},
		Rate:  reelRate, Duration: at.swing.Duration(), Impact: at.swing.ImpactTime(), Tightest: c.Nearest.Time,
		Phases: phasesOf(at.swing), Moments: []reelMoment{},
		Ball: flight(shot(p, r.Checks, who).Legs, place, at.swing),
		Face: math.Abs(c.Nearest.At[1]-c.Nearest.On[1]) >= math.Abs(c.Nearest.At[0]-c.Nearest.On[0]),
	}
	if c.Contact != nil {
		out.First = &c.Contact.Time
	}
	out.film(at.swing, place, len(pass.Frames))
	out.tell(words.WordsOf(p), pass.Frames)
	for _, one := range pass.Moments {
		out.Moments = append(out.Moments, reelMoment(one))
	}
	return out, nil
}

func phasesOf(s *swing.Swing) (out []reelPhase) {
	all := swing.Phases()
	for i, p := range all {
		end := s.Duration()
		if i+1 < len(all) {
			end = s.TimeOf(all[i+1])
		}
		out = append(out, reelPhase{string(p), s.TimeOf(p), end})
	}
	return out
}

// film writes down the poses.
func (a *reelAnswer) film(s *swing.Swing, place sweep.Placement, frames int) {
	const perPart = 6
	last := make([]int, perPart*int(swing.NumParts))
	a.Motion = make([]int, 0, frames*len(last))
	for k := range frames {
		pose := s.PoseAt(min(float64(k)/reelRate, s.Duration()))
		for p := range pose {
			c := place.Capsule(pose[p])
			for i, v := range [perPart]float64{c.A.X, c.A.Y, c.A.Z, c.B.X, c.B.Y, c.B.Z} {
				n := millimetres(v)
				a.Motion = append(a.Motion, n-last[perPart*p+i])
				last[perPart*p+i] = n
			}
			if k == 0 {
				a.Parts = append(a.Parts, reelPart{swing.Part(p).String(), float64(millimetres(c.R)) / 1000})
			}
		}
	}
}

// tell says of every frame what is nearest.
func (a *reelAnswer) tell(w words.Words, frames []fit.Passing) {
	seen := map[string]int{}
	for _, f := range frames {
		text := w.Passing(f)
		i, ok := seen[text]
		if !ok {
			i = len(a.Texts)
			seen[text] = i
			a.Texts = append(a.Texts, text)
		}
		a.Said = append(a.Said, i)
	}
}

// flight is the ball's way from impact to the end of the swing, as Ball has it.
func flight(legs []ball.Path, place sweep.Placement, s *swing.Swing) []int {
	out := []int{}
	add := func(time float64, at geom.Vec) {
		out = append(out, millimetres(time), millimetres(at.X), millimetres(at.Y), millimetres(at.Z))
	}
	if len(legs) == 0 || len(legs[0].Trail) == 0 {
		add(0, place.ToRoom(geom.Vec{Z: rules.BallRadius}))
	}
	start := 0.0
	for _, leg := range legs {
		for _, m := range leg.Trail {
			if start+m.Time > s.Duration()-s.ImpactTime() {
				return out
			}
			add(start+m.Time, m.P)
		}
		start += leg.End.Time
	}
	return out
}

// millimetres rounds metres to whole millimetres, or seconds to milliseconds.
func millimetres(v float64) int { return int(math.Round(v * 1000)) }
