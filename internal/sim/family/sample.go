package family

import (
	"math"
	"slices"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// end is one end of a part's capsule.
type end struct {
	part swing.Part
	b    bool
}

// of returns the end's centre and radius in a pose.
func (e end) of(p *swing.Pose) (geom.Vec, float64) {
	c := &p[e.part]
	return *e.on(c), c.R
}

// on returns the end's centre of its part.
func (e end) on(c *geom.Capsule) *geom.Vec {
	if e.b {
		return &c.B
	}
	return &c.A
}

// lookBack is how far (m) behind the least reach of any member a part must stay,
// in every one of the farthest-reaching members, to be left out at a moment.
const lookBack = 0.06

// sampleTolerance is how much less (m) the reach of a member of the sample may
// be given than it is. Whoever reaches farthest is looked at again more closely.
const sampleTolerance = 0.004

// How closely a member was looked at along a direction: at rough times, which tell only
// whom to look at again, within sampleTolerance, within fineTolerance.
const (
	roughLook = iota
	sampleLook
	fineLook
)

// scout is what is worth looking at in one direction: the ends of parts that may
// reach farthest, and the runs of moments at which they may, from the first to
// the last of each, by their numbers in the lookout.
type scout struct {
	dir  geom.Vec
	ends []end
	runs [][2]int
}

// parts returns the parts that the scout's ends are of.
func (sc *scout) parts() (out swing.Parts) {
	for _, e := range sc.ends {
		out |= e.part.Set()
	}
	return out
}

// lookout is what scouts look at, and the scouts, one for each of the family's directions.
type lookout struct {
	times  []float64
	parts  []swing.Parts // what is looked at, moment by moment
	radius [swing.NumParts]float64
	scouts []scout
}

// measure fills how far every member reaches along each of the family's
// directions.
func (r *Relatives) measure() {
	var rough *lookout
	rough, r.close = r.lookouts()
	for _, m := range r.Sample {
		r.reach(m, rough, math.Inf(1), roughLook)
	}
	for _, m := range slices.Concat(r.Far, r.Singles) {
		r.reach(m, r.close, sampleTolerance, sampleLook)
	}
	// The corners were climbed to from the central swing. What goes farther lies beyond
	// somebody else, most likely whoever of the sample goes farthest.
	known := len(r.Far)
	for k, n := range r.dirs {
		start, far := r.farthest(k, sampleLook, r.Sample), r.farthest(k, sampleLook, r.Far[:known])
		at := extremeOf(r.glance(start, r.close.scouts[k].parts(), r.Times), n)
		look := func(m *Member) event { return extremeOf(r.around(m, at.time), n) }
		if m, e := r.climb(start, look(start), look); e.value < far.least[k] {
			r.keep(m)
		}
	}
	if len(r.Far) > known {
		_, r.close = r.lookouts()
		for _, m := range r.Far[known:] {
			r.reach(m, r.close, sampleTolerance, sampleLook)
		}
	}
	all := r.All()
	for k := range r.dirs {
		r.loosest = append(r.loosest, r.farthest(k, fineLook, all))
		r.least = append(r.least, r.loosest[k].least[k])
	}
}

// reach fills how far a member reaches, as one look tells.
func (r *Relatives) reach(m *Member, l *lookout, tol float64, look uint8) {
	r.Family.SetTimes(l.times)
	poses := r.scratch.posesFor(len(l.times))
	r.Family.PosesOf(m.Swing, l.parts, poses)
	m.least, m.look = make([]float64, len(l.scouts)), make([]uint8, len(l.scouts))
	for k := range l.scouts {
		m.least[k], m.look[k] = l.scouts[k].least(m.Swing, l, r.scratch, tol), look
	}
}

// closer looks at a member once more closely along direction k.
func (r *Relatives) closer(m *Member, k int) {
	tol := sampleTolerance
	if m.look[k]++; m.look[k] == fineLook {
		tol = fineTolerance
	}
	l := r.close
	sc := &l.scouts[k]
	poses := r.scratch.posesFor(len(l.times))
	for _, run := range sc.runs {
		r.Family.SetTimes(l.times[run[0] : run[1]+1])
		r.Family.Poses(m.Swing, sc.parts(), poses[run[0]:])
	}
	least := sc.least(m.Swing, l, r.scratch, tol)
	if m.look[k] == sampleLook && least < m.least[k] {
		// Both are cautious, the rough look for once less. What it ruled out stays so,
		// whatever is asked first.
		return
	}
	m.least[k] = least
}

// farthest returns who of some members reaches farthest along direction k, looked at as
// closely as look. Only whoever may be that one is.
func (r *Relatives) farthest(k int, look uint8, members []*Member) *Member {
	for {
		best := members[0]
		for _, m := range members {
			if m.least[k] < best.least[k] {
				best = m
			}
		}
		if best.look[k] >= look {
			return best
		}
		r.closer(best, k)
	}
}

// beyond reports whether a member of the sample reaches beyond d (m) along direction k.
func (r *Relatives) beyond(m *Member, k int, d float64) bool {
	if m.least[k] < d && m.look[k] == roughLook {
		r.closer(m, k)
	}
	return m.least[k] < d
}

// lookouts finds the ends to look at in each of the family's directions, and the
// moments, of the rough and of the coarse times: those at which some end of a
// farthest-reaching member reaches about as far as any member must.
func (r *Relatives) lookouts() (rough, close *lookout) {
	rough, close = &lookout{times: r.rougher}, &lookout{times: r.Times}
	_, poses := r.coarse.Samples()
	for part := range close.radius {
		close.radius[part] = poses[0][part].R
	}
	rough.radius = close.radius
	keeps := make([][]bool, len(r.dirs))
	for k, n := range r.dirs {
		// Whoever reaches least still reaches this far.
		least := math.Inf(-1)
		for _, t := range r.tracks {
			least = max(least, extremeOf(t, n).value)
		}
		least += lookBack
		var ends []end
		keep := make([]bool, len(r.Times))
		for _, t := range r.tracks {
			_, poses := t.Samples()
			for part := range swing.NumParts {
				if b := t.Bounds(part); b.Reach(n) > least {
					continue
				}
				for _, e := range []end{{part, false}, {part, true}} {
					near := false
					for j := range poses {
						at, radius := e.of(&poses[j])
						if geom.Dot(n, at)-radius < least {
							near = true
							// One more moment on either side, for the curvature there.
							keep[max(j-1, 0)], keep[j], keep[min(j+1, len(keep)-1)] = true, true, true
						}
					}
					if near && !slices.Contains(ends, e) {
						ends = append(ends, e)
					}
				}
			}
		}
		keeps[k] = keep
		close.scouts = append(close.scouts, scout{dir: n, ends: ends})
		rough.scouts = append(rough.scouts, scout{dir: n, ends: ends})
	}
	close.choose(keeps)
	for k, keep := range keeps {
		keeps[k] = make([]bool, len(r.rougher))
		for j, kept := range keep {
			for i := range r.rougher {
				before, after := r.rougher[max(0, i-1)], r.rougher[min(len(r.rougher)-1, i+1)]
				if kept && r.Times[j] >= before && r.Times[j] <= after {
					keeps[k][i] = true
				}
			}
		}
	}
	rough.choose(keeps)
	return rough, close
}

// choose leaves of the lookout's times those that any of its scouts keeps.
func (l *lookout) choose(keeps [][]bool) {
	times := l.times
	l.times = nil
	for j, t := range times {
		at := len(l.times)
		var parts swing.Parts
		for k, keep := range keeps {
			if !keep[j] {
				continue
			}
			sc := &l.scouts[k]
			parts |= sc.parts()
			if j > 0 && keep[j-1] {
				sc.runs[len(sc.runs)-1][1] = at
			} else {
				sc.runs = append(sc.runs, [2]int{at, at})
			}
		}
		if parts != 0 {
			l.times, l.parts = append(l.times, t), append(l.parts, parts)
		}
	}
}

// look fills reach with N·p of one end in the scout's runs, and returns the least value.
func (sc *scout) look(l *lookout, poses []swing.Pose, e end, reach []float64) float64 {
	n, least := sc.dir, math.Inf(1)
	radius := l.radius[e.part]
	for _, run := range sc.runs {
		for j := run[0]; j <= run[1]; j++ {
			c := &poses[j][e.part]
			at := &c.A
			if e.b {
				at = &c.B
			}
			v := n.X*at.X + n.Y*at.Y + n.Z*at.Z - radius
			reach[j] = v
			if v < least {
				least = v
			}
		}
	}
	return least
}

// bends fills bend with the size of the second derivative of what an end reaches in the
// scout's runs, where it may go beyond least in a step.
func (sc *scout) bends(l *lookout, reach, bend []float64, least float64) {
	for _, run := range sc.runs {
		from, to := run[0], run[1]
		for j := from + 1; j < to; j++ {
			if reach[j] > least+3*lookBack { // no step here will matter
				bend[j] = 0
				continue
			}
			a, b := l.times[j]-l.times[j-1], l.times[j+1]-l.times[j]
			bend[j] = 2 * math.Abs((reach[j+1]-reach[j])/b-(reach[j]-reach[j-1])/a) / (a + b)
		}
		if to > from+1 {
			bend[from], bend[to] = bend[from+1], bend[to-1]
		} else {
			bend[from], bend[to] = 0, 0
		}
	}
}

// least returns the smallest N·p of the scout's ends over a member's motion, whose poses
// at the moments of a lookout are in a scratch,
// less what they may stray between the moments, which is at most tol where it
// counts. The stray is bounded as sweep.Track bounds it, from second
// differences, but of N·p itself.
func (sc *scout) least(s *swing.Swing, l *lookout, room *scratch, tol float64) float64 {
	const safety = 1.5
	n := len(l.times)
	room.reach = slices.Grow(room.reach[:0], n*(len(sc.ends)+1))
	all := room.reach[:n*(len(sc.ends)+1)]
	bend := all[n*len(sc.ends):]
	best := math.Inf(1)
	// What any end reaches at a moment is reached; only a step that may go beyond
	// all of that needs a closer look.
	for i, e := range sc.ends {
		if v := sc.look(l, room.poses, e, all[i*n:][:n]); v < best {
			best = v
		}
	}
	for i, e := range sc.ends {
		reach := all[i*n:][:n]
		sc.bends(l, reach, bend, best)
		for _, run := range sc.runs {
			for j := run[0]; j < run[1]; j++ {
				low, most := reach[j], bend[j]
				if reach[j+1] < low {
					low = reach[j+1]
				}
				if bend[j+1] > most {
					most = bend[j+1]
				}
				h := l.times[j+1] - l.times[j]
				stray := safety * most * h * h / 8
				if low-stray < best {
					best = sc.closer(s, l, e, l.times[j], l.times[j+1], reach[j], reach[j+1], stray, tol, best)
				}
			}
		}
	}
	return best
}

// closer lowers best by what end e does between two moments, halving the step
// until its stray is at most tol.
func (sc *scout) closer(s *swing.Swing, l *lookout, e end, t0, t1, v0, v1, stray, tol, best float64) float64 {
	if low := min(v0, v1) - stray; low >= best || stray <= tol {
		return min(best, low)
	}
	mid := (t0 + t1) / 2
	part := s.PartAt(mid, e.part)
	v := geom.Dot(sc.dir, *e.on(&part)) - l.radius[e.part]
	best = sc.closer(s, l, e, t0, mid, v0, v, stray/4, tol, best)
	return sc.closer(s, l, e, mid, t1, v, v1, stray/4, tol, best)
}
