package sweep

import (
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
)

// Footprint is where a foot ends on the standing surface, room frame: below the
// two ends of its capsule, which runs from the heel to the toe. Everything that
// says or draws where a heel is asks here.
func (p Placement) Footprint(foot geom.Capsule) (heel, toe geom.Vec) {
	heel, toe = geom.Vec{X: foot.A.X, Y: foot.A.Y}, geom.Vec{X: foot.B.X, Y: foot.B.Y}
	along := geom.Vec{X: toe.X - heel.X, Y: toe.Y - heel.Y}
	if n := geom.Norm(along); n > 0 {
		// The capsule's axis ends one radius short of the heel and of the toe.
		k := foot.R / n
		heel.X, heel.Y = heel.X-k*along.X, heel.Y-k*along.Y
		toe.X, toe.Y = toe.X+k*along.X, toe.Y+k*along.Y
	}
	return p.ToRoom(heel), p.ToRoom(toe)
}

// Mat is where the hitting mat lies under a golfer at address, room frame, kept to
// the bare room; ok is false when the plan has none or not its size. The plan does
// not say where it lies, but ball and golfer both stand on it (plan.Floor.Standing):
// it lies about the middle of the rectangle that holds the ball and the feet.
func (p Placement) Mat(in plan.Plan, address swing.Pose) (box geom.Box, ok bool) {
	m, room := in.Floor.Mat, in.Room
	if m == nil || m.Length == 0 || m.Width == 0 {
		return geom.Box{}, false
	}
	var lo, hi geom.Vec // the ball is the origin
	for _, foot := range [2]geom.Capsule{address[swing.LeadFoot], address[swing.TrailFoot]} {
		for _, end := range [2]geom.Vec{foot.A, foot.B} {
			lo.X, hi.X = min(lo.X, end.X-foot.R), max(hi.X, end.X+foot.R)
			lo.Y, hi.Y = min(lo.Y, end.Y-foot.R), max(hi.Y, end.Y+foot.R)
		}
	}
	middle := p.ToRoom(geom.Vec{X: (lo.X + hi.X) / 2, Y: (lo.Y + hi.Y) / 2})
	return geom.Box{
		Min: geom.Vec{X: max(0, middle.X-m.Length/2), Y: max(0, middle.Y-m.Width/2), Z: max(0, p.Ball.Z-m.Thickness)},
		Max: geom.Vec{X: min(room.Length, middle.X+m.Length/2), Y: min(room.Width, middle.Y+m.Width/2), Z: p.Ball.Z},
	}, true
}
