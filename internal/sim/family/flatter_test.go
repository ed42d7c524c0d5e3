package family

import (
	"math"
	"slices"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// Crowd is every member of a family as a full track: what is true of the modelled
// swings, whatever is said of them.
type Crowd struct {
	Kin    *Relatives
	tracks []*sweep.Track
	known  map[[3]float64]float64 // how far they reach along directions

	met  *Relatives     // the family that was met last
	more []*sweep.Track // whom it has that the crowd has not
}

// NewCrowd models the family of a player with a club without a room.
func NewCrowd(player plan.Player, club plan.Club) (*Crowd, error) {
	kin, err := New(player, club, axes)
	if err != nil {
		return nil, err
	}
	c := &Crowd{Kin: kin, known: map[[3]float64]float64{}}
	for _, m := range kin.All() {
		c.tracks = append(c.tracks, sweep.Sample(m.Swing, sweep.FineTolerance))
	}
	return c, nil
}

// Meet is the crowd with the corners that the same golfer's family has in a room.
func (c *Crowd) Meet(kin *Relatives) func(sweep.Surface) float64 {
	if c.met != kin {
		c.met, c.more = kin, nil
		for _, m := range kin.Far {
			same := func(of *Member) bool { return of.Variation == m.Variation }
			if !slices.ContainsFunc(c.Kin.Far, same) {
				c.more = append(c.more, sweep.Sample(m.Swing, sweep.FineTolerance))
			}
		}
	}
	return func(s sweep.Surface) float64 {
		if !s.Kind.Flat() {
			return nearest(c.more, s, nearest(c.tracks, s, math.Inf(1)))
		}
		n := [3]float64{s.Plane.N.X, s.Plane.N.Y, s.Plane.N.Z}
		if _, ok := c.known[n]; !ok {
			c.known[n] = nearest(c.tracks, s, math.Inf(1)) + s.Plane.D
		}
		return nearest(c.more, s, c.known[n]-s.Plane.D)
	}
}

// nearest returns the least clearance (m) of tracks to a surface of the golfer
// frame, at most limit. A track's is up to a tolerance less than the truth.
func nearest(tracks []*sweep.Track, s sweep.Surface, limit float64) float64 {
	for _, t := range tracks {
		if s.Kind.Flat() {
			limit = min(limit, t.Clearance(s).Clearance)
		} else if c, near := t.ClearanceWithin(s, limit); near {
			limit = c.Clearance
		}
	}
	return limit
}
