package sweep

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// hull holds the boxes of all tracks of a Tree together, when the tracks share
// their times as the members of a family do: a tree of boxes over time for each
// piece of the body and the club, and below each leaf the boxes of every track.
// One look at a leaf of the hull settles a stretch of time for the whole family.
type hull struct {
	leaves int
	tracks []*Track
	union  []geom.Box // piece by piece, heap-ordered like the tree of a track
	shaft  []geom.Box // the same of a shaft's pieces together
	gaps   []float64  // scratch: of every track
	own    []smallBox // of the pieces of a shaft: piece by piece, leaf by leaf, track by track
}

// piece is a part of golfer or club, or a stretch of one: the box around a long
// shaft that lies across the axes is mostly empty, those of its fifths are not.
type piece struct {
	part     swing.Part
	from, to float64 // shares of the way from A to B
}

// shaftPieces is how many pieces a shaft is cut into.
const shaftPieces = 5

// pieces lists what a hull tells apart.
var pieces = func() (out []piece) {
	for p := range swing.NumParts {
		n := 1
		if p == swing.Shaft {
			n = shaftPieces
		}
		for i := range n {
			out = append(out, piece{p, float64(i) / float64(n), float64(i+1) / float64(n)})
		}
	}
	return out
}()

func (p piece) whole() bool { return p.to-p.from == 1 }

// newHull returns the hull of tracks, or nil when their times differ.
func newHull(tracks []*Track) *hull {
	if len(tracks) < 2 {
		return nil
	}
	first := tracks[0]
	for _, t := range tracks {
		if t.leaves != first.leaves || t.perLeaf != first.perLeaf || len(t.times) != len(first.times) {
			return nil
		}
		for i := range t.times {
			if t.times[i] != first.times[i] {
				return nil
			}
		}
	}
	h := &hull{leaves: first.leaves, tracks: tracks}
	h.union, h.gaps = make([]geom.Box, len(pieces)*2*h.leaves), make([]float64, len(tracks))
	h.own = make([]smallBox, 0, shaftPieces*h.leaves*len(tracks))
	for i, p := range pieces {
		union := h.union[i*2*h.leaves:][:2*h.leaves]
		for l := range h.leaves {
			union[h.leaves+l] = geom.EmptyBox()
			for _, t := range tracks {
				own := t.pieceBox(p, l)
				union[h.leaves+l] = union[h.leaves+l].Union(own)
				if !p.whole() {
					h.own = append(h.own, smaller(own))
				}
			}
		}
		for n := h.leaves - 1; n > 0; n-- {
			union[n] = union[2*n].Union(union[2*n+1])
		}
	}
	h.shaft = make([]geom.Box, 2*h.leaves)
	for n := range h.shaft {
		h.shaft[n] = geom.EmptyBox()
		for i := range shaftPieces {
			h.shaft[n] = h.shaft[n].Union(h.union[(int(swing.Shaft)+i)*2*h.leaves+n])
		}
	}
	return h
}

// box returns the box of a piece of one track's part during a leaf.
func (h *hull) box(piece, leaf, track int) geom.Box {
	p := pieces[piece]
	if p.whole() {
		return h.tracks[track].node(p.part, h.leaves+leaf)
	}
	return h.own[((piece-int(swing.Shaft))*h.leaves+leaf)*len(h.tracks)+track].box()
}

// pieceBox returns a box that holds a piece of a track's part during a leaf. A
// point between the ends of a part strays no farther than they do.
func (t *Track) pieceBox(p piece, leaf int) geom.Box {
	if p.whole() {
		return t.node(p.part, t.leaves+leaf)
	}
	from, to := t.leafSteps(leaf)
	b := geom.EmptyBox()
	if from >= to {
		return b
	}
	stray, radius := 0.0, 0.0
	for i := from; i <= to; i++ {
		c := t.Capsule(i, p.part)
		b = b.Including(geom.Lerp(c.A, c.B, p.from)).Including(geom.Lerp(c.A, c.B, p.to))
		radius = max(radius, c.R)
		if i < to {
			stray = max(stray, t.stray(i, p.part))
		}
	}
	return b.Grown(radius + stray)
}

// through searches all tracks of a hull.
func (q *search) through(h *hull) {
	var gaps [int(swing.NumParts) + shaftPieces - 1]float64
	for i := range pieces {
		gaps[i] = q.bounded(h, i, 1)
	}
	for range gaps {
		next := 0
		for i := range gaps {
			if gaps[i] < gaps[next] {
				next = i
			}
		}
		if gaps[next] >= q.best {
			return
		}
		g := gaps[next]
		gaps[next] = math.Inf(1)
		q.down(h, next, 1, g)
	}
}

// bounded returns a lower bound of the signed distance of any part with a piece
// inside a node. A part that goes through the box may have to go a longer way
// out than each of its pieces, so once a piece touches, the whole part counts.
func (q *search) bounded(h *hull, piece, node int) float64 {
	g := q.surface.gap(&h.union[piece*2*h.leaves+node])
	if g <= 0 && !pieces[piece].whole() {
		return min(0, q.surface.gap(&h.shaft[node]))
	}
	return g
}

// down searches a node of the hull of one piece whose lower bound is gap.
func (q *search) down(h *hull, piece, node int, gap float64) {
	if gap >= q.best || q.best <= q.enough {
		return
	}
	if node >= h.leaves {
		q.leaf(h, piece, node-h.leaves)
		return
	}
	l, r := 2*node, 2*node+1
	gl, gr := q.bounded(h, piece, l), q.bounded(h, piece, r)
	if gr < gl {
		l, r, gl, gr = r, l, gr, gl
	}
	q.down(h, piece, l, gl)
	q.down(h, piece, r, gr)
}

// leaf searches one leaf of every track, the nearest first.
func (q *search) leaf(h *hull, piece, leaf int) {
	p := pieces[piece].part
	first, near := 0, math.Inf(1)
	for k := range h.tracks {
		b := h.box(piece, leaf, k)
		g := q.surface.gap(&b)
		if h.gaps[k] = g; g < near {
			first, near = k, g
		}
	}
	if near > 0 && near >= q.best {
		return
	}
	for i := range h.tracks {
		k := i
		switch i { // the nearest changes places with the first
		case 0:
			k = first
		case first:
			k = 0
		}
		t := h.tracks[k]
		g := h.gaps[k]
		if g <= 0 && !pieces[piece].whole() {
			g = min(0, q.surface.Gap(t.node(p, h.leaves+leaf)))
		}
		if g < q.best && q.best > q.enough {
			q.steps(t, k, p, leaf)
		}
	}
}
