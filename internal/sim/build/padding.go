package build

import (
	"math"

	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/plan"
)

const (
	padThick = 0.05 // m, 2 in: an assumption
	padMore  = 0.30 // m of padding around where balls were met: an assumption
)

// Padding is foam over a bare hard place that balls meet, as a solid of the plan; ok is
// false of what is no wall and no ceiling. Golfer and club have to clear it as well.
func Padding(p plan.Plan, hard ball.Pad) (s plan.Solid, ok bool) {
	size := [3]float64{p.Room.Length, p.Room.Width, p.Room.Height}
	axis, far := 0, true
	switch hard.Surface {
	case "left wall":
		axis = 1
	case "right wall":
		axis, far = 1, false
	case "front wall":
	case "back wall":
		far = false
	case "ceiling":
		axis = 2
	default:
		return plan.Solid{}, false
	}
	s = plan.Solid{Name: "padding, " + hard.Surface, Cover: plan.CoverFoam}
	tenth := func(v float64) float64 { return math.Round(v*1e4) / 1e4 }
	for k := range size {
		s.Min[k], s.Max[k] = tenth(max(0, hard.From[k]-padMore)), tenth(min(size[k], hard.To[k]+padMore))
	}
	s.Min[axis], s.Max[axis] = 0, padThick
	if far {
		s.Min[axis], s.Max[axis] = tenth(size[axis]-padThick), size[axis]
	}
	return s, true
}

// padded is the area of a solid's largest side, m²: what foam or cloth takes.
func padded(s plan.Solid) float64 {
	x, y, z := s.Max[0]-s.Min[0], s.Max[1]-s.Min[1], s.Max[2]-s.Min[2]
	return max(x*y, y*z, x*z)
}
