package answer

import (
	"math"
	"strconv"
	"strings"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/say"
)

// Quantities other than lengths that people type in units of their own. The
// plan holds m/s, °C and metres above the sea.
const (
	ofSpeed       = "speed"
	ofTemperature = "temperature"
	ofAltitude    = "altitude"
)

const metresPerFoot = 0.3048 // exact (international foot, 1959)

type quantityAnswer struct {
	Value float64 `json:"value"` // in the plan's unit
	Label string  `json:"label"`
}

// quantity reads a speed, a temperature or an altitude that somebody typed. A
// bare number is in the units of the plan; one with its unit always wins.
func quantity(req request) (quantityAnswer, error) {
	units, _, err := unitsOf(req)
	if err != nil {
		return quantityAnswer{}, err
	}
	number, unit := splitUnit(req.Text)
	v, err := strconv.ParseFloat(strings.Replace(number, ",", ".", 1), 64)
	if err != nil || math.IsInf(v, 0) {
		return quantityAnswer{}, say.Errorf("%q is not a %s: write it as %s", clip(req.Text), quantityName(req.Of), exampleOf(req.Of, units))
	}
	metric := units == plan.UnitsMetric
	switch req.Of {
	case ofSpeed:
		switch {
		case unit == "mph", unit == "" && !metric:
			v /= mphPerMetrePerSecond
		case unit == "km/h", unit == "kph":
			v /= 3.6
		case unit == "m/s", unit == "":
		default:
			return quantityAnswer{}, unknownUnit(req, units)
		}
		v = math.Round(v*1000) / 1000
		return quantityAnswer{v, speedLabel(v, units)}, nil
	case ofTemperature:
		switch {
		case unit == "f", unit == "°f", unit == "" && !metric:
			v = (v - 32) / 1.8
		case unit == "c", unit == "°c", unit == "":
		default:
			return quantityAnswer{}, unknownUnit(req, units)
		}
		v = math.Round(v*100) / 100
		return quantityAnswer{v, temperatureLabel(v, units)}, nil
	case ofAltitude:
		switch {
		case unit == "ft", unit == "feet", unit == "'", unit == "" && !metric:
			v *= metresPerFoot
		case unit == "m", unit == "":
		default:
			return quantityAnswer{}, unknownUnit(req, units)
		}
		v = math.Round(v*10) / 10
		return quantityAnswer{v, altitudeLabel(v, units)}, nil
	}
	return quantityAnswer{}, say.Errorf("a quantity of the kind %q was asked for, which this program does not know: reload the page", clip(req.Of))
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

func unknownUnit(req request, units string) error {
	return say.Errorf("%q has a unit that is not known here: write it as %s", clip(req.Text), exampleOf(req.Of, units))
}

func quantityName(of string) string {
	if of == ofTemperature || of == ofAltitude {
		return of
	}
	return ofSpeed
}

func exampleOf(of, units string) string {
	metric := units == plan.UnitsMetric
	switch {
	case of == ofTemperature && metric:
		return "20 °C"
	case of == ofTemperature:
		return "68 °F"
	case of == ofAltitude && metric:
		return "300 m"
	case of == ofAltitude:
		return "1000 ft"
	case metric:
		return "62 m/s"
	}
	return "139 mph"
}

func speedLabel(v float64, units string) string {
	if units == plan.UnitsMetric {
		return trimmed(v, 1) + " m/s"
	}
	return trimmed(v*mphPerMetrePerSecond, 1) + " mph"
}

func temperatureLabel(c float64, units string) string {
	if units == plan.UnitsMetric {
		return trimmed(c, 1) + " °C"
	}
	return trimmed(c*1.8+32, 1) + " °F"
}

func altitudeLabel(m float64, units string) string {
	if units == plan.UnitsMetric {
		return trimmed(m, 0) + " m"
	}
	return trimmed(m/metresPerFoot, 0) + " ft"
}

// trimmed writes a number with so many decimals at most.
func trimmed(v float64, decimals int) string {
	scale := math.Pow10(decimals)
	v = math.Round(v*scale)/scale + 0
	s := strconv.FormatFloat(v, 'f', -1, 64)
	return strings.Replace(s, "-", minus, 1)
}
