// Package r3 is the algebra of vectors in space.
//
// Names, arguments and results are those of gonum's spatial/r3, bit for bit; its
// tests hold it against that. It is not that package itself because that one
// imports gonum's matrices, and with them linear algebra and package fmt: 38 kB
// more to download before the first answer.
package r3

import "math"

// Vec is a vector.
type Vec struct{ X, Y, Z float64 }

// Add returns p + q.
func Add(p, q Vec) Vec { return Vec{p.X + q.X, p.Y + q.Y, p.Z + q.Z} }

// Sub returns p − q.
func Sub(p, q Vec) Vec { return Vec{p.X - q.X, p.Y - q.Y, p.Z - q.Z} }

// Scale returns f·p.
func Scale(f float64, p Vec) Vec { return Vec{f * p.X, f * p.Y, f * p.Z} }

// Dot returns p·q.
func Dot(p, q Vec) float64 { return p.X*q.X + p.Y*q.Y + p.Z*q.Z }

// Cross returns p×q.
func Cross(p, q Vec) Vec {
	return Vec{
		p.Y*q.Z - p.Z*q.Y,
		p.Z*q.X - p.X*q.Z,
		p.X*q.Y - p.Y*q.X,
	}
}

// Norm returns |p|, without overflow of the squares on the way.
func Norm(p Vec) float64 { return math.Hypot(p.X, math.Hypot(p.Y, p.Z)) }

// Norm2 returns |p|².
func Norm2(p Vec) float64 { return Dot(p, p) }

// Unit returns the vector of length 1 along p; NaN in every component when p is
// zero.
func Unit(p Vec) Vec {
	if p == (Vec{}) {
		return Vec{math.NaN(), math.NaN(), math.NaN()}
	}
	return Scale(1/Norm(p), p)
}
