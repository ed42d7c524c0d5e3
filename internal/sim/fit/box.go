package fit

import (
	"math"
	"slices"

	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// A box is measured first against the tree of farthest-reaching members. The
// nearest of all members may come a little nearer where the sweep is hollow and
// the box sits in the hollow.
const (
	// hollow is how much nearer, m: the largest seen over boxes all round a
	// golfer is 0.03 (TestTreeHoldsTheSample).
	hollow = 0.04
	// nearBox is the cautious clearance (m) under which every member is tried.
	nearBox = 0.30
)

// againstBox returns the least clearance of any member to a box, that of the
// central swing, and which member it is; it marks in touched the members of the
// sample that touch the box. Within nearBox the least is that of all members;
// farther off it is that of the tree less hollow.
func (r *relatives) againstBox(s sweep.Surface, touched []bool) (least, typical float64, who *reach) {
	c := r.tree.Clearance(s.Box)
	least, who = c.Clearance, r.far[c.Track]
	typical = r.tracks[0].Clearance(s).Clearance
	if least >= nearBox+hollow {
		return min(typical, least-hollow), typical, who
	}
	r.visit(s, least, len(r.sample), func(i int) *reach { return &r.sample[i] }, func(i int, t *sweep.Track) {
		if c, near := t.ClearanceWithin(s, max(0, least)); near {
			touched[i] = touched[i] || c.Clearance < 0
			if c.Clearance < least {
				least, who = c.Clearance, &r.sample[i]
			}
		}
	})
	return least, typical, who
}

// nearestTo returns the least clearance that againstBox finds, and nothing else.
func (r *relatives) nearestTo(s sweep.Surface) float64 {
	least := r.tree.Clearance(s.Box).Clearance
	if least >= nearBox+hollow {
		return least - hollow
	}
	r.visit(s, least, len(r.sample), func(i int) *reach { return &r.sample[i] }, func(_ int, t *sweep.Track) {
		if c, near := t.ClearanceWithin(s, least); near {
			least = c.Clearance
		}
	})
	return least
}

// singleClearances returns the clearance to a box of each trait alone at −1 and
// +1 standard deviation.
func (r *relatives) singleClearances(s sweep.Surface) []float64 {
	out := make([]float64, len(r.singles))
	for i := range out {
		out[i] = math.Inf(1)
	}
	// No trait alone stays as far off as look.
	look := r.tracks[0].Clearance(s).Clearance + 0.1
	r.visit(s, look, len(r.singles), func(i int) *reach { return &r.singles[i] }, func(i int, t *sweep.Track) {
		out[i] = min(out[i], t.Clearance(s).Clearance)
	})
	return out
}

// visit runs n members past a box and calls see with a track for every stretch
// of every member in which one of the farthest-reaching members is within least
// of the box, or little more.
func (r *relatives) visit(s sweep.Surface, least float64, n int, member func(i int) *reach, see func(i int, t *sweep.Track)) {
	runs, clubOnly := r.stretches(s, max(0, least)+hollow+lookBack)
	track := &sweep.Track{}
	var poses []swing.Pose
	for _, span := range runs {
		r.family.SetTimes(span)
		poses = slices.Grow(poses[:0], len(span))[:len(span)]
		if clubOnly { // the rest stays where the central swing has it, which is farther off
			r.family.Poses(r.central.swing, poses)
		}
		for i := range n {
			if clubOnly {
				r.family.ClubPoses(member(i).swing, poses)
			} else {
				r.family.Poses(member(i).swing, poses)
			}
			track.Reset(span, poses)
			see(i, track)
		}
	}
}

// stretches returns the times at which any part of any of the farthest-reaching
// members is within look (m) of a box, as unbroken runs with one more moment on
// either side, for the curvature there; and whether all those parts are the
// club's.
func (r *relatives) stretches(s sweep.Surface, look float64) (runs [][]float64, clubOnly bool) {
	times, _ := r.tracks[0].Samples()
	near := make([]bool, len(times))
	clubOnly = true
	for _, t := range r.tracks {
		_, poses := t.Samples()
		for part := range swing.NumParts {
			if s.Box.Gap(t.Bounds(part)) >= look {
				continue
			}
			for j := range poses {
				if s.Box.Gap(poses[j][part].Bounds()) < look {
					near[j] = true
					clubOnly = clubOnly && part >= swing.Grip
				}
			}
		}
	}
	for from := 0; from < len(near); from++ {
		if !near[from] {
			continue
		}
		to := from
		for to < len(near) && near[to] {
			to++
		}
		runs = append(runs, times[max(0, from-1):min(len(times), to+1)])
		from = to
	}
	return runs, clubOnly
}
