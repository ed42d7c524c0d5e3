package draw

import (
	"slices"

	"wideberth/internal/render/scene/wire"
)

// light is the direction towards the light of the drawing, fixed in the room.
var light = vec{-0.42, -0.34, 0.84}

// drawRoom lays down what only depends on the viewpoint: the walls that face
// the viewer at once, everything that stands in the room into the queue.
func (sc *Scene) drawRoom() {
	for i := range sc.model.faces {
		f := &sc.model.faces[i]
		if f.kind.Shell() && f.seen(sc.cam.eye) {
			sc.drawFace(f, 1, false)
			sc.letterFace(f, false)
		}
	}
	for i := range sc.model.faces {
		f := &sc.model.faces[i]
		if f.kind == wire.Mat && f.seen(sc.cam.eye) {
			sc.drawFace(f, 1, false)
		}
	}
	pivot := sc.cam.depth(sc.pivot)
	for i := range sc.model.faces {
		f := &sc.model.faces[i]
		if f.kind.Shell() || f.kind == wire.Mat || !f.seen(sc.cam.eye) {
			continue
		}
		alpha := float32(1)
		if f.kind.Cloth() {
			alpha = 0.92
			if (f.normal.dot(sc.cam.eye) > f.d) != (f.normal.dot(sc.pivot) > f.d) {
				alpha = 0.30
			}
		} else {
			// What stands before the golfer turns to tracing paper.
			alpha = 0.45 + 0.55*max(0, min((sc.cam.depth(f.centre)-pivot+0.9)/0.6, 1))
		}
		sc.drawFace(f, alpha, true)
		sc.letterFace(f, true)
	}
	sc.drawEdges()
}

// paper is the base colour of a face.
func (p *palette) paper(k wire.Kind) Colour {
	switch k {
	case wire.Ceiling, wire.Slope:
		return p.ceiling
	case wire.Floor:
		return p.floor
	case wire.Mat:
		return p.mat
	case wire.Solid:
		return p.solid
	case wire.Screen, wire.Return:
		return p.cloth
	case wire.Hung:
		return p.hung
	}
	return p.wall
}

func (sc *Scene) drawFace(f *face, alpha float32, queued bool) {
	base := sc.pal.paper(f.kind).alpha(alpha)
	contrast := float32(0.05)
	if !f.kind.Shell() {
		contrast = 0.20
	}
	slant := 1 - contrast*(1-f.normal.dot(light))*0.5
	for i := range f.patches {
		p := &f.patches[i]
		if !sc.inFront(p) {
			continue
		}
		first, last := uint16(0), uint16(0)
		depth := sc.cam.depth(p.centre)
		for j := range p.corners {
			c := &p.corners[j]
			k := slant * c.open * (1 - sc.pal.lamp*(0.55-1.35*c.lamp))
			x, y, _ := sc.cam.project(c.at)
			v := sc.vertex(x, y, base.warm(k))
			if j == 0 {
				first = v
			}
			if j > 1 {
				if queued {
					sc.later(first, last, v, depth)
				} else {
					sc.now(first, last, v)
				}
			}
			last = v
		}
	}
}

// inFront reports whether the whole patch is past the near plane. The camera
// stays outside the room, so a patch that is not is a stray one and left out.
func (sc *Scene) inFront(p *patch) bool {
	for i := range p.corners {
		if sc.cam.depth(p.corners[i].at) < nearPlane {
			return false
		}
	}
	return true
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

func (sc *Scene) drawEdges() {
	for i := range sc.model.edges {
		e := &sc.model.edges[i]
		f, g := &sc.model.faces[e.faces[0]], &sc.model.faces[e.faces[1]]
		a, b, ok := clipSegment(e.a, e.b, sc.cam.forward, sc.cam.forward.dot(sc.cam.eye)+nearPlane)
		if !ok {
			continue
		}
		lift := float32(edgeLift)
		if f.kind.Shell() {
			lift = 0
		}
		if !f.seen(sc.cam.eye) && !g.seen(sc.cam.eye) {
			if f.kind.Shell() && g.kind.Shell() {
				sc.dash(a, b, hiddenWidth, sc.pal.cut, 0)
			} else {
				sc.dash(a, b, hiddenWidth, sc.pal.hidden, 0.5)
			}
			continue
		}
		sc.findHidden(a, b, e)
		at := float32(0)
		for _, s := range sc.hidden {
			if s.from > at {
				sc.ink(a.lerp(b, at), a.lerp(b, s.from), lift)
			}
			if s.to > at {
				from := max(at, s.from)
				sc.dash(a.lerp(b, from), a.lerp(b, s.to), hiddenWidth, sc.pal.hidden, sc.liftBefore(a.lerp(b, (from+s.to)/2), s.by))
			}
			at = max(at, s.to)
		}
		if at < 1 {
			sc.ink(a.lerp(b, at), b, lift)
		}
	}
}

// findHidden fills sc.hidden with the stretches of ab that bodies of the room
// hide, in order.
func (sc *Scene) findHidden(a, b vec, e *edge) {
	sc.hidden = sc.hidden[:0]
	for i := range sc.model.faces {
		f := &sc.model.faces[i]
		if (f.kind != wire.Solid && f.kind != wire.Hung) || i == e.faces[0] || i == e.faces[1] || !f.seen(sc.cam.eye) {
			continue
		}
		if s, ok := hiddenSpan(sc.cam.eye, a, b, f); ok {
			s.by = i
			sc.hidden = append(sc.hidden, s)
		}
	}
	slices.SortFunc(sc.hidden, func(p, q span) int {
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
func (sc *Scene) liftBefore(p vec, by int) float32 {
	f := &sc.model.faces[by]
	ray := p.sub(sc.cam.eye)
	slope := f.normal.dot(ray)
	if abs(slope) < 1e-6 {
		return edgeLift
	}
	t := (f.d - f.normal.dot(sc.cam.eye)) / slope
	return sc.cam.depth(p)*(1-max(0, min(t, 1))) + edgeLift
}

// ink queues a seen line in pieces short enough to be sorted.
func (sc *Scene) ink(a, b vec, lift float32) {
	n := cells(a.sub(b).norm())
	for i := range n {
		p, q := a.lerp(b, float32(i)/float32(n)), a.lerp(b, float32(i+1)/float32(n))
		x0, y0, d0 := sc.cam.project(p)
		x1, y1, d1 := sc.cam.project(q)
		sc.lineAt(point{x0, y0}, point{x1, y1}, inkWidth*sc.pen, sc.pal.ink, (d0+d1)/2-lift)
	}
}

// dash queues a dashed line. The dashes are even in the picture and start and
// end with half a dash, so that corners are always marked.
func (sc *Scene) dash(a, b vec, width float32, c Colour, lift float32) {
	x0, y0, d0 := sc.cam.project(a)
	x1, y1, d1 := sc.cam.project(b)
	p, q := point{x0, y0}, point{x1, y1}
	sc.dashes = dashSpans(sc.dashes[:0], q.sub(p).norm()/sc.scale)
	for _, s := range sc.dashes {
		mid := (s.from + s.to) / 2
		sc.lineAt(p.lerp(q, s.from), p.lerp(q, s.to), width*sc.pen, c, d0+(d1-d0)*mid-lift)
	}
}

// maxDashes bounds the dashes of one line.
const maxDashes = 400

// dashSpans appends the dashes of a line of the given length (CSS pixels) as
// shares of it: half a dash at each end and whole ones between, the pitch
// stretched to fit.
func dashSpans(dst []span, length float32) []span {
	n := int(length/(dashOn+dashOff) + 0.5)
	if n < 1 {
		return append(dst, span{from: 0, to: 1})
	}
	n = min(n, maxDashes)
	pitch := 1 / float32(n)
	half := pitch * dashOn / (dashOn + dashOff) / 2
	for i := range n + 1 {
		at := float32(i) * pitch
		dst = append(dst, span{from: max(0, at-half), to: min(1, at+half)})
	}
	return dst
}
