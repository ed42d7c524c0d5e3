package draw

import (
	"math"
	"testing"
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

// levelAxis is for lettering on floor and ceiling: upright for the viewer.
func TestLevelAxis(t *testing.T) {
	for _, tt := range []struct{ v, want vec }{
		{xyz(2, 1, 9), xyz(1, 0, 0)}, {xyz(-2, 1, 9), xyz(-1, 0, 0)}, {xyz(1, 2, 0), xyz(0, 1, 0)}, {xyz(1, -2, 0), xyz(0, -1, 0)},
		{xyz(1, 1, 0), xyz(1, 0, 0)}, {xyz(-1, 1, 0), xyz(-1, 0, 0)},
	} {
		if got := levelAxis(tt.v); got != tt.want {
			t.Errorf("levelAxis(%v) = %v, want %v", tt.v, got, tt.want)
		}
	}
}

// A length is cut into pieces no longer than a patch, 64 at most.
func TestCells(t *testing.T) {
	for _, tt := range []struct {
		length float32
		want   int
	}{{0, 1}, {0.36, 1}, {0.37, 2}, {3.6, 10}, {1000, 64}} {
		if got := cells(tt.length); got != tt.want {
			t.Errorf("cells(%v) = %d, want %d", tt.length, got, tt.want)
		}
	}
}
