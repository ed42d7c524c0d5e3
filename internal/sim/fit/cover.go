package fit

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// A map cannot try every member against a box in every place. It takes the
// members in an atlas instead, and from what it finds there it takes off how far
// any other member may be from the nearest of those. Members are followed in the
// atlas until each of the others has one near it all along its way (the greedy
// k-centre method of T. F. Gonzalez 1985, Theor. Comput. Sci. 38:293–306), which
// takes the outermost ones first.
const (
	// coverMoments is at how many moments members are compared, spread evenly along
	// the clubhead's path.
	coverMoments = 30
	// coverNear (m) is how near some followed member should be at each of them, and
	// coverMost is how many members are followed for that.
	coverNear = 0.045
	coverMost = 64
	// between (m) is added to how far any member is from a followed one: for what
	// happens between those moments and elsewhere on the way than where it was
	// looked at.
	between = 0.005
	// outermost is at how many of the moments the atlas looks for members that go
	// farthest off the clubhead's path, and into how many directions.
	outermost = 8
)

// atlas is what maps are made from.
type atlas struct {
	tree   *sweep.Tree
	tracks []*sweep.Track
	extent geom.Box   // around all of the tracks, with hollow to spare
	print  *footprint // nil until asked for

	// hollow is how much nearer (m) than the atlas's members any other may come.
	hollow float64
}

// atlas returns the family's atlas, made at the first call.
func (r *relatives) atlas() *atlas {
	if r.maps != nil {
		return r.maps
	}
	a := &atlas{tracks: append([]*sweep.Track{}, r.tracks...), extent: geom.EmptyBox()}
	chosen, hollow := r.cover()
	for _, m := range chosen {
		a.tracks = append(a.tracks, r.coarse(m))
	}
	a.hollow = hollow
	a.tree = sweep.NewTree(a.tracks...)
	for _, t := range a.tracks {
		for part := range swing.NumParts {
			a.extent = a.extent.Union(t.Bounds(part))
		}
	}
	a.extent = a.extent.Grown(a.hollow)
	r.maps = a
	return a
}

// landmarks are the points of golfer and club by which members are compared: the
// rest hangs between them.
const landmarks = 4

func landmarksOf(p *swing.Pose) [landmarks]geom.Vec {
	head := &p[swing.Clubhead]
	return [landmarks]geom.Vec{geom.Lerp(head.A, head.B, 0.5), p[swing.Grip].A, p[swing.Head].B, p[swing.Pelvis].A}
}

// way is where a member's landmarks are at the cover's moments.
type way [coverMoments][landmarks]geom.Vec

func (r *relatives) wayOf(m *reach, poses []swing.Pose) (w way) {
	r.family.Poses(m.swing, poses)
	for i := range w {
		w[i] = landmarksOf(&poses[i])
	}
	return w
}

// off returns the square of how far (m) a point is from where a landmark of the
// way passes about moment i. To be a little earlier or later on the same way is
// to be nowhere else.
func (w *way) off(i, mark int, at geom.Vec) float64 {
	d := r3.Sub(at, w[i][mark])
	square := geom.Dot(d, d)
	if i == 0 || i == coverMoments-1 {
		return square
	}
	step := r3.Sub(w[i+1][mark], w[i-1][mark])
	if long := geom.Dot(step, step); long > 0 {
		along := min(max(geom.Dot(d, step)/long, -0.25), 0.25) // at most half way to the next
		d = r3.Sub(d, r3.Scale(along, step))
		square = min(square, geom.Dot(d, d))
	}
	return square
}

// cover returns members that, with those that are followed anyhow, cover all
// others, and how far any of those is from the nearest one.
func (r *relatives) cover() ([]*reach, float64) {
	times := r.evenly(coverMoments)
	r.family.SetTimes(times)
	poses := make([]swing.Pose, coverMoments)
	pool := append(r.outermost(times, poses), r.sample...)
	pool = append(pool, r.singles...)
	ways := make([]way, len(pool))
	gaps := make([][coverMoments * landmarks]float64, len(pool)) // squared, to the nearest followed
	for i, m := range pool {
		ways[i] = r.wayOf(m, poses)
		for k := range gaps[i] {
			gaps[i][k] = math.Inf(1)
		}
	}
	follow := func(w *way) {
		for i := range gaps {
			for k := range gaps[i] {
				if g := &gaps[i][k]; *g > coverNear*coverNear/4 {
					*g = min(*g, w.off(k/landmarks, k%landmarks, ways[i][k/landmarks][k%landmarks]))
				}
			}
		}
	}
	for _, m := range r.far {
		w := r.wayOf(m, poses)
		follow(&w)
	}
	farthest := func() (who int, worst float64) {
		for i := range gaps {
			for _, d := range gaps[i] {
				if d > worst {
					who, worst = i, d
				}
			}
		}
		return who, worst
	}
	var chosen []*reach
	for {
		who, worst := farthest()
		if worst <= coverNear*coverNear || len(chosen) == coverMost {
			return chosen, math.Sqrt(worst) + between
		}
		follow(&ways[who])
		chosen = append(chosen, pool[who])
	}
}

// outermost returns the members that go farthest off the clubhead's path in the
// central swing, to all sides of it, at some of the moments that are set.
func (r *relatives) outermost(times []float64, poses []swing.Pose) (out []*reach) {
	central := r.wayOf(r.central, poses)
	ways := make([]way, len(r.singles))
	for i, m := range r.singles {
		ways[i] = r.wayOf(m, poses)
	}
	for i := 1; i < coverMoments-1; i += (coverMoments - 2) / outermost {
		along := r3.Sub(central[i+1][0], central[i-1][0])
		side := geom.Vec{X: -along.Y, Y: along.X}
		if d := geom.Norm(side); d > 0 {
			side = r3.Scale(1/d, side)
		}
		up := r3.Cross(along, side)
		if d := geom.Norm(up); d > 0 {
			up = r3.Scale(1/d, up)
		}
		for k := range outermost {
			s, c := math.Sincos(2 * math.Pi * float64(k) / outermost)
			n := r3.Add(r3.Scale(c, side), r3.Scale(s, up))
			var slope [swing.NumTraits]float64
			for t := range slope {
				slope[t] = r.perDeviation(t, geom.Dot(n, ways[2*t][i][0]), geom.Dot(n, ways[2*t+1][i][0]))
			}
			if m, err := r.member(swing.Corner(slope)); err == nil {
				out = append(out, m)
			}
		}
	}
	return out
}

// evenly returns n times that are spread evenly along the clubhead's path in the
// central swing.
func (r *relatives) evenly(n int) []float64 {
	times, poses := r.fine.Samples()
	along := make([]float64, len(times))
	for i := 1; i < len(times); i++ {
		along[i] = along[i-1] + geom.Norm(r3.Sub(poses[i][swing.Clubhead].B, poses[i-1][swing.Clubhead].B))
	}
	out := make([]float64, 0, n)
	next := 0
	for k := range n {
		for along[next] < along[len(along)-1]*(float64(k)+0.5)/float64(n) {
			next++
		}
		out = append(out, times[next]+1e-6*float64(k)) // rising, also where it stands still
	}
	return out
}
