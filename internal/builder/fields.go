package builder

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"

	"wideberth/internal/form"
	"wideberth/internal/lean/fmt"
	"wideberth/internal/lean/json"
	"wideberth/internal/sim/build/screen"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/plan"
	"wideberth/internal/units"
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
	of    func(s *spec.Spec) any // a float64, a string or a bool
	at    string                 // where the plan keeps it, if not at Path
	scale scale
	whole bool // its list is there as a whole or not at all
	fine  bool // a thickness, for which an eighth of an inch is too coarse
}

// scale is how a number is shown: times By, and From more. The zero value changes nothing.
type scale struct{ by, from float64 }

// A share is shown in percent. farther is that of an offset by the other convention: to
// the farthest edge of the image it is all of its height more (projector.Offsets).
var percents, farther = scale{by: 100}, scale{by: 100, from: 100}

func (s scale) shown(v float64) float64 {
	if s.by == 0 {
		return v
	}
	return math.Round((v*s.by+s.from)*1e6) / 1e6
}

func (s scale) kept(v float64) float64 {
	if s.by == 0 {
		return v
	}
	return math.Round((v-s.from)/s.by*1e8) / 1e8
}

// place is where the plan keeps the value.
func (f *field) place() string {
	if f.at != "" {
		return f.at
	}
	return f.Path
}

// in has a field show a share in percent.
func (f field) in(s scale) field {
	f.Unit, f.scale = "%", s
	return f
}

// parted makes fields of a list that is there as a whole or not at all.
func parted(fields ...field) []field {
	for i := range fields {
		fields[i].whole = true
	}
	return fields
}

func number(path, label, unit, hint, group string, of func(s *spec.Spec) any) field {
	return field{Field: form.Field{Path: path, Label: label, Kind: form.Number, Unit: unit, Hint: hint, Optional: true}, group: group, of: of}
}

func length(path, label, hint, group string, of func(s *spec.Spec) any) field {
	return field{Field: form.Field{Path: path, Label: label, Kind: form.Length, Hint: hint, Optional: true}, group: group, of: of}
}

func choice(path, label, group string, choices [][2]string, of func(s *spec.Spec) any) field {
	return field{Field: form.Field{Path: path, Label: label, Kind: form.Choice, Choices: choices}, group: group, of: of}
}

var buildFields = slices.Concat([]field{
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
	number("build.finish.coverage", "A litre of paint covers", "m²", "Once.", "counting", func(s *spec.Spec) any { return s.Build.Finish.Coverage }),
	length("build.wiring.slack", "Slack of a cable", "On top of a tenth of its run.", "counting", func(s *spec.Spec) any { return s.Build.Wiring.Slack }),
}, parted(
	length("build.floor.covers[0]", "Floor starts, from the back wall", "Blank: the whole room.", "area", func(s *spec.Spec) any { return s.Build.Floor.Covers[0] }),
	length("build.floor.covers[2]", "Floor ends, from the back wall", "Blank: the whole room.", "area", func(s *spec.Spec) any { return s.Build.Floor.Covers[2] }),
	length("build.floor.covers[1]", "Floor starts, from the right wall", "Blank: the whole room.", "area", func(s *spec.Spec) any { return s.Build.Floor.Covers[1] }),
	length("build.floor.covers[3]", "Floor ends, from the right wall", "Blank: the whole room.", "area", func(s *spec.Spec) any { return s.Build.Floor.Covers[3] }),
	length("build.wiring.source[0]", "Picture comes from, off the back wall", "Where the computer stands.", "counting", func(s *spec.Spec) any { return s.Build.Wiring.Source[0] }),
	length("build.wiring.source[1]", "Picture comes from, off the right wall", "", "counting", func(s *spec.Spec) any { return s.Build.Wiring.Source[1] }),
	length("build.wiring.source[2]", "Picture comes from, above the floor", "", "counting", func(s *spec.Spec) any { return s.Build.Wiring.Source[2] }),
), []field{
	length("build.floor.gap", "Gap between panels", "", "area", func(s *spec.Spec) any { return s.Build.Floor.Gap }),
})

func materials() (out [][2]string) {
	for _, m := range spec.Materials() {
		out = append(out, [2]string{m, m})
	}
	return out
}

// aspects are those that images come in, as the plan keeps them.
var aspects = [][2]string{{"1.7778", "16:9"}, {"1.6", "16:10"}, {"1.3333", "4:3"}, {"1", "1:1"}, {"2.3704", "64:27"}, {free, "that of the cloth"}}

// free stands for the aspect of what frame and padding leave of the cloth.
const free = "free"

var projectorFields = slices.Concat([]field{
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
}, parted(
	offset("projector.offset", 0, "Offset A, least", "From the lens axis to the nearest edge, of the image height; less than nothing into the image. Blank: not known.", percents),
	offset("projector.offset", 1, "Offset A, most", "Blank: not known.", percents),
	offset("projector.farOffset", 0, "Offset B, least", "The same by the other convention: to the farthest edge, so a full image height more.", farther),
	offset("projector.farOffset", 1, "Offset B, most", "Blank: not known.", farther),
	length("projector.body[0]", "Case, length", "From its back to its lens.", "case", func(s *spec.Spec) any { return s.Projector.Body[0] }),
	length("projector.body[1]", "Case, width", "", "case", func(s *spec.Spec) any { return s.Projector.Body[1] }),
	length("projector.body[2]", "Case, height", "", "case", func(s *spec.Spec) any { return s.Projector.Body[2] }),
), []field{
	number("projector.sideShift", "Sideways shift, at most", "", "To either side, of the image width.", "offset", func(s *spec.Spec) any { return s.Projector.SideShift }).in(percents),
})

// offset is one end of what a projector can do, at a path that names the convention.
func offset(path string, i int, label, hint string, as scale) field {
	f := number(fmt.Sprintf("%s[%d]", path, i), label, "", hint, "offset", func(s *spec.Spec) any {
		if len(s.Projector.Offset) != 2 {
			return ""
		}
		return s.Projector.Offset[i]
	}).in(as)
	f.at = fmt.Sprintf("projector.offset[%d]", i)
	return f
}

func trim(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// shown is what fields show for a spec.
func shown(fields []field, s *spec.Spec, system string) []Shown {
	out := []Shown{}
	for _, f := range fields {
		one := Shown{Field: f.Field, Group: f.group, Value: f.of(s)}
		if v, ok := one.Value.(float64); ok && (v != 0 || !f.emptyAtZero()) {
			one.Text = f.Text(f.scale.shown(v), system)
			if f.fine {
				one.Text = thickness(v, system)
			}
		}
		if f.Kind == form.Choice && one.Value != any("") {
			one.Choices = withValue(f.Choices, one.Value.(string))
		}
		out = append(out, one)
	}
	return out
}

// thickness writes a thickness (m) as what is sold is measured.
func thickness(v float64, system string) string {
	if system == units.Imperial {
		return fmt.Sprintf("%.3f in", v/units.MetresPerInch)
	}
	return fmt.Sprintf("%.1f mm", 1000*v)
}

// emptyAtZero is whether a field shows nothing for zero, which stands for a default.
func (f *field) emptyAtZero() bool {
	return strings.HasPrefix(f.Path, "projector.image") || strings.HasSuffix(f.Path, ".depth") || strings.HasSuffix(f.Path, ".price")
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
	Projector any          `json:"projector"`
	Build     any          `json:"build"`
	Sensor    *plan.Sensor `json:"sensor"`
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
	switch req.Kind {
	case "add":
		err = add(req.Path, &p, &s)
	case "remove":
		err = remove(req.Path, &p, &s)
	default:
		return setField(req, p, &s)
	}
	if err != nil {
		return nil, err
	}
	return accepted(p)
}

// setField changes one field.
func setField(req Request, p plan.Plan, s *spec.Spec) (any, error) {
	f := fieldAt(req.Path, p, s)
	if f == nil {
		return nil, fmt.Errorf("%s is no field of these sheets: reload the page", fmt.Clip(req.Path))
	}
	if f.Path == aspectPath && req.Text == free {
		o := screen.OpeningOf(p, s.Build.Enclosure)
		req.Text = trim(math.Round((o.Left-o.Right)/max(o.Top-o.Bottom, 1e-3)*1e4) / 1e4)
	}
	value, err := f.typed(req.Text, p.Units)
	if err != nil {
		return nil, &plan.FieldError{Field: req.Path, Message: err.Error()}
	}
	filled(&p, s, f.place())
	group, _, _ := strings.Cut(f.place(), ".")
	member := memberOf(&p, group)
	steps := stepsOf(f.place())
	if f.whole {
		if err := f.fill(member, p, s, value); err != nil {
			return nil, err
		}
		if value == nil {
			steps = steps[:len(steps)-1]
		}
	}
	if req.Path == "projector.mount" && s.Projector != nil {
		// A lens on the other side of the cloth comes with it: neither alone could be.
		if x, other := acrossTheCloth(p, *s.Projector, req.Text); other {
			if p.Projector, err = changed(p.Projector, []string{"lens", "0"}, numeral(x)); err != nil {
				return nil, err
			}
		}
	}
	if group == "sensor" {
		return setStrip(f, p, steps, value, req.Text)
	}
	if *member, err = changed(*member, steps, value); err != nil {
		return nil, err
	}
	answer, err := accepted(p)
	return answer, f.tell(err, req.Text, p.Units)
}

// memberOf is the member of a plan that these sheets change.
func memberOf(p *plan.Plan, group string) *any {
	if group == "projector" {
		return &p.Projector
	}
	return &p.Build
}

// filled writes into a plan what is its default so far and about to be changed in part:
// a projector that was taken from what hangs, and the usual stock.
func filled(p *plan.Plan, s *spec.Spec, path string) {
	if p.Projector == nil && s.Projector != nil {
		j := s.Projector
		p.Projector = map[string]any{
			"lens": numerals(j.Lens[:]), "throwRatio": numerals(j.ThrowRatio[:]), "lumens": numeral(j.Lumens), "body": numerals(j.Body[:]),
		}
	}
	if !strings.HasPrefix(path, stockPath) || valueAt(p.Build, []string{"stock"}) != nil {
		return
	}
	all := []any{}
	for _, one := range s.Build.Stock {
		all = append(all, map[string]any{"name": one.Name, "kind": one.Kind, "least": micro(one.Least), "most": micro(one.Most)})
	}
	p.Build, _ = changed(p.Build, []string{"stock"}, all) // a member of a group can always be set
}

// fill writes the list of a field into its member, where the plan has none: what the
// others of it are, or where that is not known what was typed.
func (f *field) fill(member *any, p plan.Plan, s *spec.Spec, value any) error {
	steps := stepsOf(f.place())
	list := steps[:len(steps)-1]
	if value == nil || valueAt(*member, list) != nil {
		return nil
	}
	all := []any{}
	for i := 0; ; i++ {
		other := fieldAt(fmt.Sprintf("%s[%d]", f.Path[:strings.LastIndex(f.Path, "[")], i), p, s)
		if other == nil {
			break
		}
		if v, ok := other.of(s).(float64); ok {
			all = append(all, micro(v))
		} else {
			all = append(all, value)
		}
	}
	var err error
	*member, err = changed(*member, list, all)
	return err
}

// setStrip changes the strip of the floor that a ball sensor reads, which is the plan's
// own.
func setStrip(f *field, p plan.Plan, steps []string, value any, typed string) (any, error) {
	was := p.Sensor
	tree, err := changed(map[string]any{"name": was.Name, "min": numerals(was.Min[:]), "max": numerals(was.Max[:])}, steps, value)
	if err != nil {
		return nil, err
	}
	p.Sensor = &plan.Sensor{}
	if err := plan.Group(tree, "sensor", p.Sensor); err != nil {
		return nil, err
	}
	answer, err := accepted(p)
	return answer, f.tell(err, typed, p.Units)
}

// tell puts what is wrong with a number into the words of its field, as it was typed.
func (f *field) tell(err error, typed, system string) error {
	wrong, ok := errors.AsType[*plan.FieldError](err)
	if !ok || wrong.Range == nil || wrong.Field != f.place() {
		return err
	}
	r := *wrong.Range
	r.Value, r.Least, r.Most = f.scale.shown(r.Value), f.scale.shown(r.Least), f.scale.shown(r.Most)
	return &plan.FieldError{Field: f.Path, Message: f.Tell(strings.TrimSpace(typed), system, r)}
}

// accepted are the members of a plan that was changed, if it is still a plan.
func accepted(p plan.Plan) (any, error) {
	for _, member := range []*any{&p.Projector, &p.Build} {
		if group, ok := (*member).(map[string]any); ok && len(group) == 0 {
			*member = nil
		}
	}
	again, err := plan.Check(p)
	if err == nil {
		_, err = spec.Of(again)
	}
	if err != nil {
		return nil, err
	}
	return SetAnswer{p.Projector, p.Build, p.Sensor}, nil
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

// micro is a number to six decimals, m: a thousandth of a millimetre.
func micro(v float64) json.Number { return numeral(math.Round(v*1e6) / 1e6) }

func numerals(list []float64) (out []any) {
	for _, v := range list {
		out = append(out, numeral(v))
	}
	return out
}

// typed is the value of a field as the plan keeps it; nil takes it out.
func (f *field) typed(text, system string) (any, error) {
	text = strings.TrimSpace(text)
	if text == "" && (f.whole || !strings.HasSuffix(f.Path, "]")) {
		return nil, nil
	}
	switch {
	case f.Kind == form.Check && text == "true":
		return true, nil
	case f.Kind == form.Check:
		return nil, nil
	case f.Kind == form.Text, f.Kind == form.Choice && f.Path != aspectPath:
		return text, nil
	}
	read := f.Field
	if f.Path == aspectPath {
		read.Kind = form.Number
	}
	v, err := read.Value(text, system)
	if err != nil {
		return nil, fmt.Errorf("%s: %s", f.Label, strings.TrimSuffix(err.Error(), " of ")) // of no unit
	}
	return numeral(f.scale.kept(v)), nil
}

// aspectPath is a number that is chosen.
const aspectPath = "projector.aspect"

// fieldAt finds a field by its path; prices have one for each line.
func fieldAt(path string, p plan.Plan, s *spec.Spec) *field {
	lists := [][]field{buildFields, projectorFields}
	for _, t := range things(p, s) {
		lists = append(lists, t.fields)
	}
	for _, list := range lists {
		for i := range list {
			if list[i].Path == path {
				return &list[i]
			}
		}
	}
	if strings.HasPrefix(path, pricePath) {
		return &field{Field: form.Field{Path: path, Label: "Unit price", Kind: form.Number}}
	}
	return nil
}

// pricePath is before the item in the path of a price.
const pricePath = "build.price."

// stockPath is where what there is to lay is in the plan.
const stockPath = "build.stock"

// stepsOf takes a path apart, within its member; the item of a price is one step, whatever
// is in it.
func stepsOf(path string) []string {
	if item, ok := strings.CutPrefix(path, pricePath); ok {
		return []string{"prices", "=" + item}
	}
	return strings.FieldsFunc(path, func(r rune) bool { return r == '.' || r == '[' || r == ']' })[1:]
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
