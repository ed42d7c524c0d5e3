package ball

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
)

// strike holds what a kind of club brings to impact, besides the mass of its head
// (swing.HeadMass). Restitution: the 0.83 limit for a driver's face (USGA 1998), about
// 0.78 for a face without spring (former USGA technical director). Attack
// angles are radar averages of tour players, from memory. Tee heights (ball's
// centre above the mat) are common practice: 38–50 mm for a driver.
type strike struct {
	restitution float64
	attack      float64 // rad, negative down
	centre      float64 // ball's centre above the standing surface, m
}

// strikes gives the figures by plan.Club.Kind.
var strikes = map[string]strike{
	plan.KindDriver: {0.83, -1 * degree, 0.045},
	plan.KindWood:   {0.81, -3 * degree, 0.030},
	plan.KindHybrid: {0.80, -3 * degree, Radius},
	plan.KindIron:   {0.78, -4 * degree, Radius},
	plan.KindWedge:  {0.78, -5 * degree, Radius},
}

// Restitutions returns the restitution of a driver's face, and the least and the
// most of all other kinds of club.
func Restitutions() (driver, least, most float64) {
	least, most = math.Inf(1), math.Inf(-1)
	for kind, s := range strikes {
		if kind != plan.KindDriver {
			least, most = min(least, s.restitution), max(most, s.restitution)
		}
	}
	return strikes[plan.KindDriver].restitution, least, most
}

func strikeOf(c plan.Club) strike {
	s, ok := strikes[c.Kind]
	if !ok {
		s = strikes[plan.KindIron]
	}
	return s
}

// BallOf returns the club's own ball, or the usual one of plan.DefaultClub.
func BallOf(c plan.Club) plan.Ball {
	if c.Ball == nil {
		c.Ball = plan.DefaultClub(c.Kind, c.Name).Ball
	}
	if c.Ball == nil { // a kind that Validate refuses
		return *plan.DefaultClub(plan.KindIron, "").Ball
	}
	return *c.Ball
}

// Smash returns ball speed over clubhead speed for a centred hit with the club.
//
// Along the face's normal V = U cos δ (1+e)/(1+m/M). Along the face the ball
// leaves rolling, V = U sin δ · β/(1+β+β m/M), with β = I/(m r²): the impulse
// that stops the slip at the contact. The angle δ between path and
// normal is the one that sends the ball off at the club's launch angle, given
// its kind's attack angle (A. R. Penner, Rep. Prog. Phys. 66:131–171, 2003,
// treats impact in this form; written from memory).
func Smash(c plan.Club) float64 {
	s := strikeOf(c)
	ratio := Mass / swing.HeadMass(c.Kind)
	normal := (1 + s.restitution) / (1 + ratio)
	slip := rolling / (1 + rolling*ratio)
	above := BallOf(c).Launch*degree - s.attack
	// δ − atan(slip·tan δ/normal) = above; the left side's slope stays near
	// one, so a few substitutions settle it.
	delta := above
	for range 30 {
		delta = above + math.Atan(slip/normal*math.Tan(min(delta, 80*degree)))
	}
	sin, cos := math.Sincos(min(delta, 80*degree))
	return math.Hypot(normal*cos, slip*sin)
}

// rolling is the share of slip that becomes the ball's own speed when friction
// brings a ball on a heavy surface to rolling: β/(1+β), 2/7 for a uniform sphere.
const rolling = inertiaFactor / (1 + inertiaFactor)

// FromClub returns a well-struck ball: the club's launch angle, with the speed
// that headSpeed (m/s) gives by Smash and the spin in proportion, since slip at
// impact grows with head speed. A headSpeed of 0 takes the club's ball as given.
func FromClub(c plan.Club, headSpeed float64) Launch {
	b, s := BallOf(c), strikeOf(c)
	l := Launch{
		From:      geom.Vec{Z: s.centre},
		Speed:     b.Speed,
		Elevation: b.Launch * degree,
		Spin:      b.Spin * rpm,
	}
	if headSpeed > 0 && b.Speed > 0 {
		l.Speed = headSpeed * Smash(c)
		l.Spin *= l.Speed / b.Speed
	}
	return l
}
