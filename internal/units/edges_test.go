package units

import (
	"math"
	"strings"
	"testing"
)

// TestLengthEdges: the last that is read in one way and the first that is read in
// another, or not at all.
func TestLengthEdges(t *testing.T) {
	const in, ft = MetresPerInch, MetresPerFoot
	for _, c := range []struct {
		text, units string
		want        float64 // NaN: it is refused
	}{
		{"9.999", Imperial, 9.999 * ft},
		{"10.001", Imperial, 10.001 * in},
		{"20.0", Metric, 20},
		{"20.1", Metric, 0.201},
		{"999", Metric, 9.99},
		{"1000", Metric, 1},
		{"1/2 in", Imperial, in / 2},
		{"1/64 in", Imperial, in / 64},
		{"63/64 in", Imperial, 63 * in / 64},
		{"1/65 in", Imperial, math.NaN()},
		{"0/1 in", Imperial, math.NaN()},
		{"1/1 in", Imperial, math.NaN()},
		{"2/2 in", Imperial, math.NaN()},
		{"0/2 in", Imperial, 0},
		{`5'11.99"`, Imperial, 5*ft + 11.99*in},
		{`5'12"`, Imperial, math.NaN()},
		{"5 - 11", Imperial, 71 * in},
		{`5 11"`, Imperial, 71 * in},
		{`5 11"`, Metric, 71 * in},
		{"5-11", Metric, math.NaN()},
		{`5"11`, Imperial, math.NaN()},
		{"1,234 mm", Metric, 1.234},
		{"1,23 mm", Metric, 0.00123},
		{"1,2345 mm", Metric, 0.0012345},
		{"1,234 m", Metric, 1.234},
		{"1 m 80 cm", Metric, math.NaN()},
		{"1 2 3", Imperial, math.NaN()},
		{"-", Imperial, math.NaN()},
		{"5 -", Imperial, math.NaN()},
		{"1/2 1/2", Imperial, math.NaN()},
		{"3 1/2 ft", Imperial, 3.5 * ft},
		{`3.5' 1"`, Imperial, math.NaN()},
		{`3 1/2' 1"`, Imperial, math.NaN()},
		{strings.Repeat("0", 38) + " m", Metric, 0},
		{strings.Repeat("0", 39) + " m", Metric, math.NaN()},
	} {
		got, err := ParseLength(c.text, c.units)
		if math.IsNaN(c.want) != (err != nil) || err == nil && math.Abs(got-c.want) > lengthTol {
			t.Errorf("ParseLength(%q, %s) = %v, %v, want %v", c.text, c.units, got, err, c.want)
		}
	}
	for _, unit := range []struct {
		words  string
		metres float64
	}{
		{"' ft foot feet", ft}, {`" in inch inches`, in}, {"m metre metres meter meters", 1},
		{"cm centimetre centimetres centimeter centimeters", 0.01}, {"mm millimetre millimetres millimeter millimeters", 0.001},
	} {
		for word := range strings.FieldsSeq(unit.words) {
			if got, err := ParseLength("3 "+word, Imperial); err != nil || math.Abs(got-3*unit.metres) > lengthTol {
				t.Errorf("3 %s = %v, %v, want %v", word, got, err, 3*unit.metres)
			}
		}
	}
	for _, c := range []struct{ text, want string }{
		{"tall 5", "“tall 5” cannot be read as a length (“tall” is not expected there): type for example 5'11\", 71 1/2 in or 180 cm"},
		{"x5", "“x5” cannot be read as a length (“x” is not expected there): type for example 5'11\", 71 1/2 in or 180 cm"},
		{"1/65", "“1/65” cannot be read as a length (1/65 is not a fraction of an inch): type for example 5'11\", 71 1/2 in or 180 cm"},
		{" -3 ", "“-3” is negative, and a length is zero or more: type for example 5'11\", 71 1/2 in or 180 cm"},
		{"", "no length given: type for example 5'11\", 71 1/2 in or 180 cm"},
	} {
		if _, err := ParseLength(c.text, Imperial); err == nil || err.Error() != c.want {
			t.Errorf("ParseLength(%q) = %v, want %s", c.text, err, c.want)
		}
	}
}

// TestLabelEdges: labels change their form where they say.
func TestLabelEdges(t *testing.T) {
	const in = MetresPerInch
	for _, c := range []struct{ name, got, want string }{
		{"short, under four feet", LabelShort(47.9*in, Imperial), "47 7/8 in"},
		{"short, four feet", LabelShort(48*in, Imperial), "4 ft 0 in"},
		{"short, four feet past", LabelShort(-48*in, Imperial), "−4 ft 0 in"},
		{"short, less than that past", LabelShort(-47*in, Imperial), "−47 in"},
		{"a metre", LabelMetric(1), "1.000 m"},
		{"under a metre", LabelMetric(0.9994), "999 mm"},
		{"under a metre past", LabelMetric(-0.9996), "−1.000 m"},
		{"the longest", LabelMetric(1e6), "1000000.000 m"},
		{"longer", LabelMetric(1e6 + 1), "—"},
		{"longer, in feet", LabelFeet(1e6 + 1), "—"},
		{"down, a hair short of a step", LabelDown(0.15-2e-9, Metric), "149 mm"},
		{"down, rounding noise", LabelDown(0.15-2e-10, Metric), "150 mm"},
		{"eighths", LabelFeet(in / 8), "1/8 in"},
		{"quarters", LabelFeet(in * 6 / 8), "3/4 in"},
		{"halves", LabelFeet(in * 12 / 8), "1 1/2 in"},

		// A limit beside a round figure is taken for it when labels leave as much out.
		{"at least, on it", LabelLimit(2, Metric, true), "2 m"},
		{"at least, beside it", LabelLimit(2.0009, Metric, true), "2 m"},
		{"at least, beyond it", LabelLimit(2.0011, Metric, true), "2.01 m"},
		{"at least, before it", LabelLimit(1.9989, Metric, true), "2 m"},
		{"at most, beside it", LabelLimit(1.9991, Metric, false), "2 m"},
		{"at most, before it", LabelLimit(1.9989, Metric, false), "1.99 m"},
		{"at most, beyond it", LabelLimit(2.0011, Metric, false), "2 m"},
		{"at least, small", LabelLimit(0.0991, Metric, true), "100 mm"},
		{"at most, small", LabelLimit(0.0999, Metric, false), "99 mm"},
		{"ten centimetres", LabelLimit(0.1, Metric, true), "0.1 m"},
		{"a foot", LabelLimit(12*in, Imperial, true), "1 ft"},
		{"under a foot, at least", LabelLimit(11.9*in, Imperial, true), "12 in"},
		{"under a foot, at most", LabelLimit(11.9*in, Imperial, false), "11 7/8 in"},
		{"inches", LabelLimit(30.5*in, Imperial, true), "2 ft 7 in"},
		{"inches, at most", LabelLimit(30.5*in, Imperial, false), "2 ft 6 in"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.name, c.got, c.want)
		}
	}
}

// TestQuantityUnits: each kind of figure in every unit that it may be typed in, in
// plans of both kinds, and as its label has it.
func TestQuantityUnits(t *testing.T) {
	for _, c := range []struct {
		kind, text       string
		imperial, metric float64 // NaN: it is refused
	}{
		{Speed, "100", 44.704, 100},
		{Speed, "100 mph", 44.704, 44.704},
		{Speed, "100MPH", 44.704, 44.704},
		{Speed, "36 km/h", 10, 10},
		{Speed, "36 kph", 10, 10},
		{Speed, "12.3456 m/s", 12.346, 12.346},
		{Speed, "1,234 m/s", 1234, 1234},
		{Speed, "12,34 m/s", 12.34, 12.34},
		{Speed, ",123 m/s", 0.123, 0.123},
		{Speed, "1e3", math.NaN(), math.NaN()},
		{Speed, "inf", math.NaN(), math.NaN()},
		{Temperature, "68", 20, 68},
		{Temperature, "68 F", 20, 20},
		{Temperature, "68°F", 20, 20},
		{Temperature, "20 c", 20, 20},
		{Temperature, "20.126 °C", 20.13, 20.13},
		{Temperature, "−40 °F", -40, -40},
		{Temperature, "20 K", math.NaN(), math.NaN()},
		{Altitude, "100", 30.5, 100},
		{Altitude, "100 ft", 30.5, 30.5},
		{Altitude, "100 feet", 30.5, 30.5},
		{Altitude, "100'", 30.5, 30.5},
		{Altitude, "100.06 m", 100.1, 100.1},
		{Altitude, "100 mph", math.NaN(), math.NaN()},
	} {
		for units, want := range map[string]float64{Imperial: c.imperial, Metric: c.metric} {
			got, err := ParseQuantity(c.kind, c.text, units)
			if math.IsNaN(want) != (err != nil) || err == nil && got != want {
				t.Errorf("ParseQuantity(%s, %q, %s) = %v, %v, want %v", c.kind, c.text, units, got, err, want)
			}
		}
	}
	for _, c := range []struct {
		kind             string
		v                float64
		imperial, metric string
	}{
		{Speed, 12.3456, "27.6 mph", "12.3 m/s"},
		{Speed, 12.3512, "27.6 mph", "12.4 m/s"},
		{Temperature, 20.126, "68.2 °F", "20.1 °C"},
		{Temperature, -20, "−4 °F", "−20 °C"},
		{Temperature, -0.04, "31.9 °F", "0 °C"},
		{Altitude, 100.6, "330 ft", "101 m"},
		{Altitude, -10, "−33 ft", "−10 m"},
	} {
		if got := LabelQuantity(c.kind, c.v, Imperial); got != c.imperial {
			t.Errorf("LabelQuantity(%s, %v) = %q, want %q", c.kind, c.v, got, c.imperial)
		}
		if got := LabelQuantity(c.kind, c.v, Metric); got != c.metric {
			t.Errorf("LabelQuantity(%s, %v, metric) = %q, want %q", c.kind, c.v, got, c.metric)
		}
	}
	for _, c := range []struct{ kind, units, want string }{
		{Speed, Metric, "“x” is not a speed: write it as 62 m/s"},
		{Temperature, Metric, "“x” is not a temperature: write it as 20 °C"},
		{Altitude, Metric, "“x” is not an altitude: write it as 300 m"},
		{Temperature, Imperial, "“x” is not a temperature: write it as 68 °F"},
	} {
		if _, err := ParseQuantity(c.kind, "x", c.units); err == nil || err.Error() != c.want {
			t.Errorf("ParseQuantity(%s, x, %s) = %v, want %s", c.kind, c.units, err, c.want)
		}
	}
}
