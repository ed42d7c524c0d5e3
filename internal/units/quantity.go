package units

import (
	"math"
	"strconv"
	"strings"

	"wideberth/internal/lean/fmt"
)

// Kinds of figure other than lengths that people type in units of their own.
// The plan holds m/s, °C and metres above the sea.
const (
	Speed       = "speed"
	Temperature = "temperature"
	Altitude    = "altitude"
)

// MphPerMetrePerSecond is exact to the digits given: 3600/1609.344.
const MphPerMetrePerSecond = 2.2369362920544

// ParseQuantity reads a speed, a temperature or an altitude as somebody typed it
// and returns it in the plan's unit. A bare number is in the units of the plan;
// one with its unit always wins.
func ParseQuantity(kind, text, units string) (float64, error) {
	number, unit := splitUnit(text)
	v, err := strconv.ParseFloat(strings.Replace(number, ",", ".", 1), 64)
	if err != nil || math.IsInf(v, 0) {
		a := "a "
		if kind == Altitude {
			a = "an "
		}
		return 0, fmt.Errorf("%s is not %s: write it as %s", quoted(text), a+kind, exampleOf(kind, units))
	}
	unknown := fmt.Errorf("%s has a unit that is not known here: write it as %s", quoted(text), exampleOf(kind, units))
	metric := units == Metric
	switch kind {
	case Temperature:
		switch {
		case unit == "f", unit == "°f", unit == "" && !metric:
			v = (v - 32) / 1.8
		case unit == "c", unit == "°c", unit == "":
		default:
			return 0, unknown
		}
		return math.Round(v*100) / 100, nil
	case Altitude:
		switch {
		case unit == "ft", unit == "feet", unit == "'", unit == "" && !metric:
			v *= MetresPerFoot
		case unit == "m", unit == "":
		default:
			return 0, unknown
		}
		return math.Round(v*10) / 10, nil
	}
	switch {
	case unit == "mph", unit == "" && !metric:
		v /= MphPerMetrePerSecond
	case unit == "km/h", unit == "kph":
		v /= 3.6
	case unit == "m/s", unit == "":
	default:
		return 0, unknown
	}
	return math.Round(v*1000) / 1000, nil
}

// splitUnit parts "139 mph" into "139" and "mph", and "5,280 ft" into "5280".
func splitUnit(text string) (number, unit string) {
	text = strings.ReplaceAll(strings.TrimSpace(text), minus, "-")
	end := 0
	for end < len(text) && strings.IndexByte("+-0123456789.,", text[end]) >= 0 {
		end++
	}
	number, unit = text[:end], strings.ToLower(strings.TrimSpace(text[end:]))
	if i := strings.IndexByte(number, ','); i >= 0 && len(number)-i == 4 && i > 0 {
		number = number[:i] + number[i+1:] // groups thousands
	}
	return number, unit
}

func exampleOf(kind, units string) string {
	metric := units == Metric
	switch {
	case kind == Temperature && metric:
		return "20 °C"
	case kind == Temperature:
		return "68 °F"
	case kind == Altitude && metric:
		return "300 m"
	case kind == Altitude:
		return "1000 ft"
	case metric:
		return "62 m/s"
	}
	return "139 mph"
}

// LabelQuantity writes a speed, a temperature or an altitude in the units of a
// plan.
func LabelQuantity(kind string, v float64, units string) string {
	metric := units == Metric
	switch {
	case kind == Temperature && metric:
		return trimmed(v, 1) + " °C"
	case kind == Temperature:
		return trimmed(v*1.8+32, 1) + " °F"
	case kind == Altitude && metric:
		return trimmed(v, 0) + " m"
	case kind == Altitude:
		return trimmed(v/MetresPerFoot, 0) + " ft"
	case metric:
		return trimmed(v, 1) + " m/s"
	}
	return trimmed(v*MphPerMetrePerSecond, 1) + " mph"
}

// trimmed writes a number with so many decimals at most.
func trimmed(v float64, decimals int) string {
	scale := math.Pow10(decimals)
	v = math.Round(v*scale)/scale + 0
	s := strconv.FormatFloat(v, 'f', -1, 64)
	return strings.Replace(s, "-", minus, 1)
}
