package draw

import (
	"math"

	"wideberth/internal/render/scene/paint"
	"wideberth/internal/render/scene/wire"
)

// marks are the strike marks of a recording, in order of time.
type marks struct {
	list  []mark
	shown []point // in the last picture
	all   []point // scratch
}

// mark is a strike mark on a surface.
type mark struct {
	at, normal vec
	radius     float32
	frame      int
	first      bool // the surface's first
}

// markGap is how near (m) to an earlier mark of the same surface a mark is left
// out: the club is in the wall for many frames.
const markGap = 0.11

// maxMarks bounds the marks of a recording.
const maxMarks = 300

func newMarks(s *wire.Recording) marks {
	var list []mark
	var surface []string
	for _, k := range s.Strikes {
		m := mark{at: fromWire(k.At), normal: fromWire(k.Normal).Unit(), radius: max(0.03, min(1.2*k.Radius, 0.08)), frame: k.Frame, first: true}
		near := false
		for i := range list {
			if surface[i] == k.Surface {
				m.first = false
				near = near || list[i].at.Sub(m.at).Norm() < markGap
			}
		}
		if near || m.normal == (vec{}) || len(list) >= maxMarks {
			continue
		}
		list = append(list, m)
		surface = append(surface, k.Surface)
	}
	return marks{list: list}
}

// spots are where all the marks will be in the picture.
func (m *marks) spots(c *canvas) []point {
	m.all = m.all[:0]
	for i := range m.list {
		x, y, _ := c.cam.project(m.list[i].at)
		m.all = append(m.all, point{x, y})
	}
	return m.all
}

// draw queues the marks up to a moment, give or take half a frame like the tape:
// stars in the plane of the surface, outlined, filled with paint.StrikeRGB.
func (m *marks) draw(c *canvas, at moment) {
	m.shown = m.shown[:0]
	for i := range m.list {
		k := &m.list[i]
		if float64(k.frame) > at.frames+0.5 {
			break
		}
		if x, y, d := c.cam.project(k.at); d >= nearPlane {
			k.draw(c, d)
			m.shown = append(m.shown, point{x, y})
		}
	}
}

// starPoints is the number of a mark's rays.
const starPoints = 8

// Least radius of a mark's rays in the picture, CSS pixels: the first of a
// surface must be found at a glance.
const (
	leastMark      = 6.5
	leastFirstMark = 11
)

// markLift brings a mark before the ribbon that runs into it, m.
const markLift = 0.35

// fillLift brings the fill of every mark before the outlines of its neighbours, m.
const fillLift = 0.25

func (m *mark) draw(c *canvas, depth float32) {
	least := float32(leastMark)
	if m.first {
		least = leastFirstMark
	}
	px := c.cam.pixels(m.at)
	r := max(m.radius, least*c.scale/px)
	u, v := perpendiculars(facing(m.normal, c.cam.eye.Sub(m.at).Unit()))
	rim := 1.5 * c.scale / px
	c.star(m.at, u, v, r+2*rim, r*0.45+rim, c.theme.StrikeInk, depth-markLift)
	c.star(m.at, u, v, r, r*0.45, c.theme.Strike, depth-markLift-fillLift)
}

// facing tilts a normal towards the viewer until the surface is seen at no less
// than a slant of 0.45, so that a mark on a grazing ceiling can be read.
func facing(normal, toEye vec) vec {
	const least = 0.45
	c := normal.Dot(toEye)
	if c < 0 {
		normal, c = normal.Mul(-1), -c
	}
	if c >= least {
		return normal
	}
	flat := normal.Sub(toEye.Mul(c)).Unit()
	return toEye.Mul(least).Add(flat.Mul(sqrt(1 - least*least)))
}

// star queues a star about a place, in the plane of u and v.
func (c *canvas) star(at, u, v vec, long, short float32, colour paint.Colour, depth float32) {
	x, y, _ := c.cam.project(at)
	middle := c.Vertex(x, y, colour)
	var rim [2 * starPoints]uint16
	for i := range rim {
		r := long
		if i%2 == 1 {
			r = short
		}
		s, k := math.Sincos(math.Pi * float64(i) / starPoints)
		x, y, d := c.cam.project(at.Add(u.Mul(r * float32(k))).Add(v.Mul(r * float32(s))))
		if d < nearPlane {
			return
		}
		rim[i] = c.Vertex(x, y, colour)
	}
	for i := range rim {
		c.Later(middle, rim[i], rim[(i+1)%len(rim)], depth)
	}
}
