package plantest

import (
	"bytes"
	"encoding/json"
	"errors"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"wideberth/internal/sim/plan"
)

// Walk holds every number, text and switch of a document to one rule: whatever stands
// in its place, it is taken as it was given, or refused with a sentence that names the
// field; left out it has its default. full is a document in which everything is given
// and nothing is as by default, parse reads one and returns it with its defaults.
// defaults has, by path, what is not 0, "" or false where it is left out; names has
// what a sentence calls a field that goes by another name.
func Walk(t *testing.T, full any, parse func(data []byte) (any, error), defaults map[string]any, names map[string]string) {
	t.Helper()
	whole := encode(t, full)
	if _, err := parse(whole); err != nil {
		t.Fatalf("the document to walk is refused: %v\n%s", err, whole)
	}
	// What no text may be: too long, on two lines, with what nobody sees or what turns it about.
	never := []string{`"` + strings.Repeat("w", 10_000) + `"`, `"a\nb"`, `"a\u200bb"`, `"a\u202eb"`}
	given := map[reflect.Kind][]string{
		reflect.Float64: {``, `null`, `0`, `-0.0`, `-1`, `1e308`, `-1e308`, `1e400`, `1e-400`, `"5"`, `"NaN"`, `true`, `[]`, `[1]`, `{}`},
		reflect.String:  {``, `null`, `""`, `" "`, `5`, `true`, `[]`, `{}`},
		reflect.Bool:    {``, `null`, `0`, `1`, `"true"`, `""`, `[]`},
	}
	given[reflect.String] = append(given[reflect.String], never...)
	for _, v := range values(reflect.ValueOf(full), "") {
		kinds, ok := given[v.kind]
		if !ok {
			continue // the version, which has tests of its own
		}
		if v.zero {
			t.Errorf("%s is not given in the document to walk", v.path)
		}
		if v.kind == reflect.String && !free(v.path) {
			kinds = append(slices.Clone(kinds), `"sideways"`)
		}
		for _, text := range kinds {
			back, err := parse(replaced(t, whole, v.path, text))
			short := text[:min(len(text), 20)]
			if err != nil {
				wrong, ok := errors.AsType[*plan.FieldError](err)
				if !ok || !strings.HasPrefix(v.path, wrong.Field) || !named(wrong.Message, v.path, names) || len(wrong.Message) > 300 {
					t.Errorf("%s given as %q: %v, want a sentence that names it", v.path, short, err)
				}
				continue
			}
			if slices.Contains(never, text) || text == `"sideways"` {
				t.Errorf("%s given as %q is taken", v.path, short)
			}
			got := find(t, encode(t, back), v.path)
			want := any(nil)
			switch usual, has := defaults[v.path]; {
			case text == "" || text == "null" || text == `""`:
				if has {
					want = usual
				}
			default:
				if err := json.Unmarshal([]byte(text), &want); err != nil {
					t.Fatal(err)
				}
			}
			if none(want) {
				want = nil // what is written where there is none
			}
			if none(got) {
				got = nil
			}
			if !reflect.DeepEqual(got, want) {
				t.Errorf("%s given as %q is taken as %v, want %v or a sentence", v.path, short, got, want)
			}
		}
	}
}

// free is true of the texts that are not a choice.
func free(path string) bool {
	return strings.HasSuffix(path, "name") || strings.HasSuffix(path, "title") || strings.HasSuffix(path, "item")
}

// none is true of a number, a text and a switch that may be left out where it is so.
func none(v any) bool { return v == nil || v == 0.0 || v == "" || v == false }

// named reports whether a sentence names the field of a path: by the path, or by its
// last name, in words.
func named(message, path string, names map[string]string) bool {
	name := regexp.MustCompile(`\[\d+\]`).ReplaceAllString(path, "")
	name = name[strings.LastIndex(name, ".")+1:]
	words := strings.ToLower(regexp.MustCompile(`[A-Z]`).ReplaceAllString(name, " $0"))
	for _, one := range []string{path, words, names[name], path[:max(strings.LastIndex(path, "["), 0)]} {
		if one != "" && strings.Contains(message, one) {
			return true
		}
	}
	return false
}

type value struct {
	path string
	kind reflect.Kind
	zero bool
}

// values lists the numbers, texts and switches of a document; of a list the first item.
func values(v reflect.Value, path string) (out []value) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			return []value{{path, reflect.String, true}}
		}
		return values(v.Elem(), path)
	case reflect.Struct:
		for i := range v.NumField() {
			name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
			out = append(out, values(v.Field(i), strings.TrimPrefix(path+"."+name, "."))...)
		}
		return out
	case reflect.Slice:
		if v.Len() == 0 {
			return []value{{path, reflect.String, true}}
		}
		return values(v.Index(0), path+"[0]")
	case reflect.Array:
		for i := range v.Len() {
			out = append(out, values(v.Index(i), path+"["+strconv.Itoa(i)+"]")...)
		}
		return out
	}
	return []value{{path, v.Kind(), v.IsZero() && !strings.HasSuffix(path, "]")}}
}

func encode(t *testing.T, v any) []byte {
	t.Helper()
	data, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// steps takes a path apart: names and places in lists.
func steps(path string) (out []any) {
	for _, s := range strings.FieldsFunc(path, func(r rune) bool { return strings.ContainsRune(".[]", r) }) {
		if i, err := strconv.Atoi(s); err == nil {
			out = append(out, i)
		} else {
			out = append(out, s)
		}
	}
	return out
}

// find is what lies at a path of a document, nil for nothing.
func find(t *testing.T, data []byte, path string) (v any) {
	t.Helper()
	if err := json.Unmarshal(data, &v); err != nil {
		t.Fatal(err)
	}
	for _, step := range steps(path) {
		switch group := v.(type) {
		case map[string]any:
			v = group[step.(string)]
		case []any:
			if step.(int) >= len(group) {
				return nil
			}
			v = group[step.(int)]
		default:
			return nil
		}
	}
	return v
}

// replaced is a document with a text in the place of a value; "" takes the value out.
func replaced(t *testing.T, data []byte, path, text string) []byte {
	t.Helper()
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	var tree any
	if err := d.Decode(&tree); err != nil {
		t.Fatal(err)
	}
	return encode(t, put(tree, steps(path), text))
}

func put(tree any, path []any, text string) any {
	if len(path) == 0 {
		return json.RawMessage(text)
	}
	last := len(path) == 1 && text == ""
	switch group := tree.(type) {
	case map[string]any:
		name := path[0].(string)
		if last {
			delete(group, name)
			return group
		}
		group[name] = put(group[name], path[1:], text)
	case []any:
		i := path[0].(int)
		if last {
			return append(group[:i:i], group[i+1:]...)
		}
		group[i] = put(group[i], path[1:], text)
	}
	return tree
}
