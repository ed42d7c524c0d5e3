package fit

import "slices"

// The verdicts, from best to worst.
const (
	Clear   = "clear"   // clearance at or above the plan's margin
	Tight   = "tight"   // under the margin, but nothing is touched
	Strikes = "strikes" // something is touched
)

// Worse returns the worse of two verdicts.
func Worse(a, b string) string {
	rising := []string{Clear, Tight, Strikes}
	if slices.Index(rising, b) > slices.Index(rising, a) {
		return b
	}
	return a
}

// VerdictOf is the one rule: the verdict for a clearance (m) under a margin (m).
func VerdictOf(clearance, margin float64) string {
	switch {
	case clearance < 0:
		return Strikes
	case clearance < margin:
		return Tight
	}
	return Clear
}
