package units

import (
	"math"
	"strings"
	"testing"
)

func TestLabels(t *testing.T) {
	const in = MetresPerInch
	for _, tc := range []struct {
		name                string
		m                   float64
		feet, metric        string
		downImp, downMetric string
	}{
		{"zero", 0, "0 in", "0 mm", "0 in", "0 mm"},
		{"height", 1.803, "5 ft 11 in", "1.803 m", "5 ft 10 7/8 in", "1.803 m"},
		{"tape", 0.1495, "5 7/8 in", "150 mm", "5 7/8 in", "149 mm"},
		{"exact eighths", 5.875 * in, "5 7/8 in", "149 mm", "5 7/8 in", "149 mm"},
		{"one eighth", in / 8, "1/8 in", "3 mm", "1/8 in", "3 mm"},
		{"half a step rounds away from zero", in / 16, "1/8 in", "2 mm", "0 in", "1 mm"},
		{"just under an inch", 0.99 * in, "1 in", "25 mm", "7/8 in", "25 mm"},
		{"just under a foot", 11.99 * in, "1 ft 0 in", "305 mm", "11 7/8 in", "304 mm"},
		{"just under six feet", 71.97 * in, "6 ft 0 in", "1.828 m", "5 ft 11 7/8 in", "1.828 m"},
		{"just under a metre", 0.9996, "3 ft 3 3/8 in", "1.000 m", "39 1/4 in", "999 mm"},
		{"four feet", 4 * MetresPerFoot, "4 ft 0 in", "1.219 m", "4 ft 0 in", "1.219 m"},
		{"negative", -1.625 * in, "−1 5/8 in", "−41 mm", "−1 5/8 in", "−42 mm"},
		{"a touch past", -0.0001, "0 in", "0 mm", "−1/8 in", "−1 mm"},
		{"far past", -1.5, "−4 ft 11 in", "−1.500 m", "−4 ft 11 1/8 in", "−1.500 m"},
		{"quarters", 2.25 * in, "2 1/4 in", "57 mm", "2 1/4 in", "57 mm"},
		{"NaN", math.NaN(), "—", "—", "—", "—"},
		{"infinite", math.Inf(1), "—", "—", "—", "—"},
		{"absurd", -1e300, "—", "—", "—", "—"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			for _, g := range []struct{ f, got, want string }{
				{"LabelFeet", LabelFeet(tc.m), tc.feet},
				{"Label imperial", Label(tc.m, Imperial), tc.feet},
				{"LabelMetric", LabelMetric(tc.m), tc.metric},
				{"Label metric", Label(tc.m, Metric), tc.metric},
				{"LabelDown imperial", LabelDown(tc.m, Imperial), tc.downImp},
				{"LabelDown metric", LabelDown(tc.m, Metric), tc.downMetric},
			} {
				if g.got != g.want {
					t.Errorf("%s(%v) = %q, want %q", g.f, tc.m, g.got, g.want)
				}
			}
		})
	}
}

func TestLabelShortAndTape(t *testing.T) {
	for _, tc := range []struct{ got, want string }{
		{LabelShort(1.1557, Imperial), "45 1/2 in"},
		{LabelShort(1.803, Imperial), "5 ft 11 in"},
		{LabelShort(0.149, Metric), "149 mm"},
		{LabelTape(0.1495, Imperial), "5 7/8 in · 149 mm"},
		{LabelTape(0.1495, Metric), "149 mm · 5 7/8 in"},
	} {
		if tc.got != tc.want {
			t.Errorf("label = %q, want %q", tc.got, tc.want)
		}
	}
}

// TestLabelLimit: limits are round figures, and what they say is allowed.
func TestLabelLimit(t *testing.T) {
	for _, tc := range []struct {
		name     string
		m        float64
		least    bool
		imperial string
		metric   string
	}{
		{"the tallest", 2.4, false, "7 ft 10 in", "2.4 m"},
		{"the smallest", 0.9, true, "3 ft", "0.9 m"},
		{"a room of 21 ft, kept to the millimetre", 6.40, false, "21 ft", "6.4 m"},
		{"a ceiling", 20, false, "65 ft 7 in", "20 m"},
		{"the shortest club", 0.45, true, "1 ft 6 in", "0.45 m"},
		{"a sole", 0.10, false, "3 7/8 in", "0.1 m"},
		{"a margin", 0.01, true, "1/2 in", "10 mm"},
		{"nothing", 0, true, "0 in", "0 mm"},
		{"between centimetres", 2.346, false, "7 ft 8 in", "2.34 m"},
		{"between centimetres, at least", 2.344, true, "7 ft 9 in", "2.35 m"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			if got := LabelLimit(tc.m, Imperial, tc.least); got != tc.imperial {
				t.Errorf("imperial: %q, want %q", got, tc.imperial)
			}
			if got := LabelLimit(tc.m, Metric, tc.least); got != tc.metric {
				t.Errorf("metric: %q, want %q", got, tc.metric)
			}
		})
	}
}

// TestLabelProperties walks −2 to 8 m in steps that share no factor with either
// unit: no label may hold 8/8 in or 12 in beside feet, and LabelDown may never
// read more than the value.
func TestLabelProperties(t *testing.T) {
	const step = 0.000737
	for m := -2.0; m < 8; m += step {
		if s := LabelFeet(m); strings.Contains(s, "8/8") || strings.Contains(s, "ft 12") {
			t.Fatalf("LabelFeet(%v) = %q, want whole inches and feet carried", m, s)
		}
		for _, units := range []string{Imperial, Metric} {
			label := LabelDown(m, units)
			text, negative := strings.CutPrefix(label, minus)
			read, err := ParseLength(text, units)
			if err != nil {
				t.Fatalf("ParseLength(%q) = error %v, want a length", text, err)
			}
			if negative {
				read = -read
			}
			if read > m+labelSlack*MetresPerInch {
				t.Fatalf("LabelDown(%v, %s) = %q, want no more than the value", m, units, label)
			}
			if read < m-MetresPerInch/8-lengthTol {
				t.Fatalf("LabelDown(%v, %s) = %q, want within one step of the value", m, units, label)
			}
		}
	}
}
