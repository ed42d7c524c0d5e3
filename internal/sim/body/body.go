// Package body turns what is known of a player (height; perhaps sex, arm span
// or arm length) into the lengths, radii and inertias that the swing is built
// from, together with how unsure the guessed ones are.
//
// Lengths come from straight lines on stature fitted to ANSUR II, a survey of
// 6,068 measured soldiers (tables.go); a few that the survey lacks come from
// the handbook fractions of Drillis & Contini (1966) or from a stated
// assumption (shape.go). The handbook is not used for the arm, which it makes
// about 20 mm short, nor for the shoulder width, which it makes 40–56 mm wide.
package body

import (
	"math"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

// Body is one golfer's build. Lengths are metres, heights are above the sole
// of the bare foot when standing upright, masses kilograms.
//
// The shoulder is taken at the level of the acromion, the bony tip of the
// shoulder, because that is what the survey and a tape both measure from; the
// arm is counted from the same point. The true joint centre lies some 35 mm
// lower (from memory), so a raised arm seems to reach too far by that much,
// but the real shoulder also climbs when the arm goes up: see ShoulderRise.
type Body struct {
	Stature float64 // without shoes
	Shoe    float64 // sole thickness; add it to every height for a shod golfer

	AnkleHeight    float64 // ankle joint
	KneeHeight     float64 // knee joint, mid-patella level
	HipHeight      float64 // hip joint centre
	ShoulderHeight float64 // acromion
	NeckBaseHeight float64 // cervicale, the knob at the foot of the neck (C7)

	HipWidth      float64 // hip joint centre to hip joint centre
	HipBreadth    float64 // over the hips: a pelvis capsule across the body ends HipBreadth/2 - PelvisRadius from the middle
	ShoulderWidth float64 // shoulder joint to shoulder joint
	UpperArm      float64 // shoulder to elbow
	Forearm       float64 // elbow to wrist
	Hand          float64 // wrist to the centre of a grip held in the fist

	HeadHeight  float64 // chin to crown
	HeadLength  float64 // front to back
	ChestDepth  float64 // front to back
	ChestWidth  float64
	FootLength  float64 // bare
	FootBreadth float64

	// Radii of the capsules that stand for the parts; each is at least as
	// thick as the part's thickest place on an average build (shape.go).
	HeadRadius, NeckRadius, TrunkRadius, PelvisRadius float64
	UpperArmRadius, ForearmRadius, HandRadius         float64
	ThighRadius, ShankRadius, FootRadius              float64

	Mass float64 // whole body; guessed from stature, used for inertias only

	ArmSD            float64 // standard deviation of Arm(), given what is known
	ShoulderHeightSD float64 // standard deviation of ShoulderHeight, given stature
	// ArmShoulderCorr is the correlation between those two errors: people with
	// long arms for their height also have high shoulders for their height, so
	// drawing the two independently understates the spread of a reach upwards.
	// It is zero when the arm itself was measured.
	ArmShoulderCorr float64
	// ShoulderRise is how far the shoulder climbs above ShoulderHeight when the
	// arm is stretched straight up (survey mean; person to person SD 36–40 mm).
	ShoulderRise float64

	Notes []string // sentences about guesses the reader should know of
}

// Arm returns the length from the shoulder to the centre of the grip with the
// arm straight, m.
func (b Body) Arm() float64 { return b.UpperArm + b.Forearm + b.Hand }

const (
	// armTapeSD is the error of an arm taken with a tape at home, m: assumption,
	// from the repeat error of a bony landmark felt through the skin.
	armTapeSD = 0.010
	// spanTapeSD is the error of a span marked on a wall and taped, m: assumption.
	spanTapeSD = 0.010
	// extrapolationReach is how far outside the survey (m of stature) the
	// standard deviations have doubled: assumption. The survey says nothing
	// there, and a guess must not look as sure as inside.
	extrapolationReach = 0.25
	// strangeArm is how many standard deviations a measured arm or span may
	// differ from the guess by height before a note asks for the tape again.
	strangeArm = 3.5
)

// New builds the body of a player. The player must have been validated and
// defaulted by package plan; New does not check ranges and cannot fail.
//
// Arm, when given, sets the straight arm and scales its three segments alike.
// Span, when given without Arm, sets the arm by the survey's regression of arm
// on stature and span together.
func New(p plan.Player) Body {
	s := surveyFor(p.Sex)
	h := p.Height
	b := Body{
		Stature:        h,
		Shoe:           p.Shoe,
		AnkleHeight:    ankleFraction * h,
		KneeHeight:     s.kneeHeight.at(h),
		HipHeight:      s.hipHeight.at(h),
		ShoulderHeight: s.shoulderHeight.at(h),
		NeckBaseHeight: s.cervicaleHeight.at(h),
		HipWidth:       hipWidthFraction * h,
		HipBreadth:     hipBreadthFraction * h,
		ShoulderWidth:  s.biacromial.at(h) - 2*shoulderInset,
		UpperArm:       s.upperArm.at(h),
		Forearm:        s.forearm.at(h),
		Hand:           s.palm.at(h) / 2,
		ArmSD:          s.armSD / 1000,
		ShoulderRise:   s.shoulderRise / 1000,
	}
	b.ShoulderHeightSD = s.shoulderHeight.sd / 1000
	b.ArmShoulderCorr = s.armShoulderCorr
	b.shape(s)
	b.Mass = s.bodyMassIndex * h * h

	widen := 1.0
	if out := s.outside(h); out > 0 {
		widen = 1 + out/extrapolationReach
		b.Notes = append(b.Notes, s.outsideNote(h))
	}
	b.ShoulderHeightSD *= widen
	b.ArmSD *= widen
	guessed, guessedSD := b.Arm(), b.ArmSD

	switch {
	case p.Arm > 0:
		b.scaleArm(p.Arm)
		b.ArmSD = armTapeSD
		b.ArmShoulderCorr = 0
	case p.Span > 0:
		b.scaleArm(s.armOnSpan.at(h, p.Span))
		b.ArmSD = geom.Hypot(s.armOnSpan.sd/1000*widen, s.armOnSpan.span*spanTapeSD)
	}
	if off := (b.Arm() - guessed) / guessedSD; math.Abs(off) > strangeArm {
		b.Notes = append(b.Notes, fmt.Sprintf(
			"The measured arm or span is far from usual for this height (shoulder to grip %.2f m, usual %.2f m): measure it again.",
			b.Arm(), guessed))
	}
	return b
}

// scaleArm stretches the three arm segments alike so that they add up to arm.
func (b *Body) scaleArm(arm float64) {
	k := arm / b.Arm()
	b.UpperArm *= k
	b.Forearm *= k
	b.Hand *= k
}
