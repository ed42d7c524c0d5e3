package ball

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
)

// Kind sorts what a ball can meet.
type Kind string

// The kinds. A Gap is whatever is met behind the plane of the screen by a ball
// that the screen and its returns did not stop.
const (
	KindScreen     Kind = "screen"
	KindSideReturn Kind = "side return"
	KindTopReturn  Kind = "top return"
	KindFrame      Kind = "frame"
	KindWall       Kind = "wall"
	KindCeiling    Kind = "ceiling"
	KindSlope      Kind = "slope"
	KindSolid      Kind = "solid"
	KindHung       Kind = "hung"
	KindFloor      Kind = "floor"
	KindGap        Kind = "gap"
	KindGolfer     Kind = "golfer's plane"
	KindNone       Kind = "nothing" // the flight ran out of time first
)

// Target is one convex thing that a ball can meet: a solid box (flat for cloth)
// or, with Box nil, the far side of a half-space.
type Target struct {
	Name     string
	Kind     Kind
	Material Material
	Half     geom.Halfspace
	Box      *geom.Box
}

// gap returns the distance (m) from the surface of a ball at p to the target,
// negative when they overlap, and the unit normal from the target to the ball.
func (t *Target) gap(p geom.Vec) (float64, geom.Vec) {
	if t.Box == nil {
		return r3.Dot(t.Half.N, p) - t.Half.D - Radius, t.Half.N
	}
	b := t.Box
	q := b.Clamp(p)
	n := r3.Sub(p, q)
	if d := geom.Norm(n); d > 0 {
		return d - Radius, r3.Scale(1/d, n)
	}
	// The centre is inside: out by the nearest face.
	depth, out := math.Inf(1), geom.Vec{}
	for _, f := range [6]struct {
		d float64
		n geom.Vec
	}{
		{p.X - b.Min.X, geom.Vec{X: -1}}, {b.Max.X - p.X, geom.Vec{X: 1}},
		{p.Y - b.Min.Y, geom.Vec{Y: -1}}, {b.Max.Y - p.Y, geom.Vec{Y: 1}},
		{p.Z - b.Min.Z, geom.Vec{Z: -1}}, {b.Max.Z - p.Z, geom.Vec{Z: 1}},
	} {
		if f.d < depth {
			depth, out = f.d, f.n
		}
	}
	return -depth - Radius, out
}

// Contact is the end of a flight.
type Contact struct {
	Surface  string     `json:"surface"`            // name of the target
	Kind     Kind       `json:"kind"`               //
	Beside   string     `json:"beside,omitempty"`   // of a gap: the side of the screen it was passed on
	Point    [3]float64 `json:"point"`              // where ball and target touch, m
	Time     float64    `json:"time"`               // s after launch
	Speed    float64    `json:"speed"`              // m/s on arrival
	Angle    float64    `json:"angle"`              // rad between arrival and the surface's normal: 0 is head-on
	Caught   bool       `json:"caught"`             // met the golfer's side of the screen or of a return
	Short    float64    `json:"short,omitempty"`    // how far before the plane of the screen the ball was (m, negative behind it)
	Arrival  State      `json:"-"`                  // motion at contact
	Normal   geom.Vec   `json:"-"`                  // from the target to the ball
	Material Material   `json:"material,omitempty"` // of the surface
}

func contactOf(t *Target, s State, time float64) Contact {
	_, n := t.gap(s.P)
	speed := geom.Norm(s.V)
	touch := r3.Sub(s.P, r3.Scale(Radius, n))
	angle := 0.0
	if speed > 0 {
		angle = math.Acos(min(1, math.Abs(r3.Dot(s.V, n))/speed))
	}
	return Contact{
		Surface: t.Name, Kind: t.Kind, Material: t.Material,
		Point: [3]float64{touch.X, touch.Y, touch.Z},
		Time:  time, Speed: speed, Angle: angle,
		Arrival: s, Normal: n,
	}
}
