package draw

import (
	"math"
	"math/rand/v2"
	"testing"

	"wideberth/internal/render/scene/wire"
)

func TestDashes(t *testing.T) {
	for _, length := range []float32{0, 1, 3, 9, 10, 47, 333, 5000} {
		got := dashSpans(nil, length)
		if got[0].from != 0 || math.Abs(float64(got[len(got)-1].to-1)) > 1e-5 {
			t.Errorf("dashSpans(%v) runs from %v to %v, want from end to end", length, got[0].from, got[len(got)-1].to)
		}
		for i := 1; i < len(got); i++ {
			if got[i].from <= got[i-1].to {
				t.Errorf("dashSpans(%v): dash %d touches the one before it: %v", length, i, got)
			}
		}
		// The pitch is stretched by less than half.
		if n := len(got) - 1; n > 0 && n < maxDashes {
			if pitch := length / float32(n); pitch < 6 || pitch > 15 {
				t.Errorf("dashSpans(%v) has a pitch of %v px, want 6 to 15", length, pitch)
			}
		}
	}
}

// TestRibbonTicks checks that ticks stand an inch apart along the way, however
// unevenly the clubhead moves.
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
		if want := 0.0254 * float64(i+1); math.Abs(float64(k.at.x)-want) > tolerance || k.number != i+1 {
			t.Errorf("tick %d at %v m with number %d, want at %v m", i, k.at.x, k.number, want)
		}
		if k.across.sub(vec{0, 0, 1}).norm() > tolerance {
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

func TestThroughASurface(t *testing.T) {
	m := newRoom(sampleRecording(), vec{3, 2, 1})
	tests := []struct {
		name string
		p    vec
		want bool
	}{
		{"in the room", vec{3, 2, 1}, false},
		{"past the left wall", vec{3, 4.02, 1}, true},
		{"above the ceiling", vec{3, 2, 2.9}, true},
		{"inside the beam", vec{3.5, 2, 2.6}, true},
		{"below the beam", vec{3.5, 2, 2.4}, false},
		{"beside the beam", vec{3.3, 2, 2.6}, false},
	}
	for _, tt := range tests {
		if got := m.through(tt.p); got != tt.want {
			t.Errorf("%s: through(%v) = %v, want %v", tt.name, tt.p, got, tt.want)
		}
		if tt.want && !m.crosses(tt.p, 0.05) {
			t.Errorf("%s: crosses(%v) = false although it is through", tt.name, tt.p)
		}
	}
}

func TestPlateWords(t *testing.T) {
	tests := []struct {
		verdict wire.Verdict
		want    string
	}{
		{wire.Strikes, "STRIKES · clubhead past left wall"},
		{wire.Tight, "TIGHT · clubhead to left wall"},
		{wire.Clear, "CLEAR · clubhead to left wall"},
	}
	for _, tt := range tests {
		reading, words := PlateWords(&wire.Tightest{Label: "1 in · 25 mm", Verdict: tt.verdict, Surface: "left wall", Part: "clubhead"})
		if reading != "1 in · 25 mm" || words != tt.want {
			t.Errorf("PlateWords(%v) = %q, %q, want %q", tt.verdict, reading, words, tt.want)
		}
	}
}

func TestFacingStaysReadable(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	for range 200 {
		n := vec{rng.Float32() - 0.5, rng.Float32() - 0.5, rng.Float32() - 0.5}.unit()
		eye := vec{rng.Float32() - 0.5, rng.Float32() - 0.5, rng.Float32() - 0.5}.unit()
		if got := facing(n, eye).dot(eye); got < 0.449 {
			t.Errorf("facing(%v, %v) is seen at a slant of %v, want at least 0.45", n, eye, got)
		}
	}
}
