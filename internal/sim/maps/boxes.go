package maps

import (
	"cmp"
	"math"
	"slices"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
)

// improves (m) is the least by which a box has to undercut a map's value to be
// looked into.
const improves = 0.0005

// rival is a cast and a box that may set the clearance somewhere in a block.
type rival struct {
	cast  *fit.Cast
	box   geom.Box
	from  fit.Spot // where it was looked at last
	value float64  // what was found there, or a limit it does not undercut
}

// least returns what the clearance can be at least at a spot: no clearance
// changes by more than the ball is moved.
func (r *rival) least(at fit.Spot) float64 { return r.value - r.from.To(at) }

// look measures the rival at a spot if it may undercut limit there. A clearance
// of enough or less need not be the least.
func (r *rival) look(at fit.Spot, enough, limit float64) (float64, bool) {
	if r.least(at) >= limit {
		return limit, false
	}
	v, near := r.cast.BoxBetween(r.box, at, enough, limit)
	if !near || v > enough { // otherwise what was known remains as good as before
		r.from, r.value = at, v
	}
	return v, near
}

// coarse is how many cells a block has along each side at first. In larger ones
// everything is near.
const coarse = 8

// lowerByBoxes lowers a map's values to the clearances to boxes. It goes from
// the whole floor to single cells and takes along only who can matter: a rival
// whose clearance in the middle of a block is more than the radius above every
// value in it is out of the running there.
func (f *floor) lowerByBoxes(g *Grid, values []float64) {
	length, width := float64(g.NX)*g.Cell[0], float64(g.NY)*g.Cell[1]
	var rivals []rival
	for i := range f.Casts {
		c := &f.Casts[i]
		for _, s := range f.Boxes {
			r := rival{cast: c, box: s.Box, value: math.Inf(-1)}
			switch alongX, alongY := run(c, s.Box, length, width); {
			case alongY:
				f.sweepColumns(g, values, r)
			case alongX:
				f.sweepRows(g, values, r)
			default:
				rivals = append(rivals, r)
			}
		}
	}
	w := blockWork{g: g, values: values, floor: f}
	for j := 0; j < g.NY; j += coarse {
		for i := 0; i < g.NX; i += coarse {
			w.lower(block{i, j, min(i+coarse, g.NX), min(j+coarse, g.NY)}, rivals, 0)
		}
	}
}

// sweepColumns lowers the values by a box that is the same all along y: once for
// each row of cells across.
func (f *floor) sweepColumns(g *Grid, values []float64, r rival) {
	for i := range g.NX {
		highest := math.Inf(-1)
		for j := range g.NY {
			highest = max(highest, values[j*g.NX+i])
		}
		at := g.spot(i, g.NY/2)
		if v, near := r.look(at, deepest, highest-improves); near {
			for j := range g.NY {
				values[j*g.NX+i] = min(values[j*g.NX+i], v)
			}
		}
	}
}

// sweepRows is sweepColumns for a box that is the same all along x.
func (f *floor) sweepRows(g *Grid, values []float64, r rival) {
	for j := range g.NY {
		row := values[j*g.NX:][:g.NX]
		if v, near := r.look(g.spot(g.NX/2, j), deepest, slices.Max(row)-improves); near {
			for i := range row {
				row[i] = min(row[i], v)
			}
		}
	}
}

// blockWork is a map in the making. The lists of rivals are kept by depth.
type blockWork struct {
	*floor
	g      *Grid
	values []float64
	kept   [][]rival
}

func (w *blockWork) lower(b block, rivals []rival, depth int) {
	if len(rivals) == 0 {
		return
	}
	at, radius := w.g.middle(b)
	if b.single() {
		v := &w.values[b.j0*w.g.NX+b.i0]
		for i := range rivals {
			if *v <= deepest {
				return
			}
			if d, near := rivals[i].look(at, deepest, *v-improves); near {
				*v = d
			}
		}
		return
	}
	highest := math.Inf(-1)
	for j := b.j0; j < b.j1; j++ {
		highest = max(highest, slices.Max(w.values[j*w.g.NX+b.i0:j*w.g.NX+b.i1]))
	}
	if highest <= deepest {
		return
	}
	for len(w.kept) <= depth {
		w.kept = append(w.kept, nil)
	}
	kept := w.kept[depth][:0]
	best := math.Inf(1) // what some rival is certain to come down to everywhere here
	for _, r := range rivals {
		limit := min(highest-improves, best) + radius
		if depth == 0 && r.cast.Apart(r.box, at) >= limit {
			continue
		}
		// In a coarse block it is enough to know that the rival matters.
		enough := deepest - radius
		if depth == 0 {
			enough = limit - improves
		}
		if v, near := r.look(at, enough, limit); near {
			if v <= deepest-radius {
				w.fill(b, deepest)
				return
			}
			kept = append(kept, r)
			best = min(best, v+radius)
		}
	}
	slices.SortStableFunc(kept, func(x, y rival) int { return cmp.Compare(x.value, y.value) })
	w.kept[depth] = kept
	for _, q := range b.split() {
		w.lower(q, kept, depth+1)
	}
}

// fill sets a whole block, where it is not lower already.
func (w *blockWork) fill(b block, v float64) {
	for j := b.j0; j < b.j1; j++ {
		for i := b.i0; i < b.i1; i++ {
			w.values[j*w.g.NX+i] = min(w.values[j*w.g.NX+i], v)
		}
	}
}
