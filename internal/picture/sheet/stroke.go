package sheet

import "math"

// sides is how many corners a round end or joint has.
const sides = 20

// stroked is the area that an item's stroke covers, as rings that all turn the same way.
func stroked(it item) (rings [][]Point) {
	half := it.ink.Width / 2
	for _, ring := range it.rings {
		if it.closed && len(ring) > 0 {
			ring = append(append([]Point{}, ring...), ring[0])
		}
		for _, line := range dashed(ring, it.ink.Dash) {
			for i := range line {
				round := !it.ink.Butt || (i > 0 && i+1 < len(line)) || it.closed && len(it.ink.Dash) == 0
				if round && (i == 0 || line[i] != line[i-1]) {
					rings = append(rings, disc(line[i], half))
				}
				if i > 0 {
					rings = append(rings, bar(line[i-1], line[i], half)...)
				}
			}
		}
	}
	return rings
}

// bar is a straight stroke with square ends.
func bar(a, b Point, half float64) [][]Point {
	long := math.Hypot(b[0]-a[0], b[1]-a[1])
	if long == 0 {
		return nil
	}
	nx, ny := -(b[1]-a[1])/long*half, (b[0]-a[0])/long*half
	return [][]Point{{{a[0] - nx, a[1] - ny}, {b[0] - nx, b[1] - ny}, {b[0] + nx, b[1] + ny}, {a[0] + nx, a[1] + ny}}}
}

// disc is a circle that turns as bars do.
func disc(at Point, r float64) []Point {
	ring := make([]Point, sides)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
		ring[i] = Point{at[0] + r*cos, at[1] + r*sin}
	}
	return ring
}

// dashed cuts a line into the pieces that a dash leaves.
func dashed(line []Point, dash []float64) [][]Point {
	if len(dash) == 0 || len(line) < 2 {
		return [][]Point{line}
	}
	var out [][]Point
	k, left, on := 0, dash[0], true
	piece := []Point{line[0]}
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		long := math.Hypot(b[0]-a[0], b[1]-a[1])
		done := 0.0
		for long-done > left {
			done += left
			cut := mixed(a, b, done/long)
			if on {
				out = append(out, append(piece, cut))
			}
			piece, on = []Point{cut}, !on
			k = (k + 1) % len(dash)
			left = dash[k]
		}
		left -= long - done
		piece = append(piece, b)
	}
	if on {
		out = append(out, piece)
	}
	return out
}
