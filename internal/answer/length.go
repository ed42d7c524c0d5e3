package answer

import (
	"errors"
	"math"

	"wideberth/internal/sim/jsontext"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/say"
)

// maxLabels is the most labels made at once.
const maxLabels = 10000

type lengthAnswer struct {
	Metres float64 `json:"metres"` // to 0.1 mm, as links keep it
	Label  string  `json:"label"`
	Other  string  `json:"other"` // the same in the other kind of unit
}

type labelAnswer struct {
	Label string `json:"label"`
}

type labelsAnswer struct {
	Labels []string `json:"labels"`
}

// length reads a length that somebody typed.
func length(req request) (lengthAnswer, error) {
	units, other, err := unitsOf(req)
	if err != nil {
		return lengthAnswer{}, err
	}
	m, err := plan.ParseLength(req.Text, units)
	if err != nil {
		return lengthAnswer{}, err
	}
	m = math.Round(m*1e4) / 1e4
	return lengthAnswer{Metres: m, Label: plan.Label(m, units), Other: plan.Label(m, other)}, nil
}

func label(req request) (labelAnswer, error) {
	write, err := labeller(req)
	if err != nil {
		return labelAnswer{}, err
	}
	m, ok := number(req.Metres)
	if !ok {
		return labelAnswer{}, say.Errorf("a label was asked for without a number of metres: reload the page")
	}
	return labelAnswer{write(m)}, nil
}

func labels(req request) (labelsAnswer, error) {
	write, err := labeller(req)
	if err != nil {
		return labelsAnswer{}, err
	}
	list, ok := req.Metres.([]any)
	if !ok && req.Metres != nil {
		return labelsAnswer{}, errNoList
	}
	if len(list) > maxLabels {
		return labelsAnswer{}, say.Errorf("%d labels were asked for at once, more than %d: reload the page", len(list), maxLabels)
	}
	out := labelsAnswer{Labels: make([]string, len(list))}
	for i, m := range list {
		if m == nil { // a gap in the list
			continue
		}
		v, ok := number(m)
		if !ok {
			return labelsAnswer{}, errNoList
		}
		out.Labels[i] = write(v)
	}
	return out, nil
}

// labeller is the writing that a request asks for. Form "" rounds to the
// nearest and writes feet, as for the size of a room; "short" keeps clubs in
// inches; "down" is for clearances, never more than there is; "tape" is that in
// both kinds of unit.
func labeller(req request) (func(m float64) string, error) {
	units, _, err := unitsOf(req)
	if err != nil {
		return nil, err
	}
	forms := map[string]func(float64, string) string{
		"": plan.Label, "short": plan.LabelShort, "down": plan.LabelDown, "tape": plan.LabelTape,
		ofSpeed: speedLabel, ofTemperature: temperatureLabel, ofAltitude: altitudeLabel,
	}
	write, ok := forms[req.Form]
	if !ok {
		return nil, say.Errorf("a label of the form %q was asked for, which this program does not know: reload the page", clip(req.Form))
	}
	return func(m float64) string { return write(m, units) }, nil
}

// unitsOf reads the units of a request, imperial when it names none, and the
// other kind.
func unitsOf(req request) (units, other string, err error) {
	switch req.Units {
	case "", plan.UnitsImperial:
		return plan.UnitsImperial, plan.UnitsMetric, nil
	case plan.UnitsMetric:
		return plan.UnitsMetric, plan.UnitsImperial, nil
	}
	return "", "", &plan.FieldError{
		Field:   "units",
		Message: say.Sprintf("units %q are neither %s nor %s", clip(req.Units), plan.UnitsImperial, plan.UnitsMetric),
	}
}

var errNoList = errors.New("labels were asked for without a list of metres: reload the page")

// number reads a number of a request that Decode has read.
func number(tree any) (v float64, ok bool) {
	n, ok := tree.(jsontext.Number)
	if !ok {
		return 0, false
	}
	v, err := n.Float()
	return v, err == nil
}
