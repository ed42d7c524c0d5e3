package family

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
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
		r.spreads = r.sways(r.Times, coarseLoss).spread()
	}
	return r.spreads
}

// sways is how the traits move a family about: where everything is in the central swing at
// some times, and how far each trait alone moves the ends of every part.
type sways struct {
	central []swing.Pose
	moved   [][swing.NumParts][2]moves // moment by moment, of A and of B
	stray   float64                    // what no part is farther off its chord over a step than, m
}

// moves is how far each trait moves a point below the central swing and above, m.
type moves [2 * swing.NumTraits][3]float32

// sways returns those of the steps between times over which no part may be stray (m) off
// its chord.
func (r *Relatives) sways(times []float64, stray float64) *sways {
	n := len(times)
	r.Family.SetTimes(times)
	w := &sways{make([]swing.Pose, n), make([][swing.NumParts][2]moves, n), stray}
	r.Family.Poses(r.Central.Swing, swing.AllParts, w.central)
	poses := r.scratch.posesFor(n)
	for i, m := range r.Singles {
		r.Family.Poses(m.Swing, swing.AllParts, poses)
		for j := range poses {
			for p := range poses[j] {
				c, at, to := &w.central[j][p], &poses[j][p], &w.moved[j][p]
				to[0][i] = [3]float32{float32(at.A.X - c.A.X), float32(at.A.Y - c.A.Y), float32(at.A.Z - c.A.Z)}
				to[1][i] = [3]float32{float32(at.B.X - c.B.X), float32(at.B.Y - c.B.Y), float32(at.B.Z - c.B.Z)}
			}
		}
	}
	return w
}

// spread returns the boxes around every part.
func (w *sways) spread() Spread {
	out := make(Spread, len(w.central)-1)
	at := func(j int, p swing.Part) geom.Box {
		c, m := &w.central[j][p], &w.moved[j][p]
		return m[0].about(c.A).Union(m[1].about(c.B)).Grown(c.R + w.rest(p))
	}
	for p := range swing.NumParts {
		before := at(0, p)
		for j := range out {
			after := at(j+1, p)
			out[j][p], before = before.Union(after), after
		}
	}
	return out
}

// rest is how far beyond its sway, and beyond a chord, a part may be, m.
func (w *sways) rest(p swing.Part) float64 {
	if (swing.ArmParts | swing.ClubParts).Has(p) {
		return spreadRest + w.stray
	}
	return spreadStill
}

// clears reports whether a part stays at least limit (m) from a box in every member during a
// step: on its far side of a plane square to where it is nearest in the central swing. That
// tells of more than the boxes of a Spread do, at some cost.
func (w *sways) clears(step int, p swing.Part, box *geom.Box, limit float64) bool {
	from, to := &w.central[step][p], &w.central[step+1][p]
	n := box.Separate(from.Lerp(*to, 0.5)).N
	limit += box.Support(n) + from.R + w.rest(p)
	for j, c := range [2]*geom.Capsule{from, to} {
		m := &w.moved[step+j][p]
		if geom.Dot(n, c.A)-m[0].along(n) < limit || geom.Dot(n, c.B)-m[1].along(n) < limit {
			return false
		}
	}
	return true
}

// along returns how far a point may be moved along n.
func (m *moves) along(n geom.Vec) float64 {
	x, y, z := float32(n.X), float32(n.Y), float32(n.Z)
	var sum float32
	for t := 0; t < len(m); t += 2 {
		less, more := &m[t], &m[t+1]
		a, b := x*less[0]+y*less[1]+z*less[2], x*more[0]+y*more[1]+z*more[2]
		a, b = a*a, b*b
		if b > a {
			a = b
		}
		sum += a
	}
	return spreadTimes * math.Sqrt(float64(sum))
}

// about returns the box in which a point that is c in the central swing may be.
func (m *moves) about(c geom.Vec) geom.Box {
	v := geom.Vec{X: m.along(geom.Vec{X: 1}), Y: m.along(geom.Vec{Y: 1}), Z: m.along(geom.Vec{Z: 1})}
	return geom.Box{Min: r3.Sub(c, v), Max: r3.Add(c, v)}
}
