package sweep

import (
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// benchTrack is a motion of 150 samples, about what a swing takes.
func benchTrack() *Track {
	m := newWobble(5)
	times, poses := make([]float64, 150), make([]swing.Pose, 150)
	for i := range times {
		times[i] = m.Duration() * float64(i) / 149
		poses[i] = m.PoseAt(times[i])
	}
	return NewTrack(times, poses)
}

var roomDirs = []geom.Vec{
	{Z: -1}, {Y: -1}, {Y: 1}, {X: 1}, {X: -1},
	{Y: -0.6, Z: -0.8}, {Y: 0.6, Z: -0.8}, {X: -0.28, Z: -0.96},
}

// BenchmarkMember is what one member of a family costs against the flat
// surfaces: Reset on shared times and the extremes in 8 directions.
func BenchmarkMember(b *testing.B) {
	t := benchTrack()
	out := make([]Extreme, len(roomDirs))
	b.ReportAllocs()
	for b.Loop() {
		t.Reset(t.times, t.poses)
		t.Support(roomDirs, out)
	}
}

func BenchmarkSupport(b *testing.B) {
	t := benchTrack()
	out := make([]Extreme, len(roomDirs))
	b.ReportAllocs()
	for b.Loop() {
		t.Support(roomDirs, out)
	}
}

func BenchmarkBox(b *testing.B) {
	t := benchTrack()
	for _, c := range []struct {
		name string
		box  geom.Box
	}{
		{"far", geom.Box{Min: geom.Vec{X: 6, Y: -1, Z: 2}, Max: geom.Vec{X: 7, Y: 1, Z: 3}}},
		{"near", geom.Box{Min: geom.Vec{X: 1.5, Y: -2, Z: 2.2}, Max: geom.Vec{X: 1.7, Y: 2, Z: 2.5}}},
		{"struck", geom.Box{Min: geom.Vec{X: 0.5, Y: -2, Z: 1.2}, Max: geom.Vec{X: 0.7, Y: 2, Z: 5}}},
	} {
		b.Run(c.name, func(b *testing.B) {
			s := Surface{Kind: Solid, Box: c.box}
			b.ReportAllocs()
			for b.Loop() {
				t.Clearance(s)
			}
		})
	}
}

// BenchmarkTree asks a family of 64 for a box that hangs near it, and for one
// out of its reach.
func BenchmarkTree(b *testing.B) {
	var family []*Track
	for i := range uint64(64) {
		family = append(family, Sample(newWobble(i), FineTolerance))
	}
	tree := NewTree(family...)
	near := geom.Box{Min: geom.Vec{X: 1.5, Y: -2, Z: 2.2}, Max: geom.Vec{X: 1.7, Y: 2, Z: 2.5}}
	b.Run("near", func(b *testing.B) {
		for b.Loop() {
			tree.Clearance(near)
		}
	})
	b.Run("out of reach", func(b *testing.B) {
		for b.Loop() {
			tree.ClearanceWithin(near.Moved(geom.Vec{X: -9}), 0.15)
		}
	})
}

func BenchmarkSample(b *testing.B) {
	m := newWobble(5)
	n := 0
	for b.Loop() {
		times, _ := Sample(m, FineTolerance).Samples()
		n = len(times)
	}
	b.ReportMetric(float64(n), "samples")
}
