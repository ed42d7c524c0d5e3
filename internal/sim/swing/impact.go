package swing

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/rules"
	"wideberth/internal/sim/swing/pendulum"
)

// teed is how high over the mat a driver's sole passes at impact, m: the ball is
// on a tee (the height is a judgement between 0.01 and 0.03).
const teed = 0.02

// meetBall fills the key of impact. The shaft stands a few degrees steeper than
// at address (recorded drivers: 3–4°), the club's sole is back at the ball and
// the lead arm is straight: the trunk's tilt at which the lead hand reaches the
// grip follows, and with it the hand plane.
func (f *figure) meetBall(s *score, st Stance, steeper float64) error {
	var j joints
	for ch := range numChannels {
		j[ch] = s[ch][kImpact]
	}
	l := min(1, f.club.longness())
	// Hands about level with the ball for a driver, ahead by 8° for a wedge
	// (shaft lean 5–12° with irons, common practice).
	j[chPhi] = (8 - 6*l) * degree
	j[chClubSlope] = st.Shaft + (1.5+1.8*l)*degree + 0.85*steeper
	angle, slope, trace := turnOf(j[chPhi]), turnOf(j[chClubSlope]), turnOf(j[chClubTrace])
	club := inPlane(&angle, &slope, &trace)
	sole := geom.Vec{X: -(rules.BallRadius + f.club.HeadDepth), Y: f.club.axisToBall()}
	if f.club.Kind == plan.KindDriver {
		sole.Z = teed
	}
	hands := r3.Sub(sole, r3.Scale(f.reach, club))
	lead := r3.Sub(hands, r3.Scale(f.leadAbove, club))
	var trunk core
	fillTurns(j[:chTheta], trunk.turns[:chTheta])
	f.trunkOf(&j, &trunk)
	arm := func(forward float64) float64 { // the share of the lead arm that it takes
		j[chForward] = forward
		lean := turnOf(forward)
		trunk.lean(&lean, &trunk.turns[chSide], &trunk.turns[chChest]) // neither of which changes from here on
		f.shoulder(&trunk)
		return (geom.Norm(r3.Sub(lead, trunk.leadShoulder)) - f.girdle) / f.armLength
	}
	// Standing up takes the shoulder away from the hands.
	top, want := s[chForward][kTop], j[chExtend]
	for range 4 {
		j[chForward] = crossing(top-25*degree, top+12*degree, 1e-9, func(forward float64) float64 { return arm(forward) - want })
		room := f.room(&j, along(hands, -f.toCap, club))
		if room >= 0 {
			break
		}
		// Hips that would meet the butt of the grip give way, and stay away while
		// the hands pass.
		j[chPelvisY] -= room
		trunk.pelvis = f.hips(&j)
		s[chPelvisY][kThrough] -= room
	}
	j[chExtend] = arm(j[chForward])
	f.aim(&j, r3.Sub(hands, trunk.hub))
	for ch := range numChannels {
		s[ch][kImpact] = j[ch]
	}
	if math.IsNaN(j[chTheta]) {
		return pendulum.ErrNoImpact
	}
	return nil
}

// room returns how far (m) the butt of the grip is from trunk, hips and trail
// thigh, less the little that has to stay free.
func (f *figure) room(j *joints, butt geom.Vec) float64 {
	const free = 0.015
	var p Pose
	parts := [...]Part{Trunk, Pelvis, TrailThigh, LeadThigh}
	f.pose(j, parts[0].Set()|parts[1].Set()|parts[2].Set()|parts[3].Set(), &p)
	room := math.Inf(1)
	for _, part := range parts {
		c := &p[part]
		axis := r3.Sub(c.B, c.A)
		at := max(0, min(1, geom.Dot(r3.Sub(butt, c.A), axis)/geom.Dot(axis, axis)))
		room = min(room, geom.Norm(r3.Sub(butt, along(c.A, at, axis)))-c.R-gripRadius-free)
	}
	return room
}
