package builder

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"wideberth/internal/form"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

// quick is the demo with one player and one club, which is soon swung.
func quick() plan.Plan {
	p := plan.Demo()
	p.Players, p.Clubs = p.Players[:1], p.Clubs[:1]
	return p
}

// ask serves a request about a plan and reads the answer into the struct of into.
func ask(t *testing.T, b *Builder, p plan.Plan, more string, into any) {
	t.Helper()
	out := b.Handle([]byte(`{"plan":` + string(p.JSON()) + `,` + more + `}`))
	if strings.HasPrefix(string(out), `{"error"`) {
		t.Fatalf("%s: %s", more, out)
	}
	if err := json.Unmarshal(out, into); err != nil {
		t.Fatal(err)
	}
}

// TestSheets: both sheets answer for the demo, every figure has words and a rule that
// is there, and nothing promises anything.
func TestSheets(t *testing.T) {
	var b Builder
	var floor BuildAnswer
	var light ProjectorAnswer
	ask(t, &b, quick(), `"kind":"build"`, &floor)
	ask(t, &b, quick(), `"kind":"projector"`, &light)
	for name, c := range map[string]Common{"build": floor.Common, "projector": light.Common} {
		rules := map[string]bool{"": true}
		for _, r := range c.Rules {
			rules[r.ID] = true
		}
		figures := slices.Clone(c.Said)
		for _, g := range c.Groups {
			figures = append(figures, g.Figures...)
		}
		if len(c.Said) < 2 || len(figures) < 10 || len(c.Fields) < 10 || len(c.Cautions) == 0 {
			t.Errorf("%s: %d said, %d figures, %d fields, %d cautions", name, len(c.Said), len(figures), len(c.Fields), len(c.Cautions))
		}
		for _, f := range figures {
			if f.Rule == "" && strings.ContainsAny(f.Text, "0123456789") {
				t.Errorf("%s: nothing says where the figures of %+v come from", name, f)
			}
			if f.Term == "" || f.Text == "" || !rules[f.Rule] || strings.Contains(strings.ToLower(f.Text), "compl") || strings.Contains(f.Text, "%!") {
				t.Errorf("%s: %+v", name, f)
			}
		}
	}
	if len(floor.Drawing.Pieces) < 5 || len(floor.Drawing.Putts) != 2 || len(floor.Stacks) == 0 || len(floor.Quantities) < 8 || !strings.HasPrefix(floor.CSV, "item,count,") || len(floor.Sound.After) != 6 {
		t.Errorf("build: %+v", floor)
	}
	if len(floor.Pads) == 0 || floor.Pads[0].Cover != plan.CoverFoam {
		t.Errorf("pads %+v", floor.Pads)
	}
	if !light.There || light.Hang == nil || !light.InPlan || len(light.Drawing.Region) == 0 || len(light.Shadows) != 1 {
		t.Errorf("projector: %+v", light)
	}
	p := quick()
	p.Hung, p.Projector = nil, nil
	ask(t, &b, p, `"kind":"projector"`, &light)
	if light.There || len(light.Said) != 1 {
		t.Errorf("without one: %+v", light.Said)
	}
}

// TestStackLaid: a stack that is laid makes a plan that knows it as its floor, also
// one with a layer twice, which is bought as one item.
func TestStackLaid(t *testing.T) {
	var b Builder
	var a BuildAnswer
	ask(t, &b, quick(), `"kind":"build"`, &a)
	p := quick()
	twice := slices.IndexFunc(a.Stacks, func(s StackRow) bool { return strings.Count(s.Name, "1/4 panel") == 2 })
	if twice < 0 {
		t.Fatalf("no stack has a layer twice: %+v", a.Stacks)
	}
	p.Floor.Layers = a.Stacks[twice].Layers
	if err := p.Validate(); err != nil {
		t.Fatal(err)
	}
	one := a.Drawing.Sheets
	ask(t, &b, p, `"kind":"build"`, &a)
	if laid := slices.IndexFunc(a.Stacks, func(s StackRow) bool { return s.Laid }); laid != twice {
		t.Errorf("the stack laid is number %d, not %d", laid, twice)
	}
	for _, l := range a.Quantities {
		if want := fmt.Sprintf("%d sheets", 2*one); l.Item == "1/4 panel" && l.Count != want || strings.Contains(l.Item, "layer") {
			t.Errorf("%s: %s, want %s of one item", l.Item, l.Count, want)
		}
	}
}

// TestFilm: its frames darken cells of the image, the more the nearer the golfer is to
// the light; it ends with the swing.
func TestFilm(t *testing.T) {
	var b Builder
	var a FilmAnswer
	p := quick()
	p.Projector = map[string]any{"lens": []any{1.0, 3.6, 1.6}, "throwRatio": []any{1.0, 2.0}}
	data := p.JSON()
	if p2, err := plan.Parse(data); err != nil {
		t.Fatal(err)
	} else {
		p = p2.Plan()
	}
	ask(t, &b, p, `"kind":"film","player":"Host","club":"driver"`, &a)
	if len(a.Frames) < 40 || len(a.Said) != len(a.Frames) || a.NX != filmMesh {
		t.Fatalf("%d frames, %d said", len(a.Frames), len(a.Said))
	}
	dark := 0
	for _, f := range a.Frames {
		for i := 0; i < len(f); i += 2 {
			dark += f[i+1]
			if f[i] < 0 || f[i]+f[i+1] > a.NX*a.NY {
				t.Fatalf("run %v is not in the image", f[i:i+2])
			}
		}
	}
	if dark == 0 {
		t.Error("a golfer before the lens darkens nothing")
	}
}

// TestFilmOfAMember: another member of the family casts another shadow, and lens and
// image come along for whoever draws it.
func TestFilmOfAMember(t *testing.T) {
	var b Builder
	var usual, wide FilmAnswer
	p := setIn(t, quick(), `"kind":"set","path":"projector.lens[0]","text":"3 ft"`)
	p = setIn(t, p, `"kind":"set","path":"projector.lens[2]","text":"6 ft"`)
	ask(t, &b, p, `"kind":"film"`, &usual)
	ask(t, &b, p, `"kind":"film","variation":[2,0,0,0,0,0,0,0,0,0,0,0]`, &wide)
	if reflect.DeepEqual(usual.Frames, wide.Frames) {
		t.Error("two members cast the same shadow")
	}
	if usual.Lens != specOf(t, p).Projector.Lens || usual.Image.Width < 3 {
		t.Errorf("lens %v, image %+v", usual.Lens, usual.Image)
	}
}

// TestLens: what is said of a lens on its way is what the sheet says of a plan that has
// it there; one beyond the cloth is refused.
func TestLens(t *testing.T) {
	var b Builder
	var sheet ProjectorAnswer
	var lens LensAnswer
	p := quick()
	for _, to := range [][3]float64{{2.1, 2.4, 2.6}, {1.2, 3.3, 1.5}} {
		at := fmt.Sprintf("[%v,%v,%v]", to[0], to[1], to[2])
		ask(t, &b, p, `"kind":"lens","at":`+at, &lens)
		moved := p
		for i := range to {
			moved = setIn(t, moved, fmt.Sprintf(`"kind":"set","path":"projector.lens[%d]","text":"%v m"`, i, to[i]))
		}
		ask(t, &b, moved, `"kind":"projector"`, &sheet)
		if !reflect.DeepEqual(lens.Said, sheet.Said) || lens.Case != sheet.Drawing.Case || lens.Throw != sheet.Drawing.Throw || lens.Where != sheet.Drawing.Where || len(lens.Said) < 3 {
			t.Errorf("%s: %+v, the sheet says %+v", at, lens, sheet.Said)
		}
	}
	p.Projector = lens.Projector
	if got := specOf(t, p).Projector.Lens; got != sheet.Drawing.Lens {
		t.Errorf("the plan gets a lens at %v, want %v", got, sheet.Drawing.Lens)
	}
	d := sheet.Drawing.Reach
	for _, x := range []float64{d.Max[0], d.Max[0] + 0.1} {
		out := string(b.Handle([]byte(fmt.Sprintf(`{"plan":%s,"kind":"lens","at":[%v,1,1]}`, p.JSON(), x))))
		if refused := strings.HasPrefix(out, `{"error"`); refused != (x > d.Max[0]) {
			t.Errorf("a lens at x %v: %.200s", x, out)
		}
	}
}

// TestAmounts: the list of quantities alone is that of the sheet, also of a floor that
// is still to be chosen.
func TestAmounts(t *testing.T) {
	for name, layers := range map[string][]plan.Layer{"planned": quick().Floor.Layers, "not yet": nil} {
		var b Builder
		var sheet BuildAnswer
		var alone AmountsAnswer
		p := quick()
		p.Floor.Layers = layers
		ask(t, &b, p, `"kind":"amounts"`, &alone)
		ask(t, &b, p, `"kind":"build"`, &sheet)
		if !reflect.DeepEqual(alone, sheet.AmountsAnswer) || len(alone.Quantities) < 10 || alone.Total == "" {
			t.Errorf("%s: %+v\n%+v", name, alone, sheet.AmountsAnswer)
		}
	}
}

// TestSet: every field is read back as it was typed, in both systems, blank gives it
// back to the default, and nonsense is refused by name.
func TestSet(t *testing.T) {
	texts := map[string][2]string{ // what to type, what the plan then has
		"projector.lens[0]": {"8 ft", "2.4384"}, "projector.lens[1]": {"9 ft", "2.7432"}, "projector.lens[2]": {"9 ft", "2.7432"},
		"projector.throwRatio[0]": {"0.8", "0.8"}, "projector.throwRatio[1]": {"1,2", "1.2"}, "projector.aspect": {"1.6", "1.6"},
		"projector.lumens": {"4000", "4000"}, "projector.columns": {"3840", "3840"}, "projector.gain": {"1.2", "1.2"}, "projector.roomLight": {"50", "50"},
		"projector.image.width": {"3 m", "3"}, "projector.image.bottom": {"1 ft", "0.3048"}, "projector.mount": {"floor", "floor"}, "projector.riskGroup": {"RG3", "RG3"},
		"build.floor.panels": {"width", "width"}, "build.floor.turf": {"width", "width"}, "build.finish.walls": {"concrete", "concrete"}, "build.finish.ceiling": {"concrete", "concrete"},
		"build.floor.layers": {"3", "3"}, "build.finish.coats": {"3", "3"}, "build.finish.absorber": {"9", "9"}, "build.wiring.receptacles": {"5", "5"}, "build.floor.turfRoll": {"13 ft", "3.9624"},
		"build.floor.covers[2]": {"20 ft", "6.096"}, "build.floor.covers[3]": {"15 ft", "4.572"}, "build.finish.coverage": {"9.5", "9.5"},
		"projector.offset[0]": {"5", "0.05"}, "projector.offset[1]": {"60", "0.6"}, "projector.farOffset[0]": {"107.3", "0.073"}, "projector.farOffset[1]": {"160", "0.6"}, "projector.sideShift": {"15", "0.15"},
		"projector.body[0]": {"1 ft", "0.3048"}, "projector.body[1]": {"1 ft", "0.3048"}, "projector.body[2]": {"4 in", "0.1016"},
	}
	for _, list := range [2][]field{buildFields, projectorFields} {
		for _, f := range list {
			given, known := texts[f.Path]
			if !known {
				given = [2]string{"1/4 in", "0.0064"}
			}
			var a SetAnswer
			var b Builder
			ask(t, &b, plan.Demo(), `"kind":"set","path":"`+f.Path+`","text":"`+given[0]+`"`, &a)
			p := plan.Demo()
			p.Projector, p.Build = a.Projector, a.Build
			data := p.JSON()
			c, err := plan.Parse(data)
			if err != nil {
				t.Fatal(err)
			}
			s, err := spec.Of(c)
			if err != nil {
				t.Fatalf("%s: %v", f.Path, err)
			}
			value := f.of(&s)
			if v, ok := value.(float64); ok {
				value = trim(v)
			}
			if value != any(given[1]) {
				t.Errorf("%s typed %q is %v, want %s", f.Path, given[0], value, given[1])
			}
			if f.Kind == form.Choice {
				continue
			}
			out := string(b.Handle([]byte(`{"plan":` + string(plan.Demo().JSON()) + `,"kind":"set","path":"` + f.Path + `","text":"wide"}`)))
			if !strings.Contains(out, f.Label) || !strings.Contains(out, `"field":"`+f.Path+`"`) {
				t.Errorf("%s typed \"wide\": %s", f.Path, out)
			}
		}
	}
}

// leaves lists the paths of every number, word and choice under a value; lists count
// with what they hold.
func leaves(v reflect.Value, path string, found func(path string)) {
	switch v.Kind() {
	case reflect.Pointer:
		leaves(v.Elem(), path, found)
	case reflect.Struct:
		for i := range v.NumField() {
			name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
			leaves(v.Field(i), path+"."+name, found)
		}
	case reflect.Array, reflect.Slice:
		for i := range v.Len() {
			leaves(v.Index(i), fmt.Sprintf("%s[%d]", path, i), found)
		}
	default:
		found(path)
	}
}

// full is a plan that says everything there is to say of building.
func full(t *testing.T) (plan.Checked, spec.Spec) {
	t.Helper()
	p := quick()
	p.Sensor = &plan.Sensor{Name: "eye", Min: [2]float64{2.5, 2.5}, Max: [2]float64{3.5, 3}}
	data := strings.Replace(string(p.JSON()), `"build":{`, `"build":{"stock":[{"name":"board","kind":"panel","least":0.011,"most":0.013},{"name":"mat","kind":"rubber","least":0.009,"most":0.011}],
		"sensor":{"place":"beside","body":{"min":[1,1,0],"max":[1.2,1.2,0.3]},"keepOut":[{"min":[0,0,0],"max":[1,1,1]}]},
		"walls":{"feet":[{"wall":"left","height":0.1,"depth":0.05}],"doors":[{"name":"door","wall":"back","from":1,"width":0.8}],"garage":{"wall":"back","from":1,"width":2.4,"height":2.13,"open":true},"slab":{"towards":"back","fall":0.01}},
		"prices":[{"item":"turf","price":20}],`, 1)
	c, err := plan.Parse([]byte(data))
	if err != nil {
		t.Fatal(err)
	}
	s, err := spec.Of(c)
	if err != nil {
		t.Fatal(err)
	}
	return c, s
}

// TestEveryValueHasAField: whatever a plan can say of building can be typed on a sheet;
// cups are put on the drawing, prices beside their items.
func TestEveryValueHasAField(t *testing.T) {
	c, s := full(t)
	has := map[string]bool{}
	lists := [][]field{buildFields, projectorFields}
	for _, thing := range things(c.Plan(), &s) {
		lists = append(lists, thing.fields)
	}
	for _, list := range lists {
		for _, f := range list {
			has[f.place()] = true
		}
	}
	n := 0
	check := func(path string) {
		if n++; !has[path] && !strings.HasPrefix(path, "build.cups") && !strings.HasPrefix(path, "build.prices") {
			t.Errorf("%s has no field", path)
		}
	}
	leaves(reflect.ValueOf(s.Projector), "projector", check)
	leaves(reflect.ValueOf(s.Build), "build", check)
	leaves(reflect.ValueOf(c.Plan().Sensor.Min), "sensor.min", check)
	leaves(reflect.ValueOf(c.Plan().Sensor.Max), "sensor.max", check)
	if n < 80 {
		t.Errorf("only %d values were found", n)
	}
}

// setIn changes a plan by one request and reads it again.
func setIn(t *testing.T, p plan.Plan, more string) plan.Plan {
	t.Helper()
	var b Builder
	var a SetAnswer
	ask(t, &b, p, more, &a)
	p.Projector, p.Build, p.Sensor = a.Projector, a.Build, a.Sensor
	c, err := plan.Parse(p.JSON())
	if err != nil {
		t.Fatal(err)
	}
	return c.Plan()
}

// specOf is what a plan says of building.
func specOf(t *testing.T, p plan.Plan) spec.Spec {
	t.Helper()
	c, err := plan.Parse(p.JSON())
	if err != nil {
		t.Fatal(err)
	}
	s, err := spec.Of(c)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestWholeLists: a list that is there as a whole comes with its first figure, the
// others as they were, and goes with a blank one; both conventions of an offset are one.
func TestWholeLists(t *testing.T) {
	p := plan.Demo()
	p.Projector = map[string]any{"lens": []any{2.5, 2.7, 2.8}, "throwRatio": []any{0.9, 1.1}}
	p.Build = nil
	set := func(path, text string) spec.Spec {
		p = setIn(t, p, `"kind":"set","path":"`+path+`","text":"`+text+`"`)
		return specOf(t, p)
	}
	if s := set("projector.body[1]", "1 ft"); s.Projector.Body != [3]float64{0.4, 0.3048, 0.15} {
		t.Errorf("case %v", s.Projector.Body)
	}
	if s := set("projector.offset[0]", "10"); !slices.Equal(s.Projector.Offset, []float64{0.1, 0.1}) {
		t.Errorf("offset %v", s.Projector.Offset)
	}
	if s := set("projector.farOffset[1]", "130"); !slices.Equal(s.Projector.Offset, []float64{0.1, 0.3}) {
		t.Errorf("offset %v", s.Projector.Offset)
	}
	s := set("projector.farOffset[0]", "50")
	fields := shown(projectorFields, &s, "imperial")
	texts := map[string]string{}
	for _, f := range fields {
		texts[f.Path] = f.Text
	}
	if texts["projector.offset[0]"] != "-50" || texts["projector.offset[1]"] != "30" || texts["projector.farOffset[0]"] != "50" || texts["projector.farOffset[1]"] != "130" {
		t.Errorf("shown %v", texts)
	}
	if s := set("projector.farOffset[0]", ""); s.Projector.Offset != nil {
		t.Errorf("offset %v", s.Projector.Offset)
	}
	if s := set("build.floor.covers[0]", "2 ft"); s.Build.Floor.Covers != [4]float64{0.6096, 0, 6.4008, 5.4864} {
		t.Errorf("covers %v", s.Build.Floor.Covers)
	}
	if s := set("build.floor.covers[3]", ""); s.Build.Floor.Covers != [4]float64{0, 0, 6.4008, 5.4864} || p.Build != nil {
		t.Errorf("covers %v, %v", s.Build.Floor.Covers, p.Build)
	}
}

// TestStock: the usual stock becomes the plan's with its first change, one of it can go,
// and all of it comes back.
func TestStock(t *testing.T) {
	p := quick()
	n := len(spec.UsualStock())
	p = setIn(t, p, `"kind":"set","path":"build.stock[1].price","text":"30"`)
	s := specOf(t, p)
	if len(s.Build.Stock) != n || s.Build.Stock[1].Price != 30 || s.Build.Stock[1].Name != "3/8 panel" || math.Abs(s.Build.Stock[1].Least-0.344*0.0254) > 1e-6 {
		t.Fatalf("stock %+v", s.Build.Stock)
	}
	if row := things(p, &s)[1]; row.title != "3/8 panel" || shown(row.fields, &s, "imperial")[2].Text != "0.344 in" || shown(row.fields, &s, "metric")[2].Text != "8.7 mm" {
		t.Errorf("%+v", row)
	}
	p = setIn(t, p, `"kind":"add","path":"build.stock"`)
	p = setIn(t, p, `"kind":"remove","path":"build.stock[0]"`)
	if s = specOf(t, p); len(s.Build.Stock) != n || s.Build.Stock[0].Price != 30 || s.Build.Stock[n-1].Name != fmt.Sprintf("layer %d", n+1) {
		t.Errorf("stock %+v", s.Build.Stock)
	}
	p = setIn(t, p, `"kind":"remove","path":"build.stock"`)
	if data := string(p.JSON()); strings.Contains(data, "stock") {
		t.Errorf("it is still there: %s", data)
	}
	if p = setIn(t, p, `"kind":"remove","path":"build.stock[3]"`); len(specOf(t, p).Build.Stock) != n-1 {
		t.Errorf("one of the usual stock does not go")
	}
}

// TestFreeAspect: an image of the cloth's own aspect fills what frame and padding leave.
func TestFreeAspect(t *testing.T) {
	p := setIn(t, quick(), `"kind":"set","path":"build.enclosure.padding","text":"2 in"`)
	p = setIn(t, p, `"kind":"set","path":"projector.image.bottom","text":""`)
	p = setIn(t, p, `"kind":"set","path":"projector.aspect","text":"free"`)
	var b Builder
	var f FilmAnswer
	ask(t, &b, p, `"kind":"film"`, &f)
	if wide, high := p.Screen.Width-2*0.0508, p.Screen.Height-0.0508; math.Abs(f.Image.Width-wide) > 2e-3 || math.Abs(f.Image.Height-high) > 2e-3 {
		t.Errorf("the image is %v × %v, the opening %v × %v", f.Image.Width, f.Image.Height, wide, high)
	}
}

// TestToldAsTyped: a figure out of its range is told by its field, as it was typed, with
// the limit in the same units.
func TestToldAsTyped(t *testing.T) {
	var b Builder
	c, _ := full(t)
	for _, k := range []struct{ path, text, says string }{
		{"projector.sideShift", "150", "Sideways shift, at most: 150 is more than the 100 % this can do"},
		{"projector.farOffset[0]", "-60", "Offset B, least: -60 is less than the -50 % this needs"},
		{"projector.offset[0]", "70", "the greatest offset, 50 %, must not be less than the least, 70 %"},
		{"projector.body[0]", "300 cm", "Case, length: 300 cm is more than the 2 m this can do"},
		{"projector.throwRatio[0]", "wide", "Throw ratio, least: “wide” is not a number\""},
		{"build.stock[0].most", "1 ft", "Thickness, most: 1 ft is more than the"},
		{"build.floor.covers[2]", "99 ft", "Floor ends, from the back wall: 99 ft is more than the 21 ft this can do"},
		{"sensor.max[0]", "2 ft", "sensor"},
		{"build.sensor.keepOut[0].max[2]", "1 km", "Keep-out 1 ends, above the floor"},
	} {
		out := string(b.Handle([]byte(`{"plan":` + string(c.Plan().JSON()) + `,"kind":"set","path":"` + k.path + `","text":"` + k.text + `"}`)))
		if !strings.HasPrefix(out, `{"error"`) || !strings.Contains(out, k.says) {
			t.Errorf("%s typed %q: %.300s, want %q", k.path, k.text, out, k.says)
		}
	}
}

// TestMountChangesSides: a lens goes behind the screen with its mount, and back again.
func TestMountChangesSides(t *testing.T) {
	var b Builder
	p := plan.Demo()
	for _, c := range []struct {
		mount  string
		behind bool
	}{{spec.MountFloor, false}, {spec.MountRear, true}, {spec.MountCeiling, false}} {
		var a SetAnswer
		ask(t, &b, p, `"kind":"set","path":"projector.mount","text":"`+c.mount+`"`, &a)
		p.Projector = a.Projector
		read, err := plan.Parse(p.JSON())
		if err != nil {
			t.Fatal(err)
		}
		p = read.Plan()
		s, err := spec.Of(read)
		if err != nil || s.Projector.Mount != c.mount || (s.Projector.Lens[0] > p.Screen.X) != c.behind {
			t.Errorf("%s: %+v, %v", c.mount, s.Projector, err)
		}
	}
}

// TestThings: every kind of thing can be added, has fields that take what they show, is
// judged on the sheet, and goes again without a trace.
func TestThings(t *testing.T) {
	var b Builder
	p := quick()
	before := string(p.JSON())
	var sheet BuildAnswer
	ask(t, &b, p, `"kind":"build"`, &sheet)
	kinds := sheet.More
	set := func(more string) {
		var a SetAnswer
		ask(t, &b, p, more, &a)
		p.Projector, p.Build, p.Sensor = a.Projector, a.Build, a.Sensor
		c, err := plan.Parse(p.JSON())
		if err != nil {
			t.Fatal(err)
		}
		p = c.Plan()
	}
	for _, k := range kinds {
		set(`"kind":"add","path":"` + k.Path + `"`)
	}
	for _, more := range []string{"build.walls.doors", "build.sensor.keepOut", "sensor"} {
		set(`"kind":"add","path":"` + more + `"`)
	}
	ask(t, &b, p, `"kind":"build"`, &sheet)
	if usual := len(spec.UsualStock()); len(kinds) != 6 || len(sheet.Things) != 9+usual || len(sheet.More) != 4 {
		t.Fatalf("%d kinds, %d things, %d more", len(kinds), len(sheet.Things), len(sheet.More))
	}
	for _, thing := range sheet.Things {
		for _, f := range thing.Fields {
			text := f.Text
			if v, ok := f.Value.(string); ok {
				text = v
			} else if v, ok := f.Value.(bool); ok {
				text = map[bool]string{true: "true", false: "false"}[v]
			}
			set(`"kind":"set","path":"` + f.Path + `","text":"` + text + `"`)
		}
	}
	set(`"kind":"set","path":"build.walls.garage.open","text":"true"`)
	set(`"kind":"set","path":"build.walls.doors[1].name","text":"closet"`)
	ask(t, &b, p, `"kind":"build"`, &sheet)
	for _, g := range sheet.Groups {
		if least := map[string]int{"walls": 6, "sensor": 3}[g.ID]; len(g.Figures) < least {
			t.Errorf("%s: %d figures, want %d", g.ID, len(g.Figures), least)
		}
		for _, f := range g.Figures {
			if strings.Contains(f.Text, "%!") || f.Rule == "" && strings.ContainsAny(f.Text, "0123456789") {
				t.Errorf("%+v", f)
			}
		}
	}
	set(`"kind":"remove","path":"build.walls.doors[0]"`)
	if !strings.Contains(string(p.JSON()), `"doors":[{"from":0.3,"name":"closet"`) && !strings.Contains(string(p.JSON()), "closet") {
		t.Errorf("the other door went: %s", p.JSON())
	}
	for _, path := range []string{"build.walls.doors[0]", "build.walls.feet[0]", "build.walls.garage", "build.walls.slab", "build.sensor.keepOut[0]", "build.sensor", "sensor", "build.stock"} {
		set(`"kind":"remove","path":"` + path + `"`)
	}
	if after := string(p.JSON()); after != before {
		t.Errorf("what is left differs:\n%s\n%s", after, before)
	}
	for _, bad := range []string{`"kind":"add","path":"build.x"`, `"kind":"remove","path":"build.walls.doors[3]"`, `"kind":"remove","path":""`, `"kind":"set","path":"","text":""`, `"kind":"remove","path":"build.cups"`} {
		if out := string(b.Handle([]byte(`{"plan":` + before + `,` + bad + `}`))); !strings.Contains(out, "reload the page") {
			t.Errorf("%s: %.200s", bad, out)
		}
	}
}

func TestSetOther(t *testing.T) {
	var b Builder
	var a SetAnswer
	ask(t, &b, plan.Demo(), `"kind":"set","path":"build.price.2×4, 8 ft, for the frame","text":"4.5"`, &a)
	p := plan.Demo()
	p.Build = a.Build
	data := p.JSON()
	if !strings.Contains(string(data), `"prices":[{"item":"2×4, 8 ft, for the frame","price":4.5}]`) {
		t.Errorf("%s", data)
	}
	c, err := plan.Parse(data)
	if err != nil {
		t.Fatal(err)
	}
	var sheet BuildAnswer
	ask(t, &b, c.Plan(), `"kind":"build"`, &sheet)
	if !slices.ContainsFunc(sheet.Quantities, func(l LineRow) bool { return l.Price == "4.5" && l.Cost != "" }) {
		t.Errorf("no line has the price: %+v", sheet.Quantities)
	}
	ask(t, &b, c.Plan(), `"kind":"set","path":"build.price.2×4, 8 ft, for the frame","text":""`, &a)
	if data, _ := json.Marshal(a.Build); strings.Contains(string(data), "prices") {
		t.Errorf("taken out it is still there: %s", data)
	}
	// A projector that only hangs becomes the plan's when a field of it is set.
	p = plan.Demo()
	p.Projector = nil
	ask(t, &b, p, `"kind":"set","path":"projector.gain","text":"1.1"`, &a)
	p.Projector = a.Projector
	data = p.JSON()
	c, err = plan.Parse(data)
	if err != nil {
		t.Fatal(err)
	}
	if s, err := spec.Of(c); err != nil || s.Projector.Gain != 1.1 || s.Projector.ThrowRatio[0] != 0.95 {
		t.Errorf("%+v, %v", s.Projector, err)
	}
}

func TestRefused(t *testing.T) {
	var b Builder
	bad := plantest.Loft()
	bad.Room.Width = -1
	for name, c := range map[string]struct{ body, says string }{
		"no JSON":        {`{`, "reload the page"},
		"no plan":        {`{"kind":"build"}`, "the plan must be an object"},
		"a bad plan":     {`{"kind":"build","plan":` + string(bad.JSON()) + `}`, "room: width"},
		"unknown":        {`{"kind":"dance","plan":` + string(plan.Demo().JSON()) + `}`, "does not know"},
		"unknown field":  {`{"kind":"set","path":"build.x","text":"1","plan":` + string(plan.Demo().JSON()) + `}`, "no field of these sheets"},
		"out of range":   {`{"kind":"set","path":"projector.lumens","text":"3","plan":` + string(plan.Demo().JSON()) + `}`, "Light: 3 is less than the 50 lumens this needs"},
		"unknown player": {`{"kind":"film","player":"Nobody","plan":` + string(plan.Demo().JSON()) + `}`, "is not in the plan"},
	} {
		if out := string(b.Handle([]byte(c.body))); !strings.HasPrefix(out, `{"error"`) || !strings.Contains(out, c.says) {
			t.Errorf("%s: %.300s, want %q", name, out, c.says)
		}
	}
}
