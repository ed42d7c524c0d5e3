package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestHalfspaceDistance(t *testing.T) {
	ceiling := Halfspace{N: Vec{Z: -1}, D: -2.5}
	slope := Halfspace{N: Vec{Y: -0.6, Z: -0.8}, D: -2}
	for _, c := range []struct {
		name  string
		plane Halfspace
		cap   Capsule
		want  float64
		on    Vec
	}{
		{"under the ceiling", ceiling, Capsule{A: Vec{Z: 1}, B: Vec{X: 1, Z: 2}, R: 0.1}, 0.4, Vec{X: 1, Z: 2.1}},
		{"past the ceiling", ceiling, Capsule{A: Vec{X: 3, Z: 2.75}, B: Vec{Z: 2}, R: 0.1}, -0.35, Vec{X: 3, Z: 2.85}},
		{"sphere", ceiling, Capsule{A: Vec{Z: 2}, B: Vec{Z: 2}, R: 0.5}, 0, Vec{Z: 2.5}},
		{"under a slope", slope, Capsule{A: Vec{}, B: Vec{Y: 1, Z: 1}, R: 0.5}, 0.1, Vec{Y: 1.3, Z: 1.4}},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, on := c.plane.Nearest(c.cap)
			if math.Abs(d-c.want) > exact || d != c.plane.Distance(c.cap) {
				t.Errorf("Nearest = %v, Distance = %v, want %v (%g)", d, c.plane.Distance(c.cap), c.want, exact)
			}
			if Norm(along(on, -1, c.on)) > exact {
				t.Errorf("Nearest point = %v, want %v", on, c.on)
			}
			if got := c.plane.PointDistance(on); math.Abs(got-d) > exact {
				t.Errorf("PointDistance of the nearest point = %v, want %v", got, d)
			}
			if got := c.plane.PointDistance(c.plane.Project(on)); math.Abs(got) > exact {
				t.Errorf("projected point is %v off the plane", got)
			}
		})
	}
}

func TestHalfspaceProperties(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 6))
	for range 500 {
		h, c := Halfspace{N: randomUnit(rnd), D: rnd.Float64()}, randomCapsule(rnd, 2)
		d := h.Distance(c)
		if got := h.MirrorY().Distance(c.MirrorY()); got != d {
			t.Errorf("%+v.Distance(%+v) = %v, mirrored %v, want the same to the last bit", h, c, d, got)
		}
		move := randomVec(rnd, 2)
		moved := Capsule{A: along(c.A, -1, move), B: along(c.B, -1, move), R: c.R}
		if got := h.Moved(move).Distance(moved); math.Abs(got-d) > exact {
			t.Errorf("%+v.Distance(%+v) = %v, moved %v", h, c, d, got)
		}
		if got := h.MirrorY().MirrorY(); got != h {
			t.Errorf("mirrored twice: %+v, want %+v", got, h)
		}
		if low := c.Bounds().Reach(h.N) - h.D; low > d+exact {
			t.Errorf("bounds of %+v are %v from %+v, farther than the capsule at %v", c, low, h, d)
		}
	}
}

func TestBoxes(t *testing.T) {
	b := EmptyBox().Including(Vec{X: 1, Y: 2, Z: 3}).Including(Vec{X: -1, Y: 0, Z: 4})
	if want := (Box{Min: Vec{X: -1, Z: 3}, Max: Vec{X: 1, Y: 2, Z: 4}}); b != want {
		t.Errorf("Including = %+v, want %+v", b, want)
	}
	if got := b.Union(EmptyBox()); got != b {
		t.Errorf("Union with the empty box = %+v, want %+v", got, b)
	}
	if got := b.MirrorY().MirrorY(); got != b {
		t.Errorf("mirrored twice: %+v, want %+v", got, b)
	}
	if got := EmptyBox().Gap(b); !math.IsInf(got, 1) {
		t.Errorf("Gap of the empty box = %v, want infinity", got)
	}
	if got := EmptyBox().Reach(Vec{X: 0.6, Z: 0.8}); got < 1e300 {
		t.Errorf("Reach of the empty box = %v, want beyond everything", got)
	}
	for _, c := range []struct {
		name string
		o    Box
		want float64
	}{
		{"touching", Box{Min: Vec{X: 1, Y: -1, Z: -1}, Max: Vec{X: 2, Y: 1, Z: 1}}, 0},
		{"face to face", Box{Min: Vec{X: 1.5}, Max: Vec{X: 2}}, 0.5},
		{"corner to corner", Box{Min: Vec{X: -3, Y: 3, Z: 3}, Max: Vec{X: -3, Y: 4, Z: 4}}, math.Sqrt(12)},
		{"overlapping", Box{Min: Vec{X: 0.75, Y: 0.5}, Max: Vec{X: 3, Y: 3, Z: 0.5}}, -0.25},
	} {
		if got := cube.Gap(c.o); math.Abs(got-c.want) > exact {
			t.Errorf("%s: Gap = %v, want %v", c.name, got, c.want)
		}
	}
}

func BenchmarkBoxDistance(b *testing.B) {
	c := Capsule{A: Vec{X: 1.5, Y: -0.2, Z: 0.1}, B: Vec{X: 2.1, Y: 1.3, Z: 2}, R: 0.01}
	for b.Loop() {
		cube.Distance(c)
	}
}
