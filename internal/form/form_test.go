package form

import (
	"bytes"
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"

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
	return p.WithDefaults()
}

// Every field leads to something in a full plan, what it shows is read back as
// what is there (to the label's rounding), and every number of the plan has a
// field, but for what only the cards to come will ask for.
func TestFieldsCoverThePlan(t *testing.T) {
	p := full()
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
		if got := shown["room.length"]; got != map[string]string{units.Imperial: "21 ft 0 in", units.Metric: "6.400 m"}[system] {
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
		if err := Read(tree); err != nil {
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
			err := Read(tree)
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

func FuzzRead(f *testing.F) {
	for _, seed := range []string{`{"room":{"length":"21 ft"}}`, `{"clubs":[{"ball":{"speed":"1e9"}}]}`, `{"air":[]}`, `[[`} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		tree, err := leanjson.Decode([]byte(text))
		if err != nil || Read(tree) != nil {
			return
		}
		if _, err := leanjson.Encode(tree); err != nil {
			t.Fatalf("Read(%q) leaves what has no JSON: %v", text, err)
		}
	})
}
