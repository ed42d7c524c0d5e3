// Package contour follows a level through the values of a grid.
package contour

// Point is a place in a grid, in steps from its first node.
type Point [2]float64

// The sides of a square of four nodes, and for each of the 16 patterns of inside
// corners (bit 0 lower left, then against the clock) the segments from side to
// side that keep the inside on the left. Patterns 5 and 10 have two readings;
// the table holds the one with the two inside corners apart, joined the other.
const (
	bottom = iota
	right
	top
	left
)

var segments = [16][][2]uint8{
	1: {{bottom, left}}, 2: {{right, bottom}}, 3: {{right, left}}, 4: {{top, right}},
	5: {{bottom, left}, {top, right}}, 6: {{top, bottom}}, 7: {{top, left}}, 8: {{left, top}},
	9: {{bottom, top}}, 10: {{right, bottom}, {left, top}}, 11: {{right, top}}, 12: {{left, right}},
	13: {{bottom, right}}, 14: {{left, bottom}},
}

var joined = [16][][2]uint8{
	5:  {{top, left}, {bottom, right}},
	10: {{right, top}, {left, bottom}},
}

// Trace follows the zero line of a field over nx × ny nodes, given row by row
// along x (marching squares: W. E. Lorensen and H. E. Cline's cubes of 1987 in
// the plane). Inside is where the field is negative or zero. Outlines run
// against the clock, holes with it; between two nodes the line goes straight,
// and the mean of a square decides its saddle. The field's rim must be outside
// everywhere, so that every line closes.
func Trace(nx, ny int, field []float64) [][]Point {
	// next[e] is the edge that the line through edge e goes to. The edge from a
	// node to its right neighbour has the node's number, the one to its upper
	// neighbour that number plus n.
	n := nx * ny
	next := make([]int32, 2*n)
	for i := range next {
		next[i] = -1
	}
	for j := range ny - 1 {
		for i := range nx - 1 {
			k := j*nx + i
			v := [4]float64{field[k], field[k+1], field[k+1+nx], field[k+nx]}
			pattern := 0
			for bit, d := range v {
				if d <= 0 {
					pattern |= 1 << bit
				}
			}
			if pattern == 0 || pattern == 15 {
				continue
			}
			segs := segments[pattern]
			if (pattern == 5 || pattern == 10) && v[0]+v[1]+v[2]+v[3] <= 0 {
				segs = joined[pattern]
			}
			edges := [4]int{bottom: k, right: n + k + 1, top: k + nx, left: n + k}
			for _, s := range segs {
				next[edges[s[0]]] = int32(edges[s[1]])
			}
		}
	}
	var loops [][]Point
	for start := range next {
		if next[start] < 0 {
			continue
		}
		var loop []Point
		for e := start; next[e] >= 0; {
			loop = append(loop, crossing(nx, field, e))
			to := int(next[e])
			next[e] = -1
			e = to
		}
		loops = append(loops, loop)
	}
	return loops
}

// crossing is where the field is zero on edge e.
func crossing(nx int, field []float64, e int) Point {
	k, step, axis := e, 1, 0
	if e >= len(field) {
		k, step, axis = e-len(field), nx, 1
	}
	p := Point{float64(k % nx), float64(k / nx)}
	p[axis] += field[k] / (field[k] - field[k+step])
	return p
}
