package draw

import (
	"math"
	"slices"

	"wideberth/internal/render/scene/paint"
)

// MapShape is one region or line of a map, as rings in the room's plan, m. Rings fill
// by the even-odd rule.
type MapShape struct {
	Name  string
	Rings [][][2]float32
}

// maps are the map of where to stand, on the floor, and that of what may hang, under
// the ceiling.
type maps struct{ stand, hang []MapShape }

// ShowMaps lays maps into the room; without shapes they are taken away again. The names
// of shapes are those of the solver's maps: strike, margin, comfort and barred of where
// to stand; closed, swept and level of what may hang.
func (p *Picture) ShowMaps(stand, hang []MapShape) {
	p.maps = maps{stand, hang}
	p.view = View{}
}

// hatch is a way to fill a region: lines at an angle (radians) so far apart (m), over a
// wash.
type hatch struct {
	angles []float64
	apart  float32
	width  float32 // CSS pixels
	ink    paint.Colour
	wash   paint.Colour
}

// sheet is where a map lies: how high it is over a place, and whether it is laid down
// at once, behind all that stands in the room, or queued at its depth.
type sheet struct {
	height func(x, y float32) float32
	queued bool
}

// draw lays the maps down. Dense lines say that something is struck, wide ones that it
// is tight, crossed ones that nothing may hang; colour only repeats it.
func (m *maps) draw(c *canvas, r *room) {
	t := c.theme
	if len(m.stand) > 0 && c.cam.eye.Z > r.floor {
		floor := sheet{height: func(_, _ float32) float32 { return r.floor + floorLift }}
		whole := [][][2]float32{{{0, 0}, {r.size.X, 0}, {r.size.X, r.size.Y}, {0, r.size.Y}}}
		strike, margin := ringsOf(m.stand, "strike"), ringsOf(m.stand, "margin")
		c.hatch(floor, &hatch{[]float64{math.Pi / 4}, 0.09, 1.4, t.Strike.Alpha(0.75), t.Strike.Alpha(0.14)}, whole, strike)
		c.hatch(floor, &hatch{[]float64{-math.Pi / 4}, 0.20, 1.2, t.TapeInk.Alpha(0.55), t.Tight.Alpha(0.22)}, strike, margin)
		c.hatch(floor, &hatch{nil, 0, 0, t.Ink, t.Ink.Alpha(0.22)}, ringsOf(m.stand, "barred"), nil)
		for _, name := range [...]string{"strike", "margin", "comfort"} {
			c.contour(floor, ringsOf(m.stand, name), 1.4, t.Ink.Alpha(0.8))
		}
	}
	if len(m.hang) > 0 {
		ceiling := sheet{height: func(x, y float32) float32 { return r.ceilingAt(x, y) - 0.01 }, queued: c.cam.eye.Z > r.size.Z}
		c.hatch(ceiling, &hatch{[]float64{math.Pi / 4, -math.Pi / 4}, 0.14, 1, t.Strike.Alpha(0.6), t.Strike.Alpha(0.10)}, ringsOf(m.hang, "closed"), nil)
		c.contour(ceiling, ringsOf(m.hang, "swept"), 1, t.Ink.Alpha(0.6))
		c.contour(ceiling, ringsOf(m.hang, "level"), 1, t.RibbonInk.Alpha(0.8))
		c.contour(ceiling, ringsOf(m.hang, "closed"), 1.6, t.Ink.Alpha(0.8))
	}
}

// ringsOf are all rings of the shapes of one name.
func ringsOf(shapes []MapShape, name string) (out [][][2]float32) {
	for i := range shapes {
		if shapes[i].Name == name {
			out = append(out, shapes[i].Rings...)
		}
	}
	return out
}

// washStep is the breadth of the strips of a wash, m.
const washStep = 0.05

// hatch fills the region between two sets of rings.
func (c *canvas) hatch(s sheet, h *hatch, a, b [][][2]float32) {
	if len(a)+len(b) == 0 {
		return
	}
	c.spans(0, washStep, a, b, func(at, from, to float32) {
		lo, hi := at-washStep/2, at+washStep/2
		c.mapQuad(s, [4][2]float32{{from, lo}, {to, lo}, {to, hi}, {from, hi}}, h.wash)
	})
	for _, angle := range h.angles {
		sin, cos := math.Sincos(angle)
		x, y := float32(cos), float32(sin)
		c.spans(angle, h.apart, a, b, func(at, from, to float32) {
			c.mapLine(s, [2]float32{from*x - at*y, from*y + at*x}, [2]float32{to*x - at*y, to*y + at*x}, h.width, h.ink)
		})
	}
}

// maxSpans bounds the lines of a hatch.
const maxSpans = 2000

// spans calls visit with the stretches of parallel lines at an angle that lie inside by
// the even-odd rule: at is the line's distance from the origin, from and to are along it.
func (c *canvas) spans(angle float64, apart float32, a, b [][][2]float32, visit func(at, from, to float32)) {
	sin, cos := math.Sincos(angle)
	x, y := float32(cos), float32(sin)
	along := func(p [2]float32) (float32, float32) { return p[0]*x + p[1]*y, p[1]*x - p[0]*y }
	lo, hi := float32(math.Inf(1)), float32(math.Inf(-1))
	for _, rings := range [2][][][2]float32{a, b} {
		for _, ring := range rings {
			for _, p := range ring {
				_, d := along(p)
				lo, hi = min(lo, d), max(hi, d)
			}
		}
	}
	n := int((hi - lo) / apart)
	for k := range min(n+1, maxSpans) {
		at := (float32(math.Floor(float64(lo/apart))) + float32(k) + 0.5) * apart
		c.crossings = c.crossings[:0]
		for _, rings := range [2][][][2]float32{a, b} {
			for _, ring := range rings {
				for i, p := range ring {
					u0, d0 := along(p)
					u1, d1 := along(ring[(i+1)%len(ring)])
					if (d0 > at) != (d1 > at) {
						c.crossings = append(c.crossings, u0+(u1-u0)*(at-d0)/(d1-d0))
					}
				}
			}
		}
		slices.Sort(c.crossings)
		for i := 0; i+1 < len(c.crossings); i += 2 {
			visit(at, c.crossings[i], c.crossings[i+1])
		}
	}
}

// contour inks rings.
func (c *canvas) contour(s sheet, rings [][][2]float32, width float32, colour paint.Colour) {
	for _, ring := range rings {
		for i, p := range ring {
			c.mapLine(s, p, ring[(i+1)%len(ring)], width, colour)
		}
	}
}

// mapLine lays a line of a map on its sheet, in pieces short enough for a slope.
func (c *canvas) mapLine(s sheet, from, to [2]float32, width float32, colour paint.Colour) {
	a, b := xyz(from[0], from[1], 0), xyz(to[0], to[1], 0)
	n := cells(b.Sub(a).Norm())
	for i := range n {
		p, q := a.Lerp(b, float32(i)/float32(n)), a.Lerp(b, float32(i+1)/float32(n))
		p.Z, q.Z = s.height(p.X, p.Y), s.height(q.X, q.Y)
		p, q, ok := clipSegment(p, q, c.cam.forward, c.cam.forward.Dot(c.cam.eye)+nearPlane)
		if !ok {
			continue
		}
		if s.queued {
			c.strip(p, q, width, colour)
			continue
		}
		x0, y0, _ := c.cam.project(p)
		x1, y1, _ := c.cam.project(q)
		c.line(point{x0, y0}, point{x1, y1}, width*c.pen, colour)
	}
}

// mapQuad lays a strip of a wash on its sheet, in pieces short enough for a slope.
func (c *canvas) mapQuad(s sheet, corners [4][2]float32, colour paint.Colour) {
	n := cells(corners[1][0] - corners[0][0])
	var before [2]uint16
	for i := range n + 1 {
		x := corners[0][0] + (corners[1][0]-corners[0][0])*float32(i)/float32(n)
		var now [2]uint16
		depth := float32(0)
		for k, y := range [2]float32{corners[0][1], corners[3][1]} {
			px, py, d := c.cam.project(xyz(x, y, s.height(x, y)))
			if d < nearPlane {
				return
			}
			depth += d / 2
			now[k] = c.Vertex(px, py, colour)
		}
		switch {
		case i == 0:
		case s.queued:
			c.Later(before[0], now[0], now[1], depth)
			c.Later(before[0], now[1], before[1], depth)
		default:
			c.Now(before[0], now[0], now[1])
			c.Now(before[0], now[1], before[1])
		}
		before = now
	}
}
