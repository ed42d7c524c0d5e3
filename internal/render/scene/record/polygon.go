package record

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
)

// square is a square patch of the half-space's plane, reach metres to each
// side, counter-clockwise as seen from the free side.
func square(h geom.Halfspace, reach float64) []geom.Vec {
	ref := geom.Vec{Z: 1}
	if math.Abs(h.N.Z) > 0.9 {
		ref = geom.Vec{X: 1}
	}
	u := r3.Scale(reach, r3.Unit(r3.Cross(ref, h.N)))
	v := r3.Cross(h.N, u)
	foot := r3.Scale(h.D, h.N)
	low, high := r3.Sub(foot, v), r3.Add(foot, v)
	return []geom.Vec{r3.Sub(low, u), r3.Add(low, u), r3.Add(high, u), r3.Sub(high, u)}
}

// clip is the part of a convex polygon on the free side of h (Sutherland &
// Hodgman, 1974).
func clip(p []geom.Vec, h geom.Halfspace) []geom.Vec {
	var out []geom.Vec
	for i, a := range p {
		b := p[(i+1)%len(p)]
		da, db := geom.Dot(h.N, a)-h.D, geom.Dot(h.N, b)-h.D
		if da >= 0 {
			out = append(out, a)
		}
		if (da > 0 && db < 0) || (da < 0 && db > 0) {
			out = append(out, geom.Lerp(a, b, da/(da-db)))
		}
	}
	return out
}

// area of a convex polygon, m²; 0 when it has fewer than three corners.
func area(p []geom.Vec) float64 {
	var twice geom.Vec
	for i := range p {
		twice = r3.Add(twice, r3.Cross(p[i], p[(i+1)%len(p)]))
	}
	return geom.Norm(twice) / 2
}
