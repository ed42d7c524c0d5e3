package drawing

import (
	"math"

	"wideberth/internal/sim/contour"
	"wideberth/internal/sim/geom"
)

const (
	// cell is the spacing (m) of the distance field's nodes. Outlines are found
	// by linear interpolation of distances, which for a disc of radius 5 cm is
	// off by cell²/(8·0.05) = 1.6 mm. The time it takes goes with 1/cell².
	cell = 0.025
	// thin is the least radius (m) a part is drawn with: more than half a cell,
	// so that a row of nodes always lies within a shaft seen alone and it does
	// not break up. It draws a shaft of 6 mm radius 9 mm too fat on each side,
	// never too slim.
	thin = cell * 0.6
	// swell (m) is added to every radius. On a round outline interpolation and
	// simplify both cut inwards, by this much on average for a disc of 10 cm.
	swell = 0.0006
	// notch is the depth (m) of a dent in an outline that is let stand.
	notch = 0.001
)

// field is the signed distance (m) to the union of all shapes stamped on it, at
// the nodes of a square grid; exact within one cell of the outline, -radius or
// less farther in, cell farther out.
type field struct {
	x0, y0 float64 // of node 0, 0
	nx, ny int
	d      []float64
}

// silhouette is the outline of the union of the parts' moves, each given by its
// capsules at successive moments between which the ends go straight.
func silhouette(keys [][]geom.Capsule, pr projection) [][]Point {
	f := newField(keys, pr)
	for _, part := range keys {
		var a0, b0 Point
		for i, c := range part {
			a, b, r := pr.flat(c.A), pr.flat(c.B), max(c.R, thin)+swell
			f.stamp(a, b, r)
			if i > 0 {
				// Where an end moves by s, the two discs leave a notch of s²/8r
				// in the rim; the sides leave a gap from s = 2r on.
				da, db := dist2(a0, a), dist2(b0, b)
				if da > 8*r*notch {
					f.stamp(a0, a, r)
				}
				if db > 8*r*notch {
					f.stamp(b0, b, r)
				}
				if max(da, db) > r*r {
					f.fill(a0, b0, b, a, r)
				}
			}
			a0, b0 = a, b
		}
	}
	return simplifyAll(f.contours())
}

func newField(keys [][]geom.Capsule, pr projection) *field {
	lo, hi := Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, part := range keys {
		for _, c := range part {
			r := max(c.R, thin)
			for _, p := range [2]Point{pr.flat(c.A), pr.flat(c.B)} {
				for k := range p {
					lo[k], hi[k] = min(lo[k], p[k]-r), max(hi[k], p[k]+r)
				}
			}
		}
	}
	f := &field{x0: lo[0] - 2*cell, y0: lo[1] - 2*cell}
	f.nx = int(math.Ceil((hi[0]-f.x0)/cell)) + 3
	f.ny = int(math.Ceil((hi[1]-f.y0)/cell)) + 3
	f.d = make([]float64, f.nx*f.ny)
	for i := range f.d {
		f.d[i] = cell
	}
	return f
}

// stamp joins the disc of radius r moved from a to b to the union.
func (f *field) stamp(a, b Point, r float64) {
	abx, aby := b[0]-a[0], b[1]-a[1]
	l2 := abx*abx + aby*aby
	var inv, sx, sy float64
	reach := r + cell
	if l2 > 0 {
		inv = 1 / l2
		s := reach * math.Sqrt(inv)
		sx, sy = -aby*s, abx*s // from the axis to its left edge, at the reach
	}
	j0 := f.row(min(a[1], b[1]) - reach)
	j1 := f.row(max(a[1], b[1])+reach) + 1
	ends := [2]Point{a, b}
	for j := j0; j <= j1; j++ {
		y := f.y0 + float64(j)*cell
		lo, hi := math.MaxFloat64, -math.MaxFloat64
		// Plain comparisons, here and below: min and max also order NaN and -0,
		// which costs a third of the time.
		for k := range ends {
			p := &ends[k]
			if h := reach*reach - (y-p[1])*(y-p[1]); h >= 0 {
				w := math.Sqrt(h)
				if x := p[0] - w; x < lo {
					lo = x
				}
				if x := p[0] + w; x > hi {
					hi = x
				}
			}
		}
		if aby != 0 {
			for _, side := range [2]float64{1, -1} {
				if s := (y - (a[1] + side*sy)) / aby; s >= 0 && s <= 1 {
					x := a[0] + side*sx + s*abx
					if x < lo {
						lo = x
					}
					if x > hi {
						hi = x
					}
				}
			}
		}
		if lo > hi {
			continue
		}
		i0, i1 := f.col(lo), f.col(hi)+1
		line := f.d[j*f.nx : (j+1)*f.nx]
		py := y - a[1]
		for i := i0; i <= i1; i++ {
			if line[i] <= -cell { // deep inside already: no outline passes near
				continue
			}
			px := f.x0 + float64(i)*cell - a[0]
			s := (px*abx + py*aby) * inv
			if s < 0 {
				s = 0
			} else if s > 1 {
				s = 1
			}
			dx, dy := px-s*abx, py-s*aby
			// Most nodes are nearer to something else, by more than rounding is off: they
			// need no root.
			d2, far := dx*dx+dy*dy, line[i]+r
			if d2 > far*far*(1+1e-9) {
				continue
			}
			if d := math.Sqrt(d2) - r; d < line[i] {
				line[i] = d
			}
		}
	}
}

// fill marks the nodes inside the four-sided figure p–q–s–t (which may cross
// itself) as at least r deep: a moving segment has passed over them.
func (f *field) fill(p, q, s, t Point, r float64) {
	corners := [4]Point{p, q, s, t}
	j0 := f.row(min(p[1], q[1], s[1], t[1]))
	j1 := f.row(max(p[1], q[1], s[1], t[1])) + 1
	for j := j0; j <= j1; j++ {
		y := f.y0 + float64(j)*cell
		var cross [4]float64
		n := 0
		for k, a := range corners {
			b := corners[(k+1)%4]
			if (a[1] <= y) != (b[1] <= y) {
				x := a[0] + (y-a[1])*(b[0]-a[0])/(b[1]-a[1])
				at := n
				for ; at > 0 && cross[at-1] > x; at-- {
					cross[at] = cross[at-1]
				}
				cross[at] = x
				n++
			}
		}
		line := f.d[j*f.nx : (j+1)*f.nx]
		for k := 0; k+1 < n; k += 2 {
			i0 := int(math.Ceil((cross[k] - f.x0) / cell))
			i1 := int(math.Floor((cross[k+1] - f.x0) / cell))
			for i := i0; i <= i1; i++ {
				if -r < line[i] {
					line[i] = -r
				}
			}
		}
	}
}

func (f *field) row(y float64) int { return int(math.Floor((y - f.y0) / cell)) }
func (f *field) col(x float64) int { return int(math.Floor((x - f.x0) / cell)) }

// contours are the lines where the field is zero: outlines against the clock,
// holes with it.
func (f *field) contours() [][]Point {
	traced := contour.Trace(f.nx, f.ny, f.d)
	loops := make([][]Point, len(traced))
	for i, t := range traced {
		loops[i] = make([]Point, len(t))
		for k, p := range t {
			loops[i][k] = Point{f.x0 + p[0]*cell, f.y0 + p[1]*cell}
		}
	}
	return loops
}
