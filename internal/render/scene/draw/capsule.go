package draw

import (
	"math"

	"wideberth/internal/render/scene/paint"
)

// ring is one circle of a unit capsule: at which end it sits, how far out
// along the axis and from the axis (radii), its normal by the same two
// directions, and whether it belongs to the ball joint at that end.
type ring struct {
	end           float32
	along, radial float32
	nAlong, nOut  float32
	joint         bool
}

// unitCapsule is the mesh of a capsule of any length and radius, shared by all
// parts of the same fineness.
type unitCapsule struct {
	rings    []ring
	cos, sin []float32 // of the sectors
}

// waist is how much a limb narrows between its joints, as turned wood does. It
// is for the eye only; what was checked is the full capsule.
const waist = 0.93

// newUnitCapsule has the given number of sectors round the axis and of steps
// from pole to rim of each round end, cut into lengths along its tube. A limb
// has a ball joint at each end.
func newUnitCapsule(sectors, steps, lengths int, limb bool) *unitCapsule {
	u := &unitCapsule{}
	cap := func(end, sign float32, from, to int) {
		step := 1
		if to < from {
			step = -1
		}
		for i := from; ; i += step {
			s, c := math.Sincos(math.Pi / 2 * float64(i) / float64(steps))
			u.rings = append(u.rings, ring{end, sign * float32(c), float32(s), sign * float32(c), float32(s), limb})
			if i == to {
				break
			}
		}
	}
	cap(0, -1, 0, steps)
	for i := 1; i < lengths; i++ {
		u.rings = append(u.rings, ring{float32(i) / float32(lengths), 0, 1, 0, 1, limb})
	}
	if limb {
		u.rings = append(u.rings,
			ring{0, 0, 1, 0, 1, false}, ring{0.5, 0, waist, 0, 1, false}, ring{1, 0, 1, 0, 1, false})
	}
	cap(1, 1, steps, 0)
	for i := range sectors {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(sectors))
		u.cos, u.sin = append(u.cos, float32(c)), append(u.sin, float32(s))
	}
	return u
}

// newSmallCapsule is for what is small in the picture: hands, neck, ball.
func newSmallCapsule() *unitCapsule { return newUnitCapsule(10, 2, 1, false) }

// capsuleLook is how one capsule is to be drawn.
type capsuleLook struct {
	mesh        *unitCapsule
	pieces      bool // sort it piece by piece, not as a whole
	body, joint paint.Colour
	outline     paint.Colour
	width       float32 // of the outline, pixels; 0: none
}

// drawCapsule queues the capsule about the axis ab with radius r. What has gone
// through a surface of the room takes the colour of a strike; a capsule that
// does so on its way is cut in two there.
func (c *canvas) drawCapsule(m *room, a, b vec, r float32, look *capsuleLook) {
	if c.cam.depth(a) < nearPlane+r || c.cam.depth(b) < nearPlane+r {
		return
	}
	outA, outB := m.through(a), m.through(b)
	if outA == outB {
		c.drawPiece(m, a, b, r, look)
		return
	}
	in, out := float32(0), float32(1)
	if outA {
		in, out = 1, 0
	}
	for range 12 {
		if half := (in + out) / 2; m.through(a.Lerp(b, half)) {
			out = half
		} else {
			in = half
		}
	}
	middle := a.Lerp(b, (in+out)/2)
	c.drawPiece(m, a, middle, r, look)
	c.drawPiece(m, middle, b, r, look)
}

// drawPiece queues a capsule: the faces turned to the viewer shaded, and before
// them a slightly larger hull in ink, turned inside out, which shows as the
// outline. The whole capsule takes its place among the others by its middle, so
// that overlapping parts keep clean joints.
func (c *canvas) drawPiece(m *room, a, b vec, r float32, look *capsuleLook) {
	axis := b.Sub(a)
	dir := axis.Unit()
	if dir == (vec{}) {
		dir = xyz(0, 0, 1)
	}
	u, v := perpendiculars(dir)
	lu, lv, ld := u.Dot(light), v.Dot(light), dir.Dot(light)
	mesh := look.mesh
	sectors := len(mesh.cos)
	mayCross := m.crosses(a, r) || m.crosses(b, r)

	first := len(c.Vertices)
	c.depths = c.depths[:0]
	for i := range mesh.rings {
		g := &mesh.rings[i]
		colour := look.body
		if g.joint {
			colour = look.joint
		}
		centre := a.Add(axis.Mul(g.end)).Add(dir.Mul(g.along * r))
		for j := range sectors {
			cos, sin := mesh.cos[j], mesh.sin[j]
			p := centre.Add(u.Mul(cos * g.radial * r)).Add(v.Mul(sin * g.radial * r))
			shade := 0.5 + 0.5*(g.nAlong*ld+g.nOut*(cos*lu+sin*lv))
			tone := colour.Lit(0.62 + 0.62*shade*shade)
			if mayCross && m.through(p) {
				tone = c.theme.Strike
			}
			x, y, d := c.cam.project(p)
			c.Vertex(x, y, tone)
			c.depths = append(c.depths, d)
		}
	}
	hull := len(c.Vertices)
	if look.width > 0 {
		grow := look.width / c.cam.pixels(a.Lerp(b, 0.5))
		for i := range mesh.rings {
			g := &mesh.rings[i]
			centre := a.Add(axis.Mul(g.end)).Add(dir.Mul(g.along*r + g.nAlong*grow))
			out := g.radial*r + g.nOut*grow
			for j := range sectors {
				p := centre.Add(u.Mul(mesh.cos[j] * out)).Add(v.Mul(mesh.sin[j] * out))
				x, y, _ := c.cam.project(p)
				c.Vertex(x, y, look.outline)
			}
		}
	}
	if len(c.Vertices) >= paint.MaxVertices {
		return
	}
	whole := c.cam.depth(a.Lerp(b, 0.5)) - r/2
	for pass := range 2 {
		if pass == 0 && look.width == 0 {
			continue
		}
		for i := range len(mesh.rings) - 1 {
			for j := range sectors {
				k := (j + 1) % sectors
				p, q := i*sectors+j, i*sectors+k
				for _, t := range [2][3]int{{p, q, q + sectors}, {p, q + sectors, p + sectors}} {
					depth := whole
					if look.pieces {
						depth = (c.depths[t[0]] + c.depths[t[1]] + c.depths[t[2]]) / 3
					}
					c.capsuleTriangle(first, hull, t, depth, pass == 0)
				}
			}
		}
	}
}

// capsuleTriangle queues one triangle by its corners' numbers within the mesh:
// of the hull when it faces away from the viewer, of the capsule when it faces them.
func (c *canvas) capsuleTriangle(first, hull int, t [3]int, depth float32, ofHull bool) {
	p, q, r := &c.Vertices[first+t[0]], &c.Vertices[first+t[1]], &c.Vertices[first+t[2]]
	area := (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X)
	switch {
	case area < 0 && !ofHull:
		c.Later(uint16(first+t[0]), uint16(first+t[1]), uint16(first+t[2]), depth)
	case area > 0 && ofHull:
		c.Later(uint16(hull+t[0]), uint16(hull+t[1]), uint16(hull+t[2]), depth)
	}
}
