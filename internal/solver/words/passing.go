package words

import (
	"strings"

	"wideberth/internal/sim/fit"
)

// Passing says in one short line what is nearest to anything at a moment of a
// swing: "clubhead 4 1/2 in from left wall · 62 mph".
func (w Words) Passing(p fit.Passing) string {
	gap := w.Gap(p.Clearance) + " from "
	if p.Clearance < 0 {
		gap = w.past(p.Clearance) + " past "
	}
	out := strings.TrimPrefix(part(p.Part), "the ") + " " + gap + p.Surface
	if p.Speed < slow {
		return out
	}
	return out + " · " + w.SpeedUp(p.Speed)
}
