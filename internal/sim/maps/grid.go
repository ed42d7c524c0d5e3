// Package maps draws where the tee may go, how low a thing may hang and where others
// may watch: one value for every cell of the floor, on the cautious side.
package maps

import (
	"math"

	"wideberth/internal/sim/fit"
)

// Grid is a map over the floor or the ceiling: one value per cell, each at the
// middle of its cell. Values are whole millimetres, rounded down, so that a page
// can take them as they are: row by row from the right wall (y = 0) to the left,
// in each row from the back (x = 0) to the front.
type Grid struct {
	NX     int        `json:"nx"`
	NY     int        `json:"ny"`
	Cell   [2]float64 `json:"cell"`   // size of a cell along x and y, m
	Origin [2]float64 `json:"origin"` // middle of the first cell, room frame, m
	Values []int16    `json:"values"` // mm; see the map for what they are
}

// maxCell (m) is the largest size of a cell.
const maxCell = 0.05

// newGrid returns a grid over a floor of the given length and width, with cells
// of at most cell (m; 0: maxCell).
func newGrid(length, width, cell float64) Grid {
	if !(cell > 0) || cell > maxCell {
		cell = maxCell
	}
	cell = max(cell, length/maxCells, width/maxCells)
	nx := max(1, int(math.Ceil(length/cell-1e-9)))
	ny := max(1, int(math.Ceil(width/cell-1e-9)))
	dx, dy := length/float64(nx), width/float64(ny)
	return Grid{NX: nx, NY: ny, Cell: [2]float64{dx, dy}, Origin: [2]float64{dx / 2, dy / 2}}
}

// maxCells bounds the cells along one side: a floor of 20 m still has the
// finest, a hall has coarser ones.
const maxCells = 400

// spot returns the middle of a cell.
func (g *Grid) spot(i, j int) fit.Spot {
	return fit.Spot{X: g.Origin[0] + float64(i)*g.Cell[0], Y: g.Origin[1] + float64(j)*g.Cell[1]}
}

// store rounds values (m) down to millimetres, those beyond ±32 m to that.
func (g *Grid) store(values []float64) {
	g.Values = make([]int16, len(values))
	for i, v := range values {
		g.Values[i] = int16(min(max(math.Floor(v*1000+1e-6), -32000), 32000))
	}
}

// storeUp is store, rounding up.
func (g *Grid) storeUp(values []float64) {
	g.Values = make([]int16, len(values))
	for i, v := range values {
		g.Values[i] = int16(min(max(math.Ceil(v*1000-1e-6), -32000), 32000))
	}
}

// block is a rectangle of cells: those from (i0, j0) up to but without (i1, j1).
type block struct{ i0, j0, i1, j1 int }

// middle returns the middle of a block and how far (m) the middles of its cells
// lie from there at most.
func (g *Grid) middle(b block) (at fit.Spot, radius float64) {
	lo, hi := g.spot(b.i0, b.j0), g.spot(b.i1-1, b.j1-1)
	at = fit.Spot{X: (lo.X + hi.X) / 2, Y: (lo.Y + hi.Y) / 2}
	return at, at.To(hi)
}

// split cuts a block in halves along both sides, or along one if the other is a
// single cell.
func (b block) split() []block {
	i, j := (b.i0+b.i1)/2, (b.j0+b.j1)/2
	var out []block
	for _, q := range []block{{b.i0, b.j0, i, j}, {i, b.j0, b.i1, j}, {b.i0, j, i, b.j1}, {i, j, b.i1, b.j1}} {
		if q.i0 < q.i1 && q.j0 < q.j1 {
			out = append(out, q)
		}
	}
	return out
}

func (b block) single() bool { return b.i1-b.i0 == 1 && b.j1-b.j0 == 1 }
