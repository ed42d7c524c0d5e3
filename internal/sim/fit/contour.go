package fit

import (
	"math"

	"wideberth/internal/sim/geom"
)

// Contour outlines where a map is at or above a level: closed rings in room
// coordinates, m, rounded to a millimetre. Fill them by the even-odd rule; a
// hole is a ring inside another.
type Contour struct {
	Name  string         `json:"name"`
	Level float64        `json:"level"` // m
	Rings [][][2]float64 `json:"rings"`
}

// contour traces a level through values (m) at the cells' middles by marching
// squares (W. E. Lorensen and H. E. Cline 1987, in the plane): straight between
// the middles, with a square's mean deciding its saddles. Beyond the outermost
// middles the map counts as outside, so every ring closes.
//
// Where a clearance is that to flat surfaces it is concave, and a line drawn
// straight between cells claims no more than there is; near a box it may claim
// more by about cell²/8 over the distance to the box, under a millimetre.
func (g *Grid) contour(name string, level float64, values []float64) Contour {
	t := tracer{g: g, values: values, level: level, next: map[edge]edge{}}
	for j := -1; j < g.NY; j++ {
		for i := -1; i < g.NX; i++ {
			t.square(i, j)
		}
	}
	return Contour{name, level, t.rings()}
}

// edge is a side of a square: from the middle of cell (i, j) to the next along x
// or, when up, along y.
type edge struct {
	i, j int
	up   bool
}

type tracer struct {
	g      *Grid
	values []float64
	level  float64
	next   map[edge]edge
	order  []edge // in which they were found: rings must not depend on a map's order
}

// outside (m) is how far below the level the map counts beyond its rim.
const outside = 1.0

func (t *tracer) value(i, j int) float64 {
	if i < 0 || j < 0 || i >= t.g.NX || j >= t.g.NY {
		return -outside
	}
	return t.values[j*t.g.NX+i] - t.level
}

// square adds the pieces of line through the square whose lowest corner is the
// middle of cell (i, j), with the higher side on their left.
func (t *tracer) square(i, j int) {
	v := [4]float64{t.value(i, j), t.value(i+1, j), t.value(i+1, j+1), t.value(i, j+1)}
	var in [4]bool
	any, all := false, true
	for k := range v {
		in[k] = v[k] >= 0
		any, all = any || in[k], all && in[k]
	}
	if !any || all {
		return
	}
	sides := [4]edge{{i, j, false}, {i + 1, j, true}, {i, j + 1, false}, {i, j, true}}
	// Going round against the clock, the line leaves the higher ground by the
	// sides that go down and comes back by those that go up.
	var down, up []int
	for k := range 4 {
		switch a, b := in[k], in[(k+1)%4]; {
		case a && !b:
			down = append(down, k)
		case !a && b:
			up = append(up, k)
		}
	}
	link := func(from, to int) {
		t.next[sides[from]] = sides[to]
		t.order = append(t.order, sides[from])
	}
	if len(down) == 1 {
		link(down[0], up[0])
		return
	}
	// A saddle. With a high middle the two high corners are one piece of ground:
	// each line cuts off the low corner between its ends. Otherwise each cuts off
	// a high corner.
	high := v[0]+v[1]+v[2]+v[3] >= 0
	for _, d := range down {
		if high {
			link(d, (d+1)%4)
		} else {
			link(d, (d+3)%4)
		}
	}
}

// point returns where the level crosses a side.
func (t *tracer) point(e edge) [2]float64 {
	a, i, j := t.value(e.i, e.j), e.i+1, e.j
	if e.up {
		i, j = e.i, e.j+1
	}
	b := t.value(i, j)
	s := 0.5
	if a != b {
		s = a / (a - b)
	}
	p, q := t.g.spot(e.i, e.j), t.g.spot(i, j)
	return [2]float64{round(p.x + s*(q.x-p.x)), round(p.y + s*(q.y-p.y))}
}

// rings follows the pieces of line until they close.
func (t *tracer) rings() [][][2]float64 {
	out := [][][2]float64{}
	done := map[edge]bool{}
	for _, first := range t.order {
		if done[first] {
			continue
		}
		var ring [][2]float64
		for e := first; !done[e]; e = t.next[e] {
			done[e] = true
			p := t.point(e)
			if n := len(ring); n >= 2 && straight(ring[n-2], ring[n-1], p) {
				ring[n-1] = p
				continue
			}
			ring = append(ring, p)
		}
		out = append(out, ring)
	}
	return out
}

// straight reports whether b may be left out between a and c.
func straight(a, b, c [2]float64) bool {
	const within = 0.0005 // m
	dx, dy := c[0]-a[0], c[1]-a[1]
	n := geom.Hypot(dx, dy)
	if n == 0 {
		return false
	}
	off := math.Abs((b[0]-a[0])*dy-(b[1]-a[1])*dx) / n
	along := ((b[0]-a[0])*dx + (b[1]-a[1])*dy) / n
	return off <= within && along > 0 && along < n
}

// round rounds a length to a millimetre.
func round(v float64) float64 { return math.Round(v*1000) / 1000 }
