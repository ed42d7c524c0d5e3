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

// Shown is a field with what it shows.
type Shown struct {
	form.Field
	Group string `json:"group"`
	Value any    `json:"value"` // as the plan has it, defaults filled
	Text  string `json:"text"`  // of a number
}

// field is a field of these sheets and where its value is.
type field struct {
	form.Field
	group string
	of    func(s *spec.Spec) any // a float64 or a string
}

func number(path, label, unit, hint, group string, of func(s *spec.Spec) any) field {
	return field{form.Field{Path: path, Label: label, Kind: form.Number, Unit: unit, Hint: hint, Optional: true}, group, of}
}

func length(path, label, hint, group string, of func(s *spec.Spec) any) field {
	return field{form.Field{Path: path, Label: label, Kind: form.Length, Hint: hint, Optional: true}, group, of}
}

func choice(path, label, group string, choices [][2]string, of func(s *spec.Spec) any) field {
	return field{form.Field{Path: path, Label: label, Kind: form.Choice, Choices: choices}, group, of}
}

var buildFields = []field{
	length("build.floor.tolerance", "Floor and mat may differ by", "How far the floor may stand above or below the mat's top.", "floor", func(s *spec.Spec) any { return s.Build.Floor.Tolerance }),
	number("build.floor.layers", "Layers at most", "", "", "floor", func(s *spec.Spec) any { return s.Build.Floor.Layers }),
	choice("build.floor.panels", "Panels lie", "floor", [][2]string{{"", "whichever takes fewer"}, {spec.Length, "along the room"}, {spec.Width, "across it"}}, func(s *spec.Spec) any { return s.Build.Floor.Panels }),
	choice("build.floor.turf", "Turf is rolled out", "floor", [][2]string{{spec.Length, "along the room"}, {spec.Width, "across it"}}, func(s *spec.Spec) any { return s.Build.Floor.Turf }),
	length("build.floor.turfRoll", "Width of the turf roll", "", "floor", func(s *spec.Spec) any { return s.Build.Floor.TurfRoll }),
	length("build.enclosure.padding", "Padding over the cloth", "That overlaps its sides and its top.", "screen", func(s *spec.Spec) any { return s.Build.Enclosure.Padding }),
	length("build.enclosure.sill", "Sill over the cloth", "That overlaps its bottom.", "screen", func(s *spec.Spec) any { return s.Build.Enclosure.Sill }),
	length("build.enclosure.border", "Blank border", "Cloth kept free around the image.", "screen", func(s *spec.Spec) any { return s.Build.Enclosure.Border }),
	number("build.finish.coats", "Coats of paint", "", "", "quantities", func(s *spec.Spec) any { return s.Build.Finish.Coats }),
	number("build.finish.absorber", "Acoustic absorber", "m²", "On walls and ceiling.", "sound", func(s *spec.Spec) any { return s.Build.Finish.Absorber }),
	choice("build.finish.walls", "Walls are", "sound", materials(), func(s *spec.Spec) any { return s.Build.Finish.Walls }),
	choice("build.finish.ceiling", "Ceiling is", "sound", materials(), func(s *spec.Spec) any { return s.Build.Finish.Ceiling }),
	number("build.wiring.receptacles", "Receptacles asked for", "", "", "quantities", func(s *spec.Spec) any { return s.Build.Wiring.Receptacles }),
}

func materials() (out [][2]string) {
	for _, m := range spec.Materials() {
		out = append(out, [2]string{m, m})
	}
	return out
}

// aspects are those that images come in, as the plan keeps them.
var aspects = [][2]string{{"1.7778", "16:9"}, {"1.6", "16:10"}, {"1.3333", "4:3"}, {"1", "1:1"}, {"2.3704", "64:27"}}

var projectorFields = []field{
	length("projector.lens[0]", "Lens, from the back wall", "", "place", func(s *spec.Spec) any { return s.Projector.Lens[0] }),
	length("projector.lens[1]", "Lens, from the right wall", "", "place", func(s *spec.Spec) any { return s.Projector.Lens[1] }),
	length("projector.lens[2]", "Lens, above the floor", "Above the bare floor.", "place", func(s *spec.Spec) any { return s.Projector.Lens[2] }),
	choice("projector.mount", "It hangs or stands", "place", [][2]string{{spec.MountCeiling, "under the ceiling"}, {spec.MountFloor, "on the floor"}, {spec.MountRear, "behind the screen"}}, func(s *spec.Spec) any { return s.Projector.Mount }),
	number("projector.throwRatio[0]", "Throw ratio, least", "", "Distance from lens to screen over image width.", "data", func(s *spec.Spec) any { return s.Projector.ThrowRatio[0] }),
	number("projector.throwRatio[1]", "Throw ratio, most", "", "The same with the zoom at its other end; as the least without a zoom.", "data", func(s *spec.Spec) any { return s.Projector.ThrowRatio[1] }),
	choice("projector.aspect", "Image", "data", aspects, func(s *spec.Spec) any { return trim(s.Projector.Aspect) }),
	number("projector.lumens", "Light", "lumens", "As rated.", "data", func(s *spec.Spec) any { return s.Projector.Lumens }),
	number("projector.columns", "Pixels across", "", "", "data", func(s *spec.Spec) any { return s.Projector.Columns }),
	choice("projector.riskGroup", "Risk group on its label", "data", [][2]string{{"", "not known"}, {"RG1", "RG1"}, {"RG2", "RG2"}, {"RG3", "RG3"}}, func(s *spec.Spec) any { return s.Projector.RiskGroup }),
	number("projector.gain", "Gain of the screen", "", "Beside a perfect white diffuser.", "screen", func(s *spec.Spec) any { return s.Projector.Gain }),
	number("projector.roomLight", "Room light on the screen", "lx", "With the projector dark.", "screen", func(s *spec.Spec) any { return s.Projector.RoomLight }),
	length("projector.image.width", "Image width", "Blank: as wide as the cloth allows.", "screen", func(s *spec.Spec) any { return s.Projector.Image.Width }),
	length("projector.image.bottom", "Image bottom, above the floor", "Blank: as much border below as above.", "screen", func(s *spec.Spec) any { return s.Projector.Image.Bottom }),
}

func trim(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// shown is what fields show for a spec.
func shown(fields []field, s *spec.Spec, system string) []Shown {
	out := []Shown{}
	for _, f := range fields {
		one := Shown{Field: f.Field, Group: f.group, Value: f.of(s)}
		if v, ok := one.Value.(float64); ok && (v != 0 || !f.emptyAtZero()) {
			one.Text = f.Text(v, system)
		}
		if f.Kind == form.Choice && one.Value != any("") {
			one.Choices = withValue(f.Choices, one.Value.(string))
		}
		out = append(out, one)
	}
	return out
}

// emptyAtZero is whether a field shows nothing for zero, which stands for a default.
func (f *field) emptyAtZero() bool {
	return strings.HasPrefix(f.Path, "projector.image") || strings.HasSuffix(f.Path, ".depth")
}

// withValue adds a value of the plan to the choices that is none of them.
func withValue(choices [][2]string, v string) [][2]string {
	for _, c := range choices {
		if c[0] == v {
			return choices
		}
	}
	return append(choices[:len(choices):len(choices)], [2]string{v, v + ":1"})
}

// SetAnswer are the members of the plan with one field changed: they take the place of
// those it had.
type SetAnswer struct {
	Projector any `json:"projector"`
	Build     any `json:"build"`
}

// set changes a field by what was typed into it; blank gives it back to the default. A
// request of kind add or remove has a thing come or go.
func set(req Request) (any, error) {
	c, err := plan.FromTree(req.Plan)
	if err != nil {
		return nil, err
	}
	p := c.Plan()
	s, err := spec.Of(c)
	if err != nil {
		return nil, err
	}
	if req.Kind != "set" {
		first, err := any(nil), error(nil)
		if req.Kind == "add" {
			if first, err = firstThing(req.Path, p, &s); err != nil {
				return nil, err
			}
			p.Build, err = added(p.Build, req.Path, first)
		} else {
			p.Build, err = without(p.Build, req.Path)
		}
		if err != nil {
			return nil, err
		}
		return accepted(p)
	}
	value, err := typed(req, p.Units, &s)
	if err != nil {
		return nil, &plan.FieldError{Field: req.Path, Message: err.Error()}
	}
	if p.Projector == nil && s.Projector != nil { // taken from what hangs: now it is the plan's
		j := s.Projector
		p.Projector = map[string]any{
			"lens": []any{numeral(j.Lens[0]), numeral(j.Lens[1]), numeral(j.Lens[2])}, "throwRatio": []any{numeral(j.ThrowRatio[0]), numeral(j.ThrowRatio[1])},
			"lumens": numeral(j.Lumens), "body": []any{numeral(j.Body[0]), numeral(j.Body[1]), numeral(j.Body[2])},
		}
	}
	group, rest, _ := strings.Cut(req.Path, ".")
	member := &p.Build
	if group == "projector" {
		member = &p.Projector
	}
	steps := stepsOf(rest)
	if req.Path == "projector.mount" && s.Projector != nil {
		// A lens on the other side of the cloth comes with it: neither alone could be.
		if x, other := acrossTheCloth(p, *s.Projector, req.Text); other {
			if p.Projector, err = changed(p.Projector, []string{"lens", "0"}, numeral(x)); err != nil {
				return nil, err
			}
		}
	}
	if *member, err = changed(*member, steps, value); err != nil {
		return nil, err
	}
	return accepted(p)
}

// accepted are the members of a plan that was changed, if it is still a plan.
func accepted(p plan.Plan) (any, error) {
	again, err := plan.Check(p)
	if err == nil {
		_, err = spec.Of(again)
	}
	if err != nil {
		return nil, err
	}
	return SetAnswer{p.Projector, p.Build}, nil
}

// acrossTheCloth is where along the room a lens goes when its mount changes sides: from
// behind midway to the wall, from before as far off as its least throw, within the room.
func acrossTheCloth(p plan.Plan, j spec.Projector, mount string) (x float64, other bool) {
	if (mount == spec.MountRear) == (j.Mount == spec.MountRear) {
		return 0, false
	}
	cloth, wide := p.Room.Length, p.Room.Width
	if p.Screen != nil {
		cloth, wide = p.Screen.X, p.Screen.Width
	}
	x = max(cloth-j.ThrowRatio[0]*wide, cloth/10)
	if mount == spec.MountRear {
		x = (cloth + p.Room.Length) / 2
	}
	return math.Round(x*1e4) / 1e4, true
}

func numeral(v float64) json.Number { return json.Number(trim(v)) }

// typed is the value of a field as the plan keeps it; nil takes it out.
func typed(req Request, system string, s *spec.Spec) (any, error) {
	f := fieldAt(req.Path, s)
	if f == nil {
		return nil, fmt.Errorf("%s is no field of these sheets: reload the page", fmt.Clip(req.Path))
	}
	text := strings.TrimSpace(req.Text)
	if text == "" && !strings.HasSuffix(req.Path, "]") {
		return nil, nil
	}
	switch {
	case f.Kind == form.Check && text == "true":
		return true, nil
	case f.Kind == form.Check:
		return nil, nil
	case f.Kind == form.Text:
		return text, nil
	}
	if f.Kind == form.Choice && req.Path != "projector.aspect" {
		return text, nil
	}
	v, err := f.Value(text, system)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", f.Label, err)
	}
	return json.Number(trim(v)), nil
}

// fieldAt finds a field by its path; prices have one for each line.
func fieldAt(path string, s *spec.Spec) *form.Field {
	lists := [][]field{buildFields, projectorFields}
	for _, t := range things(s) {
		lists = append(lists, t.fields)
	}
	for _, list := range lists {
		for i := range list {
			if list[i].Path == path {
				f := list[i].Field
				if path == "projector.aspect" {
					f.Kind = form.Number
				}
				return &f
			}
		}
	}
	if strings.HasPrefix(path, pricePath) {
		return &form.Field{Label: "Unit price", Kind: form.Number}
	}
	return nil
}

// pricePath is before the item in the path of a price.
const pricePath = "build.price."

// stepsOf takes a path apart; the item of a price is one step, whatever is in it.
func stepsOf(path string) []string {
	if item, ok := strings.CutPrefix(path, strings.TrimPrefix(pricePath, "build.")); ok {
		return []string{"prices", "=" + item}
	}
	return strings.FieldsFunc(path, func(r rune) bool { return r == '.' || r == '[' || r == ']' })
}

// changed is a tree with the value at the end of steps another one; it shares what has
// not changed.
func changed(tree any, steps []string, value any) (any, error) {
	if len(steps) == 0 {
		return value, nil
	}
	at := steps[0]
	if item, ok := strings.CutPrefix(at, "="); ok {
		return priced(tree, item, value), nil
	}
	if list, ok := tree.([]any); ok {
		i, err := strconv.Atoi(at)
		if err != nil || i < 0 || i >= len(list) {
			return nil, fmt.Errorf("the plan has no %s there: reload the page", at)
		}
		next, err := changed(list[i], steps[1:], value)
		if err != nil {
			return nil, err
		}
		out := append([]any{}, list...)
		out[i] = next
		return out, nil
	}
	object, _ := tree.(map[string]any)
	out := map[string]any{}
	for k, v := range object {
		out[k] = v
	}
	next, err := changed(object[at], steps[1:], value)
	if err != nil {
		return nil, err
	}
	out[at] = next
	if empty, ok := next.(map[string]any); next == nil || ok && len(empty) == 0 {
		delete(out, at)
	}
	return out, nil
}

// priced is a list of prices with that of an item another one.
func priced(tree any, item string, value any) any {
	list, _ := tree.([]any)
	out := []any{}
	for _, one := range list {
		if o, ok := one.(map[string]any); ok && o["item"] == item {
			continue
		}
		out = append(out, one)
	}
	if value != nil {
		out = append(out, map[string]any{"item": item, "price": value})
	}
	if len(out) == 0 {
		return nil
	}
	return out
}
