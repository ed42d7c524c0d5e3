package fit

import (
	"math"
	"slices"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// cast is one player with one club, ready to be put on any tee.
type cast struct {
	player plan.Player
	club   plan.Club
	kin    *relatives
	// at is where the frame lies for a ball at the room's origin.
	at sweep.Placement
}

// casts returns every player with each of their clubs; where players or clubs
// are named, only those. The plan must be complete and valid.
func (l *Lab) casts(p plan.Plan, players, clubs []string) ([]cast, error) {
	surfaces := sweep.Surfaces(p)
	var out []cast
	for _, player := range p.Players {
		if len(players) > 0 && !slices.Contains(players, player.Name) {
			continue
		}
		for _, club := range p.ClubsOf(player) {
			if len(clubs) > 0 && !slices.Contains(clubs, club.Name) {
				continue
			}
			at := sweep.Place(p, plan.Tee{}, player)
			room := newRoom(surfaces, at)
			kin, err := l.relatives(player, club, room.dirs())
			if err != nil {
				return nil, err
			}
			out = append(out, cast{player, club, kin, at})
		}
	}
	return out, nil
}

// spot is a place for the ball on the standing surface, room frame, m.
type spot struct{ x, y float64 }

func (s spot) to(t spot) float64 { return geom.Hypot(t.x-s.x, t.y-s.y) }

// placed returns the placement with the ball on a spot.
func (c *cast) placed(at spot) sweep.Placement {
	p := c.at
	p.Ball.X, p.Ball.Y = at.x, at.y
	return p
}

// ramp is a clearance that depends on the spot as a flat surface's does: on a
// straight line.
type ramp struct {
	at0, dx, dy float64
}

func (r ramp) at(s spot) float64 { return r.at0 + r.dx*s.x + r.dy*s.y }

// level reports whether it is the same everywhere, as over a level ceiling.
func (r ramp) level() bool { return r.dx == 0 && r.dy == 0 }

// ramp returns the clearance of the family to a flat surface of the room.
func (c *cast) ramp(s sweep.Surface) ramp {
	k := slices.Index(c.kin.dirs, c.at.Surface(s).Plane.N)
	n := s.Plane.N
	return ramp{c.kin.least[k] - s.Plane.D + n.Z*c.at.Ball.Z, n.X, n.Y}
}

// boxWithin returns the cautious clearance of the family to a box of the room
// from a spot, if it is less than limit: that of the members in the
// atlas less its hollow, which no member undercuts.
func (c *cast) boxWithin(b geom.Box, at spot, limit float64) (float64, bool) {
	return c.boxBetween(b, at, math.Inf(-1), limit)
}

// boxBetween is boxWithin for a caller to whom all clearances up to enough are
// the same: what it returns then need not be the least.
func (c *cast) boxBetween(b geom.Box, at spot, enough, limit float64) (float64, bool) {
	local := c.placed(at).Surface(sweep.Surface{Kind: sweep.Solid, Box: b})
	a := c.kin.atlas()
	if contact, near := a.tree.ClearanceBetween(local.Box, enough+a.hollow, limit+a.hollow); near {
		return contact.Clearance - a.hollow, true
	}
	return limit, false
}

// apart returns a quick lower bound of boxWithin.
func (c *cast) apart(b geom.Box, at spot) float64 {
	return b.Gap(c.extent().Moved(geom.Vec{X: -at.x, Y: -at.y}))
}

// extent returns a box around everything that golfer and club sweep, room
// frame, for a ball at the room's origin.
func (c *cast) extent() geom.Box {
	b := c.kin.atlas().extent
	if c.at.Left {
		b = b.MirrorY()
	}
	return b.Moved(geom.Vec{Z: -c.at.Ball.Z})
}
