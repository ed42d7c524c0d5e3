// Package stage makes the show: it takes a plan, a golfer on a tee and a swing,
// and writes down everything the scene draws, in room coordinates. All that is
// computed about a swing for the eye is computed here, by package sweep; the
// scene only draws.
package stage

import (
	"math"
	"slices"
	"strings"

	"wideberth/internal/render/show"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Rate is the number of frames a second of a show, that of the command line's
// swing too.
const Rate = 240

// Input is what a show is made of. The plan is a checked one, with its defaults
// filled in; Swing is the swing of Player with Club, usually the loosest of the
// player's family.
type Input struct {
	Plan   plan.Plan
	Player plan.Player
	Club   plan.Club
	Tee    plan.Tee
	Swing  *swing.Swing
	Ball   Shot // the zero value leaves the ball on its tee
}

// Build makes the show of one swing.
func Build(in Input) *show.Show {
	place := sweep.Place(in.Plan, in.Tee, in.Player)
	room := sweep.Surfaces(in.Plan)
	mine := place.Surfaces(room)

	s := &show.Show{
		Title: strings.Join([]string{in.Player.Name, in.Club.Name, in.Tee.Name + " tee"}, ", "),
		Room:  show.Vec{float32(in.Plan.Room.Length), float32(in.Plan.Room.Width), float32(in.Plan.Room.Height)},
		Faces: Faces(in.Plan),
		Rate:  Rate,
		Tick:  0.0254,
		Major: 12,
	}
	if in.Plan.Units == plan.UnitsMetric {
		s.Tick, s.Major = 0.01, 10
	}
	for p := range swing.NumPhases {
		s.Phases = append(s.Phases, p.String())
	}
	s.Ball = vec(place.ToRoom(geom.Vec{Z: ballRadius}))
	addFrames(s, in.Swing, place, mine)

	track := sweep.Sample(in.Swing, sweep.FineTolerance)
	addTape(s, in.Plan, place, track, room, mine)
	addStrikes(s, place, track, room, mine)
	addFlight(s, in.Ball, in.Swing.ImpactTime())
	return s
}

// ballRadius is the least radius of a golf ball, m: 1.680 in across (Rules of
// Golf, Equipment Rules, part 4; from memory).
const ballRadius = 0.02134

func vec(v geom.Vec) show.Vec { return show.Vec{float32(v.X), float32(v.Y), float32(v.Z)} }

func addFrames(s *show.Show, m *swing.Swing, place sweep.Placement, mine []sweep.Surface) {
	n := int(math.Ceil(m.Duration()*Rate-1e-9)) + 1
	for i := range n {
		t := min(float64(i)/Rate, m.Duration())
		pose := m.PoseAt(t)
		f := show.Frame{Phase: uint8(m.PhaseAt(t)), Clearance: float32(clearance(&pose, mine))}
		for p := range pose {
			c := place.Capsule(pose[p])
			f.Pose = append(f.Pose, show.Segment{A: vec(c.A), B: vec(c.B)})
		}
		s.Frames = append(s.Frames, f)
		if i > 0 {
			continue
		}
		for p, c := range pose {
			s.Parts = append(s.Parts, show.Part{Name: swing.Part(p).String(), Radius: float32(c.R)})
		}
		s.Feet = []show.Segment{f.Pose[swing.LeadFoot], f.Pose[swing.TrailFoot]}
	}
}

// clearance is the signed distance (m) of a standing pose to the nearest
// surface, both in the golfer frame.
func clearance(pose *swing.Pose, mine []sweep.Surface) float64 {
	nearest := math.Inf(1)
	for i := range mine {
		for p := range pose {
			d := 0.0
			if mine[i].Kind.Flat() {
				d = mine[i].Plane.Distance(pose[p])
			} else {
				d, _, _ = mine[i].Box.Distance(pose[p])
			}
			nearest = min(nearest, d)
		}
	}
	return nearest
}

// addTape stretches the tape at the nearest (or deepest) contact of the swing.
func addTape(s *show.Show, p plan.Plan, place sweep.Placement, track *sweep.Track, room, mine []sweep.Surface) {
	nearest, at := sweep.Contact{Clearance: math.Inf(1)}, -1
	for i := range mine {
		if c := track.Clearance(mine[i]); c.Clearance < nearest.Clearance {
			nearest, at = c, i
		}
	}
	if at < 0 {
		return
	}
	nearest = place.ContactToRoom(nearest)
	s.Tape = show.Tape{
		Time: float32(nearest.Time), From: vec(nearest.OnPart), To: vec(nearest.OnSurface),
		Label:   reading(nearest.Clearance, p.Units),
		Surface: room[at].Name, Part: nearest.Part.String(),
	}
	switch {
	case nearest.Clearance < 0:
		s.Tape.Verdict = show.Strikes
	case nearest.Clearance < p.Margin:
		s.Tape.Verdict = show.Tight
	}
}

// reading is what stands on the tape: how far, in both kinds of unit, rounded to
// the worse side. The verdict beside it says whether that is room or overlap.
func reading(clearance float64, units string) string {
	return strings.ReplaceAll(plan.LabelTape(clearance, units), "−", "")
}

// addStrikes marks where golfer or club is past a surface, frame by frame.
func addStrikes(s *show.Show, place sweep.Placement, track *sweep.Track, room, mine []sweep.Surface) {
	for i := range mine {
		for _, c := range track.Strikes(mine[i], Rate) {
			c = place.ContactToRoom(c)
			s.Strikes = append(s.Strikes, show.Strike{
				Frame:   s.FrameAt(c.Time + 0.5/Rate),
				At:      vec(c.OnSurface),
				Normal:  vec(normalAt(room[i], c.OnSurface)),
				Radius:  s.Parts[c.Part].Radius,
				Surface: room[i].Name,
				Part:    c.Part.String(),
			})
		}
	}
	slices.SortStableFunc(s.Strikes, func(a, b show.Strike) int { return a.Frame - b.Frame })
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
