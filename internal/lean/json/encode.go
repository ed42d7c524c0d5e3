package json

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Encode writes a value as compact JSON with the bytes of json.Marshal: members
// in the order of the struct's fields, map keys sorted, numbers in their
// shortest form, and <, >, & and the line separators U+2028 and U+2029 escaped,
// so that JSON may stand in a page. It takes bools, whole numbers, floats,
// strings, Number, lists, arrays, maps with string keys, pointers, interfaces
// and structs, also embedded ones, with the tags name, omitempty and "-". Anything
// else (other options, embedded pointers, two members of one name, []byte, NaN and
// the infinities) is an error that says which. A method of the value is never asked.
func Encode(v any) ([]byte, error) {
	e := encoder{out: make([]byte, 0, 1<<10)}
	if err := e.value(reflect.ValueOf(v)); err != nil {
		return nil, err
	}
	return e.out, nil
}

type encoder struct{ out []byte }

// text writes s as it is. (While garbage is collected, in WebAssembly through most of an
// answer, to store a list's address costs more than to copy a word into the list; a list
// that is only made longer in its place has none stored.)
func (e *encoder) text(s string) {
	n := len(e.out)
	if cap(e.out)-n < len(s) {
		e.out = slices.Grow(e.out, len(s))
	}
	e.out = e.out[:n+len(s)]
	copy(e.out[n:], s)
}

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
			return errors.New("json: a list of bytes has no agreed form")
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
		return errors.New("json: " + v.Type().String() + " has no JSON")
	}
	return nil
}

var numberType = reflect.TypeFor[Number]()

func (e *encoder) number(s string) error {
	if s == "" {
		s = "0" // as encoding/json has it
	}
	if n, err := Decode([]byte(s)); err != nil || n != any(Number(s)) {
		return errors.New("json: " + strconv.Quote(s) + " is not a number")
	}
	e.text(s)
	return nil
}

// float writes a number as JavaScript would: with an exponent only when it is
// very large or very small.
func (e *encoder) float(f float64, bits int) error {
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return errors.New("json: " + strconv.FormatFloat(f, 'g', -1, 64) + " has no JSON")
	}
	format := byte('f')
	if a := math.Abs(f); a != 0 {
		if bits == 64 && (a < 1e-6 || a >= 1e21) || bits == 32 && (float32(a) < 1e-6 || float32(a) >= 1e21) {
			format = 'e'
		}
	}
	var room [32]byte // for the longest number
	e.text(string(strconv.AppendFloat(room[:0], f, format, -1, bits)))
	if n := len(e.out); format == 'e' && n >= 4 && e.out[n-4] == 'e' && e.out[n-3] == '-' && e.out[n-2] == '0' {
		e.out[n-2] = e.out[n-1] // e-09 is written e-9
		e.out = e.out[:n-1]
	}
	return nil
}

func (e *encoder) quoted(s string) {
	e.text(`"`)
	from := 0 // of what is not written yet
	for i := 0; i < len(s); {
		if c := s[i]; isLetter(c) || isDigit(c) || c == ' ' {
			i++ // most of what there is
			continue
		}
		r, n := utf8.DecodeRuneInString(s[i:])
		if escape := escapeOf(r, n); escape != "" {
			e.text(s[from:i])
			e.text(escape)
			from = i + n
		}
		i += n
	}
	e.text(s[from:])
	e.text(`"`)
}

func isLetter(c byte) bool { return c|' ' >= 'a' && c|' ' <= 'z' }

// escapeOf is what stands for a character of n bytes in text, or nothing when
// the character itself does.
func escapeOf(r rune, n int) string {
	switch r {
	case '"':
		return `\"`
	case '\\':
		return `\\`
	case '\b':
		return `\b`
	case '\f':
		return `\f`
	case '\n':
		return `\n`
	case '\r':
		return `\r`
	case '\t':
		return `\t`
	case '\u2028':
		return `\u2028`
	case '\u2029':
		return `\u2029`
	case utf8.RuneError:
		if n == 1 { // not UTF-8
			return `\ufffd`
		}
	}
	if r < ' ' || r == '<' || r == '>' || r == '&' {
		const digits = "0123456789abcdef"
		return `\u00` + digits[r>>4:r>>4+1] + digits[r&0xf:r&0xf+1]
	}
	return ""
}

// before writes what stands before member i: the opening bracket or a comma.
func (e *encoder) before(i int, opening string) {
	if i > 0 {
		opening = ","
	}
	e.text(opening)
}

// after writes what stands after n members.
func (e *encoder) after(n int, opening, closing string) {
	if n == 0 {
		e.text(opening)
	}
	e.text(closing)
}

func (e *encoder) list(v reflect.Value) error {
	for i := range v.Len() {
		e.before(i, "[")
		if err := e.value(v.Index(i)); err != nil {
			return err
		}
	}
	e.after(v.Len(), "[", "]")
	return nil
}

func (e *encoder) mapping(v reflect.Value) error {
	if v.Type().Key().Kind() != reflect.String {
		return errors.New("json: " + v.Type().String() + " has keys that are not text")
	}
	if v.IsNil() {
		e.text("null")
		return nil
	}
	keys := v.MapKeys()
	slices.SortStableFunc(keys, func(a, b reflect.Value) int { return strings.Compare(a.String(), b.String()) })
	for i, k := range keys {
		e.before(i, "{")
		e.quoted(k.String())
		e.text(":")
		if err := e.value(v.MapIndex(k)); err != nil {
			return err
		}
	}
	e.after(len(keys), "{", "}")
	return nil
}

func (e *encoder) object(v reflect.Value) error {
	fields, err := fieldsOf(v.Type())
	if err != nil {
		return err
	}
	written := 0
	for _, f := range fields {
		member := f.of(v)
		if f.omitEmpty && isEmpty(member) {
			continue
		}
		e.before(written, "{")
		written++
		e.text(f.quoted)
		if err := e.value(member); err != nil {
			return err
		}
	}
	e.after(written, "{", "}")
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
