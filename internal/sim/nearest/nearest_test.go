package nearest

import (
	"math"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
)

// arch is bent nearly as a circle about the origin is.
func arch(x float64) float64 { return 8 - 0.055*(x-1)*(x-1) }

// leastOf is the least of f between −5 and 5.
func leastOf(f func(float64) float64) float64 {
	least := math.Inf(1)
	for x := -5.0; x < 5; x += 1e-4 {
		least = min(least, f(x))
	}
	return least
}

// mostAsked is how often a function may be asked until the point is found: a dozen of
// times a step.
const mostAsked = 140

func TestOn(t *testing.T) {
	for _, tt := range []struct {
		name string
		miss func(geom.Vec) float64
		want float64 // how near the origin comes; −1: miss is never zero
	}{
		{"a plane", func(u geom.Vec) float64 { return 0.06 * (u.X + 2*u.Y - 2*u.Z - 9) }, 3},
		{"a sphere from inside", func(u geom.Vec) float64 { return geom.Norm(r3.Sub(u, geom.Vec{X: 1})) - 4 }, 3},
		{"a sphere from outside", func(u geom.Vec) float64 { return geom.Norm(r3.Sub(u, geom.Vec{Z: 9})) - 1 }, 8},
		{"bent round the origin", func(u geom.Vec) float64 { return 0.05 * (u.Z + 0.04*(u.X*u.X+u.Y*u.Y) - 8) }, 8},
		{"bent round a point beside the origin", func(u geom.Vec) float64 { return 0.05 * (u.Z - arch(u.X)) }, leastOf(func(x float64) float64 { return math.Hypot(x, arch(x)) })},
		{"a saddle", func(u geom.Vec) float64 { return 0.06 * (u.Z - 5 + 0.03*(u.X*u.X-u.Y*u.Y)) }, 5},
		{"through the origin", func(u geom.Vec) float64 { return u.X + u.Y*u.Y }, 0},
		{"nowhere", func(u geom.Vec) float64 { return 1 + geom.Dot(u, u) }, -1},
		{"nowhere, level", func(geom.Vec) float64 { return 1 }, -1},
	} {
		asked := 0
		at, missed := On(func(u geom.Vec) float64 { asked++; return tt.miss(u) })
		if math.Abs(missed-tt.miss(at)) > 1e-12 {
			t.Errorf("%s: what it misses at %v is %g, said to be %g", tt.name, at, tt.miss(at), missed)
		}
		if tt.want < 0 {
			if math.Abs(missed) < 0.5 {
				t.Errorf("%s: misses %g at %v, want at least what the function does", tt.name, missed, at)
			}
			continue
		}
		if asked > mostAsked {
			t.Errorf("%s: asked %d times, want at most %d", tt.name, asked, mostAsked)
		}
		if math.Abs(missed) > 1e-9 || math.Abs(geom.Norm(at)-tt.want) > 1e-5 {
			t.Errorf("%s: %v, %g away, missed by %g; want %g away", tt.name, at, geom.Norm(at), missed, tt.want)
		}
	}
}
