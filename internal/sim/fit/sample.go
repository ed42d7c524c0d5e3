package fit

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

func (e end) reach(n geom.Vec, p *swing.Pose) float64 {
	c := &p[e.part]
	if e.b {
		return geom.Dot(n, c.B) - c.R
	}
	return geom.Dot(n, c.A) - c.R
}

// lookBack is how far (m) behind the least reach of any member a part must stay,
// in every one of the farthest-reaching members, to be left out at a moment.
const lookBack = 0.06

// scout is what is worth looking at in one direction: the ends of parts that may
// reach farthest.
type scout struct {
	dir  geom.Vec
	ends []end
}

// drawSample reduces the sampled members. Only the moments and parts near the
// extremes of the tracks (the central swing and the corners) are looked at.
func (r *relatives) drawSample(times []float64) error {
	scouts, look, clubOnly := r.scouts(times)
	r.family.SetTimes(look.times)
	poses := make([]swing.Pose, len(look.times))
	buffer := make([]float64, len(look.times))
	for _, v := range swing.Variations(Sampled, seed) {
		s, err := r.family.Member(v)
		if err != nil {
			return err
		}
		if clubOnly {
			r.family.ClubPoses(s, poses)
		} else {
			r.family.Poses(s, poses)
		}
		m := reach{v, s, make([]float64, len(scouts))}
		for k := range scouts {
			m.least[k] = scouts[k].least(s, look, poses, buffer)
		}
		r.sample = append(r.sample, m)
	}
	return nil
}

// moments are instants to look at; after some of them comes a stretch that
// nobody needs to look at.
type moments struct {
	times []float64
	gap   []bool // whether such a stretch follows
}

// scouts finds the ends to look at in each of the family's directions, the
// moments to look at, and whether they are all on the club.
func (r *relatives) scouts(times []float64) (scouts []scout, look moments, clubOnly bool) {
	kept := make([]bool, len(times))
	clubOnly = true
	for k, n := range r.dirs {
		// Whoever reaches least still reaches this far.
		least := math.Inf(-1)
		for m := range r.all() {
			least = max(least, m.least[k])
		}
		least += lookBack
		var ends []end
		for _, t := range r.tracks {
			_, poses := t.Samples()
			for part := range swing.NumParts {
				if b := t.Bounds(part); b.Reach(n) > least {
					continue
				}
				for _, e := range []end{{part, false}, {part, true}} {
					near := false
					for j := range poses {
						if e.reach(n, &poses[j]) < least {
							near = true
							// One more moment on either side, for the curvature there.
							kept[max(j-1, 0)], kept[j], kept[min(j+1, len(kept)-1)] = true, true, true
						}
					}
					if near && !slices.Contains(ends, e) {
						ends = append(ends, e)
						clubOnly = clubOnly && part >= swing.Grip
					}
				}
			}
		}
		scouts = append(scouts, scout{n, ends})
	}
	for j, k := range kept {
		if k {
			look.times = append(look.times, times[j])
			look.gap = append(look.gap, j+1 < len(kept) && !kept[j+1])
		}
	}
	return scouts, look, clubOnly
}

// least returns the smallest N·p of the scout's ends over a member's motion,
// less what they may stray between the moments. The stray is bounded as
// sweep.Track bounds it, from second differences, but of N·p itself.
func (sc *scout) least(s *swing.Swing, look moments, poses []swing.Pose, v []float64) float64 {
	const safety = 1.5
	best := math.Inf(1)
	times := look.times
	for _, e := range sc.ends {
		for j := range poses {
			v[j] = e.reach(sc.dir, &poses[j])
		}
		bend := func(j int) float64 { // second derivative at moment j
			j = max(1, min(j, len(times)-2))
			a, b := times[j]-times[j-1], times[j+1]-times[j]
			return 2 * math.Abs((v[j+1]-v[j])/b-(v[j]-v[j-1])/a) / (a + b)
		}
		for j := range len(times) - 1 {
			low := min(v[j], v[j+1])
			if low > best+0.1 || look.gap[j] {
				continue
			}
			h := times[j+1] - times[j]
			stray := safety * max(bend(j), bend(j+1)) * h * h / 8
			if low-stray < best {
				best = sc.closer(s, e, times[j], times[j+1], v[j], v[j+1], stray, best)
			}
		}
	}
	return best
}

// closer lowers best by what end e does between two moments, halving the step
// until its stray is small.
func (sc *scout) closer(s *swing.Swing, e end, t0, t1, v0, v1, stray, best float64) float64 {
	if low := min(v0, v1) - stray; low >= best || stray <= familyTolerance {
		return min(best, low)
	}
	mid := (t0 + t1) / 2
	pose := s.PoseAt(mid)
	v := e.reach(sc.dir, &pose)
	best = sc.closer(s, e, t0, mid, v0, v, stray/4, best)
	return sc.closer(s, e, mid, t1, v, v1, stray/4, best)
}
