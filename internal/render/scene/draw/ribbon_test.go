package draw

import (
	"math"
	"testing"

	"wideberth/internal/render/scene/wire"
)

func TestRibbonTicks(t *testing.T) {
	s := &wire.Recording{Rate: 240, Tick: 0.0254, Major: 12, Parts: []wire.Part{{Name: "shaft"}, {Name: "clubhead"}}}
	for i := range 200 {
		x := float32(i*i) * 1e-4 // a straight way, ever faster, 3.96 m long
		head := wire.Vec{x, 0, 0}
		s.Frames = append(s.Frames, wire.Frame{Pose: []wire.Segment{{A: wire.Vec{x, 0, 1}, B: head}, {A: head, B: head}}})
	}
	f := newFigure(s)
	r := newRibbon(s, &f)
	if want := int(math.Floor(199 * 199 * 1e-4 / 0.0254)); len(r.ticks) != want {
		t.Errorf("%d ticks, want %d", len(r.ticks), want)
	}
	const tolerance = 1e-4 // m, rounding of float32 sums
	for i, k := range r.ticks {
		if want := 0.0254 * float64(i+1); math.Abs(float64(k.at.X)-want) > tolerance || k.number != i+1 {
			t.Errorf("tick %d at %v m with number %d, want at %v m", i, k.at.X, k.number, want)
		}
		if k.across.Sub(xyz(0, 0, 1)).Norm() > tolerance {
			t.Errorf("tick %d points %v, want towards the grip", i, k.across)
		}
	}
}

func TestTickEvery(t *testing.T) {
	tests := []struct {
		major        int
		spacing, gap float32
		want         int
	}{{12, 10, 5, 1}, {12, 3, 5, 2}, {12, 1.7, 5, 3}, {12, 0.1, 5, 12}, {10, 1, 5, 5}, {10, 2.6, 5, 2}, {0, 1, 5, 1}}
	for _, tt := range tests {
		if got := tickEvery(tt.major, tt.spacing, tt.gap); got != tt.want {
			t.Errorf("tickEvery(%d, %v, %v) = %d, want %d", tt.major, tt.spacing, tt.gap, got, tt.want)
		}
	}
}
