package form

import (
	"math"
	"strconv"
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/lean/json"
	"wideberth/internal/sim/plan"
	"wideberth/internal/units"
)

// Read puts numbers in the place of what was typed: in a plan as
// json.Decode has read it, a figure may be the text of its field. Blank text
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
			return json.Number(strconv.FormatFloat(n, 'f', -1, 64))
		})
	})
	return first
}

func (f *Field) read(typed, system string) (float64, error) {
	switch {
	case f.Kind == Number:
		v, err := strconv.ParseFloat(strings.Replace(typed, ",", ".", 1), 64)
		if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
			return 0, fmt.Errorf("%s: “%s” is not a number of %s", f.Label, fmt.Clip(typed), f.Unit)
		}
		return v, nil
	case f.Form == "" || f.Form == Short:
		v, err := units.ParseLength(typed, system)
		return math.Round(v*1e4) / 1e4, err // to 0.1 mm, as links keep it
	}
	return units.ParseQuantity(f.Form, typed, system)
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
