package sweep

import (
	"math"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// forgetting returns a track of which only the poses up to the given step are
// left: whatever looks at a later one panics. Its boxes know the whole motion.
func forgetting(t *Track, step int) *Track {
	kept := *t
	kept.poses = t.poses[: step+1 : step+1]
	return &kept
}

// treeThatForgets returns a tree over copies of the tracks that afterwards forget
// all poses beyond a step of their own.
func treeThatForgets(tracks []*Track, steps ...int) *Tree {
	var own []*Track
	for _, t := range tracks {
		copied := *t
		own = append(own, &copied)
	}
	tree := NewTree(own...)
	for i, t := range own {
		*t = *forgetting(t, steps[i])
	}
	return tree
}

// outward is a head that goes straight out from 0 to length along x, in n steps.
func outward(length float64, n int) *Track {
	var times []float64
	var poses []swing.Pose
	for i := range n + 1 {
		x := length * float64(i) / float64(n)
		times, poses = append(times, float64(i)/100), append(poses, alone(swing.Clubhead, ballAt(x, 0.05)))
	}
	return NewTrack(times, poses)
}

// TestLooksNoFarther: what boxes settle is not looked at closely. The head is
// nearest at the start, so that one leaf answers, and nothing at all has to be
// looked at for a surface that is farther than the limit.
func TestLooksNoFarther(t *testing.T) {
	const n = 48
	whole := outward(4, n)
	first := whole.perLeaf // step
	start := forgetting(whole, first)
	nothing := forgetting(whole, -1)
	behind := geom.Box{Min: geom.Vec{X: -2, Y: -1, Z: -1}, Max: geom.Vec{X: -1, Y: 1, Z: 1}}
	crossed := geom.Box{Min: geom.Vec{X: 0.1, Y: -1, Z: 0}, Max: geom.Vec{X: 0.2, Y: 1, Z: 1}}
	wall := Surface{Kind: Wall, Plane: geom.Halfspace{N: geom.Vec{X: 1}, D: -1}}
	box := Surface{Kind: Solid, Box: behind}
	const want = 1 - 0.05 // m, of the wall and of the box behind the start

	for _, c := range []struct {
		name string
		ask  func() float64
		want float64
	}{
		{"wall", func() float64 { return start.Clearance(wall).Clearance }, want},
		{"box", func() float64 { return start.Clearance(box).Clearance }, want},
		{"tree", func() float64 { return NewTree(start).Clearance(behind).Clearance }, want},
		{"tree of several that share times", func() float64 {
			return treeThatForgets([]*Track{whole, whole, whole}, first, first, first).Clearance(behind).Clearance
		}, want},
		{"tree of several, of which one is far", func() float64 {
			far := outwardFrom(9, n+12)
			return treeThatForgets([]*Track{far, whole, far}, -1, first, -1).Clearance(behind).Clearance
		}, want},
		{"within, out of reach", func() float64 {
			c, _ := nothing.ClearanceWithin(box, want-0.01)
			return c.Clearance
		}, want - 0.01},
		{"tree, out of reach", func() float64 {
			c, _ := treeThatForgets([]*Track{whole, whole}, -1, -1).ClearanceWithin(behind, want-0.01)
			return c.Clearance
		}, want - 0.01},
		{"enough", func() float64 {
			c, _ := treeThatForgets([]*Track{whole, whole}, first, -1).ClearanceBetween(behind, want+0.01, math.Inf(1))
			return c.Clearance
		}, want},
	} {
		t.Run(c.name, func(t *testing.T) {
			defer func() {
				if r := recover(); r != nil {
					t.Errorf("looks at poses that cannot matter: %v", r)
				}
			}()
			if got := c.ask(); math.Abs(got-c.want) > 2*searchTolerance {
				t.Errorf("%.5f m, want %.5f", got, c.want)
			}
		})
	}
	// First contacts and marks likewise: behind nobody goes.
	if c, ok := nothing.FirstContactBefore(box, 9); ok {
		t.Errorf("first contact with a box out of reach: %+v", c)
	}
	if c := nothing.Strikes(box, 100); c != nil {
		t.Errorf("marks on a box out of reach: %+v", c)
	}
	// The head meets the box it crosses in the first leaf, whatever comes after it.
	c, ok := start.FirstContactBefore(Surface{Kind: Solid, Box: crossed}, 9)
	if when := 0.05 / 4 * n / 100; !ok || math.Abs(c.Time-when) > 1e-5 || c.Part != swing.Clubhead {
		t.Errorf("first contact = %+v, %v, want the clubhead at %.5f s", c, ok, when)
	}
}

// outwardFrom is outward, begun at x.
func outwardFrom(x float64, n int) *Track {
	t := outward(4, n)
	for i := range t.poses {
		for p := range t.poses[i] {
			c := &t.poses[i][p]
			c.A.X, c.B.X = c.A.X+x, c.B.X+x
		}
	}
	return NewTrack(t.times, t.poses)
}

// TestClearanceBetween: what is as near as "enough" may end the search, what is
// not nearer than the limit is none; between them it is Clearance.
func TestClearanceBetween(t *testing.T) {
	shared := sharedTimes(6)
	apart := []*Track{Sample(newWobble(0), FineTolerance), Sample(newWobble(1), FineTolerance), Sample(newWobble(2), FineTolerance)}
	for _, c := range []struct {
		name string
		tree *Tree
	}{{"shared times", NewTree(shared...)}, {"times of their own", NewTree(apart...)}, {"one track", NewTree(apart[0])}} {
		t.Run(c.name, func(t *testing.T) {
			if got := c.tree.hull != nil; got != (c.name == "shared times") {
				t.Fatalf("a hull: %v", got)
			}
			for seed := range uint64(25) {
				s := randomSurface(seed + 900)
				if s.Kind.Flat() {
					continue
				}
				least := c.tree.Clearance(s.Box)
				for _, enough := range []float64{math.Inf(-1), least.Clearance - 0.05, least.Clearance + 0.03, 0.5} {
					got, ok := c.tree.ClearanceBetween(s.Box, enough, 0.6)
					switch {
					case ok != (least.Clearance < 0.6):
						t.Errorf("box %d: found %v, want %v of %.4f m", seed, ok, !ok, least.Clearance)
					case !ok && got.Clearance != 0.6:
						t.Errorf("box %d: nothing within 0.6 m is told as %.4f m", seed, got.Clearance)
					case ok && got.Clearance > max(least.Clearance+2*searchTolerance, enough),
						ok && got.Clearance < least.Clearance-2*searchTolerance:
						t.Errorf("box %d: %.4f m, want %.4f or no more than %.4f", seed, got.Clearance, least.Clearance, enough)
					}
				}
			}
		})
	}
}

// TestPieceBoxes: the box of a fifth of a shaft during a leaf holds that fifth all
// the while, and no more than its stray and the shaft's radius beyond its samples.
func TestPieceBoxes(t *testing.T) {
	m := newWobble(3)
	track := Sample(m, FineTolerance)
	counted := 0
	for _, p := range pieces {
		if p.whole() {
			if p.part == swing.Shaft {
				t.Errorf("the shaft is one piece")
			}
			continue
		}
		counted++
		if p.part != swing.Shaft || math.Abs(p.to-p.from-1.0/shaftPieces) > rounding {
			t.Errorf("a piece of the %v from %v to %v, want a fifth of the shaft", p.part, p.from, p.to)
		}
		for l := range track.leaves {
			b := track.pieceBox(p, l)
			from, to := track.leafSteps(l)
			if from == to {
				if b != geom.EmptyBox() {
					t.Errorf("leaf %d has no step and the box %+v", l, b)
				}
				continue
			}
			tight := geom.EmptyBox()
			for i := from; i <= to; i++ {
				for j := range 8 {
					if i == to && j > 0 {
						break
					}
					at := track.times[i]
					if j > 0 {
						at += float64(j) / 8 * (track.times[i+1] - at)
					}
					c := m.part(p.part, at)
					own := geom.Capsule{A: geom.Lerp(c.A, c.B, p.from), B: geom.Lerp(c.A, c.B, p.to), R: c.R}.Bounds()
					if j == 0 {
						tight = tight.Union(own)
					}
					if b.Union(own) != b {
						t.Fatalf("leaf %d, from %v of the shaft: %+v does not hold %+v at %.5f s", l, p.from, b, own, at)
					}
				}
			}
			if grown := tight.Grown(track.Stray() + rounding); grown.Union(b) != grown {
				t.Errorf("leaf %d, from %v of the shaft: %+v, want no more than the stray around %+v", l, p.from, b, tight)
			}
		}
	}
	if counted != shaftPieces {
		t.Errorf("%d pieces of the shaft, want %d", counted, shaftPieces)
	}
}

// TestStrikeFrames: a head that goes through a wall and back is marked in the
// frames in which it is past it, at its deepest in each.
func TestStrikeFrames(t *testing.T) {
	// The head's middle, at z = 3t − 5t², is past 0.41 m between the roots of
	// 3t − 5t² = 0.41, and highest after 0.3 s; nothing else comes up to 0.46 m.
	m := thrown{v: 3, a: 10, length: 0.6, part: swing.Clubhead}
	track := Sample(m, FineTolerance)
	s := Surface{Kind: Ceiling, Plane: geom.Halfspace{N: geom.Vec{Z: -1}, D: -0.46}}
	root := math.Sqrt(9 - 4*5*0.41)
	in, out := (3-root)/10, (3+root)/10
	depth := func(t float64) float64 { return 0.46 - 0.05 - (3*t - 5*t*t) }
	const rate = 20.0
	got := track.Strikes(s, rate)
	k := 0
	for frame := range int(m.length*rate) + 1 {
		from, to := (float64(frame)-0.5)/rate, (float64(frame)+0.5)/rate
		if to < in || from > out {
			continue
		}
		want := depth(min(max(0.3, from), to))
		if k == len(got) {
			t.Fatalf("%d marks, want one for frame %d", len(got), frame)
		}
		c := got[k]
		k++
		if c.Part != swing.Clubhead || math.Abs(c.Clearance-want) > Tolerance || c.Time < from-1e-9 || c.Time > to+1e-9 {
			t.Errorf("frame %d: %+v, want the clubhead at %.4f m between %.3f and %.3f s", frame, c, want, from, to)
		}
	}
	if k != len(got) {
		t.Errorf("%d marks, want %d", len(got), k)
	}
	for _, rate := range []float64{0, -1, math.NaN()} {
		if got := track.Strikes(s, rate); got != nil {
			t.Errorf("at %v frames a second: %v, want none", rate, got)
		}
	}
}

// TestGap: no more than the distance of anything in the box, and that of a box that
// lies square before it.
func TestGap(t *testing.T) {
	in := geom.Box{Min: geom.Vec{X: -1, Y: -2, Z: 0}, Max: geom.Vec{X: 1, Y: 2, Z: 2}}
	tilted := geom.Vec{X: 0.6, Z: 0.8}
	for _, c := range []struct {
		name string
		s    Surface
		want float64
	}{
		{"a wall", Surface{Kind: Wall, Plane: geom.Halfspace{N: geom.Vec{X: 1}, D: -3}}, 2},
		{"a wall that is crossed", Surface{Kind: Wall, Plane: geom.Halfspace{N: geom.Vec{Y: -1}, D: -1.5}}, -0.5},
		{"a slope", Surface{Kind: Slope, Plane: geom.Halfspace{N: tilted, D: -1}}, 1 - 0.6},
		{"a box beside", Surface{Kind: Solid, Box: beyond(1.25)}, 0.25},
		{"a box hung in it", Surface{Kind: Hung, Box: geom.Box{Min: geom.Vec{X: 0.9, Y: -9, Z: -9}, Max: geom.Vec{X: 9, Y: 9, Z: 9}}}, -0.1},
	} {
		if got := c.s.Gap(in); math.Abs(got-c.want) > rounding {
			t.Errorf("%s: Gap = %v, want %v", c.name, got, c.want)
		}
	}
}
