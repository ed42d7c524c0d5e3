package swing

import "math"

// plot is what all the channels of one swing are written from. Angles are
// degrees here, as golfers and papers have them.
type plot struct {
	turn          turns
	held, loose   float64 // 1 for a follow-through of that word, else 0
	short         float64 // of the club: 0 for a driver, 1 for a wedge
	steep         float64 // how much steeper than a recorded driver's the shaft stands at address
	size          float64 // of body shifts, which are written for 1.75 m
	stance        Stance
	back, through float64 // how round the swing is: 1 as the rounder recorded golfer's, −1 as the other's

	longer, wrist, path float64 // traits, degrees
	sway, rise          float64 // traits, m
	width               float64 // trait, share of the arm
	clubUp, handsUp     float64 // how much steeper than neutral the planes are
}

// write fills the score of the swing that style and trait (in their own units,
// not standard deviations) make of a figure at address.
//
// Where hands and club go is written after two recorded driver swings (package
// published): each channel was fitted to each recording for a golfer of 1.84 m,
// with the trunk's turns and tilts as below and the lead arm all but straight to
// 0.06 s after impact. A row holds the mean of the two golfers; a second row
// half their difference, along which golfers are spread (TestTablesFitTheRecordings
// fits them anew). For other lengths of club the planes follow the shaft's slope
// at address. How the trunk goes follows the figures of package published and is a
// judgement where none fixes it.
func (f *figure) write(style Style, trait [NumTraits]float64, st Stance, start joints) (score, error) {
	l := f.club.longness()
	p := plot{
		turn: turnsOf(style.Turn), short: 1 - l,
		steep: st.Shaft/degree - 44, size: f.body.Stature / 1.75, stance: st,
		back: between(trait[TraitBack]), through: between(trait[TraitThrough]),
		longer: trait[TraitTurn] / degree, wrist: trait[TraitWrist] / degree, path: trait[TraitPath] / degree,
		sway: trait[TraitSway], rise: trait[TraitRise], width: trait[TraitWidth],
	}
	switch style.Follow {
	case "held":
		p.held = 1
		p.sway, p.rise = p.sway-looseSway, p.rise-looseRise
	case "loose":
		p.loose = 1
		p.sway, p.rise = p.sway+looseSway, p.rise+looseRise
	}
	p.clubUp, p.handsUp = planesOf(style.Plane)
	p.clubUp += trait[TraitPlane] / degree
	p.handsUp += 0.8 * trait[TraitPlane] / degree

	var s score
	p.body(&s)
	p.hands(&s)
	p.club(&s)
	for ch := range numChannels {
		s[ch][kAddress] = start[ch]
	}
	return s, f.meetBall(&s, st, p.clubUp*degree)
}

// How much more a loose golfer, and less one who holds the club back, gives way
// to the sides and rises, m: assumption.
const (
	looseSway = 0.010
	looseRise = 0.008
)

// between turns a trait into how round a swing is. The two recorded golfers
// stand near the ends of what is usual (one is as flat and one as upright as
// skilled golfers go), so most golfers lie between them and hardly any beyond.
func between(z float64) float64 { return 1.2 * z / math.Sqrt(2+z*z) }

// rows returns a channel in radians: the mean of the recorded golfers and half
// their difference, degrees.
func (p *plot) rows(mean, half keys) keys {
	for k := range mean {
		round := p.back
		if k > kImpact {
			round = p.through
		}
		mean[k] += round * half[k]
	}
	return degrees(mean)
}

// body writes how trunk, hips and heel go. A longer turn back goes with a longer
// turn through. Every row has its twelve keys in the order of the constants; zeros
// at impact and at address are filled in elsewhere.
func (p *plot) body(s *score) {
	lean, side, more, short := p.stance.Forward/degree, p.stance.Side/degree, p.longer, p.short
	s[chForward] = degrees(keys{
		lean, lean, lean - 1, lean - 2,
		lean - 1, 0,
		0.86 * lean, 0.72 * lean, 0.54 * lean, 0.42 * lean, 0.3 * lean, 7 - 100*p.rise})
	s[chSide] = degrees(keys{
		side, 0.7 * side, 0.2 * side, -1,
		side, side + 8,
		side + 16, side + 20, side + 15, side + 9, 9, 6})
	chestTop := p.turn.chest + more - 3*short
	s[chChest] = degrees(keys{
		0, 34, 66, chestTop,
		0.46 * chestTop, -32 + 12*short - 0.4*more,
		-58 + 5*short - 0.4*more, -80 - 0.5*more, -94 - 0.5*more, -108 - 0.5*more, -118 - 0.5*more, -124 - 0.5*more})
	s[chPelvis] = degrees(keys{
		0, 12, 31, p.turn.hips + 0.4*more - 2*short,
		4, -39 - 0.5*more,
		-53 - 0.45*more, -66 - 0.3*more, -77 - 0.3*more, -85 - 0.3*more, -92 - 0.3*more, -95 - 0.3*more})

	sway, rise := p.sway, p.rise
	s[chPelvisX] = keys{
		0, -0.01 - sway, -0.02 - sway, -0.025 - sway,
		0.03, 0.10,
		0.108 + 0.4*sway, 0.118 + 0.4*sway, 0.135 + 0.4*sway, 0.15 + 0.5*sway, 0.17 + 0.6*sway, 0.185 + 0.7*sway}
	s[chPelvisY] = keys{
		0, 0, 0.005, 0.01,
		0, -0.02 + 0.01*short,
		-0.02 + 0.01*short, -0.03, -0.05, -0.07, -0.095, -0.11}
	s[chPelvisZ] = keys{
		0, 0, rise / 4, rise/4 - 0.008,
		-0.025, 0,
		0.005 + rise/2, 0.01 + rise, 0.008 + rise, rise - 0.004, rise - 0.01, rise - 0.016}
	for _, ch := range []channel{chPelvisX, chPelvisY, chPelvisZ} {
		for k := range s[ch] {
			s[ch][k] *= p.size
		}
	}
	s[chHeel] = keys{0, 0, 0, 0, 0.05, 0.25, 0.4, 0.55, 0.68, 0.8, 0.92, 1}
}

// hands writes the path of the hands about the hub.
func (p *plot) hands(s *score) {
	path, up, held, loose := p.path, p.handsUp, p.held, p.loose
	s[chHandTrace] = p.rows(keys{
		0, path - 4, path - 9, path - 8,
		path - 12, path + 7,
		path, path + 6, path + 11 - 4*held, path + 14 - 9*held, path + 20 - 16*held, path + 21 - 17*held},
		keys{0, -7, -5, 9, -4, 0, 3, 6, 1, 0, 1, 1})
	s[chHandSlope] = p.rows(keys{
		0, 77 + up, 68 + up, 65 + up,
		65 + up, 0,
		75 + up, 80 + up/2, 69 + up/2 + 7*held, 65 + 9*held, 59 + 15*held, 69 + 5*held},
		keys{0, -6, -14, -9, -6, 0, 2, -7, -8, -4, 1, 8})
	// Shorter clubs stop shorter.
	s[chTheta] = p.rows(keys{
		0, 37, 84, p.turn.hands + 0.7*p.longer - 5*p.short,
		0, 0,
		-56, -97 + 17*held, -135 + 45*held - 2*loose, -171 + 75*held - 4*loose, -210 + 110*held - 4*loose, -221 + 120*held - 4*loose},
		keys{0, -6, -1, 10, 6, 0, -2, -3, -8, -11, -11, -12})
	through := p.through * (1 - held)
	s[chExtend] = keys{
		0, 0.991, p.arm(0.991), p.arm(0.987),
		0.990, 0.993,
		0.992, p.arm(0.951 + 0.003*through - 0.031*held + 0.03*loose), p.arm(0.628 - 0.059*through + 0.18*held + 0.22*loose),
		p.arm(0.579 - 0.057*through + 0.19*held + 0.16*loose), p.arm(0.587 - 0.021*through + 0.16*held), p.arm(0.502 + 0.014*through + 0.25*held)}
}

// arm returns how far the lead arm stretches for a golfer who keeps it straighter
// or bends it more; an arm is never longer than itself.
func (p *plot) arm(usual float64) float64 {
	const most, corner = 0.994, 0.006
	x := usual + p.width - most
	return most + (x-math.Sqrt(x*x+corner*corner))/2 + corner/2
}

// club writes where the shaft points.
func (p *plot) club(s *score) {
	path, up, short, steep, held, loose := p.path, p.clubUp, p.short, p.steep, p.held, p.loose
	s[chClubTrace] = p.rows(keys{
		0, path/2 + 3, path/2 - 17, path/2 - 16,
		path/2 - 10, path / 4,
		path/2 + 5, path - 4, path - 6, path + 10 - 10*held, path + 28 - 28*held, path + 5 - 5*held},
		keys{0, 3, 1, 10, -1, 0, -1, -1, -1, -3, -3, 1})
	s[chClubSlope] = p.rows(keys{
		0, 51 + 0.5*steep + 0.5*up, 59 + 3*short + up, 37 + 3*short + up,
		50 + 0.5*steep + up, 0,
		43 + 0.8*steep + 0.85*up, 39 + 0.4*steep + 0.9*up + 11*held - 4*loose, 50 + 0.2*steep + 0.9*up + 2*held - 5*loose, 57 + 0.5*up - held - 4*loose, 40 + 16*held, 14 + 43*held},
		keys{0, -4, -4, 6, 4, 0, -1, 1, -2, 0, -3, -4})
	// Short irons stop 20–45° short of level (common practice).
	top := p.turn.club + 0.7*p.longer + p.wrist - 22*short
	s[chPhi] = p.rows(keys{
		0, 91, 168 + 0.5*p.wrist, top,
		0, 0,
		-89, -169 + 27*held, -219 + 64*held, -252 + 94*held, -309 + 155*held - 8*loose, -372 + 218*held - 10*loose},
		keys{0, 6, 8, 12, 9, 0, -12, -20 + 9*held, -24 + 16*held, -23 + 18*held, -16 + 16*held, -26 + 26*held})
}
