package fit

import (
	"math"

	"wideberth/internal/sim/family"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// Cast is one player with one club, ready to be put on any tee.
type Cast struct {
	Player plan.Player
	Club   plan.Club
	Kin    *family.Relatives // the family of their swings
	At     sweep.Placement   // where the golfer's frame lies for a ball at the room's origin
}

// NewCast makes a cast of a player and a club of a plan by name. Its family is not
// kept.
func NewCast(p plan.Plan, player, club string) (Cast, error) {
	pl, c, _, err := p.Named(player, club, "")
	if err != nil {
		return Cast{}, err
	}
	at := sweep.Place(p, plan.Tee{}, pl)
	kin, err := family.New(pl, c, family.Directions(at.Surfaces(sweep.Surfaces(p))))
	return Cast{pl, c, kin, at}, err
}

// Placed returns the placement with the ball on a spot.
func (c *Cast) Placed(at Spot) sweep.Placement {
	p := c.At
	p.Ball.X, p.Ball.Y = at.X, at.Y
	return p
}

// Ramp is a clearance that depends on the spot as a flat surface's does: on a
// straight line.
type Ramp struct {
	At0    float64 // m, with the ball at the room's origin
	DX, DY float64 // per m that the ball is moved along x and y
}

// At is the clearance (m) on a spot.
func (r Ramp) At(s Spot) float64 { return r.At0 + r.DX*s.X + r.DY*s.Y }

// Level reports whether it is the same everywhere, as over a level ceiling.
func (r Ramp) Level() bool { return r.DX == 0 && r.DY == 0 }

// Ramp returns the clearance of the family to a flat surface of the room.
func (c *Cast) Ramp(s sweep.Surface) Ramp {
	least, _, _ := c.Kin.Reach(c.At.Surface(s).Plane.N)
	n := s.Plane.N
	return Ramp{least - s.Plane.D + n.Z*c.At.Ball.Z, n.X, n.Y}
}

// BoxWithin returns the cautious clearance of the family to a box of the room
// from a spot (m), if it is less than limit: that of the members in the
// atlas less its hollow, which no member undercuts.
func (c *Cast) BoxWithin(b geom.Box, at Spot, limit float64) (float64, bool) {
	return c.BoxBetween(b, at, math.Inf(-1), limit)
}

// BoxBetween is BoxWithin for a caller to whom all clearances up to enough are
// the same: what it returns then need not be the least.
func (c *Cast) BoxBetween(b geom.Box, at Spot, enough, limit float64) (float64, bool) {
	local := c.Placed(at).Surface(sweep.Surface{Kind: sweep.Solid, Box: b})
	return c.Kin.Atlas().Between(local.Box, enough, limit)
}

// BoxExact returns what a Check finds for a box, if it is less than limit.
func (c *Cast) BoxExact(b geom.Box, at Spot, limit float64) float64 {
	v, near := c.BoxWithin(b, at, limit)
	if !near { // nor does anybody come nearer
		return v
	}
	local := c.Placed(at).Surface(sweep.Surface{Kind: sweep.Solid, Box: b})
	return min(c.Kin.NearestTo(local), limit)
}

// Apart returns a quick lower bound of BoxWithin.
func (c *Cast) Apart(b geom.Box, at Spot) float64 {
	return b.Gap(c.Extent().Moved(geom.Vec{X: -at.X, Y: -at.Y}))
}

// Extent returns a box around everything that golfer and club sweep, room
// frame, for a ball at the room's origin.
func (c *Cast) Extent() geom.Box {
	b := c.Kin.Atlas().Extent
	if c.At.Left {
		b = b.MirrorY()
	}
	return b.Moved(geom.Vec{Z: -c.At.Ball.Z})
}
