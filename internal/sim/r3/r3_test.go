package r3

import (
	"math"
	"math/rand/v2"
	"testing"

	gonum "gonum.org/v1/gonum/spatial/r3"
)

// same compares bit for bit, and takes every NaN for every other.
func same(a, b float64) bool {
	return math.Float64bits(a) == math.Float64bits(b) || math.IsNaN(a) && math.IsNaN(b)
}

func compare(t *testing.T, name string, got Vec, want gonum.Vec) {
	t.Helper()
	if !same(got.X, want.X) || !same(got.Y, want.Y) || !same(got.Z, want.Z) {
		t.Errorf("%s = %v, want gonum's %v", name, got, want)
	}
}

func compareNumber(t *testing.T, name string, got, want float64) {
	t.Helper()
	if !same(got, want) {
		t.Errorf("%s = %v, want gonum's %v", name, got, want)
	}
}

func TestLikeGonum(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	special := []float64{0, math.Copysign(0, -1), 1, -1, 1e200, 1e-200, math.Inf(1), math.NaN()}
	component := func() float64 {
		if random.IntN(3) == 0 {
			return special[random.IntN(len(special))]
		}
		return random.NormFloat64()
	}
	for range 2000 {
		p, q, f := Vec{component(), component(), component()}, Vec{component(), component(), component()}, component()
		a, b := gonum.Vec(p), gonum.Vec(q)
		compare(t, "Add", Add(p, q), gonum.Add(a, b))
		compare(t, "Sub", Sub(p, q), gonum.Sub(a, b))
		compare(t, "Scale", Scale(f, p), gonum.Scale(f, a))
		compare(t, "Cross", Cross(p, q), gonum.Cross(a, b))
		compare(t, "Unit", Unit(p), gonum.Unit(a))
		compareNumber(t, "Dot", Dot(p, q), gonum.Dot(a, b))
		compareNumber(t, "Norm", Norm(p), gonum.Norm(a))
		compareNumber(t, "Norm2", Norm2(p), gonum.Norm2(a))
	}
	compare(t, "Unit of zero", Unit(Vec{}), gonum.Unit(gonum.Vec{}))
}
