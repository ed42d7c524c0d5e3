package json

import (
	"errors"
	"reflect"
	"strings"
	"sync"
)

// field is one member of a struct in JSON.
type field struct {
	path      []int // in the struct, through embedded ones
	name      string
	quoted    string // the name in JSON, with its colon
	omitEmpty bool
}

// of finds the field in a struct.
func (f field) of(v reflect.Value) reflect.Value {
	for _, i := range f.path {
		v = v.Field(i)
	}
	return v
}

// read are the fields of the structs that were met, which no value changes.
var read struct {
	sync.Mutex
	fields map[reflect.Type][]field
}

// fieldsOf returns the fields of a struct. Those of an embedded struct count as
// its own, in its place.
func fieldsOf(t reflect.Type) ([]field, error) {
	read.Lock()
	defer read.Unlock()
	if fields, known := read.fields[t]; known {
		return fields, nil
	}
	fields, err := readFields(t)
	if err != nil {
		return nil, err
	}
	if read.fields == nil {
		read.fields = map[reflect.Type][]field{}
	}
	read.fields[t] = fields
	return fields, nil
}

// readFields reads the tags of a struct.
func readFields(t reflect.Type) ([]field, error) {
	out, err := appendFields(nil, t, nil)
	if err != nil {
		return nil, errors.New("json: " + t.String() + "." + err.Error())
	}
	taken := map[string]bool{}
	for _, f := range out {
		if taken[f.name] {
			return nil, errors.New("json: " + t.String() + " has two members " + f.name)
		}
		taken[f.name] = true
	}
	return out, nil
}

func appendFields(out []field, t reflect.Type, path []int) ([]field, error) {
	for i := range t.NumField() {
		f := t.Field(i)
		at := append(path[:len(path):len(path)], i)
		tag := f.Tag.Get("json")
		name, options, _ := strings.Cut(tag, ",")
		var err error
		switch {
		case f.Anonymous && (tag != "" || f.Type.Kind() != reflect.Struct):
			err = errors.New(f.Name + " is embedded with a tag, or not a struct")
		case f.Anonymous:
			out, err = appendFields(out, f.Type, at)
		case !f.IsExported() || tag == "-":
		case options != "" && options != "omitempty":
			err = errors.New(f.Name + " has the option " + options)
		default:
			if name == "" {
				name = f.Name
			}
			var quoted encoder
			quoted.quoted(name)
			quoted.text(":")
			out = append(out, field{at, name, string(quoted.out), options != ""})
		}
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}
