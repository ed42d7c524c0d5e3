package sweep

import (
	"math"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// Tolerances of the promise that the package makes, in metres.
const (
	// Tolerance bounds how far a reported clearance may lie above the true
	// minimum of the motion.
	Tolerance = 0.002
	// FineTolerance is the chord deviation to ask of Sample so that a reported
	// clearance is also never more than Tolerance below the true minimum.
	FineTolerance = 0.00075
	// searchTolerance is where the branch-and-bound search stops.
	searchTolerance = 0.0001
)

// Motion is a golfer with a club in motion, from t = 0 to Duration, seconds.
type Motion interface {
	Duration() float64
	PoseAt(t float64) swing.Pose
}

// Contact is the nearest (or deepest) meeting of a motion and a surface.
type Contact struct {
	Clearance float64    // signed, m; negative: how far past the surface
	Part      swing.Part //
	Time      float64    // s
	OnSurface geom.Vec   // the point of the surface, in the surface's frame
	OnPart    geom.Vec   // the point of the part
	Track     int        // which track of a Tree; 0 otherwise
}

// Track is a sampled motion that knows how far the true motion can stray from
// it, and so can be asked for certain clearances.
//
// Between two samples every part is taken to move on the chord: its two ends go
// straight at constant speed. With |x″| ≤ a over a step h the true end lies
// within a/2·τ(h−τ) of the chord at time τ into the step, at most a·h²/8 (the
// error of linear interpolation, Davis 1975, theorem 3.1.1). The bound a is
// not given but estimated: the largest second difference at the step's two ends
// times curvatureSafety. A capsule is the convex hull of its end balls, so it
// strays no farther than its worse end, and no signed distance changes by more
// than that. Every query subtracts the stray.
//
// The estimate can fail for motions with content above about a quarter of the
// sampling rate, and a velocity that jumps between two samples is under-estimated
// by up to a factor 2.7 (an impulse in the middle of the step); Tolerance leaves
// room for that as long as the stray is at most FineTolerance.
//
// A Track keeps buffers and is not for concurrent use. It keeps the slices it
// was given and does not change them.
type Track struct {
	times []float64
	poses []swing.Pose
	// stray2 is the squared chord deviation (m²), part by part, per step.
	stray2  []float64
	nodes   []geom.Box              // part by part, see tree.go
	leaves  int                     // leaves of each part's tree, a power of two
	perLeaf int                     // steps that share a leaf
	worst2  [swing.NumParts]float64 // largest stray2 of the part
	twigs   []twig                  // scratch of measure, per leaf
	lens    []lens                  // per sample
	lensOf  []float64               // the times for which they are
	packed  *packed                 // where poses and stray2 are, once they are packed
}

// curvatureSafety multiplies the second differences that stand in for the
// largest |x″| of a step. Over a step of 1/60 s a movement of 8 Hz peaks at most
// 1.25 times above the second differences at the step's ends; the rest is margin.
const curvatureSafety = 1.5

// NewTrack returns the track through poses at times (s, rising). It panics when
// the two differ in length, are empty, or the times do not rise.
func NewTrack(times []float64, poses []swing.Pose) *Track {
	t := &Track{}
	t.Reset(times, poses)
	return t
}

// Reset makes the track that of NewTrack, reusing its buffers. Neither times nor poses
// are to be changed after that.
func (t *Track) Reset(times []float64, poses []swing.Pose) {
	t.ResetParts(swing.AllParts, times, poses)
}

// ResetParts is Reset for a caller to whom only some parts matter: the others are
// taken to be nowhere.
func (t *Track) ResetParts(parts swing.Parts, times []float64, poses []swing.Pose) {
	if len(times) != len(poses) || len(times) == 0 {
		panic(fmt.Sprintf("sweep: %d times for %d poses", len(times), len(poses)))
	}
	for i := 1; i < len(times); i++ {
		if !(times[i] > times[i-1]) {
			panic(fmt.Sprintf("sweep: time %v after time %v", times[i], times[i-1]))
		}
	}
	if len(times) == 1 {
		// Somebody who stands still is a step from a pose to itself.
		times = []float64{times[0], times[0]}
		poses = []swing.Pose{poses[0], poses[0]}
	}
	t.times, t.poses, t.packed = times, poses, nil
	t.measure(parts)
}

// Duration returns the time (s) from the first sample to the last.
func (t *Track) Duration() float64 { return t.times[len(t.times)-1] - t.times[0] }

// Samples returns the times and poses of the track; they are not to be changed. The
// poses of a packed track are gone.
func (t *Track) Samples() ([]float64, []swing.Pose) { return t.times, t.poses }

// Stray returns the largest distance (m) by which any part may leave its chord.
func (t *Track) Stray() float64 {
	worst := 0.0
	for _, w := range t.worst2 {
		worst = max(worst, w)
	}
	return math.Sqrt(worst)
}

// Bounds returns a box (golfer frame) that holds the whole motion of a part.
func (t *Track) Bounds(p swing.Part) geom.Box { return t.node(p, 1) }

// steps returns the number of steps between samples.
func (t *Track) steps() int { return len(t.times) - 1 }

// stray returns the chord deviation (m) of a part in a step.
func (t *Track) stray(step int, p swing.Part) float64 {
	if t.packed != nil {
		return float64(t.packed.strays[int(p)*t.steps()+step])
	}
	return math.Sqrt(t.stray2[int(p)*t.steps()+step])
}

// grow returns s with length n, reallocating only when it must.
func grow[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}
