package form

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/lean/json"
	"wideberth/internal/sim/plan"
	"wideberth/internal/units"
)

// Typed is what stood as text in a plan that was read, for sentences about it.
type Typed struct {
	// Notes say of a bare number in which unit it was read, where that is not the
	// usual one.
	Notes []string

	text  map[string]string // by path
	units string
}

// Read puts numbers in the place of what was typed: in a plan as
// json.Decode has read it, a figure may be the text of its field. Blank text
// takes an optional figure out. The first that cannot be read is a
// *plan.FieldError; what else may be wrong with the plan is left to
// plan.FromTree, whose error Typed.Tell puts into the reader's words.
func Read(tree any) (Typed, error) {
	object, _ := tree.(map[string]any)
	system, _ := object["units"].(string)
	all := Typed{Notes: []string{}, text: map[string]string{}, units: system}
	var first error
	each(func(pattern string, f *Field) {
		if f.Kind != Length && f.Kind != Number {
			return
		}
		places(tree, pattern, func(path string, v any) any {
			typed, ok := v.(string)
			if !ok {
				return v
			}
			typed = strings.TrimSpace(typed)
			if typed == "" && f.Optional {
				return gone
			}
			n, as, err := f.read(pattern, typed, system)
			if err != nil {
				if first == nil {
					first = &plan.FieldError{Field: path, Message: f.Label + ": " + err.Error()}
				}
				return v
			}
			if as != "" {
				all.Notes = append(all.Notes, fmt.Sprintf("%s: “%s” is read as %s, which is %s.", f.Label, fmt.Clip(typed), as, f.show(n, system)))
			}
			all.text[path] = typed
			return json.Number(strconv.FormatFloat(n, 'f', -1, 64))
		})
	})
	return all, first
}

// read makes a number of what was typed; as says in which unit a bare number was
// read, where that is not the usual one.
func (f *Field) read(pattern, typed, system string) (n float64, as string, err error) {
	switch {
	case f.Kind == Number:
		v, err := strconv.ParseFloat(strings.Replace(typed, ",", ".", 1), 64)
		if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
			return 0, "", fmt.Errorf("“%s” is not a number of %s", fmt.Clip(typed), f.Unit)
		}
		return v, "", nil
	case f.isLength():
		fits := func(m float64) bool {
			fits, known := plan.Fits(pattern, m)
			return fits || !known
		}
		v, as, err := units.ParseFitting(typed, system, fits)
		return math.Round(v*1e4) / 1e4, as, err // to 0.1 mm, as links keep it
	}
	n, err = units.ParseQuantity(f.Form, typed, system)
	return n, "", err
}

// isLength is false of numbers and of figures in units of their own.
func (f *Field) isLength() bool { return f.Kind == Length && (f.Form == "" || f.Form == Short) }

// Tell says what is wrong with a number in the words of its field, as it was typed
// and with the limit in the units it was typed in: "Height: 99 ft is more than the
// 7 ft 10 in this can do". Other errors stay as they are.
func (t Typed) Tell(err error) error {
	wrong, ok := errors.AsType[*plan.FieldError](err)
	if !ok || wrong.Range == nil {
		return err
	}
	each(func(pattern string, f *Field) {
		if samePath(pattern, wrong.Field) {
			err = &plan.FieldError{Field: wrong.Field, Message: t.tell(f, wrong)}
		}
	})
	return err
}

// Tell says the same of a field that is not one of the cards'; r is in the field's units.
func (f *Field) Tell(typed, system string, r plan.Range) string {
	return Typed{text: map[string]string{f.Path: typed}, units: system}.tell(f, &plan.FieldError{Field: f.Path, Range: &r})
}

func (t Typed) tell(f *Field, wrong *plan.FieldError) string {
	r := wrong.Range
	least := r.Value <= r.Least
	limit := r.Most
	if least {
		limit = r.Least
	}
	system := t.units
	name, value := f.Label, ""
	if typed, ok := t.text[wrong.Field]; ok {
		value = fmt.Clip(typed)
		if f.isLength() {
			var named bool
			if system, named = units.SystemOf(typed, system); !named {
				value += ", read as " + f.show(r.Value, system) + ","
			}
		}
	} else { // it clashes with what was typed elsewhere: say whose it is
		name, value = r.Who+f.Label, f.show(r.Value, system)
	}
	bound := f.show(limit, system)
	switch {
	case f.Kind == Number && f.Unit != "":
		bound += " " + f.Unit
	case f.isLength():
		bound = units.LabelLimit(limit, system, least)
	}
	switch {
	case r.Value == limit && least: // an end that is not in the range
		return fmt.Sprintf("%s: %s is too little, it must be more than that", name, value)
	case r.Value == limit:
		return fmt.Sprintf("%s: %s is too much, it must be less than that", name, value)
	case least:
		return fmt.Sprintf("%s: %s is less than the %s this needs", name, value, bound)
	}
	return fmt.Sprintf("%s: %s is more than the %s this can do", name, value, bound)
}

// Show is what the fields of figures show for a plan, in its units: path to text.
// A figure that may be left out and is, is not in it.
func Show(p plan.Plan) map[string]string {
	out := map[string]string{}
	tree, err := json.Decode(p.JSON())
	if err != nil {
		return out // of a plan that is not valid
	}
	each(func(pattern string, f *Field) {
		if f.Kind != Length && f.Kind != Number {
			return
		}
		places(tree, pattern, func(path string, v any) any {
			number, _ := v.(json.Number)
			if n, err := number.Float(); err == nil && (n != 0 || !f.Optional) {
				out[path] = f.show(n, p.Units)
			}
			return v
		})
	})
	return out
}

func (f *Field) show(v float64, system string) string {
	switch {
	case f.Kind == Number:
		return strconv.FormatFloat(v, 'f', -1, 64)
	case f.Form == "":
		return units.Label(v, system)
	case f.Form == Short:
		return units.LabelShort(v, system)
	}
	return units.LabelQuantity(f.Form, v, system)
}
