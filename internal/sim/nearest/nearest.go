// Package nearest finds the point nearest to the origin on a surface that is known only by
// a function that is zero there.
package nearest

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
)

// On returns the point nearest to the origin of those at which miss is zero, and what it
// still misses there: next to nothing, or the least that was found. It goes from the origin
// by Newton's method on point and multiplier, with the merit of what is missed and a correction
// for the curvature of the surface (J. Nocedal and S. J. Wright 2006, Numerical Optimization,
// ch. 18); derivatives are differences. It takes 3 to 8 steps; without the curvature it
// would be hundreds where the point is far from the origin.
func On(miss func(geom.Vec) float64) (at geom.Vec, missed float64) {
	const (
		settled = 1e-9
		last    = 1e-5  // a step of Newton's that leaves about its square
		longest = 4.0   // a step: farther off slopes and bends say little
		dear    = 50000 // a unit of miss, in squares of a unit of distance
	)
	cost := func(u geom.Vec, c float64) float64 { return geom.Dot(u, u) + dear*math.Abs(c) }
	var u geom.Vec
	c := miss(u)
	for range 50 {
		near := lookAround(miss, u, c)
		slope := near.slope()
		square := geom.Dot(slope, slope)
		if !(square > 0) {
			break
		}
		back := r3.Scale(-c/square, slope)
		multiplier := -2 * geom.Dot(u, slope) / square
		d := r3.Add(back, sideways(u, back, slope, near.bends(miss, u), multiplier))
		was, better := cost(u, c), false
		for share := min(1, longest/geom.Norm(d)); share > 1e-3 && !better; share /= 2 {
			v := r3.Add(u, r3.Scale(share, d))
			v = r3.Sub(v, r3.Scale((miss(v)-(1-share)*c)/square, slope))
			off := miss(v)
			if better = cost(v, off) < was || math.Abs(off) < settled; better {
				u, c = v, off
			}
		}
		if !better || math.Abs(c) < settled && geom.Norm(d) < last {
			break
		}
	}
	return u, c
}

// sideways is the step of Newton's method from u that keeps to the tangent of a surface of
// the given slope, beside the step to the surface: to where the square of the distance, with
// multiplier times the surface's bends, is at its bottom.
func sideways(u, back, slope geom.Vec, bends [3]geom.Vec, multiplier float64) geom.Vec {
	curved := func(v geom.Vec) geom.Vec {
		b := geom.Vec{X: geom.Dot(bends[0], v), Y: geom.Dot(bends[1], v), Z: geom.Dot(bends[2], v)}
		return r3.Add(r3.Scale(2, v), r3.Scale(multiplier, b))
	}
	one := r3.Unit(r3.Cross(slope, leastAxis(slope)))
	two := r3.Unit(r3.Cross(slope, one))
	c1, c2 := curved(one), curved(two)
	a11, a12, a22 := geom.Dot(one, c1), geom.Dot(one, c2), geom.Dot(two, c2)
	fall := r3.Add(r3.Scale(2, u), curved(back))
	det := a11*a22 - a12*a12
	if !(a11 > 0 && det > 0.01) { // no bottom: as if the surface were flat
		a11, a12, a22, det = 2, 0, 2, 4
		fall = r3.Scale(2, u)
	}
	f1, f2 := geom.Dot(one, fall), geom.Dot(two, fall)
	return r3.Add(r3.Scale((a12*f2-a22*f1)/det, one), r3.Scale((a12*f1-a11*f2)/det, two))
}

// around is what a function of a point is there and a step aside along each axis.
type around struct {
	here       float64
	more, less [3]float64
}

const aside = 1e-3

var asides = [3]geom.Vec{{X: aside}, {Y: aside}, {Z: aside}}

func lookAround(f func(geom.Vec) float64, u geom.Vec, here float64) around {
	a := around{here: here}
	for i, step := range asides {
		a.more[i], a.less[i] = f(r3.Add(u, step)), f(r3.Sub(u, step))
	}
	return a
}

func (a *around) slope() geom.Vec {
	return r3.Scale(1/(2*aside), geom.Vec{X: a.more[0] - a.less[0], Y: a.more[1] - a.less[1], Z: a.more[2] - a.less[2]})
}

// bends returns the second derivatives, a row for each axis.
func (a *around) bends(f func(geom.Vec) float64, u geom.Vec) [3]geom.Vec {
	twice := func(i int) float64 { return (a.more[i] + a.less[i] - 2*a.here) / (aside * aside) }
	mixed := func(i, j int) float64 {
		return (f(r3.Add(u, r3.Add(asides[i], asides[j]))) - a.more[i] - a.more[j] + a.here) / (aside * aside)
	}
	xy, xz, yz := mixed(0, 1), mixed(0, 2), mixed(1, 2)
	return [3]geom.Vec{{X: twice(0), Y: xy, Z: xz}, {X: xy, Y: twice(1), Z: yz}, {X: xz, Y: yz, Z: twice(2)}}
}

// leastAxis returns the axis that v is farthest from being parallel to.
func leastAxis(v geom.Vec) geom.Vec {
	x, y, z := math.Abs(v.X), math.Abs(v.Y), math.Abs(v.Z)
	switch {
	case x <= y && x <= z:
		return geom.Vec{X: 1}
	case y <= z:
		return geom.Vec{Y: 1}
	}
	return geom.Vec{Z: 1}
}
