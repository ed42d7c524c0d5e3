package golden

import (
	"math"
	"reflect"
	"testing"
)

// Every number is rounded, however deep, and nothing else changes.
func TestRounded(t *testing.T) {
	tree := map[string]any{"a": 1.6, "b": []any{2.4, "2.4", map[string]any{"c": -0.6}}, "d": nil, "e": true}
	want := map[string]any{"a": 2.0, "b": []any{2.0, "2.4", map[string]any{"c": -1.0}}, "d": nil, "e": true}
	if got := Rounded(tree, math.Round); !reflect.DeepEqual(got, want) {
		t.Errorf("Rounded = %v, want %v", got, want)
	}
}
