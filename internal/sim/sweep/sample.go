package sweep

import (
	"math"
	"slices"

	"wideberth/internal/sim/swing"
)

const (
	// coarsest (s) is the longest step that Sample starts from.
	coarsest = 1.0 / 60
	// halvings is how often Sample may halve a step, down to 16 µs.
	halvings = 10
)

// Sample returns a track of the whole motion, with steps of at most 1/60 s that
// are halved until no part may stray more than tol metres from its chord (see
// Track). Movement faster than about 25 Hz can hide between the first samples.
func Sample(m Motion, tol float64) *Track {
	dur := m.Duration()
	n := max(int(math.Ceil(dur/coarsest)), 1)
	if !(dur > 0) {
		return NewTrack([]float64{0}, []swing.Pose{m.PoseAt(0)})
	}
	const room = 3 // times the first samples, which most swings take
	times := make([]float64, n+1, room*n)
	poses := make([]swing.Pose, n+1, room*n)
	for i := range times {
		times[i] = dur * float64(i) / float64(n)
		poses[i] = m.PoseAt(times[i])
	}
	t := &Track{}
	for range halvings {
		t.bendAll(times, poses)
		split := 0
		for i := range t.steps() {
			if t.strays(i, tol) {
				split++
			}
		}
		if split == 0 {
			break
		}
		// From the last on, so that each moves once, within the same room.
		old := len(times)
		times, poses = slices.Grow(times, split)[:old+split], slices.Grow(poses, split)[:old+split]
		for i, to := old-1, old+split-1; i < to; i-- {
			times[to], poses[to] = times[i], poses[i]
			to--
			if t.strays(i-1, tol) {
				times[to] = (times[i-1] + times[i]) / 2
				poses[to] = m.PoseAt(times[to])
				to--
			}
		}
	}
	t.Reset(times, poses)
	return t
}

// strays reports whether any part may leave its chord by more than tol in a step.
func (t *Track) strays(step int, tol float64) bool {
	for p := range swing.NumParts {
		if t.stray2[int(p)*t.steps()+step] > tol*tol {
			return true
		}
	}
	return false
}

// Around returns a track of a motion from just before to just after a time (s),
// fine enough for FineTolerance unless a part turns more sharply than any does
// in a swing.
func Around(m Motion, t float64) *Track {
	const half, steps = 0.04, 40 // s
	return evenly(m, max(0, t-half), min(m.Duration(), t+half), steps)
}

// Between returns a track of a motion from one time to another (s, limited to the
// motion's) in steps of at most step, s.
func Between(m Motion, from, to, step float64) *Track {
	from, to = max(0, min(from, m.Duration())), max(0, min(to, m.Duration()))
	if !(to > from) {
		return NewTrack([]float64{from}, []swing.Pose{m.PoseAt(from)})
	}
	return evenly(m, from, to, int(math.Ceil((to-from)/step)))
}

// evenly returns a track of a motion between two times in equal steps.
func evenly(m Motion, from, to float64, steps int) *Track {
	times := make([]float64, 0, steps+1)
	poses := make([]swing.Pose, 0, steps+1)
	for i := range steps + 1 {
		at := from + (to-from)*float64(i)/float64(steps)
		times, poses = append(times, at), append(poses, m.PoseAt(at))
	}
	return NewTrack(times, poses)
}
