package remedy

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"wideberth/internal/sim/plan"
)

func applied() plan.Plan {
	return plan.Plan{
		Room: plan.Room{Length: 6, Width: 4, Height: 3, Solids: []plan.Solid{{Name: "beam", Max: [3]float64{1, 2, 3}}}},
		Hung: []plan.Hung{{Name: "a"}, {Name: "b"}, {Name: "c"}}, Screen: &plan.Screen{X: 5},
		Tees:    []plan.Tee{{Name: "tee", X: 2, Y: 2}},
		Clubs:   []plan.Club{{Name: "driver", Kind: plan.KindDriver}},
		Players: []plan.Player{{Name: "one", Height: 1.8}},
	}
}

// TestEdits: an edit changes the number it names and nothing else, or takes the
// item out; a path that leads to no number of the plan is said.
func TestEdits(t *testing.T) {
	for _, c := range []struct {
		name string
		edit Edit
		want func(p *plan.Plan) // nil: an error
	}{
		{"a number", Edit{Path: "room.height", Value: 3.5}, func(p *plan.Plan) { p.Room.Height = 3.5 }},
		{"of a part", Edit{Path: "screen.x", Value: 4}, func(p *plan.Plan) { p.Screen.X = 4 }},
		{"of a list", Edit{Path: "players[0].height", Value: 1.9}, func(p *plan.Plan) { p.Players[0].Height = 1.9 }},
		{"of a corner", Edit{Path: "room.solids[0].max[2]", Value: 2.5}, func(p *plan.Plan) { p.Room.Solids[0].Max[2] = 2.5 }},
		{"the first of three", Edit{Path: "hung[0]", Remove: true}, func(p *plan.Plan) { p.Hung = p.Hung[1:] }},
		{"the middle one", Edit{Path: "hung[1]", Remove: true}, func(p *plan.Plan) { p.Hung = []plan.Hung{p.Hung[0], p.Hung[2]} }},
		{"the last one", Edit{Path: "hung[2]", Remove: true}, func(p *plan.Plan) { p.Hung = p.Hung[:2] }},
		{"no such item", Edit{Path: "hung[3]", Remove: true}, nil},
		{"before the first", Edit{Path: "hung[-1]", Remove: true}, nil},
		{"a corner cannot go", Edit{Path: "room.solids[0].max[2]", Remove: true}, nil},
		{"a number cannot go", Edit{Path: "room.height", Remove: true}, nil},
		{"a list is no number", Edit{Path: "hung", Value: 1}, nil},
		{"an item is no number", Edit{Path: "hung[0]", Value: 1}, nil},
		{"text is no number", Edit{Path: "hung[0].name", Value: 1}, nil},
		{"no such field", Edit{Path: "room.depth", Value: 1}, nil},
		{"nothing in a number", Edit{Path: "room.height.more", Value: 1}, nil},
		{"a list has no field", Edit{Path: "hung.name", Value: 1}, nil},
		{"a number has no items", Edit{Path: "room.height[0]", Value: 1}, nil},
		{"a part that is not there", Edit{Path: "sensor.min[0]", Value: 1}, nil},
		{"no number in brackets", Edit{Path: "hung[x]", Remove: true}, nil},
		{"nothing", Edit{}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			given := applied()
			got, err := Apply(given, []Edit{c.edit})
			if c.want == nil {
				if want := `"` + c.edit.Path + `" leads to no number of the plan`; err == nil || err.Error() != want {
					t.Errorf("Apply = %v, want %s", err, want)
				}
				return
			}
			want := applied().WithDefaults()
			c.want(&want)
			if err != nil || !reflect.DeepEqual(got, want) {
				t.Errorf("Apply = %s, %v, want %s", got.JSON(), err, want.JSON())
			}
			if !reflect.DeepEqual(given, applied()) {
				t.Errorf("Apply changed the plan it was given to %s", given.JSON())
			}
		})
	}
	got, err := Apply(applied(), []Edit{{Path: "hung[0]", Remove: true}, {Path: "hung[0].lumens", Value: 7}})
	if err != nil || len(got.Hung) != 2 || got.Hung[0].Name != "b" || got.Hung[0].Lumens != 7 {
		t.Errorf("one after another: %+v, %v, want b with 7 lumens first", got.Hung, err)
	}
	if got := path("tees", 12, ".x"); got != "tees[12].x" {
		t.Errorf("path = %q", got)
	}
}

// TestWalk: the first whole millimetre where a clearance reaches the margin is
// found, and a gap that opens and closes again is not stepped over.
func TestWalk(t *testing.T) {
	ramp := func(s float64) float64 { return s - 0.5 }
	for _, c := range []struct {
		name               string
		margin, most, from float64
		look               func(s float64) float64
		end                float64 // where the line ends
		want               float64
		found              bool
	}{
		{"a ramp", 0.15, 2, 0, ramp, 9, 0.65, true},
		{"a ramp, rounded up", 0.1503, 2, 0, ramp, 9, 0.651, true},
		{"at once", 0.15, 2, 0, func(float64) float64 { return 0.15 }, 9, 0, true},
		{"from farther on", 0.15, 2, 0.8, ramp, 9, 0.8, true},
		{"from farther on, rounded up", 0.15, 2, 0.8001, ramp, 9, 0.801, true},
		{"just within the most", 0.15, 0.65, 0, ramp, 9, 0.65, true},
		{"beyond the most", 0.15, 0.649, 0, ramp, 9, 0, false},
		{"the line ends before", 0.15, 2, 0, ramp, 0.6, 0, false},
		{"a window", 0.1, 2, 0, func(s float64) float64 { return 0.1025 - math.Abs(s-1) }, 9, 0.998, true},
		{"never", 0.1, 2, 0, func(s float64) float64 { return 0.0999 }, 9, 0, false},
	} {
		w := walk{c.margin, c.most, func(s float64) (float64, bool) { return c.look(s), s <= c.end }}
		if got, found := w.first(c.from); found != c.found || math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %v, %v, want %v, %v", c.name, got, found, c.want, c.found)
		}
	}
}

// TestHungMoved: a thing that is raised stops at the ceiling and takes its lens
// along; one that is shifted moves along one axis.
func TestHungMoved(t *testing.T) {
	p := plan.Plan{Room: plan.Room{Height: 3}, Hung: []plan.Hung{{}, {Name: "lamp", Min: [3]float64{1, 2, 2}, Max: [3]float64{1.5, 2.5, 2.75}, LensHeight: 2.25}}}
	if got, want := raised(p, 1, 0.5), []Edit{{Path: "hung[1].min[2]", Value: 2.5}, {Path: "hung[1].max[2]", Value: 3}, {Path: "hung[1].lensHeight", Value: 2.75}}; !slices.Equal(got, want) {
		t.Errorf("raised by 0.5: %v, want %v", got, want)
	}
	p.Hung[1].LensHeight, p.Hung[1].Max[2] = 0, 3.25 // through the ceiling already
	if got, want := raised(p, 1, 0.25), []Edit{{Path: "hung[1].min[2]", Value: 2.25}, {Path: "hung[1].max[2]", Value: 3.25}}; !slices.Equal(got, want) {
		t.Errorf("raised by 0.25: %v, want %v", got, want)
	}
	h := p.Hung[1]
	if got, want := shifted(h, 1, 0.5, 0), []Edit{{Path: "hung[1].min[0]", Value: 1.5}, {Path: "hung[1].max[0]", Value: 2}}; !slices.Equal(got, want) {
		t.Errorf("shifted to the target: %v, want %v", got, want)
	}
	if got, want := shifted(h, 1, 0, -0.5), []Edit{{Path: "hung[1].min[1]", Value: 1.5}, {Path: "hung[1].max[1]", Value: 2}}; !slices.Equal(got, want) {
		t.Errorf("shifted to the right: %v, want %v", got, want)
	}
}
