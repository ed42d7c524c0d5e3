package geom

import (
	"math"
	"math/rand/v2"
	"testing"

	"wideberth/internal/fuzzed"
)

const (
	// exact (m) is rounding in coordinates of some metres.
	exact = 1e-9
	// denseSteps is how finely brute force walks along a segment.
	denseSteps = 1000
)

var cube = Box{Min: Vec{X: -1, Y: -1, Z: -1}, Max: Vec{X: 1, Y: 1, Z: 1}}

func TestBoxDistance(t *testing.T) {
	sheet := Box{Min: Vec{X: 0, Y: -1, Z: -1}, Max: Vec{X: 0, Y: 1, Z: 1}}
	point := Box{}
	for _, c := range []struct {
		name string
		box  Box
		cap  Capsule
		want float64
	}{
		{"sphere before a face", cube, Capsule{A: Vec{X: 3}, B: Vec{X: 3}, R: 0.5}, 1.5},
		{"sphere off an edge", cube, Capsule{A: Vec{X: 2, Y: 2}, B: Vec{X: 2, Y: 2}, R: 0.25}, math.Sqrt2 - 0.25},
		{"sphere off a corner", cube, Capsule{A: Vec{X: 2, Y: 2, Z: 2}, B: Vec{X: 2, Y: 2, Z: 2}}, math.Sqrt(3)},
		{"segment skew to an edge", cube, Capsule{A: Vec{X: 3, Y: 1, Z: -4}, B: Vec{X: 1, Y: 3, Z: 4}, R: 0.1}, math.Sqrt2 - 0.1},
		{"along a face", cube, Capsule{A: Vec{X: 2, Y: -5}, B: Vec{X: 2, Y: 5}, R: 0.5}, 0.5},
		{"radius past a face", cube, Capsule{A: Vec{X: 1.25}, B: Vec{X: 4}, R: 0.5}, -0.25},
		{"grazing an edge", cube, Capsule{A: Vec{X: 2, Y: 0}, B: Vec{X: 0, Y: 2}, R: 0.1}, -0.1},
		{"just past an edge", cube, Capsule{A: Vec{X: 1.9, Y: 0}, B: Vec{X: 0, Y: 1.9}, R: 0.1}, -0.1 - 0.1/math.Sqrt2},
		{"end in the box", cube, Capsule{A: Vec{X: 0.5}, B: Vec{X: 3}, R: 0.25}, -0.75},
		{"sphere in the middle", cube, Capsule{R: 0.25}, -1.25},
		{"through a sheet", sheet, Capsule{A: Vec{X: -0.25}, B: Vec{X: 2}, R: 0.1}, -0.35},
		{"before a sheet", sheet, Capsule{A: Vec{X: 0.25}, B: Vec{X: 2}, R: 0.1}, 0.15},
		{"sphere on a point", point, Capsule{R: 0.1}, -0.1},
		{"segment past a point", point, Capsule{A: Vec{X: -1, Y: 1}, B: Vec{X: 1, Y: 1}, R: 0.25}, 0.75},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, onBox, onCapsule := c.box.Distance(c.cap)
			if math.Abs(d-c.want) > exact {
				t.Errorf("Distance = %.9f, want %.9f (%g)", d, c.want, exact)
			}
			if got := c.box.PointDistance(onBox); got > exact {
				t.Errorf("onBox = %v lies %g off the box", onBox, got)
			}
			if got := Norm(along(onCapsule, -1, onBox)); got > math.Abs(d)+exact {
				t.Errorf("|onCapsule − onBox| = %g, want at most %g", got, math.Abs(d))
			}
		})
	}
}

// denseDistance walks along the segment; it is only the distance apart.
func denseDistance(b Box, c Capsule) float64 {
	d := math.Inf(1)
	for i := range denseSteps + 1 {
		d = min(d, b.PointDistance(Lerp(c.A, c.B, float64(i)/denseSteps)))
	}
	return d - c.R
}

// noise is by how much (m) a distance may be off where segment and box are so far apart.
// The nearest point is where the slope of the squared distance is 0, which is known to the
// last places of coordinates of some metres times a length of as many (m²).
func noise(gap float64) float64 { return 1e-13 / math.Abs(gap) }

// nearly is noise, which where they all but touch is no more than its root.
func nearly(gap float64) float64 { return min(noise(gap), 4.5e-7) }

// checkDistance holds a kernel against brute force and against properties that
// any signed distance has.
func checkDistance(t *testing.T, b Box, c Capsule) {
	t.Helper()
	d, onBox, onCapsule := b.Distance(c)
	length := Norm(along(c.B, -1, c.A))
	near := exact + nearly(d+c.R)
	// Brute force cannot tell grazing from crossing a sheet between two steps.
	switch dense, tol := denseDistance(b, c), length/denseSteps+exact; {
	case dense+c.R > tol:
		if d > dense+near || d < dense-tol {
			t.Errorf("%+v.Distance(%+v) = %.9f, want %.9f (%g)", b, c, d, dense, tol)
		}
		if got := Norm(along(onCapsule, -1, onBox)); math.Abs(got-math.Abs(d)) > exact {
			t.Errorf("%+v.Distance(%+v) = %.9f, but its points are %.9f apart", b, c, d, got)
		}
	case d > dense+near:
		t.Errorf("%+v.Distance(%+v) = %.9f, want at most %.9f", b, c, d, dense)
	}

	// The separation takes the capsule out of the box and no less does.
	s := b.Separate(c)
	// Its direction turns all of a box and a capsule of some metres.
	turned := exact
	if gap := d + c.R; gap >= touching {
		turned += 10 * noise(gap)
	}
	if got := c.Reach(s.N) - b.Support(s.N); math.Abs(got-s.D) > turned {
		t.Errorf("%+v, %+v: reach − support along N = %.9f, want %.9f", b, c, got, s.D)
	}
	if math.Abs(Norm(s.N)-1) > exact {
		t.Errorf("%+v, %+v: |N| = %v", b, c, Norm(s.N))
	}
	if d < 0 {
		out := Capsule{A: along(c.A, -d, s.N), B: along(c.B, -d, s.N), R: c.R}
		if got, _, _ := b.Distance(out); math.Abs(got) > turned+nearly(c.R) {
			t.Errorf("%+v, %+v: moved out by %.9f the distance is %.9f, want 0", b, c, -d, got)
		}
	}
	if g := b.Gap(c.Bounds()); g > d+exact {
		t.Errorf("%+v.Gap of the bounds of %+v = %.9f, above the distance %.9f", b, c, g, d)
	}
	if got, _, _ := b.Distance(Capsule{A: c.B, B: c.A, R: c.R}); math.Abs(got-d) > near {
		t.Errorf("%+v.Distance(%+v) = %.9f, ends swapped %.9f", b, c, d, got)
	}
	const normal = 0x1p-1022 // below it numbers lose their last bits one after another
	if got, _, _ := b.MirrorY().Distance(c.MirrorY()); math.Abs(got-d) >= normal {
		t.Errorf("%+v.Distance(%+v) = %v, mirrored %v, want the same to the last bit", b, c, d, got)
	}
	move := Vec{X: 0.7, Y: -1.3, Z: 2.1}
	moved := Capsule{A: along(c.A, -1, move), B: along(c.B, -1, move), R: c.R}
	if got, _, _ := b.Moved(move).Distance(moved); math.Abs(got-d) > near {
		t.Errorf("%+v.Distance(%+v) = %.9f, moved %.9f", b, c, d, got)
	}
}

// TestDistanceProperties also checks that the distance changes by no more than
// the ends move, inside the box as well: the continuous search rests on it.
func TestDistanceProperties(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	for range 400 {
		b, c := randomBox(rnd), randomCapsule(rnd, 1.5)
		checkDistance(t, b, c)
		da, db := randomVec(rnd, 0.1), randomVec(rnd, 0.1)
		near := Capsule{A: along(c.A, 1, da), B: along(c.B, 1, db), R: c.R}
		d0, _, _ := b.Distance(c)
		d1, _, _ := b.Distance(near)
		if most := max(Norm(da), Norm(db)); math.Abs(d1-d0) > most+exact {
			t.Errorf("%+v: distance from %.9f of %+v to %.9f of %+v, a change above %.9f", b, d0, c, d1, near, most)
		}
	}
}

func FuzzBoxCapsule(engine *testing.F) {
	f := fuzzed.New(engine)
	f.Add(1.0, 1.0, 1.0, 3.0, 0.0, 0.0, 3.0, 0.0, 0.0, 0.5)
	f.Add(0.0, 1.0, 1.0, -0.25, 0.0, 0.0, 2.0, 0.0, 0.0, 0.1)
	f.Add(1.0, 1.0, 0.0, 2.0, 0.0, 0.0, 0.0, 2.0, 0.0, 0.0)
	f.Add(0.0, 0.0, 0.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 0.2)
	f.Fuzz(func(t *testing.T, hx, hy, hz, ax, ay, az, bx, by, bz, r float64) {
		const room = 20 // m, beyond which exact is not the size of rounding
		for _, v := range []float64{hx, hy, hz, ax, ay, az, bx, by, bz, r} {
			if !(math.Abs(v) <= room) {
				return
			}
		}
		half := Vec{X: math.Abs(hx), Y: math.Abs(hy), Z: math.Abs(hz)}
		b := Box{Min: along(Vec{}, -1, half), Max: half}
		checkDistance(t, b, Capsule{A: Vec{X: ax, Y: ay, Z: az}, B: Vec{X: bx, Y: by, Z: bz}, R: math.Abs(r)})
	})
}
