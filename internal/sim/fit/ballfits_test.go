package fit

import (
	"math"
	"slices"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// TestBallFits: where a ball may lie, at the edges of it.
func TestBallFits(t *testing.T) {
	p := plan.Plan{
		Room: plan.Room{Length: 8, Width: 5, Height: 3,
			Slopes: []plan.Slope{{Name: "roof", Wall: plan.WallLeft, KneeHeight: 0, Run: 3}}, // as high as it is far from the wall
			Solids: []plan.Solid{{Name: "box", Min: [3]float64{2, 1, 0}, Max: [3]float64{3, 2, 1}}, {Name: "shelf", Min: [3]float64{4, 1, 0.073}, Max: [3]float64{5, 2, 1}}, {Name: "plinth", Min: [3]float64{2, 3, 0}, Max: [3]float64{3, 4, 0.03}}}},
		Floor:  plan.Floor{Layers: []plan.Layer{{Name: "turf", Thickness: 0.03}}},
		Screen: &plan.Screen{X: 7},
	}
	for _, c := range []struct {
		name string
		x, y float64
		want bool
	}{
		{"in the middle", 6, 2.5, true},
		{"on the back wall", 0, 2.5, false},
		{"on the right wall", 6, 0, false},
		{"by the right wall", 6, 0.001, true},
		{"on the left wall", 6, 5, false},
		{"past the front wall", 8, 2.5, false},
		{"no place", math.NaN(), 2.5, false},
		{"against the screen", 7 - 0.0216, 2.5, true},
		{"into the screen", 7 - 0.0214, 2.5, false},
		{"under the slope", 6, 5 - 0.0731, true},
		{"under its foot", 6, 5 - 0.0729, false},
		{"in a solid", 2.5, 1.5, false},
		{"at its back", 2, 1.5, true},
		{"at its front", 3, 1.5, true},
		{"at its right", 2.5, 1, true},
		{"at its left", 2.5, 2, true},
		{"under a shelf as high as a ball", 4.5, 1.5, true},
		{"on a plinth within the floor", 2.5, 3.5, true},
	} {
		if got := BallFits(p, Spot{c.x, c.y}); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	low := p
	low.Room.Solids = []plan.Solid{{Name: "shelf", Min: [3]float64{4, 1, 0.0729}, Max: [3]float64{5, 2, 1}}}
	if BallFits(low, Spot{4.5, 1.5}) {
		t.Error("under a lower shelf: true, want false")
	}
	low.Room.Solids[0] = plan.Solid{Name: "plinth", Min: [3]float64{4, 1, 0}, Max: [3]float64{5, 2, 0.031}}
	if BallFits(low, Spot{4.5, 1.5}) {
		t.Error("within a plinth: true, want false")
	}
	p.Screen = nil
	if !BallFits(p, Spot{7.9, 2.5}) {
		t.Error("by the front wall without a screen: false, want true")
	}
}

func TestSpotTo(t *testing.T) {
	if got := (Spot{1, 2}).To(Spot{4, -2}); got != 5 {
		t.Errorf("from (1, 2) to (4, −2): %v, want 5", got)
	}
}

// TestShareError: half of Wilson's interval, which for none of n is half of
// z²/(n+z²), and for a half of many the usual 1.96·√(p(1−p)/n).
func TestShareError(t *testing.T) {
	const z2 = 1.96 * 1.96
	for _, c := range []struct {
		hits, tried int
		want, tol   float64
	}{
		{0, 256, z2 / (256 + z2) / 2, 1e-12},
		{256, 256, z2 / (256 + z2) / 2, 1e-12},
		{1, 1, z2 / (1 + z2) / 2, 1e-12},
		{500000, 1000000, 1.96 * 0.5 / 1000, 1e-8},
		{64, 256, 0.0527, 0.0001}, // 1.96/(1.015)·√(0.25·0.75/256 + 3.8416/262144)
	} {
		if got := shareError(c.hits, c.tried); math.Abs(got-c.want) > c.tol {
			t.Errorf("%d of %d: ± %v, want %v", c.hits, c.tried, got, c.want)
		}
	}
}

// TestGroundFlat: the least of the flat clearances under the limit, and whose it is.
func TestGroundFlat(t *testing.T) {
	g := Ground{Sides: []Side{{Ramp{At0: 1}, "ceiling", 3}, {Ramp{At0: 0.5}, "left wall", 1}, {Ramp{At0: 0.75}, "back wall", 2}}}
	for _, c := range []struct {
		limit, want float64
		which       int
	}{{2, 0.5, 1}, {0.5, 0.5, -1}, {0.4, 0.4, -1}, {math.Inf(1), 0.5, 1}} {
		if v, which := g.Flat(Spot{}, c.limit); v != c.want || which != c.which {
			t.Errorf("under %v: %v of %d, want %v of %d", c.limit, v, which, c.want, c.which)
		}
	}
	if got, want := g.Tightest(Spot{}, 2), (Tightest{0.5, "left wall", 1}); got != want {
		t.Errorf("Tightest = %+v, want %+v", got, want)
	}
	if got, want := g.Tightest(Spot{}, 0.2), (Tightest{0.2, "", -1}); got != want {
		t.Errorf("Tightest under 0.2 = %+v, want %+v", got, want)
	}
}

// TestTapes: square to the nearer side wall, to the back wall and to the screen,
// from the ball and from the heels.
func TestTapes(t *testing.T) {
	p := plan.Plan{Room: plan.Room{Length: 8, Width: 5, Height: 3}, Screen: &plan.Screen{X: 7}}
	mark := func(y float64) *Mark {
		m := &Mark{Ball: [2]float64{4, y}}
		m.Lead.Heel, m.Trail.Heel = [2]float64{4.5, y + 1}, [2]float64{4, y + 0.5}
		m.tape(p)
		return m
	}
	want := []Tape{
		{"right wall", "ball", 2.5, [2]float64{4, 0}, [2]float64{4, 2.5}},
		{"back wall", "ball", 4, [2]float64{0, 2.5}, [2]float64{4, 2.5}},
		{"right wall", "heels", 3.25, [2]float64{4.25, 0}, [2]float64{4.25, 3.25}},
		{"back wall", "heels", 4, [2]float64{0, 3}, [2]float64{4, 3}},
		{"screen", "ball", 3, [2]float64{7, 2.5}, [2]float64{4, 2.5}},
	}
	if got := mark(2.5).Tapes; !slices.Equal(got, want) {
		t.Errorf("from the middle: %+v, want %+v", got, want)
	}
	left := mark(2.625).Tapes
	if left[0] != (Tape{"left wall", "ball", 2.375, [2]float64{4, 5}, [2]float64{4, 2.625}}) || left[2] != (Tape{"left wall", "heels", 1.625, [2]float64{4.25, 5}, [2]float64{4.25, 3.375}}) {
		t.Errorf("left of the middle: %+v", left)
	}
	p.Screen = nil
	if got := mark(2.5).Tapes; !slices.Equal(got, want[:4]) {
		t.Errorf("without a screen: %+v", got)
	}
}

// TestRamp: a clearance on a straight line over the floor.
func TestRamp(t *testing.T) {
	r := Ramp{1, 0.5, -0.25}
	if got := r.At(Spot{2, 4}); got != 1 {
		t.Errorf("At(2, 4) = %v, want 1", got)
	}
	for _, c := range []struct {
		r    Ramp
		want bool
	}{{Ramp{1, 0, 0}, true}, {Ramp{1, 0.1, 0}, false}, {Ramp{1, 0, 0.1}, false}} {
		if got := c.r.Level(); got != c.want {
			t.Errorf("%+v is level: %v", c.r, got)
		}
	}
}

// TestPlaced: on a spot, at the height and with the hand of the cast.
func TestPlaced(t *testing.T) {
	c := Cast{At: sweep.Placement{Ball: geom.Vec{X: 9, Y: 9, Z: 0.04}, Left: true}}
	if got := c.Placed(Spot{2, 3}); got != (sweep.Placement{Ball: geom.Vec{X: 2, Y: 3, Z: 0.04}, Left: true}) {
		t.Errorf("Placed = %+v", got)
	}
}
