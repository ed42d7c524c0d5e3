package swing

import "wideberth/internal/sim/plan"

// Trait names one way in which one swing of a golfer differs from the next.
type Trait int

// The traits of the family.
const (
	TraitPlane   Trait = iota // slope of hand and club planes
	TraitTurn                 // length of the turn at the top
	TraitWrist                // wrist set at the top
	TraitSway                 // hips away from the target going back, and to it going through
	TraitRise                 // rise of the body
	TraitWidth                // how straight the lead arm stays
	TraitBack                 // how round the way back is, between the recorded golfers
	TraitThrough              // how round the way through is, between the recorded golfers
	TraitStand                // distance of the hands from the ball at address
	TraitHang                 // how far out from the body the arms are held at address
	TraitArm                  // arm length, when it was guessed from height
	TraitPath                 // floor line of the planes to the left or right
	NumTraits
)

var traitNames = [NumTraits]string{
	"steeper plane", "longer turn", "longer wrist set", "sway", "rise of the body",
	"straighter arms", "rounder way back", "rounder way through", "hands farther off", "arms held out", "longer arms", "path to the left",
}

func (t Trait) String() string { return traitNames[t] }

// Variation places one swing in its family: each trait in standard deviations
// from the golfer's central swing. The zero value is the central swing.
type Variation [NumTraits]float64

// Style is how a golfer swings, from the plan's words, and how he stands where a
// tape has said so.
type Style struct {
	Turn, Plane, Follow string

	BallToToes, BallToHands float64 // at address with the driver, m; 0 where nobody measured
}

// StyleOf returns the style of a player whose defaults are filled in.
func StyleOf(p plan.Player) Style {
	return Style{Turn: p.Turn, Plane: p.Plane, Follow: p.Follow, BallToToes: p.BallToToes, BallToHands: p.BallToHands}
}

// spread returns one standard deviation of each trait but those of the address
// (see standing): radians, metres, or for TraitWidth a fraction of the arm, and for
// the two of roundness the traits themselves. What is known is the size between skilled
// golfers: club plane slope 2–4° (Kwon et al. 2012, from memory), trunk turn at
// the top 7° (Zheng et al. 2008, read in the abstract), floor line of the arm
// plane 15° (Coleman and Rankin 2005, read in the abstract; most of it is lost
// between hands and club). The rest is assumed, at the size of the scatter of a
// clubhead's path at its high points, a few centimetres for good players and
// 10–15 cm for beginners (common practice, no source). The tests hold the first
// two against the family.
func (s Style) spread(armSD float64) [NumTraits]float64 {
	sd := [NumTraits]float64{
		TraitPlane: 2.4 * degree, TraitTurn: 6 * degree, TraitWrist: 7 * degree,
		TraitSway: 0.034, TraitRise: 0.012, TraitWidth: 0.015, TraitBack: 1, TraitThrough: 1,
		TraitArm: armSD, TraitPath: 2.5 * degree,
	}
	scale := 1.0
	switch s.Follow {
	case "held":
		scale = 0.9
	case "loose":
		scale = 1.1
	}
	for _, t := range []Trait{TraitRise, TraitWidth, TraitThrough, TraitPath} {
		sd[t] *= scale
	}
	return sd
}
