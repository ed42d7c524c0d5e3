package units

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"

	"wideberth/internal/lean/fmt"
)

const (
	// MetresPerInch and MetresPerFoot are exact: International yard and pound
	// agreement, 1959.
	MetresPerInch = 0.0254
	MetresPerFoot = 0.3048

	// mostTyped is the longest text that ParseLength looks at.
	mostTyped = 40
)

// ParseLength reads a length as people type it and returns metres:
//
//	5'11"   5' 11 1/2"   5 ft 11 1/2 in   5-11   5-11 1/2   71in   71 1/2"
//	180 cm  1.80 m  1,80 m  1800mm  ½"  5′11⅛″
//
// Named units always win. Without one, the plan's units decide:
//
//   - imperial: two numbers are feet and inches; a fraction alone is inches (3/4);
//     any other number below 10 is feet, from 10 on inches.
//   - metric: up to 20 is metres, above that and below 1000 centimetres, from
//     1000 on millimetres.
//
// A comma is a decimal point, except that in millimetres one before exactly
// three digits groups thousands. Errors are sentences that show a good form. How
// long a length may be is for the caller to say, who should show the label of what
// was read.
func ParseLength(text string, units string) (metres float64, err error) {
	q, err := quantities(text, units)
	if err != nil {
		return 0, err
	}
	if metres, err = lengthOf(q, units == Metric); err != nil {
		return 0, unreadable(text, units, err)
	}
	return metres, nil
}

// named are the units that a bare number may turn out to be in.
var named = [...]struct {
	name   string
	system string
	metres float64
}{{"m", Metric, 1}, {"cm", Metric, 0.01}, {"mm", Metric, 0.001}, {"ft", Imperial, MetresPerFoot}, {"in", Imperial, MetresPerInch}}

// ParseFitting is ParseLength for a length that must fit something. A bare number
// that does not fit as it is usually read is read in the one unit in which it does,
// or else in the one of the plan's own kind; as then says which: "180 cm". Where no
// unit or several would do, nothing changes.
func ParseFitting(text, units string, fits func(metres float64) bool) (metres float64, as string, err error) {
	metres, err = ParseLength(text, units)
	if err != nil || fits(metres) {
		return metres, "", err
	}
	if q, _ := quantities(text, units); len(q) == 1 && q[0].unit == 0 {
		for _, among := range [...][]string{{Metric, Imperial}, {units}} {
			found := 0
			for _, unit := range named {
				if m := q[0].value * unit.metres; slices.Contains(among, unit.system) && fits(m) {
					found++
					metres, as = m, strings.TrimSpace(text)+" "+unit.name
				}
			}
			if found == 1 {
				return metres, as, nil
			}
		}
	}
	metres, err = ParseLength(text, units)
	return metres, "", err
}

// SystemOf is the kind of unit that a length was typed in, and whether it was: a
// bare number is in the units of the plan.
func SystemOf(text, units string) (system string, typed bool) {
	q, _ := quantities(text, units)
	for _, one := range q {
		switch one.unit {
		case 0:
		case MetresPerFoot, MetresPerInch:
			return Imperial, true
		default:
			return Metric, true
		}
	}
	return units, len(q) > 1
}

// quantities are the parts of a length that somebody typed.
func quantities(text, units string) ([]quantity, error) {
	s := strings.TrimSpace(text)
	if s == "" {
		return nil, fmt.Errorf("no length given: type %s", goodLength(units))
	}
	if len(s) > mostTyped {
		return nil, fmt.Errorf("%s is too long to be a length: type %s", quoted(s), goodLength(units))
	}
	s = plainText(s)
	if strings.HasPrefix(s, "-") {
		return nil, fmt.Errorf("%s is negative, and a length is zero or more: type %s", quoted(text), goodLength(units))
	}
	tokens, err := lengthTokens(s)
	if err != nil {
		return nil, unreadable(text, units, err)
	}
	return tokens, nil
}

func unreadable(text, units string, why error) error {
	return fmt.Errorf("%s cannot be read as a length (%w): type %s", quoted(text), why, goodLength(units))
}

// quoted is text from outside as a sentence shows it. An inch mark in it stays as
// it was typed.
func quoted(text string) string { return "“" + fmt.Clip(strings.TrimSpace(text)) + "”" }

func goodLength(units string) string {
	if units == Metric {
		return "for example 1.80 m, 180 cm or 5'11\""
	}
	return "for example 5'11\", 71 1/2 in or 180 cm"
}

// plainText turns what phones, word processors and other countries type into
// ASCII: quotes, dashes, vulgar fractions, spaces, case.
func plainText(s string) string {
	s = strings.ToLower(s)
	for _, p := range typed {
		s = strings.ReplaceAll(s, p[0], p[1])
	}
	return strings.TrimSpace(s)
}

// typed is what people type and what it is read as; pairs of marks come before
// single ones.
var typed = [...][2]string{
	{"''", `"`}, {"’’", `"`}, {"′′", `"`},
	{"′", "'"}, {"’", "'"}, {"‘", "'"}, {"`", "'"}, {"´", "'"},
	{"″", `"`}, {"”", `"`}, {"“", `"`}, {"„", `"`},
	{"−", "-"}, {"–", "-"}, {"—", "-"}, {"‑", "-"},
	{"\u00a0", " "}, {"\u2009", " "}, {"\u202f", " "}, {"\t", " "},
	{"⁄", "/"},
	{"½", " 1/2"}, {"¼", " 1/4"}, {"¾", " 3/4"},
	{"⅛", " 1/8"}, {"⅜", " 3/8"}, {"⅝", " 5/8"}, {"⅞", " 7/8"}, {"⅓", " 1/3"}, {"⅔", " 2/3"},
}

// unitOf maps the words for a unit to its metres.
func unitOf(word string) (float64, bool) {
	switch word {
	case "'", "ft", "foot", "feet":
		return MetresPerFoot, true
	case `"`, "in", "inch", "inches":
		return MetresPerInch, true
	case "mm", "millimetre", "millimetres", "millimeter", "millimeters":
		return 0.001, true
	case "cm", "centimetre", "centimetres", "centimeter", "centimeters":
		return 0.01, true
	case "m", "metre", "metres", "meter", "meters":
		return 1, true
	}
	return 0, false
}

var (
	errNoNumber = errors.New("there is no number in it")
	errOrder    = errors.New("its parts do not fit together")
)

// quantity is one number with the unit that follows it; unit 0 when none does.
type quantity struct {
	value    float64
	unit     float64
	fraction bool // a fraction with no whole number before it
	whole    bool // a whole number
}

// lengthOf adds up the quantities.
func lengthOf(q []quantity, metric bool) (float64, error) {
	switch {
	case len(q) == 0:
		return 0, errNoNumber
	case len(q) > 2:
		return 0, errOrder
	case len(q) == 1 && q[0].unit == 0:
		return q[0].value * bareUnit(q[0], metric), nil
	case len(q) == 1:
		return q[0].value * q[0].unit, nil
	}
	feet, in := q[0], q[1]
	if feet.unit == 0 && in.unit == 0 && !metric || feet.unit == 0 && in.unit == MetresPerInch {
		feet.unit = MetresPerFoot // 5-11, or 5-11"
	}
	if feet.unit == MetresPerFoot && in.unit == 0 {
		in.unit = MetresPerInch // 5'11
	}
	switch {
	case feet.unit != MetresPerFoot || in.unit != MetresPerInch || !feet.whole:
		return 0, errOrder
	case in.value >= 12:
		return 0, errors.New("its inches make a foot or more")
	}
	return feet.value*MetresPerFoot + in.value*MetresPerInch, nil
}

// bareUnit is the unit (m) of a number that stands alone.
func bareUnit(q quantity, metric bool) float64 {
	switch v := q.value; {
	case metric && v <= 20:
		return 1
	case metric && v < 1000:
		return 0.01
	case metric:
		return 0.001
	case q.fraction || v >= 10:
		return MetresPerInch
	default:
		return MetresPerFoot
	}
}

// numberText reads digits with at most one point or comma.
func numberText(s string, unit float64) (float64, error) {
	if whole, tail, ok := strings.Cut(s, ","); ok {
		if unit == 0.001 && len(tail) == 3 {
			s = whole + tail
		} else {
			s = whole + "." + tail
		}
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%s is not a number", s)
	}
	return v, nil
}
