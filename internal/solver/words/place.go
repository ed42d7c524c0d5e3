package words

import "wideberth/internal/units"

// onTheMiddle is how near to the middle of the room a ball counts as in it, m.
const onTheMiddle = 0.5e-3

// OffMiddle says how far a ball at y lies off the middle of a room of a width,
// facing the target: "14 in left", "in the middle".
func (w Words) OffMiddle(y, width float64) string {
	switch off := y - width/2; {
	case off > onTheMiddle:
		return units.LabelShort(off, w.Units) + " left"
	case off < -onTheMiddle:
		return units.LabelShort(-off, w.Units) + " right"
	}
	return "in the middle"
}
