package form

import (
	"math"
	"strconv"
	"strings"

	"wideberth/internal/sim/jsontext"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/say"
)

// Read puts numbers in the place of what was typed: in a plan as
// jsontext.Decode has read it, a figure may be the text of its field. Blank text
// takes an optional figure out. The first that cannot be read is a
// *plan.FieldError; what else may be wrong with the plan is left to
// plan.FromTree.
func Read(tree any) error {
	object, _ := tree.(map[string]any)
	units, _ := object["units"].(string)
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
			n, err := f.read(typed, units)
			if err != nil {
				if first == nil {
					first = &plan.FieldError{Field: path, Message: err.Error()}
				}
				return v
			}
			return jsontext.Number(strconv.FormatFloat(n, 'f', -1, 64))
		})
	})
	return first
}

func (f *Field) read(typed, units string) (float64, error) {
	switch {
	case f.Kind == Number:
		v, err := strconv.ParseFloat(strings.Replace(typed, ",", ".", 1), 64)
		if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
			return 0, say.Errorf("%s: “%s” is not a number of %s", f.Label, say.Clip(typed), f.Unit)
		}
		return v, nil
	case f.Form == "" || f.Form == Short:
		v, err := plan.ParseLength(typed, units)
		return math.Round(v*1e4) / 1e4, err // to 0.1 mm, as links keep it
	}
	return plan.ParseQuantity(f.Form, typed, units)
}

// Show is what the fields of figures show for a plan, in its units: path to text.
// A figure that may be left out and is, is not in it.
func Show(p plan.Plan) map[string]string {
	out := map[string]string{}
	tree, err := jsontext.Decode(p.JSON())
	if err != nil {
		return out // of a plan that is not valid
	}
	each(func(pattern string, f *Field) {
		if f.Kind != Length && f.Kind != Number {
			return
		}
		places(tree, pattern, func(path string, v any) any {
			number, _ := v.(jsontext.Number)
			if n, err := number.Float(); err == nil && (n != 0 || !f.Optional) {
				out[path] = f.show(n, p.Units)
			}
			return v
		})
	})
	return out
}

func (f *Field) show(v float64, units string) string {
	switch {
	case f.Kind == Number:
		return strconv.FormatFloat(v, 'f', -1, 64)
	case f.Form == "":
		return plan.Label(v, units)
	case f.Form == Short:
		return plan.LabelShort(v, units)
	}
	return plan.LabelQuantity(f.Form, v, units)
}
