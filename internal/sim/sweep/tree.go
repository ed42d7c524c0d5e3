package sweep

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// Every part of a track has a binary tree of boxes over time, heap-ordered:
// node 1 is the whole motion, nodes 2i and 2i+1 the halves of node i. Boxes hold
// radius and stray, so nothing of the true motion lies outside.

// layOut decides the shape of the trees: 3 to 6 steps share a leaf, whichever fills
// a power of two of leaves best.
func (t *Track) layOut() {
	t.leaves = 1
	for t.leaves*6 < t.steps() {
		t.leaves *= 2
	}
	t.perLeaf = (t.steps() + t.leaves - 1) / t.leaves
}

// leafSteps returns the half-open range of steps of a leaf.
func (t *Track) leafSteps(leaf int) (from, to int) {
	return min(leaf*t.perLeaf, t.steps()), min((leaf+1)*t.perLeaf, t.steps())
}

// node returns a node of a part's tree.
func (t *Track) node(p swing.Part, i int) geom.Box {
	at := int(p)*2*t.leaves + i
	if t.packed != nil {
		return t.packed.nodes[at].box()
	}
	return t.nodes[at]
}

// descend searches a node of a part's tree whose lower bound is gap.
func (q *search) descend(t *Track, index int, p swing.Part, node int, gap float64) {
	if gap >= q.best {
		return
	}
	if node >= t.leaves {
		q.steps(t, index, p, node-t.leaves)
		return
	}
	l, r := 2*node, 2*node+1
	bl, br := t.node(p, l), t.node(p, r)
	gl, gr := q.surface.gap(&bl), q.surface.gap(&br)
	if gr < gl {
		l, r, gl, gr = r, l, gr, gl
	}
	q.descend(t, index, p, l, gl)
	q.descend(t, index, p, r, gr)
}

// steps searches the steps of a leaf of a part.
func (q *search) steps(t *Track, index int, p swing.Part, leaf int) {
	var b geom.Box
	from, to := t.leafSteps(leaf)
	for i := from; i < to; i++ {
		if t.stepBox(i, p, &b); q.surface.gap(&b) < q.best {
			sp := t.span(i, p)
			q.span(t, index, i, p, &sp, 0, 1, 0)
		}
	}
}

// scan searches every part of a track, nearest first.
func (q *search) scan(t *Track, index int) {
	var gaps [swing.NumParts]float64
	for p := range swing.NumParts {
		gaps[p] = q.surface.Gap(t.node(p, 1))
	}
	for range swing.NumParts {
		next := swing.Part(0)
		for p := range swing.NumParts {
			if gaps[p] < gaps[next] {
				next = p
			}
		}
		g := gaps[next]
		if g >= q.best {
			return
		}
		gaps[next] = math.Inf(1)
		q.descend(t, index, next, 1, g)
	}
}

// Tree answers repeated box queries over one or several tracks, for instance
// the members of a family of swings while the tee, and with it every box in the
// golfer frame, moves. The tracks must not be Reset while it is in use.
type Tree struct {
	tracks []*Track
	boxes  []geom.Box // of each whole track
	hull   *hull      // nil when the tracks do not share their times
}

// NewTree returns the tree over the tracks; contacts name a track by its index.
func NewTree(tracks ...*Track) *Tree {
	t := &Tree{tracks: tracks, boxes: make([]geom.Box, len(tracks))}
	for i, tr := range tracks {
		t.boxes[i] = geom.EmptyBox()
		for p := range swing.NumParts {
			t.boxes[i] = t.boxes[i].Union(tr.node(p, 1))
		}
	}
	t.hull = newHull(tracks)
	return t
}

// Clearance returns the nearest (or deepest) contact of any track with the
// box, golfer frame, with the promise of Track.Clearance.
func (t *Tree) Clearance(b geom.Box) Contact {
	c, _ := t.ClearanceWithin(b, math.Inf(1))
	return c
}

// ClearanceWithin is Clearance for a caller who only wants to know of contacts
// nearer than limit (m): it costs next to nothing when there is none, and then
// returns false and a contact whose Clearance is limit.
func (t *Tree) ClearanceWithin(b geom.Box, limit float64) (Contact, bool) {
	return t.ClearanceBetween(b, math.Inf(-1), limit)
}

// ClearanceBetween is ClearanceWithin for a caller to whom all clearances up to
// enough (m) are the same: it stops at a contact as near as that, and there may
// be nearer ones.
func (t *Tree) ClearanceBetween(b geom.Box, enough, limit float64) (Contact, bool) {
	s := Surface{Kind: Solid, Box: b}
	q := newSearch(&s, limit)
	q.enough = enough
	first, near := 0, math.Inf(1)
	for i := range t.boxes {
		if g := s.gap(&t.boxes[i]); g < near {
			first, near = i, g
		}
	}
	if near >= limit {
		return q.contact()
	}
	if t.hull != nil {
		q.through(t.hull)
		return q.contact()
	}
	q.scan(t.tracks[first], first)
	for i := range t.boxes {
		if i != first && s.gap(&t.boxes[i]) < q.best && q.best > enough {
			q.scan(t.tracks[i], i)
		}
	}
	return q.contact()
}
