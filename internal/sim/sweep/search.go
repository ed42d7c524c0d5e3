package sweep

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// deepest is a limit on the bisection of one step; a bound that it cuts short
// is still a bound.
const deepest = 20

// span is one part's step in a search: its chord and its stray.
type span struct {
	from, to geom.Capsule
	stray    float64
}

func (t *Track) span(step int, p swing.Part) span {
	return span{t.Capsule(step, p), t.Capsule(step+1, p), t.stray(step, p)}
}

// stepBox sets b to a box that holds a part during a step.
func (t *Track) stepBox(step int, p swing.Part, b *geom.Box) {
	stray := t.stray(step, p)
	var lo, hi geom.Vec
	if t.packed != nil {
		at := int(p)*len(t.times) + step
		from, to, r := &t.packed.axes[at], &t.packed.axes[at+1], t.packed.radius[p]
		var l, h [3]float64
		for k := range l {
			low, high := from[k], from[k]
			for _, v := range [3]float32{from[k+3], to[k], to[k+3]} {
				if v < low {
					low = v
				}
				if v > high {
					high = v
				}
			}
			l[k], h[k] = float64(low)-r, float64(high)+r
		}
		lo, hi = geom.Vec{X: l[0], Y: l[1], Z: l[2]}, geom.Vec{X: h[0], Y: h[1], Z: h[2]}
	} else {
		from, to := &t.poses[step][p], &t.poses[step+1][p]
		lo = lower(less(lower(from.A, from.B), from.R), less(lower(to.A, to.B), to.R))
		hi = upper(less(upper(from.A, from.B), -from.R), less(upper(to.A, to.B), -to.R))
	}
	b.Min, b.Max = less(lo, stray), less(hi, -stray)
}

// less returns the point r less along every axis.
func less(v geom.Vec, r float64) geom.Vec { return geom.Vec{X: v.X - r, Y: v.Y - r, Z: v.Z - r} }

// at returns the capsule on the chord at share s of the step.
func (sp *span) at(s float64) geom.Capsule { return sp.from.Lerp(sp.to, s) }

// off returns how far (m) the true part may be from the chord at share s.
func (sp *span) off(s float64) float64 { return 4 * sp.stray * s * (1 - s) }

// offWithin returns the largest off in [a,b].
func (sp *span) offWithin(a, b float64) float64 {
	switch {
	case a >= 0.5:
		return sp.off(a)
	case b <= 0.5:
		return sp.off(b)
	}
	return sp.stray
}

// separate returns the signed distance of a capsule to the surface with its
// direction n and the surface's support along n: for every capsule k,
// k.Reach(n) − support is a lower bound of its signed distance.
func (s *Surface) separate(c geom.Capsule) (d float64, n geom.Vec, support float64) {
	if s.Kind.Flat() {
		return s.Plane.Distance(c), s.Plane.N, s.Plane.D
	}
	sep := s.Box.Separate(c)
	return sep.D, sep.N, s.Box.Support(sep.N)
}

// search is a branch-and-bound minimum of the cautious clearance: the signed
// distance of the chord less what the true motion may stray.
type search struct {
	surface *Surface
	best    float64 // smallest cautious clearance met, m
	low     float64 // smallest lower bound that a branch was cut at, m
	enough  float64 // nothing deeper than this is looked for, m
	track   *Track
	index   int // of the track
	part    swing.Part
	step    int
	share   float64
}

func newSearch(s *Surface, limit float64) search {
	return search{surface: s, best: limit, low: limit, enough: math.Inf(-1)}
}

// bound returns a lower bound of the cautious clearance over the shares [a,b]
// of a span, and the clearance at their middle.
//
// The direction n that separates part and surface at the middle separates at
// every other time by at least reach − support, and the ends of the part move
// straight along the chord, so the least reach is at one end of the stretch.
// The bound closes quadratically as the stretch shrinks.
func (s *Surface) bound(sp *span, a, b float64) (low, mid float64, c cut) {
	m := (a + b) / 2
	d, n, support := s.separate(sp.at(m))
	c = cut{
		a0: geom.Dot(n, sp.from.A) - sp.from.R - support, a1: geom.Dot(n, sp.to.A) - sp.to.R - support,
		b0: geom.Dot(n, sp.from.B) - sp.from.R - support, b1: geom.Dot(n, sp.to.B) - sp.to.R - support,
	}
	return c.least(a, b) - sp.offWithin(a, b), d - sp.off(m), c
}

// cut is how far the ends of a part are beyond a separating plane at the start
// (0) and the end (1) of a step, m.
type cut struct{ a0, a1, b0, b1 float64 }

// least returns the smallest of them between the shares s and e.
func (c *cut) least(s, e float64) float64 {
	da, db := c.a1-c.a0, c.b1-c.b0
	low := c.a0 + s*da
	if v := c.a0 + e*da; v < low {
		low = v
	}
	if v := c.b0 + s*db; v < low {
		low = v
	}
	if v := c.b0 + e*db; v < low {
		low = v
	}
	return low
}

// span searches the shares [a,b] of a span.
func (q *search) span(t *Track, index, step int, p swing.Part, sp *span, a, b float64, depth int) {
	low, mid, cut := q.surface.bound(sp, a, b)
	if mid < q.best {
		q.best, q.track, q.index, q.part, q.step, q.share = mid, t, index, p, step, (a+b)/2
	}
	if q.settled(low) || depth == deepest {
		q.cutAt(low)
		return
	}
	// The plane found at the middle often settles one of the halves.
	m := (a + b) / 2
	for _, h := range [2][2]float64{{a, m}, {m, b}} {
		if low := cut.least(h[0], h[1]) - sp.offWithin(h[0], h[1]); q.settled(low) {
			q.cutAt(low)
		} else {
			q.span(t, index, step, p, sp, h[0], h[1], depth+1)
		}
	}
}

// cutAt notes the lower bound of a branch that is cut. (A comparison: the min builtin
// is a call in WebAssembly.)
func (q *search) cutAt(low float64) {
	if low < q.low {
		q.low = low
	}
}

// settled reports whether a stretch with this lower bound needs no further search.
func (q *search) settled(low float64) bool { return low >= q.best-searchTolerance }

// contact returns what the search found; ok is false when nothing came nearer
// than its limit.
func (q *search) contact() (c Contact, ok bool) {
	if q.track == nil {
		return Contact{Clearance: q.best}, false
	}
	c = q.track.contactAt(q.surface, q.step, q.part, q.share)
	c.Clearance, c.Track = min(q.best, q.low), q.index
	return c, true
}

// contactAt returns the cautious contact of a part with a surface at one time.
func (t *Track) contactAt(s *Surface, step int, p swing.Part, share float64) Contact {
	sp := t.span(step, p)
	k := sp.at(share)
	c := Contact{Part: p, Time: t.times[step] + share*(t.times[step+1]-t.times[step])}
	if s.Kind.Flat() {
		c.Clearance, c.OnPart = s.Plane.Nearest(k)
		c.OnSurface = s.Plane.Project(c.OnPart)
	} else {
		c.Clearance, c.OnSurface, c.OnPart = s.Box.Distance(k)
	}
	c.Clearance -= sp.off(share)
	return c
}

// Gap returns a lower bound (m) of the signed distance between the surface and
// anything inside the box b, in the surface's frame.
func (s *Surface) Gap(b geom.Box) float64 { return s.gap(&b) }

// gap is Gap of a box that is not copied.
func (s *Surface) gap(b *geom.Box) float64 {
	if s.Kind.Flat() {
		return b.Reach(s.Plane.N) - s.Plane.D
	}
	return geom.Gap(&s.Box, b)
}
