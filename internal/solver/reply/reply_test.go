package reply

import (
	"errors"
	"strings"
	"testing"

	"wideberth/internal/sim/plan"
)

func TestFaults(t *testing.T) {
	for _, c := range []struct {
		name string
		r    any
		want string
	}{{"an error", errors.New("index out of range"), "index out of range"}, {"text", "plan: broken", "plan: broken"}, {"anything else", 7, "it stopped without a word"}} {
		if got := panicText(c.r); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
		got := string(Handle(func() (any, error) { panic(c.r) }))
		if !strings.Contains(got, "a fault of the program, not of your numbers: "+c.want) {
			t.Errorf("%s, thrown: %s", c.name, got)
		}
	}
	for want, err := range map[string]error{
		`{"error":{"message":"x"}}`:               errors.New("x"),
		`{"error":{"message":"x","field":"a.b"}}`: &plan.FieldError{Field: "a.b", Message: "x"},
	} {
		if got := string(ErrorJSON(err)); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}
