// Package shape holds the vectors of the scene and the solids that golfer, club and
// ball are made of. It knows nothing of the viewer.
package shape

import (
	"math"

	"wideberth/internal/render/scene/wire"
)

// Vec is a point or direction in room coordinates (m). It is a struct, where
// wire.Vec is an array, because the compiler keeps small structs in registers.
type Vec struct{ X, Y, Z float32 }

// XYZ is the vector of these components.
func XYZ(x, y, z float32) Vec { return Vec{X: x, Y: y, Z: z} }

// Of is a recording's vector.
func Of(v wire.Vec) Vec { return Vec{v[0], v[1], v[2]} }

// Add is a + b.
func (a Vec) Add(b Vec) Vec { return Vec{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }

// Sub is a − b.
func (a Vec) Sub(b Vec) Vec { return Vec{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }

// Mul is s·a.
func (a Vec) Mul(s float32) Vec { return Vec{a.X * s, a.Y * s, a.Z * s} }

// Along is a + s·b.
func (a Vec) Along(b Vec, s float32) Vec { return Vec{a.X + s*b.X, a.Y + s*b.Y, a.Z + s*b.Z} }

// Dot is the scalar product.
func (a Vec) Dot(b Vec) float32 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

// Norm is the length.
func (a Vec) Norm() float32 { return Sqrt(a.Dot(a)) }

// Lerp is a at 0, b at 1 and straight between.
func (a Vec) Lerp(b Vec, t float32) Vec { return a.Along(b.Sub(a), t) }

// Cross is the vector product.
func (a Vec) Cross(b Vec) Vec {
	return Vec{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// Unit is a of length 1; the zero vector stays zero.
func (a Vec) Unit() Vec {
	n := a.Norm()
	if n == 0 {
		return Vec{}
	}
	return a.Mul(1 / n)
}

// Across is the unit vector square to the unit vector n that lies nearest to a;
// without one, any that is square to n.
func (a Vec) Across(n Vec) Vec {
	if p := a.Along(n, -a.Dot(n)); p.Norm() > 1e-4 {
		return p.Unit()
	}
	u, _ := Perpendiculars(n)
	return u
}

// Perpendiculars are two unit vectors that make a right-handed base with the
// unit vector n.
func Perpendiculars(n Vec) (u, v Vec) {
	ref := Vec{0, 0, 1}
	if Abs(n.Z) > 0.9 {
		ref = Vec{1, 0, 0}
	}
	u = ref.Cross(n).Unit()
	return u, n.Cross(u)
}

// Sqrt is the square root.
func Sqrt(x float32) float32 { return float32(math.Sqrt(float64(x))) }

// Abs is the magnitude.
func Abs(x float32) float32 { return float32(math.Abs(float64(x))) }
