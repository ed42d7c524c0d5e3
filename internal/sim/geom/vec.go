package geom

import "math"

// Dot returns a·b.
func Dot(a, b Vec) float64 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

// Norm returns |v| by a plain square root: r3.Norm guards against overflow
// with two hypotenuses, which coordinates of a room do not need and a kernel
// called millions of times cannot afford.
func Norm(v Vec) float64 { return math.Sqrt(v.X*v.X + v.Y*v.Y + v.Z*v.Z) }

// Lerp returns the point at share s of the way from a (s = 0) to b (s = 1).
func Lerp(a, b Vec, s float64) Vec {
	return Vec{X: a.X + s*(b.X-a.X), Y: a.Y + s*(b.Y-a.Y), Z: a.Z + s*(b.Z-a.Z)}
}

// along returns p + k·n.
func along(p Vec, k float64, n Vec) Vec {
	return Vec{X: p.X + k*n.X, Y: p.Y + k*n.Y, Z: p.Z + k*n.Z}
}

// between limits v to [lo, hi] without the NaN rules of the min and max
// builtins, which cost more than the comparison itself.
func between(v, lo, hi float64) float64 {
	if v < lo {
		return lo
	}
	if v > hi {
		return hi
	}
	return v
}

// Hypot returns √(x² + y²) by a plain square root, which unlike the standard
// library's rounds the same on every machine: the same plan must give the same
// bytes in the browser and outside.
func Hypot(x, y float64) float64 { return math.Sqrt(x*x + y*y) }
