package draw

// floorLift is how far above the floor shadows and marks are taken to lie, m.
const floorLift = 0.002

// drawShadow lays the shadow of a capsule on the floor at once: a lamp high
// overhead makes it nearly a plan of the golfer, which shows where a club is
// in depth. It ends where the floor does.
func (m *room) drawShadow(c *canvas, a, b vec, r float32) {
	if c.cam.eye.z <= m.floor {
		return
	}
	z := m.floor + floorLift
	fall := func(p vec) vec {
		k := 0.35 * (p.z - z) / light.z
		return vec{p.x - light.x*k, p.y - light.y*k, z}
	}
	p, q := roundEnded(c.outline[:0], fall(a), fall(b), r), c.clipped[:0]
	for _, wall := range [4]struct {
		n vec
		d float32
	}{{vec{1, 0, 0}, 0}, {vec{-1, 0, 0}, -m.size.x}, {vec{0, 1, 0}, 0}, {vec{0, -1, 0}, -m.size.y}} {
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
	along := b.sub(a).unit()
	if along == (vec{}) {
		along = vec{1, 0, 0}
	}
	across := vec{-along.y, along.x, 0}
	for k, end := range [2]vec{a, b} {
		sign := float32(2*k - 1)
		for _, t := range halfCircle {
			dst = append(dst, end.add(along.mul(sign*r*t.y)).add(across.mul(-sign*r*t.x)))
		}
	}
	return dst
}
