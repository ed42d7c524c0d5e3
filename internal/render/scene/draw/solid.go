package draw

import (
	"wideberth/internal/render/scene/paint"
	"wideberth/internal/render/scene/shape"
)

// solidLook is how a solid is to be drawn.
type solidLook struct {
	tones   *[shape.NumTones]paint.Colour
	outline paint.Colour
	width   float32 // of the outline, pixels; 0: none
}

// tonesOf are the colours of a theme's golfer, club and ball.
func tonesOf(t *paint.Theme) [shape.NumTones]paint.Colour {
	return [shape.NumTones]paint.Colour{
		shape.Shirt: t.Shirt, shape.Trousers: t.Trousers, shape.Skin: t.Skin, shape.Glove: t.Glove,
		shape.Dark: t.Dark, shape.Toe: t.Toe, shape.Grip: t.Dark, shape.Steel: t.Club,
		shape.Clubhead: t.Clubhead, shape.Face: t.Face, shape.White: t.Ball,
	}
}

// solidMesh is where the corners of a solid lie in the canvas.
type solidMesh struct {
	first, hull    int // of its corners, and of those of its outline
	rings, sectors int
	turned         bool // its sections run the wrong way round
}

// drawSolid queues a solid: the faces turned to the viewer shaded, and before
// them a slightly larger hull in ink, turned inside out, which shows as the
// outline. The whole takes its place among the others by its middle, so that
// overlapping parts keep clean joints. What has gone through a surface of the
// room takes the colour of a strike.
func (c *canvas) drawSolid(m *room, s *shape.Solid, l *solidLook) {
	if !c.solidInFront(s) {
		return
	}
	mesh, ok := c.layCorners(m, s, l)
	if !ok {
		return
	}
	whole := c.cam.depth(s.At) - s.Size/2
	if l.width > 0 {
		c.laySolid(&mesh, true, func(a, b, d int) float32 { return c.placeOf(s.Rod, whole, a, b, d) })
	}
	c.laySolid(&mesh, false, func(a, b, d int) float32 { return c.placeOf(s.Rod, whole, a, b, d) })
}

// placeOf is the depth at which a triangle of a solid is queued: that of the solid,
// or of a rod its own.
func (c *canvas) placeOf(rod bool, whole float32, a, b, d int) float32 {
	if !rod {
		return whole
	}
	return (c.depths[a] + c.depths[b] + c.depths[d]) / 3
}

// solidInFront reports whether the whole solid is past the near plane.
func (c *canvas) solidInFront(s *shape.Solid) bool {
	for i := range s.Rings {
		r := &s.Rings[i]
		if c.cam.depth(r.Centre) < nearPlane+max(r.U.Norm(), r.V.Norm()) {
			return false
		}
	}
	return len(s.Rings) > 2
}

// layCorners adds the corners of a solid, shaded, and those of its outline, and fills
// c.depths with how far away each is; ok is false when the mesh is full.
func (c *canvas) layCorners(m *room, s *shape.Solid, l *solidLook) (mesh solidMesh, ok bool) {
	c.cutRings(m, s)
	rings, section := c.rings, s.Section
	n := len(section.Cos)
	mesh = solidMesh{first: len(c.Vertices), rings: len(rings), sectors: n, turned: s.Turned() < 0}
	mesh.hull = mesh.first + len(rings)*n
	if mesh.hull+len(rings)*n >= paint.MaxVertices {
		return mesh, false
	}
	c.corners = c.corners[:0]
	mayCross := false
	for i := range rings {
		r := &rings[i]
		mayCross = mayCross || m.crosses(r.Centre, max(r.U.Norm(), r.V.Norm()))
		for j := range n {
			c.corners = append(c.corners, r.Point(section.Cos[j], section.Sin[j]))
		}
	}
	c.normalsOf(rings, n, mesh.turned)
	c.depths = c.depths[:0]
	for i := range rings {
		colour := l.tones[rings[i].Tone]
		for j := range n {
			p := c.corners[i*n+j]
			shade := 0.5 + 0.5*c.normals[i*n+j].Dot(light)
			tone := colour.Lit(0.62 + 0.62*shade*shade)
			if mayCross && m.through(p) {
				tone = c.theme.Strike
			}
			x, y, d := c.cam.project(p)
			c.Vertex(x, y, tone)
			c.depths = append(c.depths, d)
		}
	}
	if l.width > 0 {
		grow := l.width / c.cam.pixels(s.At)
		for i, p := range c.corners {
			x, y, _ := c.cam.project(p.Along(c.normals[i], grow))
			c.Vertex(x, y, l.outline)
		}
	}
	return mesh, true
}

// cutRings copies the rings of a solid, with two more wherever its middle goes through
// a surface of the room: the colour changes there.
func (c *canvas) cutRings(m *room, s *shape.Solid) {
	c.rings = c.rings[:0]
	for i := range s.Rings {
		c.rings = append(c.rings, s.Rings[i])
		if i+1 == len(s.Rings) {
			break
		}
		a, b := &s.Rings[i], &s.Rings[i+1]
		from := m.through(a.Centre)
		if from == m.through(b.Centre) {
			continue
		}
		lo, hi := float32(0), float32(1)
		for range 12 {
			if half := (lo + hi) / 2; m.through(a.Centre.Lerp(b.Centre, half)) == from {
				lo = half
			} else {
				hi = half
			}
		}
		c.rings = append(c.rings, a.Between(b, lo), a.Between(b, hi))
	}
}

// normalsOf fills c.normals with the outward unit normals of the corners, from their
// neighbours along the solid and round it.
func (c *canvas) normalsOf(rings []shape.Ring, n int, turned bool) {
	c.normals = c.normals[:0]
	way := float32(1)
	if turned {
		way = -1
	}
	for i := range rings {
		r := &rings[i]
		tip := r.U == (vec{}) && r.V == (vec{})
		flat := vec{}
		if r.Flat || tip {
			flat = r.U.Cross(r.V).Unit().Mul(way)
			if tip {
				flat = rings[len(rings)-1].Centre.Sub(rings[0].Centre).Unit()
			}
			if i < len(rings)/2 {
				flat = flat.Mul(-1)
			}
		}
		before, after := max(i-1, 0), min(i+1, len(rings)-1)
		if before > 0 && rings[before].Centre == r.Centre {
			before = i // the sharp edge of something cut off
		}
		for j := range n {
			if flat != (vec{}) {
				c.normals = append(c.normals, flat)
				continue
			}
			along := c.corners[after*n+j].Sub(c.corners[before*n+j])
			around := c.corners[i*n+(j+1)%n].Sub(c.corners[i*n+(j+n-1)%n])
			c.normals = append(c.normals, around.Cross(along).Unit().Mul(way))
		}
	}
}

// laySolid queues the triangles of a solid that face the viewer or, of its outline,
// those that face away. place says at what depth a triangle of the mesh is, by the
// numbers of its corners.
func (c *canvas) laySolid(mesh *solidMesh, ofHull bool, place func(a, b, d int) float32) {
	n := mesh.sectors
	for i := range mesh.rings - 1 {
		for j := range n {
			p, q := i*n+j, i*n+(j+1)%n
			for _, t := range [2][3]int{{p, q, q + n}, {p, q + n, p + n}} {
				if mesh.turned {
					t[1], t[2] = t[2], t[1]
				}
				u, v, w := &c.Vertices[mesh.first+t[0]], &c.Vertices[mesh.first+t[1]], &c.Vertices[mesh.first+t[2]]
				area := (v.X-u.X)*(w.Y-u.Y) - (v.Y-u.Y)*(w.X-u.X)
				at := mesh.first
				switch {
				case ofHull && area > 0:
					at = mesh.hull
				case ofHull || area >= 0:
					continue
				}
				c.Later(uint16(at+t[0]), uint16(at+t[1]), uint16(at+t[2]), place(t[0], t[1], t[2]))
			}
		}
	}
}
