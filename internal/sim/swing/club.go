package swing

import (
	"math"

	"wideberth/internal/sim/plan"
)

// Club is what the swing needs to know of a club, metres, kilograms, radians.
type Club struct {
	Kind   string
	Length float64 // along the shaft axis from the grip cap to the sole
	Lie    float64 // shaft to ground when the head soles flat

	HeadRadius float64 // of the capsule that stands for the head
	HeadSpan   float64 // length of that capsule's axis, heel to toe
	HeadDepth  float64 // half of the head, face to back: how far the head stops behind the ball

	// About the middle of the grip, where the wrists turn it:
	Mass, Moment, Spin float64 // whole mass, first moment (kg m), inertia (kg m²)
}

// Where the hands are on the club, metres. Common practice, no source: a few
// centimetres of grip stand out past the lead hand, and a hand covers 9 cm.
const (
	wholeHands  = 1.75  // m: of this stature and over; children's hands cover less
	gripToCap   = 0.10  // middle of both hands to the grip cap
	leadAbove   = 0.040 // centre of the lead hand above that middle
	trailBelow  = 0.045 // centre of the trail hand below it
	gripLength  = 0.27
	gripRadius  = 0.0135
	shaftRadius = 0.0065
)

// Masses that hardly differ between clubs, kg: common practice, no source.
const (
	gripMass = 0.050
)

// head holds the size and mass of a clubhead by kind. Driver: at most 127 mm
// heel to toe (Equipment Rules Part 2, 4b, from memory); mass within 1 % of the 204 g
// measured in Proceedings (MDPI) 49(1):47 (2020), read. The others: common practice, no
// source; irons 250–300 g.
type head struct{ radius, span, depth, mass, shaftMass float64 }

func headOf(kind string) head {
	switch kind {
	case "driver":
		return head{0.048, 0.030, 0.055, 0.202, 0.062}
	case "wood":
		return head{0.040, 0.028, 0.045, 0.215, 0.068}
	case "hybrid":
		return head{0.034, 0.034, 0.033, 0.235, 0.078}
	case "wedge":
		return head{0.029, 0.030, 0.012, 0.300, 0.110}
	default:
		return head{0.028, 0.030, 0.012, 0.270, 0.100}
	}
}

// HeadMass is the mass of a clubhead by plan.Club.Kind, kg.
func HeadMass(kind string) float64 { return headOf(kind).mass }

// NewClub derives a Club from the plan's club, whose defaults are filled in.
func NewClub(c plan.Club) Club {
	h := headOf(c.Kind)
	club := Club{Kind: c.Kind, Length: c.Length, Lie: c.Lie * math.Pi / 180,
		HeadRadius: h.radius, HeadSpan: h.span, HeadDepth: h.depth}
	reach := club.Reach()
	grip := gripLength/2 - gripToCap // grip's middle below the hands
	shaft := c.Length/2 - gripToCap  // shaft's middle below the hands
	club.Mass = h.mass + h.shaftMass + gripMass
	club.Moment = h.mass*reach + h.shaftMass*shaft + gripMass*grip
	club.Spin = h.mass*reach*reach +
		h.shaftMass*(shaft*shaft+c.Length*c.Length/12) +
		gripMass*(grip*grip+gripLength*gripLength/12)
	return club
}

// Reach returns the distance from the middle of the hands to the sole, m.
func (c Club) Reach() float64 { return c.Length - gripToCap }

// longness places a club between the wedge (0) and the driver (1) by its
// length, for everything that common practice grades through the set.
func (c Club) longness() float64 {
	const wedge, driver = 0.90, 1.156 // m
	return min(1.25, max(-0.25, (c.Length-wedge)/(driver-wedge)))
}

// axisToBall returns how far (m) the point where the shaft's axis meets the mat
// lies on the golfer's side of the ball, when the middle of the head is at it.
func (c Club) axisToBall() float64 { return c.HeadSpan/2 + c.HeadRadius/2 }
