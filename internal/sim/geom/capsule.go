package geom

// Bounds returns the smallest axis-aligned box around the capsule.
func (c Capsule) Bounds() Box {
	b := Box{Min: c.A, Max: c.A}.Including(c.B)
	return b.Grown(c.R)
}

// Lerp returns the capsule whose ends and radius are share s of the way from c
// (s = 0) to d (s = 1).
func (c Capsule) Lerp(d Capsule, s float64) Capsule {
	return Capsule{A: Lerp(c.A, d.A, s), B: Lerp(c.B, d.B, s), R: c.R + s*(d.R-c.R)}
}

// Reach returns the smallest n·p over the capsule; n is a unit vector. Less an
// offset it is the signed distance to any plane with that normal.
func (c Capsule) Reach(n Vec) float64 {
	a, b := Dot(n, c.A), Dot(n, c.B)
	if b < a {
		a = b
	}
	return a - c.R
}

// Share returns how far along the capsule's axis, as a share of the way from A to
// B, the point of the axis nearest to p lies.
func (c Capsule) Share(p Vec) float64 {
	v := Vec{X: c.B.X - c.A.X, Y: c.B.Y - c.A.Y, Z: c.B.Z - c.A.Z}
	l := Dot(v, v)
	if l == 0 {
		return 0
	}
	return min(max((Dot(v, p)-Dot(v, c.A))/l, 0), 1)
}
