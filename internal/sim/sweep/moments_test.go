package sweep

import (
	"math"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// thrown is a head that is thrown up from the ground: z = v·t − a·t²/2, for ever
// at the same acceleration, so that every chord's stray is known.
type thrown struct {
	v, a, length float64 // m/s, m/s², s
	part         swing.Part
}

func (m thrown) Duration() float64 { return m.length }

func (m thrown) PoseAt(t float64) swing.Pose {
	at := geom.Vec{Z: m.v*t - m.a*t*t/2}
	return alone(m.part, geom.Capsule{A: at, B: at, R: 0.05})
}

// TestStrayOfAFall: over a step h a body at the acceleration a leaves its chord by
// a·h²/8; the track allows half as much again, in steps of any length.
func TestStrayOfAFall(t *testing.T) {
	m := thrown{v: 2, a: 10, length: 1, part: swing.Clubhead}
	for _, c := range []struct {
		name  string
		times []float64
	}{
		{"even", []float64{0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8}},
		{"uneven", []float64{0, 0.01, 0.05, 0.15, 0.16, 0.17, 0.37, 0.40, 0.80, 0.81}},
		{"two steps", []float64{0, 0.25, 0.75}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var poses []swing.Pose
			for _, at := range c.times {
				poses = append(poses, m.PoseAt(at))
			}
			track := NewTrack(c.times, poses)
			longest := 0.0
			for i := range track.steps() {
				h := c.times[i+1] - c.times[i]
				longest = max(longest, h)
				if got, want := track.stray(i, swing.Clubhead), curvatureSafety*m.a*h*h/8; math.Abs(got-want) > 1e-9 {
					t.Errorf("step %d: stray %.9f m, want %.9f", i, got, want)
				}
			}
			if got, want := track.Stray(), curvatureSafety*m.a*longest*longest/8; math.Abs(got-want) > 1e-9 {
				t.Errorf("Stray() = %.9f, want %.9f", got, want)
			}
			if got, want := track.Duration(), c.times[len(c.times)-1]; got != want {
				t.Errorf("Duration() = %v, want %v", got, want)
			}
		})
	}
}

// TestLeafBoxOfAFall: the box of a leaf goes round the head at the leaf's two ends,
// and beyond by its radius, the stray of its longest step and a·H²/8 of the leaf.
func TestLeafBoxOfAFall(t *testing.T) {
	const n, h = 40, 0.01
	m := thrown{v: 2, a: 10, length: n * h, part: swing.Clubhead}
	track := Between(m, 0, m.length, h)
	if track.steps() != n {
		t.Fatalf("%d steps, want %d", track.steps(), n)
	}
	for l := range track.leaves {
		from, to := track.leafSteps(l)
		b := track.node(swing.Clubhead, track.leaves+l)
		if from == to {
			if b != geom.EmptyBox() {
				t.Errorf("leaf %d has no step and the box %+v, want an empty one", l, b)
			}
			continue
		}
		z0, z1 := m.PoseAt(track.times[from])[swing.Clubhead].A.Z, m.PoseAt(track.times[to])[swing.Clubhead].A.Z
		long := float64(to-from) * h
		bend := m.a
		if to-from == 1 {
			bend = 0 // nothing between its ends
		}
		more := 0.05 + curvatureSafety*m.a*h*h/8 + bend*long*long/8
		if math.Abs(b.Max.Z-max(z0, z1)-more) > 1e-9 || math.Abs(min(z0, z1)-more-b.Min.Z) > 1e-9 || math.Abs(b.Max.X-more) > 1e-9 {
			t.Errorf("leaf %d: %+v, want z from %.6f to %.6f and %.6f more all round", l, b, min(z0, z1), max(z0, z1), more)
		}
	}
	all := geom.EmptyBox()
	for l := range track.leaves {
		all = all.Union(track.node(swing.Clubhead, track.leaves+l))
	}
	if got := track.Bounds(swing.Clubhead); got != all {
		t.Errorf("Bounds = %+v, want %+v", got, all)
	}
}

// TestShapeOfTrees: 3 to 6 steps share a leaf, leaves are a power of two, and every
// step is in one.
func TestShapeOfTrees(t *testing.T) {
	for n := 1; n <= 400; n++ {
		track := Track{times: make([]float64, n+1)}
		track.layOut()
		if track.leaves&(track.leaves-1) != 0 || track.perLeaf > 6 || n > 6 && track.perLeaf < 3 {
			t.Errorf("%d steps: %d leaves of %d steps", n, track.leaves, track.perLeaf)
		}
		next := 0
		for l := range track.leaves {
			from, to := track.leafSteps(l)
			if from != next && from != n || to < from || to-from > track.perLeaf {
				t.Errorf("%d steps: leaf %d has %d to %d after %d", n, l, from, to, next)
			}
			next = to
		}
		if next != n {
			t.Errorf("%d steps: the leaves end at %d", n, next)
		}
	}
}

// TestHighestOfAFall: a parabola's top between samples is found to the stray, in
// place and time, whether the surface is asked for or the direction.
func TestHighestOfAFall(t *testing.T) {
	m := thrown{v: 3, a: 10, length: 0.7, part: swing.Clubhead}
	const top, when = 0.45 + 0.05, 0.3 // v²/2a and the radius; v/a
	for _, step := range []float64{0.07, 0.043, 0.011} {
		track := Between(m, 0, m.length, step)
		s := Surface{Kind: Ceiling, Plane: geom.Halfspace{N: geom.Vec{Z: -1}, D: -1}}
		c := track.Clearance(s)
		if c.Clearance > 1-top+1e-9 || c.Clearance < 1-top-2*track.Stray() {
			t.Errorf("steps of %v s: %.5f m from the ceiling, want %.5f less at most %.5f", step, c.Clearance, 1-top, 2*track.Stray())
		}
		if math.Abs(c.Time-when) > step || c.Part != swing.Clubhead {
			t.Errorf("steps of %v s: nearest is the %v at %.4f s, want the clubhead at %v", step, c.Part, c.Time, when)
		}
		if math.Abs(c.OnSurface.Z-1) > 1e-9 || math.Abs(c.OnPart.Z-top) > 2*track.Stray() {
			t.Errorf("steps of %v s: from %v to %v, want from the ceiling to the head's top", step, c.OnPart, c.OnSurface)
		}
	}
}

// TestDip: the least of a chord that may sag, against many points of it.
func TestDip(t *testing.T) {
	for _, c := range []struct {
		name      string
		v0, v1, e float64
	}{
		{"level", 1, 1, 0.1},
		{"falling a little", 1, 0.9, 0.1},
		{"rising a little", 0.9, 1, 0.1},
		{"falling as fast as it sags", 1, 0.6, 0.1},
		{"rising as fast as it sags", 0.6, 1, 0.1},
		{"falling fast", 2, 1, 0.1},
		{"rising fast", 1, 2, 0.1},
		{"straight", 1, 2, 0},
		{"nothing moves", 1, 1, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			at := func(s float64) float64 { return c.v0 + s*(c.v1-c.v0) - 4*c.e*s*(1-s) }
			want := math.Inf(1)
			const n = 1000
			for i := range n + 1 {
				want = min(want, at(float64(i)/n))
			}
			v, s := dip(c.v0, c.v1, c.e)
			if v > want+1e-12 || v < want-1e-6 || s < 0 || s > 1 || math.Abs(at(s)-v) > 1e-12 {
				t.Errorf("dip = %.9f at %v, want %.9f; there it is %.9f", v, s, want, at(s))
			}
		})
	}
}

// TestPoseAt: on the samples the poses that were given, between them on the chord,
// outside the first and the last.
func TestPoseAt(t *testing.T) {
	times := []float64{1, 1.5, 2.5, 2.75, 4}
	at := []float64{0, 1, -1, 3, 10}
	var poses []swing.Pose
	for _, x := range at {
		poses = append(poses, alone(swing.Shaft, ballAt(x, 0.05)))
	}
	track := NewTrack(times, poses)
	for _, c := range []struct{ time, x float64 }{
		{1, 0}, {1.5, 1}, {2.5, -1}, {2.75, 3}, {4, 10},
		{1.125, 0.25}, {2, 0}, {2.25, -0.5}, {2.625, 1}, {3.375, 6.5},
		{0, 0}, {-7, 0}, {4.5, 10}, {99, 10},
	} {
		if got := track.PoseAt(c.time)[swing.Shaft]; math.Abs(got.A.X-c.x) > rounding || got.R != 0.05 {
			t.Errorf("PoseAt(%v) = %+v, want x = %v", c.time, got, c.x)
		}
	}
	still := NewTrack([]float64{3}, poses[3:4])
	for _, time := range []float64{2, 3, 4} {
		if got := still.PoseAt(time)[swing.Shaft].A.X; got != 3 {
			t.Errorf("somebody who stands still at %v s: x = %v, want 3", time, got)
		}
	}
	if got := track.Duration(); got != 3 {
		t.Errorf("Duration() = %v, want 3", got)
	}
}

// TestAround: 0.04 s before and after, as far as the motion goes, in 40 steps.
func TestAround(t *testing.T) {
	m := thrown{v: 1, a: 1, length: 1, part: swing.Clubhead}
	for _, c := range []struct {
		name         string
		at, from, to float64
	}{
		{"inside", 0.5, 0.46, 0.54},
		{"at the start", 0.01, 0, 0.05},
		{"at the end", 1, 0.96, 1},
	} {
		times, poses := Around(m, c.at).Samples()
		if len(times) != 41 || math.Abs(times[0]-c.from) > rounding || math.Abs(times[40]-c.to) > rounding {
			t.Errorf("%s: %d samples from %v to %v, want 41 from %v to %v", c.name, len(times), times[0], times[len(times)-1], c.from, c.to)
		}
		for i := range times {
			if i > 0 && math.Abs(times[i]-times[i-1]-(c.to-c.from)/40) > rounding {
				t.Errorf("%s: a step of %v s, want them equal", c.name, times[i]-times[i-1])
			}
			if poses[i] != m.PoseAt(times[i]) {
				t.Errorf("%s: the pose at %v s is not the motion's", c.name, times[i])
			}
		}
	}
}

// jumping stands still and is somewhere else from one moment on.
type jumping struct{ length, when float64 }

func (m jumping) Duration() float64 { return m.length }

func (m jumping) PoseAt(t float64) swing.Pose {
	x := 0.0
	if t > m.when {
		x = 1
	}
	return alone(swing.Clubhead, ballAt(x, 0.05))
}

// TestSampleSteps: steps are of at most 1/60 s and shorter only where they must
// be; a jump, which no step is short enough for, does not go on for ever.
func TestSampleSteps(t *testing.T) {
	for _, c := range []struct {
		name string
		m    Motion
		want int
	}{
		{"even, a second", thrown{v: 5, length: 1, part: swing.Clubhead}, 60},
		{"even, a little more", thrown{v: 5, length: 1.001, part: swing.Clubhead}, 61},
		{"an instant", thrown{v: 5, length: 0.001, part: swing.Clubhead}, 1},
		{"nothing", thrown{v: 5, part: swing.Clubhead}, 1},
		// 1.5·a·h²/8 is at most the tolerance from 1/60 s down when a is at most 14.4.
		{"slow enough", thrown{a: 14, length: 1, part: swing.Clubhead}, 60},
		{"halved once", thrown{a: 15, length: 1, part: swing.Clubhead}, 120},
		{"halved once, just", thrown{a: 57, length: 1, part: swing.Clubhead}, 120},
		{"halved twice", thrown{a: 58, length: 1, part: swing.Head}, 240},
	} {
		t.Run(c.name, func(t *testing.T) {
			track := Sample(c.m, FineTolerance)
			if track.steps() != c.want || track.Duration() != c.m.Duration() {
				t.Errorf("%d steps over %v s, want %d over %v", track.steps(), track.Duration(), c.want, c.m.Duration())
			}
		})
	}
	track := Sample(jumping{length: 0.1, when: 0.0501}, FineTolerance)
	shortest := math.Inf(1)
	for i := range track.steps() {
		shortest = min(shortest, track.times[i+1]-track.times[i])
	}
	if want := 0.1 / 6 / 1024; math.Abs(shortest-want) > rounding {
		t.Errorf("at a jump the shortest step is %v s, want %v", shortest, want)
	}
}

// TestResetParts: parts that do not matter are nowhere, the others as ever.
func TestResetParts(t *testing.T) {
	whole := Sample(newWobble(6), FineTolerance)
	times, poses := whole.Samples()
	var club Track
	club.Reset(Sample(newWobble(7), FineTolerance).Samples()) // something to forget
	club.ResetParts(swing.ClubParts, times, poses)
	worst := 0.0
	for p := range swing.NumParts {
		want := geom.EmptyBox()
		if p >= swing.Grip {
			want = whole.Bounds(p)
			for i := range whole.steps() {
				worst = max(worst, whole.stray(i, p))
			}
		}
		if got := club.Bounds(p); got != want {
			t.Errorf("%v: Bounds = %+v, want %+v", p, got, want)
		}
	}
	if got := club.Stray(); got != worst {
		t.Errorf("Stray() = %v, want %v, which is the club's", got, worst)
	}
	s := Surface{Kind: Solid, Box: beyond(1.5)}
	c, ok := club.ClearanceWithin(s, math.Inf(1))
	if !ok || c.Part < swing.Grip {
		t.Errorf("Clearance = %+v, %v, want some part of the club", c, ok)
	}
}

// TestFirstContactInItsStep: a head that only touches at the start, or that would
// go on through a wall if it did not stop before it, first comes past it later.
func TestFirstContactInItsStep(t *testing.T) {
	for _, c := range []struct {
		name string
		n    geom.Vec
		d    float64
		xs   []float64 // at every second
		from int       // the sample after which it comes past
	}{
		{"touches, leaves and comes back", geom.Vec{X: 1}, -0.5, []float64{0, 1, 2, 3, 4, -1}, 4},
		{"stops and goes on", geom.Vec{X: -1}, -3.5, []float64{0, 1, 2, 2, 2, 2, 5}, 5},
	} {
		var times []float64
		var poses []swing.Pose
		for i, x := range c.xs {
			times, poses = append(times, float64(i)), append(poses, alone(swing.Clubhead, ballAt(x, 0.5)))
		}
		track := NewTrack(times, poses)
		if track.leaves != 1 {
			t.Fatalf("%s: %d leaves, want all in one", c.name, track.leaves)
		}
		s := Surface{Kind: Wall, Plane: geom.Halfspace{N: c.n, D: c.d}}
		if got, ok := track.FirstContactBefore(s, 99); !ok || got.Time <= float64(c.from) || got.Time >= float64(c.from+1) || got.Part != swing.Clubhead {
			t.Errorf("%s: first contact %+v, %v, want the clubhead after %d s", c.name, got, ok, c.from)
		}
		if got, ok := track.FirstContactBefore(s, float64(c.from)); ok {
			t.Errorf("%s: contact %+v before %d s, want none", c.name, got, c.from)
		}
	}
}
