package record

import (
	"math"

	"wideberth/internal/sim/geom"
)

// square is a square patch of the half-space's plane, reach metres to each
// side, counter-clockwise as seen from the free side.
func square(h geom.Halfspace, reach float64) []geom.Vec {
	ref := geom.Vec{Z: 1}
	if math.Abs(h.N.Z) > 0.9 {
		ref = geom.Vec{X: 1}
	}
	u := unit(cross(ref, h.N))
	v := cross(h.N, u)
	at := func(a, b float64) geom.Vec {
		return geom.Vec{
			X: h.N.X*h.D + (u.X*a+v.X*b)*reach,
			Y: h.N.Y*h.D + (u.Y*a+v.Y*b)*reach,
			Z: h.N.Z*h.D + (u.Z*a+v.Z*b)*reach,
		}
	}
	return []geom.Vec{at(-1, -1), at(1, -1), at(1, 1), at(-1, 1)}
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

func cross(a, b geom.Vec) geom.Vec {
	return geom.Vec{X: a.Y*b.Z - a.Z*b.Y, Y: a.Z*b.X - a.X*b.Z, Z: a.X*b.Y - a.Y*b.X}
}

func unit(v geom.Vec) geom.Vec {
	k := 1 / geom.Norm(v)
	return geom.Vec{X: v.X * k, Y: v.Y * k, Z: v.Z * k}
}

// area of a convex polygon, m²; 0 when it has fewer than three corners.
func area(p []geom.Vec) float64 {
	if len(p) < 3 {
		return 0
	}
	var n geom.Vec
	for i := 2; i < len(p); i++ {
		a, b := p[i-1], p[i]
		c := cross(geom.Vec{X: a.X - p[0].X, Y: a.Y - p[0].Y, Z: a.Z - p[0].Z}, geom.Vec{X: b.X - p[0].X, Y: b.Y - p[0].Y, Z: b.Z - p[0].Z})
		n = geom.Vec{X: n.X + c.X, Y: n.Y + c.Y, Z: n.Z + c.Z}
	}
	return geom.Norm(n) / 2
}
