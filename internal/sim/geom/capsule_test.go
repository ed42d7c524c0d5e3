package geom

import (
	"math"
	"testing"
)

func TestShare(t *testing.T) {
	c := Capsule{A: Vec{X: 1, Y: 1, Z: 1}, B: Vec{X: 3, Y: 1, Z: 1}, R: 0.1}
	for _, tt := range []struct {
		name string
		c    Capsule
		p    Vec
		want float64
	}{
		{"beside the axis", c, Vec{X: 1.5, Y: 2, Z: -4}, 0.25},
		{"at the end", c, Vec{X: 3, Y: 1.1, Z: 1}, 1},
		{"beyond the end", c, Vec{X: 9}, 1},
		{"before the start", c, Vec{}, 0},
		{"of a ball", Capsule{A: Vec{X: 1}, B: Vec{X: 1}, R: 0.1}, Vec{X: 2}, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.c.Share(tt.p); math.Abs(got-tt.want) > 1e-12 {
				t.Errorf("Share(%v) = %v, want %v", tt.p, got, tt.want)
			}
		})
	}
}
