package sweep

import "wideberth/internal/sim/geom"

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
