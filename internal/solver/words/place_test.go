package words

import (
	"testing"

	"wideberth/internal/units"
)

func TestOffMiddle(t *testing.T) {
	for _, c := range []struct {
		name     string
		y, width float64
		units    string
		want     string
	}{
		{"towards the left wall", 2.5556, 4.4, units.Imperial, "14 in left"},
		{"towards the right wall", 1.8444, 4.4, units.Imperial, "14 in right"},
		{"metric", 2.3, 4.4, units.Metric, "100 mm left"},
		{"the middle", 2.2, 4.4, units.Imperial, "in the middle"},
		{"half a millimetre is the middle", 2.2005, 4.4, units.Metric, "in the middle"},
		{"two millimetres are not", 2.202, 4.4, units.Metric, "2 mm left"},
	} {
		if got := (Words{Units: c.units}).OffMiddle(c.y, c.width); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
