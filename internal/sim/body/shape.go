package body

// Handbook fractions of stature: R. Drillis and R. Contini, Body Segment
// Parameters, Technical Report 1166.03, New York University, 1966, as restated
// by D. A. Winter, Biomechanics and Motor Control of Human Movement, 4th ed.,
// 2009, Fig. 4.1. Read in texts that restate the figure, not in the book.
const (
	ankleFraction       = 0.039
	footBreadthFraction = 0.055
	chestWidthFraction  = 0.174
	hipBreadthFraction  = 0.191
)

// Joint centres, where the survey only has landmarks on the skin.
const (
	// shoulderInset is how far the shoulder joint lies inside the tip of the
	// shoulder, m, each side: assumption, from the overhang of the acromion
	// past the centre of the head of the upper-arm bone (5–15 mm).
	shoulderInset = 0.010
	// hipWidthFraction is the distance between the hip joint centres over
	// stature: assumption. About 0.72 of a breadth of 0.24 m between the front
	// points of the pelvis (Bell, Pedersen & Brand 1990, from memory) on a
	// stature of 1.75 m. The handbook's 0.191 is the breadth over the hips, not
	// between the joints.
	hipWidthFraction = 0.100
)

// Radii of limb and trunk capsules over stature: the greatest girth (neck 398,
// flexed upper arm 358, flexed forearm 310, thigh 626, calf 392 mm) over 2π,
// and for the pelvis half the buttock depth (255 mm), of men of 1.756 m. ANSUR
// II means from memory, rounded up; eight men read from the public file agree
// within 8 % (testdata/body/ansur2_girths.csv). Greatest girth, so that no part sticks out of its
// capsule; clothing is not counted.
const (
	neckRadiusFraction     = 0.037
	upperArmRadiusFraction = 0.033
	forearmRadiusFraction  = 0.029
	thighRadiusFraction    = 0.057
	shankRadiusFraction    = 0.036
	pelvisRadiusFraction   = 0.073
	// handRadiusFraction is half the breadth of a hand (88 mm, same source)
	// with a little for the thumb: assumption.
	handRadiusFraction = 0.027
)

// shape fills in the lengths and radii that only say how thick the parts are.
func (b *Body) shape(s survey) {
	h := b.Stature
	// The eyes lie half way between chin and crown (drawing rule; the survey's
	// mean then gives 0.130 of stature, which is the handbook's head).
	// A small child's head, far outside the survey, is kept at least round.
	b.HeadLength = s.headLength.at(h)
	b.HeadHeight = max(2*s.eyeToCrown.at(h), b.HeadLength)
	b.ChestDepth = s.chestDepth.at(h)
	b.ChestWidth = chestWidthFraction * h
	b.FootLength = s.footLength.at(h)
	b.FootBreadth = footBreadthFraction * h

	b.HeadRadius = b.HeadLength / 2
	b.NeckRadius = neckRadiusFraction * h
	// A capsule is round and a chest is not: the wider of the two wins.
	b.TrunkRadius = max(b.ChestDepth, b.ChestWidth) / 2
	b.PelvisRadius = pelvisRadiusFraction * h
	b.UpperArmRadius = upperArmRadiusFraction * h
	b.ForearmRadius = forearmRadiusFraction * h
	b.HandRadius = handRadiusFraction * h
	b.ThighRadius = thighRadiusFraction * h
	b.ShankRadius = shankRadiusFraction * h
	b.FootRadius = b.FootBreadth / 2
}
