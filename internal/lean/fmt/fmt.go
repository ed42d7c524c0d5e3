// Package fmt puts values into sentences: the part of fmt that this program's
// sentences need, without the rest.
//
// Package fmt brings the file system, the clock and the runtime's metrics into a
// program that never uses them: 59 kB more for a visitor of the page to download
// before the first answer. Hence this package, whose verbs mean what they mean
// in fmt:
//
//	%s  text, an error, or a value with a String method
//	%q  text, quoted
//	%d  a whole number; %03d pads it with zeros
//	%v  any of the above, true or false, or a number in its shortest form
//	%g  a number in its shortest form
//	%.2f  a number with that many decimals
//	%w  an error that is wrapped (Errorf only)
//	%%  a percent sign
//
// Anything else, and a missing or spare argument, shows up in the sentence in
// fmt's manner, "%!d(string)". The Makefile tells go vet of Sprintf; of Errorf it
// cannot be told, as it would refuse %w.
package fmt

import (
	"errors"
	"reflect"
	"strconv"
)

// Sprintf puts args into the verbs of format.
func Sprintf(format string, args ...any) string {
	text, _ := put(format, args)
	return text
}

// Errorf is Sprintf as an error. The error given to %w is found by errors.Is and
// errors.As; there can be one.
func Errorf(format string, args ...any) error {
	text, cause := put(format, args)
	if cause == nil {
		return errors.New(text)
	}
	return &wrapped{text, cause}
}

type wrapped struct {
	text  string
	cause error
}

func (w *wrapped) Error() string { return w.text }
func (w *wrapped) Unwrap() error { return w.cause }

// put also returns the last error that was given to %w.
func put(format string, args []any) (string, error) {
	var cause error
	out := make([]byte, 0, 2*len(format))
	next := 0
	for i := 0; i < len(format); i++ {
		if format[i] != '%' {
			out = append(out, format[i])
			continue
		}
		start := i
		i++
		width, decimals := 0, -1
		for ; i < len(format) && format[i] >= '0' && format[i] <= '9'; i++ {
			width = 10*width + int(format[i]-'0')
		}
		if i < len(format) && format[i] == '.' {
			decimals = 0
			for i++; i < len(format) && format[i] >= '0' && format[i] <= '9'; i++ {
				decimals = 10*decimals + int(format[i]-'0')
			}
		}
		switch {
		case i == len(format):
			return string(append(out, "%!(NOVERB)"...)), cause
		case format[i] == '%':
			out = append(out, '%')
			continue
		case next == len(args):
			out = append(append(append(out, "%!"...), format[i]), "(MISSING)"...)
			continue
		}
		v := args[next]
		next++
		verb := format[i]
		if verb == 'w' {
			err, ok := v.(error)
			if ok {
				cause, verb = err, 's'
			}
		}
		padded := i > start+1 && format[start+1] == '0'
		out = one(out, verb, v, width, decimals, padded)
	}
	if next < len(args) {
		out = append(out, "%!(EXTRA)"...)
	}
	return string(out), cause
}

// one appends one value.
func one(out []byte, verb byte, v any, width, decimals int, padded bool) []byte {
	if width > 0 && !(verb == 'd' && padded) {
		return bad(out, verb, v)
	}
	if text, ok := textOf(v); ok {
		switch verb {
		case 's', 'v':
			return append(out, text...)
		case 'q':
			return strconv.AppendQuote(out, text)
		}
		return bad(out, verb, v)
	}
	r := reflect.ValueOf(v)
	switch {
	case !r.IsValid():
		return append(out, "<nil>"...)
	case r.CanInt() && (verb == 'd' || verb == 'v'):
		n := r.Int()
		if n < 0 {
			out = append(out, '-')
			width--
		}
		digits := strconv.FormatUint(magnitude(n), 10)
		for range width - len(digits) {
			out = append(out, '0')
		}
		return append(out, digits...)
	case r.CanFloat() && (verb == 'f' || verb == 'g' || verb == 'v'):
		bits := r.Type().Bits()
		if verb == 'v' {
			verb = 'g'
		}
		if verb == 'f' && decimals < 0 {
			decimals = 6
		}
		return strconv.AppendFloat(out, r.Float(), verb, decimals, bits)
	case r.Kind() == reflect.Bool && verb == 'v':
		return strconv.AppendBool(out, r.Bool())
	}
	return bad(out, verb, v)
}

func magnitude(n int64) uint64 {
	if n < 0 {
		return -uint64(n)
	}
	return uint64(n)
}

// textOf is the text of what has one.
func textOf(v any) (string, bool) {
	switch v := v.(type) {
	case string:
		return v, true
	case error:
		return v.Error(), true
	case interface{ String() string }:
		return v.String(), true
	}
	if r := reflect.ValueOf(v); r.Kind() == reflect.String {
		return r.String(), true
	}
	return "", false
}

// bad marks a value that its verb does not take.
func bad(out []byte, verb byte, v any) []byte {
	out = append(append(append(out, "%!"...), verb), '(')
	if t := reflect.TypeOf(v); t != nil {
		out = append(out, t.String()...)
	} else {
		out = append(out, "<nil>"...)
	}
	return append(out, ')')
}
