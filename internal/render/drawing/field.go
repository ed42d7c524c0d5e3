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
	moves := make([]move, len(keys))
	for i, part := range keys {
		moves[i] = moveOf(part, pr)
	}
	f := newField(moves)
	for i := range moves {
		f.pass(&moves[i])
	}
	// What has been passed over needs no stamp.
	for i := range moves {
		f.trace(&moves[i])
	}
	return simplifyAll(f.contours())
}

// spot is a Point while it is worked with: a struct is kept out of memory, an array is not.
type spot struct{ x, y float64 }

func spotOf(p Point) spot { return spot{p[0], p[1]} }

// move is a part's move in a drawing: the ends of its capsule at successive moments.
type move struct {
	a, b []spot
	r    float64
}

func moveOf(part []geom.Capsule, pr projection) move {
	m := move{a: make([]spot, len(part)), b: make([]spot, len(part))}
	for i, c := range part {
		m.a[i], m.b[i], m.r = spotOf(pr.flat(c.A)), spotOf(pr.flat(c.B)), max(c.R, thin)+swell
	}
	return m
}

// leaps reports whether the ends move so far from moment i-1 to i that the capsules
// leave a gap beside them, which pass fills: from 2r on, and before.
func (m *move) leaps(i int) bool { return m.farther(i, m.r*m.r) }

// farther reports whether an end moves farther from moment i-1 to i than to the square of
// a distance.
func (m *move) farther(i int, square float64) bool {
	return away2(m.a[i-1], m.a[i]) > square || away2(m.b[i-1], m.b[i]) > square
}

func away2(p, q spot) float64 { return (p.x-q.x)*(p.x-q.x) + (p.y-q.y)*(p.y-q.y) }

// pass joins what a moving part's axis passes over to the union.
func (f *field) pass(m *move) {
	for i := 1; i < len(m.a); i++ {
		if m.leaps(i) {
			f.fill([4]spot{m.a[i-1], m.b[i-1], m.b[i], m.a[i]}, m.r)
		}
	}
}

// trace joins the disc that follows a moving part's axis to the union, where it is not
// amid what the axis passes over.
func (f *field) trace(m *move) {
	for i := range m.a {
		if i == 0 || i == len(m.a)-1 || !m.crosses(i) {
			f.stamp(m.a[i], m.b[i], m.r)
		}
		// Where an end moves by s, the two discs leave a notch of s²/8r in the rim.
		if i > 0 && (m.leaps(i) || m.farther(i, 8*m.r*notch)) {
			f.stamp(m.a[i-1], m.a[i], m.r)
			f.stamp(m.b[i-1], m.b[i], m.r)
		}
	}
}

// crosses reports whether the axis goes on to one side, with all of its length, both on
// its way to moment i and from there: what lies beside it then has been passed over,
// and only its ends may be at the rim.
func (m *move) crosses(i int) bool {
	if !m.leaps(i) || !m.leaps(i+1) {
		return false
	}
	a, b := m.a[i], m.b[i]
	along := spot{b.x - a.x, b.y - a.y}
	w, x, y, z := along.side(m.a[i-1], a), along.side(m.b[i-1], b), along.side(a, m.a[i+1]), along.side(b, m.b[i+1])
	return w > 0 && x > 0 && y > 0 && z > 0 || w < 0 && x < 0 && y < 0 && z < 0
}

// side is positive where the way from p to q goes to the left of a direction.
func (d spot) side(p, q spot) float64 { return d.x*(q.y-p.y) - d.y*(q.x-p.x) }

func newField(moves []move) *field {
	lo, hi := spot{math.Inf(1), math.Inf(1)}, spot{math.Inf(-1), math.Inf(-1)}
	widen := func(end []spot, r float64) {
		for _, p := range end {
			if p.x-r < lo.x {
				lo.x = p.x - r
			}
			if p.y-r < lo.y {
				lo.y = p.y - r
			}
			if p.x+r > hi.x {
				hi.x = p.x + r
			}
			if p.y+r > hi.y {
				hi.y = p.y + r
			}
		}
	}
	for i := range moves {
		widen(moves[i].a, moves[i].r)
		widen(moves[i].b, moves[i].r)
	}
	f := &field{x0: lo.x - 2*cell, y0: lo.y - 2*cell}
	f.nx = int(math.Ceil((hi.x-f.x0)/cell)) + 3
	f.ny = int(math.Ceil((hi.y-f.y0)/cell)) + 3
	f.d = make([]float64, f.nx*f.ny)
	for i := range f.d {
		f.d[i] = cell
	}
	return f
}

// stamp joins the disc of radius r moved from a to b to the union.
func (f *field) stamp(a, b spot, r float64) {
	abx, aby := b.x-a.x, b.y-a.y
	l2 := abx*abx + aby*aby
	var inv float64
	if l2 > 0 {
		inv = 1 / l2
	}
	reach := r + cell
	// Plain comparisons, here and below: min and max also order NaN and -0,
	// which costs a third of the time.
	x0, x1, y0, y1 := a.x, b.x, a.y, b.y
	if x0 > x1 {
		x0, x1 = x1, x0
	}
	if y0 > y1 {
		y0, y1 = y1, y0
	}
	x0, x1 = x0-reach, x1+reach
	// On each row, what is within reach of the line through a and b: so wide to either
	// side of it.
	lean := abx / aby
	wide := reach * math.Sqrt(1+lean*lean)
	// Deep inside no outline passes near, and nothing of this is deeper than its radius.
	deep := -cell
	if r < cell {
		deep = -r
	}
	j0 := f.row(y0 - reach)
	j1 := f.row(y1+reach) + 1
	for j := j0; j <= j1; j++ {
		y := f.y0 + float64(j)*cell
		py := y - a.y
		lo, hi := x0, x1
		at := a.x + py*lean // not a number for a level line, which leaves lo and hi
		if at-wide > lo {
			lo = at - wide
		}
		if at+wide < hi {
			hi = at + wide
		}
		if lo > hi {
			continue
		}
		i0, i1 := int((lo-f.x0)/cell), int((hi-f.x0)/cell)+1 // both positive: the field has a rim
		line := f.d[j*f.nx+i0 : j*f.nx+i1+1]
		for i, d := range line {
			if d <= deep {
				continue
			}
			px := f.x0 + float64(i0+i)*cell - a.x
			s := (px*abx + py*aby) * inv
			if s < 0 {
				s = 0
			} else if s > 1 {
				s = 1
			}
			dx, dy := px-s*abx, py-s*aby
			// Most nodes are nearer to something else, by more than rounding is off: they
			// need no root.
			d2, far := dx*dx+dy*dy, d+r
			if d2 > far*far*(1+1e-9) {
				continue
			}
			if to := math.Sqrt(d2) - r; to < d {
				line[i] = to
			}
		}
	}
}

// fill marks the nodes inside a four-sided figure (which may cross itself) as at least r
// deep: a moving segment has passed over them.
func (f *field) fill(corners [4]spot, r float64) {
	least, most := corners[0].y, corners[0].y
	for _, c := range corners {
		if c.y < least {
			least = c.y
		}
		if c.y > most {
			most = c.y
		}
	}
	j0, j1 := f.row(least), f.row(most)+1
	for j := j0; j <= j1; j++ {
		y := f.y0 + float64(j)*cell
		var cross [4]float64
		n := 0
		for k, a := range corners {
			b := corners[(k+1)%4]
			if (a.y <= y) != (b.y <= y) {
				x := a.x + (y-a.y)*(b.x-a.x)/(b.y-a.y)
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
