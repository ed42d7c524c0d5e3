package maps

import (
	"math"

	"wideberth/internal/sim/contour"
	"wideberth/internal/sim/geom"
)

// Contour outlines where a map is at or above a level: closed rings in room
// coordinates, m, rounded to a millimetre. Fill them by the even-odd rule; a
// hole is a ring inside another.
type Contour struct {
	Name  string         `json:"name"`
	Level float64        `json:"level"` // m
	Rings [][][2]float64 `json:"rings"`
}

// contour traces a level through values (m) at the cells' middles, straight
// between them. Beyond the outermost middles the map counts as outside.
//
// Where a clearance is that to flat surfaces it is concave, and a line drawn
// straight between cells claims no more than there is; near a box it may claim
// more by about cell²/8 over the distance to the box, under a millimetre.
func (g *Grid) contour(name string, level float64, values []float64) Contour {
	// The field has a rim of one node more than the map has cells.
	nx, ny := g.NX+2, g.NY+2
	below := make([]float64, nx*ny)
	for i := range below {
		below[i] = outside
	}
	for k, v := range values {
		below[(k/g.NX+1)*nx+k%g.NX+1] = level - v
	}
	rings := [][][2]float64{}
	for _, loop := range contour.Trace(nx, ny, below) {
		rings = append(rings, g.ring(loop))
	}
	return Contour{name, level, rings}
}

// outside (m) is how far below the level the map counts beyond its rim.
const outside = 1.0

// ring takes a traced line into the room, without the points that are not needed.
func (g *Grid) ring(loop []contour.Point) [][2]float64 {
	var ring [][2]float64
	for _, at := range loop {
		p := [2]float64{
			round(g.Origin[0] + (at[0]-1)*g.Cell[0]),
			round(g.Origin[1] + (at[1]-1)*g.Cell[1]),
		}
		if n := len(ring); n >= 2 && straight(ring[n-2], ring[n-1], p) {
			ring[n-1] = p
			continue
		}
		ring = append(ring, p)
	}
	return ring
}

// straight reports whether b may be left out between a and c.
func straight(a, b, c [2]float64) bool {
	const within = 0.0005 // m
	dx, dy := c[0]-a[0], c[1]-a[1]
	n := geom.Hypot(dx, dy)
	if n == 0 {
		return false
	}
	off := math.Abs((b[0]-a[0])*dy-(b[1]-a[1])*dx) / n
	along := ((b[0]-a[0])*dx + (b[1]-a[1])*dy) / n
	return off <= within && along > 0 && along < n
}

// round rounds a length to a millimetre.
func round(v float64) float64 { return math.Round(v*1000) / 1000 }
