package shape

import (
	"math"
	"testing"
)

func near(a, b Vec) bool { return a.Sub(b).Norm() < 1e-5 }

func TestVectors(t *testing.T) {
	a, b := XYZ(1, 2, 3), XYZ(-2, 0.5, 4)
	for _, tt := range []struct {
		name      string
		got, want Vec
	}{
		{"sum", a.Add(b), Vec{-1, 2.5, 7}},
		{"difference", a.Sub(b), Vec{3, 1.5, -1}},
		{"multiple", a.Mul(-2), Vec{-2, -4, -6}},
		{"along", a.Along(b, 2), Vec{-3, 3, 11}},
		{"half way", a.Lerp(b, 0.5), Vec{-0.5, 1.25, 3.5}},
		{"cross product", XYZ(1, 0, 0).Cross(XYZ(0, 1, 0)), Vec{0, 0, 1}},
		{"unit", XYZ(0, 3, 4).Unit(), Vec{0, 0.6, 0.8}},
		{"unit of nothing", Vec{}.Unit(), Vec{}},
		{"across", XYZ(1, 5, 1).Across(XYZ(0, 1, 0)), Vec{float32(math.Sqrt2 / 2), 0, float32(math.Sqrt2 / 2)}},
		{"middle", Axis{a, b}.Middle(), Vec{-0.5, 1.25, 3.5}},
	} {
		if !near(tt.got, tt.want) {
			t.Errorf("%s: %v, want %v", tt.name, tt.got, tt.want)
		}
	}
	if got := a.Dot(b); got != 11 {
		t.Errorf("scalar product %v, want 11", got)
	}
	for _, n := range []Vec{{1, 0, 0}, {0, 0, 1}, {0, 0.6, 0.8}, XYZ(1, 1, 9).Unit()} {
		u, v := Perpendiculars(n)
		if !near(u.Cross(v), n) || !near(v.Cross(n), u) {
			t.Errorf("Perpendiculars(%v) = %v, %v, want a right-handed base", n, u, v)
		}
		if along := n.Mul(3).Across(n); Abs(along.Dot(n)) > 1e-5 || Abs(along.Norm()-1) > 1e-5 {
			t.Errorf("%v across itself is %v, want any unit vector square to it", n, along)
		}
	}
}

// A ring's upper half has V, its lower half Under times V; a boxy section is fuller
// than an oval one and as wide.
func TestRings(t *testing.T) {
	r := Ring{Centre: Vec{1, 0, 0}, U: Vec{0, 2, 0}, V: Vec{0, 0, 3}, Under: 0.5, Tone: Glove}
	for _, tt := range []struct {
		name     string
		cos, sin float32
		want     Vec
	}{{"side", 1, 0, Vec{1, 2, 0}}, {"top", 0, 1, Vec{1, 0, 3}}, {"bottom", 0, -1, Vec{1, 0, -1.5}}} {
		if got := r.Point(tt.cos, tt.sin); !near(got, tt.want) {
			t.Errorf("%s at %v, want %v", tt.name, got, tt.want)
		}
	}
	half := r.Between(&Ring{Centre: Vec{3, 0, 0}, Under: 1, Tone: Skin}, 0.5)
	if !near(half.Centre, Vec{2, 0, 0}) || !near(half.U, Vec{0, 1, 0}) || !near(half.V, Vec{0, 0, 1.5}) || half.Under != 0.75 || half.Tone != Glove {
		t.Errorf("half way to a point: %+v", half)
	}
	oval, boxy := Oval(8), Boxy(8)
	for i := range oval.Cos {
		o, b := oval.Cos[i]*oval.Cos[i]+oval.Sin[i]*oval.Sin[i], boxy.Cos[i]*boxy.Cos[i]+boxy.Sin[i]*boxy.Sin[i]
		switch {
		case Abs(o-1) > 1e-5:
			t.Errorf("point %d of an oval is %v from the middle, want 1", i, Sqrt(o))
		case i%2 == 0 && Abs(b-1) > 1e-5, i%2 == 1 && b < 1.2:
			t.Errorf("point %d of a box is %v from the middle, want 1 at the sides and more in the corners", i, Sqrt(b))
		}
	}
}

// A ball is round, and a solid in a mirror is turned the other way.
func TestSolids(t *testing.T) {
	s := Solid{Section: Oval(12)}
	at := Vec{1, 2, 3}
	s.Ball(at, 0.5, White)
	for i := range s.Rings {
		for j := range s.Section.Cos {
			if d := s.Rings[i].Point(s.Section.Cos[j], s.Section.Sin[j]).Sub(at).Norm(); Abs(d-0.5) > 1e-5 {
				t.Errorf("ring %d, point %d is %v from the middle, want 0.5", i, j, d)
			}
		}
	}
	if first, last := s.Rings[0], s.Rings[len(s.Rings)-1]; !near(first.Centre, Vec{1, 2, 2.5}) || !near(last.Centre, Vec{1, 2, 3.5}) || s.At != at || s.Size != 0.5 {
		t.Errorf("the ball goes from %v to %v and is placed at %v with %v", first.Centre, last.Centre, s.At, s.Size)
	}
	if s.Turned() != 1 {
		t.Errorf("Turned() = %v, want 1", s.Turned())
	}
	for i := range s.Rings {
		s.Rings[i].U = s.Rings[i].U.Mul(-1)
	}
	if s.Turned() != -1 {
		t.Errorf("in a mirror Turned() = %v, want -1", s.Turned())
	}
}
