package draw

import (
	"testing"

	"wideberth/internal/render/scene/wire"
)

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

// A plate goes to the one place round the tape that is free, near before far.
func TestPlatePlaces(t *testing.T) {
	c := &canvas{width: 2000, height: 2000, scale: 1}
	at, size, gap := point{1000, 1000}, point{100, 40}, point{70, 50}
	ways := []point{{1, -1}, {-1, -1}, {1, 0}, {-1, 0}, {1, 1}, {-1, 1}, {0, -1}, {0, 1}}
	corner := func(d point, far float32) point {
		return point{at.x + d.x*(gap.x*far+50) - 50, at.y + d.y*(gap.y*far+20) - 20}
	}
	middle := point{50, 20}
	for i, free := range ways {
		for _, far := range []float32{1, 2.5} {
			o := obstacles{golfer: box{point{-10, -10}, point{-5, -5}}, head: emptyBox()}
			for k, d := range ways {
				for _, f := range []float32{1, 2.5, 4, 5.5} {
					if k != i || f < far {
						for range 20 {
							o.marks = append(o.marks, corner(d, f).add(middle))
						}
					}
				}
			}
			best := o.bestPlace(c, at, size, gap)
			if want := corner(free, far); best.sub(want).norm() > 1e-3 {
				t.Errorf("with only way %v free from %v: plate at %v, want %v", free, far, best, want)
			}
		}
	}
}

// What a place costs: the way to the tape, the golfer, marks and the tape.
func TestPlateCost(t *testing.T) {
	far := obstacles{golfer: box{point{-9, -9}, point{-8, -8}}, head: emptyBox(), blade: [4]point{{-9, 0}, {-9, 0}, {-9, 0}, {-9, 0}}}
	golfer, head, marks, tape := far, far, far, far
	golfer.golfer = box{point{40, 10}, point{49, 26}}
	head.head = box{point{90, 30}, point{120, 60}}
	marks.marks = []point{{1, 1}, {99, 39}, {0, 20}, {100, 20}, {50, 0}, {50, 40}}
	tape.blade = [4]point{{50, 20}, {-9, 0}, {60, 20}, {-9, 0}}
	tests := []struct {
		name string
		o    obstacles
		want float32
	}{
		{"nothing in the way", far, 50},
		{"a golfer of 9 by 16 pixels", golfer, 50 + 3*12},
		{"a corner of the head", head, 50 + 3000 + 10},
		{"two marks and four on the rim", marks, 50 + 2*40*2},
		{"two corners of the tape", tape, 50 + 2*10000},
	}
	for _, tt := range tests {
		if got := tt.o.cost(point{80, 60}, point{0, 0}, point{100, 40}, 2); abs(got-tt.want) > 1e-3 {
			t.Errorf("%s: cost = %v, want %v", tt.name, got, tt.want)
		}
	}
}

// A plate that would leave the picture is kept a margin inside it.
func TestPlateStaysInside(t *testing.T) {
	c := &canvas{width: 300, height: 200, scale: 2}
	for _, at := range []point{{0, 0}, {300, 0}, {0, 200}, {300, 200}} {
		o := obstacles{golfer: emptyBox(), head: emptyBox()}
		got := o.bestPlace(c, at, point{100, 40}, point{30, 20})
		if got.x < 12 || got.y < 12 || got.x > 300-12-100 || got.y > 200-12-40 {
			t.Errorf("tape at %v: plate at %v, want 12 pixels inside", at, got)
		}
	}
}
