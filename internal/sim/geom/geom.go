// Package geom holds the few shapes that golfer, club and room are made of:
// capsules, half-spaces and boxes, in metres, on the vectors of package r3.
package geom

import "wideberth/internal/sim/r3"

// Vec is a point or a direction, metres.
type Vec = r3.Vec

// Capsule is all points within R of the segment from A to B. A == B is a sphere.
type Capsule struct {
	A, B Vec
	R    float64
}

// Halfspace is the free side of a flat surface: the points p with N·p ≥ D.
// N is a unit vector that points into the free side.
type Halfspace struct {
	N Vec
	D float64
}

// Box is an axis-aligned solid.
type Box struct {
	Min, Max Vec
}
