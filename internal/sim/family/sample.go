package family

import (
	"cmp"
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

// lookout is what scouts look at: the moments, and the member there.
type lookout struct {
	times  []float64
	parts  []swing.Parts // what is looked at, moment by moment
	poses  []swing.Pose
	radius [swing.NumParts]float64
	reach  []float64 // scratch: end by end of a scout
	bend   []float64 // scratch: the second derivative of one
}

// measure fills how far every member reaches along each of the family's
// directions.
func (r *Relatives) measure() {
	scouts, l := r.lookout()
	for m := range r.All() {
		r.reach(m, scouts, l)
	}
	// The corners were climbed to from the central swing. What goes farther lies beyond
	// somebody else, most likely whoever of the sample goes farthest.
	known := len(r.Far)
	for k, n := range r.dirs {
		least := func(a, b *Member) int { return cmp.Compare(a.least[k], b.least[k]) }
		start := slices.MinFunc(r.Sample, least)
		at := extremeOf(r.glance(start, scouts[k].parts(), r.Times), n)
		look := func(m *Member) event { return extremeOf(r.around(m, at.time), n) }
		if m, e := r.climb(start, look(start), look); e.value < slices.MinFunc(r.Far[:known], least).least[k] {
			r.keep(m)
		}
	}
	scouts, l = r.lookout()
	for _, m := range r.Far[known:] {
		r.reach(m, scouts, l)
	}
	r.least, r.loosest = make([]float64, len(scouts)), make([]*Member, len(scouts))
	for k := range scouts {
		for {
			var best *Member
			for m := range r.All() {
				if best == nil || m.least[k] < best.least[k] {
					best = m
				}
			}
			if best == r.loosest[k] { // looked at closely already
				break
			}
			r.loosest[k] = best
			r.pose(best, l)
			best.least[k] = scouts[k].least(best.Swing, l, fineTolerance)
		}
		r.least[k] = r.loosest[k].least[k]
	}
}

// reach fills how far a member reaches.
func (r *Relatives) reach(m *Member, scouts []scout, l *lookout) {
	r.pose(m, l)
	m.least = make([]float64, len(scouts))
	for k := range scouts {
		m.least[k] = scouts[k].least(m.Swing, l, sampleTolerance)
	}
}

// pose puts a member before the scouts.
func (r *Relatives) pose(m *Member, l *lookout) {
	r.Family.SetTimes(l.times)
	r.Family.PosesOf(m.Swing, l.parts, l.poses)
}

// lookout finds the ends to look at in each of the family's directions, and the
// moments: those at which some end of a farthest-reaching member reaches about
// as far as any member must.
func (r *Relatives) lookout() (scouts []scout, l *lookout) {
	kept := make([]bool, len(r.Times)) // for any direction
	keeps := make([][]bool, len(r.dirs))
	l = &lookout{}
	_, poses := r.coarse.Samples()
	for part := range l.radius {
		l.radius[part] = poses[0][part].R
	}
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
		for j := range keep {
			kept[j] = kept[j] || keep[j]
		}
		keeps[k] = keep
		scouts = append(scouts, scout{dir: n, ends: ends})
	}
	for j, k := range kept {
		if !k {
			continue
		}
		at := len(l.times)
		l.times, l.parts = append(l.times, r.Times[j]), append(l.parts, 0)
		for k := range scouts {
			if !keeps[k][j] {
				continue
			}
			l.parts[at] |= scouts[k].parts()
			if runs := &scouts[k].runs; j > 0 && keeps[k][j-1] {
				(*runs)[len(*runs)-1][1] = at
			} else {
				*runs = append(*runs, [2]int{at, at})
			}
		}
	}
	n := len(l.times)
	l.poses = make([]swing.Pose, n)
	l.reach, l.bend = make([]float64, n*2*int(swing.NumParts)), make([]float64, n)
	return scouts, l
}

// look fills reach with N·p of one end in the scout's runs, and returns the least value.
func (sc *scout) look(l *lookout, e end, reach []float64) float64 {
	n, least := sc.dir, math.Inf(1)
	radius := l.radius[e.part]
	for _, run := range sc.runs {
		for j := run[0]; j <= run[1]; j++ {
			c := &l.poses[j][e.part]
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

// bends fills the scratch of a lookout with the size of the second derivative of what
// an end reaches in the scout's runs, where it may go beyond least in a step.
func (sc *scout) bends(l *lookout, reach []float64, least float64) {
	for _, run := range sc.runs {
		from, to := run[0], run[1]
		for j := from + 1; j < to; j++ {
			if reach[j] > least+3*lookBack { // no step here will matter
				l.bend[j] = 0
				continue
			}
			a, b := l.times[j]-l.times[j-1], l.times[j+1]-l.times[j]
			l.bend[j] = 2 * math.Abs((reach[j+1]-reach[j])/b-(reach[j]-reach[j-1])/a) / (a + b)
		}
		if to > from+1 {
			l.bend[from], l.bend[to] = l.bend[from+1], l.bend[to-1]
		} else {
			l.bend[from], l.bend[to] = 0, 0
		}
	}
}

// least returns the smallest N·p of the scout's ends over a member's motion,
// less what they may stray between the moments, which is at most tol where it
// counts. The stray is bounded as sweep.Track bounds it, from second
// differences, but of N·p itself.
func (sc *scout) least(s *swing.Swing, l *lookout, tol float64) float64 {
	const safety = 1.5
	n := len(l.times)
	best := math.Inf(1)
	// What any end reaches at a moment is reached; only a step that may go beyond
	// all of that needs a closer look.
	for i, e := range sc.ends {
		if v := sc.look(l, e, l.reach[i*n:][:n]); v < best {
			best = v
		}
	}
	for i, e := range sc.ends {
		reach := l.reach[i*n:][:n]
		sc.bends(l, reach, best)
		for _, run := range sc.runs {
			for j := run[0]; j < run[1]; j++ {
				low, bend := reach[j], l.bend[j]
				if reach[j+1] < low {
					low = reach[j+1]
				}
				if l.bend[j+1] > bend {
					bend = l.bend[j+1]
				}
				h := l.times[j+1] - l.times[j]
				stray := safety * bend * h * h / 8
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
