package swing

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
)

// score is a whole swing on paper: every channel at every key moment.
type score [numChannels]keys

// degrees fills a channel from a row of degrees.
func degrees(row keys) keys {
	for i := range row {
		row[i] *= degree
	}
	return row
}

// turns holds what the word for a player's turn means, degrees: shoulder line
// and hips at the top, and the hands' and the club's angle there for a driver.
//
// Shoulder line over the acromia 85–105°, hips 40–55° (swing figures collected
// from McTeigue et al. 1994, read; Cheetham et al. 2001 and Myers et al. 2008,
// from memory). The hands' and the club's angles put the lead arm 20–50° above
// level and a driver's shaft about level (common practice, no source).
type turns struct{ chest, hips, hands, club float64 }

func turnsOf(word string) turns {
	switch word {
	case "compact":
		return turns{80, 43, 128, 232}
	case "long":
		return turns{103, 54, 150, 270}
	default:
		return turns{92, 49, 140, 254}
	}
}

// finishes holds what the word for a follow-through means: the hands' and the
// club's angle at the end (degrees), the slope of the club's plane there
// (negative: the head hangs behind the back) and how far the arms stay out, as a
// fraction of their length.
type finishes struct{ hands, club, slope, out float64 }

func finishesOf(word string) finishes {
	switch word {
	case "held":
		return finishes{-106, -168, 47, 0.88}
	case "loose":
		return finishes{-162, -218, -52, 0.74}
	default:
		return finishes{-178, -236, -70, 0.64}
	}
}

// planesOf returns how much steeper than neutral (degrees) the club's and the
// hands' planes are.
func planesOf(word string) (club, hands float64) {
	switch word {
	case "upright":
		return 5, 5
	case "flat":
		return -5, -6
	default:
		return 0, 0
	}
}

// write fills the score of the swing that style and trait (in their own units,
// not standard deviations) make of a figure at address. The shape of the hand
// path follows the one recorded full swing that could be read (CMU Graphics Lab
// motion capture: planes of 78° back, 67° down and 71° through, hub radius,
// heights at the top and the finish); turns and tilts follow the published
// means beside turnsOf; what has no source is a judgement that the tests bound.
func (f *figure) write(style Style, trait [NumTraits]float64, st Stance, start joints) (score, error) {
	var s score
	turn, end := turnsOf(style.Turn), finishesOf(style.Follow)
	clubUp, handUp := planesOf(style.Plane)
	l := f.club.longness()
	size := f.body.Stature / 1.75 // body shifts are sized for 1.75 m
	arm := f.body.Arm()
	longer := trait[TraitTurn] / degree

	// Shorter clubs stop shorter (20–45° for short irons, common practice).
	short := 1 - l
	chestTop := turn.chest + longer - 3*short
	hipsTop := turn.hips + 0.4*longer - 2*short
	handsTop := turn.hands + 0.7*longer - 5*short
	clubTop := turn.club + 0.7*longer + trait[TraitWrist]/degree - 22*short

	fwd := st.Forward / degree
	side := st.Side / degree
	up := max(0, 1+6*trait[TraitRise]) // a golfer who rises also stands up out of the tilt
	s[chForward] = degrees(keys{fwd, fwd, fwd, fwd - 1, fwd - 2, 0, 0, 0.6 * fwd / max(0.5, up), 0.35 * fwd, 4 - 100*trait[TraitRise]})
	s[chSide] = degrees(keys{side, side * 0.7, side * 0.2, -1, side, side + 3, side + 5, side + 4, 3, 0})
	s[chChest] = degrees(keys{0, 30, 66, chestTop, 0.46 * chestTop, -31 + 12*short - 0.4*longer, -50 + 5*short - 0.4*longer, -84 - 0.5*longer, -108 - 0.5*longer, -122 - 0.5*longer})
	s[chPelvis] = degrees(keys{0, 12, 31, hipsTop, 4, -39 - 0.5*longer, -57 - 0.45*longer, -75 - 0.3*longer, -90 - 0.3*longer, -95 - 0.3*longer})

	sway := trait[TraitSway]
	s[chPelvisX] = keys{0, -0.01 - sway/2, -0.02 - sway, -0.025 - sway, 0.03, 0.10, 0.112, 0.12 + sway/2, 0.135 + sway, 0.14 + sway}
	s[chPelvisY] = keys{0, 0, 0.005, 0.01, 0, -0.025 + 0.01*short, -0.03 + 0.01*short, -0.025, -0.01, 0}
	rise := trait[TraitRise]
	s[chPelvisZ] = keys{0, 0, rise / 4, rise/4 - 0.008, -0.025, 0, 0.005 + rise/2, rise, rise - 0.012, rise - 0.02}
	for _, ch := range []channel{chPelvisX, chPelvisY, chPelvisZ} {
		for k := range s[ch] {
			s[ch][k] *= size
		}
	}
	s[chHeel] = keys{0, 0, 0, 0, 0, 0.25, 0.4, 0.65, 0.9, 1}

	steeper := trait[TraitPlane] / degree
	hands := handUp + 0.8*steeper
	club := clubUp + steeper
	shaft := st.Shaft / degree
	around := trait[TraitAround] / degree

	path := trait[TraitPath] / degree
	s[chHandTrace] = degrees(keys{0, -6 + path, -8 + path, -8 + path, 6 + path, 7 + path, 10 + path, 12 + path, 12 + path, 12 + path})
	s[chClubTrace] = degrees(keys{0, path / 2, path / 2, path / 2, path/2 - 9 + 1.2*club, path / 4, path/2 + 7 - 1.2*club, 10 + path, 14 + path, 16 + path})
	startSlope := start[chHandSlope] / degree
	s[chHandSlope] = degrees(keys{startSlope, 78 + hands, 79 + hands, 84 + hands, 66 + hands, 0, 70 + hands, 73 + hands/2, 75 + hands/2, 78})
	s[chClubSlope] = degrees(keys{shaft, shaft + 0.5*club, 60 + 3*short + club, 58 + 3*short + club, 43 + 7*short + club, 0,
		shaft - 3 + 3*l + 0.6*club, 45 + 0.9*club - 0.3*around, 27 + 0.7*club - around, end.slope - around})
	s[chTheta] = degrees(keys{0, 36, 88, handsTop, 0, 0, -50, -92, 0.86*end.hands + 1, end.hands})
	wrist := trait[TraitWrist] / degree
	s[chPhi] = degrees(keys{0, 90, 180 + 0.5*wrist, clubTop, 0, 0, -92, -164, -164 + 0.76*(end.club+164) - 0.2*around, end.club - 0.4*around})
	width := 1 + trait[TraitWidth]
	s[chReach] = keys{0, 0.90 * arm, 0.78 * arm, 0.73 * arm, 0.82 * arm, 0,
		0.97 * arm, 0.98 * arm * min(1.04, width), (0.3 + 0.7*end.out) * 0.97 * arm * width, end.out * arm * width}

	for ch := range numChannels {
		switch ch {
		case chTheta, chHandSlope, chReach, chPhi, chClubSlope:
			s[ch][kAddress] = start[ch]
		}
	}
	return s, f.meetBall(&s, st, club*degree)
}

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
