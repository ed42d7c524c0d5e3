package drawing

import "wideberth/internal/sim/contour"

// Raster is a map over the floor: one number per cell, each for the middle of
// its cell, row by row along x.
type Raster struct {
	NX, NY int
	Cell   Point // m
	Origin Point // middle of the first cell, m
}

// Outline follows where inside is negative or zero, as rings in room coordinates, m,
// rounded to 1 mm: outlines against the clock, holes with it. inside is asked
// for every cell and should be in metres or another even measure, since the
// line runs straight between the middles of two cells. Specks are left out.
func (r Raster) Outline(inside func(cell int) float64) [][]Point {
	nx, ny := r.NX+2, r.NY+2
	depth := make([]float64, nx*ny)
	for k := range depth {
		i, j := k%nx, k/nx
		if i == 0 || j == 0 || i > r.NX || j > r.NY {
			depth[k] = 1 // the rim is outside
			continue
		}
		depth[k] = inside((j-1)*r.NX + i - 1)
	}
	traced := contour.Trace(nx, ny, depth)
	loops := make([][]Point, len(traced))
	for i, t := range traced {
		for _, p := range t {
			loops[i] = append(loops[i], Point{r.along(0, p[0], r.NX), r.along(1, p[1], r.NY)})
		}
	}
	out := append([][]Point{}, simplifyAll(loops)...) // none is a list too
	for _, loop := range out {
		for i := range loop {
			loop[i] = round(loop[i])
		}
	}
	return out
}

// along takes a coordinate of the traced grid, whose node 1 is the first of n cells,
// into the room. The rim lies on the outer edge of the last cells.
func (r Raster) along(axis int, v float64, n int) float64 {
	return r.Origin[axis] + min(max(v-1, -0.5), float64(n)-0.5)*r.Cell[axis]
}
