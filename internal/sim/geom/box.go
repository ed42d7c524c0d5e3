package geom

import "math"

// EmptyBox returns the box that holds nothing, the start of a union.
func EmptyBox() Box {
	const far = math.MaxFloat64 // not infinite: 0·∞ is no number
	return Box{Min: Vec{X: far, Y: far, Z: far}, Max: Vec{X: -far, Y: -far, Z: -far}}
}

// Union returns the smallest box around both. Plain comparisons, because the
// min and max builtins spend most of their time on NaN.
func (b Box) Union(o Box) Box {
	if o.Min.X < b.Min.X {
		b.Min.X = o.Min.X
	}
	if o.Min.Y < b.Min.Y {
		b.Min.Y = o.Min.Y
	}
	if o.Min.Z < b.Min.Z {
		b.Min.Z = o.Min.Z
	}
	if o.Max.X > b.Max.X {
		b.Max.X = o.Max.X
	}
	if o.Max.Y > b.Max.Y {
		b.Max.Y = o.Max.Y
	}
	if o.Max.Z > b.Max.Z {
		b.Max.Z = o.Max.Z
	}
	return b
}

// Including returns the smallest box around b and the point p.
func (b Box) Including(p Vec) Box { return b.Union(Box{Min: p, Max: p}) }

// Grown returns the box with every face moved outwards by r metres.
func (b Box) Grown(r float64) Box {
	g := Vec{X: r, Y: r, Z: r}
	return Box{Min: along(b.Min, -1, g), Max: along(b.Max, 1, g)}
}

// Moved returns the box seen from an origin moved to o.
func (b Box) Moved(o Vec) Box { return Box{Min: along(b.Min, -1, o), Max: along(b.Max, -1, o)} }

// Clamp returns the point of the solid box nearest to p.
func (b Box) Clamp(p Vec) Vec {
	return Vec{
		X: between(p.X, b.Min.X, b.Max.X),
		Y: between(p.Y, b.Min.Y, b.Max.Y),
		Z: between(p.Z, b.Min.Z, b.Max.Z),
	}
}

// Gap returns a lower bound (m) of the signed distance between anything inside
// o and the solid box b: their distance when they are apart, otherwise minus
// the least translation along an axis that parts them.
//
//go:noinline
func (b Box) Gap(o Box) float64 { return Gap(&b, &o) }

// Gap is Box.Gap of boxes that are not copied.
func Gap(b, o *Box) float64 {
	x := apart(b.Min.X, b.Max.X, o.Min.X, o.Max.X)
	y := apart(b.Min.Y, b.Max.Y, o.Min.Y, o.Max.Y)
	z := apart(b.Min.Z, b.Max.Z, o.Min.Z, o.Max.Z)
	if x <= 0 && y <= 0 && z <= 0 {
		return max(x, y, z)
	}
	d := 0.0
	if x > 0 {
		d = x * x
	}
	if y > 0 {
		d += y * y
	}
	if z > 0 {
		d += z * z
	}
	return math.Sqrt(d)
}

// apart returns the gap between the stretches [a,b] and [c,d] of one axis,
// negative when they overlap.
func apart(a, b, c, d float64) float64 {
	g, h := c-b, a-d
	if g > h {
		return g
	}
	return h
}

// Support returns the largest n·p over the box.
func (b Box) Support(n Vec) float64 {
	return farther(n.X, b.Min.X, b.Max.X) + farther(n.Y, b.Min.Y, b.Max.Y) + farther(n.Z, b.Min.Z, b.Max.Z)
}

// Reach returns the smallest n·p over the box.
func (b Box) Reach(n Vec) float64 {
	return -b.Support(Vec{X: -n.X, Y: -n.Y, Z: -n.Z})
}

func farther(n, lo, hi float64) float64 {
	if n < 0 {
		return n * lo
	}
	return n * hi
}

// PointDistance returns the signed distance (m) from p to the solid box:
// inside it is minus the distance to the nearest face.
func (b Box) PointDistance(p Vec) float64 {
	x := max(b.Min.X-p.X, p.X-b.Max.X)
	y := max(b.Min.Y-p.Y, p.Y-b.Max.Y)
	z := max(b.Min.Z-p.Z, p.Z-b.Max.Z)
	if m := max(x, y, z); m <= 0 {
		return m
	}
	return Norm(Vec{X: max(x, 0), Y: max(y, 0), Z: max(z, 0)})
}
