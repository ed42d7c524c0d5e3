package sweep

import (
	"math"
	"slices"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

func TestKinds(t *testing.T) {
	for k, want := range []string{"ceiling", "wall", "slope", "screen", "return", "solid", "hung"} {
		if got := Kind(k).String(); got != want {
			t.Errorf("kind %d is a %q, want %q", k, got, want)
		}
		if got, want := Kind(k).Flat(), k < 4; got != want {
			t.Errorf("%s: Flat() = %v, want %v", Kind(k), got, want)
		}
	}
}

// A slope is a known way off: under a roof that falls 1 m over 1 m to a knee of
// 2 m, a point on the floor 2 m from the wall is 4/√2 m from it.
func TestDistanceToSlopes(t *testing.T) {
	r := plan.Room{Length: 6, Width: 4, Height: 3}
	for _, c := range []struct {
		name string
		s    plan.Slope
		at   geom.Vec
		want float64
		none bool
	}{
		{"left, at 45°", plan.Slope{Wall: plan.WallLeft, KneeHeight: 2, Run: 1}, geom.Vec{X: 1, Y: 2}, 4 / math.Sqrt2, false},
		{"right, at 45°", plan.Slope{Wall: plan.WallRight, KneeHeight: 2, Run: 1}, geom.Vec{X: 5, Y: 2}, 4 / math.Sqrt2, false},
		{"front, at 45°", plan.Slope{Wall: plan.WallFront, KneeHeight: 2, Run: 1}, geom.Vec{X: 4, Y: 3}, 4 / math.Sqrt2, false},
		{"back, at 45°", plan.Slope{Wall: plan.WallBack, KneeHeight: 2, Run: 1}, geom.Vec{X: 2, Y: 1}, 4 / math.Sqrt2, false},
		// 3, 4, 5: 0.6 m of rise over 0.8 m.
		{"left, gentle", plan.Slope{Wall: plan.WallLeft, KneeHeight: 2.4, Run: 0.8}, geom.Vec{Y: 4, Z: 1.4}, 0.8, false},
		{"left, gentle, from the side", plan.Slope{Wall: plan.WallLeft, KneeHeight: 2.4, Run: 0.8}, geom.Vec{Y: 3, Z: 2.4}, 0.6, false},
		{"past it", plan.Slope{Wall: plan.WallLeft, KneeHeight: 2.4, Run: 0.8}, geom.Vec{Y: 4, Z: 2.9}, -0.4, false},
		{"upright: a wall", plan.Slope{Wall: plan.WallLeft, KneeHeight: 2, Run: 0}, geom.Vec{Y: 1, Z: 9}, 3, false},
		{"down to the floor", plan.Slope{Wall: plan.WallBack, KneeHeight: 0, Run: 4}, geom.Vec{X: 5}, 3, false},
		{"level: no rise", plan.Slope{Wall: plan.WallLeft, KneeHeight: 3, Run: 1}, geom.Vec{}, 0, true},
		{"upside down", plan.Slope{Wall: plan.WallLeft, KneeHeight: 3.5, Run: 1}, geom.Vec{}, 0, true},
		{"out of the room", plan.Slope{Wall: plan.WallLeft, KneeHeight: 2, Run: -1}, geom.Vec{}, 0, true},
		{"on no wall", plan.Slope{Wall: "north", KneeHeight: 2, Run: 1}, geom.Vec{}, 0, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			list := Surfaces(plan.Plan{Room: plan.Room{Length: r.Length, Width: r.Width, Height: r.Height, Slopes: []plan.Slope{c.s}}})
			i := slices.IndexFunc(list, func(s Surface) bool { return s.Kind == Slope })
			if c.none {
				if i >= 0 {
					t.Errorf("a surface %+v, want none", list[i])
				}
				return
			}
			if i < 0 {
				t.Fatal("no surface, want a slope")
			}
			if got := list[i].Plane.PointDistance(c.at); math.Abs(got-c.want) > rounding {
				t.Errorf("%v m from %v, want %v", got, c.at, c.want)
			}
			if got, want := list[i].Name, string(c.s.Wall)+" slope"; got != want {
				t.Errorf("it is called %q, want %q", got, want)
			}
		})
	}
}

// TestFlush: what stands within 2 mm of a wall, the floor or the ceiling is built
// against it and goes on for 4 m behind it; what stands off by more does not.
func TestFlush(t *testing.T) {
	r := plan.Room{Length: 6, Width: 4, Height: 3}
	size := [3]float64{6, 4, 3}
	for axis := range 3 {
		for _, c := range []struct {
			name           string
			lo, hi         float64 // of the axis
			wantLo, wantHi float64
		}{
			{"free", 1, 2, 1, 2},
			{"at the near one", 0, 1, -4, 1},
			{"2 mm off the near one", 0.002, 1, -4, 1},
			{"more than 2 mm off it", 0.0021, 1, 0.0021, 1},
			{"begun behind the near one", -0.5, 1, -4.5, 1},
			{"at the far one", 1, size[axis], 1, size[axis] + 4},
			{"2 mm off the far one", 1, size[axis] - 0.001999, 1, size[axis] + 4},
			{"more than 2 mm off that", 1, size[axis] - 0.0021, 1, size[axis] - 0.0021},
			{"ended behind the far one", 1, size[axis] + 0.5, 1, size[axis] + 4.5},
			{"from one to the other", 0, size[axis], -4, size[axis] + 4},
		} {
			lo, hi := [3]float64{1, 1, 1}, [3]float64{2, 2, 2}
			lo[axis], hi[axis] = c.lo, c.hi
			wantLo, wantHi := [3]float64{1, 1, 1}, [3]float64{2, 2, 2}
			wantLo[axis], wantHi[axis] = c.wantLo, c.wantHi
			want := geom.Box{Min: geom.Vec{X: wantLo[0], Y: wantLo[1], Z: wantLo[2]}, Max: geom.Vec{X: wantHi[0], Y: wantHi[1], Z: wantHi[2]}}
			p := plan.Plan{Room: r, Hung: []plan.Hung{{Name: "it", Min: lo, Max: hi}}}
			p.Room.Solids = []plan.Solid{{Name: "it", Min: lo, Max: hi}}
			n := 0
			for _, s := range Surfaces(p) {
				if s.Name == "it" {
					n++
					if s.Box != want {
						t.Errorf("axis %d, %s: a %v is %+v, want %+v", axis, c.name, s.Kind, s.Box, want)
					}
				}
			}
			if n != 2 {
				t.Errorf("axis %d, %s: %d surfaces, want a solid and a hung one", axis, c.name, n)
			}
		}
	}
}

// TestReturns: the cloth lies outside the screen's opening, 5 mm thick, from the
// screen towards the golfer as far as it is deep.
func TestReturns(t *testing.T) {
	screen := plan.Screen{X: 5, Centre: 2, Bottom: 0.25, Width: 3, Height: 2, SideReturn: 0.5, TopReturn: 0.75}
	box := func(x0, y0, z0, x1, y1, z1 float64) geom.Box {
		return geom.Box{Min: geom.Vec{X: x0, Y: y0, Z: z0}, Max: geom.Vec{X: x1, Y: y1, Z: z1}}
	}
	all := map[string]geom.Box{
		"left return":  box(4.5, 3.5, 0.25, 5, 3.505, 2.25),
		"right return": box(4.5, 0.5-0.005, 0.25, 5, 0.5, 2.25),
		"top return":   box(4.25, 0.5, 2.25, 5, 3.5, 2.25+0.005),
	}
	for _, c := range []struct {
		name      string
		side, top float64
		want      []string
	}{
		{"both", 0.5, 0.75, []string{"left return", "right return", "top return"}},
		{"sides only", 0.5, 0, []string{"left return", "right return"}},
		{"top only", 0, 0.75, []string{"top return"}},
		{"none", 0, 0, nil},
	} {
		screen.SideReturn, screen.TopReturn = c.side, c.top
		var got []string
		for _, s := range Surfaces(plan.Plan{Room: plan.Room{Length: 6, Width: 4, Height: 3}, Screen: &screen}) {
			if s.Kind != Return {
				continue
			}
			got = append(got, s.Name)
			if s.Box != all[s.Name] {
				t.Errorf("%s: the %s is %+v, want %+v", c.name, s.Name, s.Box, all[s.Name])
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}
