package maps

import (
	"cmp"
	"math"
	"slices"

	"wideberth/internal/sim/family"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

// empty marks a cell that nothing passes over, as in a footprint.
var empty = float32(math.Inf(-1))

// fine is how many cells of a shadow lie along each side of a grid's cell.
const fine = 3

// shadow is the footprints of several casts on their tees, laid over the room:
// as in a footprint, but on the fine cells of a grid and in the room frame. It
// goes on beyond the walls by rim fine cells on every side.
type shadow struct {
	cell   [2]float64 // m
	nx, ny int        // with the rims
	rim    int
	layers []shade
	coarse []int // of fine cells from −rim − (nx + ny) on, the grid's cell that they lie in
}

// shade is one thickness of parts.
type shade struct {
	radius float64
	top    []float32 // highest axis over each cell, m above the structural floor
	who    []int16   // whose
}

// newShadow lays the footprints of casts, each on all of the player's tees. What
// lies farther from the room than reach (m) does not matter.
func newShadow(p plan.Plan, casts []fit.Cast, g *Grid, reach float64) *shadow {
	s := &shadow{cell: [2]float64{g.Cell[0] / fine, g.Cell[1] / fine}}
	s.rim = int(math.Ceil(reach / min(s.cell[0], s.cell[1])))
	s.nx, s.ny = fine*g.NX+2*s.rim, fine*g.NY+2*s.rim
	s.coarsen()
	for k := range casts {
		for _, tee := range p.TeesOf(casts[k].Player) {
			s.lay(&casts[k], tee, int16(k))
		}
	}
	return s
}

func (s *shadow) lay(c *fit.Cast, tee plan.Tee, who int16) {
	f := c.Kin.Footprint()
	for i := range f.Layers {
		l := &f.Layers[i]
		to := s.shadeFor(l.Radius)
		columns := make([]int, f.NX)
		for bx := range columns {
			columns[bx] = s.cellAt(tee.X+f.X0+(float64(bx)+0.5)*family.Bin, 0)
		}
		for row := range len(l.Top) / f.NX {
			y := f.Y0 + (float64(l.First+row)+0.5)*family.Bin
			if c.At.Left {
				y = -y
			}
			j := s.cellAt(tee.Y+y, 1)
			if j < 0 || j >= s.ny {
				continue
			}
			top, whose := to.top[j*s.nx:][:s.nx], to.who[j*s.nx:][:s.nx]
			for bx, z := range l.Top[row*f.NX:][:f.NX] {
				if z == empty {
					continue
				}
				z += float32(c.At.Ball.Z)
				if i := columns[bx]; i >= 0 && i < s.nx && z > top[i] {
					top[i], whose[i] = z, who
				}
			}
		}
	}
}

// cellAt returns the fine cell along an axis that holds a coordinate.
func (s *shadow) cellAt(v float64, axis int) int {
	return int(math.Floor(v/s.cell[axis])) + s.rim
}

func (s *shadow) shadeFor(radius float64) *shade {
	for i := range s.layers {
		if s.layers[i].radius == radius {
			return &s.layers[i]
		}
	}
	l := shade{radius, make([]float32, s.nx*s.ny), make([]int16, s.nx*s.ny)}
	l.top[0] = empty
	for n := 1; n < len(l.top); n *= 2 {
		copy(l.top[n:], l.top[:n])
	}
	s.layers = append(s.layers, l)
	return &s.layers[len(s.layers)-1]
}

// coarsen fills coarse: a division for each row under each axis took a sixth of a map.
func (s *shadow) coarsen() {
	s.coarse = make([]int, 3*(s.nx+s.ny))
	for i := range s.coarse {
		s.coarse[i] = floorDiv(i-s.nx-s.ny-s.rim, fine)
	}
}

// reachOf returns the first and last cell of a grid of n that is within ri fine
// cells of fine cell a, along one axis.
func (s *shadow) reachOf(a, ri, n int) (from, to int) {
	a += s.nx + s.ny
	return max(s.coarse[a-ri-1], 0), min(s.coarse[a+ri+1], n-1)
}

// offsets returns how far (fine cells) a grid's cell lies from a fine cell that is t−ri−1
// fine cells after its first, for every t at which it is within ri: 0 when they touch or
// overlap. Cell i is within ri of fine cell a at t = first(a, ri, i).
func offsets(ri int) []int {
	out := make([]int, 2*ri+fine+2)
	for t := range out {
		after := t - ri - 1
		out[t] = max(0, -after-1, after-fine)
	}
	return out
}

// first returns the place among offsets of a grid's cell i for fine cell a, along one
// axis; that of the next cell is fine less.
func (s *shadow) first(a, ri, i int) int { return a - s.rim - fine*i + ri + 1 }

func floorDiv(a, b int) int {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

// lift raises heights (m, per cell of the grid; whose in who) to the tops of
// spheres around the axes: of the part's radius and extra. Over half of the axes lie below
// a thicker part's in the same cell and need no sphere of their own.
func (s *shadow) lift(g *Grid, extra float64, heights []float64, who []int16) {
	slices.SortStableFunc(s.layers, func(a, b shade) int { return cmp.Compare(b.radius, a.radius) })
	thicker := make([]float32, s.nx*s.ny) // the highest axis so far over each cell
	for i := range thicker {
		thicker[i] = empty
	}
	for k := range s.layers {
		l := &s.layers[k]
		r := l.radius + extra
		r += family.Slack(r)
		ri, rj := int(r/s.cell[0]), int(r/s.cell[1])
		wide := offsets(ri)
		dome := make([]float64, len(wide)*(rj+1))
		widest := make([]int, rj+1) // gaps along a row that the sphere reaches
		for gj := range rj + 1 {
			for t, gi := range wide {
				d2 := sq(float64(gi)*s.cell[0]) + sq(float64(gj)*s.cell[1])
				dome[gj*len(wide)+t] = math.Sqrt(max(r*r-d2, -1)) // NaN beyond the sphere
				if d2 <= r*r && gi > widest[gj] {
					widest[gj] = gi
				}
			}
		}
		high := offsets(rj)
		for b := range s.ny {
			j0, j1 := s.reachOf(b, rj, g.NY)
			above := thicker[b*s.nx:][:s.nx]
			for a, top := range l.top[b*s.nx:][:s.nx] {
				if top <= above[a] {
					continue
				}
				above[a] = top
				z, by := float64(top), l.who[b*s.nx+a]
				for j := j0; j <= j1; j++ {
					gj := high[s.first(b, rj, j)]
					i0, i1 := s.reachOf(a, widest[gj], g.NX)
					if i1 < i0 {
						continue
					}
					rise, t := dome[gj*len(wide):][:len(wide)], s.first(a, ri, i0)
					row := heights[j*g.NX+i0 : j*g.NX+i1+1]
					for i, was := range row {
						if h := z + rise[t]; h > was {
							row[i], who[j*g.NX+i0+i] = h, by
						}
						t -= fine
					}
				}
			}
		}
	}
}

func sq(v float64) float64 { return v * v }

// spread lowers distances (m, per cell of the grid) to those from the parts that
// pass over any height, seen from above.
func (s *shadow) spread(g *Grid, most float64, distances []float64) {
	for k := range s.layers {
		l := &s.layers[k]
		r := l.radius + family.Slack(l.radius)
		ri, rj := int((most+r)/s.cell[0]), int((most+r)/s.cell[1])
		wide, high := offsets(ri), offsets(rj)
		far := make([]float64, len(wide)*(rj+1))
		for gj := range rj + 1 {
			for t, gi := range wide {
				far[gj*len(wide)+t] = geom.Hypot(float64(gi)*s.cell[0], float64(gj)*s.cell[1]) - r
			}
		}
		for b := range s.ny {
			for a := range s.nx {
				if l.top[b*s.nx+a] == empty {
					continue
				}
				ri0, rj0 := ri, rj
				if s.inner(l, a, b) { // its neighbours are nearer to all but the cell itself
					ri0, rj0 = 0, 0
				}
				j0, j1 := s.reachOf(b, rj0, g.NY)
				i0, i1 := s.reachOf(a, ri0, g.NX)
				if i1 < i0 {
					continue
				}
				for j := j0; j <= j1; j++ {
					line, t := far[high[s.first(b, rj, j)]*len(wide):][:len(wide)], s.first(a, ri, i0)
					row := distances[j*g.NX+i0 : j*g.NX+i1+1]
					for i, was := range row {
						if d := line[t]; d < was {
							row[i] = d
						}
						t -= fine
					}
				}
			}
		}
	}
}

// inner reports whether all neighbours of a cell are taken too.
func (s *shadow) inner(l *shade, a, b int) bool {
	if a == 0 || b == 0 || a == s.nx-1 || b == s.ny-1 {
		return false
	}
	for _, at := range [4]int{(b-1)*s.nx + a, (b+1)*s.nx + a, b*s.nx + a - 1, b*s.nx + a + 1} {
		if l.top[at] == empty {
			return false
		}
	}
	return true
}
