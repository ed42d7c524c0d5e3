// Package sweep answers how near a moving golfer and club come to what a room
// is made of. It lists the surfaces of a plan, places a golfer on a tee, and
// finds the signed clearance of a whole motion, continuously in time and on the
// cautious side: what it reports is never more than Tolerance above the true
// minimum of the motion it was given.
package sweep

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

// Kind says what a surface is.
type Kind uint8

// The kinds of surface.
const (
	Ceiling Kind = iota
	Wall
	Slope
	Screen
	Return // cloth along an edge of the screen
	Solid
	Hung
)

var kindNames = [...]string{"ceiling", "wall", "slope", "screen", "return", "solid", "hung"}

func (k Kind) String() string { return kindNames[k] }

// Flat reports whether surfaces of the kind are half-spaces; the others are boxes.
func (k Kind) Flat() bool { return k <= Screen }

// Surface is one thing that golfer and club must not touch: a half-space
// (Plane) when Kind.Flat(), otherwise a solid Box.
type Surface struct {
	Name  string
	Kind  Kind
	Plane geom.Halfspace
	Box   geom.Box
	Cover string // of a solid, as the plan has it
}

const (
	// clothThickness (m) is what a return of the screen is taken to be; the
	// box lies wholly outside the screen's opening.
	clothThickness = 0.005
	// behind (m) is how far a box that is built against a wall or the ceiling
	// goes on past it. Nothing of the room lies there, so the way out of a beam
	// is down, never up through the ceiling.
	behind = 4.0
	// flush (m) is how near to a wall a box counts as built against it.
	flush = 0.002
)

// Surfaces returns what there is to strike in the plan, in the room frame and
// in the order in which ties are decided.
//
// The floor is not among them: shoes stand on it and the clubhead is meant to
// brush it at the ball, so a distance to it says nothing about the room. The
// screen counts as the whole plane across the room, not only its rectangle:
// nobody should swing past it, and a ball's bay rarely leaves room to. It also
// hides the front wall, which is then no surface of its own.
func Surfaces(p plan.Plan) []Surface {
	r := p.Room
	out := []Surface{
		flat("ceiling", Ceiling, geom.Vec{Z: -1}, geom.Vec{Z: r.Height}),
		flat("left wall", Wall, geom.Vec{Y: -1}, geom.Vec{Y: r.Width}),
		flat("right wall", Wall, geom.Vec{Y: 1}, geom.Vec{}),
		flat("back wall", Wall, geom.Vec{X: 1}, geom.Vec{}),
	}
	if p.Screen != nil {
		out = append(out, flat("screen", Screen, geom.Vec{X: -1}, geom.Vec{X: p.Screen.X}))
	} else {
		out = append(out, flat("front wall", Wall, geom.Vec{X: -1}, geom.Vec{X: r.Length}))
	}
	for _, s := range r.Slopes {
		if h, ok := slope(r, s); ok {
			out = append(out, Surface{Name: slopeName(s), Kind: Slope, Plane: h})
		}
	}
	for _, s := range r.Solids {
		if r.Touches(s.Min, s.Max) { // what is behind a wall is not nearer than the wall
			out = append(out, Surface{Name: s.Name, Kind: Solid, Box: builtIn(r, s.Min, s.Max), Cover: s.Cover})
		}
	}
	if p.Screen != nil {
		out = append(out, returns(*p.Screen)...)
	}
	for _, h := range p.Hung {
		if r.Touches(h.Min, h.Max) {
			out = append(out, Surface{Name: h.Name, Kind: Hung, Box: builtIn(r, h.Min, h.Max)})
		}
	}
	return out
}

// flat returns the half-space with inward normal n whose plane holds the point on.
func flat(name string, k Kind, n, on geom.Vec) Surface {
	return Surface{Name: name, Kind: k, Plane: geom.Halfspace{N: n, D: geom.Dot(n, on)}}
}

// slope returns the half-space under a sloping ceiling: its plane holds the
// knee line at the wall and the line where it meets the ceiling, Run away. A
// slope of no rise lies in the ceiling and is none.
func slope(r plan.Room, s plan.Slope) (geom.Halfspace, bool) {
	// To a nanometre: raised with its ceiling a slope keeps its direction to the bit,
	// and with it what was worked out of the swings.
	rise := math.Round((r.Height-s.KneeHeight)*1e9) / 1e9
	if rise <= 0 || s.Run < 0 {
		return geom.Halfspace{}, false
	}
	out, at := geom.Vec{}, geom.Vec{Z: s.KneeHeight} // out: level, towards the wall
	switch s.Wall {
	case plan.WallLeft:
		out.Y, at.Y = 1, r.Width
	case plan.WallRight:
		out.Y = -1
	case plan.WallFront:
		out.X, at.X = 1, r.Length
	case plan.WallBack:
		out.X = -1
	default:
		return geom.Halfspace{}, false
	}
	n := geom.Vec{X: -rise * out.X, Y: -rise * out.Y, Z: -s.Run}
	k := 1 / geom.Norm(n)
	n = geom.Vec{X: n.X * k, Y: n.Y * k, Z: n.Z * k}
	return geom.Halfspace{N: n, D: geom.Dot(n, at)}, true
}

func slopeName(s plan.Slope) string {
	if s.Name != "" {
		return s.Name
	}
	return string(s.Wall) + " slope"
}

// builtIn returns the box from lo to hi, carried on behind every wall, ceiling
// or floor that it is built against.
func builtIn(r plan.Room, lo, hi [3]float64) geom.Box {
	size := [3]float64{r.Length, r.Width, r.Height}
	for i := range 3 {
		if lo[i] <= flush {
			lo[i] = min(lo[i], 0) - behind
		}
		if hi[i] >= size[i]-flush {
			hi[i] = max(hi[i], size[i]) + behind
		}
	}
	return geom.Box{
		Min: geom.Vec{X: lo[0], Y: lo[1], Z: lo[2]},
		Max: geom.Vec{X: hi[0], Y: hi[1], Z: hi[2]},
	}
}

// returns lists the cloth along the screen's side and top edges, which reaches
// from the screen towards the golfer.
func returns(s plan.Screen) []Surface {
	right, left, bottom, top := s.Edges()
	var out []Surface
	add := func(name string, depth float64, lo, hi geom.Vec) {
		if depth > 0 {
			lo.X, hi.X = s.X-depth, s.X
			out = append(out, Surface{Name: name, Kind: Return, Box: geom.Box{Min: lo, Max: hi}})
		}
	}
	add("left return", s.SideReturn, geom.Vec{Y: left, Z: bottom}, geom.Vec{Y: left + clothThickness, Z: top})
	add("right return", s.SideReturn, geom.Vec{Y: right - clothThickness, Z: bottom}, geom.Vec{Y: right, Z: top})
	add("top return", s.TopReturn, geom.Vec{Y: right, Z: top}, geom.Vec{Y: left, Z: top + clothThickness})
	return out
}
