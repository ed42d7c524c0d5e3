package sweep

import (
	"math"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

// rounding (m) of coordinates of some metres.
const rounding = 1e-12

// loft is the carriage-house loft with something of every kind.
func loft() plan.Plan {
	return plan.Plan{
		Version: plan.Version,
		Room: plan.Room{
			Length: 6.40, Width: 4.42, Height: 2.87,
			Slopes: []plan.Slope{
				{Name: "rafters, left", Wall: "left", KneeHeight: 2.10, Run: 0.90},
				{Wall: "back", KneeHeight: 2.40, Run: 0.50},
			},
			Solids: []plan.Solid{{Name: "boxed beam", Min: [3]float64{3.0, 0, 2.62}, Max: [3]float64{3.2, 4.42, 2.87}}},
		},
		Floor: plan.Floor{
			Layers: []plan.Layer{{Name: "plywood", Thickness: 0.018}, {Name: "rubber", Thickness: 0.010}, {Name: "turf", Thickness: 0.012}},
			Mat:    &plan.Mat{Thickness: 0.040, Length: 1.5, Width: 1.5, Inset: true},
		},
		Screen:  &plan.Screen{X: 6.00, Centre: 2.21, Bottom: 0.05, Width: 3.56, Height: 2.00, SideReturn: 1.0, TopReturn: 0.9},
		Tees:    []plan.Tee{{Name: "middle", X: 2.90, Y: 2.21}},
		Players: []plan.Player{{Name: "Host", Height: 1.78, Hand: "right"}, {Name: "Left-handed friend", Height: 1.70, Hand: "left"}},
		Hung:    []plan.Hung{{Name: "projector", Min: [3]float64{2.1, 2.0, 2.45}, Max: [3]float64{2.5, 2.45, 2.80}}},
	}
}

func TestSurfaces(t *testing.T) {
	// The signed distance of a ball of 0.1 m at (2, 1, 2).
	probe := geom.Capsule{A: geom.Vec{X: 2, Y: 1, Z: 2}, B: geom.Vec{X: 2, Y: 1, Z: 2}, R: 0.1}
	// The left slope falls 0.77 m in 0.90 m; at y = 1 its plane is 0.77/0.90 ×
	// (3.42 − 0.90) above the ceiling, so 2.87 + 2.156 m up.
	left := (2.10 + 3.42*0.77/0.90 - 2) * 0.90 / math.Hypot(0.77, 0.90)
	back := (2.40 + 2*0.47/0.50 - 2) * 0.50 / math.Hypot(0.47, 0.50)
	want := []struct {
		name string
		kind Kind
		d    float64
	}{
		{"ceiling", Ceiling, 0.87 - 0.1},
		{"left wall", Wall, 3.42 - 0.1},
		{"right wall", Wall, 1 - 0.1},
		{"back wall", Wall, 2 - 0.1},
		{"screen", Screen, 4 - 0.1},
		{"rafters, left", Slope, left - 0.1},
		{"back slope", Slope, back - 0.1},
		{"boxed beam", Solid, math.Hypot(1, 0.62) - 0.1},
		{"left return", Return, math.Hypot(3, 2.99) - 0.1},
		{"right return", Return, math.Hypot(3, 0.57) - 0.1},
		{"top return", Return, math.Hypot(3.1, 0.05) - 0.1},
		{"projector", Hung, math.Sqrt(0.1*0.1+1+0.45*0.45) - 0.1},
	}
	got := Surfaces(loft())
	if len(got) != len(want) {
		t.Fatalf("Surfaces = %d, want %d", len(got), len(want))
	}
	for i, w := range want {
		s := got[i]
		d, _, _ := s.separate(probe)
		if s.Name != w.name || s.Kind != w.kind || math.Abs(d-w.d) > rounding {
			t.Errorf("surface %d = %q (%v), probe at %.6f m, want %q (%v) at %.6f m", i, s.Name, s.Kind, d, w.name, w.kind, w.d)
		}
	}
}

func TestSurfacesWithoutScreen(t *testing.T) {
	p := loft()
	p.Screen = nil
	for _, s := range Surfaces(p) {
		if s.Kind == Screen || s.Kind == Return {
			t.Errorf("a room without a screen has a %v", s.Kind)
		}
		if s.Name == "front wall" && math.Abs(s.Plane.PointDistance(geom.Vec{X: 6})-0.4) > rounding {
			t.Errorf("front wall = %+v, want it at x = 6.40", s.Plane)
		}
	}
	p = loft()
	p.Screen.SideReturn = 0
	for _, s := range Surfaces(p) {
		if s.Name == "left return" || s.Name == "right return" {
			t.Errorf("a screen without side returns has a %s", s.Name)
		}
	}
}

// TestBuiltIn: the way out of a beam under the ceiling is down, and out of the
// boxing of a pipe in a corner away from both walls.
func TestBuiltIn(t *testing.T) {
	p := loft()
	p.Room.Solids = append(p.Room.Solids, plan.Solid{Name: "pipe", Min: [3]float64{0, 0, 0}, Max: [3]float64{0.5, 0.3, 2.87}})
	for _, c := range []struct {
		surface string
		at      geom.Vec
		want    float64
	}{
		{"boxed beam", geom.Vec{X: 3.1, Y: 2, Z: 2.70}, -0.08},
		{"boxed beam", geom.Vec{X: 3.1, Y: 0.01, Z: 2.86}, -0.1},
		{"boxed beam", geom.Vec{X: 3.1, Y: 2, Z: 3.1}, -0.1},
		{"pipe", geom.Vec{X: 0.01, Y: 0.05, Z: 0.02}, -0.25},
	} {
		for _, s := range Surfaces(p) {
			if s.Name == c.surface {
				if got := s.Box.PointDistance(c.at); math.Abs(got-c.want) > rounding {
					t.Errorf("%s: distance of %v = %v, want %v", s.Name, c.at, got, c.want)
				}
			}
		}
	}
}

// TestSlopeWalls checks each wall's slope by points on its knee line, on its
// ceiling line and under it.
func TestSlopeWalls(t *testing.T) {
	r := plan.Room{Length: 6, Width: 4, Height: 3}
	for _, c := range []struct {
		wall       plan.Wall
		knee, roof geom.Vec
	}{
		{"left", geom.Vec{X: 1, Y: 4, Z: 2}, geom.Vec{X: 5, Y: 3.2, Z: 3}},
		{"right", geom.Vec{X: 1, Z: 2}, geom.Vec{X: 5, Y: 0.8, Z: 3}},
		{"front", geom.Vec{X: 6, Y: 1, Z: 2}, geom.Vec{X: 5.2, Y: 3, Z: 3}},
		{"back", geom.Vec{Y: 1, Z: 2}, geom.Vec{X: 0.8, Y: 3, Z: 3}},
	} {
		h, ok := slope(r, plan.Slope{Wall: c.wall, KneeHeight: 2, Run: 0.8})
		if !ok {
			t.Fatalf("%s: no slope", c.wall)
		}
		if a, b := h.PointDistance(c.knee), h.PointDistance(c.roof); math.Abs(a) > rounding || math.Abs(b) > rounding {
			t.Errorf("%s slope: knee line %v off, ceiling line %v off", c.wall, a, b)
		}
		if got := h.PointDistance(geom.Vec{X: 3, Y: 2, Z: 1}); got <= 0 {
			t.Errorf("%s slope: the middle of the room is %v past it", c.wall, -got)
		}
		if got := geom.Norm(h.N); math.Abs(got-1) > rounding {
			t.Errorf("%s slope: |N| = %v", c.wall, got)
		}
	}
	for _, s := range []plan.Slope{{Wall: "left", KneeHeight: 3, Run: 1}, {Wall: "up", KneeHeight: 2, Run: 1}} {
		if h, ok := slope(r, s); ok {
			t.Errorf("slope(%+v) = %+v, want none", s, h)
		}
	}
}

// TestOutsideTheRoom: what shares no volume with the room is none of its surfaces, so
// that nothing behind a wall is told as nearer than the wall.
func TestOutsideTheRoom(t *testing.T) {
	p := plan.Demo()
	inside := len(Surfaces(p))
	behind := [2][3]float64{{p.Room.Length, 1, 1}, {p.Room.Length + 0.5, 2, 2}}
	p.Room.Solids = append(p.Room.Solids, plan.Solid{Name: "boiler", Min: behind[0], Max: behind[1]})
	p.Hung = append(p.Hung, plan.Hung{Name: "neighbour's lamp", Min: behind[0], Max: behind[1]})
	if got := len(Surfaces(p)); got != inside {
		t.Errorf("%d surfaces with two things behind the wall, want %d", got, inside)
	}
	p.Room.Solids[1].Min[0] -= 0.01
	if got := len(Surfaces(p)); got != inside+1 {
		t.Errorf("%d surfaces with a solid that comes through the wall, want %d", got, inside+1)
	}
}
