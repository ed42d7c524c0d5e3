package maps

import "math"

// cellOf returns the cell that holds a place, or the nearest.
func (g *Grid) cellOf(x, y float64) (i, j int) {
	at := func(v, cell float64, n int) int {
		return min(max(int(math.Floor(v/cell)), 0), n-1)
	}
	return at(x, g.Cell[0], g.NX), at(y, g.Cell[1], g.NY)
}

// at returns the value (m) of the cell that holds a place.
func (g *Grid) at(x, y float64) float64 {
	i, j := g.cellOf(x, y)
	return float64(g.Values[j*g.NX+i]) / 1000
}

// at returns how low a thing may hang over a place, and who sets that; 0 and −1
// where nothing passes.
func (m *HangMap) at(x, y float64) (lowest float64, who int) {
	i, j := m.Grid.cellOf(x, y)
	return m.Grid.at(x, y), int(m.Who[j*m.Grid.NX+i])
}
