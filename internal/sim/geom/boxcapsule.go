package geom

import "math"

// touching is the distance (m) under which a segment counts as inside the box:
// below it the direction of the gap is rounding noise, and the separating axes
// of an overlap are the sound answer.
const touching = 1e-9

// Distance returns the signed distance (m) of the capsule to the solid box and
// the two points that realise it.
//
// Apart, it is the exact distance of segment and box less the capsule's radius.
// When the segment itself enters the box it is minus the length of the shortest
// translation that takes the segment out again, less the radius; by the
// separating-axis theorem the direction of that translation is a face normal or
// the cross product of an edge and the segment (Gottschalk, Lin and Manocha
// 1996), so the value is continuous everywhere and never changes by more than
// the ends of the segment move. onCapsule is then the deepest point of the
// capsule and onBox where it would leave.
func (b Box) Distance(c Capsule) (d float64, onBox, onCapsule Vec) {
	s := b.Separate(c)
	onCapsule = along(s.At, -c.R, s.N)
	return s.D, b.Clamp(along(s.At, -(s.D + c.R), s.N)), onCapsule
}

// Separation is how a capsule and a box lie to each other.
type Separation struct {
	D  float64 // signed distance, m
	N  Vec     // unit normal from the box to the capsule
	At Vec     // point of the capsule's segment nearest to the box, or deepest in it
}

// Separate returns the signed distance of Distance with the direction it is
// measured in. For every other capsule k, k.Reach(N) − b.Support(N) is a lower
// bound of its signed distance: N is a separating direction.
func (b Box) Separate(c Capsule) Separation {
	u := b.nearestOnSegment(c.A, c.B)
	p := Lerp(c.A, c.B, u)
	q := b.Clamp(p)
	n := Vec{X: p.X - q.X, Y: p.Y - q.Y, Z: p.Z - q.Z}
	d := Norm(n)
	if d < touching {
		return b.overlap(c)
	}
	k := 1 / d
	return Separation{D: d - c.R, N: Vec{X: n.X * k, Y: n.Y * k, Z: n.Z * k}, At: p}
}

// nearestOnSegment returns the share u in [0,1] of the way from p to q at which
// the segment is nearest to the box. The squared distance is convex in u and
// quadratic between the crossings of the six face planes, so half its slope
// g(u) rises in straight pieces: each crossing tells on which side of it the
// root lies, and on the last stretch the root is exact.
func (b Box) nearestOnSegment(p, q Vec) float64 {
	v := Vec{X: q.X - p.X, Y: q.Y - p.Y, Z: q.Z - p.Z}
	lo, hi := 0.0, 1.0
	glo := b.slope(p, v, 0)
	if glo >= 0 {
		return 0
	}
	ghi := b.slope(p, v, 1)
	if ghi <= 0 {
		return 1
	}
	axes := [3][4]float64{
		{v.X, p.X, b.Min.X, b.Max.X}, {v.Y, p.Y, b.Min.Y, b.Max.Y}, {v.Z, p.Z, b.Min.Z, b.Max.Z},
	}
	for i := range axes {
		a := &axes[i]
		if a[0] == 0 {
			continue
		}
		for _, face := range [2]float64{a[2], a[3]} {
			u := (face - a[1]) / a[0]
			if u <= lo || u >= hi {
				continue
			}
			if g := b.slope(p, v, u); g < 0 {
				lo, glo = u, g
			} else {
				hi, ghi = u, g
			}
		}
	}
	if ghi <= glo {
		return hi
	}
	return lo + (hi-lo)*(-glo/(ghi-glo))
}

// slope returns half the slope of the squared distance at p + u·v.
func (b Box) slope(p, v Vec, u float64) float64 {
	return v.X*outside(p.X+u*v.X, b.Min.X, b.Max.X) +
		v.Y*outside(p.Y+u*v.Y, b.Min.Y, b.Max.Y) +
		v.Z*outside(p.Z+u*v.Z, b.Min.Z, b.Max.Z)
}

// outside returns by how much x lies beyond [lo, hi], with its sign.
func outside(x, lo, hi float64) float64 {
	if x < lo {
		return x - lo
	}
	if x > hi {
		return x - hi
	}
	return 0
}

// overlap returns the separation of a capsule whose segment enters the box, or all but
// touches it: along the best of the axes, also where that is above 0.
func (b Box) overlap(c Capsule) Separation {
	best := Separation{D: math.Inf(-1)}
	try := func(d float64, n Vec) {
		if d > best.D {
			best.D, best.N = d, n
		}
	}
	try(min(c.A.X, c.B.X)-b.Max.X, Vec{X: 1})
	try(b.Min.X-max(c.A.X, c.B.X), Vec{X: -1})
	try(min(c.A.Y, c.B.Y)-b.Max.Y, Vec{Y: 1})
	try(b.Min.Y-max(c.A.Y, c.B.Y), Vec{Y: -1})
	try(min(c.A.Z, c.B.Z)-b.Max.Z, Vec{Z: 1})
	try(b.Min.Z-max(c.A.Z, c.B.Z), Vec{Z: -1})

	v := Vec{X: c.B.X - c.A.X, Y: c.B.Y - c.A.Y, Z: c.B.Z - c.A.Z}
	mid := Lerp(b.Min, b.Max, 0.5)
	from := along(c.A, -1, mid)
	for _, n := range [3]Vec{{Y: v.Z, Z: -v.Y}, {X: -v.Z, Z: v.X}, {X: v.Y, Y: -v.X}} {
		// A segment along this edge, or a sphere: the faces say it all.
		size := Norm(n)
		if size < touching {
			continue
		}
		k, side := 1/size, Dot(n, from)
		if side < 0 {
			k = -k
		}
		n = Vec{X: n.X * k, Y: n.Y * k, Z: n.Z * k}
		try(min(Dot(n, c.A), Dot(n, c.B))-b.Support(n), n)
		if side == 0 { // through the middle: out on either side, whichever rounding favours
			n = Vec{X: -n.X, Y: -n.Y, Z: -n.Z}
			try(min(Dot(n, c.A), Dot(n, c.B))-b.Support(n), n)
		}
	}
	best.D -= c.R
	best.At = b.deepest(c, best.N)
	return best
}

// deepest returns the point of the capsule's segment inside the box that lies
// farthest along −n, and the middle of the part inside when all of it is
// equally deep.
func (b Box) deepest(c Capsule, n Vec) Vec {
	v := Vec{X: c.B.X - c.A.X, Y: c.B.Y - c.A.Y, Z: c.B.Z - c.A.Z}
	lo, hi := 0.0, 1.0
	for _, a := range [3][4]float64{
		{v.X, c.A.X, b.Min.X, b.Max.X}, {v.Y, c.A.Y, b.Min.Y, b.Max.Y}, {v.Z, c.A.Z, b.Min.Z, b.Max.Z},
	} {
		if a[0] == 0 {
			continue
		}
		s, e := (a[2]-a[1])/a[0], (a[3]-a[1])/a[0]
		lo, hi = max(lo, min(s, e)), min(hi, max(s, e))
	}
	slope := Dot(n, v)
	switch {
	case hi < lo || math.Abs(slope) < touching:
		return Lerp(c.A, c.B, between((lo+hi)/2, 0, 1))
	case slope > 0:
		return Lerp(c.A, c.B, lo)
	}
	return Lerp(c.A, c.B, hi)
}
