package sweep

import (
	"math"
	"testing"

	"wideberth/internal/fuzzed"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

const (
	// bruteStep (m) is the most a part moves between two brute-force steps, so
	// brute force is at most half of it above the true minimum.
	bruteStep = 0.0005
	// tooLow (m) is how far below brute force a clearance may be: twice the
	// stray, the search tolerance and half a brute-force step, rounded up.
	tooLow = 0.004
)

func checkClearance(t *testing.T, motion, surface uint64, of func(uint64) *wobble) {
	t.Helper()
	m, s := of(motion), randomSurface(surface)
	track := Sample(m, FineTolerance)
	if got := track.Stray(); got > FineTolerance {
		t.Errorf("motion %d: Stray() = %.6f, want at most %.6f", motion, got, FineTolerance)
	}
	want, at := brute(m, s, bruteStep)
	c := track.Clearance(s)
	if c.Clearance > want+Tolerance || c.Clearance < want-tooLow {
		t.Errorf("motion %d, %s %d: Clearance = %.5f at %.4f s (%v), want %.5f at %.4f s (+%.3f, -%.3f)",
			motion, s.Name, surface, c.Clearance, c.Time, c.Part, want, at, Tolerance, tooLow)
	}
	// The contact is where it says it is.
	if d, _, _ := s.separate(m.PoseAt(c.Time)[c.Part]); math.Abs(d-c.Clearance) > tooLow {
		t.Errorf("motion %d, %s %d: distance at the contact's time = %.5f, want %.5f (%.3f)", motion, s.Name, surface, d, c.Clearance, tooLow)
	}
	first, struck := track.FirstContact(s)
	if struck != (c.Clearance < 0) {
		t.Errorf("motion %d, %s %d: FirstContact = %v with clearance %.5f", motion, s.Name, surface, struck, c.Clearance)
	}
	if struck {
		if first.Time > c.Time {
			t.Errorf("motion %d, %s %d: first contact at %.5f s, after the deepest at %.5f s", motion, s.Name, surface, first.Time, c.Time)
		}
		// Whoever is past the surface by Tolerance has touched it before, and a
		// first contact is at most the strays early.
		late := bruteFirst(m, s, Tolerance, bruteStep)
		if first.Time > late {
			t.Errorf("motion %d, %s %d: first contact at %.5f s, want before %.5f s", motion, s.Name, surface, first.Time, late)
		}
		if d, _, _ := s.separate(m.part(first.Part, first.Time)); math.Abs(d) > tooLow {
			// Unless it starts inside, the first contact is at the surface.
			if start, _, _ := s.separate(m.part(first.Part, 0)); first.Time > 0 || start >= 0 {
				t.Errorf("motion %d, %s %d: first contact at %.5f s is %.5f from the surface", motion, s.Name, surface, first.Time, d)
			}
		}
	}
	if !s.Kind.Flat() {
		if got := NewTree(track).Clearance(s.Box); got != c {
			t.Errorf("motion %d, box %d: Tree.Clearance = %+v, want %+v", motion, surface, got, c)
		}
	}
}

func TestClearanceAgainstBruteForce(t *testing.T) {
	n := uint64(40)
	if testing.Short() {
		n = 8
	}
	for i := range n {
		checkClearance(t, i, i+100, newWobble)
	}
}

func FuzzClearance(engine *testing.F) {
	f := fuzzed.New(engine)
	for i := range uint64(4) {
		f.Add(i, i)
	}
	f.Fuzz(func(t *testing.T, motion, surface uint64) { checkClearance(t, motion, surface, newBrief) })
}

// TestSupportIsClearance checks that a plane's clearance is the extreme against
// its normal less its offset, wherever the plane lies.
func TestSupportIsClearance(t *testing.T) {
	track := Sample(newWobble(3), FineTolerance)
	dirs := []geom.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: 1}, {Z: -1}, {Y: 0.6, Z: -0.8}, {X: -0.28, Z: -0.96}}
	out := make([]Extreme, len(dirs))
	track.Support(dirs, out)
	for k, n := range dirs {
		for _, d := range []float64{-3, 0, 1.25} {
			s := Surface{Kind: Wall, Plane: geom.Halfspace{N: n, D: d}}
			got := track.Clearance(s)
			if want := out[k].Value - d; got.Clearance != want || got.Part != out[k].Part || got.Time != out[k].Time {
				t.Errorf("Clearance(%v, %v) = %+v, want %v of %+v", n, d, got, want, out[k])
			}
		}
	}
}

// TestCoarseTrackIsCautious: on shared times that were not made for it, a track
// still never says more than the motion has, because it takes off its strays,
// here up to a decimetre; and it takes off no more than twice them.
func TestCoarseTrackIsCautious(t *testing.T) {
	const step = 1.0 / 60 // s
	leaning := 0
	for seed := range uint64(60) {
		m, s := newWobble(seed), randomSurface(seed+500)
		n := int(m.Duration()/step) + 1
		times, poses := make([]float64, n+1), make([]swing.Pose, n+1)
		for i := range times {
			times[i] = m.Duration() * float64(i) / float64(n)
			poses[i] = m.PoseAt(times[i])
		}
		track := NewTrack(times, poses)
		got := track.Clearance(s).Clearance
		want, _ := brute(m, s, bruteStep)
		if low := want - 2*track.Stray() - bruteStep; got > want+Tolerance || got < low {
			t.Errorf("motion %d: Clearance = %.5f, want in [%.5f, %.5f]", seed, got, low, want+Tolerance)
		}
		// The samples alone miss the minimum by more than the tolerance.
		at := math.Inf(1)
		for _, pose := range poses {
			for _, c := range pose {
				d, _, _ := s.separate(c)
				at = min(at, d)
			}
		}
		if at > want+Tolerance {
			leaning++
		}
	}
	if leaning < 10 {
		t.Errorf("in only %d motions do the samples miss the minimum: the test shows little", leaning)
	}
}

// TestTreeHoldsMotion checks that every box of a track's trees holds the motion
// during its time.
func TestTreeHoldsMotion(t *testing.T) {
	for seed := range uint64(3) {
		m := newWobble(seed)
		track := Sample(m, FineTolerance)
		for l := range track.leaves {
			from, to := track.leafSteps(l)
			for p := range swing.NumParts {
				for k := range 20 * (to - from) {
					step := from + k/20
					at := track.times[step] + float64(k%20)/20*(track.times[step+1]-track.times[step])
					got := m.part(p, at).Bounds()
					for node := track.leaves + l; node > 0; node /= 2 {
						if b := track.node(p, node); b.Union(got) != b {
							t.Fatalf("motion %d: node %d of %v = %+v, want it to hold %+v at %.5f s", seed, node, p, b, got, at)
						}
					}
				}
			}
		}
	}
}
