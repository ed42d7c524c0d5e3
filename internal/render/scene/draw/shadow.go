package draw

// floorLift is how far above the floor shadows and marks are taken to lie, m.
const floorLift = 0.002

// drawShadow lays the shadow of a capsule on the floor at once: a lamp high
// overhead makes it nearly a plan of the golfer, which shows where a club is
// in depth. It ends where the floor does.
func (m *room) drawShadow(c *canvas, a, b vec, r float32) {
	if c.cam.eye.Z <= m.floor {
		return
	}
	z := m.floor + floorLift
	fall := func(p vec) vec {
		k := 0.35 * (p.Z - z) / light.Z
		return xyz(p.X-light.X*k, p.Y-light.Y*k, z)
	}
	p, q := roundEnded(c.outline[:0], fall(a), fall(b), r), c.clipped[:0]
	for _, wall := range [4]struct {
		n vec
		d float32
	}{{xyz(1, 0, 0), 0}, {xyz(-1, 0, 0), -m.size.X}, {xyz(0, 1, 0), 0}, {xyz(0, -1, 0), -m.size.Y}} {
		q = clipPolygon(q[:0], p, wall.n, wall.d)
		p, q = q, p
	}
	c.outline, c.clipped = p, q
	c.fill(p, c.theme.Shadow)
}

// halfCircle are the directions of a round end, from one side over the tip to
// the other.
var halfCircle = [...]point{{-1, 0}, {-0.809, 0.588}, {-0.309, 0.951}, {0.309, 0.951}, {0.809, 0.588}, {1, 0}}

// roundEnded appends the level outline of a strip from a to b with round ends
// of radius r; a disc when the ends are one.
func roundEnded(dst []vec, a, b vec, r float32) []vec {
	along := b.Sub(a).Unit()
	if along == (vec{}) {
		along = xyz(1, 0, 0)
	}
	across := xyz(-along.Y, along.X, 0)
	for k, end := range [2]vec{a, b} {
		sign := float32(2*k - 1)
		for _, t := range halfCircle {
			dst = append(dst, end.Add(along.Mul(sign*r*t.y)).Add(across.Mul(-sign*r*t.x)))
		}
	}
	return dst
}
