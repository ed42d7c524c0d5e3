package units

import (
	"math"
	"strconv"
	"strings"

	"wideberth/internal/lean/fmt"
)

// Units that people read and type in.
const (
	Imperial = "imperial"
	Metric   = "metric"
)

const (
	eighthsPerFoot = 96
	minus          = "−" // U+2212, which readers speak as "minus"
	noFigure       = "—" // for NaN and what is too large to be a length

	// labelSlack is the share of a step (1/8 in or 1 mm) that LabelDown takes for
	// rounding noise, so that exactly 5 7/8 in does not read 5 3/4: some 3 nm.
	labelSlack = 1e-6

	// largestLabel is the longest length (m) written out.
	largestLabel = 1e6

	// shortImperial is the length (m) from which LabelShort turns to feet: 4 ft,
	// above any club that is usually spoken of in inches.
	shortImperial = 4 * MetresPerFoot
)

// LabelFeet writes metres as feet and inches to the nearest 1/8 in, halves away
// from zero: "5 ft 11 1/2 in"; under a foot only inches; "6 ft 0 in".
func LabelFeet(m float64) string { return imperial(m, math.Round, eighthsPerFoot) }

// LabelMetric writes metres to the nearest millimetre, halves away from zero:
// "149 mm" below a metre, "1.803 m" from there on.
func LabelMetric(m float64) string { return metric(m, math.Round) }

// Label writes metres in the units of a plan: LabelMetric for Metric, else
// LabelFeet.
func Label(m float64, units string) string {
	if units == Metric {
		return LabelMetric(m)
	}
	return LabelFeet(m)
}

// LabelShort is Label for clubs, clearances and other small distances: imperial
// ones below 4 ft stay in inches.
func LabelShort(m float64, units string) string { return short(m, units, math.Round) }

// LabelDown is LabelShort rounded towards minus infinity, for clearances: what
// is read is never more than what is there.
func LabelDown(m float64, units string) string {
	return short(m, units, func(steps float64) float64 { return math.Floor(steps + labelSlack) })
}

// LabelTape writes a clearance in both kinds of unit, each rounded as LabelDown,
// the plan's own first: "5 7/8 in · 149 mm".
func LabelTape(m float64, units string) string {
	if units == Metric {
		return LabelDown(m, Metric) + " · " + LabelDown(m, Imperial)
	}
	return LabelDown(m, Imperial) + " · " + LabelDown(m, Metric)
}

// LabelLimit writes what a length may be at the least or at the most, in round
// figures that are within the limit: whole inches from a foot on, whole
// centimetres from 10 cm on. A figure that lies beside a round one by no more than
// labels leave out (1 mm) is taken for it.
func LabelLimit(m float64, units string, least bool) string {
	step, coarseFrom := 0.01, 0.1
	if units != Metric {
		step, coarseFrom = MetresPerInch, MetresPerFoot
	}
	if math.Abs(m) < coarseFrom {
		if least {
			return short(m, units, func(steps float64) float64 { return math.Ceil(steps - labelSlack) })
		}
		return LabelDown(m, units)
	}
	const beside = 0.001 // m
	n := math.Round(m / step)
	switch off := m - n*step; {
	case least && off > beside:
		n++
	case !least && off < -beside:
		n--
	}
	if units == Metric {
		return trimmed(n*step, 2) + " m"
	}
	return strings.TrimSuffix(LabelFeet(n*step), " 0 in")
}

func short(m float64, units string, round func(float64) float64) string {
	switch {
	case units == Metric:
		return metric(m, round)
	case math.Abs(m) < shortImperial:
		return imperial(m, round, math.MaxInt64)
	}
	return imperial(m, round, eighthsPerFoot)
}

// imperial rounds to whole eighths of an inch first and only then splits them,
// so that neither 8/8 in nor 12 in can come out. Lengths of at least feetFrom
// eighths are written in feet.
func imperial(m float64, round func(float64) float64, feetFrom int64) string {
	if !(math.Abs(m) <= largestLabel) {
		return noFigure
	}
	n := int64(round(m / MetresPerInch * 8))
	sign := ""
	if n < 0 {
		sign, n = minus, -n
	}
	if n < feetFrom {
		return sign + inches(n)
	}
	return fmt.Sprintf("%s%d ft %s", sign, n/eighthsPerFoot, inches(n%eighthsPerFoot))
}

// inches writes eighths of an inch with the fraction in lowest terms.
func inches(eighths int64) string {
	whole, top, bottom := eighths/8, eighths%8, int64(8)
	for top > 0 && top%2 == 0 {
		top, bottom = top/2, bottom/2
	}
	switch {
	case top == 0:
		return fmt.Sprintf("%d in", whole)
	case whole == 0:
		return fmt.Sprintf("%d/%d in", top, bottom)
	}
	return fmt.Sprintf("%d %d/%d in", whole, top, bottom)
}

func metric(m float64, round func(float64) float64) string {
	if !(math.Abs(m) <= largestLabel) {
		return noFigure
	}
	n := int64(round(m * 1000))
	sign := ""
	if n < 0 {
		sign, n = minus, -n
	}
	if n < 1000 {
		return sign + strconv.FormatInt(n, 10) + " mm"
	}
	return fmt.Sprintf("%s%d.%03d m", sign, n/1000, n%1000)
}
