package sweep

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// alone returns the pose of which one part is c and every other is a point at c's
// first end.
func alone(p swing.Part, c geom.Capsule) swing.Pose {
	var out swing.Pose
	for q := range out {
		out[q] = geom.Capsule{A: c.A, B: c.A}
	}
	out[p] = c
	return out
}

// ballAt is a ball of radius r at x on the x axis.
func ballAt(x, r float64) geom.Capsule {
	return geom.Capsule{A: geom.Vec{X: x}, B: geom.Vec{X: x}, R: r}
}

// beyond is a solid box that begins at x, and across the x axis.
func beyond(x float64) geom.Box {
	return geom.Box{Min: geom.Vec{X: x, Y: -1, Z: -1}, Max: geom.Vec{X: x + 1, Y: 1, Z: 1}}
}

// swathOf is the swath of motions of which all is known.
func swathOf(times []float64, motions ...[]swing.Pose) *Swath {
	w := NewSwath(times, len(motions))
	for k, poses := range motions {
		w.Add(k, 0, slices.Repeat([]swing.Parts{swing.AllParts}, len(times)-1), poses)
	}
	return w
}

// What a step does not ask for may be anything in the poses.
func TestSwathOfSomeParts(t *testing.T) {
	const moments = 7
	times, whole, poses := make([]float64, moments), make([]swing.Pose, moments), make([]swing.Pose, moments)
	for i := range times {
		x := float64(i)
		times[i] = 0.1 * x
		for p := range whole[i] {
			whole[i][p] = geom.Capsule{A: geom.Vec{X: x * x}, B: geom.Vec{X: x * x, Y: float64(p)}, R: 0.1}
			poses[i][p] = ballAt(1e6*float64(1-i%2), 5)
		}
	}
	steps := []swing.Parts{0, swing.Head.Set(), swing.Head.Set() | swing.Clubhead.Set(), swing.Clubhead.Set()} // from step 1 on
	w := NewSwath(times, 1)
	for i, parts := range steps {
		first, end := w.Moments(1+i, 2+i)
		for j := first; j < end; j++ {
			for p := range swing.NumParts {
				if parts.Has(p) {
					poses[j][p] = whole[j][p]
				}
			}
		}
	}
	first, end := w.Moments(1, 1+len(steps))
	w.Add(0, 1, steps, poses[first:end])
	all := swathOf(times, whole)
	for i, parts := range steps {
		for x := -1.0; x < 20; x += 0.25 {
			box := beyond(x)
			for _, limit := range []float64{0.05, 0.5, 3} {
				if got, want := w.Near(1+i, parts, &box, limit), all.Near(1+i, parts, &box, limit); got != want {
					t.Fatalf("in step %d parts %b come within %g of a box at %g, want %b as where all is known", 1+i, got, limit, x, want)
				}
			}
		}
	}
}

// TestSwathOfHeads: heads at a constant acceleration to a box, of which paper
// says how near they come in each step and that they stray 1.5·a·h²/8 from the
// chord. The limits at which the swath begins to say "near" are those figures,
// along every axis, to the box and away from it, whichever end of the head is in
// front.
func TestSwathOfHeads(t *testing.T) {
	for axis, name := range []string{"x", "y", "z"} {
		for _, first := range []bool{true, false} {
			for _, away := range []bool{false, true} {
				t.Run(fmt.Sprintf("%s, A in front: %v, away: %v", name, first, away), func(t *testing.T) { swathOfHeads(t, axis, first, away) })
			}
		}
	}
}

// onAxis is the vector whose coordinate along an axis is v, beside it w and 2w.
func onAxis(axis int, v, w float64) geom.Vec {
	c := [3]float64{}
	c[axis], c[(axis+1)%3], c[(axis+2)%3] = v, w, 2*w
	return geom.Vec{X: c[0], Y: c[1], Z: c[2]}
}

func swathOfHeads(t *testing.T, axis int, first, away bool) {
	const (
		h, a      = 0.1, 2.0 // s, m/s²
		stray     = 1.5 * a * h * h / 8
		small     = 0.04 // m, radius of the first head
		large     = 0.05 // and of the second, which goes for all
		long      = 0.02 // m, how far the end that follows is behind the one that leads
		behind    = 0.25 // m, how far the second head is behind the first
		face      = 2.0  // m, where the box begins
		edge      = 1e-9 // m, around a limit that is reckoned in full
		edgeClubs = 1e-4 // m, around one that is reckoned in short figures
	)
	times := []float64{0, h, 2 * h, 3 * h, 4 * h}
	x := func(i int) float64 {
		if away {
			i = len(times) - 1 - i
		}
		return a * times[i] * times[i] / 2
	}
	foremost := func(step int) float64 { return max(x(step), x(step+1)) }
	motion := func(back, r float64) []swing.Pose {
		var out []swing.Pose
		for i := range times {
			lead, follow := onAxis(axis, x(i)-back, 0.125), onAxis(axis, x(i)-back-long, 0.125)
			pose := alone(swing.Clubhead, geom.Capsule{A: lead, B: lead})
			pose[swing.Clubhead] = geom.Capsule{A: lead, B: follow, R: r}
			if !first {
				pose[swing.Clubhead] = geom.Capsule{A: follow, B: lead, R: r}
			}
			out = append(out, pose)
		}
		return out
	}
	motions := [][]swing.Pose{motion(0, small), motion(behind, large)}
	w := swathOf(times, motions...)
	near := func(b geom.Box, limit float64) (out []swing.Parts) {
		for i := range len(times) - 1 {
			out = append(out, w.Near(i, swing.AllParts, &b, limit))
		}
		return out
	}
	wall := func(at float64) geom.Box { return geom.Box{Min: onAxis(axis, at, -1), Max: onAxis(axis, at+1, 1)} }
	if got := w.Times(); len(got) != len(times) || got[1] != h {
		t.Errorf("Times() = %v, want %v", got, times)
	}
	head := swing.Clubhead.Set()
	s := Surface{Kind: Solid, Box: wall(face)}
	for i := range len(times) - 1 {
		gap := face - foremost(i) - large - stray // of the first motion, a head of the larger radius taken
		for _, c := range []struct {
			by   float64
			near bool
		}{{-edge, false}, {edge, true}} {
			got := near(s.Box, gap+c.by)
			if len(got) != len(times)-1 || got[i]&head != 0 != c.near {
				t.Errorf("step %d: near within %.9f m: %b, want the clubhead in it: %v", i, gap+c.by, got[i], c.near)
			}
			// The points at its leading end are as near as the head less its radius.
			if got := near(s.Box, gap+large+c.by)[i]; got&swing.Trunk.Set() != 0 != c.near {
				t.Errorf("step %d: near within %.9f m: %b, want the trunk in it: %v", i, gap+large+c.by, got, c.near)
			}
		}
		for _, by := range []float64{-edgeClubs, edgeClubs} {
			want := by > 0
			marks := clubsNear(w, i, head, &s, gap+by, gap+behind+by)
			if marks[0] != want || marks[1] != want {
				t.Errorf("step %d: the clubs come within %.4f and %.4f m: %v, want %v of both", i, gap+by, gap+behind+by, marks, want)
			}
			// The grip is a point; asked for with the head, it changes nothing.
			marks = clubsNear(w, i, swing.Grip.Set(), &s, gap+large+by, gap+by)
			if marks[0] != want || marks[1] {
				t.Errorf("step %d: the grips come within %.4f and %.4f m: %v, want %v and false", i, gap+large+by, gap+by, marks, want)
			}
			// One motion alone, with a radius of its own.
			for k, own := range []float64{face - foremost(i) - small - stray, face + behind - foremost(i) - large - stray} {
				if got := w.PartsNear(i, head, &s, &motions[k][i], &motions[k][i+1], own+by); got != want {
					t.Errorf("step %d: motion %d comes within %.4f m: %v, want %v", i, k, own+by, got, want)
				}
				if w.PartsNear(i, swing.Trunk.Set(), &s, &motions[k][i], &motions[k][i+1], own+by) {
					t.Errorf("step %d: the trunk of motion %d comes within %.4f m, want only the head", i, k, own+by)
				}
			}
		}
	}
	// What was nearer before stays so, whatever is asked.
	gaps := []Gap{{0.01, 7}, {-0.5, 8}}
	w.ClubGaps(0, head, &s, gaps)
	if gaps[0] != (Gap{0.01, 7}) || gaps[1] != (Gap{-0.5, 8}) {
		t.Errorf("gaps after a step out of reach: %v, want them as they were", gaps)
	}
	// What touches is near, whatever the limit.
	touched := near(wall(max(x(0), x(4))/2+large), -1)
	for i, parts := range touched {
		if want := foremost(i) > max(x(0), x(4))/2; parts&head != 0 != want {
			t.Errorf("step %d of a box that is touched half way: %b, want the clubhead: %v", i, parts, want)
		}
	}
}

// clubsNear reports which motions come nearer with parts of their clubs than their limits, by
// the gaps of a step, and that these are of that step.
func clubsNear(w *Swath, step int, parts swing.Parts, s *Surface, limits ...float64) []bool {
	near, gaps := make([]bool, len(limits)), make([]Gap, len(limits))
	for k, limit := range limits {
		gaps[k] = Gap{limit, -1}
	}
	w.ClubGaps(step, parts, s, gaps)
	for k, limit := range limits {
		near[k] = gaps[k].Low < limit && gaps[k].Step == step
	}
	return near
}

// TestStrayOfOneStep: what strays in one step is no nearer in the others.
func TestStrayOfOneStep(t *testing.T) {
	times := []float64{0, 0.1, 0.2, 0.3, 0.4, 0.5}
	var poses []swing.Pose
	for _, x := range []float64{0, 0, 0, 0, 0.1, 0.2} { // a jerk at 0.3 s
		poses = append(poses, alone(swing.Shaft, ballAt(x, 0)))
	}
	w := swathOf(times, poses)
	// x″ at 0.3 s is 0.1/0.1² = 10 m/s².
	for i, want := range []float64{0, 0, 1.5 * 10 * 0.01 / 8, 1.5 * 10 * 0.01 / 8, 0} {
		if got := w.stray(i, swing.Shaft); math.Abs(got-want) > 1e-9 {
			t.Errorf("step %d: the shaft strays %.6f m, want %.6f", i, got, want)
		}
	}
}

// TestSwathMissesNobody: whoever comes nearer than the limit at some moment of a
// step is named for it, by all three questions; and far boxes are named by none.
func TestSwathMissesNobody(t *testing.T) {
	const (
		steps, within = 60, 5
		limit         = 0.05 // m
		stretch       = 0.2  // s
	)
	times := make([]float64, steps+1)
	for i := range times {
		times[i] = stretch * float64(i) / steps
	}
	motions := make([]*wobble, 4)
	poses := make([][]swing.Pose, len(motions))
	for k := range motions {
		motions[k] = newWobble(uint64(40 + k))
		for _, at := range times {
			poses[k] = append(poses[k], motions[k].PoseAt(at))
		}
	}
	w := swathOf(times, poses...)
	limits := make([]float64, len(motions))
	for k := range limits {
		limits[k] = limit
	}
	rnd := rand.New(rand.NewPCG(8, 8))
	met, apart := 0, 0
	for range 12 {
		lo := geom.Vec{X: 3*rnd.Float64() - 1.5, Y: 3*rnd.Float64() - 1.5, Z: 3*rnd.Float64() - 0.5}
		s := Surface{Kind: Solid, Box: geom.Box{Min: lo, Max: geom.Vec{X: lo.X + 0.3*rnd.Float64(), Y: lo.Y + 0.3*rnd.Float64(), Z: lo.Z + 0.3}}}
		for i := range steps {
			set := w.Near(i, swing.AllParts, &s.Box, limit)
			for p := range swing.NumParts {
				near := make([]bool, len(motions))
				if p >= swing.Grip {
					near = clubsNear(w, i, p.Set(), &s, limits...)
				}
				for k, m := range motions {
					own := w.PartsNear(i, p.Set(), &s, &poses[k][i], &poses[k][i+1], limit)
					if p >= swing.Grip && own && !near[k] {
						t.Fatalf("step %d: the %v of motion %d is near by itself and not among all", i, p, k)
					}
					d := math.Inf(1)
					for j := range within + 1 {
						at := times[i] + (times[i+1]-times[i])*float64(j)/within
						here, _, _ := s.separate(m.part(p, at))
						d = min(d, here)
					}
					if d >= limit {
						apart++
						continue
					}
					met++
					if !own || set&p.Set() == 0 {
						t.Fatalf("step %d: the %v of motion %d comes within %.4f m and is not near (alone %v, swath %b)", i, p, k, d, own, set)
					}
				}
			}
		}
	}
	if met < 500 || apart < 500 {
		t.Errorf("%d steps come near and %d do not: the test wants both", met, apart)
	}
}
