package form

import (
	"bytes"
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"

	"wideberth/internal/fuzzed"
	leanjson "wideberth/internal/lean/json"
	"wideberth/internal/sim/plan"
	"wideberth/internal/units"
)

func decoded(t *testing.T, text string) any {
	t.Helper()
	tree, err := leanjson.Decode([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return tree
}

// full is a plan that has everything a form can hold.
func full() plan.Plan {
	p := plan.Demo()
	fresh := FreshFor(p)
	p.Sensor = &fresh.Sensor
	p.Players[0].Arm, p.Players[0].Span = 0.7, 1.8
	p.Room.Solids[0].Cover = plan.CoverFoam
	return p.WithDefaults()
}

// Every field leads to something in a full plan, what it shows is read back as
// what is there (to the label's rounding), and every number of the plan has a
// field, but for what only the cards to come will ask for.
func TestFieldsCoverThePlan(t *testing.T) {
	p := full()
	p.Projector, p.Build = nil, nil // their sheets have fields of their own
	tree := decoded(t, string(p.JSON()))
	met := map[string]bool{}
	each(func(pattern string, f *Field) {
		n := 0
		places(tree, pattern, func(path string, v any) any {
			n++
			met[path] = true
			return v
		})
		if n == 0 && !f.Optional && f.Kind != Check && pattern != "players[].sex" {
			t.Errorf("%s (%s) leads nowhere", pattern, f.Label)
		}
	})
	var walk func(node any, path string)
	walk = func(node any, path string) {
		switch node := node.(type) {
		case map[string]any:
			for key, v := range node {
				walk(v, strings.TrimPrefix(path+"."+key, "."))
			}
		case []any:
			for i, v := range node {
				walk(v, path+"["+string(rune('0'+i))+"]")
			}
		case leanjson.Number:
			for _, known := range []string{"version", ".throwRatio", ".lensHeight", ".lumens"} {
				if strings.HasSuffix(path, known) {
					return
				}
			}
			if !met[path] {
				t.Errorf("%s has no field", path)
			}
		}
	}
	walk(tree, "")
}

func TestShowReadsBack(t *testing.T) {
	for _, system := range []string{units.Imperial, units.Metric} {
		p := full()
		p.Units = system
		shown := Show(p)
		if got := shown["room.length"]; got != map[string]string{units.Imperial: "21 ft 0 in", units.Metric: "6.401 m"}[system] {
			t.Errorf("%s: the room's length reads %q", system, got)
		}
		tree := decoded(t, string(p.JSON()))
		each(func(pattern string, f *Field) {
			places(tree, pattern, func(path string, v any) any {
				if text, ok := shown[path]; ok {
					return text
				}
				return v
			})
		})
		if _, err := Read(tree); err != nil {
			t.Fatalf("%s: what the fields show cannot be read: %v", system, err)
		}
		q, err := plan.FromTree(tree)
		if err != nil {
			t.Fatalf("%s: %v", system, err)
		}
		if again := Show(q.Plan()); !reflect.DeepEqual(again, shown) {
			t.Errorf("%s: read back it shows\n%v\nwant\n%v", system, again, shown)
		}
	}
}

func TestRead(t *testing.T) {
	for _, c := range []struct{ name, plan, want, field string }{
		{"a length", `{"room":{"length":"21 ft"}}`, `{"room":{"length":6.4008}}`, ""},
		{"a bare number, metric", `{"units":"metric","room":{"length":"640"}}`, `{"room":{"length":6.4},"units":"metric"}`, ""},
		{"numbers stay", `{"room":{"length":6.4},"clubs":[{"lie":58}]}`, `{"clubs":[{"lie":58}],"room":{"length":6.4}}`, ""},
		{"blank and optional", `{"clubs":[{"length":"","lie":" ","kind":""}]}`, `{"clubs":[{"kind":""}]}`, ""},
		{"blank and needed", `{"room":{"width":""}}`, "no length given", "room.width"},
		{"second row", `{"players":[{"height":1.8},{"height":"tall"}]}`, "tall", "players[1].height"},
		{"a corner", `{"hung":[{"min":[0,"1 m",2]}]}`, `{"hung":[{"min":[0,1,2]}]}`, ""},
		{"a speed", `{"clubs":[{"ball":{"speed":"100"}}]}`, `{"clubs":[{"ball":{"speed":44.704}}]}`, ""},
		{"degrees with a comma", `{"clubs":[{"loft":"10,5"}]}`, `{"clubs":[{"loft":10.5}]}`, ""},
		{"no degrees", `{"clubs":[{"ball":{"launch":"steep"}}]}`, "Launch angle: “steep” is not a number of degrees", "clubs[0].ball.launch"},
		{"no degrees at all", `{"clubs":[{"ball":{"launch":""}}]}`, "is not a number of degrees", "clubs[0].ball.launch"},
		{"infinity", `{"clubs":[{"lie":"Inf"}]}`, "is not a number", "clubs[0].lie"},
		{"text is text", `{"title":"21 ft"}`, `{"title":"21 ft"}`, ""},
		{"of other types", `{"room":[1],"clubs":{"length":"1 m"},"air":null,"hung":[7]}`, `{"air":null,"clubs":{"length":"1 m"},"hung":[7],"room":[1]}`, ""},
		{"no plan", `[]`, `[]`, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			tree := decoded(t, c.plan)
			_, err := Read(tree)
			if c.field != "" {
				var wrong *plan.FieldError
				if !errors.As(err, &wrong) || wrong.Field != c.field || !strings.Contains(wrong.Message, c.want) {
					t.Errorf("Read = %v, want %q of %s", err, c.want, c.field)
				}
				return
			}
			got, encodeErr := leanjson.Encode(tree)
			if err != nil || encodeErr != nil || string(got) != c.want {
				t.Errorf("Read makes %s, %v, want %s", got, err, c.want)
			}
		})
	}
}

// What is out of range is told in the words of its field, as it was typed, with
// the limit in the units it was typed in.
func TestTell(t *testing.T) {
	for _, c := range []struct {
		name, units, path, typed, want string
	}{
		{"feet", units.Imperial, "players[].height", "99 ft", "Height: 99 ft is more than the 7 ft 10 in this can do"},
		{"feet in a metric plan", units.Metric, "players[].height", `99'`, "Height: 99' is more than the 7 ft 10 in this can do"},
		{"metres in an imperial plan", units.Imperial, "room.height", "400 m", "Ceiling height: 400 m is more than the 20 m this can do"},
		{"a bare number", units.Imperial, "players[].height", "500", "Height: 500, read as 41 ft 8 in, is more than the 7 ft 10 in this can do"},
		{"a bare number, metric", units.Metric, "room.width", "0", "Room width: 0, read as 0 mm, is less than the 1.5 m this needs"},
		{"too small", units.Imperial, "players[].height", "1 ft", "Height: 1 ft is less than the 3 ft this needs"},
		{"degrees", units.Imperial, "clubs[].lie", "99", "Lie: 99 is more than the 80 degrees this can do"},
		{"degrees, too few", units.Imperial, "clubs[].loft", "1,5", "Loft: 1,5 is less than the 4 degrees this needs"},
		{"a speed", units.Imperial, "clubs[].ball.speed", "900 mph", "Ball speed: 900 mph is more than the 212.5 mph this can do"},
		{"nothing of what may be left out", units.Imperial, "margin", "0", "Clearance to call it clear: 0, read as 0 in, is too little, it must be more than that"},
		{"a tee out of the room", units.Imperial, "tees[].x", "30 ft", "From the back wall: 30 ft is more than the 21 ft this can do"},
		{"a tee on the wall", units.Imperial, "tees[].x", "0 in", "From the back wall: 0 in is too little, it must be more than that"},
		{"a box inside out", units.Imperial, "room.solids[].max[2]", "8 ft", "Top, above the floor: 8 ft is less than the 9 ft 6 in this needs"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan.Demo()
			p.Units = c.units
			tree := decoded(t, string(p.JSON()))
			places(tree, strings.Replace(c.path, "[]", "[0]", 1), func(string, any) any { return c.typed })
			typed, err := Read(tree)
			if err != nil {
				t.Fatal(err)
			}
			_, err = plan.FromTree(tree)
			var wrong *plan.FieldError
			if got := typed.Tell(err); !errors.As(got, &wrong) || wrong.Message != c.want || wrong.Field != strings.Replace(c.path, "[]", "[0]", 1) {
				t.Errorf("Tell = %v, want %q", got, c.want)
			}
		})
	}
}

// What clashes with a number typed elsewhere is told with its owner's name.
func TestTellElsewhere(t *testing.T) {
	tree := decoded(t, string(plan.Demo().JSON()))
	places(tree, "room.height", func(string, any) any { return "1.7 m" })
	typed, err := Read(tree)
	if err != nil {
		t.Fatal(err)
	}
	_, err = plan.FromTree(tree)
	const want = `slope "rafters, left": Height at the wall: 7 ft 0 in is more than the 5 ft 6 in this can do`
	if got := typed.Tell(err); got.Error() != want {
		t.Errorf("Tell = %q, want %q", got, want)
	}
}

// A bare number that can only be of another unit is read in it, and said so.
func TestReadNotes(t *testing.T) {
	for _, c := range []struct{ name, typed, want, note string }{
		{"centimetres", "180", "1.8", "Height: “180” is read as 180 cm, which is 5 ft 10 7/8 in."},
		{"metres", "1.85", "1.85", "Height: “1.85” is read as 1.85 m, which is 6 ft 7/8 in."},
		{"inches, as usual", "72", "1.8288", ""},
		{"feet, as usual", "6", "1.8288", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			tree := decoded(t, `{"units":"imperial","players":[{"height":"`+c.typed+`"}]}`)
			typed, err := Read(tree)
			got, encodeErr := leanjson.Encode(tree)
			if err != nil || encodeErr != nil || !strings.Contains(string(got), `"height":`+c.want+`}`) {
				t.Errorf("Read makes %s, %v, %v, want %s m", got, err, encodeErr, c.want)
			}
			if got := strings.Join(typed.Notes, " "); got != c.note {
				t.Errorf("notes = %q, want %q", got, c.note)
			}
		})
	}
}

// What may be chosen is what the plan takes: every choice passes, another word
// does not, and the plan's own sentence about it offers no other.
func TestChoices(t *testing.T) {
	each(func(pattern string, f *Field) {
		if f.Kind != Choice {
			return
		}
		t.Run(pattern, func(t *testing.T) {
			with := func(word string) error {
				p := plan.Demo()
				text := strings.Replace(string(p.JSON()), `"players":[{`, `"players":[{"sex":"",`, 1)
				text = strings.Replace(text, `"solids":[{`, `"solids":[{"cover":"",`, 1)
				tree := decoded(t, text)
				places(tree, strings.Replace(pattern, "[]", "[0]", 1), func(string, any) any { return word })
				_, err := plan.FromTree(tree)
				return err
			}
			for _, choice := range f.Choices {
				if err := with(choice[0]); err != nil && !strings.Contains(err.Error(), "run") {
					t.Errorf("%q: %v", choice[0], err)
				}
			}
			err := with("sideways")
			if err == nil {
				t.Fatal("any word passes")
			}
			_, offers, _ := strings.Cut(err.Error(), "is not one of ")
			for offer := range strings.SplitSeq(offers, ", ") {
				found := false
				for _, choice := range f.Choices {
					found = found || choice[0] == offer
				}
				if !found {
					t.Errorf("the plan takes %q, which cannot be chosen", offer)
				}
			}
		})
	})
}

// A first row of everything makes a valid plan, in rooms of all kinds.
func TestFresh(t *testing.T) {
	for _, p := range append(plan.Rooms(), plan.Demo()) {
		t.Run(p.Title, func(t *testing.T) {
			f := FreshFor(p)
			for _, name := range []*string{&f.Slope.Name, &f.Solid.Name, &f.Player.Name, &f.Club.Name, &f.Tee.Name, &f.Layer.Name, &f.Hung.Name, &f.Seat.Name} {
				*name += " 99" // as the page does where a name is taken
			}
			p.Room.Slopes = append(p.Room.Slopes, f.Slope)
			p.Room.Solids = append(p.Room.Solids, f.Solid)
			p.Players, p.Clubs = append(p.Players, f.Player), append(p.Clubs, f.Club)
			p.Tees = append(p.Tees, f.Tee)
			p.Floor.Layers, p.Floor.Mat = append(p.Floor.Layers, f.Layer), &f.Mat
			p.Screen, p.Sensor = &f.Screen, &f.Sensor
			p.Hung, p.Seats = append(p.Hung, f.Hung), append(p.Seats, f.Seat)
			for _, problem := range p.Problems() {
				t.Errorf("%s: %s", problem.Field, problem.Message)
			}
		})
	}
}

// What does not follow the room reads as a round figure in the plan's units.
func TestFreshIsRound(t *testing.T) {
	for system, want := range map[string][5]string{
		units.Imperial: {"5 ft 11 in", "3 ft 0 in", "2 ft 0 in", "1 1/2 in", "10 ft 0 in"},
		units.Metric:   {"1.800 m", "900 mm", "600 mm", "40 mm", "3.000 m"},
	} {
		p := plan.Demo()
		p.Units = system
		f := FreshFor(p)
		for i, m := range [5]float64{f.Player.Height, f.Slope.Run, f.Seat.X, f.Mat.Thickness, f.Screen.Width} {
			if got := units.Label(m, system); got != want[i] {
				t.Errorf("%s: figure %d reads %q, want %q", system, i, got, want[i])
			}
		}
	}
}

// The members of Fresh are named as the lists and parts that they start.
func TestFreshHasEverything(t *testing.T) {
	data, err := leanjson.Encode(FreshFor(plan.Demo()))
	if err != nil {
		t.Fatal(err)
	}
	var fresh map[string]json.RawMessage
	if err := json.Unmarshal(data, &fresh); err != nil {
		t.Fatal(err)
	}
	for _, card := range Cards() {
		for _, l := range card.Lists {
			if !bytes.HasPrefix(fresh[l.Path], []byte(`{"name":"`)) {
				t.Errorf("a first row of %s is %s, want one with a name", l.Path, fresh[l.Path])
			}
			delete(fresh, l.Path)
		}
		for _, part := range card.Parts {
			if fresh[part.Path] == nil {
				t.Errorf("there is no first state of %s", part.Path)
			}
			delete(fresh, part.Path)
		}
	}
	for path := range fresh {
		t.Errorf("%s starts nothing of the form", path)
	}
}

func FuzzRead(engine *testing.F) {
	f := fuzzed.New(engine)
	for _, seed := range []string{`{"room":{"length":"21 ft"}}`, `{"clubs":[{"ball":{"speed":"1e9"}}]}`, `{"air":[]}`, `[[`} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		tree, err := leanjson.Decode([]byte(text))
		if err != nil {
			return
		}
		if _, err := Read(tree); err != nil {
			return
		}
		if _, err := leanjson.Encode(tree); err != nil {
			t.Fatalf("Read(%q) leaves what has no JSON: %v", text, err)
		}
	})
}
