package drawing

// Simplification of outlines.
const (
	// outlineTol is how far (m) a dropped point may lie off the line that
	// replaces it.
	outlineTol = 0.0015
	// speck is the area (m²) under which an outline or a hole is not drawn: a
	// 2 cm square.
	speck = 4e-4
)

// The edges of a cell, and for each of the 16 patterns of inside corners (bit 0
// lower left, then against the clock) the segments from edge to edge that keep
// the inside on the left. Patterns 5 and 10 have two readings; the table holds
// the one with the two inside corners apart, joined the other one.
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

// contours follows the zero line of the field (marching squares, W. Lorensen
// and H. Cline's cubes of 1987 in two dimensions). Outlines run against the
// clock, holes with it. The field's rim is outside everywhere, so every line closes.
func (f *field) contours() [][]Point {
	// next[e] is the edge that the line through edge e goes to. The edge from a
	// node to its right neighbour has the node's number, the one to its upper
	// neighbour that number plus n.
	n := f.nx * f.ny
	next := make([]int32, 2*n)
	for i := range next {
		next[i] = -1
	}
	for j := range f.ny - 1 {
		for i := range f.nx - 1 {
			k := j*f.nx + i
			v := [4]float64{f.d[k], f.d[k+1], f.d[k+1+f.nx], f.d[k+f.nx]}
			pattern := 0
			for bit, d := range v {
				if d < 0 {
					pattern |= 1 << bit
				}
			}
			if pattern == 0 || pattern == 15 {
				continue
			}
			segs := segments[pattern]
			if (pattern == 5 || pattern == 10) && v[0]+v[1]+v[2]+v[3] < 0 {
				segs = joined[pattern]
			}
			edges := [4]int{bottom: k, right: n + k + 1, top: k + f.nx, left: n + k}
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
			loop = append(loop, f.crossing(e, n))
			to := int(next[e])
			next[e] = -1
			e = to
		}
		loops = append(loops, loop)
	}
	return loops
}

// crossing is where the field is zero on edge e.
func (f *field) crossing(e, n int) Point {
	k, step := e, 1
	if e >= n {
		k, step = e-n, f.nx
	}
	p := Point{f.x0 + float64(k%f.nx)*cell, f.y0 + float64(k/f.nx)*cell}
	s := f.d[k] / (f.d[k] - f.d[k+step]) * cell
	if step == 1 {
		p[0] += s
	} else {
		p[1] += s
	}
	return p
}

func simplifyAll(loops [][]Point) [][]Point {
	var out [][]Point
	for _, l := range loops {
		if a := area(l); a > speck || a < -speck {
			out = append(out, simplify(l))
		}
	}
	return out
}

// area is the signed area of a polygon, positive against the clock.
func area(poly []Point) float64 {
	var sum float64
	for i, p := range poly {
		q := poly[(i+1)%len(poly)]
		sum += p[0]*q[1] - p[1]*q[0]
	}
	return sum / 2
}

// simplify drops points of a closed line that lie within outlineTol of what
// remains (U. Ramer 1972, D. Douglas and T. Peucker 1973).
func simplify(loop []Point) []Point {
	far := 0
	for i, p := range loop {
		if dist2(p, loop[0]) > dist2(loop[far], loop[0]) {
			far = i
		}
	}
	out := keepFar(nil, loop[:far+1])
	return keepFar(out, append(loop[far:len(loop):len(loop)], loop[0]))
}

// keepFar appends the points of an open line that are needed, without its last.
func keepFar(out, line []Point) []Point {
	if len(line) < 2 {
		return out
	}
	a, b := line[0], line[len(line)-1]
	far, most := 0, outlineTol*outlineTol
	for i := 1; i < len(line)-1; i++ {
		if d := dist2Segment(line[i], a, b); d > most {
			far, most = i, d
		}
	}
	if far == 0 {
		return append(out, a)
	}
	return keepFar(keepFar(out, line[:far+1]), line[far:])
}

func dist2(p, q Point) float64 {
	return (p[0]-q[0])*(p[0]-q[0]) + (p[1]-q[1])*(p[1]-q[1])
}

func dist2Segment(p, a, b Point) float64 {
	var s float64
	if l := dist2(a, b); l > 0 {
		s = min(max(((p[0]-a[0])*(b[0]-a[0])+(p[1]-a[1])*(b[1]-a[1]))/l, 0), 1)
	}
	return dist2(p, Point{a[0] + s*(b[0]-a[0]), a[1] + s*(b[1]-a[1])})
}
