package fit

import (
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

// Spot is a place for the ball on the standing surface, room frame, m.
type Spot struct{ X, Y float64 }

// To is the distance to another spot, m.
func (s Spot) To(t Spot) float64 { return geom.Hypot(t.X-s.X, t.Y-s.Y) }

// Usual distances from tee to screen, m: 8–12 ft, common practice, no source.
// Nearer brings a hard rebound, farther spreads misses.
const (
	UsualNearest  = 2.4
	UsualFarthest = 3.7
)

// BallFits reports whether a plan may have a tee on a spot.
func BallFits(p plan.Plan, at Spot) bool {
	const ball = 0.043 // m, its diameter
	standing := p.Floor.Standing()
	if !(at.X > 0 && at.Y > 0 && at.X < p.Room.Length && at.Y < p.Room.Width) ||
		p.Room.CeilingAt(at.X, at.Y)-standing < ball {
		return false
	}
	if s := p.Screen; s != nil && at.X+ball/2 > s.X {
		return false
	}
	for _, s := range p.Room.Solids {
		if at.X > s.Min[0] && at.X < s.Max[0] && at.Y > s.Min[1] && at.Y < s.Max[1] && standing+ball > s.Min[2] && standing < s.Max[2] {
			return false
		}
	}
	return true
}
