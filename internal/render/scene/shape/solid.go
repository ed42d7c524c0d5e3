package shape

import "math"

// Axis is the axis of a capsule, a stretch of a straight line.
type Axis struct{ A, B Vec }

// Middle is half way along the axis.
func (s Axis) Middle() Vec { return s.A.Lerp(s.B, 0.5) }

// Solid is a closed body through a row of rings, as a turner makes one: the first
// ring and the last have no size and close it.
type Solid struct {
	Rings   []Ring
	Section *Section
	// At and Size place the solid among the others by depth: its middle and how far
	// it reaches from there towards the viewer, m.
	At   Vec
	Size float32
	Rod  bool // so long and thin that it is placed piece by piece
}

// Ring is one slice through a solid: at an angle θ of its section it lies at
// Centre + cos θ·U + sin θ·V, of the lower half Under times the V.
type Ring struct {
	Centre, U, V Vec
	Under        float32
	Tone         Tone
	Flat         bool // the slice itself is the surface here: the end of something cut off
}

// Round is a ring with equal halves.
func Round(centre, u, v Vec, tone Tone) Ring {
	return Ring{Centre: centre, U: u, V: v, Under: 1, Tone: tone}
}

// Point is the place of the ring at one direction of its section.
func (r *Ring) Point(cos, sin float32) Vec {
	if sin < 0 {
		sin *= r.Under
	}
	return r.Centre.Along(r.U, cos).Along(r.V, sin)
}

// Between is the ring a share of the way to another.
func (r *Ring) Between(q *Ring, t float32) Ring {
	return Ring{Centre: r.Centre.Lerp(q.Centre, t), U: r.U.Lerp(q.U, t), V: r.V.Lerp(q.V, t), Under: r.Under + (q.Under-r.Under)*t, Tone: r.Tone}
}

// Turned is +1 when the solid's sections run counter-clockwise as seen from its
// last ring, −1 when they run the other way, as they do in a mirror.
func (s *Solid) Turned() float32 {
	way := s.Rings[len(s.Rings)-1].Centre.Sub(s.Rings[0].Centre)
	sum := float32(0)
	for i := range s.Rings {
		sum += s.Rings[i].U.Cross(s.Rings[i].V).Dot(way)
	}
	if sum < 0 {
		return -1
	}
	return 1
}

// Section is the outline of rings: the directions in which their points lie.
type Section struct{ Cos, Sin []float32 }

// Oval is a section of n points on an ellipse.
func Oval(n int) *Section { return section(n, 1) }

// Boxy is a section of n points on an ellipse with full corners.
func Boxy(n int) *Section { return section(n, 0.62) }

func section(n int, power float64) *Section {
	s := &Section{}
	full := func(x float64) float32 { return float32(math.Copysign(math.Pow(math.Abs(x), power), x)) }
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		s.Cos, s.Sin = append(s.Cos, full(cos)), append(s.Sin, full(sin))
	}
	return s
}

// Tone says what a ring is made of.
type Tone uint8

// The tones of golfer, club and ball.
const (
	Shirt Tone = iota
	Trousers
	Skin
	Glove
	Dark // cap, belt, shoes
	Toe  // of a shoe
	Grip
	Steel
	Clubhead
	Face // of the clubhead, which meets the ball
	White
	NumTones
)

// Ball fills the solid with a ball of the given tone.
func (s *Solid) Ball(centre Vec, r float32, tone Tone) {
	const steps = 4
	s.At, s.Size = centre, r
	s.Rings = s.Rings[:0]
	for i := range 2*steps + 1 {
		sin, cos := math.Sincos(math.Pi / 2 * float64(i) / steps)
		s.Rings = append(s.Rings, Round(centre.Along(Vec{Z: 1}, -r*float32(cos)), Vec{X: r * float32(sin)}, Vec{Y: r * float32(sin)}, tone))
	}
}
