package json

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strings"
	"testing"

	"wideberth/internal/fuzzed"
)

// oracle reads JSON with encoding/json, numbers as text.
func oracle(data []byte) (any, error) {
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.UseNumber()
	var tree any
	if err := dec.Decode(&tree); err != nil {
		return nil, err
	}
	if _, err := dec.Token(); err != io.EOF {
		return nil, errors.New("more after the end")
	}
	if depth(tree) > MaxDepth {
		return nil, errors.New("deeper than this package goes")
	}
	return ours(tree), nil
}

// depth is how deep lists and objects lie in one another.
func depth(v any) (d int) {
	switch v := v.(type) {
	case []any:
		for _, in := range v {
			d = max(d, depth(in))
		}
		return d + 1
	case map[string]any:
		for _, in := range v {
			d = max(d, depth(in))
		}
		return d + 1
	}
	return 0
}

// ours puts this package's Number for the other one's.
func ours(v any) any {
	switch v := v.(type) {
	case json.Number:
		return Number(v)
	case []any:
		for i := range v {
			v[i] = ours(v[i])
		}
	case map[string]any:
		for k := range v {
			v[k] = ours(v[k])
		}
	}
	return v
}

var texts = []string{
	``, ` `, `null`, ` true `, `false`, `nul`, `nulx`, `truefalse`, `"a"`, `"a`, `"\`, `"\u12`, `"\u12g4"`, `"\x"`,
	`0`, `-0`, `01`, `-`, `+1`, `1.`, `.5`, `1.5e`, `1e+`, `1E-7`, `-12.5e+300`, `1e999`, `1 2`, `0x10`, `1_000`, `NaN`,
	`[]`, `[ ]`, `[1,2]`, `[1,]`, `[,1]`, `[1 2]`, `[`, `[1`, `[1,`, `]`, `[[[]]]`, `[}`,
	`{}`, `{ }`, `{"a":1}`, `{"a":1,}`, `{"a"}`, `{"a" 1}`, `{a:1}`, `{1:2}`, `{"a":{"b":[{}]}}`, `{"a":1`, `{"a":`, `{"a"`, `{`, `{"`, `{]`,
	`"\"\\\/\b\f\n\r\t"`, `"\u00e9\u4e2d"`, `"\ud83d\ude00"`, `"\ud83d"`, `"\ud83dx"`, `"\ud83d\u0041"`, `"\ude00\ud83d"`, `"\uD83D\uDE00"`, `"\ud83d\ud83d\ude00"`,
	"\"caf\xc3\xa9\"", "\"\xff\xfe\"", "\"\xc3\"", "\"\xed\xa0\x80\"", "\"\xf0\x9f\x98\x80\"", "\"a\nb\"", "\"\x00\"", "\"\x7f\"", "\xef\xbb\xbf{}", "\"\u2028\"",
	"\t\r\n{ \"a\" : [ 1 , true , null ] }\n", `{"":""}`, "\u00a0[]", "[1]\x00",
}

func TestDecodeLikeEncodingJSON(t *testing.T) {
	for _, text := range append(texts, strings.Repeat("[", MaxDepth)+strings.Repeat("]", MaxDepth),
		strings.Repeat("[", MaxDepth+1)+strings.Repeat("]", MaxDepth+1), strings.Repeat(`{"a":`, 20000)) {
		t.Run(fmt.Sprintf("%.40q", text), func(t *testing.T) { compareDecode(t, []byte(text)) })
	}
}

func compareDecode(t *testing.T, data []byte) {
	t.Helper()
	got, err := Decode(data)
	if err != nil && strings.HasSuffix(err.Error(), "is given twice") {
		return // that this is so, TestDecodeErrors says
	}
	want, wantErr := oracle(data)
	if (err == nil) != (wantErr == nil) {
		t.Fatalf("Decode(%.200q) = error %v, want error %v", data, err, wantErr)
	}
	if !reflect.DeepEqual(got, want) {
		t.Fatalf("Decode(%.200q) = %#v, want %#v", data, got, want)
	}
	var syntax *SyntaxError
	switch {
	case err == nil, err == io.ErrUnexpectedEOF:
	case !errors.As(err, &syntax):
		t.Fatalf("Decode(%.200q) = error %T, want *SyntaxError or io.ErrUnexpectedEOF", data, err)
	case syntax.Offset < 1 || syntax.Offset > len(data):
		t.Fatalf("Decode(%.200q): offset %d is outside the %d bytes", data, syntax.Offset, len(data))
	}
}

func TestDecodeErrors(t *testing.T) {
	for _, tc := range []struct {
		text     string
		offset   int
		trailing bool
		what     string
	}{
		{`{"a" 1}`, 6, false, `'1' is not expected after a name`},
		{`{a:1}`, 2, false, `'a' is not expected where a name in quotes begins`},
		{`{"a":1 "b":2}`, 8, false, `'"' is not expected in an object after a value`},
		{`[1 2]`, 4, false, `'2' is not expected in a list after a value`},
		{`[1,]`, 4, false, `']' is not expected where a value begins`},
		{`nuLl`, 3, false, `'L' is not expected in null`},
		{`[1.x]`, 4, false, `'x' is not expected in a number`},
		{`["\x"]`, 4, false, `'x' is not expected after a backslash`},
		{"[\"a\nb\"]", 4, false, "a line break or other control character is not expected in text"},
		{"[\xff]", 2, false, "a byte that is not text is not expected where a value begins"},
		{`[“a”]`, 2, false, `'“' is not expected where a value begins`},
		{`{"a":1,"a":2}`, 11, false, `the name "a" is given twice`},
		{`[{"a":{"b":1,"\u0062":2}}]`, 22, false, `the name "b" is given twice`},
		{"{\"\xff\":1,\"\xfe\":2}", 11, false, "the name \"\ufffd\" is given twice"},
		{`{} x`, 4, true, `'x' is not expected after the end`},
	} {
		_, err := Decode([]byte(tc.text))
		var syntax *SyntaxError
		if !errors.As(err, &syntax) || *syntax != (SyntaxError{tc.offset, tc.trailing, tc.what}) {
			t.Errorf("Decode(%q) = error %+v, want %+v", tc.text, err, SyntaxError{tc.offset, tc.trailing, tc.what})
		}
	}
}

func FuzzDecode(engine *testing.F) {
	f := fuzzed.New(engine)
	for _, text := range texts {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		compareDecode(t, data)
		tree, err := Decode(data)
		if err != nil {
			return
		}
		out, err := Encode(tree)
		if err != nil {
			t.Fatalf("Encode(Decode(%q)) = error %v, want JSON", data, err)
		}
		if again, err := Decode(out); err != nil || !reflect.DeepEqual(again, tree) {
			t.Fatalf("Decode(%q) = %#v, %v, want %#v", out, again, err, tree)
		}
	})
}

func ExampleDecode() {
	tree, err := Decode([]byte(`{"name": "Host", "height": 1.780}`))
	fmt.Println(tree, err)
	_, err = Decode([]byte(`{"name": Host}`))
	fmt.Println(err)
	// Output:
	// map[height:1.780 name:Host] <nil>
	// 'H' is not expected where a value begins
}
