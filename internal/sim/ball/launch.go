package ball

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/r3"
)

// Launch is how a ball leaves: from where, which way, how fast, how spun.
type Launch struct {
	// From is the centre of the ball, room frame. A launch fresh from FromClub
	// is relative to the tee on the standing surface; At puts it in the room.
	From      geom.Vec
	Speed     float64 // m/s
	Elevation float64 // rad above level
	Azimuth   float64 // rad, positive to the left of the target
	Spin      float64 // rad/s, backspin positive
	Tilt      float64 // rad, spin axis leaning so that the ball curves left
}

// State is a ball in flight: centre (m), velocity (m/s) and spin vector (rad/s).
type State struct {
	P, V, W geom.Vec
}

// State returns the motion at the moment of launch.
func (l Launch) State() State {
	se, ce := math.Sincos(l.Elevation)
	sa, ca := math.Sincos(l.Azimuth)
	along := geom.Vec{X: ce * ca, Y: ce * sa, Z: se}
	left := geom.Vec{X: -sa, Y: ca}
	above := r3.Cross(along, left)
	st, ct := math.Sincos(l.Tilt)
	return State{
		P: l.From,
		V: r3.Scale(l.Speed, along),
		W: r3.Add(r3.Scale(-l.Spin*ct, left), r3.Scale(l.Spin*st, above)),
	}
}

// At returns the launch moved from the tee's own origin into the room.
func (l Launch) At(p plan.Plan, t plan.Tee) Launch {
	l.From = r3.Add(l.From, geom.Vec{X: t.X, Y: t.Y, Z: p.Floor.Standing()})
	return l
}
