package jsontext

import (
	"errors"
	"reflect"
	"strings"
)

// field is one member of a struct in JSON.
type field struct {
	index     int // in the struct
	name      string
	omitEmpty bool
}

// fieldsOf reads the tags of a struct.
func fieldsOf(t reflect.Type) ([]field, error) {
	out := make([]field, 0, t.NumField())
	for i := range t.NumField() {
		f := t.Field(i)
		tag := f.Tag.Get("json")
		if f.Anonymous {
			return nil, errors.New("jsontext: " + t.String() + " embeds " + f.Name)
		}
		if !f.IsExported() || tag == "-" {
			continue
		}
		name, options, _ := strings.Cut(tag, ",")
		if name == "" {
			name = f.Name
		}
		if options != "" && options != "omitempty" {
			return nil, errors.New("jsontext: " + t.String() + "." + f.Name + " has the option " + options)
		}
		out = append(out, field{i, name, options == "omitempty"})
	}
	return out, nil
}
