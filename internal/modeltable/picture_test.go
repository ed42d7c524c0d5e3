package modeltable

import (
	"math"
	"slices"
	"strings"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

func TestPen(t *testing.T) {
	var d pen
	d.line([][2]int{{10, -20}, {13, -20}, {13, -20}, {13, -25}, {0, 0}})
	d.close()
	d.line([][2]int{{-1, 2}, {4, 2}})
	if got, want := d.String(), "M10-20l3 0 0-5-13 25zM-1 2l5 0"; got != want {
		t.Errorf("the pen writes %q, want %q", got, want)
	}
}

func TestHull(t *testing.T) {
	for _, c := range []struct {
		name string
		in   [][2]int
		want [][2]int
	}{
		{"a square with what lies in it", [][2]int{{4, 4}, {0, 0}, {2, 2}, {4, 0}, {2, 0}, {0, 4}, {0, 0}, {1, 3}}, [][2]int{{0, 0}, {4, 0}, {4, 4}, {0, 4}}},
		{"a triangle", [][2]int{{0, 0}, {0, 2}, {2, 0}}, [][2]int{{0, 0}, {2, 0}, {0, 2}}},
		{"one line", [][2]int{{0, 0}, {2, 2}, {1, 1}}, [][2]int{{0, 0}, {2, 2}}},
		{"one point", [][2]int{{3, 1}, {3, 1}}, [][2]int{{3, 1}}},
	} {
		if got := hull(slices.Clone(c.in)); !slices.Equal(got, c.want) {
			t.Errorf("%s: hull = %v, want %v", c.name, got, c.want)
		}
	}
}

// The band of two members that go the same way side by side is the strip
// between them.
func TestBand(t *testing.T) {
	member := func(y float64) (path []swing.PathSample) {
		for i := range 11 {
			path = append(path, swing.PathSample{Face: geom.Vec{X: float64(i) / 100, Y: y}})
		}
		return path
	}
	var seen box
	got := band([][]swing.PathSample{member(0), member(0.03)}, views[0].look, &seen)
	if want := "M0-3l8 0 0 3-8 0zM8-3l2 0 0 3-2 0z"; got != want {
		t.Errorf("band = %q, want %q", got, want)
	}
	if seen.lo != [2]int{0, -3} || seen.hi != [2]int{10, 0} {
		t.Errorf("seen from %v to %v, want the strip", seen.lo, seen.hi)
	}
}

// Pictures are of one scale, hold all that they draw, and speak of what they
// show.
func TestPictures(t *testing.T) {
	pictures := table(t).Pictures
	if len(pictures) != 3 {
		t.Fatalf("%d pictures, want plan, end and side", len(pictures))
	}
	for _, p := range pictures {
		if p.Box[2] != pictures[0].Box[2] {
			t.Errorf("%s: %d cm wide, want all as wide as the first, %d", p.Name, p.Box[2], pictures[0].Box[2])
		}
		inside := func(what string, at [2]int) {
			if at[0] < p.Box[0] || at[1] < p.Box[1] || at[0] > p.Box[0]+p.Box[2] || at[1] > p.Box[1]+p.Box[3] {
				t.Errorf("%s: %s at %v lies outside %v", p.Name, what, at, p.Box)
			}
		}
		inside("the ball", [2]int{})
		if len(p.Traces) != 2 || strings.Count(p.Band, "z") < 50 {
			t.Errorf("%s: %d recorded paths over %d outlines of the band", p.Name, len(p.Traces), strings.Count(p.Band, "z"))
		}
		for _, tr := range p.Traces {
			inside(tr.Label.Text, tr.Label.To)
		}
		named := 0
		for _, m := range p.Moments {
			inside("a moment", m.At)
			if m.Text != "" {
				named++
			}
		}
		if len(p.Moments) != 2*len(moments) || named != len(moments) {
			t.Errorf("%s: %d moments, %d of them named, want each of %d on both paths and named on one", p.Name, len(p.Moments), named, len(moments))
		}
		if len(p.Says) != 2 || !strings.Contains(p.Says[0], "recorded") || !strings.Contains(p.Says[0], " m") || !strings.Contains(p.Says[1], " in") {
			t.Errorf("%s says %q, want the figures in both units", p.Name, p.Says)
		}
	}
}

// Looking along the target line the golfer's back is to the left, as in the
// page's end elevation; from above and from the front the target is to the right.
func TestViews(t *testing.T) {
	p := geom.Vec{X: 1, Y: 2, Z: 3}
	for i, want := range [][2]float64{{1, -2}, {-2, -3}, {1, -3}} {
		if got := views[i].look(p); math.Abs(got[0]-want[0])+math.Abs(got[1]-want[1]) > 0 {
			t.Errorf("%s: %v is at %v, want %v", views[i].name, p, got, want)
		}
	}
}
