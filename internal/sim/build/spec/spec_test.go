package spec

import (
	"encoding/json"
	"errors"
	"reflect"
	"strconv"
	"strings"
	"sync"
	"testing"

	"wideberth/internal/fuzzed"
	"wideberth/internal/sim/plan"
)

// demo is the demo's plan without the two members and its closing bracket.
var demo = sync.OnceValue(func() string {
	var doc map[string]json.RawMessage
	if err := json.Unmarshal(plan.Demo().Sparse().JSON(), &doc); err != nil {
		panic(err)
	}
	delete(doc, "projector")
	delete(doc, "build")
	data, err := json.Marshal(doc)
	if err != nil {
		panic(err)
	}
	return strings.TrimSuffix(string(data), "}")
})

// with is the demo with its members projector and build replaced.
func with(projector, build string) (plan.Checked, error) {
	text := demo()
	if projector != "" {
		text += `,"projector":` + projector
	}
	if build != "" {
		text += `,"build":` + build
	}
	return plan.Parse([]byte(text + "}"))
}

func read(t testing.TB, projector, build string) (Spec, error) {
	c, err := with(projector, build)
	if err != nil {
		return Spec{}, err
	}
	return Of(c)
}

const lens = `{"lens":[2.5,2.7,2.8],"throwRatio":[0.8,1.1]`

// TestDefaults: what is left out has the documented default.
func TestDefaults(t *testing.T) {
	s, err := read(t, lens+`}`, ``)
	if err != nil {
		t.Fatal(err)
	}
	j := s.Projector
	if j.Aspect != 1.6 || j.Lumens != 3000 || j.Gain != 1 || j.Mount != MountCeiling || j.Columns != 1920 || j.Image == nil || j.Body != [3]float64{0.40, 0.32, 0.15} {
		t.Errorf("%+v", j)
	}
	b := s.Build
	if b.Floor.Layers != 4 || b.Floor.Tolerance != 0.0032 || b.Floor.Turf != Length || b.Floor.Covers != [4]float64{0, 0, 6.4008, 5.4864} || len(b.Stock) != len(UsualStock()) || b.Finish.Coats != 2 || b.Wiring.Receptacles != 2 {
		t.Errorf("%+v", b)
	}
	if b.Floor.Gap != 0.0032 || b.Floor.TurfRoll != 3.6576 || b.Floor.Panels != "" || b.Finish.Coverage != 9 || b.Finish.Walls != GypsumBoard || b.Finish.Ceiling != GypsumBoard ||
		b.Wiring.Source != [3]float64{0.3, 0.3, 0.75} || b.Wiring.Slack != 1 || b.Stock[3].Long != SheetLong || b.Stock[3].Wide != SheetWide {
		t.Errorf("%+v", b)
	}
	door := map[string]any{"name": "door", "wall": "back", "from": 1.0, "width": 0.8}
	for units, want := range map[string][5]float64{"imperial": {0.0032, 0.0032, 3.6576, 2.032, 0.019}, "metric": {0.003, 0.003, 4, 2.03, 0.02}} {
		p := plan.Demo()
		p.Units, p.Build = units, map[string]any{"walls": map[string]any{"doors": []any{door}}}
		c, err := plan.Parse(p.JSON())
		if err != nil {
			t.Fatal(err)
		}
		s, err := Of(c)
		if err != nil {
			t.Fatal(err)
		}
		f, d := s.Build.Floor, s.Build.Walls.Doors[0]
		if got := [5]float64{f.Tolerance, f.Gap, f.TurfRoll, d.Height, d.Gap}; got != want {
			t.Errorf("%s: %v, want %v", units, got, want)
		}
	}
	// A plan that only hangs a projector with a throw ratio has that one.
	if s, err = read(t, ``, ``); err != nil || s.Projector == nil || s.Projector.ThrowRatio != [2]float64{0.95, 0.95} || s.Projector.Lens != [3]float64{2.5146, 2.7432, 2.8702} {
		t.Errorf("%+v, %v", s.Projector, err)
	}
	p := plan.Demo()
	p.Projector, p.Build, p.Hung = nil, nil, nil
	c, err := plan.Check(p)
	if err != nil {
		t.Fatal(err)
	}
	if s, err = Of(c); err != nil || s.Projector != nil {
		t.Errorf("without any projector: %+v, %v", s.Projector, err)
	}
}

// TestRoundTrip: what was read, written as a plan, reads the same.
func TestRoundTrip(t *testing.T) {
	first, err := read(t, lens+`,"aspect":1.7778,"offset":[0.1,0.5],"sideShift":0.1,"riskGroup":"RG2","roomLight":20,"image":{"bottom":0.1}}`,
		`{"cups":[{"x":1,"y":2}],"floor":{"panels":"width"},"sensor":{"place":"beside","body":{"min":[1,1,0],"max":[1.2,1.2,0.3]},"keepOut":[{"min":[0,0,0],"max":[1,1,1]}]},
		"walls":{"feet":[{"wall":"left","height":0.1,"depth":0.05}],"doors":[{"name":"door","wall":"back","from":1,"width":0.8}],"garage":{"wall":"back","from":1,"width":2.4,"height":2.13,"open":true},"slab":{"towards":"back","fall":0.01}},
		"prices":[{"item":"turf","price":20}],"stock":[{"name":"board","kind":"panel","least":0.011,"most":0.013}]}`)
	if err != nil {
		t.Fatal(err)
	}
	projector, _ := json.Marshal(first.Projector)
	build, _ := json.Marshal(first.Build)
	again, err := read(t, string(projector), string(build))
	if err != nil || !reflect.DeepEqual(first, again) {
		t.Errorf("%v\n%+v\n%+v", err, first, again)
	}
}

// TestRefused: each bad value gives a sentence that names its field.
func TestRefused(t *testing.T) {
	for _, c := range []struct{ projector, build, field, says string }{
		{`{"throwRatio":[1,1]}`, ``, "projector.lens", "projector.lens is missing"},
		{`{"lens":[1,2,3]}`, ``, "projector.throwRatio", "projector.throwRatio is missing"},
		{`{"lens":[1,2],"throwRatio":[1,1]}`, ``, "projector.lens", "must be a list of 3 numbers"},
		{`{"lens":["a",2,3],"throwRatio":[1,1]}`, ``, "projector.lens[0]", "must be a number"},
		{lens + `,"throw":3}`, ``, "projector.throw", "projector.throw is not a field of a plan"},
		{`{"lens":[100,2,3],"throwRatio":[1,1]}`, ``, "projector.lens[0]", "projector: lens x 100 m is outside"},
		{`{"lens":[1,2,3],"throwRatio":[0.01,1]}`, ``, "projector.throwRatio[0]", "projector: least throw ratio 0.01 is outside 0.1–10"},
		{`{"lens":[1,2,3],"throwRatio":[2,1]}`, ``, "projector.throwRatio", "the second, 1, must not be less than the first, 2"},
		{`{"lens":[6.2,2.7,2.8],"throwRatio":[1,1]}`, ``, "projector.lens[0]", "between the back wall and the screen, which is at x 5.9944 m"},
		{lens + `,"mount":"rear"}`, ``, "projector.lens[0]", "must be behind the screen"},
		{lens + `,"lumens":1}`, ``, "projector.lumens", "projector: light 1 lumens is outside 50–100000 lumens"},
		{lens + `,"gain":-1}`, ``, "projector.gain", "projector: screen gain -1 is outside 0.1–5"},
		{lens + `,"aspect":9}`, ``, "projector.aspect", "projector: aspect 9"},
		{lens + `,"mount":"wall"}`, ``, "projector.mount", `mount "wall" is not one of ceiling, floor, rear`},
		{lens + `,"offset":[1]}`, ``, "projector.offset", "number of offsets"},
		{lens + `,"offset":[0.5,0.1]}`, ``, "projector.offset", "must not be less"},
		{lens + `,"offset":[0,9]}`, ``, "projector.offset[1]", "offset 9"},
		{lens + `,"sideShift":2}`, ``, "projector.sideShift", "side shift 2"},
		{lens + `,"body":[0.4,9,0.1]}`, ``, "projector.body[1]", "case width 9 m"},
		{lens + `,"columns":3}`, ``, "projector.columns", "pixels across 3"},
		{lens + `,"roomLight":-1}`, ``, "projector.roomLight", "room light on the screen -1 lx"},
		{lens + `,"riskGroup":"RG9"}`, ``, "projector.riskGroup", "risk group"},
		{lens + `,"image":{"width":0.1}}`, ``, "projector.image.width", "image width 0.1 m"},
		{lens + `,"image":{"bottom":9}}`, ``, "projector.image.bottom", "image bottom 9 m"},
		{``, `{"floor":{"tolerance":1}}`, "build.floor.tolerance", "floor: tolerance 1 m"},
		{``, `{"floor":{"layers":9}}`, "build.floor.layers", "layers at most 9"},
		{``, `{"floor":{"covers":[0,0,9,5]}}`, "build.floor.covers[2]", "ends at x 9 m"},
		{``, `{"floor":{"covers":[5,0,4,5]}}`, "build.floor.covers[2]", "end in x 4 m"},
		{``, `{"floor":{"gap":1}}`, "build.floor.gap", "gap between panels 1 m"},
		{``, `{"floor":{"panels":"up"}}`, "build.floor.panels", `panels "up"`},
		{``, `{"floor":{"turfRoll":99}}`, "build.floor.turfRoll", "turf roll 99 m"},
		{``, `{"floor":{"turf":"up"}}`, "build.floor.turf", `turf "up"`},
		{``, `{"stock":[{"name":"x","kind":"gold","least":0.01,"most":0.02}]}`, "build.stock[0].kind", `kind "gold" is not one of panel, foam, rubber, turf`},
		{``, `{"stock":[{"name":"","kind":"turf","least":0.01,"most":0.02}]}`, "build.stock[0].name", "stock 1 needs a name"},
		{``, `{"stock":[{"name":"x","kind":"turf","least":0.02,"most":0.01}]}`, "build.stock[0].most", "must not be less"},
		{``, `{"stock":[{"name":"x","kind":"turf","least":0.02,"most":0.03,"price":-1}]}`, "build.stock[0].price", "price -1"},
		{``, `{"cups":[{"x":1,"y":99}]}`, "build.cups[0].y", "cup 1: y 99 m is outside"},
		{``, `{"cups":[{"x":1}]}`, "build.cups[0].y", "is missing"},
		{``, `{"enclosure":{"padding":9}}`, "build.enclosure.padding", "padding over the cloth 9 m"},
		{``, `{"enclosure":{"sill":9}}`, "build.enclosure.sill", "sill"},
		{``, `{"enclosure":{"border":9}}`, "build.enclosure.border", "blank border 9 m"},
		{``, `{"sensor":{"place":"under","body":{"min":[0,0,0],"max":[1,1,1]}}}`, "build.sensor.place", `place "under"`},
		{``, `{"sensor":{"place":"behind","body":{"min":[0,0,0],"max":[1,0,1]}}}`, "build.sensor.body.max[1]", "greatest y"},
		{``, `{"sensor":{"place":"behind","body":{"min":[0,0,0],"max":[1,1,1]},"keepOut":[{"min":[0,0,9],"max":[1,1,1]}]}}`, "build.sensor.keepOut[0].max[2]", "sensor, keep-out 1"},
		{``, `{"finish":{"coats":99}}`, "build.finish.coats", "paint: coats 99"},
		{``, `{"finish":{"coverage":99}}`, "build.finish.coverage", "coverage 99"},
		{``, `{"finish":{"absorber":-1}}`, "build.finish.absorber", "area of absorbers -1 m²"},
		{``, `{"finish":{"walls":"snow"}}`, "build.finish.walls", `walls "snow" is not one of gypsum board`},
		{``, `{"finish":{"ceiling":"snow"}}`, "build.finish.ceiling", `ceiling "snow"`},
		{``, `{"wiring":{"source":[0,0,99]}}`, "build.wiring.source[2]", "source z 99 m"},
		{``, `{"wiring":{"receptacles":-1}}`, "build.wiring.receptacles", "receptacles -1"},
		{``, `{"wiring":{"slack":99}}`, "build.wiring.slack", "slack 99 m"},
		{``, `{"walls":{"feet":[{"wall":"up","height":0.1}]}}`, "build.walls.feet[0].wall", `wall "up"`},
		{``, `{"walls":{"feet":[{"wall":"left","height":9}]}}`, "build.walls.feet[0].height", "height 9 m"},
		{``, `{"walls":{"doors":[{"name":"d","wall":"left","from":99,"width":1}]}}`, "build.walls.doors[0].from", "start 99 m"},
		{``, `{"walls":{"garage":{"wall":"left","from":0,"width":0.1,"height":2}}}`, "build.walls.garage.width", "width 0.1 m"},
		{``, `{"walls":{"slab":{"towards":"left","fall":9}}}`, "build.walls.slab.fall", "fall 9 m per m"},
		{``, `{"prices":[{"item":"x","price":-1}]}`, "build.prices[0].price", "price -1"},
		{``, `{"cups":[` + strings.Repeat(`{"x":1,"y":1},`, 12) + `{"x":1,"y":1}]}`, "build.cups", "13 are too many"},
	} {
		_, err := read(t, c.projector, c.build)
		field, ok := errors.AsType[*plan.FieldError](err)
		if !ok || field.Field != c.field || !strings.Contains(field.Message, c.says) {
			t.Errorf("%s%s: %v, want %q about %s", c.projector, c.build, err, c.says, c.field)
		}
	}
}

// FuzzOf: whatever stands in the two members, it is read or refused with a sentence,
// and what is read reads the same again.
func FuzzOf(engine *testing.F) {
	f := fuzzed.New(engine)
	f.Add(lens+`}`, `{}`)
	f.Add(`{"lens":[1,2,3],"throwRatio":[1e999,1]}`, `{"floor":{"covers":[0,0,1,1]}}`)
	f.Add(`{}`, `{"stock":[{}],"cups":null,"walls":{"garage":null}}`)
	f.Fuzz(func(t *testing.T, projector, build string) {
		if !json.Valid([]byte(projector)) || !json.Valid([]byte(build)) {
			return
		}
		s, err := read(t, projector, build)
		if err != nil {
			if len(err.Error()) < 10 {
				t.Errorf("%q is no sentence", err)
			}
			return
		}
		b, err := json.Marshal(s.Build)
		if err != nil {
			t.Fatal(err)
		}
		j := ""
		if s.Projector != nil {
			text, err := json.Marshal(s.Projector)
			if err != nil {
				t.Fatal(err)
			}
			j = string(text)
		}
		again, err := read(t, j, string(b))
		if err != nil || !reflect.DeepEqual(s, again) {
			t.Errorf("%v: %+v is read again as %+v", err, s, again)
		}
	})
}

// TestLimits: every number passes at both ends of its range and not beyond them.
func TestLimits(t *testing.T) {
	const sensor = `{"sensor":{"place":"behind","body":{"min":[0,0,0],"max":[1,1,1]}`
	for _, c := range []struct {
		member, text string // X stands for the number
		least, most  float64
	}{
		{"projector", `{"lens":[2.5,X,2.8],"throwRatio":[0.8,1.1]}`, -1, 61},
		{"projector", `{"lens":[2.5,2.7,2.8],"throwRatio":[X,10]}`, 0.1, 10},
		{"projector", lens + `,"aspect":X}`, 0.5, 4},
		{"projector", lens + `,"lumens":X}`, 50, 100000},
		{"projector", lens + `,"gain":X}`, 0.1, 5},
		{"projector", lens + `,"offset":[X,2]}`, -1.5, 2},
		{"projector", lens + `,"sideShift":X}`, 0, 1},
		{"projector", lens + `,"body":[0.4,0.3,X]}`, 0.02, 2},
		{"projector", lens + `,"columns":X}`, 320, 16384},
		{"projector", lens + `,"roomLight":X}`, 0, 5000},
		{"projector", lens + `,"image":{"width":X}}`, 0.3, 20},
		{"projector", lens + `,"image":{"bottom":X}}`, 0, 3.2004},
		{"build", `{"floor":{"tolerance":X}}`, 0.0005, 0.02},
		{"build", `{"floor":{"layers":X}}`, 1, 6},
		{"build", `{"floor":{"covers":[X,0,6.4,5]}}`, 0, 6.1},
		{"build", `{"floor":{"gap":X}}`, 0, 0.02},
		{"build", `{"floor":{"turfRoll":X}}`, 0.3, 10},
		{"build", `{"stock":[{"name":"x","kind":"turf","least":X,"most":0.2}]}`, 0.001, 0.2},
		{"build", `{"stock":[{"name":"x","kind":"panel","least":0.01,"most":0.02,"long":X}]}`, 0.2, 6},
		{"build", `{"stock":[{"name":"x","kind":"panel","least":0.01,"most":0.02,"wide":X}]}`, 0.2, 6},
		{"build", `{"stock":[{"name":"x","kind":"panel","least":0.01,"most":0.02,"price":X}]}`, 0, 1e6},
		{"build", `{"cups":[{"x":X,"y":1}]}`, 0, 6.4008},
		{"build", `{"cups":[{"x":1,"y":X}]}`, 0, 5.4864},
		{"build", `{"enclosure":{"padding":X}}`, 0, 0.5},
		{"build", `{"enclosure":{"sill":X}}`, 0, 0.5},
		{"build", `{"enclosure":{"border":X}}`, 0, 1},
		{"build", `{"finish":{"coats":X}}`, 0, 10},
		{"build", `{"finish":{"coverage":X}}`, 1, 30},
		{"build", `{"finish":{"absorber":X}}`, 0, 1000},
		{"build", `{"wiring":{"source":[1,1,X]}}`, -1, 61},
		{"build", `{"wiring":{"receptacles":X}}`, 0, 40},
		{"build", `{"wiring":{"slack":X}}`, 0, 10},
		{"build", `{"walls":{"feet":[{"wall":"left","height":X}]}}`, 0.001, 2},
		{"build", `{"walls":{"feet":[{"wall":"left","height":1,"depth":X}]}}`, 0, 2},
		{"build", `{"walls":{"doors":[{"name":"d","wall":"left","from":X,"width":1}]}}`, 0, 6.4008},
		{"build", `{"walls":{"doors":[{"name":"d","wall":"back","from":X,"width":1}]}}`, 0, 5.4864},
		{"build", `{"walls":{"doors":[{"name":"d","wall":"left","from":1,"width":X}]}}`, 0.3, 3},
		{"build", `{"walls":{"doors":[{"name":"d","wall":"left","from":1,"width":1,"height":X}]}}`, 1, 4},
		{"build", `{"walls":{"doors":[{"name":"d","wall":"left","from":1,"width":1,"gap":X}]}}`, 0, 0.3},
		{"build", `{"walls":{"garage":{"wall":"back","from":1,"width":X,"height":2}}}`, 1, 10},
		{"build", `{"walls":{"garage":{"wall":"back","from":1,"width":2,"height":X}}}`, 1.5, 5},
		{"build", `{"walls":{"slab":{"towards":"left","fall":X}}}`, 0, 0.1},
		{"build", `{"prices":[{"item":"x","price":X}]}`, 0, 1e6},
	} {
		const step = 1e-6
		with := func(v float64) error {
			text := strings.Replace(c.text, "X", strconv.FormatFloat(v, 'f', -1, 64), 1)
			projector, build := text, ""
			if c.member == "build" {
				projector, build = "", text
			}
			_, err := read(t, projector, build)
			return err
		}
		for _, v := range []float64{c.least, c.most} {
			if err := with(v); err != nil && v == 0 && strings.Contains(err.Error(), "would count as not given") {
				v = step // zero would mean the default, which is another number
			}
			if err := with(v); err != nil {
				t.Errorf("%s at %v: %v", c.text, v, err)
			}
		}
		if with(c.least-step) == nil || with(c.most+step) == nil {
			t.Errorf("%s passes beyond %v–%v", c.text, c.least, c.most)
		}
	}
	// As long as lists may be, and one longer.
	for _, c := range []struct {
		text, one string // X stands for the list
		most      int
	}{
		{`{"cups":[X]}`, `{"x":1,"y":1}`, maxCups},
		{sensor + `,"keepOut":[X]}}`, `{"min":[0,0,0],"max":[1,1,1]}`, maxKeepOut},
		{`{"walls":{"feet":[X]}}`, `{"wall":"left","height":1}`, maxFeet},
		{`{"walls":{"doors":[X]}}`, `{"name":"d","wall":"left","from":1,"width":1}`, maxDoors},
		{`{"prices":[X]}`, `{"item":"x","price":1}`, maxPrices},
		{`{"stock":[X]}`, `{"name":"x","kind":"turf","least":0.01,"most":0.02}`, maxStock},
	} {
		for more, fine := range map[int]bool{0: true, 1: false} {
			list := strings.TrimSuffix(strings.Repeat(c.one+",", c.most+more), ",")
			if _, err := read(t, "", strings.Replace(c.text, "X", list, 1)); (err == nil) != fine {
				t.Errorf("%s with %d: %v", c.text, c.most+more, err)
			}
		}
	}
}
