package sweep

import (
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// TestPackedIsTheTrack: what a packed track says of a box is what the track says, as
// near as a search of either tells; its parts are where the track's are, as thick as
// they are, and inside its bounds.
func TestPackedIsTheTrack(t *testing.T) {
	for seed := range uint64(20) {
		track := Sample(newWobble(seed), FineTolerance)
		packed := track.Packed()
		for n := range uint64(5) {
			s := randomSurface(1000*seed + n)
			if s.Kind.Flat() {
				continue
			}
			want, got := NewTree(track).Clearance(s.Box).Clearance, NewTree(packed).Clearance(s.Box).Clearance
			if got > want+searchTolerance || got < want-searchTolerance-2*packing {
				t.Errorf("motion %d, box %d: %.6f m packed, %.6f m before", seed, n, got, want)
			}
		}
		times, poses := track.Samples()
		for p := range swing.NumParts {
			holds := packed.Bounds(p)
			for i := 0; i < len(times); i += 7 {
				c, was := packed.Capsule(i, p), poses[i][p]
				if off := max(distance(c.A, was.A), distance(c.B, was.B)); off > packing || c.R != was.R {
					t.Fatalf("motion %d, part %d, sample %d: %+v packed, %+v before", seed, p, i, c, was)
				}
				if lo, hi := lower(was.A, was.B), upper(was.A, was.B); !contains(holds, less(lo, was.R)) || !contains(holds, less(hi, -was.R)) {
					t.Fatalf("motion %d, part %d, sample %d: %+v is not in %+v", seed, p, i, was, holds)
				}
			}
		}
		if got := packed.Stray(); got != track.Stray() {
			t.Errorf("motion %d: strays by %v packed, %v before", seed, got, track.Stray())
		}
	}
}

func distance(a, b geom.Vec) float64 {
	return geom.Norm(geom.Vec{X: a.X - b.X, Y: a.Y - b.Y, Z: a.Z - b.Z})
}

func contains(b geom.Box, v geom.Vec) bool {
	return v.X >= b.Min.X && v.X <= b.Max.X && v.Y >= b.Min.Y && v.Y <= b.Max.Y && v.Z >= b.Min.Z && v.Z <= b.Max.Z
}
