package builder

import (
	"math"
	"slices"
	"strconv"

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

// things are those that a plan has.
func things(p plan.Plan, s *spec.Spec) []thing {
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
			field{Field: form.Field{Path: "name", Label: "Name", Kind: form.Text}, of: is(d.Name)},
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
			field{Field: form.Field{Path: "open", Label: "Open while people swing", Kind: form.Check}, of: is(g.Open)})
	}
	if v := w.Slab; v != nil {
		add("Slab that falls", "walls", "build.walls.slab",
			choice("towards", "Towards the", "", sides, is(v.Towards)),
			number("fall", "Fall", "m per m", "1/8 in per ft is 0.0104.", "", is(v.Fall)))
	}
	if v := s.Build.Sensor; v != nil {
		box := func(path, what string, z spec.Zone) (out []field) {
			for axis, from := range [3]string{"from the back wall", "from the right wall", "above the floor"} {
				out = append(out,
					length(fmt.Sprintf("%smin[%d]", path, axis), what+" starts, "+from, "", "", is(z.Min[axis])),
					length(fmt.Sprintf("%smax[%d]", path, axis), what+" ends, "+from, "", "", is(z.Max[axis])))
			}
			return out
		}
		place := choice("place", "It is", "", [][2]string{{spec.Overhead, "overhead"}, {spec.Beside, "beside the ball"}, {spec.Behind, "behind the ball"}}, is(v.Place))
		add("Ball sensor", "sensor", "build.sensor", append([]field{place}, box("body.", "Case", v.Body)...)...)
		for i, z := range v.KeepOut {
			add(fmt.Sprintf("Keep-out %d", i+1), "sensor", fmt.Sprintf("build.sensor.keepOut[%d]", i), box("", fmt.Sprintf("Keep-out %d", i+1), z)...)
		}
	}
	if v := p.Sensor; v != nil {
		add("Strip of the floor that it reads", "sensor", "sensor",
			length("min[0]", "Strip starts, from the back wall", "", "", is(v.Min[0])), length("max[0]", "Strip ends, from the back wall", "", "", is(v.Max[0])),
			length("min[1]", "Strip starts, from the right wall", "", "", is(v.Min[1])), length("max[1]", "Strip ends, from the right wall", "", "", is(v.Max[1])))
	}
	for i, v := range s.Build.Stock {
		add(v.Name, "stock", fmt.Sprintf("%s[%d]", stockPath, i),
			field{Field: form.Field{Path: "name", Label: "Name", Kind: form.Text}, of: is(v.Name)},
			choice("kind", "Kind", "", [][2]string{{spec.Panel, "panel"}, {spec.Foam, "foam"}, {spec.Rubber, "rubber"}, {spec.Turf, "turf"}}, is(v.Kind)),
			thick("least", "Thickness, least", is(v.Least)), thick("most", "Thickness, most", is(v.Most)),
			length("long", "Sheet, length", "Of panels.", "", is(v.Long)), length("wide", "Sheet, width", "Of panels.", "", is(v.Wide)),
			number("price", "Price", "", "A sheet, or a square metre of what comes in rolls. Blank: not known.", "", is(v.Price)))
	}
	return out
}

// thick is a thickness.
func thick(path, label string, of func(s *spec.Spec) any) field {
	f := length(path, label, "", "", of)
	f.fine = true
	return f
}

// thingsShown are the things of a plan as the page shows them.
func thingsShown(p plan.Plan, s *spec.Spec) []Thing {
	out := []Thing{}
	for _, t := range things(p, s) {
		out = append(out, Thing{t.title, t.group, t.path, shown(t.fields, s, p.Units)})
	}
	return out
}

// more are the kinds of thing that a plan may still get.
func more(p plan.Plan, s *spec.Spec) []More {
	out := []More{{"Add a ledge or gap", "walls", "build.walls.feet"}, {"Add a door", "walls", "build.walls.doors"}, {"Add to the stock", "stock", stockPath}}
	if s.Build.Walls.Garage == nil {
		out = append(out, More{"Add a garage door", "walls", "build.walls.garage"})
	}
	if s.Build.Walls.Slab == nil {
		out = append(out, More{"The slab falls", "walls", "build.walls.slab"})
	}
	if s.Build.Sensor == nil {
		out = append(out, More{"Add a ball sensor", "sensor", "build.sensor"})
	} else {
		out = append(out, More{"Add a keep-out", "sensor", "build.sensor.keepOut"})
		if p.Sensor == nil {
			out = append(out, More{"Add the strip that it reads", "sensor", "sensor"})
		}
	}
	return out
}

// firstThing is a new thing of the kind at a path, to be typed over.
func firstThing(path string, p plan.Plan, s *spec.Spec) (any, error) {
	tenth := func(v float64) json.Number { return numeral(math.Round(v*1e4) / 1e4) }
	back := string(plan.WallBack)
	tee := p.Tees[0]
	at := func(x, y, z float64) []any { return []any{tenth(x), tenth(y), tenth(z)} }
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
		x, y := max(0, tee.X-0.15), max(0, tee.Y-1.2)
		return map[string]any{"place": spec.Behind, "body": map[string]any{"min": at(x, y, 0), "max": at(x+0.3, y+0.2, 0.15)}}, nil
	case "build.sensor.keepOut": // between its case and the ball
		x, y := max(0, tee.X-0.15), max(0, tee.Y-1)
		return map[string]any{"min": at(x, y, 0), "max": at(x+0.3, max(y+0.1, tee.Y-0.1), 0.5)}, nil
	case stockPath:
		return map[string]any{"name": "layer " + strconv.Itoa(len(s.Build.Stock)+1), "kind": spec.Rubber, "least": tenth(0.009), "most": tenth(0.011)}, nil
	}
	return nil, fmt.Errorf("%s is nothing that can be added: reload the page", fmt.Clip(path))
}

// strip is the part of the floor that a sensor reads to start with: about the first tee.
func strip(p plan.Plan) *plan.Sensor {
	const wide, long = 0.15, 0.3 // m to either side
	tee := p.Tees[0]
	return &plan.Sensor{Name: "ball sensor", Min: [2]float64{max(0, tee.X-long), max(0, tee.Y-wide)}, Max: [2]float64{min(p.Room.Length, tee.X+long), min(p.Room.Width, tee.Y+wide)}}
}

// lists are the paths of things of which there may be several.
var lists = []string{"build.walls.feet", "build.walls.doors", "build.sensor.keepOut", stockPath}

// add has a thing come.
func add(path string, p *plan.Plan, s *spec.Spec) error {
	if path == "sensor" {
		p.Sensor = strip(*p)
		return nil
	}
	first, err := firstThing(path, *p, s)
	if err != nil {
		return err
	}
	filled(p, s, path)
	steps := stepsOf(path)
	if slices.Contains(lists, path) {
		old, _ := valueAt(p.Build, steps).([]any)
		first = append(old[:len(old):len(old)], first)
	}
	p.Build, err = changed(p.Build, steps, first)
	return err
}

// remove has a thing go.
func remove(path string, p *plan.Plan, s *spec.Spec) (err error) {
	if path == "sensor" {
		p.Sensor = nil
		return nil
	}
	if path != stockPath && !slices.ContainsFunc(things(*p, s), func(t thing) bool { return t.path == path }) {
		return fmt.Errorf("the plan has no %s: reload the page", fmt.Clip(path))
	}
	steps := stepsOf(path)
	i, err := strconv.Atoi(steps[len(steps)-1])
	if err != nil {
		p.Build, err = changed(p.Build, steps, nil)
		return err
	}
	filled(p, s, path)
	steps = steps[:len(steps)-1]
	old, _ := valueAt(p.Build, steps).([]any)
	rest := append(append([]any{}, old[:i]...), old[i+1:]...)
	if len(rest) == 0 {
		p.Build, err = changed(p.Build, steps, nil)
		return err
	}
	p.Build, err = changed(p.Build, steps, rest)
	return err
}

// valueAt is what lies at the end of steps, through groups only.
func valueAt(tree any, steps []string) any {
	for _, at := range steps {
		object, _ := tree.(map[string]any)
		tree = object[at]
	}
	return tree
}
