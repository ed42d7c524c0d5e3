package drawing

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/swing"
)

const (
	// firstIntervals is how many equal stretches Sample starts from. A full
	// swing takes about 3 s, so none hides a movement there and back.
	firstIntervals = 64
	// maxDepth stops the halving; 64·2⁶ stretches of a 3 s swing are 0.7 ms
	// each, in which a clubhead at 60 m/s moves 45 mm.
	maxDepth = 6
	// poseStep is how far (m) the end of a part may move between two poses. The
	// sagitta of a clubhead's arc (radius 1.5 m) over it is 0.2 mm.
	poseStep = 0.05
	// keyTol is how far (m) a part's ends may stray from the straight line
	// between two poses that are kept for it.
	keyTol = 0.003
	// keyStep bounds that line's length (m), for the turn of a part between two
	// kept poses.
	keyStep = 0.12
)

// Motion is one swing reduced to what the drawings need, in the golfer frame.
// It does not depend on the tee: moving the tee only moves it.
type Motion struct {
	sweep [numViews][][]Point
	path  [numViews][]Point
}

// Sample takes poses of a motion that lasts duration seconds, so close that no
// end of any part moves more than about 5 cm from one to the next.
func Sample(poseAt func(t float64) swing.Pose, duration float64) []swing.Pose {
	poses := make([]swing.Pose, 0, 4*firstIntervals)
	var between func(t0 float64, p0 *swing.Pose, t1 float64, p1 *swing.Pose, depth int)
	between = func(t0 float64, p0 *swing.Pose, t1 float64, p1 *swing.Pose, depth int) {
		if depth < maxDepth && farthestMove(p0, p1) > poseStep {
			t := (t0 + t1) / 2
			p := poseAt(t)
			between(t0, p0, t, &p, depth+1)
			between(t, &p, t1, p1, depth+1)
			return
		}
		poses = append(poses, *p1)
	}
	prev := poseAt(0)
	poses = append(poses, prev)
	for i := range firstIntervals {
		t0 := duration * float64(i) / firstIntervals
		t1 := duration * float64(i+1) / firstIntervals
		next := poseAt(t1)
		between(t0, &prev, t1, &next, 0)
		prev = next
	}
	return poses
}

func farthestMove(p, q *swing.Pose) float64 {
	var far float64
	for i := range p {
		far = max(far, r3.Norm2(r3.Sub(p[i].A, q[i].A)), r3.Norm2(r3.Sub(p[i].B, q[i].B)))
	}
	return math.Sqrt(far)
}

// Reduce draws the outlines of everything that the parts sweep through over
// poses (as Sample makes them), and the clubhead's path.
func Reduce(poses []swing.Pose) *Motion {
	if len(poses) == 0 {
		return &Motion{}
	}
	var keys [swing.NumParts][]geom.Capsule
	for part := range swing.NumParts {
		keys[part] = keyframes(poses, part)
	}
	m := &Motion{}
	for view, pr := range projections {
		m.sweep[view] = silhouette(keys[:], pr)
		m.path[view] = path(keys[swing.Clubhead], pr)
	}
	return m
}

// path is the line that the middle of a part draws.
func path(keys []geom.Capsule, pr projection) []Point {
	line := make([]Point, len(keys))
	for i, c := range keys {
		line[i] = pr.flat(r3.Scale(0.5, r3.Add(c.A, c.B)))
	}
	return append(keepFar(nil, line), line[len(line)-1])
}

// keyframes drops the poses of one part that a straight move between their
// neighbours reproduces within keyTol.
func keyframes(poses []swing.Pose, part swing.Part) []geom.Capsule {
	keys := []geom.Capsule{poses[0][part]}
	var between func(lo, hi int) // appends the keys after lo, up to hi
	between = func(lo, hi int) {
		from, to := poses[lo][part], poses[hi][part]
		split, most := 0, keyTol*keyTol
		for j := lo + 1; j < hi; j++ {
			c := &poses[j][part]
			if off := off2(&c.A, &from.A, &to.A); off > most {
				split, most = j, off
			}
			if off := off2(&c.B, &from.B, &to.B); off > most {
				split, most = j, off
			}
		}
		long := max(r3.Norm2(r3.Sub(to.A, from.A)), r3.Norm2(r3.Sub(to.B, from.B))) > keyStep*keyStep
		if split == 0 && long && hi-lo > 1 {
			split = (lo + hi) / 2
		}
		if split == 0 {
			keys = append(keys, to)
			return
		}
		between(lo, split)
		between(split, hi)
	}
	if last := len(poses) - 1; last > 0 {
		between(0, last)
	}
	return keys
}

// off2 is the square of the distance of p from the segment a–b. (Written out, because
// a good part of a drawing goes by here.)
func off2(p, a, b *geom.Vec) float64 {
	abx, aby, abz := b.X-a.X, b.Y-a.Y, b.Z-a.Z
	x, y, z := p.X-a.X, p.Y-a.Y, p.Z-a.Z
	if l := abx*abx + aby*aby + abz*abz; l > 0 {
		s := (x*abx + y*aby + z*abz) / l
		if s < 0 {
			s = 0
		} else if s > 1 {
			s = 1
		}
		x, y, z = x-s*abx, y-s*aby, z-s*abz
	}
	return x*x + y*y + z*z
}
