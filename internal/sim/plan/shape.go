package plan

import (
	"reflect"
	"slices"
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/lean/json"
)

// checkShape compares a decoded document with the schema, which is the Go types
// of this package and their json tags: unknown fields, missing required ones
// (those not marked omitempty), wrong types and lists of the wrong length.
func checkShape(tree map[string]any) error {
	// What a plan as a whole may leave out though it is always written.
	optional := []string{"floor", "tees", "clubs", "players"}
	return checkObject(tree, reflect.TypeFor[Plan](), "", optional)
}

func checkObject(object map[string]any, t reflect.Type, path string, optional []string) error {
	names := make([]string, 0, t.NumField())
	for i := range t.NumField() {
		name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		names = append(names, name)
	}
	unknown := make([]string, 0)
	for name := range object {
		if !slices.Contains(names, name) {
			unknown = append(unknown, name)
		}
	}
	if len(unknown) > 0 {
		at := join(path, fmt.Clip(slices.Min(unknown)))
		return fieldErrorf(at, "%s is not a field of a plan; the fields there are %s", at, strings.Join(names, ", "))
	}
	for i, name := range names {
		field := t.Field(i)
		value, present := object[name]
		if !present {
			if strings.Contains(field.Tag.Get("json"), ",omitempty") || slices.Contains(optional, name) {
				continue
			}
			return fieldErrorf(join(path, name), "%s is missing", join(path, name))
		}
		if err := checkValue(value, field.Type, join(path, name)); err != nil {
			return err
		}
		if notGiven(field) && zero(value) {
			err := fieldErrorf(join(path, name), "%s is 0, which would count as not given: leave it out, or give it a number above 0", join(path, name))
			err.Range = &Range{} // who typed it is told that 0 is too little
			return err
		}
	}
	return nil
}

// notGiven reports whether a zero of a number, or of all numbers of a place, stands for
// one that was left out and means another. Where both mean zero (a return without depth),
// the field says so by its tag zero:"same".
func notGiven(field reflect.StructField) bool {
	_, rest, _ := strings.Cut(field.Tag.Get("json"), ",")
	return rest == "omitempty" && field.Tag.Get("zero") != "same" && field.Type.Kind() != reflect.Slice
}

// zero reports whether a decoded value is the number 0 or a list of nothing else.
func zero(value any) bool {
	switch v := value.(type) {
	case json.Number:
		f, err := v.Float()
		return f == 0 && err == nil
	case []any:
		return !slices.ContainsFunc(v, func(item any) bool { return !zero(item) })
	}
	return false
}

func checkValue(value any, t reflect.Type, path string) error {
	switch t.Kind() {
	case reflect.Pointer:
		if value == nil {
			return nil
		}
		return checkValue(value, t.Elem(), path)
	case reflect.Struct:
		object, ok := value.(map[string]any)
		if !ok {
			return wrongType(path, "a group of fields in braces", value)
		}
		return checkObject(object, t, path, nil)
	case reflect.Slice, reflect.Array:
		items, ok := value.([]any)
		if !ok {
			if value == nil && t.Kind() == reflect.Slice {
				return nil
			}
			return wrongType(path, "a list", value)
		}
		if t.Kind() == reflect.Array && len(items) != t.Len() {
			return fieldErrorf(path, "%s must be a list of %d numbers, not of %d", path, t.Len(), len(items))
		}
		for i, item := range items {
			if err := checkValue(item, t.Elem(), fmt.Sprintf("%s[%d]", path, i)); err != nil {
				return err
			}
		}
		return nil
	case reflect.Interface: // a group that another package reads
		if _, ok := value.(map[string]any); !ok && value != nil {
			return wrongType(path, "a group of fields in braces", value)
		}
	case reflect.String:
		if _, ok := value.(string); !ok {
			return wrongType(path, "text", value)
		}
	case reflect.Bool:
		if _, ok := value.(bool); !ok {
			return wrongType(path, "true or false", value)
		}
	case reflect.Float64, reflect.Int:
		number, ok := value.(json.Number)
		if !ok {
			return wrongType(path, "a number", value)
		}
		if _, err := number.Float(); err != nil {
			return fieldErrorf(path, "%s is too large a number", path)
		}
	}
	return nil
}

func wrongType(path, want string, got any) error {
	return fieldErrorf(path, "%s must be %s, not %s", path, want, kindOf(got))
}

// kindOf names the type of a decoded JSON value in plain words.
func kindOf(v any) string {
	switch v.(type) {
	case nil:
		return "null"
	case bool:
		return "true or false"
	case string:
		return "text"
	case json.Number:
		return "a number"
	case []any:
		return "a list"
	}
	return "a group of fields in braces"
}

// join adds a field to a path.
func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}
