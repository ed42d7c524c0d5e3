package units

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"wideberth/internal/fuzzed"
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
		{"words", "tall", `“tall” is not expected there`},
		{"NaN", "NaN", "cannot be read"},
		{"infinity", "inf", "cannot be read"},
		{"negative", "-3 ft", "is negative"},
		{"negative, true minus", "−3 ft", "is negative"},
		{"exponent", "1e3 m", `“e” is not a unit`},
		{"endless", strings.Repeat("9", 400), "too long to be a length"},
		{"unknown unit", "3 yd", `“yd” is not a unit`},
		{"other alphabet", "3 м", `“м” is not a unit`},
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
		{"unit alone", "ft", `“ft” is not expected there`},
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

// TestParseFitting: a bare number that fits nothing as it is usually read is read
// in the one unit in which it does.
func TestParseFitting(t *testing.T) {
	stature := func(m float64) bool { return m >= 0.9 && m <= 2.4 }
	room := func(m float64) bool { return m >= 2 && m <= 60 }
	const ft, in = MetresPerFoot, MetresPerInch
	for _, tc := range []struct {
		name, text, units string
		fits              func(float64) bool
		want              float64
		as                string
	}{
		{"centimetres beside inches", "180", Imperial, stature, 1.8, "180 cm"},
		{"metres beside feet", "1.85", Imperial, stature, 1.85, "1.85 m"},
		{"a comma", " 1,85 ", Imperial, stature, 1.85, "1,85 m"},
		{"millimetres", "1850", Imperial, stature, 1.85, "1850 mm"},
		{"inches beside centimetres", "71", Metric, stature, 71 * in, "71 in"},
		{"feet beside metres", "6", Metric, stature, 6 * ft, "6 ft"},
		{"as usual", "71", Imperial, stature, 71 * in, ""},
		{"as usual, feet", "6", Imperial, stature, 6 * ft, ""},
		{"as usual, metric", "180", Metric, stature, 1.8, ""},
		{"with its unit, it means what it says", "180 in", Imperial, stature, 180 * in, ""},
		{"two parts are feet and inches", "9 3", Imperial, stature, 111 * in, ""},
		{"nothing fits", "99999", Imperial, stature, 99999 * in, ""},
		{"feet and metres both fit", "20", Imperial, room, 20 * ft, "20 ft"},
		{"metres and feet both fit", "21", Metric, room, 21, "21 m"},
		{"two of the plan's own kind fit", "30", Metric, func(m float64) bool { return m == 30 || m == 0.03 }, 0.3, ""},
	} {
		t.Run(tc.name, func(t *testing.T) {
			got, as, err := ParseFitting(tc.text, tc.units, tc.fits)
			if err != nil || math.Abs(got-tc.want) > lengthTol || as != tc.as {
				t.Errorf("ParseFitting(%q, %s) = %v, %q, %v, want %v, %q", tc.text, tc.units, got, as, err, tc.want, tc.as)
			}
		})
	}
	if _, _, err := ParseFitting("tall", Imperial, stature); err == nil {
		t.Error("ParseFitting(tall) = a length, want an error")
	}
}

func TestSystemOf(t *testing.T) {
	for _, tc := range []struct {
		text, units, want string
		typed             bool
	}{
		{"99 ft", Metric, Imperial, true},
		{`7'`, Metric, Imperial, true},
		{"400 m", Imperial, Metric, true},
		{"99", Imperial, Imperial, false},
		{"99", Metric, Metric, false},
		{"9 3", Imperial, Imperial, true},
		{"tall", Metric, Metric, false},
	} {
		if got, typed := SystemOf(tc.text, tc.units); got != tc.want || typed != tc.typed {
			t.Errorf("SystemOf(%q, %s) = %s, %v, want %s, %v", tc.text, tc.units, got, typed, tc.want, tc.typed)
		}
	}
}

// halfStep is half of the coarsest step a label has, 1/8 in, plus noise.
const halfStep = MetresPerInch/16 + 1e-9

func FuzzParseLength(engine *testing.F) {
	f := fuzzed.New(engine)
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
		if !(m >= 0 && !math.IsInf(m, 0)) {
			t.Fatalf("ParseLength(%q) = %v, want a length", text, m)
		}
		if m > largestLabel-halfStep {
			return // has no label, or rounds up to none
		}
		for _, label := range []string{LabelFeet(m), LabelMetric(m), LabelShort(m, units)} {
			again, err := ParseLength(label, units)
			if err != nil || math.Abs(again-m) > halfStep {
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
	// “tall” cannot be read as a length (“tall” is not expected there): type for example 5'11", 71 1/2 in or 180 cm
}
