// Package json reads and writes JSON for the plan, the report and the page's
// requests. It does what encoding/json does, byte for byte and error for error
// where this program could tell, for the types that this program has; its tests
// hold it against that package. It is here for its size: encoding/json, and
// package fmt with it, would add a fifth to what a visitor of the page downloads
// before the first answer.
//
// What may differ between readers of JSON is as in encoding/json, but for members
// of one object with the same name, which are refused: nobody could tell which one
// was meant. Bytes that are not UTF-8, and halves of surrogate pairs, are read as
// U+FFFD; numbers keep their text. More than MaxDepth levels are refused, which are
// fewer than there.
package json

import (
	"io"
	"strconv"
	"unicode/utf16"
	"unicode/utf8"
)

// MaxDepth is how deep lists and objects may lie in one another.
// A plan in a request takes 6 levels; a browser's stack gives out within thousands,
// and with it the program.
const MaxDepth = 64

// Number is a number as it was written.
type Number string

// Float is the nearest float64; the error is strconv's, for numbers too large.
func (n Number) Float() (float64, error) { return strconv.ParseFloat(string(n), 64) }

// MarshalJSON is for encoding/json, to which a Number would be text; Encode does not ask
// for it.
func (n Number) MarshalJSON() ([]byte, error) { return []byte(n), nil }

// SyntaxError is text that is not JSON.
type SyntaxError struct {
	Offset   int  // bytes up to and including the one at fault
	Trailing bool // what was read is JSON, and this comes after it
	What     string
}

func (e *SyntaxError) Error() string { return e.What }

// Decode reads one JSON value: a map[string]any, []any, string, Number, bool or
// nil. The error is a *SyntaxError, or io.ErrUnexpectedEOF when the text ends
// before the value does.
func Decode(data []byte) (any, error) {
	d := decoder{data: data}
	v, err := d.value()
	if err != nil {
		return nil, err
	}
	if c, ok := d.peek(); ok {
		err := d.unexpected(c, "after the end")
		err.Trailing = true
		return nil, err
	}
	return v, nil
}

type decoder struct {
	data  []byte
	at    int // of the next byte
	depth int
}

// peek skips white space and returns the byte after it, without taking it.
func (d *decoder) peek() (c byte, ok bool) {
	for ; d.at < len(d.data); d.at++ {
		switch c := d.data[d.at]; c {
		case ' ', '\t', '\r', '\n':
		default:
			return c, true
		}
	}
	return 0, false
}

func (d *decoder) unexpected(c byte, where string) *SyntaxError {
	what := "a byte that is not text"
	if r, n := utf8.DecodeRune(d.data[d.at:]); r != utf8.RuneError || n > 1 {
		what = strconv.QuoteRune(r)
	}
	return &SyntaxError{Offset: d.at + 1, What: what + " is not expected " + where}
}

func (d *decoder) value() (any, error) {
	c, ok := d.peek()
	if !ok {
		return nil, io.ErrUnexpectedEOF
	}
	switch {
	case c == '{':
		return d.object()
	case c == '[':
		return d.list()
	case c == '"':
		return d.text()
	case c == '-' || isDigit(c):
		return d.number()
	case c == 't':
		return true, d.word("true")
	case c == 'f':
		return false, d.word("false")
	case c == 'n':
		return nil, d.word("null")
	}
	return nil, d.unexpected(c, "where a value begins")
}

// enter takes an opening bracket.
func (d *decoder) enter() error {
	d.at++
	d.depth++
	if d.depth > MaxDepth {
		return &SyntaxError{Offset: d.at, What: "lists and objects lie too deep in one another"}
	}
	return nil
}

// more takes what separates members: it is true after a comma, and false after
// the closing bracket, which it takes too.
func (d *decoder) more(closing byte, where string) (bool, error) {
	c, ok := d.peek()
	switch {
	case !ok:
		return false, io.ErrUnexpectedEOF
	case c == ',':
		d.at++
		return true, nil
	case c == closing:
		d.at++
		d.depth--
		return false, nil
	}
	return false, d.unexpected(c, where)
}

func (d *decoder) list() (any, error) {
	if err := d.enter(); err != nil {
		return nil, err
	}
	out := []any{}
	if c, ok := d.peek(); ok && c == ']' {
		_, err := d.more(']', "")
		return out, err
	}
	for {
		v, err := d.value()
		if err != nil {
			return nil, err
		}
		out = append(out, v)
		if more, err := d.more(']', "in a list after a value"); err != nil || !more {
			return out, err
		}
	}
}

func (d *decoder) object() (any, error) {
	if err := d.enter(); err != nil {
		return nil, err
	}
	out := map[string]any{}
	if c, ok := d.peek(); ok && c == '}' {
		_, err := d.more('}', "")
		return out, err
	}
	for {
		name, err := d.name()
		if err != nil {
			return nil, err
		}
		if _, twice := out[name]; twice {
			return nil, &SyntaxError{Offset: d.at, What: "the name " + strconv.Quote(name) + " is given twice"}
		}
		if out[name], err = d.value(); err != nil {
			return nil, err
		}
		if more, err := d.more('}', "in an object after a value"); err != nil || !more {
			return out, err
		}
	}
}

// name takes a member's name and its colon.
func (d *decoder) name() (string, error) {
	c, ok := d.peek()
	if !ok {
		return "", io.ErrUnexpectedEOF
	}
	if c != '"' {
		return "", d.unexpected(c, "where a name in quotes begins")
	}
	name, err := d.text()
	if err != nil {
		return "", err
	}
	if c, ok = d.peek(); !ok {
		return "", io.ErrUnexpectedEOF
	}
	if c != ':' {
		return "", d.unexpected(c, "after a name")
	}
	d.at++
	return name, nil
}

// word takes one of the three words of JSON.
func (d *decoder) word(w string) error {
	for i := range len(w) {
		if d.at == len(d.data) {
			return io.ErrUnexpectedEOF
		}
		if c := d.data[d.at]; c != w[i] {
			return d.unexpected(c, "in "+w)
		}
		d.at++
	}
	return nil
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

func (d *decoder) number() (any, error) {
	start := d.at
	if d.data[d.at] == '-' {
		d.at++
	}
	if d.at < len(d.data) && d.data[d.at] == '0' {
		d.at++
	} else if err := d.digits(); err != nil {
		return nil, err
	}
	if d.at < len(d.data) && d.data[d.at] == '.' {
		d.at++
		if err := d.digits(); err != nil {
			return nil, err
		}
	}
	if d.at < len(d.data) && d.data[d.at]|' ' == 'e' {
		d.at++
		if d.at < len(d.data) && (d.data[d.at] == '+' || d.data[d.at] == '-') {
			d.at++
		}
		if err := d.digits(); err != nil {
			return nil, err
		}
	}
	return Number(d.data[start:d.at]), nil
}

// digits takes one digit or more.
func (d *decoder) digits() error {
	start := d.at
	for d.at < len(d.data) && isDigit(d.data[d.at]) {
		d.at++
	}
	switch {
	case d.at > start:
		return nil
	case d.at == len(d.data):
		return io.ErrUnexpectedEOF
	}
	return d.unexpected(d.data[d.at], "in a number")
}

// text takes a string in quotes.
func (d *decoder) text() (string, error) {
	d.at++
	start := d.at
	for d.at < len(d.data) {
		switch c := d.data[d.at]; {
		case c == '"':
			d.at++
			return string(d.data[start : d.at-1]), nil
		case c == '\\' || c < ' ' || c >= utf8.RuneSelf:
			return d.decoded(append([]byte{}, d.data[start:d.at]...))
		}
		d.at++
	}
	return "", io.ErrUnexpectedEOF
}

// decoded takes the rest of a string that holds more than plain ASCII.
func (d *decoder) decoded(out []byte) (string, error) {
	for d.at < len(d.data) {
		switch c := d.data[d.at]; {
		case c == '"':
			d.at++
			return string(out), nil
		case c == '\\':
			var err error
			if out, err = d.escape(out); err != nil {
				return "", err
			}
		case c < ' ':
			return "", &SyntaxError{Offset: d.at + 1, What: "a line break or other control character is not expected in text"}
		case c < utf8.RuneSelf:
			out = append(out, c)
			d.at++
		default:
			r, n := utf8.DecodeRune(d.data[d.at:])
			out = utf8.AppendRune(out, r)
			d.at += n
		}
	}
	return "", io.ErrUnexpectedEOF
}

// escape takes a backslash and what it stands for.
func (d *decoder) escape(out []byte) ([]byte, error) {
	d.at++
	if d.at == len(d.data) {
		return nil, io.ErrUnexpectedEOF
	}
	c := d.data[d.at]
	switch c {
	case '"', '\\', '/':
	case 'b':
		c = '\b'
	case 'f':
		c = '\f'
	case 'n':
		c = '\n'
	case 'r':
		c = '\r'
	case 't':
		c = '\t'
	case 'u':
		d.at++
		r, err := d.fourHex()
		if err != nil {
			return nil, err
		}
		if utf16.IsSurrogate(r) {
			r = d.pair(r)
		}
		return utf8.AppendRune(out, r), nil
	default:
		return nil, d.unexpected(c, "after a backslash")
	}
	d.at++
	return append(out, c), nil
}

// pair joins half of a surrogate pair to the other half, when that follows.
func (d *decoder) pair(first rune) rune {
	rest := *d
	if len(d.data)-d.at >= 6 && d.data[d.at] == '\\' && d.data[d.at+1] == 'u' {
		rest.at += 2
		if second, err := rest.fourHex(); err == nil {
			if r := utf16.DecodeRune(first, second); r != utf8.RuneError {
				d.at = rest.at
				return r
			}
		}
	}
	return utf8.RuneError
}

func (d *decoder) fourHex() (rune, error) {
	r := rune(0)
	for range 4 {
		if d.at == len(d.data) {
			return 0, io.ErrUnexpectedEOF
		}
		c := d.data[d.at]
		switch {
		case isDigit(c):
			r = r<<4 | rune(c-'0')
		case c|' ' >= 'a' && c|' ' <= 'f':
			r = r<<4 | rune(c|' '-'a'+10)
		default:
			return 0, d.unexpected(c, "after \\u, where four hexadecimal digits stand")
		}
		d.at++
	}
	return r, nil
}
