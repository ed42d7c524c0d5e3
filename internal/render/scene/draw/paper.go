package draw

import (
	"slices"

	"wideberth/internal/render/scene/paint"
	"wideberth/internal/render/scene/wire"
)

// light is the direction towards the light of the drawing, fixed in the room.
var light = xyz(-0.42, -0.34, 0.84)

// draw lays down the walls that face
// the viewer at once, everything that stands in the room into the queue.
func (m *room) draw(c *canvas) {
	m.named = m.named[:0]
	for i := range m.faces {
		f := &m.faces[i]
		if f.kind.Shell() && f.seen(c.cam.eye) {
			f.draw(c, 1, false)
			m.letter(c, f, false)
		}
	}
	for i := range m.faces {
		f := &m.faces[i]
		if f.kind == wire.Mat && f.seen(c.cam.eye) {
			f.draw(c, 1, false)
		}
	}
	golfer := c.cam.depth(m.golfer)
	for i := range m.faces {
		f := &m.faces[i]
		if f.kind.Shell() || f.kind == wire.Mat || !f.seen(c.cam.eye) {
			continue
		}
		alpha := float32(1)
		if f.kind.Cloth() {
			alpha = 0.92
			if (f.normal.Dot(c.cam.eye) > f.d) != (f.normal.Dot(m.golfer) > f.d) {
				alpha = 0.30
			}
		} else {
			// What stands before the golfer turns to tracing paper.
			alpha = 0.45 + 0.55*max(0, min((c.cam.depth(f.centre)-golfer+0.9)/0.6, 1))
		}
		f.draw(c, alpha, true)
		m.letter(c, f, true)
	}
	m.drawEdges(c)
}

// paper is the base colour of a face.
func paper(p *paint.Theme, k wire.Kind) paint.Colour {
	switch k {
	case wire.Ceiling, wire.Slope:
		return p.Ceiling
	case wire.Floor:
		return p.Floor
	case wire.Mat:
		return p.Mat
	case wire.Solid:
		return p.Solid
	case wire.Screen, wire.Return:
		return p.Cloth
	case wire.Hung:
		return p.Hung
	}
	return p.Wall
}

// draw lays the face down patch by patch, or queues it.
func (f *face) draw(c *canvas, alpha float32, queued bool) {
	base := paper(c.theme, f.kind).Alpha(alpha)
	contrast := float32(0.05)
	if !f.kind.Shell() {
		contrast = 0.20
	}
	slant := 1 - contrast*(1-f.normal.Dot(light))*0.5
	for i := range f.patches {
		p := &f.patches[i]
		corners := c.cam.inFront(p.corners, &c.cut)
		first, last := uint16(0), uint16(0)
		depth := c.cam.depth(p.centre)
		for j := range corners {
			at := &corners[j]
			k := slant * at.open * (1 - c.theme.Lamp*(0.55-1.35*at.lamp))
			x, y, _ := c.cam.project(at.at)
			v := c.Vertex(x, y, base.Warm(k))
			if j == 0 {
				first = v
			}
			if j > 1 {
				if queued {
					c.Later(first, last, v, depth)
				} else {
					c.Now(first, last, v)
				}
			}
			last = v
		}
	}
}

// inFront is the part of a patch that is past the near plane, cut into a scratch
// slice where the viewer stands inside the room and the plane goes through it.
func (c *camera) inFront(p []corner, scratch *[]corner) []corner {
	behind := 0
	for i := range p {
		if c.depth(p[i].at) < nearPlane {
			behind++
		}
	}
	if behind == 0 {
		return p
	}
	out := (*scratch)[:0]
	if behind < len(p) {
		for i := range p {
			a, b := &p[i], &p[(i+1)%len(p)]
			da, db := c.depth(a.at)-nearPlane, c.depth(b.at)-nearPlane
			if da >= 0 {
				out = append(out, *a)
			}
			if (da >= 0) != (db >= 0) {
				t := da / (da - db)
				out = append(out, corner{a.at.Lerp(b.at, t), a.open + (b.open-a.open)*t, a.lamp + (b.lamp-a.lamp)*t})
			}
		}
	}
	*scratch = out
	return out
}

// Line widths and dashes, in CSS pixels.
const (
	inkWidth    = 1.5
	hiddenWidth = 1.1
	dashOn      = 6
	dashOff     = 4
)

// edgeLift brings the ink of a body's edge before the body's own patches, m.
const edgeLift = 0.14

// drawEdges inks the lines of the room: seen ones full, hidden ones dashed.
func (m *room) drawEdges(c *canvas) {
	for i := range m.edges {
		e := &m.edges[i]
		f, g := &m.faces[e.faces[0]], &m.faces[e.faces[1]]
		a, b, ok := clipSegment(e.a, e.b, c.cam.forward, c.cam.forward.Dot(c.cam.eye)+nearPlane)
		if !ok {
			continue
		}
		lift := float32(edgeLift)
		if f.kind.Shell() {
			lift = 0
		}
		if !f.seen(c.cam.eye) && !g.seen(c.cam.eye) {
			if f.kind.Shell() && g.kind.Shell() {
				c.dash(a, b, hiddenWidth, c.theme.Cut, 0)
			} else {
				c.dash(a, b, hiddenWidth, c.theme.Hidden, 0.5)
			}
			continue
		}
		m.findHidden(c, a, b, e)
		at := float32(0)
		for _, s := range m.hidden {
			if s.from > at {
				c.ink(a.Lerp(b, at), a.Lerp(b, s.from), lift)
			}
			if s.to > at {
				from := max(at, s.from)
				c.dash(a.Lerp(b, from), a.Lerp(b, s.to), hiddenWidth, c.theme.Hidden, m.liftBefore(c, a.Lerp(b, (from+s.to)/2), s.by))
			}
			at = max(at, s.to)
		}
		if at < 1 {
			c.ink(a.Lerp(b, at), b, lift)
		}
	}
}

// findHidden fills m.hidden with the stretches of ab that bodies of the room
// hide, in order.
func (m *room) findHidden(c *canvas, a, b vec, e *edge) {
	m.hidden = m.hidden[:0]
	for i := range m.faces {
		f := &m.faces[i]
		if (f.kind != wire.Solid && f.kind != wire.Hung) || i == e.faces[0] || i == e.faces[1] || !f.seen(c.cam.eye) {
			continue
		}
		if s, ok := hiddenSpan(c.cam.eye, a, b, f); ok {
			s.by = i
			m.hidden = append(m.hidden, s)
		}
	}
	slices.SortFunc(m.hidden, func(p, q span) int {
		switch {
		case p.from < q.from:
			return -1
		case p.from > q.from:
			return 1
		}
		return 0
	})
}

// liftBefore is how much nearer (m) a dash at p must be laid to lie on the face
// that hides it.
func (m *room) liftBefore(c *canvas, p vec, by int) float32 {
	f := &m.faces[by]
	ray := p.Sub(c.cam.eye)
	slope := f.normal.Dot(ray)
	if abs(slope) < 1e-6 {
		return edgeLift
	}
	t := (f.d - f.normal.Dot(c.cam.eye)) / slope
	return c.cam.depth(p)*(1-max(0, min(t, 1))) + edgeLift
}
