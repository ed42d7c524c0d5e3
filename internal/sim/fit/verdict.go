package fit

import "slices"

// Verdict is how a clearance is judged.
type Verdict string

// The verdicts, from best to worst.
const (
	Clear   Verdict = "clear"   // clearance at or above the plan's margin
	Tight   Verdict = "tight"   // under the margin, but nothing is touched
	Strikes Verdict = "strikes" // something is touched
)

// Worse returns the worse of two verdicts.
func (v Verdict) Worse(other Verdict) Verdict {
	rising := []Verdict{Clear, Tight, Strikes}
	if slices.Index(rising, other) > slices.Index(rising, v) {
		return other
	}
	return v
}

// VerdictOf is the one rule: the verdict for a clearance (m) under a margin (m).
func VerdictOf(clearance, margin float64) Verdict {
	switch {
	case clearance < 0:
		return Strikes
	case clearance < margin:
		return Tight
	}
	return Clear
}
