package fmt

import (
	"errors"
	"fmt"
	"io"
	"math"
	"testing"

	"wideberth/internal/fuzzed"
)

type named string

type level int

func (l level) String() string { return [...]string{"low", "high"}[l] }

// TestAgainstFmt holds every verb against the package it stands in for.
func TestAgainstFmt(t *testing.T) {
	for _, tc := range []struct {
		format string
		args   []any
	}{
		{"", nil},
		{"plain — no verb, 100 %%", nil},
		{"%s and %s", []any{"one", named("two")}},
		{"%s", []any{io.EOF}},
		{"%s, %v", []any{level(1), level(0)}},
		{"%q %q", []any{"a \"b\"\n\x00°", named("ü")}},
		{"%d %d %d %d", []any{0, -7, int64(math.MinInt64), int32(5)}},
		{"%03d|%03d|%03d|%03d", []any{7, -7, 1234, 0}},
		{"%v %v %v %v", []any{true, false, 12, "text"}},
		{"%v", []any{errors.New("cause")}},
		{"%v", []any{nil}},
		{"%.0f %.0f %.1f %.2f %.3f", []any{0.5, 1.5, -0.04, 1e9, math.Pi}},
		{"%f", []any{1.25}},
		{"%g %g %g %g %g", []any{0.1, 1e20, 1e21, -1e-5, 1e-4}},
		{"%v %v %v", []any{math.NaN(), math.Inf(1), math.Inf(-1)}},
		{"%v %v", []any{float32(0.1), 123456789.0}},
		{"%g %v", []any{0.0, math.Copysign(0, -1)}},
		{"%s", nil},
		{"50 %", nil},
	} {
		t.Run(tc.format, func(t *testing.T) {
			want := fmt.Sprintf(tc.format, tc.args...)
			if got := Sprintf(tc.format, tc.args...); got != want {
				t.Errorf("Sprintf(%q, %v) = %q, want %q", tc.format, tc.args, got, want)
			}
		})
	}
}

// TestMistakesShow holds what a wrong call looks like: never a plausible sentence.
func TestMistakesShow(t *testing.T) {
	for _, tc := range []struct {
		format string
		args   []any
		want   string
	}{
		{"%d m", []any{"six"}, "%!d(string) m"},
		{"%s", []any{6}, "%!s(int)"},
		{"%x", []any{6}, "%!x(int)"},
		{"%5s", []any{"a"}, "%!s(string)"},
		{"%v", []any{[]int{1}}, "%!v([]int)"},
		{"%w", []any{6}, "%!w(int)"},
		{"done", []any{1}, "done%!(EXTRA)"},
	} {
		if got := Sprintf(tc.format, tc.args...); got != tc.want {
			t.Errorf("Sprintf(%q, %v) = %q, want %q", tc.format, tc.args, got, tc.want)
		}
	}
}

func TestErrorfWraps(t *testing.T) {
	err := Errorf("reading %q: %w", "plan", io.ErrUnexpectedEOF)
	if want := `reading "plan": unexpected EOF`; err.Error() != want {
		t.Errorf("Errorf = %q, want %q", err, want)
	}
	if !errors.Is(err, io.ErrUnexpectedEOF) {
		t.Errorf("errors.Is(%q, io.ErrUnexpectedEOF) = false, want true", err)
	}
	if plain := Errorf("no cause: %v", io.EOF); errors.Is(plain, io.EOF) {
		t.Errorf("errors.Is(%q, io.EOF) = true, want false: it was given to %%v", plain)
	}
}

func FuzzNumbers(engine *testing.F) {
	f := fuzzed.New(engine)
	for _, v := range []float64{0, 1, -1.5, 1e-7, 1e21, 123456.789, math.MaxFloat64, math.SmallestNonzeroFloat64} {
		f.Add(v, int64(v))
	}
	f.Fuzz(func(t *testing.T, v float64, n int64) {
		const format = "%v %g %.0f %.1f %.4f %d %03d %v"
		args := []any{v, v, v, v, v, n, n, n}
		if got, want := Sprintf(format, args...), fmt.Sprintf(format, args...); got != want {
			t.Errorf("Sprintf(%q, %v) = %q, want %q", format, args, got, want)
		}
	})
}

func ExampleSprintf() {
	fmt.Println(Sprintf("player %q: height %v m is outside %s", "Tall guest", 7.3, "0.9–2.4 m"))
	// Output: player "Tall guest": height 7.3 m is outside 0.9–2.4 m
}
