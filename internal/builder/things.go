package builder

import (
	"math"
	"strconv"
	"strings"

	"wideberth/internal/form"
	"wideberth/internal/lean/fmt"
	"wideberth/internal/lean/json"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/plan"
)

// Thing is something of a plan that comes and goes: a door, a ledge, the ball sensor.
type Thing struct {
	Title  string  `json:"title"`
	Group  string  `json:"group"`
	Path   string  `json:"path"`
	Fields []Shown `json:"fields"`
}

// More is a kind of thing that may be added.
type More struct {
	Title string `json:"title"`
	Group string `json:"group"`
	Path  string `json:"path"`
}

// thing is a Thing with its fields as they are read.
type thing struct {
	title, group, path string
	fields             []field
}

var sides = [][2]string{{string(plan.WallLeft), "left wall"}, {string(plan.WallRight), "right wall"}, {string(plan.WallFront), "front wall"}, {string(plan.WallBack), "back wall"}}

// things are those that a spec has.
func things(s *spec.Spec) []thing {
	var out []thing
	add := func(title, group, path string, fields ...field) {
		for i := range fields {
			fields[i].Path = path + "." + fields[i].Path
			fields[i].group = path
		}
		out = append(out, thing{title, group, path, fields})
	}
	is := func(v any) func(*spec.Spec) any { return func(*spec.Spec) any { return v } }
	w := s.Build.Walls
	for i, f := range w.Feet {
		add(fmt.Sprintf("Foot of a wall %d", i+1), "walls", fmt.Sprintf("build.walls.feet[%d]", i),
			choice("wall", "Of the", "", sides, is(f.Wall)),
			length("height", "Height", "Of the ledge, or of the gap under the wall.", "", is(f.Height)),
			length("depth", "Sticks out", "Blank: it is a gap.", "", is(f.Depth)))
	}
	for i, d := range w.Doors {
		add("Door “"+d.Name+"”", "walls", fmt.Sprintf("build.walls.doors[%d]", i),
			field{form.Field{Path: "name", Label: "Name", Kind: form.Text}, "", is(d.Name)},
			choice("wall", "In the", "", sides, is(d.Wall)),
			length("from", "Starts at", "Along the wall, from its end at the back or the right wall.", "", is(d.From)),
			length("width", "Width of the leaf", "", "", is(d.Width)),
			length("height", "Height", "", "", is(d.Height)),
			length("gap", "Gap under it", "Above the bare floor.", "", is(d.Gap)))
	}
	if g := w.Garage; g != nil {
		add("Garage door", "walls", "build.walls.garage",
			choice("wall", "Closes the", "", sides, is(g.Wall)),
			length("from", "Starts at", "Along the wall, from its end at the back or the right wall.", "", is(g.From)),
			length("width", "Width", "", "", is(g.Width)),
			length("height", "Height of the opening", "", "", is(g.Height)),
			field{form.Field{Path: "open", Label: "Open while people swing", Kind: form.Check}, "", is(g.Open)})
	}
	if v := w.Slab; v != nil {
		add("Slab that falls", "walls", "build.walls.slab",
			choice("towards", "Towards the", "", sides, is(v.Towards)),
			number("fall", "Fall", "m per m", "1/8 in per ft is 0.0104.", "", is(v.Fall)))
	}
	if v := s.Build.Sensor; v != nil {
		fields := []field{choice("place", "It is", "", [][2]string{{spec.Overhead, "overhead"}, {spec.Beside, "beside the ball"}, {spec.Behind, "behind the ball"}}, is(v.Place))}
		for axis, what := range [3]string{"from the back wall", "from the right wall", "above the floor"} {
			fields = append(fields,
				length(fmt.Sprintf("body.min[%d]", axis), "Case starts, "+what, "", "", is(v.Body.Min[axis])),
				length(fmt.Sprintf("body.max[%d]", axis), "Case ends, "+what, "", "", is(v.Body.Max[axis])))
		}
		add("Ball sensor", "sensor", "build.sensor", fields...)
	}
	return out
}

// thingsShown are the things of a spec as the page shows them.
func thingsShown(s *spec.Spec, system string) []Thing {
	out := []Thing{}
	for _, t := range things(s) {
		out = append(out, Thing{t.title, t.group, t.path, shown(t.fields, s, system)})
	}
	return out
}

// more are the kinds of thing that a spec may still get.
func more(s *spec.Spec) []More {
	out := []More{{"Add a ledge or gap", "walls", "build.walls.feet"}, {"Add a door", "walls", "build.walls.doors"}}
	if s.Build.Walls.Garage == nil {
		out = append(out, More{"Add a garage door", "walls", "build.walls.garage"})
	}
	if s.Build.Walls.Slab == nil {
		out = append(out, More{"The slab falls", "walls", "build.walls.slab"})
	}
	if s.Build.Sensor == nil {
		out = append(out, More{"Add a ball sensor", "sensor", "build.sensor"})
	}
	return out
}

// firstThing is a new thing of the kind at a path, to be typed over.
func firstThing(path string, p plan.Plan, s *spec.Spec) (any, error) {
	tenth := func(v float64) json.Number { return numeral(math.Round(v*1e4) / 1e4) }
	back := string(plan.WallBack)
	switch path {
	case "build.walls.feet":
		return map[string]any{"wall": back, "height": tenth(0.1), "depth": tenth(0.05)}, nil
	case "build.walls.doors":
		return map[string]any{"name": "door " + strconv.Itoa(len(s.Build.Walls.Doors)+1), "wall": back, "from": tenth(0.3), "width": tenth(0.8)}, nil
	case "build.walls.garage":
		wide := max(1, min(2.4, p.Room.Width))
		return map[string]any{"wall": back, "from": tenth(max(0, (p.Room.Width-wide)/2)), "width": tenth(wide), "height": tenth(2.13)}, nil
	case "build.walls.slab":
		return map[string]any{"towards": back, "fall": tenth(0.0104)}, nil
	case "build.sensor":
		tee := p.Tees[0]
		x, y := max(0, tee.X-0.15), max(0, tee.Y-1.2)
		at := func(x, y, z float64) []any { return []any{tenth(x), tenth(y), tenth(z)} }
		return map[string]any{"place": spec.Behind, "body": map[string]any{"min": at(x, y, 0), "max": at(x+0.3, y+0.2, 0.15)}}, nil
	}
	return nil, fmt.Errorf("%s is nothing that can be added: reload the page", fmt.Clip(path))
}

// added is a member of the plan with a new thing at a path.
func added(member any, path string, first any) (any, error) {
	steps := stepsOf(strings.TrimPrefix(path, "build."))
	if list := path == "build.walls.feet" || path == "build.walls.doors"; list {
		old, _ := valueAt(member, steps).([]any)
		return changed(member, steps, append(old[:len(old):len(old)], first))
	}
	return changed(member, steps, first)
}

// without is a member of the plan less the thing at a path.
func without(member any, path string) (any, error) {
	steps := stepsOf(strings.TrimPrefix(path, "build."))
	last := steps[len(steps)-1]
	i, err := strconv.Atoi(last)
	if err != nil {
		return changed(member, steps, nil)
	}
	steps = steps[:len(steps)-1]
	old, _ := valueAt(member, steps).([]any)
	if i < 0 || i >= len(old) {
		return nil, fmt.Errorf("the plan has no %s: reload the page", fmt.Clip(path))
	}
	rest := append(append([]any{}, old[:i]...), old[i+1:]...)
	if len(rest) == 0 {
		return changed(member, steps, nil)
	}
	return changed(member, steps, rest)
}

// valueAt is what lies at the end of steps, through groups only.
func valueAt(tree any, steps []string) any {
	for _, at := range steps {
		object, _ := tree.(map[string]any)
		tree = object[at]
	}
	return tree
}
