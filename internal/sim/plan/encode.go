package plan

import (
	"math"

	"wideberth/internal/lean/json"
)

// JSON is the canonical compact encoding: fields in the order of the schema,
// shortest numbers that read back the same. The same plan gives the same bytes.
// A plan that holds NaN or an infinity, which Validate refuses, has none: nil.
func (p Plan) JSON() []byte {
	data, err := json.Encode(p)
	if err != nil {
		return nil
	}
	return data
}

// roundTenthMM rounds a length (m) to 0.1 mm, finer than any tape reads.
func roundTenthMM(v float64) float64 { return math.Round(v*1e4) / 1e4 }
