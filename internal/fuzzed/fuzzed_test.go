package fuzzed

import (
	"math"
	"math/rand/v2"
	"os"
	"reflect"
	"testing"
)

func never() bool { return false }

// every has an argument of each kind that a target has.
var every = []any{"a\"\x00\xffé\n", []byte("b\xfe"), 1.5, math.Inf(-1), math.Copysign(0, -1), float32(0.1), -7, int64(math.MinInt64), uint64(math.MaxUint64), uint8(0x81), true}

func TestFilesReadAsTheyWereWritten(t *testing.T) {
	got, err := read(written(every))
	if err != nil || !reflect.DeepEqual(got, every) {
		t.Errorf("read(written(x)) = %#v, %v, want %#v", got, err, every)
	}
	if math.Signbit(got[4].(float64)) != true {
		t.Error("minus zero lost its sign")
	}
	engines := heading + "\nfloat64(-2.5)\nbyte('\\u0081')\nstring(\"a\")\nint(-3)\nfloat64(+Inf)\nuint64(7)\nbool(false)\n"
	want := []any{-2.5, uint8(0x81), "a", -3, math.Inf(1), uint64(7), false}
	if got, err := read(engines); err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("read(a file of the engine's) = %#v, %v, want %#v", got, err, want)
	}
	for _, bad := range []string{"", "go test fuzz v0\nint(1)", heading + "\nint", heading + "\nint(1, 2)", heading + "\ncomplex64(1)", heading + "\nint(x)"} {
		if got, err := read(bad); err == nil {
			t.Errorf("read(%q) = %v, want an error", bad, got)
		}
	}
}

// TestEveryKindIsChanged: of many inputs each argument takes many values, and most
// inputs are none of the corpus.
func TestEveryKindIsChanged(t *testing.T) {
	c := corpus{every, {"two", []byte("two"), 2.0, 2.0, 2.0, float32(2), 2, int64(2), uint64(2), uint8(2), false}}
	seen := make([]map[string]bool, len(every))
	for i := range seen {
		seen[i] = map[string]bool{}
	}
	const n = 2000
	c.many(rand.New(rand.NewPCG(1, 1)), n, t.TempDir(), never, func(input []any) bool {
		for i, v := range input {
			seen[i][written([]any{v})] = true
		}
		return true
	})
	for i, of := range seen {
		want := n / 8
		switch every[i].(type) {
		case uint8:
			want = 100
		case bool:
			want = 2
		}
		if len(of) < want {
			t.Errorf("argument %d (%T) took %d values, want at least %d", i, every[i], len(of), want)
		}
	}
}

// TestFindsAreKept: what is answered false, panics or ends the test is written down, and
// nothing else is asked after it.
func TestFindsAreKept(t *testing.T) {
	for name, fault := range map[string]func() bool{
		"false": func() bool { return false },
		"panic": func() bool { panic("a fault") },
	} {
		dir := t.TempDir()
		var found []any
		func() {
			defer func() { _ = recover() }()
			corpus{{"abc", 1}}.many(rand.New(rand.NewPCG(1, 1)), 1000, dir, never, func(input []any) bool {
				if found != nil {
					t.Errorf("%s: %v is asked about after the find", name, input)
				}
				if input[1].(int) >= 0 {
					return true
				}
				found = input
				return fault()
			})
		}()
		if got := kept(dir, 10); len(got) > 0 {
			t.Errorf("%s: %v is taken for no longer than 10 bytes", name, got)
		}
		if got := kept(dir, 1000); found == nil || len(got) != 1 || !reflect.DeepEqual(got[0], found) {
			t.Errorf("%s: %v is kept, want %v", name, got, found)
		}
	}
	dir, asked := t.TempDir(), 0
	n := corpus{{"abc"}}.many(rand.New(rand.NewPCG(1, 1)), 1000, dir, func() bool { return asked == 7 }, func([]any) bool { asked++; return true })
	if n != 7 || asked != 7 {
		t.Errorf("%d are asked and %d counted, want the 7 that are enough", asked, n)
	}
	if files, _ := os.ReadDir(dir); len(files) != 0 {
		t.Errorf("%v are kept without a find", files)
	}
}

// FuzzText holds the mutator itself: it never fails, whatever it is given.
func FuzzText(engine *testing.F) {
	f := New(engine)
	f.Add("{\"room\":12.5}", uint64(1))
	f.Add("", uint64(2))
	f.Fuzz(func(t *testing.T, s string, by uint64) {
		if got := Text(rand.New(rand.NewPCG(by, 1)), s); len(got) > 2*len(s)+100 {
			t.Errorf("Text(%q) = %q, want no more than twice of it", s, got)
		}
	})
}
