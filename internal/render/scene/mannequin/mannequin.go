// Package mannequin shapes golfer and club about the capsules of a pose: a
// jointed figure that stays inside what was judged and shows which way it faces.
package mannequin

import (
	"wideberth/internal/render/scene/shape"
	"wideberth/internal/render/scene/wire"
)

type (
	vec  = shape.Vec
	axis = shape.Axis
	ring = shape.Ring
	tone = shape.Tone
)

// The parts of a golfer and a club, as a recording names them.
const (
	head = iota
	neck
	trunk
	pelvis
	leadUpperArm
	trailUpperArm
	leadForearm
	trailForearm
	leadHand
	trailHand
	leadThigh
	trailThigh
	leadShank
	trailShank
	leadFoot
	trailFoot
	grip
	shaft
	clubhead
	numParts
)

var partNames = [numParts]string{
	"head", "neck", "trunk", "pelvis",
	"lead upper arm", "trail upper arm", "lead forearm", "trail forearm",
	"lead hand", "trail hand", "lead thigh", "trail thigh",
	"lead shank", "trail shank", "lead foot", "trail foot",
	"grip", "shaft", "clubhead",
}

// Figure is one golfer with one club. Its solids are those of the last pose.
type Figure struct {
	part   [numParts]int     // where in a pose each part is
	radius [numParts]float32 // m
	side   float32           // 1 for a right-hander, −1 for a left-hander
	club   wire.Club
	ball   vec
	impact float64 // when the ball leaves, frames
	rate   float64 // frames a second
	most   vec     // the far wall, at which a golfer looks in the end

	axes   [numParts]axis
	solids []shape.Solid
}

// New takes the measures of the golfer of a recording; ok is false when a part is
// missing or there is no pose.
func New(s *wire.Recording) (f *Figure, ok bool) {
	f = &Figure{side: 1, club: s.Club, ball: shape.Of(s.Ball), impact: float64(len(s.Frames)), rate: float64(s.Rate)}
	f.most = vec{X: s.Room[0], Y: f.ball.Y}
	for i, name := range partNames {
		at := s.PartIndex(name)
		if at < 0 || len(s.Frames) == 0 {
			return nil, false
		}
		f.part[i], f.radius[i] = at, s.Parts[at].Radius
	}
	for i, frame := range s.Frames {
		if int(frame.Phase) < len(s.Phases) && s.Phases[frame.Phase] == "impact" {
			f.impact = float64(i)
			break
		}
	}
	at := func(p int) axis {
		q := s.Frames[0].Pose[f.part[p]]
		return axis{A: shape.Of(q.A), B: shape.Of(q.B)}
	}
	hips, back := at(pelvis), at(trunk)
	toes := at(leadFoot).B.Sub(at(leadFoot).A).Add(at(trailFoot).B.Sub(at(trailFoot).A))
	if hips.B.Sub(hips.A).Cross(back.B.Sub(back.A)).Dot(toes) < 0 {
		f.side = -1
	}
	return f, true
}

// LeftHanded tells the hand: which way the toes point.
func (f *Figure) LeftHanded() bool { return f.side < 0 }

// Pose shapes the figure about the axes of a pose, in a recording's order, at a
// play-head in frames. The solids are the figure's own and stay valid until the next
// pose.
func (f *Figure) Pose(axes []axis, frames float64) []shape.Solid {
	for i := range f.axes {
		f.axes[i] = axes[f.part[i]]
	}
	f.solids = f.solids[:0]
	f.shapeTrunk()
	f.shapeHead(frames)
	f.shapeArm(leadUpperArm, leadForearm, leadHand, shape.Glove)
	f.shapeArm(trailUpperArm, trailForearm, trailHand, shape.Skin)
	f.shapeLeg(leadThigh, leadShank, leadFoot)
	f.shapeLeg(trailThigh, trailShank, trailFoot)
	f.shapeClub()
	return f.solids
}

// Sections by how large a part is in the picture.
var (
	wide  = shape.Oval(16)
	usual = shape.Oval(12)
	small = shape.Oval(8)
	boxy  = shape.Boxy(12)
)

// next starts a solid, on the slices of the pose before.
func (f *Figure) next(at vec, size float32, section *shape.Section) *shape.Solid {
	n := len(f.solids)
	if n < cap(f.solids) {
		f.solids = f.solids[:n+1]
	} else {
		f.solids = append(f.solids, shape.Solid{})
	}
	s := &f.solids[n]
	s.Rings, s.Section, s.At, s.Size, s.Rod = s.Rings[:0], section, at, size, false
	return s
}

// slice is a ring of a part that is turned about an axis: where along it, as a
// share of its length, and its radius as a share of the part's.
type slice struct {
	along, radius float32
	tone          tone
}

// turn shapes a limb: round ends about both joints and the slices between.
func (f *Figure) turn(p int, section *shape.Section, slices ...slice) {
	a, r := f.axes[p], f.radius[p]
	dir := a.B.Sub(a.A).Unit()
	u, v := shape.Perpendiculars(dir)
	s := f.next(a.Middle(), r, section)
	end := func(k slice, way float32) {
		round := [...][2]float32{{1, 0}, {0.87, 0.5}, {0.5, 0.87}}
		for i := range round {
			c := round[i]
			if way > 0 {
				c = round[len(round)-1-i]
			}
			w := k.radius * r
			s.Rings = append(s.Rings, shape.Round(a.A.Lerp(a.B, k.along).Along(dir, way*c[0]*w), u.Mul(c[1]*w), v.Mul(c[1]*w), k.tone))
		}
	}
	end(slices[0], -1)
	for _, k := range slices {
		w := k.radius * r
		s.Rings = append(s.Rings, shape.Round(a.A.Lerp(a.B, k.along), u.Mul(w), v.Mul(w), k.tone))
	}
	end(slices[len(slices)-1], 1)
}
