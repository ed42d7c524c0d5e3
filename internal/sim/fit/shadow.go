package fit

import (
	"math"

	"wideberth/internal/sim/plan"
)

// shadow is the footprints of several casts on their tees, laid over the room:
// as in a footprint, but on half the cells of a grid and in the room frame. It
// goes on beyond the walls by rim cells on every side.
type shadow struct {
	cell   [2]float64 // m
	nx, ny int        // with the rims
	rim    int
	layers []shade
}

// shade is one thickness of parts.
type shade struct {
	radius float64
	top    []float32 // highest axis over each cell, m above the structural floor
	who    []int16   // whose
}

// newShadow lays the footprints of casts, each on all of the player's tees. What
// lies farther from the room than reach (m) does not matter.
func newShadow(p plan.Plan, casts []cast, g *Grid, reach float64) *shadow {
	s := &shadow{cell: [2]float64{g.Cell[0] / 2, g.Cell[1] / 2}}
	s.rim = 2 * int(math.Ceil(reach/(2*min(s.cell[0], s.cell[1]))))
	s.nx, s.ny = 2*g.NX+2*s.rim, 2*g.NY+2*s.rim
	for k := range casts {
		for _, tee := range p.TeesOf(casts[k].player) {
			s.lay(&casts[k], tee, int16(k))
		}
	}
	return s
}

func (s *shadow) lay(c *cast, tee plan.Tee, who int16) {
	f := c.kin.footprint()
	for i := range f.layers {
		l := &f.layers[i]
		to := s.shadeFor(l.radius)
		for by := range f.ny {
			lo, hi := f.y0+float64(by)*bin, f.y0+float64(by+1)*bin
			if c.at.Left {
				lo, hi = -hi, -lo
			}
			j0, j1 := s.cells(tee.Y+lo, tee.Y+hi, 1, s.ny)
			if j0 > j1 {
				continue
			}
			row := l.top[by*f.nx:][:f.nx]
			for bx, top := range row {
				if top == empty {
					continue
				}
				x := tee.X + f.x0 + float64(bx)*bin
				i0, i1 := s.cells(x, x+bin, 0, s.nx)
				z := top + float32(c.at.Ball.Z)
				for j := j0; j <= j1; j++ {
					for i := i0; i <= i1; i++ {
						if at := j*s.nx + i; z > to.top[at] {
							to.top[at], to.who[at] = z, who
						}
					}
				}
			}
		}
	}
}

// cells returns the first and last cell along an axis that a stretch touches.
func (s *shadow) cells(lo, hi float64, axis, n int) (from, to int) {
	from = int(math.Floor(lo/s.cell[axis])) + s.rim
	to = int(math.Floor(hi/s.cell[axis])) + s.rim
	return max(from, 0), min(to, n-1)
}

func (s *shadow) shadeFor(radius float64) *shade {
	for i := range s.layers {
		if s.layers[i].radius == radius {
			return &s.layers[i]
		}
	}
	l := shade{radius, make([]float32, s.nx*s.ny), make([]int16, s.nx*s.ny)}
	for i := range l.top {
		l.top[i] = empty
	}
	s.layers = append(s.layers, l)
	return &s.layers[len(s.layers)-1]
}

// steps returns the gap between a cell [a, a+1] and a double one [d, d+2].
func steps(a, d int) int { return max(0, d-a-1, a-d-2) }

// lift raises heights (m, per cell of the grid; whose in who) to the tops of
// spheres around the axes: of the part's radius and extra.
func (s *shadow) lift(g *Grid, extra float64, heights []float64, who []int16) {
	for k := range s.layers {
		l := &s.layers[k]
		r := l.radius + extra
		r += beadSlack(r)
		ri, rj := int(r/s.cell[0]), int(r/s.cell[1])
		dome := make([]float64, (ri+1)*(rj+1))
		for gj := range rj + 1 {
			for gi := range ri + 1 {
				d2 := sq(float64(gi)*s.cell[0]) + sq(float64(gj)*s.cell[1])
				dome[gj*(ri+1)+gi] = math.Sqrt(max(r*r-d2, -1)) // NaN beyond the sphere
			}
		}
		for b := range s.ny {
			j0, j1 := max((b-s.rim-rj-1)>>1, 0), min((b-s.rim+rj+1)>>1, g.NY-1)
			for a, top := range l.top[b*s.nx:][:s.nx] {
				if top == empty {
					continue
				}
				z, by := float64(top), l.who[b*s.nx+a]
				i0, i1 := max((a-s.rim-ri-1)>>1, 0), min((a-s.rim+ri+1)>>1, g.NX-1)
				for j := j0; j <= j1; j++ {
					rise := dome[steps(b-s.rim, 2*j)*(ri+1):][:ri+1]
					row := heights[j*g.NX:][:g.NX]
					for i := i0; i <= i1; i++ {
						if h := z + rise[steps(a-s.rim, 2*i)]; h > row[i] {
							row[i], who[j*g.NX+i] = h, by
						}
					}
				}
			}
		}
	}
}

func sq(v float64) float64 { return v * v }

// spread lowers distances (m, per cell of the grid) to those from the parts that
// pass over any height, less off, seen from above.
func (s *shadow) spread(g *Grid, off, most float64, distances []float64) {
	for k := range s.layers {
		l := &s.layers[k]
		r := l.radius + off
		r += beadSlack(r)
		ri, rj := int((most+r)/s.cell[0]), int((most+r)/s.cell[1])
		width := ri + 1
		far := make([]float64, width*(rj+1))
		for gj := range rj + 1 {
			for gi := range ri + 1 {
				far[gj*width+gi] = math.Hypot(float64(gi)*s.cell[0], float64(gj)*s.cell[1]) - r
			}
		}
		for b := range s.ny {
			for a := range s.nx {
				if l.top[b*s.nx+a] == empty {
					continue
				}
				ri, rj := ri, rj
				if s.inner(l, a, b) { // its neighbours are nearer to all but the cell itself
					ri, rj = 0, 0
				}
				j0, j1 := max((b-s.rim-rj-1)>>1, 0), min((b-s.rim+rj+1)>>1, g.NY-1)
				i0, i1 := max((a-s.rim-ri-1)>>1, 0), min((a-s.rim+ri+1)>>1, g.NX-1)
				for j := j0; j <= j1; j++ {
					row := distances[j*g.NX:][:g.NX]
					line := far[steps(b-s.rim, 2*j)*width:]
					for i := i0; i <= i1; i++ {
						row[i] = min(row[i], line[steps(a-s.rim, 2*i)])
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
