package json

import (
	"errors"
	"reflect"
	"strconv"
)

// TypeError is a value of the wrong type.
type TypeError struct {
	Path string // such as players[1].height; empty for the whole
	Got  string // "null", "bool", "number", "string", "array" or "object"
	Want string // the Go type
}

func (e *TypeError) Error() string {
	where := e.Path
	if where == "" {
		where = "the whole"
	}
	return where + " is a " + e.Got + ", which " + e.Want + " cannot hold"
}

// Fill puts what Decode read into the value that into points at, as
// json.Unmarshal would: members go by name (of the same case, which that package
// does not ask for), what has no field is passed over, null leaves everything as
// it is but pointers, lists and interfaces, which become nil; an array takes as
// many as it holds, and zeros for the rest. A *TypeError says what does not go
// where; a number too large, or not whole where it must be, is one too. Maps are
// not filled: nothing here needs it.
func Fill(tree, into any) error {
	p := reflect.ValueOf(into)
	if p.Kind() != reflect.Pointer || p.IsNil() {
		return errors.New("json: Fill needs a pointer")
	}
	return fill(tree, p.Elem(), "")
}

func fill(tree any, v reflect.Value, path string) error {
	if tree == nil {
		switch v.Kind() {
		case reflect.Pointer, reflect.Slice, reflect.Interface:
			v.SetZero()
		}
		return nil
	}
	wrong := func() error { return &TypeError{path, kindOf(tree), v.Type().String()} }
	switch v.Kind() {
	case reflect.Interface:
		if v.NumMethod() > 0 {
			return wrong()
		}
		v.Set(reflect.ValueOf(tree))
		return nil
	case reflect.Pointer:
		if v.IsNil() {
			v.Set(reflect.New(v.Type().Elem()))
		}
		return fill(tree, v.Elem(), path)
	}
	switch tree := tree.(type) {
	case bool:
		if v.Kind() != reflect.Bool {
			return wrong()
		}
		v.SetBool(tree)
	case string:
		if v.Kind() != reflect.String || v.Type() == numberType {
			return wrong()
		}
		v.SetString(tree)
	case Number:
		if !fillNumber(tree, v) {
			return wrong()
		}
	case []any:
		switch v.Kind() {
		case reflect.Slice:
			v.Set(reflect.MakeSlice(v.Type(), len(tree), len(tree)))
		case reflect.Array:
			v.SetZero()
		default:
			return wrong()
		}
		for i := range min(v.Len(), len(tree)) {
			if err := fill(tree[i], v.Index(i), path+"["+strconv.Itoa(i)+"]"); err != nil {
				return err
			}
		}
	case map[string]any:
		if v.Kind() != reflect.Struct {
			return wrong()
		}
		return fillStruct(tree, v, path)
	}
	return nil
}

// fillNumber is false when the number does not fit the type.
func fillNumber(n Number, v reflect.Value) bool {
	switch {
	case v.Type() == numberType:
		v.SetString(string(n))
	case v.CanFloat():
		f, err := strconv.ParseFloat(string(n), v.Type().Bits())
		if err != nil {
			return false
		}
		v.SetFloat(f)
	case v.CanInt():
		i, err := strconv.ParseInt(string(n), 10, v.Type().Bits())
		if err != nil {
			return false
		}
		v.SetInt(i)
	case v.CanUint():
		u, err := strconv.ParseUint(string(n), 10, v.Type().Bits())
		if err != nil {
			return false
		}
		v.SetUint(u)
	default:
		return false
	}
	return true
}

func fillStruct(tree map[string]any, v reflect.Value, path string) error {
	fields, err := fieldsOf(v.Type())
	if err != nil {
		return err
	}
	for _, f := range fields {
		member, present := tree[f.name]
		if !present {
			continue
		}
		at := f.name
		if path != "" {
			at = path + "." + f.name
		}
		if err := fill(member, f.of(v), at); err != nil {
			return err
		}
	}
	return nil
}

func kindOf(tree any) string {
	switch tree.(type) {
	case nil:
		return "null"
	case bool:
		return "bool"
	case Number:
		return "number"
	case string:
		return "string"
	case []any:
		return "array"
	}
	return "object"
}
