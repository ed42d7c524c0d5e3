package maps

import (
	"math"
	"slices"
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
)

// TestNewGrid: cells of at most 5 cm, or smaller if asked, coarser only in halls,
// that fill the floor.
func TestNewGrid(t *testing.T) {
	for _, c := range []struct {
		name                string
		length, width, cell float64
		nx, ny              int
	}{
		{"whole cells", 6, 4, 0, 120, 80},
		{"a finer one", 6, 4, 0.02, 300, 200},
		{"no coarser one", 6, 4, 0.5, 120, 80},
		{"not a number", 6, 4, math.NaN(), 120, 80},
		{"a little more than whole", 6.01, 4, 0, 121, 80},
		{"a hall", 40, 10, 0, 400, 100},
		{"a wide hall", 10, 60, 0.01, 67, 400},
		{"a closet", 0.03, 0.03, 0, 1, 1},
	} {
		g := newGrid(c.length, c.width, c.cell)
		if g.NX != c.nx || g.NY != c.ny {
			t.Errorf("%s: %d by %d cells, want %d by %d", c.name, g.NX, g.NY, c.nx, c.ny)
		}
		last := g.spot(g.NX-1, g.NY-1)
		if math.Abs(last.X+g.Cell[0]/2-c.length) > 1e-9 || math.Abs(last.Y+g.Cell[1]/2-c.width) > 1e-9 || g.spot(0, 0) != (fit.Spot{X: g.Cell[0] / 2, Y: g.Cell[1] / 2}) {
			t.Errorf("%s: cells of %v from %v to %v do not fill the floor", c.name, g.Cell, g.Origin, last)
		}
	}
}

func TestStore(t *testing.T) {
	values := []float64{0, 0.0019, 0.002, 0.002 - 1e-12, -0.0001, 31.9999, 99, -99, math.Inf(1), math.Inf(-1)}
	var g Grid
	g.store(values)
	if want := []int16{0, 1, 2, 2, -1, 31999, 32000, -32000, 32000, -32000}; !slices.Equal(g.Values, want) {
		t.Errorf("rounded down: %v, want %v", g.Values, want)
	}
	g.storeUp(append(values, 0.002+1e-12))
	if want := []int16{0, 2, 2, 2, 0, 32000, 32000, -32000, 32000, -32000, 2}; !slices.Equal(g.Values, want) {
		t.Errorf("rounded up: %v, want %v", g.Values, want)
	}
}

// TestBlocks: cut again and again, a block becomes its single cells, each once,
// and all middles lie within the radius around its own.
func TestBlocks(t *testing.T) {
	g := newGrid(0.7, 0.45, 0)
	met := map[[2]int]int{}
	var cut func(b block)
	cut = func(b block) {
		at, radius := g.middle(b)
		most := 0.0
		for i := b.i0; i < b.i1; i++ {
			for j := b.j0; j < b.j1; j++ {
				most = max(most, at.To(g.spot(i, j)))
			}
		}
		if math.Abs(most-radius) > 1e-12 {
			t.Errorf("%v: its cells lie up to %v m from its middle, it says %v", b, most, radius)
		}
		if b.single() {
			met[[2]int{b.i0, b.j0}]++
			return
		}
		for _, q := range b.split() {
			cut(q)
		}
	}
	cut(block{0, 0, g.NX, g.NY})
	if len(met) != g.NX*g.NY {
		t.Errorf("%d cells, want %d", len(met), g.NX*g.NY)
	}
	for cell, n := range met {
		if n != 1 {
			t.Errorf("cell %v comes %d times", cell, n)
		}
	}
}

// TestAgainst: every reason against a tee, at its edge.
func TestAgainst(t *testing.T) {
	s := site{
		p: plan.Plan{
			Room:   plan.Room{Length: 8, Width: 5, Height: 3},
			Screen: &plan.Screen{X: 7}, Sensor: &plan.Sensor{Min: [2]float64{3, 1}, Max: [2]float64{5, 4}},
			Floor: plan.Floor{Mat: &plan.Mat{Length: 1, Width: 2}},
		},
		floor: rect{0, 0, 7, 5}, onFloor: []rect{{0, 0, 3, 1}}, feet: []rect{{-0.5, 0.5, 0.5, 1}, {-0.5, -1, 0.5, -0.5}},
		nearest: 2.5, farthest: 3.5,
	}
	for _, c := range []struct {
		name string
		x, y float64
		want int16
	}{
		{"free", 4, 2.5, 0},
		{"as near to the screen as may be", 4.5, 2.5, 0},
		{"nearer", 4.51, 2.5, maskScreenNear},
		{"as far", 3.5, 2.5, 0},
		{"farther", 3.49, 2.5, maskScreenFar},
		{"at the edge of the strip", 4, 4, 0},
		{"beside the strip", 4, 4.01, maskSensor | maskMat | maskFeet},
		{"before the strip", 2.99, 2.5, maskScreenFar | maskSensor},
		{"past the strip", 5.01, 2.5, maskScreenNear | maskSensor},
		{"on its right edge, mat and feet on the wall", 4, 1, 0},
		{"right of it", 4, 0.99, maskSensor | maskMat | maskFeet},
		{"mat and feet at a solid", 3.5, 2, 0},
		{"mat and feet on a solid", 3.4, 1.9, maskScreenFar | maskMat | maskFeet},
		{"in the wall", -0.1, 2.5, maskScreenFar | maskSensor | maskMat | maskFeet | maskBall},
	} {
		if got := s.against(fit.Spot{X: c.x, Y: c.y}); got != c.want {
			t.Errorf("%s: %06b, want %06b", c.name, got, c.want)
		}
	}
	s.p.Screen, s.p.Sensor, s.p.Floor.Mat, s.feet = nil, nil, nil, nil
	if got := s.against(fit.Spot{X: 0.1, Y: 0.1}); got != 0 {
		t.Errorf("with nothing in the way: %06b, want 0", got)
	}
}

// TestNewSite: what a mat or a foot would meet is what reaches from near the floor
// up, and the floor ends at the screen.
func TestNewSite(t *testing.T) {
	solid := func(z0, z1 float64) plan.Solid {
		return plan.Solid{Min: [3]float64{1, 2, z0}, Max: [3]float64{1.5, 2.5, z1}}
	}
	for _, c := range []struct {
		name string
		s    plan.Solid
		met  bool
	}{
		{"a column", solid(0, 3), true},
		{"a ledge a hand above the mat", solid(0.129, 1), true},
		{"a shelf as high as feet fit under", solid(0.13, 1), false},
		{"a plinth in the floor build-up", solid(0, 0.03), false},
		{"a plinth that stands out of it", solid(0, 0.031), true},
	} {
		p := plan.Plan{Room: plan.Room{Length: 6, Width: 4, Height: 3, Solids: []plan.Solid{c.s}}, Floor: plan.Floor{Layers: []plan.Layer{{Thickness: 0.03}}}, Screen: &plan.Screen{X: 5.5}}
		s := newSite(p, nil, StandOptions{Nearest: 1, Farthest: 2})
		if met := slices.Equal(s.onFloor, []rect{{1, 2, 1.5, 2.5}}); met != c.met || !c.met && len(s.onFloor) != 0 {
			t.Errorf("%s: on the floor is %v, want it there: %v", c.name, s.onFloor, c.met)
		}
		if s.floor != (rect{0, 0, 5.5, 4}) || s.nearest != 1 || s.farthest != 2 {
			t.Errorf("%s: floor %v, %v to %v m", c.name, s.floor, s.nearest, s.farthest)
		}
		p.Screen = nil
		if s := newSite(p, nil, StandOptions{}); s.floor != (rect{0, 0, 6, 4}) {
			t.Errorf("%s: without a screen the floor is %v", c.name, s.floor)
		}
	}
}

// TestContourOfARamp: where a map rises evenly along x, its contour is a straight
// line at the level and the rim of the map.
func TestContourOfARamp(t *testing.T) {
	g := newGrid(2, 1, 0.05)
	values := make([]float64, g.NX*g.NY)
	for k := range values {
		values[k] = g.spot(k%g.NX, k/g.NX).X // m
	}
	c := g.contour("ramp", 1.21, values)
	if c.Name != "ramp" || c.Level != 1.21 || len(c.Rings) != 1 {
		t.Fatalf("%+v, want one ring", c)
	}
	least := math.Inf(1)
	for _, p := range c.Rings[0] {
		least = min(least, p[0])
		if p[0] < 0 || p[0] > 2 || p[1] < 0 || p[1] > 1 {
			t.Errorf("the ring goes through %v, outside the floor", p)
		}
	}
	if math.Abs(least-1.21) > 0.0011 {
		t.Errorf("the ring begins at x = %v, want 1.21", least)
	}
	if n := len(c.Rings[0]); n > 12 {
		t.Errorf("a ring of %d points, want few: most lie on straight lines", n)
	}
}

func TestStraight(t *testing.T) {
	for _, c := range []struct {
		name    string
		a, b, c [2]float64
		want    bool
	}{
		{"on the way", [2]float64{0, 0}, [2]float64{1, 0.0004}, [2]float64{2, 0}, true},
		{"beside it", [2]float64{0, 0}, [2]float64{1, 0.0006}, [2]float64{2, 0}, false},
		{"beside it, diagonally", [2]float64{0, 0}, [2]float64{1, 1.001}, [2]float64{2, 2}, false},
		{"on the way, diagonally", [2]float64{0, 0}, [2]float64{1, 1.0005}, [2]float64{2, 2}, true},
		{"before it", [2]float64{0, 0}, [2]float64{-1, 0}, [2]float64{2, 0}, false},
		{"past it", [2]float64{0, 0}, [2]float64{3, 0}, [2]float64{2, 0}, false},
		{"there and back", [2]float64{0, 0}, [2]float64{1, 0}, [2]float64{0, 0}, false},
		{"down a side", [2]float64{5, 5}, [2]float64{5, 4}, [2]float64{5, 3}, true},
	} {
		if got := straight(c.a, c.b, c.c); got != c.want {
			t.Errorf("%s: straight = %v, want %v", c.name, got, c.want)
		}
	}
}

// TestCone: how far a place is beside where balls fly, and how high they are there.
func TestCone(t *testing.T) {
	quarter := math.Pi / 4
	c := cone{tee: fit.Spot{X: 1, Y: 2}, from: -quarter, to: quarter, edges: [2]edge{edgeAt(-quarter), edgeAt(quarter)}, over: make([]float64, 100)}
	for i := range c.over {
		c.over[i] = 0.5 // m, as far as 3 m
	}
	for _, p := range []struct {
		name        string
		x, y        float64
		side, along float64
	}{
		{"ahead", 3, 2, 0, 2},
		{"on the edge", 2, 3, 0, math.Sqrt2},
		{"left of it", 1, 4, math.Sqrt2, math.Sqrt2},
		{"right of it", 1, 0, math.Sqrt2, math.Sqrt2},
		{"behind", -1, 2, 2, 0},
		{"behind and beside", 0, 4, math.Sqrt(4.5), math.Sqrt(0.5)},
	} {
		side, along := c.off(fit.Spot{X: p.x, Y: p.y})
		if math.Abs(side-p.side) > 1e-9 || math.Abs(along-p.along) > 1e-9 {
			t.Errorf("%s: %v beside, %v along, want %v, %v", p.name, side, along, p.side, p.along)
		}
	}
	for _, p := range []struct {
		name          string
		x, y          float64
		reach, spread float64
		want          float64
		found         bool
	}{
		{"over the middle", 3, 2, 0.25, 0, 0.75, true},
		{"beside, within reach", 1, 4, 1.5, 0, 0.5 + 0.5, true}, // √(1.5² − 2)
		{"beside, out of reach", 1, 4, 1.41, 0, 0, false},
		{"beside, in reach of the spread", 1, 4, 1.25, math.Sqrt2 - 0.75, 0.5 + 1, true}, // √(1.25² − 0.75²)
		{"past the heights' end", 4.5, 2, 0.25, 0, 0, false},
		{"just past their end", 4.1, 2, 0.25, 0, 0.5 + math.Sqrt(0.25*0.25-0.1*0.1), true},
	} {
		got, found := c.top(fit.Spot{X: p.x, Y: p.y}, p.reach, p.spread)
		if found != p.found || math.Abs(got-p.want) > 1e-6 {
			t.Errorf("%s: %v, %v, want %v, %v", p.name, got, found, p.want, p.found)
		}
	}
	for i := range c.over {
		c.over[i] = math.Inf(-1)
	}
	c.over[50] = 2 // m, from 1.5 to 1.53 m
	if got, found := c.top(fit.Spot{X: 1 + 1.515, Y: 2}, 0.1, 0); !found || got != 2.1 {
		t.Errorf("over the one height: %v, %v, want 2.1", got, found)
	}
	if _, found := c.top(fit.Spot{X: 1 + 1.39, Y: 2}, 0.1, 0); found {
		t.Error("0.1 m before the one height something is found")
	}
}

func TestFineCells(t *testing.T) {
	for _, c := range [][3]int{{7, 3, 2}, {6, 3, 2}, {-1, 3, -1}, {-3, 3, -1}, {-4, 3, -2}, {0, 3, 0}} {
		if got := floorDiv(c[0], c[1]); got != c[2] {
			t.Errorf("floorDiv(%d, %d) = %d, want %d", c[0], c[1], got, c[2])
		}
	}
	s := shadow{rim: 10, nx: 200, ny: 200}
	s.coarsen()
	for a := range 200 {
		for d := range 20 {
			// Fine cell a−rim, and the fine cells of the grid's cell d.
			want := 0
			switch at := a - 10; {
			case at < fine*d:
				want = fine*d - at - 1
			case at > fine*d+fine-1:
				want = at - (fine*d + fine - 1) - 1
			}
			if want <= 5 {
				if got := offsets(5)[s.first(a, 5, d)]; got != want {
					t.Fatalf("from fine cell %d to cell %d are %d, want %d", a, d, got, want)
				}
			}
			from, to := s.reachOf(a, 5, 20)
			if in := d >= from && d <= to; in != (want <= 5) {
				t.Fatalf("reachOf(%d) = %d to %d; cell %d is %d away", a, from, to, d, want)
			}
		}
	}
}

// TestSharing: one tee serves both hands where everybody is clear at it, or where two
// tees would gain next to nothing.
func TestSharing(t *testing.T) {
	const margin = 0.15
	at := func(x, y, clearance float64) Best { return Best{X: x, Y: y, Clearance: clearance, Found: true} }
	for _, c := range []struct {
		name        string
		right, left Best
		shared      Best
		want        Sharing
	}{
		{"clear at one", at(3, 2.5, 0.40), at(3, 1.7, 0.35), at(3, 2.1, 0.20), Sharing{Both: true, One: true, Apart: 0.8, Loses: 0.15}},
		{"tight at one", at(3, 2.5, 0.30), at(2.7, 2.1, 0.25), at(3, 2.1, 0.10), Sharing{Both: true, One: false, Apart: 0.5, Loses: 0.15}},
		{"nothing to gain", at(3, 2.5, 0.109), at(3, 2.1, 0.30), at(3, 2.1, 0.10), Sharing{Both: true, One: true, Apart: 0.4, Loses: 0.009}},
		{"one has no place", at(3, 2.5, 0.30), Best{}, at(3, 2.1, 0.10), Sharing{Both: true}},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := StandMap{Best: c.shared, Hands: []HandBest{{Best: c.right}, {Best: c.left}}}
			got := m.sharing(margin)
			if math.Abs(got.Apart-c.want.Apart) > 1e-9 || math.Abs(got.Loses-c.want.Loses) > 1e-9 || got.One != c.want.One || got.Both != c.want.Both {
				t.Errorf("sharing = %+v, want %+v", got, c.want)
			}
		})
	}
}

// TestLeftHandersAreMirrored: what their feet take, and where their balls off the hosel
// fly, is the mirror image of a right-hander's.
func TestLeftHandersAreMirrored(t *testing.T) {
	p := plan.Demo()
	p.Players, p.Clubs = p.Players[:1], p.Clubs[:1]
	p.Players[0].Clubs = nil
	var feet [2]rect
	var flights [2][]cone
	for i, hand := range []plan.Hand{plan.HandRight, plan.HandLeft} {
		q := p.WithDefaults()
		q.Players[0].Hand = hand
		casts, err := new(fit.Lab).Casts(q, nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		feet[i], flights[i] = footing(&casts[0]), cones(q, casts, true)
	}
	right, left := feet[0], feet[1]
	if left != (rect{right.x0, -right.y1, right.x1, -right.y0}) || right.y0 == -right.y1 {
		t.Errorf("a right-hander's feet take %v, a left-hander's %v, want the mirror image", right, left)
	}
	if len(flights[0]) != len(flights[1]) || len(flights[0]) < 2 {
		t.Fatalf("%d and %d cones", len(flights[0]), len(flights[1]))
	}
	lopsided := false
	for i, a := range flights[0] {
		b := flights[1][i]
		if math.Abs(a.from+b.to) > 1e-12 || math.Abs(a.to+b.from) > 1e-12 {
			t.Errorf("a right-hander's %s flies from %.4f to %.4f, a left-hander's from %.4f to %.4f", a.shot, a.from, a.to, b.from, b.to)
		}
		lopsided = lopsided || math.Abs(a.from+a.to) > 0.1
	}
	if !lopsided {
		t.Error("no shot flies to one side")
	}
}
