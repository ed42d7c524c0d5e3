package form

import (
	"math"
	"reflect"
	"strings"
	"testing"

	leanjson "wideberth/internal/lean/json"
	"wideberth/internal/sim/plan"
	"wideberth/internal/units"
)

// within is true when two values of a type differ by rounding alone: every number
// in them by less than 1e-9.
func within(a, b reflect.Value) bool {
	switch a.Kind() {
	case reflect.Float64:
		return math.Abs(a.Float()-b.Float()) < 1e-9
	case reflect.Struct:
		for i := range a.NumField() {
			if !within(a.Field(i), b.Field(i)) {
				return false
			}
		}
		return true
	case reflect.Array:
		for i := range a.Len() {
			if !within(a.Index(i), b.Index(i)) {
				return false
			}
		}
		return true
	}
	return reflect.DeepEqual(a.Interface(), b.Interface())
}

// TestFreshSizes: the first row of everything in a large and in a small room, in
// centimetres of a metric plan and in inches of an imperial one.
func TestFreshSizes(t *testing.T) {
	at := func(x, y, z float64) [3]float64 { return [3]float64{x, y, z} }
	const in = units.MetresPerInch
	for _, c := range []struct {
		name string
		room plan.Room
		unit string
		want Fresh
	}{
		{"large, metric", plan.Room{Length: 10, Width: 6, Height: 3}, units.Metric, Fresh{
			Slope:  plan.Slope{KneeHeight: 2.1, Run: 0.9},
			Solid:  plan.Solid{Min: at(0, 0, 2.8), Max: at(0.2, 6, 3)},
			Player: plan.Player{Height: 1.8},
			Layer:  plan.Layer{Thickness: 0.01},
			Mat:    plan.Mat{Thickness: 0.04},
			Screen: plan.Screen{X: 9.6, Centre: 3, Bottom: 0.05, Width: 3, Height: 2},
			Hung:   plan.Hung{Min: at(4.85, 2.85, 2.75), Max: at(5.15, 3.15, 3)},
			Seat:   plan.Seat{X: 0.6, Y: 0.6},
			Sensor: plan.Sensor{Min: [2]float64{4.85, 1.85}, Max: [2]float64{5.15, 2.15}},
		}},
		{"large, imperial", plan.Room{Length: 10, Width: 6, Height: 3}, units.Imperial, Fresh{
			Slope:  plan.Slope{KneeHeight: 84 * in, Run: 36 * in},
			Solid:  plan.Solid{Min: at(0, 0, 3-8*in), Max: at(8*in, 6, 3)},
			Player: plan.Player{Height: 71 * in},
			Layer:  plan.Layer{Thickness: 0.0095},
			Mat:    plan.Mat{Thickness: 1.5 * in},
			Screen: plan.Screen{X: 10 - 16*in, Centre: 3, Bottom: 2 * in, Width: 120 * in, Height: 78 * in},
			Hung:   plan.Hung{Min: at(5-6*in, 3-6*in, 3-10*in), Max: at(5+6*in, 3+6*in, 3)},
			Seat:   plan.Seat{X: 24 * in, Y: 24 * in},
			Sensor: plan.Sensor{Min: [2]float64{5 - 6*in, 2 - 6*in}, Max: [2]float64{5 + 6*in, 2 + 6*in}},
		}},
		{"small, metric", plan.Room{Length: 6, Width: 2.5, Height: 2}, units.Metric, Fresh{
			Slope:  plan.Slope{KneeHeight: 2, Run: 0.9},
			Solid:  plan.Solid{Min: at(0, 0, 1.8), Max: at(0.2, 2.5, 2)},
			Player: plan.Player{Height: 1.8},
			Layer:  plan.Layer{Thickness: 0.01},
			Mat:    plan.Mat{Thickness: 0.04},
			Screen: plan.Screen{X: 5.6, Centre: 1.25, Bottom: 0.05, Width: 2.5, Height: 1.9},
			Hung:   plan.Hung{Min: at(2.85, 1.1, 1.75), Max: at(3.15, 1.4, 2)},
			Seat:   plan.Seat{X: 0.6, Y: 0.6},
			Sensor: plan.Sensor{Min: [2]float64{4.85, 1.85}, Max: [2]float64{5.15, 2.15}},
		}},
		{"small, imperial", plan.Room{Length: 6, Width: 2.5, Height: 2}, units.Imperial, Fresh{
			Slope:  plan.Slope{KneeHeight: 2, Run: 36 * in},
			Solid:  plan.Solid{Min: at(0, 0, 2-8*in), Max: at(8*in, 2.5, 2)},
			Player: plan.Player{Height: 71 * in},
			Layer:  plan.Layer{Thickness: 0.0095},
			Mat:    plan.Mat{Thickness: 1.5 * in},
			Screen: plan.Screen{X: 6 - 16*in, Centre: 1.25, Bottom: 2 * in, Width: 2.5, Height: 2 - 4*in},
			Hung:   plan.Hung{Min: at(3-6*in, 1.25-6*in, 2-10*in), Max: at(3+6*in, 1.25+6*in, 2)},
			Seat:   plan.Seat{X: 24 * in, Y: 24 * in},
			Sensor: plan.Sensor{Min: [2]float64{5 - 6*in, 2 - 6*in}, Max: [2]float64{5 + 6*in, 2 + 6*in}},
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := &c.want
			w.Slope.Name, w.Slope.Wall, w.Solid.Name = "slope", plan.WallLeft, "beam"
			w.Player.Name, w.Player.Hand = "Player", plan.HandRight
			w.Club = plan.Club{Name: "club", Kind: plan.KindIron}
			w.Tee = plan.Tee{Name: "tee", X: 5, Y: 2}
			w.Layer.Name, w.Mat.Inset, w.Hung.Name, w.Seat.Name, w.Sensor.Name = "layer", true, "lamp", "seat", "sensor"
			got := FreshFor(plan.Plan{Units: c.unit, Room: c.room, Tees: []plan.Tee{{Name: "first", X: 5, Y: 2}, {X: 9, Y: 9}}})
			g, want := reflect.ValueOf(got), reflect.ValueOf(*w)
			for i := range g.NumField() {
				if !within(g.Field(i), want.Field(i)) {
					t.Errorf("%s = %+v, want %+v", g.Type().Field(i).Name, g.Field(i), want.Field(i))
				}
			}
		})
	}
}

// TestPlaces: every value that a pattern names is met once with its path, and what
// is said of it takes its place.
func TestPlaces(t *testing.T) {
	const tree = `{"a":{"b":1,"c":[2,3]},"d":[{"e":4},{"e":5},7],"f":null}`
	for _, c := range []struct{ pattern, met, left string }{
		{"a.b", "a.b=1", `{"a":{"b":"x","c":[2,3]},"d":[{"e":4},{"e":5},7],"f":null}`},
		{"a.c[]", "a.c[0]=2 a.c[1]=3", `{"a":{"b":1,"c":["x","x"]},"d":[{"e":4},{"e":5},7],"f":null}`},
		{"a.c[1]", "a.c[1]=3", `{"a":{"b":1,"c":[2,"x"]},"d":[{"e":4},{"e":5},7],"f":null}`},
		{"a.c[9]", "", tree},
		{"d[].e", "d[0].e=4 d[1].e=5", `{"a":{"b":1,"c":[2,3]},"d":[{"e":"x"},{"e":"x"},7],"f":null}`},
		{"d[1].e", "d[1].e=5", `{"a":{"b":1,"c":[2,3]},"d":[{"e":4},{"e":"x"},7],"f":null}`},
		{"f", "f=null", `{"a":{"b":1,"c":[2,3]},"d":[{"e":4},{"e":5},7],"f":"x"}`},
		{"f.g", "", tree}, {"a[]", "", tree}, {"z", "", tree}, {"a.z", "", tree}, {"d.e", "", tree},
	} {
		t.Run(c.pattern, func(t *testing.T) {
			node := decoded(t, tree)
			var met []string
			places(node, c.pattern, func(path string, v any) any {
				text, err := leanjson.Encode(v)
				if err != nil {
					t.Fatal(err)
				}
				met = append(met, path+"="+string(text))
				return "x"
			})
			if got := strings.Join(met, " "); got != c.met {
				t.Errorf("met %q, want %q", got, c.met)
			}
			if got, err := leanjson.Encode(node); err != nil || string(got) != c.left {
				t.Errorf("left %s, %v, want %s", got, err, c.left)
			}
		})
	}
	node := decoded(t, tree)
	places(node, "d[0].e", func(string, any) any { return gone })
	if got, err := leanjson.Encode(node); err != nil || string(got) != `{"a":{"b":1,"c":[2,3]},"d":[{},{"e":5},7],"f":null}` {
		t.Errorf("taken out: %s, %v", got, err)
	}
}

func TestSamePath(t *testing.T) {
	for _, c := range []struct {
		pattern, path string
		want          bool
	}{
		{"margin", "margin", true},
		{"margin", "margins", false},
		{"margins", "margin", false},
		{"clubs[].ball.speed", "clubs[1].ball.speed", true},
		{"clubs[].ball.speed", "clubs[12].ball.speed", true},
		{"clubs[].ball.speed", "clubs[1].ball.spin", false},
		{"clubs[].lie", "clubs.lie", false},
		{"clubs.lie", "clubs[1].lie", false},
		{"hung[].min[0]", "hung[3].min[0]", true},
		{"hung[].min[0]", "hung[3].min[1]", false},
		{"", "", true}, {"", "a", false}, {"a", "", false},
	} {
		if got := samePath(c.pattern, c.path); got != c.want {
			t.Errorf("samePath(%q, %q) = %v, want %v", c.pattern, c.path, got, c.want)
		}
	}
}

// TestReadAndSay: what cannot be read stays as it was typed and the first of it is
// told; what was read is rounded to 0.1 mm.
func TestReadAndSay(t *testing.T) {
	tree := decoded(t, `{"units":"metric","room":{"length":"long","width":" 4.00006 m ","height":"high"}}`)
	typed, err := Read(tree)
	var field *plan.FieldError
	if wrong, ok := err.(*plan.FieldError); !ok || wrong.Field != "room.length" {
		t.Errorf("Read = %v (%T), want an error of room.length", err, field)
	}
	got, encodeErr := leanjson.Encode(tree)
	if want := `{"room":{"height":"high","length":"long","width":4.0001},"units":"metric"}`; encodeErr != nil || string(got) != want {
		t.Errorf("left %s, %v, want %s", got, encodeErr, want)
	}
	if typed.Notes == nil || len(typed.Notes) != 0 {
		t.Errorf("notes = %#v, want an empty list", typed.Notes)
	}
	if len(typed.text) != 1 || typed.text["room.width"] != "4.00006 m" {
		t.Errorf("typed = %q, want only the width without its spaces", typed.text)
	}
}

// TestTellOther: an error that is not about a range, or of no field, stays.
func TestTellOther(t *testing.T) {
	typed, err := Read(map[string]any{})
	if err != nil {
		t.Fatal(err)
	}
	if typed.Tell(nil) != nil {
		t.Error("nothing wrong is told as something")
	}
	for _, wrong := range []error{
		&plan.FieldError{Field: "players[0].height", Message: "no range"},
		&plan.FieldError{Field: "nowhere", Message: "no field", Range: &plan.Range{Value: 2, Most: 1}},
	} {
		if got := typed.Tell(wrong); got != wrong {
			t.Errorf("Tell(%v) = %v, want the same", wrong, got)
		}
	}
	// A wall with a tee on it: the range is open.
	tree := decoded(t, `{"units":"metric","tees":[{"x":"6 m"}]}`)
	if typed, err = Read(tree); err != nil {
		t.Fatal(err)
	}
	got := typed.Tell(&plan.FieldError{Field: "tees[0].x", Range: &plan.Range{Value: 6, Most: 6}})
	if want := "From the back wall: 6 m is too much, it must be less than that"; got.Error() != want {
		t.Errorf("Tell = %q, want %q", got, want)
	}
}

// TestShowOne: each kind of figure as its field shows it, and none for what is
// left out.
func TestShowOne(t *testing.T) {
	p := plan.Plan{
		Units: units.Metric, Margin: 0.15, Room: plan.Room{Length: 6, Width: 4, Height: 3},
		Clubs:   []plan.Club{{Name: "driver", Kind: plan.KindDriver, Length: 1.15, Lie: 58.25, Ball: &plan.Ball{Speed: 62, Launch: 0, Spin: 2700}}},
		Players: []plan.Player{{Name: "one", Height: 1.8, Shoe: 0.02}},
		Air:     &plan.Air{Temperature: 20, Altitude: 0},
	}
	for system, want := range map[string]map[string]string{
		units.Metric: {
			"margin": "150 mm", "room.length": "6.000 m", "room.width": "4.000 m", "room.height": "3.000 m",
			"clubs[0].length": "1.150 m", "clubs[0].lie": "58.25", "clubs[0].ball.speed": "62 m/s", "clubs[0].ball.launch": "0", "clubs[0].ball.spin": "2700",
			"players[0].height": "1.800 m", "players[0].shoe": "20 mm", "air.temperature": "20 °C", "air.altitude": "0 m",
		},
		units.Imperial: {
			"margin": "5 7/8 in", "room.length": "19 ft 8 1/4 in", "room.width": "13 ft 1 1/2 in", "room.height": "9 ft 10 1/8 in",
			"clubs[0].length": "45 1/4 in", "clubs[0].lie": "58.25", "clubs[0].ball.speed": "138.7 mph", "clubs[0].ball.launch": "0", "clubs[0].ball.spin": "2700",
			"players[0].height": "5 ft 10 7/8 in", "players[0].shoe": "3/4 in", "air.temperature": "68 °F", "air.altitude": "0 ft",
		},
	} {
		p.Units = system
		if got := Show(p); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: shows %q, want %q", system, got, want)
		}
	}
	p.Clubs[0].Ball.Speed = 0
	if got, shown := Show(p)["clubs[0].ball.speed"]; shown {
		t.Errorf("a ball speed that is left to the kind shows %q, want nothing", got)
	}
	p.Margin = math.NaN()
	if got := Show(p); got == nil || len(got) != 0 {
		t.Errorf("a plan that is no plan shows %#v, want nothing", got)
	}
}
