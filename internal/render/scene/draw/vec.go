package draw

import (
	"math"

	"wideberth/internal/render/scene/wire"
)

// vec is a point or direction in room coordinates (m). It is a struct, where
// wire.Vec is an array, because the compiler keeps small structs in registers.
type vec struct{ x, y, z float32 }

func fromWire(v wire.Vec) vec { return vec{v[0], v[1], v[2]} }

func (a vec) add(b vec) vec             { return vec{a.x + b.x, a.y + b.y, a.z + b.z} }
func (a vec) sub(b vec) vec             { return vec{a.x - b.x, a.y - b.y, a.z - b.z} }
func (a vec) mul(s float32) vec         { return vec{a.x * s, a.y * s, a.z * s} }
func (a vec) dot(b vec) float32         { return a.x*b.x + a.y*b.y + a.z*b.z }
func (a vec) norm() float32             { return sqrt(a.dot(a)) }
func (a vec) lerp(b vec, t float32) vec { return a.add(b.sub(a).mul(t)) }

func (a vec) cross(b vec) vec {
	return vec{a.y*b.z - a.z*b.y, a.z*b.x - a.x*b.z, a.x*b.y - a.y*b.x}
}

// unit is a of length 1; the zero vector stays zero.
func (a vec) unit() vec {
	n := a.norm()
	if n == 0 {
		return vec{}
	}
	return a.mul(1 / n)
}

// perpendiculars are two unit vectors that make a right-handed base with the
// unit vector n.
func perpendiculars(n vec) (u, v vec) {
	ref := vec{0, 0, 1}
	if abs(n.z) > 0.9 {
		ref = vec{1, 0, 0}
	}
	u = ref.cross(n).unit()
	return u, n.cross(u)
}

func sqrt(x float32) float32 { return float32(math.Sqrt(float64(x))) }
func abs(x float32) float32  { return float32(math.Abs(float64(x))) }

// polygonNormal is the unit normal of a counter-clockwise polygon (Newell's
// method, which needs no particular corner to be convex); zero for a degenerate
// one.
func polygonNormal(p []vec) vec {
	var n vec
	for i, a := range p {
		b := p[(i+1)%len(p)]
		n.x += (a.y - b.y) * (a.z + b.z)
		n.y += (a.z - b.z) * (a.x + b.x)
		n.z += (a.x - b.x) * (a.y + b.y)
	}
	return n.unit()
}

func centroid(p []vec) vec {
	var c vec
	for _, q := range p {
		c = c.add(q)
	}
	return c.mul(1 / float32(max(1, len(p))))
}
