package geom

import (
	"math"
	"math/rand/v2"
)

func randomVec(rnd *rand.Rand, size float64) Vec {
	c := func() float64 { return size * (2*rnd.Float64() - 1) }
	return Vec{X: c(), Y: c(), Z: c()}
}

func randomUnit(rnd *rand.Rand) Vec {
	for {
		v := randomVec(rnd, 1)
		if n := Norm(v); n > 0.1 && n <= 1 {
			return Vec{X: v.X / n, Y: v.Y / n, Z: v.Z / n}
		}
	}
}

// randomCapsule returns a part of a golfer or a club: a sphere now and then.
func randomCapsule(rnd *rand.Rand, size float64) Capsule {
	c := Capsule{A: randomVec(rnd, size), R: 0.005 + 0.2*rnd.Float64()}
	c.B = along(c.A, 1.2*rnd.Float64(), randomUnit(rnd))
	if rnd.IntN(8) == 0 {
		c.B = c.A
	}
	return c
}

// randomBox returns a box around the origin of 1 cm to 3 m an edge.
func randomBox(rnd *rand.Rand) Box {
	at := randomVec(rnd, 0.5)
	half := Vec{
		X: 0.005 * math.Pow(300, rnd.Float64()),
		Y: 0.005 * math.Pow(300, rnd.Float64()),
		Z: 0.005 * math.Pow(300, rnd.Float64()),
	}
	return Box{Min: along(at, -1, half), Max: along(at, 1, half)}
}
