package jsontext

import (
	"errors"
	"math"
	"reflect"
	"strconv"
	"unicode/utf8"
)

// Encode writes a value as compact JSON with the bytes of json.Marshal: members
// in the order of the struct's fields, map keys sorted, numbers in their
// shortest form, and <, >, & and the line separators U+2028 and U+2029 escaped,
// so that JSON may stand in a page. It takes bools, whole numbers, floats,
// strings, Number, lists, arrays, maps with string keys, pointers, interfaces
// and structs with the tags name, omitempty and "-". Anything else (embedded
// fields, other options, []byte, NaN and the infinities) is an error that says
// which. A method of the value is never asked.
func Encode(v any) ([]byte, error) {
	e := encoder{fields: map[reflect.Type][]field{}}
	if err := e.value(reflect.ValueOf(v)); err != nil {
		return nil, err
	}
	return e.out, nil
}

type encoder struct {
	out    []byte
	fields map[reflect.Type][]field // of the structs met
}

func (e *encoder) text(s string) { e.out = append(e.out, s...) }

func (e *encoder) value(v reflect.Value) error {
	switch v.Kind() {
	case reflect.Invalid:
		e.text("null")
	case reflect.Bool:
		e.out = strconv.AppendBool(e.out, v.Bool())
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		e.out = strconv.AppendInt(e.out, v.Int(), 10)
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		e.out = strconv.AppendUint(e.out, v.Uint(), 10)
	case reflect.Float32:
		return e.float(v.Float(), 32)
	case reflect.Float64:
		return e.float(v.Float(), 64)
	case reflect.String:
		if v.Type() == numberType {
			return e.number(v.String())
		}
		e.quoted(v.String())
	case reflect.Pointer, reflect.Interface:
		return e.value(v.Elem())
	case reflect.Slice:
		if v.Type().Elem().Kind() == reflect.Uint8 {
			return errors.New("jsontext: a list of bytes has no agreed form")
		}
		if v.IsNil() {
			e.text("null")
			return nil
		}
		return e.list(v)
	case reflect.Array:
		return e.list(v)
	case reflect.Map:
		return e.mapping(v)
	case reflect.Struct:
		return e.object(v)
	default:
		return errors.New("jsontext: " + v.Type().String() + " has no JSON")
	}
	return nil
}

var numberType = reflect.TypeFor[Number]()

func (e *encoder) number(s string) error {
	if s == "" {
		s = "0" // as encoding/json has it
	}
	d := decoder{data: []byte(s)}
	if c := s[0]; c != '-' && !isDigit(c) {
		return errors.New("jsontext: " + strconv.Quote(s) + " is not a number")
	}
	if _, err := d.number(); err != nil || d.at < len(s) {
		return errors.New("jsontext: " + strconv.Quote(s) + " is not a number")
	}
	e.text(s)
	return nil
}

// float writes a number as JavaScript would: with an exponent only when it is
// very large or very small.
func (e *encoder) float(f float64, bits int) error {
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return errors.New("jsontext: " + strconv.FormatFloat(f, 'g', -1, 64) + " has no JSON")
	}
	format := byte('f')
	if a := math.Abs(f); a != 0 {
		if bits == 64 && (a < 1e-6 || a >= 1e21) || bits == 32 && (float32(a) < 1e-6 || float32(a) >= 1e21) {
			format = 'e'
		}
	}
	e.out = strconv.AppendFloat(e.out, f, format, -1, bits)
	if n := len(e.out); format == 'e' && n >= 4 && e.out[n-4] == 'e' && e.out[n-3] == '-' && e.out[n-2] == '0' {
		e.out[n-2] = e.out[n-1] // e-09 is written e-9
		e.out = e.out[:n-1]
	}
	return nil
}

const hexDigits = "0123456789abcdef"

func (e *encoder) quoted(s string) {
	e.out = append(e.out, '"')
	for i := 0; i < len(s); {
		c := s[i]
		if c >= utf8.RuneSelf {
			r, n := utf8.DecodeRuneInString(s[i:])
			switch {
			case r == utf8.RuneError && n == 1:
				e.text(`\ufffd`)
			case r == '\u2028' || r == '\u2029':
				e.text(`\u202`)
				e.out = append(e.out, hexDigits[r&0xf])
			default:
				e.text(s[i : i+n])
			}
			i += n
			continue
		}
		i++
		switch {
		case c == '"' || c == '\\':
			e.out = append(e.out, '\\', c)
		case c == '\b':
			e.text(`\b`)
		case c == '\f':
			e.text(`\f`)
		case c == '\n':
			e.text(`\n`)
		case c == '\r':
			e.text(`\r`)
		case c == '\t':
			e.text(`\t`)
		case c < ' ' || c == '<' || c == '>' || c == '&':
			e.text(`\u00`)
			e.out = append(e.out, hexDigits[c>>4], hexDigits[c&0xf])
		default:
			e.out = append(e.out, c)
		}
	}
	e.out = append(e.out, '"')
}

func (e *encoder) list(v reflect.Value) error {
	e.out = append(e.out, '[')
	for i := range v.Len() {
		if i > 0 {
			e.out = append(e.out, ',')
		}
		if err := e.value(v.Index(i)); err != nil {
			return err
		}
	}
	e.out = append(e.out, ']')
	return nil
}

func (e *encoder) mapping(v reflect.Value) error {
	if v.Type().Key().Kind() != reflect.String {
		return errors.New("jsontext: " + v.Type().String() + " has keys that are not text")
	}
	if v.IsNil() {
		e.text("null")
		return nil
	}
	keys := v.MapKeys()
	sortKeys(keys)
	e.out = append(e.out, '{')
	for i, k := range keys {
		if i > 0 {
			e.out = append(e.out, ',')
		}
		e.quoted(k.String())
		e.out = append(e.out, ':')
		if err := e.value(v.MapIndex(k)); err != nil {
			return err
		}
	}
	e.out = append(e.out, '}')
	return nil
}

// sortKeys sorts by merging halves: the general sort of package slices would be
// several times this package's weight for its one use here.
func sortKeys(keys []reflect.Value) {
	if len(keys) < 2 {
		return
	}
	left := append([]reflect.Value{}, keys[:len(keys)/2]...)
	right := keys[len(keys)/2:]
	sortKeys(left)
	sortKeys(right)
	for i := 0; len(left) > 0; i++ {
		if len(right) > 0 && right[0].String() < left[0].String() {
			keys[i], right = right[0], right[1:]
		} else {
			keys[i], left = left[0], left[1:]
		}
	}
}

func (e *encoder) object(v reflect.Value) error {
	fields, known := e.fields[v.Type()]
	if !known {
		var err error
		if fields, err = fieldsOf(v.Type()); err != nil {
			return err
		}
		e.fields[v.Type()] = fields
	}
	e.out = append(e.out, '{')
	first := true
	for _, f := range fields {
		member := v.Field(f.index)
		if f.omitEmpty && isEmpty(member) {
			continue
		}
		if !first {
			e.out = append(e.out, ',')
		}
		first = false
		e.quoted(f.name)
		e.out = append(e.out, ':')
		if err := e.value(member); err != nil {
			return err
		}
	}
	e.out = append(e.out, '}')
	return nil
}

// isEmpty is what omitempty leaves out.
func isEmpty(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Array, reflect.Map, reflect.Slice, reflect.String:
		return v.Len() == 0
	case reflect.Struct:
		return false
	}
	return v.IsZero() // of numbers, negative zero too
}
