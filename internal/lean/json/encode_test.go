package json

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"wideberth/internal/fuzzed"
)

type word string

// everything has a field of each kind that this package takes.
type everything struct {
	Bool    bool               `json:"bool"`
	Int     int                `json:"int,omitempty"`
	Small   int8               `json:"small"`
	Uint    uint16             `json:"uint,omitempty"`
	Float   float64            `json:"float"`
	Single  float32            `json:"single,omitempty"`
	Text    string             `json:"text"`
	Word    word               `json:"word,omitempty"`
	List    []float64          `json:"list"`
	Pairs   [][2]float64       `json:"pairs,omitempty"`
	Corner  [3]float64         `json:"corner"`
	Map     map[string]float64 `json:"map,omitempty"`
	Words   map[word]string    `json:"words"`
	Inner   inner              `json:"inner,omitempty"` // a struct is never left out
	Pointer *inner             `json:"pointer,omitempty"`
	Nil     *inner             `json:"nil"`
	Any     any                `json:"any"`
	Hidden  float64            `json:"-"`
	Plain   string
	private int
	None    [0]int  `json:"none,omitempty"`
	Inners  []inner `json:"inners"`
	embedded
	Embedded
	Last int
}

type embedded struct {
	E float64 `json:"e"`
	f int
}

type Embedded struct {
	embeddedDeeper
	G []int `json:"g,omitempty"`
}

type embeddedDeeper struct{ H string }

type inner struct {
	A float64  `json:"a,omitempty"`
	B []string `json:"b"`
}

func TestEncodeLikeEncodingJSON(t *testing.T) {
	for _, tc := range []struct {
		name string
		v    any
	}{
		{"zero", everything{}},
		{"full", everything{Bool: true, Int: -5, Small: -128, Uint: 65535, Float: 0.1, Single: 0.1, Text: "a", Word: "b",
			List: []float64{}, Pairs: [][2]float64{{1, 2}, {3, 4}}, Corner: [3]float64{1, 2.5, 3},
			Map: map[string]float64{"right wall": 1, "ceiling": 2, "Beam": 3, "": 4, "é": 5, "<b>": 6}, Words: map[word]string{"z": "1", "a": "2"},
			Inner: inner{B: []string{"x"}}, Pointer: &inner{A: 1}, Any: []any{1.5, "x", nil, true}, Hidden: 1, Plain: "p", private: 1,
			Inners: []inner{{}, {A: 2}}, embedded: embedded{E: 1, f: 2}, Embedded: Embedded{embeddedDeeper{"h"}, []int{1}}, Last: 9}},
		{"pointer", &inner{A: 1}},
		{"nil", nil},
		{"nil pointer", (*inner)(nil)},
		{"nil map", map[string]int(nil)},
		{"negative zero", inner{A: math.Copysign(0, -1)}},
		{"floats", []float64{0, math.Copysign(0, -1), 1, -1.5, 1e-6, 9.99e-7, 1e-9, 1e-10, 1e-100, 1e20, 1e21, -1e21, 1e300, 123456789.125, math.MaxFloat64, math.SmallestNonzeroFloat64, 0.1 + 0.2}},
		{"singles", []float32{0, 1e-6, 9.99e-7, 1e21, 9.9e20, 0.1, 3.4e38}},
		{"controls", "\x00\x01\b\f\n\r\t\x1f\x7f\"\\/"},
		{"page", "<script>&amp;</script>"},
		{"separators", "a\u2028b\u2029c\u2030"},
		{"damaged", "a\xffb\xc3(\xed\xa0\x80"},
		{"beyond the plane", "😀 é 中"},
	} {
		t.Run(tc.name, func(t *testing.T) { compareEncode(t, tc.v) })
	}
}

func compareEncode(t *testing.T, v any) {
	t.Helper()
	want, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	got, err := Encode(v)
	if err != nil || !bytes.Equal(got, want) {
		t.Fatalf("Encode(%#v) = %v\n got %s\nwant %s", v, err, got, want)
	}
}

func TestEncodeErrors(t *testing.T) {
	for _, tc := range []struct {
		v    any
		want string
	}{
		{math.NaN(), "NaN has no JSON"},
		{[]float64{math.Inf(-1)}, "-Inf has no JSON"},
		{map[string]float32{"a": float32(math.Inf(1))}, "+Inf has no JSON"},
		{[]byte("a"), "a list of bytes has no agreed form"},
		{make(chan int), "chan int has no JSON"},
		{map[int]int{1: 1}, "map[int]int has keys that are not text"},
		{struct{ *inner }{}, "inner is embedded with a tag, or not a struct"},
		{struct {
			inner `json:"inner"`
		}{}, "inner is embedded with a tag"},
		{struct {
			inner
			C int `json:"a"`
		}{}, "has two members a"},
		{struct {
			A int `json:"a,string"`
		}{}, "A has the option string"},
		{Number("1."), `"1." is not a number`},
		{Number("one"), `"one" is not a number`},
	} {
		if _, err := Encode(tc.v); err == nil || !strings.Contains(err.Error(), tc.want) {
			t.Errorf("Encode(%v) = error %v, want one with %q", tc.v, err, tc.want)
		}
	}
}

func TestFillLikeEncodingJSON(t *testing.T) {
	for _, text := range []string{
		`{}`, `null`, `{"bool":true,"int":7,"small":-128,"uint":3,"float":1.5e3,"single":0.1,"text":"t","word":"w"}`,
		`{"list":[1,2],"pairs":[[1,2],[3]],"corner":[1,2,3,4],"unknown":{"a":[1]},"any":"free"}`,
		`{"list":[],"pairs":null,"corner":null,"inner":{"a":1,"b":["x",null]},"pointer":{"b":null},"nil":null,"inners":[{"a":1},{}]}`,
		`{"e":2,"f":3,"g":[1],"H":"h","Last":5}`, `{"list":null,"text":null,"bool":null,"Plain":"p","private":3,"Hidden":5}`,
		`{"int":1.5}`, `{"int":1e2}`, `{"small":128}`, `{"uint":-1}`, `{"float":1e999}`, `{"single":1e39}`, `{"float":"1"}`, `{"text":1}`,
		`{"bool":"true"}`, `{"list":{}}`, `{"inner":[]}`, `{"inners":[{"b":[1]}]}`, `{"pointer":true}`, `{"corner":"x"}`, `[1]`, `7`, `"x"`,
	} {
		t.Run(text, func(t *testing.T) {
			start := everything{List: []float64{9}, Corner: [3]float64{7, 8, 9}, Text: "before", Nil: &inner{A: 1}}
			want, got := start, start
			wantErr := json.Unmarshal([]byte(text), &want)
			tree, err := Decode([]byte(text))
			if err != nil {
				t.Fatal(err)
			}
			err = Fill(tree, &got)
			var type1 *TypeError
			var type2 *json.UnmarshalTypeError
			if errors.As(err, &type1) != errors.As(wantErr, &type2) {
				t.Fatalf("Fill(%s) = error %v, want error %v", text, err, wantErr)
			}
			if err != nil {
				if kind, _, _ := strings.Cut(type2.Value, " "); type1.Got != kind {
					t.Errorf("Fill(%s): Got = %q, want %q", text, type1.Got, kind)
				}
				return
			}
			if !reflect.DeepEqual(got, want) {
				t.Errorf("Fill(%s)\n got %+v\nwant %+v", text, got, want)
			}
		})
	}
}

func TestFillNamesThePath(t *testing.T) {
	tree, err := Decode([]byte(`{"inners":[{"a":1},{"b":["x",2]}]}`))
	if err != nil {
		t.Fatal(err)
	}
	var v everything
	const want = "inners[1].b[1] is a number, which string cannot hold"
	if err := Fill(tree, &v); err == nil || err.Error() != want {
		t.Errorf("Fill = error %v, want %s", err, want)
	}
	if err := Fill(tree, v); err == nil {
		t.Error("Fill of a value, not a pointer = nil, want an error")
	}
}

func FuzzEncode(engine *testing.F) {
	f := fuzzed.New(engine)
	f.Add("text", "key", 1.5, float32(0.1), 7, true)
	f.Add("<\u2028\xff>", "\x00", 1e-7, float32(1e21), -1, false)
	f.Fuzz(func(t *testing.T, text, key string, x float64, y float32, n int, yes bool) {
		if math.IsNaN(x) || math.IsInf(x, 0) || math.IsNaN(float64(y)) || math.IsInf(float64(y), 0) {
			if _, err := Encode([]any{x, y}); err == nil {
				t.Fatalf("Encode(%v, %v) = nil error, want one", x, y)
			}
			return
		}
		compareEncode(t, everything{Bool: yes, Int: n, Float: x, Single: y, Text: text, Word: word(key),
			List: []float64{x, -x}, Map: map[string]float64{key: x, text: float64(y)}, Any: map[string]any{text: key}})
	})
}

func ExampleEncode() {
	out, err := Encode(struct {
		Name      string  `json:"name"`
		Clearance float64 `json:"clearance"`
		Note      string  `json:"note,omitempty"`
	}{"7-iron", -0.042, ""})
	fmt.Println(string(out), err)
	// Output: {"name":"7-iron","clearance":-0.042} <nil>
}
