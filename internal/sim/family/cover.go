package family

import (
	"math"
	"slices"

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
	// happens between those moments, and because the loosest swing at a box, which a
	// check climbs to, goes beyond all members that are compared (by climbing hills,
	// 0.02 m beyond the distance without this were found in 60 families).
	between = 0.045
	// outermost is into how many directions off the clubhead's path the atlas looks
	// for members that go farthest.
	outermost = 8
)

// Atlas is what maps are made from.
type Atlas struct {
	tree   *sweep.Tree
	tracks []*sweep.Track
	Extent geom.Box   // around all of the tracks, with hollow to spare
	print  *Footprint // nil until asked for

	// Hollow is how much nearer (m) than the atlas's members any other may come.
	Hollow float64
}

// Atlas returns the family's atlas, made at the first call.
func (r *Relatives) Atlas() *Atlas {
	if r.maps != nil {
		return r.maps
	}
	a := &Atlas{Extent: geom.EmptyBox()}
	chosen, hollow := r.cover()
	for _, m := range slices.Concat(r.Far, chosen) {
		a.tracks = append(a.tracks, r.glance(m, swing.AllParts, r.Times).Packed())
	}
	a.Hollow = hollow
	a.tree = sweep.NewTree(a.tracks...)
	for _, t := range a.tracks {
		for part := range swing.NumParts {
			a.Extent = a.Extent.Union(t.Bounds(part))
		}
	}
	a.Extent = a.Extent.Grown(a.Hollow)
	r.maps = a
	return a
}

// Between returns the cautious clearance (m) to a box of the golfer frame, if it is
// less than limit: that of the atlas's members less its hollow, which no member
// undercuts. All clearances up to enough are the same: what is returned then need
// not be the least.
func (a *Atlas) Between(b geom.Box, enough, limit float64) (float64, bool) {
	if contact, near := a.tree.ClearanceBetween(b, enough+a.Hollow, limit+a.Hollow); near {
		return contact.Clearance - a.Hollow, true
	}
	return limit, false
}

// Caution is how much less (m) a cautious clearance may be than the true one.
func (a *Atlas) Caution() float64 { return a.Hollow + 2*coarseTolerance }

// Rosy is what no box is ever farther away (m) than a cautious clearance says: what
// that one takes off, and what a coarse look does.
func (a *Atlas) Rosy() float64 { return a.Hollow + coarseLoss }

// landmarks are the points of golfer and club by which members are compared: the
// rest hangs between them.
const landmarks = 4

// landmarkParts are the parts that landmarks lie on.
const landmarkParts = 1<<swing.Clubhead | 1<<swing.Grip | 1<<swing.Head | 1<<swing.Pelvis

func landmarksOf(p *swing.Pose) [landmarks]geom.Vec {
	head := &p[swing.Clubhead]
	return [landmarks]geom.Vec{geom.Lerp(head.A, head.B, 0.5), p[swing.Grip].A, p[swing.Head].B, p[swing.Pelvis].A}
}

// way is where a member's landmarks are at the cover's moments.
type way [coverMoments][landmarks]geom.Vec

func (r *Relatives) wayOf(m *Member, poses []swing.Pose) (w way) {
	r.Family.Poses(m.Swing, landmarkParts, poses)
	for i := range w {
		w[i] = landmarksOf(&poses[i])
	}
	return w
}

// passed is a followed member's way, with what it takes to tell how near others come.
type passed struct {
	at, step way                              // where landmarks are, and how far from the moment before to the one after
	long     [coverMoments][landmarks]float64 // the square of that, 0 at both ends
}

func passedOf(w *way) *passed {
	p := &passed{at: *w}
	for i := 1; i < coverMoments-1; i++ {
		for k := range landmarks {
			step := r3.Sub(w[i+1][k], w[i-1][k])
			p.step[i][k], p.long[i][k] = step, geom.Dot(step, step)
		}
	}
	return p
}

// gaps is how far (m², to the nearest that is followed) a member's landmarks are from
// where those of others pass.
type gaps [coverMoments][landmarks]float64

// follow lowers the gaps of a member on its way to one that is followed from now on, and
// returns the largest. To be a little earlier or later on the same way is to be nowhere
// else. What is near enough already is left at that.
func (g *gaps) follow(w *way, by *passed) (worst float64) {
	for i := range g {
		for k := range landmarks {
			gap := g[i][k]
			if gap <= coverNear*coverNear {
				continue
			}
			at, from := &w[i][k], &by.at[i][k]
			d := geom.Vec{X: at.X - from.X, Y: at.Y - from.Y, Z: at.Z - from.Z}
			square := d.X*d.X + d.Y*d.Y + d.Z*d.Z
			if long := by.long[i][k]; long > 0 {
				step := &by.step[i][k]
				along := (d.X*step.X + d.Y*step.Y + d.Z*step.Z) / long // at most half way to the next
				if along > 0.25 {
					along = 0.25
				} else if along < -0.25 {
					along = -0.25
				}
				d = geom.Vec{X: d.X - along*step.X, Y: d.Y - along*step.Y, Z: d.Z - along*step.Z}
				if near := d.X*d.X + d.Y*d.Y + d.Z*d.Z; near < square {
					square = near
				}
			}
			if square < gap {
				gap = square
				g[i][k] = gap
			}
			if gap > worst {
				worst = gap
			}
		}
	}
	return worst
}

// cover returns members that, with those that are followed anyhow, cover all
// others, and how far any of those is from the nearest one.
func (r *Relatives) cover() ([]*Member, float64) {
	times := r.evenly(coverMoments)
	r.Family.SetTimes(times)
	poses := make([]swing.Pose, coverMoments)
	pool := append(r.outermost(times, poses), r.Sample...)
	pool = append(pool, r.Singles...)
	ways := make([]way, len(pool))
	apart := make([]gaps, len(pool))
	for i, m := range pool {
		ways[i] = r.wayOf(m, poses)
		for j := range apart[i] {
			for k := range apart[i][j] {
				apart[i][j][k] = math.Inf(1)
			}
		}
	}
	worst := make([]float64, len(pool)) // the largest of them, 0 where all are near enough
	for i := range worst {
		worst[i] = math.Inf(1)
	}
	follow := func(w *way) {
		by := passedOf(w)
		for i := range apart {
			if worst[i] > 0 {
				if worst[i] = apart[i].follow(&ways[i], by); worst[i] <= coverNear*coverNear {
					worst[i] = 0
				}
			}
		}
	}
	for _, m := range r.Far {
		w := r.wayOf(m, poses)
		follow(&w)
	}
	var chosen []*Member
	for {
		who := 0
		for i := range worst {
			if worst[i] > worst[who] {
				who = i
			}
		}
		if worst[who] == 0 || len(chosen) == coverMost {
			return chosen, max(coverNear, math.Sqrt(worst[who])) + between
		}
		follow(&ways[who])
		chosen = append(chosen, pool[who])
	}
}

// outermost returns members that put the clubhead farthest off its path in the
// central swing, at every second of the moments that are set: to all sides of the
// path, and at the top, where the club turns round, into all directions.
func (r *Relatives) outermost(times []float64, poses []swing.Pose) (out []*Member) {
	central := r.wayOf(r.Central, poses)
	farthest := func(i int, n geom.Vec) {
		e := event{n: n, time: times[i], part: swing.Clubhead}
		m, err := r.member(swing.Corner(r.singleSlopes(&e)))
		if err != nil {
			return
		}
		// Once more from there, because no swing answers quite in proportion.
		if m, err = r.member(swing.Corner(r.slopesAt(m, &e))); err == nil {
			out = append(out, m)
		}
	}
	for i := 1; i < coverMoments-1; i += 2 {
		along := unit(r3.Sub(central[i+1][0], central[i-1][0]))
		side := unit(geom.Vec{X: -along.Y, Y: along.X})
		up := r3.Cross(along, side)
		for k := range outermost {
			s, c := math.Sincos(2 * math.Pi * float64(k) / outermost)
			farthest(i, r3.Add(r3.Scale(c, side), r3.Scale(s, up)))
		}
	}
	top := slices.Index(times, r.Family.Central.TopTime())
	for x := -1.0; x <= 1; x++ {
		for y := -1.0; y <= 1; y++ {
			for z := -1.0; z <= 1; z++ {
				if n := unit(geom.Vec{X: x, Y: y, Z: z}); n != (geom.Vec{}) {
					farthest(top, n)
				}
			}
		}
	}
	return out
}

// unit returns the direction of a vector, or none.
func unit(v geom.Vec) geom.Vec {
	if d := geom.Norm(v); d > 1e-6 {
		return r3.Scale(1/d, v)
	}
	return geom.Vec{}
}

// evenly returns n times that are spread evenly along the clubhead's path in the
// central swing, from its beginning to its end; one of them is the top, where the
// path turns round.
func (r *Relatives) evenly(n int) []float64 {
	times, poses := r.fine.Samples()
	along := make([]float64, len(times))
	for i := 1; i < len(times); i++ {
		along[i] = along[i-1] + geom.Norm(r3.Sub(poses[i][swing.Clubhead].B, poses[i-1][swing.Clubhead].B))
	}
	out := make([]float64, 0, n)
	next, turn := 0, 0
	top := r.Family.Central.TopTime()
	for k := range n {
		for next < len(along)-1 && along[next] < along[len(along)-1]*float64(k)/float64(n-1) {
			next++
		}
		out = append(out, times[next]+1e-6*float64(k)) // rising, also where it stands still
		if math.Abs(out[k]-top) < math.Abs(out[turn]-top) {
			turn = k
		}
	}
	out[turn] = top
	return out
}
