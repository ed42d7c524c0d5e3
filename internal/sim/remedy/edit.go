package remedy

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/plan"
)

// Edit is one change of a plan: a number set, or an item of a list removed.
type Edit struct {
	// Path names the number as errors do, such as players[1].height; with Remove,
	// the item, such as hung[0].
	Path   string  `json:"path"`
	Value  float64 `json:"value"` // in the unit of the field
	Remove bool    `json:"remove,omitempty"`
}

// Apply returns the plan, its defaults filled in, with the edits made one after
// another. The plan that was given is not changed. An edit whose path leads
// nowhere is an error; whether the result is valid is for Validate to say.
func Apply(p plan.Plan, edits []Edit) (plan.Plan, error) {
	p = p.WithDefaults() // shares nothing with what was given
	for _, e := range edits {
		if err := e.apply(reflect.ValueOf(&p).Elem()); err != nil {
			return plan.Plan{}, err
		}
	}
	return p, nil
}

func (e Edit) apply(at reflect.Value) error {
	lost := fmt.Errorf("%q leads to no number of the plan", e.Path)
	steps := strings.Split(strings.ReplaceAll(e.Path, "[", ".["), ".")
	for i, step := range steps {
		for at.Kind() == reflect.Pointer {
			if at.IsNil() {
				return lost
			}
			at = at.Elem()
		}
		inner, isIndex := strings.CutPrefix(step, "[")
		if !isIndex {
			if at = member(at, step); !at.IsValid() {
				return lost
			}
			continue
		}
		n, err := strconv.Atoi(strings.TrimSuffix(inner, "]"))
		if err != nil || at.Kind() != reflect.Slice && at.Kind() != reflect.Array || n < 0 || n >= at.Len() {
			return lost
		}
		if e.Remove && i == len(steps)-1 {
			if at.Kind() != reflect.Slice {
				return lost
			}
			at.Set(reflect.AppendSlice(at.Slice3(0, n, n), at.Slice(n+1, at.Len())))
			return nil
		}
		at = at.Index(n)
	}
	if e.Remove || at.Kind() != reflect.Float64 || !at.CanSet() {
		return lost
	}
	at.SetFloat(e.Value)
	return nil
}

// member returns the field of a struct with a name in JSON; the zero Value when
// there is none.
func member(v reflect.Value, name string) reflect.Value {
	if v.Kind() != reflect.Struct {
		return reflect.Value{}
	}
	t := v.Type()
	for i := range t.NumField() {
		if tag, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ","); tag == name {
			return v.Field(i)
		}
	}
	return reflect.Value{}
}

// indexOf returns the place of a name in a list of the plan.
func indexOf[T any, N comparable](list []T, name N, nameOf func(T) N) int {
	return slices.IndexFunc(list, func(x T) bool { return nameOf(x) == name })
}

// path writes a path such as tees[0].x.
func path(list string, i int, rest string) string {
	return list + "[" + strconv.Itoa(i) + "]" + rest
}
