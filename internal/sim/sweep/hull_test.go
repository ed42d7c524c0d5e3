package sweep

import (
	"math"
	"math/rand/v2"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// sharedTimes returns n tracks sampled at the same times, as a family's are.
func sharedTimes(n int) []*Track {
	var out []*Track
	var times []float64
	for i := range 120 {
		times = append(times, float64(i)/240)
	}
	for i := range n {
		m := newWobble(uint64(i))
		poses := make([]swing.Pose, len(times))
		for j, t := range times {
			poses[j] = m.PoseAt(t)
		}
		out = append(out, NewTrack(times, poses))
	}
	return out
}

// TestHull compares the tree over tracks that share their times with one look
// at every track, for boxes near, far, thin and deep inside the motion.
func TestHull(t *testing.T) {
	family := sharedTimes(9)
	tree := NewTree(family...)
	if tree.hull == nil {
		t.Fatal("tracks that share their times have no hull")
	}
	rnd := rand.New(rand.NewPCG(3, 4))
	touched := 0
	for i := range 300 {
		at := func(spread float64) float64 { return spread * (2*rnd.Float64() - 1) }
		low := geom.Vec{X: at(2.5), Y: at(2.5), Z: at(3)}
		s := Surface{Kind: Solid, Box: geom.Box{Min: low, Max: geom.Vec{
			X: low.X + 0.01 + 2*rnd.Float64(), Y: low.Y + 0.01 + 3*rnd.Float64(), Z: low.Z + 0.01 + 2*rnd.Float64()}}}
		want := math.Inf(1)
		for _, m := range family {
			want = min(want, m.Clearance(s).Clearance)
		}
		if want < 0 {
			touched++
		}
		got := tree.Clearance(s.Box)
		if math.Abs(got.Clearance-want) > 2*searchTolerance {
			t.Errorf("box %d: Clearance = %.5f, want %.5f (%g)", i, got.Clearance, want, 2*searchTolerance)
		}
		if own := family[got.Track].Clearance(s).Clearance; math.Abs(own-got.Clearance) > 2*searchTolerance {
			t.Errorf("box %d: track %d has %.5f of its own, the tree says %.5f", i, got.Track, own, got.Clearance)
		}
		if c, ok := tree.ClearanceWithin(s.Box, want-0.01); ok || c.Clearance != want-0.01 {
			t.Errorf("box %d: ClearanceWithin(%.4f) = %+v, %v, want none", i, want-0.01, c, ok)
		}
		if c, ok := tree.ClearanceWithin(s.Box, want+0.01); !ok || math.Abs(c.Clearance-want) > 2*searchTolerance {
			t.Errorf("box %d: ClearanceWithin(%.4f) = %+v, %v, want %.5f", i, want+0.01, c, ok, want)
		}
	}
	if touched < 20 || touched > 280 {
		t.Errorf("%d of 300 boxes touch the motion; the test wants both kinds", touched)
	}
}

// TestRoundedUp: the next number of single precision from every one on, whatever its
// sign and size.
func TestRoundedUp(t *testing.T) {
	for _, v := range []float64{0, 1, -1, 1.0000001, -1.0000001, 0.1, -0.1, 3e-46, -3e-46, 1e-40, -1e-40, 8, -7.999999999, 3e38, -3e38, -1e300, math.Inf(1)} {
		want := float32(v)
		if float64(want) < v {
			want = math.Nextafter32(want, float32(math.Inf(1)))
		}
		if got := roundedUp(v); got != want || float64(got) < v {
			t.Errorf("%v rounded up is %v, want %v", v, got, want)
		}
	}
}
