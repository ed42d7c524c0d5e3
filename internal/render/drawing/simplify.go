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

// simplifyAll simplifies closed lines and leaves out specks.
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
		s = ((p[0]-a[0])*(b[0]-a[0]) + (p[1]-a[1])*(b[1]-a[1])) / l
		if s < 0 {
			s = 0
		} else if s > 1 {
			s = 1
		}
	}
	return dist2(p, Point{a[0] + s*(b[0]-a[0]), a[1] + s*(b[1]-a[1])})
}
