package sweep

import (
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

// Placement is where a golfer's frame lies in the room.
type Placement struct {
	Ball geom.Vec // on the standing surface, room frame, m
	Left bool     // a left-hander: the frame is mirrored in y
}

// Place returns the placement of a player on a tee.
func Place(p plan.Plan, tee plan.Tee, pl plan.Player) Placement {
	return Placement{
		Ball: geom.Vec{X: tee.X, Y: tee.Y, Z: p.Floor.Standing()},
		Left: pl.Hand == plan.HandLeft,
	}
}

// ToGolfer takes a point from the room frame to the golfer frame of a
// right-hander.
func (p Placement) ToGolfer(v geom.Vec) geom.Vec {
	return p.hand(geom.Vec{X: v.X - p.Ball.X, Y: v.Y - p.Ball.Y, Z: v.Z - p.Ball.Z})
}

// ToRoom takes a point from the golfer frame to the room frame.
func (p Placement) ToRoom(v geom.Vec) geom.Vec {
	v = p.hand(v)
	return geom.Vec{X: v.X + p.Ball.X, Y: v.Y + p.Ball.Y, Z: v.Z + p.Ball.Z}
}

// hand is the one mirror between the hands, for points.
func (p Placement) hand(v geom.Vec) geom.Vec {
	if p.Left {
		return geom.MirrorY(v)
	}
	return v
}

// Surface takes a surface from the room frame to the golfer frame. Golfers only
// differ in hand by the mirror here: a swing is always a right-hander's, and a
// left-hander is a right-hander in the mirrored room.
func (p Placement) Surface(s Surface) Surface {
	s.Plane, s.Box = s.Plane.Moved(p.Ball), s.Box.Moved(p.Ball)
	if p.Left {
		s.Plane, s.Box = s.Plane.MirrorY(), s.Box.MirrorY()
	}
	return s
}

// Surfaces takes a list of surfaces to the golfer frame.
func (p Placement) Surfaces(room []Surface) []Surface {
	out := make([]Surface, len(room))
	for i, s := range room {
		out[i] = p.Surface(s)
	}
	return out
}

// Capsule takes a part from the golfer frame to the room frame.
func (p Placement) Capsule(c geom.Capsule) geom.Capsule {
	return geom.Capsule{A: p.ToRoom(c.A), B: p.ToRoom(c.B), R: c.R}
}

// ContactToRoom takes the points of a contact from the golfer frame to the
// room frame.
func (p Placement) ContactToRoom(c Contact) Contact {
	c.OnSurface, c.OnPart = p.ToRoom(c.OnSurface), p.ToRoom(c.OnPart)
	return c
}
