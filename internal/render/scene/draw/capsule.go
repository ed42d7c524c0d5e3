package draw

import "math"

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

// capsuleLook is how one capsule is to be drawn.
type capsuleLook struct {
	mesh        *unitCapsule
	pieces      bool // sort it piece by piece, not as a whole
	body, joint Colour
	outline     Colour
	width       float32 // of the outline, pixels; 0: none
}

// drawCapsule queues the capsule about the axis ab with radius r. What has gone
// through a surface of the room takes the colour of a strike; a capsule that
// does so on its way is cut in two there.
func (sc *Scene) drawCapsule(a, b vec, r float32, look *capsuleLook) {
	if sc.cam.depth(a) < nearPlane+r || sc.cam.depth(b) < nearPlane+r {
		return
	}
	outA, outB := sc.model.through(a), sc.model.through(b)
	if outA == outB {
		sc.drawPiece(a, b, r, look)
		return
	}
	in, out := float32(0), float32(1)
	if outA {
		in, out = 1, 0
	}
	for range 12 {
		if m := (in + out) / 2; sc.model.through(a.lerp(b, m)) {
			out = m
		} else {
			in = m
		}
	}
	middle := a.lerp(b, (in+out)/2)
	sc.drawPiece(a, middle, r, look)
	sc.drawPiece(middle, b, r, look)
}

// drawPiece queues a capsule: the faces turned to the viewer shaded, and before
// them a slightly larger hull in ink, turned inside out, which shows as the
// outline. The whole capsule takes its place among the others by its middle, so
// that overlapping parts keep clean joints.
func (sc *Scene) drawPiece(a, b vec, r float32, look *capsuleLook) {
	axis := b.sub(a)
	dir := axis.unit()
	if dir == (vec{}) {
		dir = vec{0, 0, 1}
	}
	u, v := perpendiculars(dir)
	lu, lv, ld := u.dot(light), v.dot(light), dir.dot(light)
	m := look.mesh
	sectors := len(m.cos)
	mayCross := sc.model.crosses(a, r) || sc.model.crosses(b, r)

	first := len(sc.Vertices)
	sc.depths = sc.depths[:0]
	for i := range m.rings {
		g := &m.rings[i]
		colour := look.body
		if g.joint {
			colour = look.joint
		}
		centre := a.add(axis.mul(g.end)).add(dir.mul(g.along * r))
		for j := range sectors {
			c, s := m.cos[j], m.sin[j]
			p := centre.add(u.mul(c * g.radial * r)).add(v.mul(s * g.radial * r))
			shade := 0.5 + 0.5*(g.nAlong*ld+g.nOut*(c*lu+s*lv))
			tone := colour.lit(0.62 + 0.62*shade*shade)
			if mayCross && sc.model.through(p) {
				tone = sc.pal.strike
			}
			x, y, d := sc.cam.project(p)
			sc.vertex(x, y, tone)
			sc.depths = append(sc.depths, d)
		}
	}
	hull := len(sc.Vertices)
	if look.width > 0 {
		grow := look.width / sc.cam.pixels(a.lerp(b, 0.5))
		for i := range m.rings {
			g := &m.rings[i]
			centre := a.add(axis.mul(g.end)).add(dir.mul(g.along*r + g.nAlong*grow))
			out := g.radial*r + g.nOut*grow
			for j := range sectors {
				p := centre.add(u.mul(m.cos[j] * out)).add(v.mul(m.sin[j] * out))
				x, y, _ := sc.cam.project(p)
				sc.vertex(x, y, look.outline)
			}
		}
	}
	if len(sc.Vertices) >= maxVertices {
		return
	}
	whole := sc.cam.depth(a.lerp(b, 0.5)) - r/2
	for pass := range 2 {
		if pass == 0 && look.width == 0 {
			continue
		}
		for i := range len(m.rings) - 1 {
			for j := range sectors {
				k := (j + 1) % sectors
				p, q := i*sectors+j, i*sectors+k
				for _, t := range [2][3]int{{p, q, q + sectors}, {p, q + sectors, p + sectors}} {
					depth := whole
					if look.pieces {
						depth = (sc.depths[t[0]] + sc.depths[t[1]] + sc.depths[t[2]]) / 3
					}
					sc.capsuleTriangle(first, hull, t, depth, pass == 0)
				}
			}
		}
	}
}

// capsuleTriangle queues one triangle by its corners' numbers within the mesh:
// of the hull when it faces away from the viewer, of the capsule when it faces them.
func (sc *Scene) capsuleTriangle(first, hull int, t [3]int, depth float32, ofHull bool) {
	a, b, c := &sc.Vertices[first+t[0]], &sc.Vertices[first+t[1]], &sc.Vertices[first+t[2]]
	area := (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
	switch {
	case area < 0 && !ofHull:
		sc.later(uint16(first+t[0]), uint16(first+t[1]), uint16(first+t[2]), depth)
	case area > 0 && ofHull:
		sc.later(uint16(hull+t[0]), uint16(hull+t[1]), uint16(hull+t[2]), depth)
	}
}
