package drawing

import (
	"math"
	"testing"
)

// The outline of a disc on a grid encloses the disc's area, that of everything
// is the floor itself, and a ring has a hole.
func TestOutline(t *testing.T) {
	r := Raster{NX: 100, NY: 60, Cell: Point{0.05, 0.04}, Origin: Point{0.025, 0.02}}
	from := func(k int, x, y float64) float64 {
		return math.Hypot(r.Origin[0]+float64(k%r.NX)*r.Cell[0]-x, r.Origin[1]+float64(k/r.NX)*r.Cell[1]-y)
	}
	cases := []struct {
		name   string
		inside func(k int) float64
		rings  int
		area   float64
	}{
		{"a disc", func(k int) float64 { return from(k, 2.5, 1.2) - 0.8 }, 1, math.Pi * 0.64},
		{"a ring", func(k int) float64 { return math.Abs(from(k, 2.5, 1.2)-0.8) - 0.2 }, 2, math.Pi * (1 - 0.36)},
		{"everything", func(int) float64 { return -1 }, 1, 5 * 2.4},
		{"nothing", func(int) float64 { return 1 }, 0, 0},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			rings := r.Outline(c.inside)
			sum := 0.0
			for _, ring := range rings {
				sum += area(ring)
			}
			const tol = 0.01 // share of the area: chords of cells of 5 cm
			if len(rings) != c.rings || math.Abs(sum-c.area) > tol*c.area {
				t.Errorf("Outline = %d rings round %.3f m², want %d round %.3f m² (%.0f %%)", len(rings), sum, c.rings, c.area, 100*tol)
			}
		})
	}
}
