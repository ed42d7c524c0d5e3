package swing

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
)

// meetBall fills the key of impact. The hands come through higher than they
// stood (by about 0.07 statures in the one recorded swing; shaft some degrees
// steeper), the club's sole is back at the ball and the lead arm is straight:
// the trunk's tilt at which the lead hand reaches the grip follows, and with it
// the hand plane.
func (f *figure) meetBall(s *score, st Stance, steeper float64) error {
	var j joints
	for ch := range numChannels {
		j[ch] = s[ch][kImpact]
	}
	l := min(1, f.club.longness())
	// Hands about level with the ball for a driver, ahead by 8° for a wedge
	// (shaft lean 5–12° with irons, common practice).
	j[chPhi] = (8 - 6*l) * degree
	j[chClubSlope] = st.Shaft + (1.5+6*l)*degree + 0.6*steeper
	club, _ := inPlane(j[chPhi], j[chClubSlope], j[chClubTrace])
	sole := geom.Vec{X: -(ballRadius + f.club.HeadDepth), Y: f.club.HeadSpan/2 + f.club.HeadRadius/2}
	hands := r3.Sub(sole, r3.Scale(f.reach, club))
	lead, trail := r3.Sub(hands, r3.Scale(leadAbove, club)), r3.Add(hands, r3.Scale(trailBelow, club))
	arm := func(forward float64) float64 {
		j[chForward] = forward
		c := f.trunkOf(&j)
		return max(geom.Norm(r3.Sub(lead, c.leadShoulder)),
			geom.Norm(r3.Sub(trail, c.trailShoulder))-girdleEase) - f.armLimit
	}
	// Standing up takes the shoulder away from the hands.
	top := s[chForward][kTop]
	j[chForward] = crossing(top-18*degree, top+4*degree, 1e-9, arm)
	f.aim(&j, r3.Sub(hands, f.trunkOf(&j).hub))
	for _, ch := range []channel{chTheta, chHandSlope, chReach, chPhi, chClubSlope, chForward} {
		s[ch][kImpact] = j[ch]
	}
	s[chForward][kShaftThrough] = j[chForward] - 3*degree
	if math.IsNaN(j[chTheta]) {
		return ErrNoImpact
	}
	return nil
}
