package geom

// Distance returns the signed distance (m) from the capsule to the solid side
// of the half-space: negative by how far the capsule goes past the plane.
func (h Halfspace) Distance(c Capsule) float64 { return c.Reach(h.N) - h.D }

// PointDistance returns the signed distance (m) from p to the solid side.
func (h Halfspace) PointDistance(p Vec) float64 { return Dot(h.N, p) - h.D }

// Nearest returns the signed distance of Distance and the point of the capsule
// that is nearest to the plane, or deepest past it. Of a capsule that lies
// parallel to the plane it is the one below A.
func (h Halfspace) Nearest(c Capsule) (d float64, on Vec) {
	p := c.A
	if Dot(h.N, c.B) < Dot(h.N, c.A) {
		p = c.B
	}
	return h.Distance(c), along(p, -c.R, h.N)
}

// Project returns the point of the plane nearest to p.
func (h Halfspace) Project(p Vec) Vec { return along(p, -h.PointDistance(p), h.N) }

// Moved returns the half-space seen from an origin moved to o.
func (h Halfspace) Moved(o Vec) Halfspace {
	return Halfspace{N: h.N, D: h.D - Dot(h.N, o)}
}
