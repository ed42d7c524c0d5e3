package swing

// plot is what all the channels of one swing are written from. Angles are
// degrees here, as golfers and papers have them.
type plot struct {
	turn turns
	end  finishes

	longness, short float64 // of the club: 1 and 0 for a driver, 0 and 1 for a wedge
	arm             float64 // m
	size            float64 // of body shifts, which are written for 1.75 m
	stance          Stance

	longer, wrist, around, path float64 // traits, degrees
	sway, rise                  float64 // traits, m
	width                       float64 // of the follow-through: 1 and the trait
	clubUp, handsUp             float64 // how much steeper than neutral the planes are
}

// write fills the score of the swing that style and trait (in their own units,
// not standard deviations) make of a figure at address. Its rows follow the
// measured figures of the package published, against which the whole swing is held;
// what none of them fixes is a judgement.
func (f *figure) write(style Style, trait [NumTraits]float64, st Stance, start joints) (score, error) {
	l := f.club.longness()
	p := plot{
		turn: turnsOf(style.Turn), end: finishesOf(style.Follow),
		longness: l, short: 1 - l,
		arm: f.body.Arm(), size: f.body.Stature / 1.75, stance: st,
		longer: trait[TraitTurn] / degree, wrist: trait[TraitWrist] / degree,
		around: trait[TraitAround] / degree, path: trait[TraitPath] / degree,
		sway: trait[TraitSway], rise: trait[TraitRise], width: 1 + trait[TraitWidth],
	}
	p.clubUp, p.handsUp = planesOf(style.Plane)
	p.clubUp += trait[TraitPlane] / degree
	p.handsUp += 0.8 * trait[TraitPlane] / degree

	var s score
	p.body(&s)
	p.hands(&s)
	p.club(&s)
	for _, ch := range []channel{chTheta, chHandSlope, chReach, chPhi, chClubSlope} {
		s[ch][kAddress] = start[ch]
	}
	return s, f.meetBall(&s, st, p.clubUp*degree)
}

// body writes how trunk, hips and heel go. A longer turn back goes with a longer
// turn through. Every row has its ten keys in the order of the constants; zeros
// at impact and at address are filled in later.
func (p *plot) body(s *score) {
	lean, side, more, short := p.stance.Forward/degree, p.stance.Side/degree, p.longer, p.short
	up := max(0.5, 1+6*p.rise) // a golfer who rises also stands up out of the lean
	s[chForward] = degrees(keys{
		lean, lean, lean, lean - 1,
		lean - 2, 0,
		0, 0.6 * lean / up, 0.35 * lean, 4 - 100*p.rise})
	s[chSide] = degrees(keys{
		side, 0.7 * side, 0.2 * side, -1,
		side, side + 3,
		side + 5, side + 4, 3, 0})
	chestTop := p.turn.chest + more - 3*short
	s[chChest] = degrees(keys{
		0, 30, 66, chestTop,
		0.46 * chestTop, -31 + 12*short - 0.4*more,
		-50 + 5*short - 0.4*more, -84 - 0.5*more, -108 - 0.5*more, -122 - 0.5*more})
	s[chPelvis] = degrees(keys{
		0, 12, 31, p.turn.hips + 0.4*more - 2*short,
		4, -39 - 0.5*more,
		-57 - 0.45*more, -75 - 0.3*more, -90 - 0.3*more, -95 - 0.3*more})

	sway, rise := p.sway, p.rise
	s[chPelvisX] = keys{
		0, -0.01 - sway/2, -0.02 - sway, -0.025 - sway,
		0.03, 0.10,
		0.112, 0.12 + sway/2, 0.135 + sway, 0.14 + sway}
	s[chPelvisY] = keys{
		0, 0, 0.005, 0.01,
		0, -0.025 + 0.01*short,
		-0.03 + 0.01*short, -0.025, -0.01, 0}
	s[chPelvisZ] = keys{
		0, 0, rise / 4, rise/4 - 0.008,
		-0.025, 0,
		0.005 + rise/2, rise, rise - 0.012, rise - 0.02}
	for _, ch := range []channel{chPelvisX, chPelvisY, chPelvisZ} {
		for k := range s[ch] {
			s[ch][k] *= p.size
		}
	}
	s[chHeel] = keys{0, 0, 0, 0, 0, 0.25, 0.4, 0.65, 0.9, 1}
}

// hands writes the path of the hands about the hub, in planes of about 78° going
// back, 67° down and 71° through (CMU recording). On the way down they are lower
// than on the way back (common practice) and nearer the ball, as in that
// recording; golfers differ in the latter.
func (p *plot) hands(s *score) {
	path, up, end := p.path, p.handsUp, p.end
	s[chHandTrace] = degrees(keys{
		0, path - 6, path - 8, path - 8,
		path + 6, path + 7,
		path + 10, path + 12, path + 12, path + 12})
	s[chHandSlope] = degrees(keys{
		0, 78 + up, 79 + up, 84 + up,
		66 + up, 0,
		70 + up, 73 + up/2, 75 + up/2, 78})
	// Shorter clubs stop shorter.
	s[chTheta] = degrees(keys{
		0, 36, 88, p.turn.hands + 0.7*p.longer - 5*p.short,
		0, 0,
		-50, -92, 0.86*end.hands + 1, end.hands})
	arm, wide := p.arm, p.arm*p.width
	s[chReach] = keys{
		0, 0.90 * arm, 0.78 * arm, 0.73 * arm,
		0.82 * arm, 0,
		0.97 * arm, 0.98 * min(1.04*arm, wide), 0.97 * (0.3 + 0.7*end.out) * wide, end.out * wide}
}

// club writes where the shaft points. Its plane is flatter than the hands', and
// the shaft points a little inside the line when it is level on the way down and
// through, which is what keeps the clubhead's plane as flat as it is measured.
func (p *plot) club(s *score) {
	path, up, around, end, short := p.path, p.clubUp, p.around, p.end, p.short
	shaft := p.stance.Shaft / degree
	s[chClubTrace] = degrees(keys{
		0, path / 2, path / 2, path / 2,
		path/2 - 9 + 1.2*up, path / 4,
		path/2 + 7 - 1.2*up, path + 10, path + 14, path + 16})
	s[chClubSlope] = degrees(keys{
		0, shaft + 0.5*up, 60 + 3*short + up, 58 + 3*short + up,
		43 + 7*short + up, 0,
		shaft - 3 + 3*p.longness + 0.6*up, 45 + 0.9*up - 0.3*around, 27 + 0.7*up - around, end.slope - around})
	// Short irons stop 20–45° short of level (common practice).
	top := p.turn.club + 0.7*p.longer + p.wrist - 22*short
	const armsLevel = -164
	s[chPhi] = degrees(keys{
		0, 90, 180 + 0.5*p.wrist, top,
		0, 0,
		-92, armsLevel, armsLevel + 0.76*(end.club-armsLevel) - 0.2*around, end.club - 0.4*around})
}
