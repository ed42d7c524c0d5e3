package family

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// What the box around a part holds, so that no member leaves it at any moment:
// for each axis the central swing's place, and on either side what the traits do
// one by one, added as independent errors are and taken this many times, and a
// rest for what they do together. The most that 17,000 members of 60 golfers of all
// manners went beyond so many times was 0.022 m, and 0.004 m of head, trunk and legs, which
// also stray 0.005 m at most over a step (TestSpreadHoldsEveryMember).
const (
	spreadTimes = 3.5
	spreadRest  = 0.05 // m
	spreadStill = 0.02 // m, of head, trunk and legs, with what they stray over a step
)

// Spread is where any member may be when: for each step between two of the
// family's times, a box around every part in every member.
type Spread []([swing.NumParts]geom.Box)

// Spread returns the family's Spread, made at the first call.
func (r *Relatives) Spread() Spread {
	if r.spreads == nil {
		r.spreads = r.spread(r.Times, coarseLoss)
	}
	return r.spreads
}

// spread returns the Spread for the steps between times over which no part may be
// stray (m) off its chord.
func (r *Relatives) spread(times []float64, stray float64) Spread {
	n := len(times)
	r.Family.SetTimes(times)
	central, less, more := make([]swing.Pose, n), make([]swing.Pose, n), make([]swing.Pose, n)
	r.Family.Poses(r.Central.Swing, swing.AllParts, central)
	moved := make([][swing.NumParts][2]geom.Vec, n) // of A and B, squared, axis by axis
	for i := 0; i < len(r.Singles); i += 2 {
		r.Family.Poses(r.Singles[i].Swing, swing.AllParts, less)
		r.Family.Poses(r.Singles[i+1].Swing, swing.AllParts, more)
		for j := range moved {
			for p := range moved[j] {
				c, a, b := &central[j][p], &less[j][p], &more[j][p]
				addFarther(&moved[j][p][0], &c.A, &a.A, &b.A)
				addFarther(&moved[j][p][1], &c.B, &a.B, &b.B)
			}
		}
	}
	at := func(j int, p swing.Part) geom.Box {
		c, m := &central[j][p], &moved[j][p]
		more := spreadStill
		if (swing.ArmParts | swing.ClubParts).Has(p) {
			more = spreadRest + stray
		}
		return swayed(c.A, m[0]).Union(swayed(c.B, m[1])).Grown(c.R + more)
	}
	out := make(Spread, n-1)
	for j := range out {
		for p := range swing.NumParts {
			out[j][p] = at(j, p).Union(at(j+1, p))
		}
	}
	return out
}

// addFarther adds to sum, axis by axis, the square of how far the farther of two
// points lies from c. (Written out: this package is compiled without inlining for the
// browser, where the max builtin is a call too.)
func addFarther(sum, c, a, b *geom.Vec) {
	x, y, z := a.X-c.X, a.Y-c.Y, a.Z-c.Z
	u, v, w := b.X-c.X, b.Y-c.Y, b.Z-c.Z
	x, y, z, u, v, w = x*x, y*y, z*z, u*u, v*v, w*w
	if u > x {
		x = u
	}
	if v > y {
		y = v
	}
	if w > z {
		z = w
	}
	sum.X, sum.Y, sum.Z = sum.X+x, sum.Y+y, sum.Z+z
}

// swayed returns the box in which a point that is c in the central swing may be.
func swayed(c, moved2 geom.Vec) geom.Box {
	x, y, z := spreadTimes*math.Sqrt(moved2.X), spreadTimes*math.Sqrt(moved2.Y), spreadTimes*math.Sqrt(moved2.Z)
	return geom.Box{Min: geom.Vec{X: c.X - x, Y: c.Y - y, Z: c.Z - z}, Max: geom.Vec{X: c.X + x, Y: c.Y + y, Z: c.Z + z}}
}
