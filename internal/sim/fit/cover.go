package fit

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// What a box meets may lie where the sweep is hollow, and then the member that
// comes nearest reaches farthest in no direction. So besides those that do,
// members of the sample are followed until each of the others has one near it all
// along its way (the greedy k-centre method of T. F. Gonzalez 1985, Theor. Comput.
// Sci. 38:293–306).
const (
	// coverMoments is at how many moments members are compared, spread evenly along
	// the clubhead's path.
	coverMoments = 30
	// coverNear (m) is how near clubhead and grip of some followed member must be
	// at each of them, and coverMost is how many members are followed for that.
	coverNear = 0.07
	coverMost = 48
)

// atlas is what maps are made from: a tree over more members than a check needs,
// because a map cannot try every member against a box in every place.
type atlas struct {
	tree   *sweep.Tree
	tracks []*sweep.Track
	extent geom.Box   // around all of the tracks, with hollow to spare
	print  *footprint // nil until asked for
}

// atlas returns the family's atlas, made at the first call.
func (r *relatives) atlas() *atlas {
	if r.maps != nil {
		return r.maps
	}
	a := &atlas{tracks: append([]*sweep.Track{}, r.tracks...), extent: geom.EmptyBox()}
	for _, m := range r.cover() {
		a.tracks = append(a.tracks, r.coarse(m))
	}
	a.tree = sweep.NewTree(a.tracks...)
	for _, t := range a.tracks {
		for part := range swing.NumParts {
			a.extent = a.extent.Union(t.Bounds(part))
		}
	}
	a.extent = a.extent.Grown(hollow)
	r.maps = a
	return a
}

// cover returns members of the sample that, with those that are followed, cover
// the rest.
func (r *relatives) cover() []*reach {
	r.family.SetTimes(r.evenly(coverMoments))
	poses := make([]swing.Pose, coverMoments)
	where := func(m *reach) (out [2 * coverMoments]geom.Vec) {
		r.family.ClubPoses(m.swing, poses)
		for i := range poses {
			head := &poses[i][swing.Clubhead]
			out[2*i], out[2*i+1] = geom.Lerp(head.A, head.B, 0.5), poses[i][swing.Grip].A
		}
		return out
	}
	places := make([][2 * coverMoments]geom.Vec, len(r.sample))
	gaps := make([][2 * coverMoments]float64, len(r.sample)) // squared, to the nearest followed
	for i, m := range r.sample {
		places[i] = where(m)
		for k := range gaps[i] {
			gaps[i][k] = math.Inf(1)
		}
	}
	near := func(at *[2 * coverMoments]geom.Vec) {
		for i := range gaps {
			p, g := &places[i], &gaps[i]
			for k := range g {
				x, y, z := p[k].X-at[k].X, p[k].Y-at[k].Y, p[k].Z-at[k].Z
				if d := x*x + y*y + z*z; d < g[k] {
					g[k] = d
				}
			}
		}
	}
	for _, m := range r.far {
		at := where(m)
		near(&at)
	}
	var chosen []*reach
	for range coverMost {
		worst, who := coverNear*coverNear, -1
		for i := range gaps {
			for _, d := range gaps[i] {
				if d > worst {
					worst, who = d, i
				}
			}
		}
		if who < 0 {
			break
		}
		near(&places[who])
		chosen = append(chosen, r.sample[who])
	}
	return chosen
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
