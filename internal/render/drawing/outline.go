package drawing

// Raster is a map over the floor: one number per cell, each for the middle of
// its cell, row by row along x.
type Raster struct {
	NX, NY int
	Cell   Point // m
	Origin Point // middle of the first cell, m
}

// Outline follows where inside is negative, as rings in room coordinates, m,
// rounded to 1 mm: outlines against the clock, holes with it. inside is asked
// for every cell and should be in metres or another even measure, since the
// line runs straight between the middles of two cells. Specks are left out.
func (r Raster) Outline(inside func(cell int) float64) [][]Point {
	f := &field{nx: r.NX + 2, ny: r.NY + 2}
	f.d = make([]float64, f.nx*f.ny)
	for j := range f.ny {
		for i := range f.nx {
			k := j*f.nx + i
			if i == 0 || j == 0 || i > r.NX || j > r.NY {
				f.d[k] = 1 // the rim is outside
				continue
			}
			f.d[k] = inside((j-1)*r.NX + i - 1)
		}
	}
	loops := f.contours()
	for _, loop := range loops {
		for i, p := range loop {
			loop[i] = Point{r.along(0, p[0], r.NX), r.along(1, p[1], r.NY)}
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

// along takes a coordinate of the field, whose node 1 is the first of n cells,
// into the room. The rim lies on the outer edge of the last cells.
func (r Raster) along(axis int, v float64, n int) float64 {
	return r.Origin[axis] + min(max(v/cell-1, -0.5), float64(n)-0.5)*r.Cell[axis]
}
