// Package record makes the recording that the scene is sent: it takes a plan, a
// golfer on a tee and a swing, and writes down everything the scene draws, in
// room coordinates. All that is computed about a swing for the eye is computed
// here, by package sweep; the scene only draws.
package record

import (
	"math"
	"slices"
	"strings"

	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/rules"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
	"wideberth/internal/units"
)

// Rate is the number of frames a second of a recording, that of the command
// line's swing too.
const Rate = 240

// Input is what a recording is made of. The plan is a checked one, with its defaults
// filled in; Swing is the swing of Player with Club, usually the loosest of the
// player's family.
type Input struct {
	Plan   plan.Plan
	Player plan.Player
	Club   plan.Club
	Tee    plan.Tee
	Swing  *swing.Swing
	// Typical is the same player's central swing, which the recording holds beside
	// Swing, with one impact for both; nil leaves it out.
	Typical *swing.Swing
	// Tightest is where the report found the swing tightest; the zero value
	// stretches no tape.
	Tightest Tightest
	// First is the first touch of the player's whole family, which may come sooner
	// than that of Swing: the strike marks begin there. Nil: none is known of.
	First *Touch
	Ball  Shot // the zero value leaves the ball on its tee
}

// Tightest is the tightest moment of a swing, in room coordinates.
type Tightest struct {
	Time    float64  // s into the swing
	From    geom.Vec // the point of golfer or club nearest to the surface, m
	To      geom.Vec // the point of the surface nearest to it, m
	Label   string   // the reading on the tape
	Verdict fit.Verdict
	Surface string
	Part    string
	// ModelError is how far the model's paths lie from recorded ones, m.
	ModelError float64
}

// Touch is a touch of a surface, in room coordinates.
type Touch struct {
	Time    float64  // s into the swing
	At      geom.Vec // on the surface
	Surface string
	Part    string
}

// Swing records one swing.
func Swing(in Input) *wire.Recording {
	place := sweep.Place(in.Plan, in.Tee, in.Player)
	room := sweep.Surfaces(in.Plan)
	mine := place.Surfaces(room)

	s := &wire.Recording{
		Title: strings.Join([]string{in.Player.Name, in.Club.Name, in.Tee.Name + " tee"}, ", "),
		Room:  wire.Vec{float32(in.Plan.Room.Length), float32(in.Plan.Room.Width), float32(in.Plan.Room.Height)},
		Faces: Faces(in.Plan, in.Player, in.Swing.PoseAt(0)),
		Rate:  Rate,
		Tick:  0.0254,
		Major: 12,
		Ball:  vec(place.ToRoom(geom.Vec{Z: rules.BallRadius})),

		Club: wire.Club{Kind: in.Club.Kind, Loft: float32(in.Club.Loft)}, Margin: float32(in.Plan.Margin),
	}
	if in.Plan.Units == units.Metric {
		s.Tick, s.Major = 0.01, 10
	}
	for _, p := range swing.Phases() {
		s.Phases = append(s.Phases, string(p))
	}
	addFrames(s, in.Swing, in.Typical, place, mine)
	addTightest(s, in.Tightest)
	addFirst(s, in.First, room)
	addStrikes(s, place, sweep.Sample(in.Swing, sweep.FineTolerance), room, mine)
	addFlight(s, in.Ball, in.Swing.ImpactTime())
	return s
}

func vec(v geom.Vec) wire.Vec { return wire.Vec{float32(v.X), float32(v.Y), float32(v.Z)} }

func addFrames(s *wire.Recording, m, typical *swing.Swing, place sweep.Placement, mine []sweep.Surface) {
	n := int(math.Ceil(m.Duration()*Rate-1e-9)) + 1
	for i := range n {
		t := min(float64(i)/Rate, m.Duration())
		pose := m.PoseAt(t)
		f := wire.Frame{Phase: uint8(slices.Index(s.Phases, string(m.PhaseAt(t)))), Clearance: float32(clearance(pose[:], mine)), Club: float32(clearance(pose[swing.Grip:], mine)), Pose: axes(&pose, place)}
		if typical != nil {
			then := typical.PoseAt(max(0, min(t-m.ImpactTime()+typical.ImpactTime(), typical.Duration())))
			f.Typical = axes(&then, place)
		}
		s.Frames = append(s.Frames, f)
		if i > 0 {
			continue
		}
		for p, c := range pose {
			s.Parts = append(s.Parts, wire.Part{Name: swing.Part(p).String(), Radius: float32(c.R)})
		}
	}
}

// axes are the axes of a standing pose, in the room.
func axes(pose *swing.Pose, place sweep.Placement) []wire.Segment {
	out := make([]wire.Segment, len(pose))
	for p := range pose {
		c := place.Capsule(pose[p])
		out[p] = wire.Segment{A: vec(c.A), B: vec(c.B)}
	}
	return out
}

// clearance is the signed distance (m) of parts of a standing pose to the nearest
// surface, both in the golfer frame.
func clearance(parts []geom.Capsule, mine []sweep.Surface) float64 {
	nearest := math.Inf(1)
	for i := range mine {
		for _, c := range parts {
			d := 0.0
			if mine[i].Kind.Flat() {
				d = mine[i].Plane.Distance(c)
			} else {
				d, _, _ = mine[i].Box.Distance(c)
			}
			nearest = min(nearest, d)
		}
	}
	return nearest
}

// addTightest writes down the tightest moment as the report has it.
func addTightest(s *wire.Recording, t Tightest) {
	if t.Label == "" {
		return
	}
	s.Tightest = wire.Tightest{
		Time: float32(t.Time), From: vec(t.From), To: vec(t.To),
		Label: t.Label, Verdict: sent(t.Verdict), Surface: t.Surface, Part: t.Part, Fray: float32(t.ModelError),
	}
}

// sent is a report's verdict as a recording holds it; what is none is shown as the
// worst.
func sent(v fit.Verdict) wire.Verdict {
	switch v {
	case fit.Clear:
		return wire.Clear
	case fit.Tight:
		return wire.Tight
	}
	return wire.Strikes
}

// addFirst marks the first touch of the family.
func addFirst(s *wire.Recording, first *Touch, room []sweep.Surface) {
	part := -1
	if first != nil {
		part = s.PartIndex(first.Part)
	}
	for _, surface := range room {
		if part >= 0 && surface.Name == first.Surface {
			s.Strikes = append(s.Strikes, wire.Strike{
				Frame: s.FrameAt(first.Time + 0.5/Rate), At: vec(first.At), Normal: vec(normalAt(surface, first.At)),
				Radius: s.Parts[part].Radius, Surface: first.Surface, Part: first.Part,
			})
			return
		}
	}
}

// addStrikes marks where golfer or club is past a surface, frame by frame.
func addStrikes(s *wire.Recording, place sweep.Placement, track *sweep.Track, room, mine []sweep.Surface) {
	for i := range mine {
		for _, c := range track.Strikes(mine[i], Rate) {
			c = place.ContactToRoom(c)
			s.Strikes = append(s.Strikes, wire.Strike{
				Frame:   s.FrameAt(c.Time + 0.5/Rate),
				At:      vec(c.OnSurface),
				Normal:  vec(normalAt(room[i], c.OnSurface)),
				Radius:  s.Parts[c.Part].Radius,
				Surface: room[i].Name,
				Part:    c.Part.String(),
			})
		}
	}
	slices.SortStableFunc(s.Strikes, func(a, b wire.Strike) int { return a.Frame - b.Frame })
}

// normalAt is the unit normal of a surface's face nearest to a point on it.
func normalAt(s sweep.Surface, p geom.Vec) geom.Vec {
	if s.Kind.Flat() {
		return s.Plane.N
	}
	best, normal := math.Inf(1), geom.Vec{}
	for _, f := range []struct {
		d float64
		n geom.Vec
	}{
		{p.X - s.Box.Min.X, geom.Vec{X: -1}}, {s.Box.Max.X - p.X, geom.Vec{X: 1}},
		{p.Y - s.Box.Min.Y, geom.Vec{Y: -1}}, {s.Box.Max.Y - p.Y, geom.Vec{Y: 1}},
		{p.Z - s.Box.Min.Z, geom.Vec{Z: -1}}, {s.Box.Max.Z - p.Z, geom.Vec{Z: 1}},
	} {
		if d := math.Abs(f.d); d < best {
			best, normal = d, f.n
		}
	}
	return normal
}
