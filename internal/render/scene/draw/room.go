package draw

import (
	"math"

	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/rules"
)

// face is a flat convex polygon of the room, cut into patches small enough to
// be sorted by depth and shaded smoothly.
type face struct {
	name    string
	kind    wire.Kind
	polygon []vec
	normal  vec // unit, into the free side
	d       float32
	centre  vec
	patches []patch
}

// patch is a convex piece of a face.
type patch struct {
	corners []corner
	centre  vec
}

// corner is a place on a patch with its two shares of light: open is how little
// the neighbouring surfaces crowd it, lamp how near the lamp is; both 0–1.
type corner struct {
	at         vec
	open, lamp float32
}

// edge is a line of the room with the one or two faces that meet in it.
type edge struct {
	a, b  vec
	faces [2]int // indices of faces; equal when there is only one
}

// solid is the convex body that the faces of one name enclose.
type solid struct{ faces []int }

// room is the prepared room: what stands still, cut to be sorted and shaded from
// any viewpoint.
type room struct {
	size   vec     // of the bare box, m
	floor  float32 // height of the standing surface, m
	golfer vec     // the golfer's middle: what stands before it is seen through
	faces  []face
	edges  []edge
	solids []solid
	shell  []int    // faces of the room's shell
	walls  []int    // the same less the floor, on which one stands
	hidden []span   // scratch
	named  []string // names that are lettered in the picture
}

// patchSize is the longest side of a patch, m: short against the reach of an
// arm, so that sorting by centres puts a golfer before or behind it rightly.
const patchSize = 0.36

// weld is how far apart (m) two corners may lie to count as one. It is above
// the rounding of float32 at room size and below the thinnest sheet.
const weld = 1e-3

// newRoom prepares the room of a recording about the golfer's middle.
func newRoom(s *wire.Recording, golfer vec) *room {
	m := &room{size: fromWire(s.Room), floor: floorOf(s), golfer: golfer}
	lamp := golfer
	lamp.Z = m.floor + 0.95*m.size.Z
	for _, f := range s.Faces {
		g := face{name: f.Name, kind: f.Kind}
		for _, p := range f.Polygon {
			g.polygon = append(g.polygon, fromWire(p))
		}
		g.normal = polygonNormal(g.polygon)
		if g.normal == (vec{}) {
			continue
		}
		g.centre = centroid(g.polygon)
		g.d = g.normal.Dot(g.centre)
		m.faces = append(m.faces, g)
	}
	bodies := map[string]int{}
	for i, f := range m.faces {
		switch {
		case f.kind.Shell():
			m.shell = append(m.shell, i)
			if f.kind != wire.Floor {
				m.walls = append(m.walls, i)
			}
		case f.kind == wire.Solid || f.kind == wire.Hung:
			at, ok := bodies[f.name]
			if !ok {
				at = len(m.solids)
				bodies[f.name] = at
				m.solids = append(m.solids, solid{})
			}
			m.solids[at].faces = append(m.solids[at].faces, i)
		}
	}
	for i := range m.faces {
		m.faces[i].patches = m.cut(&m.faces[i], lamp)
	}
	m.findEdges()
	return m
}

// floorOf is the height of the standing surface, m: the ball lies on it.
func floorOf(s *wire.Recording) float32 { return s.Ball[2] - rules.BallRadius }

// ceilingAt is how high (m) the lowest ceiling or slope is over a place.
func (m *room) ceilingAt(x, y float32) float32 {
	z := m.size.Z
	for _, i := range m.shell {
		f := &m.faces[i]
		if f.kind != wire.Floor && f.normal.Z < -0.05 {
			z = min(z, (f.d-f.normal.X*x-f.normal.Y*y)/f.normal.Z)
		}
	}
	return z
}

// cut divides a face by a grid in its own plane.
func (m *room) cut(f *face, lamp vec) []patch {
	u, v := perpendiculars(f.normal)
	var patches []patch
	var strip, cell, half, whole []vec
	u0, u1 := extent(f.polygon, u)
	v0, v1 := extent(f.polygon, v)
	nu, nv := cells(u1-u0), cells(v1-v0)
	for i := range nu {
		a, b := u0+(u1-u0)*float32(i)/float32(nu), u0+(u1-u0)*float32(i+1)/float32(nu)
		half = clipPolygon(half[:0], f.polygon, u, a)
		strip = clipPolygon(strip[:0], half, u.Mul(-1), -b)
		for j := range nv {
			c, d := v0+(v1-v0)*float32(j)/float32(nv), v0+(v1-v0)*float32(j+1)/float32(nv)
			whole = clipPolygon(whole[:0], strip, v, c)
			cell = clipPolygon(cell[:0], whole, v.Mul(-1), -d)
			if len(cell) < 3 {
				continue
			}
			p := patch{centre: centroid(cell)}
			for _, q := range cell {
				p.corners = append(p.corners, corner{at: q, open: m.open(q, f.normal), lamp: lampShare(q, f.normal, lamp)})
			}
			patches = append(patches, p)
		}
	}
	return patches
}

func cells(length float32) int { return max(1, min(64, int(math.Ceil(float64(length/patchSize))))) }

func extent(p []vec, axis vec) (lo, hi float32) {
	lo, hi = axis.Dot(p[0]), axis.Dot(p[0])
	for _, q := range p {
		d := axis.Dot(q)
		lo, hi = min(lo, d), max(hi, d)
	}
	return lo, hi
}

// open is 1 in the middle of a wall and falls towards the corners of the room,
// as paper does in a model.
func (m *room) open(q, normal vec) float32 {
	k := float32(1)
	for _, i := range m.shell {
		f := &m.faces[i]
		if f.normal.Dot(normal) > 0.99 {
			continue
		}
		d := max(0, f.normal.Dot(q)-f.d)
		k *= 1 - 0.07*float32(math.Exp(float64(-d/0.30)))
	}
	return k
}

// lampShare falls with the distance from the lamp and with the slant of its light.
func lampShare(q, normal, lamp vec) float32 {
	r := lamp.Sub(q)
	d := r.Norm()
	slant := 0.55 + 0.45*max(0, normal.Dot(r.Unit()))
	return slant / (1 + d*d/4)
}

func (m *room) findEdges() {
	for i := range m.faces {
		p := m.faces[i].polygon
		for k := range p {
			m.addEdge(p[k], p[(k+1)%len(p)], i)
		}
	}
}

func (m *room) addEdge(a, b vec, faceIndex int) {
	if a.Sub(b).Norm() < weld {
		return
	}
	for i := range m.edges {
		e := &m.edges[i]
		if e.faces[0] == e.faces[1] && e.faces[0] != faceIndex &&
			((a.Sub(e.a).Norm() < weld && b.Sub(e.b).Norm() < weld) || (a.Sub(e.b).Norm() < weld && b.Sub(e.a).Norm() < weld)) {
			e.faces[1] = faceIndex
			return
		}
	}
	m.edges = append(m.edges, edge{a, b, [2]int{faceIndex, faceIndex}})
}

// seen reports whether the face turns its free side to the eye. Cloth has two
// free sides.
func (f *face) seen(eye vec) bool { return f.kind.Cloth() || f.normal.Dot(eye) > f.d }

// through reports whether p has gone through a surface: out of the shell but by the
// floor, or into a solid.
func (m *room) through(p vec) bool {
	for _, i := range m.walls {
		if m.faces[i].normal.Dot(p) < m.faces[i].d {
			return true
		}
	}
	for _, s := range m.solids {
		inside := true
		for _, i := range s.faces {
			if m.faces[i].normal.Dot(p) > m.faces[i].d {
				inside = false
				break
			}
		}
		if inside {
			return true
		}
	}
	return false
}

// crosses reports whether a ball of radius r about p may have gone through a
// surface: false is certain, true is not.
func (m *room) crosses(p vec, r float32) bool {
	for _, i := range m.walls {
		if m.faces[i].normal.Dot(p) < m.faces[i].d+r {
			return true
		}
	}
	for _, s := range m.solids {
		near := true
		for _, i := range s.faces {
			if m.faces[i].normal.Dot(p) > m.faces[i].d+r {
				near = false
				break
			}
		}
		if near {
			return true
		}
	}
	return false
}
