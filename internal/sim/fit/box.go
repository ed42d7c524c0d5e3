package fit

import (
	"math"
	"slices"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// A box is measured first against the tree of farthest-reaching members, and
// against the one member that should come nearest to it.
const (
	// hollow is how much nearer (m) than the atlas's members any other may come,
	// where the sweep is hollow and the box sits in the hollow: the largest seen
	// over boxes, posts, beams and threads all round and inside the sweep of
	// golfers of all manners is 0.042, at nine of ten it is under 0.015
	// (TestTreeHoldsTheSample).
	hollow = 0.05
	// nearBox is the clearance (m) under which every member is tried.
	nearBox = 0.30
	// aside is how much nearer (m) than the one that should come nearest another
	// member may come to a box farther off than that.
	aside = 0.045
)

// againstBox returns the least clearance of any member to a box, that of the
// central swing, and which member it is; it marks in touched the members of the
// sample that touch the box. Within nearBox every member is tried.
func (r *relatives) againstBox(s sweep.Surface, touched []bool) (least, typical float64, who *reach) {
	c := r.tree.Clearance(s.Box)
	typical = r.fine.Clearance(s).Clearance
	least, who = c.Clearance, r.far[c.Track]
	if v, m := r.cornerBox(s, c); v < least {
		least, who = v, m
	}
	if least >= nearBox+aside {
		return min(typical, least-aside), typical, who
	}
	look := r.windows(s, max(0, least)+coarseLoss+hollow+lookBack)
	first := []*reach{who}
	least, who = typical, r.central
	consider := func(members []*reach, clearances []float64) {
		for i, v := range clearances {
			if v < least {
				least, who = v, members[i]
			}
		}
	}
	consider(first, r.pass(s, look.fine, look.clubOnly, first, least))

	// A coarse look says who else may come nearer or touch; those get a close one.
	limit := max(0, least)
	var closer []*reach
	for i, m := range r.far {
		if _, near := r.tracks[i].ClearanceWithin(s, limit); near {
			closer = append(closer, m)
		}
	}
	var inSample []int
	for i, v := range r.pass(s, look.coarse, look.clubOnly, r.sample, limit) {
		touched[i] = touched[i] || v < -coarseLoss
		if v < least || v < 0 && !touched[i] {
			closer = append(closer, r.sample[i])
			inSample = append(inSample, i)
		}
	}
	clearances := r.pass(s, look.fine, look.clubOnly, closer, limit)
	consider(closer, clearances)
	for k, i := range inSample {
		if clearances[len(closer)-len(inSample)+k] < 0 {
			touched[i] = true
		}
	}
	return least, typical, who
}

// cornerBox returns the clearance to a box of the member that what each trait
// does to a contact points at, and that member; or an infinite one when there is
// no telling.
func (r *relatives) cornerBox(s sweep.Surface, c sweep.Contact) (float64, *reach) {
	away := r3.Sub(c.OnPart, c.OnSurface)
	if c.Clearance < 0 {
		away = r3.Scale(-1, away)
	}
	d := geom.Norm(away)
	if d < 1e-6 {
		return math.Inf(1), nil
	}
	away = r3.Scale(1/d, away)
	at := func(m *reach) float64 { return m.swing.PoseAt(c.Time)[c.Part].Reach(away) }
	var slope [swing.NumTraits]float64
	for t := range slope {
		slope[t] = (at(r.singles[2*t+1]) - at(r.singles[2*t])) / 2
	}
	m, err := r.member(swing.Corner(slope))
	if err != nil {
		return math.Inf(1), nil
	}
	// It comes nearest at about the same moment.
	const around = 0.15 // s
	from, _ := slices.BinarySearch(r.times, c.Time-around)
	to, _ := slices.BinarySearch(r.times, c.Time+around)
	times := r.times[max(0, from-1):min(len(r.times), to+1)]
	return r.pass(s, [][]float64{times}, false, []*reach{m}, math.Inf(1))[0], m
}

// nearestTo returns the least clearance that againstBox finds, and nothing else.
func (r *relatives) nearestTo(s sweep.Surface) float64 {
	least, _, _ := r.againstBox(s, make([]bool, len(r.sample)))
	return least
}

// coarseLoss bounds what a coarse look takes off a clearance, m: the strays at
// coarseTolerance, which are estimated from second differences with a margin.
const coarseLoss = 0.03

// singleClearances returns the clearance to a box of each trait alone at −1 and
// +1 standard deviation.
func (r *relatives) singleClearances(s sweep.Surface) []float64 {
	// No trait alone stays as far off as this.
	limit := max(0, r.tracks[0].Clearance(s).Clearance) + 0.15
	look := r.windows(s, limit)
	return r.pass(s, look.coarse, look.clubOnly, r.singles, limit)
}

// windows are the stretches of time in which a family may come near a box.
type windows struct {
	coarse, fine [][]float64 // times, a list for each stretch
	clubOnly     bool        // whether only the club comes near
}

// windows returns the stretches in which any part of any of the farthest-
// reaching members is within look (m) of a box.
func (r *relatives) windows(s sweep.Surface, look float64) (w windows) {
	near := make([]bool, len(r.times))
	w.clubOnly = r.tree.Near(s.Box, look, near) >= swing.Grip
	fine, _ := r.fine.Samples()
	for from := 0; from < len(near); from++ {
		if !near[from] {
			continue
		}
		to := from
		for to < len(near) && near[to] {
			to++
		}
		// One more moment on either side, for the curvature there.
		first, last := max(0, from-1), min(len(near)-1, to)
		w.coarse = append(w.coarse, r.times[first:last+1])
		i, _ := slices.BinarySearch(fine, r.times[first])
		j, _ := slices.BinarySearch(fine, r.times[last])
		w.fine = append(w.fine, fine[i:j+1])
		from = to
	}
	return w
}

// pass runs members past a box and returns the clearance of each, or limit (m)
// for those that stay farther off.
func (r *relatives) pass(s sweep.Surface, stretches [][]float64, clubOnly bool, members []*reach, limit float64) []float64 {
	out := make([]float64, len(members))
	for i := range out {
		out[i] = limit
	}
	if r.track == nil {
		r.track = &sweep.Track{}
	}
	for _, times := range stretches {
		r.family.SetTimes(times)
		r.poses = slices.Grow(r.poses[:0], len(times))[:len(times)]
		if clubOnly { // the rest stays where the central swing has it, which is farther off
			r.family.Poses(r.central.swing, r.poses)
		}
		for i, m := range members {
			if clubOnly {
				r.family.ClubPoses(m.swing, r.poses)
			} else {
				r.family.Poses(m.swing, r.poses)
			}
			if clubOnly {
				r.track.ResetFrom(swing.Grip, times, r.poses)
			} else {
				r.track.Reset(times, r.poses)
			}
			if c, near := r.track.ClearanceWithin(s, out[i]); near {
				out[i] = c.Clearance
			}
		}
	}
	return out
}
