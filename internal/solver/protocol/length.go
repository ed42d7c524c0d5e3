package protocol

import (
	"math"

	"wideberth/internal/units"
)

type lengthAnswer struct {
	Metres float64 `json:"metres"` // to 0.1 mm, as links keep it
	Label  string  `json:"label"`  // as the page writes it
}

// length reads a length that somebody typed where it is no field of the plan.
func length(req request) (lengthAnswer, error) {
	m, err := units.ParseLength(req.Text, req.Units)
	return lengthAnswer{math.Round(m*1e4) / 1e4, units.Label(m, req.Units)}, err
}
