package geom

// MirrorY reflects a point or a direction in the plane y = 0. The reflections
// are exact: nothing but a sign changes.
func MirrorY(v Vec) Vec { return Vec{X: v.X, Y: -v.Y, Z: v.Z} }

// MirrorY reflects the half-space in the plane y = 0.
func (h Halfspace) MirrorY() Halfspace { return Halfspace{N: MirrorY(h.N), D: h.D} }

// MirrorY reflects the box in the plane y = 0.
func (b Box) MirrorY() Box {
	return Box{
		Min: Vec{X: b.Min.X, Y: -b.Max.Y, Z: b.Min.Z},
		Max: Vec{X: b.Max.X, Y: -b.Min.Y, Z: b.Max.Z},
	}
}

// MirrorY reflects the capsule in the plane y = 0.
func (c Capsule) MirrorY() Capsule {
	return Capsule{A: MirrorY(c.A), B: MirrorY(c.B), R: c.R}
}
