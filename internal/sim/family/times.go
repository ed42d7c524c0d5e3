package family

import (
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Chord deviations (m): what a clearance that counts may be less than the true
// one by, and how coarsely a family is first looked over.
const (
	fineTolerance   = 0.0015
	coarseTolerance = 0.004
)

// coarseLoss bounds what a coarse look takes off a clearance, m: the strays at
// coarseTolerance, which are estimated from second differences with a margin.
const coarseLoss = 0.03

// longestStep bounds a coarse step, s: over a longer one the second differences
// that bound the stray would say little.
const longestStep = 0.08

// coarseTimes picks the fewest of a fine track's times, going forward, between
// which no part leaves its chord by more than tol (m). The five points looked at
// move farthest and most sharply; all others hang between them.
func coarseTimes(fine *sweep.Track, tol float64) []float64 {
	times, poses := fine.Samples()
	points := func(p *swing.Pose) [5]geom.Vec {
		return [5]geom.Vec{p[swing.Clubhead].B, p[swing.Grip].A, p[swing.LeadUpperArm].B, p[swing.TrailUpperArm].B, p[swing.Head].B}
	}
	strays := func(from, to int) bool {
		a, b := points(&poses[from]), points(&poses[to])
		for k := from + 1; k < to; k++ {
			share := (times[k] - times[from]) / (times[to] - times[from])
			for i, p := range points(&poses[k]) {
				if geom.Norm(r3.Sub(p, geom.Lerp(a[i], b[i], share))) > tol {
					return true
				}
			}
		}
		return false
	}
	out := []float64{times[0]}
	from := 0
	for to := 1; to < len(times); to++ {
		if last := to == len(times)-1; last || times[to+1]-times[from] > longestStep || strays(from, to+1) {
			out = append(out, times[to])
			from = to
		}
	}
	return out
}
