package units

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// lengthTol is rounding noise in metres: the conversions are exact factors.
const lengthTol = 1e-12

func TestParseLength(t *testing.T) {
	const in, ft = MetresPerInch, MetresPerFoot
	for _, tc := range []struct {
		text, units string
		want        float64
	}{
		{`5'11"`, Imperial, 71 * in},
		{`5'11"`, Metric, 71 * in},
		{`5' 11 1/2"`, Imperial, 71.5 * in},
		{`5' 11-1/2"`, Imperial, 71.5 * in},
		{`5'11`, Metric, 71 * in},
		{`5 ft 11 1/2 in`, Imperial, 71.5 * in},
		{`5ft 11in`, Metric, 71 * in},
		{`5 ft. 11 in.`, Imperial, 71 * in},
		{`5 feet 11 inches`, Imperial, 71 * in},
		{`5 FT 11 IN`, Imperial, 71 * in},
		{`5-11`, Imperial, 71 * in},
		{`5-11 1/2`, Imperial, 71.5 * in},
		{`5'-11"`, Imperial, 71 * in},
		{`5 11`, Imperial, 71 * in},
		{`6'`, Imperial, 6 * ft},
		{`0' 6"`, Imperial, 6 * in},
		{`5' 1/2"`, Imperial, 60.5 * in},
		{`5 ft 11.5 in`, Imperial, 71.5 * in},
		{`71in`, Imperial, 71 * in},
		{`71 1/2"`, Imperial, 71.5 * in},
		{`45.5"`, Metric, 45.5 * in},
		{`71''`, Imperial, 71 * in},
		{`5′11″`, Imperial, 71 * in},
		{`5’11”`, Imperial, 71 * in},
		{`5’11’’`, Imperial, 71 * in},
		{`5'11½"`, Imperial, 71.5 * in},
		{`5′ 11⅛″`, Imperial, 71.125 * in},
		{`½"`, Imperial, 0.5 * in},
		{`3⁄4 in`, Imperial, 0.75 * in},
		{`5.5 ft`, Imperial, 5.5 * ft},
		{`9 1/2 ft`, Imperial, 9.5 * ft},
		{`180 cm`, Imperial, 1.8},
		{`1.80 m`, Imperial, 1.8},
		{`1,80 m`, Imperial, 1.8},
		{`1800mm`, Imperial, 1.8},
		{`1,800 mm`, Metric, 1.8},
		{`12,5 mm`, Metric, 0.0125},
		{"1.80\u00a0m", Metric, 1.8},
		{`2 metres`, Metric, 2},
		{`.5 m`, Metric, 0.5},
		{`9`, Imperial, 9 * ft},
		{`9.99`, Imperial, 9.99 * ft},
		{`10`, Imperial, 10 * in},
		{`71`, Imperial, 71 * in},
		{`45 1/2`, Imperial, 45.5 * in},
		{`5 1/2`, Imperial, 5.5 * ft},
		{`3/4`, Imperial, 0.75 * in},
		{`71`, "", 71 * in},
		{`1.8`, Metric, 1.8},
		{`1,8`, Metric, 1.8},
		{`20`, Metric, 20},
		{`21`, Metric, 0.21},
		{`180`, Metric, 1.8},
		{`1000`, Metric, 1},
		{`1800`, Metric, 1.8},
		{`0`, Imperial, 0},
	} {
		got, err := ParseLength(tc.text, tc.units)
		if err != nil || math.Abs(got-tc.want) > lengthTol {
			t.Errorf("ParseLength(%q, %q) = %v, %v, want %v (%g)", tc.text, tc.units, got, err, tc.want, lengthTol)
		}
	}
}

func TestParseLengthErrors(t *testing.T) {
	for _, tc := range []struct{ name, text, message string }{
		{"empty", "", "no length given: type for example 5'11\""},
		{"spaces", " \t ", "no length given"},
		{"words", "tall", `"tall" is not expected there`},
		{"NaN", "NaN", "cannot be read"},
		{"infinity", "inf", "cannot be read"},
		{"negative", "-3 ft", "is negative"},
		{"negative, true minus", "−3 ft", "is negative"},
		{"exponent", "1e3 m", `"e" is not a unit`},
		{"huge", "99999999 m", "is more than 100 m"},
		{"too huge for a number", strings.Repeat("9", 39) + "m", "is more than 100 m"},
		{"endless", strings.Repeat("9", 400), "too long to be a length"},
		{"unknown unit", "3 yd", `"yd" is not a unit`},
		{"other alphabet", "3 м", `"м" is not a unit`},
		{"two points", "1.2.3 m", "is not a number"},
		{"two commas", "1,2,3", "is not a number"},
		{"a point alone", ".", "is not a number"},
		{"inches past a foot", `5'12"`, "make a foot or more"},
		{"inches past a foot, dash", `5-12`, "make a foot or more"},
		{"parts of a foot and inches", `5.5' 3"`, "do not fit together"},
		{"inches then feet", `11" 5'`, "do not fit together"},
		{"mixed systems", `5' 20 cm`, "do not fit together"},
		{"three parts", `5' 3" 2`, "do not fit together"},
		{"many parts", `1 2 3 4 5 6`, "do not fit together"},
		{"dash at the end", `5-`, "do not fit together"},
		{"decimal with a fraction", `1.5 1/2 in`, "do not fit together"},
		{"division by zero", "1/0", "is not a fraction"},
		{"fraction over one", "5/4 in", "is not a fraction"},
		{"half a fraction", "5 1/ in", "is not a fraction"},
		{"decimal fraction", "1.5/2", "is not a fraction"},
		{"unit alone", "ft", `"ft" is not expected there`},
	} {
		t.Run(tc.name, func(t *testing.T) {
			got, err := ParseLength(tc.text, Imperial)
			if err == nil || !strings.Contains(err.Error(), tc.message) {
				t.Fatalf("ParseLength(%q) = %v, %v, want an error with %q", tc.text, got, err, tc.message)
			}
			if !strings.Contains(err.Error(), "5'11\"") {
				t.Errorf("ParseLength(%q) = error %q, want it to show a good form", tc.text, err)
			}
		})
	}
	if _, err := ParseLength("x", Metric); err == nil || !strings.Contains(err.Error(), "1.80 m") {
		t.Errorf("ParseLength(x, metric) = error %v, want it to show a metric form", err)
	}
	if _, err := ParseLength("5 11", Metric); err == nil {
		t.Error("ParseLength(5 11, metric) = a length, want an error: two bare numbers are feet and inches only in imperial")
	}
}

// halfStep is half of the coarsest step a label has, 1/8 in, plus noise.
const halfStep = MetresPerInch/16 + 1e-9

func FuzzParseLength(f *testing.F) {
	for _, s := range []string{`5'11"`, `5 ft 11 1/2 in`, "5-11 1/2", "71in", "180 cm", "1,80 m", "1,800mm", "′″’”½⅛", "-1", "NaN", "1/0", "1e9", "5-", ". , /", "''''"} {
		f.Add(s, true)
		f.Add(s, false)
	}
	f.Fuzz(func(t *testing.T, text string, metric bool) {
		units := Imperial
		if metric {
			units = Metric
		}
		m, err := ParseLength(text, units)
		if err != nil {
			return
		}
		if !(m >= 0 && m <= longestTyped) {
			t.Fatalf("ParseLength(%q) = %v, want within 0–%d", text, m, longestTyped)
		}
		for _, label := range []string{LabelFeet(m), LabelMetric(m), LabelShort(m, units)} {
			again, err := ParseLength(label, units)
			over := m > longestTyped-halfStep // rounding up may pass the limit
			if (err != nil || math.Abs(again-m) > halfStep) && !over {
				t.Errorf("ParseLength(%q) = %v, %v, want %v (%g)", label, again, err, m, halfStep)
			}
		}
	})
}

func ExampleParseLength() {
	for _, text := range []string{`5'11"`, "71 1/2 in", "1,80 m", "tall"} {
		m, err := ParseLength(text, Imperial)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%s = %s\n", LabelFeet(m), LabelMetric(m))
	}
	// Output:
	// 5 ft 11 in = 1.803 m
	// 5 ft 11 1/2 in = 1.816 m
	// 5 ft 10 7/8 in = 1.800 m
	// "tall" cannot be read as a length ("tall" is not expected there): type for example 5'11", 71 1/2 in or 180 cm
}
