package draw

import (
	"math"

	"wideberth/internal/render/scene/wire"
)

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

func newMarks(s *wire.Recording) []mark {
	var marks []mark
	var surface []string
	for _, k := range s.Strikes {
		m := mark{at: fromShow(k.At), normal: fromShow(k.Normal).unit(), radius: max(0.03, min(1.2*k.Radius, 0.08)), frame: k.Frame, first: true}
		near := false
		for i := range marks {
			if surface[i] == k.Surface {
				m.first = false
				near = near || marks[i].at.sub(m.at).norm() < markGap
			}
		}
		if near || m.normal == (vec{}) || len(marks) >= maxMarks {
			continue
		}
		marks = append(marks, m)
		surface = append(surface, k.Surface)
	}
	return marks
}

// maxMarks bounds the marks of a show.
const maxMarks = 300

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

// drawMarks queues the strike marks up to the play-head: stars in the plane of
// the surface, outlined, filled with StrikeRGB.
func (sc *Scene) drawMarks() {
	sc.markPixels = sc.markPixels[:0]
	for i := range sc.marks {
		m := &sc.marks[i]
		if m.frame > sc.frame {
			break
		}
		sc.drawMark(m)
	}
}

func (sc *Scene) drawMark(m *mark) {
	x, y, depth := sc.cam.project(m.at)
	if depth < nearPlane {
		return
	}
	least := float32(leastMark)
	if m.first {
		least = leastFirstMark
	}
	px := sc.cam.pixels(m.at)
	r := max(m.radius, least*sc.scale/px)
	u, v := perpendiculars(facing(m.normal, sc.cam.eye.sub(m.at).unit()))
	rim := 1.5 * sc.scale / px
	sc.star(m.at, u, v, r+2*rim, r*0.45+rim, sc.pal.strikeInk, depth-markLift)
	sc.star(m.at, u, v, r, r*0.45, sc.pal.strike, depth-markLift-fillLift)
	sc.markPixels = append(sc.markPixels, point{x, y})
}

// facing tilts a normal towards the viewer until the surface is seen at no less
// than a slant of 0.45, so that a mark on a grazing ceiling can be read.
func facing(normal, toEye vec) vec {
	const least = 0.45
	c := normal.dot(toEye)
	if c < 0 {
		normal, c = normal.mul(-1), -c
	}
	if c >= least {
		return normal
	}
	flat := normal.sub(toEye.mul(c)).unit()
	return toEye.mul(least).add(flat.mul(sqrt(1 - least*least)))
}

func (sc *Scene) star(at, u, v vec, long, short float32, c Colour, depth float32) {
	x, y, _ := sc.cam.project(at)
	middle := sc.vertex(x, y, c)
	var rim [2 * starPoints]uint16
	for i := range rim {
		r := long
		if i%2 == 1 {
			r = short
		}
		s, k := math.Sincos(math.Pi * float64(i) / starPoints)
		x, y, d := sc.cam.project(at.add(u.mul(r * float32(k))).add(v.mul(r * float32(s))))
		if d < nearPlane {
			return
		}
		rim[i] = sc.vertex(x, y, c)
	}
	for i := range rim {
		sc.later(middle, rim[i], rim[(i+1)%len(rim)], depth)
	}
}
