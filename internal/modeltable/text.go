package modeltable

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"wideberth/internal/units"
)

// Text is words in metric and in imperial units, or once where both are alike.
type Text []string

func both(metric, imperial string) Text {
	if metric == imperial {
		return Text{metric}
	}
	return Text{metric, imperial}
}

func length(m float64, label func(float64, string) string) Text {
	return both(label(m, units.Metric), label(m, units.Imperial))
}

// scale writes quantities of one unit: the number of them in one of the unit of
// measure.Swing, the decimals that are worth reading, and what follows.
type scale struct {
	factor   float64
	decimals int
	suffix   string
}

// unit is how a unit is written for people who measure in metres, and for those
// who measure in feet and inches.
type unit struct{ metric, imperial scale }

const (
	inchesPerMetre = 1 / units.MetresPerInch
)

func alike(s scale) unit { return unit{s, s} }

// unitNamed returns how a unit of measure.Quantity is written.
func unitNamed(name string) unit {
	switch name {
	case "deg":
		return alike(scale{1, 1, "°"})
	case "m":
		return unit{scale{1, 3, " m"}, scale{inchesPerMetre, 1, " in"}}
	case "s":
		return alike(scale{1, 2, " s"})
	case "m/s":
		return unit{scale{1, 1, " m/s"}, scale{units.MphPerMetrePerSecond, 1, " mph"}}
	case "deg/s":
		return alike(scale{1, 0, "°/s"})
	case "stature":
		return alike(scale{100, 1, " % of height"})
	}
	return alike(scale{1, 2, " : 1"}) // a ratio
}

// span writes a range, or one figure where both ends read the same. What was
// measured is written without the zeros that it was not published with.
func (u unit) span(low, high float64, published bool) Text {
	return both(u.metric.span(low, high, published), u.imperial.span(low, high, published))
}

func (s scale) span(low, high float64, published bool) string {
	a, b := s.number(low), s.number(high)
	for published && strings.Contains(a, ".") && idle(a) && idle(b) {
		a, b = a[:len(a)-1], b[:len(b)-1]
	}
	if a == b {
		return a + s.suffix
	}
	return a + " to " + b + s.suffix
}

// idle says whether a decimal fraction ends in a zero, or in its point.
func idle(number string) bool {
	return strings.HasSuffix(number, "0") || strings.HasSuffix(number, ".")
}

// apart says whether two values read differently in either unit.
func (u unit) apart(a, b float64) bool {
	return u.metric.number(a) != u.metric.number(b) || u.imperial.number(a) != u.imperial.number(b)
}

// off says how far above or below a range a figure lies.
func (u unit) off(off float64) Text {
	if off < 0 {
		return u.size(-off, 0).wrapped("", " below")
	}
	return u.size(off, 0).wrapped("", " above")
}

// size writes the greater of two distances, rounded up: what is not nothing
// never reads as nothing.
func (u unit) size(a, b float64) Text {
	return both(u.metric.size(max(a, b)), u.imperial.size(max(a, b)))
}

func (s scale) size(distance float64) string {
	step := math.Pow10(s.decimals)
	up := max(1, math.Ceil(distance*s.factor*step-1e-6)) / step
	return strconv.FormatFloat(up, 'f', s.decimals, 64) + s.suffix
}

// wrapped puts words before and after.
func (t Text) wrapped(before, after string) Text {
	out := make(Text, len(t))
	for i := range t {
		out[i] = before + t[i] + after
	}
	return out
}

func (s scale) number(v float64) string {
	text := strconv.FormatFloat(v*s.factor, 'f', s.decimals, 64)
	if rest, negative := strings.CutPrefix(text, "-"); negative {
		if strings.Trim(rest, "0.") == "" {
			return rest
		}
		return "−" + rest
	}
	return text
}

var (
	fromTo  = regexp.MustCompile(`(\d)-(\d)`)
	degrees = regexp.MustCompile(`(\d) deg\b`)
	minus   = regexp.MustCompile(`(^|[ (])-(\d)`)
)

// typeset gives the plain characters of the tables their proper signs.
func typeset(text string) string {
	text = fromTo.ReplaceAllString(text, "$1–$2")
	text = minus.ReplaceAllString(text, "$1−$2")
	return degrees.ReplaceAllString(text, "$1°")
}
