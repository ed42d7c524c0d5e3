package draw

import (
	"math/rand/v2"
	"testing"

	"wideberth/internal/render/scene/wire"
)

func TestFacingStaysReadable(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	for range 200 {
		n := xyz(rng.Float32()-0.5, rng.Float32()-0.5, rng.Float32()-0.5).Unit()
		eye := xyz(rng.Float32()-0.5, rng.Float32()-0.5, rng.Float32()-0.5).Unit()
		if got := facing(n, eye).Dot(eye); got < 0.449 {
			t.Errorf("facing(%v, %v) is seen at a slant of %v, want at least 0.45", n, eye, got)
		}
	}
}

// The club is in the wall for many frames: marks near an earlier one of the same
// surface are left out, the first of each surface is known.
func TestMarksAreThinned(t *testing.T) {
	strike := func(frame int, surface string, x float32) wire.Strike {
		return wire.Strike{Frame: frame, At: wire.Vec{x, 0, 1}, Normal: wire.Vec{0, 1, 0}, Radius: 0.05, Surface: surface}
	}
	s := &wire.Recording{Strikes: []wire.Strike{
		strike(1, "left wall", 0), strike(2, "left wall", 0.10), strike(3, "ceiling", 0.05), strike(4, "left wall", 0.12), strike(5, "left wall", 0.05),
		{Frame: 6, At: wire.Vec{5, 0, 1}, Radius: 0.05, Surface: "back wall"}, // of no direction
	}}
	type kept struct {
		frame int
		first bool
	}
	var got []kept
	for _, m := range newMarks(s).list {
		got = append(got, kept{m.frame, m.first})
	}
	want := []kept{{1, true}, {3, true}, {4, false}}
	if len(got) != len(want) {
		t.Fatalf("marks = %v, want %v", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("mark %d = %v, want %v", i, got[i], want[i])
		}
	}
	for _, tt := range []struct{ part, mark float32 }{{0.001, 0.03}, {0.05, 0.06}, {0.2, 0.08}} {
		s.Strikes[0].Radius = tt.part
		if got := newMarks(s).list[0].radius; abs(got-tt.mark) > 1e-6 {
			t.Errorf("a part of radius %v leaves a mark of %v, want %v", tt.part, got, tt.mark)
		}
	}
	var many []wire.Strike
	for i := range 400 {
		many = append(many, strike(i, "left wall", float32(i)))
	}
	if n := len(newMarks(&wire.Recording{Strikes: many}).list); n != 300 {
		t.Errorf("%d marks of 400, want 300", n)
	}
}
