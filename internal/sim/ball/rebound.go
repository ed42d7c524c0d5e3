package ball

import (
	"cmp"
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/r3"
)

// WarnEnergy (J) is the energy at the golfer's plane above which a return is
// warned of. An assumption: no limit for a golf ball was found. It is a ball
// dropped from WarnDrop, a little above the head of a tall person: about what
// anyone would still let fall on a foot, and nobody on an eye.
const WarnEnergy = 1.0

// WarnDrop returns the height (m) from which a ball falls to have WarnEnergy, to a
// decimetre.
func WarnDrop() float64 { return math.Round(10*WarnEnergy/(Mass*Gravity)) / 10 }

// Return is a ball on its way back to the golfer.
type Return struct {
	Reaches bool    `json:"reaches"` // it comes back past the golfer's plane, x of the tee
	Warn    bool    `json:"warn"`    // with more than WarnEnergy
	Speed   float64 `json:"speed"`   // m/s at that plane
	Height  float64 `json:"height"`  // m above the standing surface there, ball's centre
	Side    float64 `json:"side"`    // m to the left of the tee
	Nearest float64 `json:"nearest"` // how near to the plane it comes, m (0 when it reaches)
	Time    float64 `json:"time"`    // s after launch
}

// worse returns the more alarming of two returns.
func (r Return) worse(o Return) Return {
	switch {
	case r == (Return{}):
		return o
	case r.Reaches != o.Reaches:
		if r.Reaches {
			return r
		}
		return o
	case r.Reaches && r.Speed >= o.Speed, !r.Reaches && r.Nearest <= o.Nearest:
		return r
	}
	return o
}

// worseOf is worse for returns that may be missing.
func worseOf(a, b *Return) *Return {
	if a == nil || b == nil {
		return cmp.Or(a, b)
	}
	w := a.worse(*b)
	return &w
}

const (
	mostBounces = 8
	// restSpeed (m/s): slower than this a ball has stopped for our purpose
	// (0.006 J).
	restSpeed = 0.5
	// rollHop (m/s) is the upward speed that stands for rolling: hops of 5 mm.
	rollHop = 0.3
)

// bounce returns the motion after a contact: restitution along the normal, and
// along the surface the impulse that stops the slip, as far as friction allows
// (rigid sphere with Coulomb friction, any mechanics text).
func bounce(c Contact, g Give) State {
	s, n := c.Arrival, c.Normal
	vn := r3.Dot(s.V, n)
	if vn >= 0 {
		return s
	}
	e := c.Material.Restitution(-vn, g)
	arm := r3.Scale(-Radius, n)
	vt := r3.Sub(s.V, r3.Scale(vn, n))
	slip := r3.Add(vt, r3.Cross(s.W, arm))
	slip = r3.Sub(slip, r3.Scale(r3.Dot(slip, n), n))
	dv := r3.Scale(-rolling, slip)
	if most := c.Material.friction() * (1 + e) * -vn; geom.Norm(dv) > most {
		dv = r3.Scale(most, r3.Unit(dv))
	}
	spin := r3.Scale(1/(inertiaFactor*Radius*Radius), r3.Cross(arm, dv))
	return State{
		P: s.P,
		V: r3.Add(r3.Add(vt, dv), r3.Scale(-e*vn, n)),
		W: r3.Add(s.W, spin),
	}
}

// Rebound is a ball's first contact and its way back at the ends and the middle
// of the range of restitution.
type Rebound struct {
	Contact Contact `json:"contact"`
	Low     Return  `json:"low"`
	Likely  Return  `json:"likely"`
	High    Return  `json:"high"`
}

// Rebound flies a launch from a tee to its first contact and back.
func (s *Scene) Rebound(tee plan.Tee, l Launch) Rebound {
	c := s.First(tee, l)
	return Rebound{c, s.Back(c, tee, Low), s.Back(c, tee, Likely), s.Back(c, tee, High)}
}

// Back follows a ball from its first contact until it passes the golfer's plane,
// comes to rest or has bounced eight times.
func (s *Scene) Back(c Contact, tee plan.Tee, g Give) Return {
	legs := s.backLegs(c, tee, g, false)
	r := Return{Nearest: max(0, c.Arrival.P.X-tee.X)}
	time := c.Time
	for _, leg := range legs {
		end := leg.End
		time += end.Time
		r.Nearest = min(r.Nearest, max(0, end.Arrival.P.X-tee.X))
		if end.Kind == KindGolfer {
			return Return{
				Reaches: true, Warn: Energy(end.Speed) > WarnEnergy, Speed: end.Speed,
				Height: end.Arrival.P.Z - s.plan.Floor.Standing(), Side: end.Arrival.P.Y - tee.Y, Time: time,
			}
		}
	}
	r.Time = time
	return r
}

func (s *Scene) backLegs(c Contact, tee plan.Tee, g Give, trail bool) []Path {
	// The plane is met by the ball's centre, hence the radius.
	plane := Target{Name: "golfer's plane", Kind: KindGolfer,
		Half: geom.Halfspace{N: geom.Vec{X: 1}, D: tee.X - Radius}}
	targets := append([]Target{plane}, s.Targets...)
	var legs []Path
	for range mostBounces {
		from := bounce(c, g)
		if c.Kind == KindNone || geom.Norm(from.V) < restSpeed {
			break
		}
		leg := fly(from, s.Air, targets, Options{Trail: trail})
		legs = append(legs, leg)
		c = leg.End
		if c.Kind == KindGolfer {
			break
		}
	}
	return legs
}

// padded is Back for a bare hard surface as it would be under a foam pad; nil
// for a contact with anything else.
func (s *Scene) padded(c Contact, tee plan.Tee) *Return {
	if c.Material != Hard {
		return nil
	}
	c.Material = Foam
	r := s.Back(c, tee, High)
	return &r
}

// Trace returns the flight of a launch from a tee with its trail: to the first
// contact and on from there, bounce by bounce, until the ball has come back past
// the golfer or lies still. Times start at 0 in each leg.
func (s *Scene) Trace(tee plan.Tee, l Launch, g Give) []Path {
	first := s.Fly(l.At(s.plan, tee).State(), true)
	return append([]Path{first}, s.backLegs(first.End, tee, g, true)...)
}

// pastFloor returns the first contact that is not the floor: a topped ball
// skims on to the screen or under it. Where a ball would roll it makes hops of
// 5 mm instead, at no gain in speed.
func (s *Scene) pastFloor(from State) Contact {
	c := s.Fly(from, false).End
	for range 2 * mostBounces {
		if c.Material != Ground {
			break
		}
		next := bounce(c, Likely)
		speed := geom.Norm(next.V)
		if speed < restSpeed {
			break
		}
		if up := r3.Dot(next.V, c.Normal); up < rollHop {
			next.V = r3.Add(next.V, r3.Scale(rollHop-up, c.Normal))
			next.V = r3.Scale(speed/geom.Norm(next.V), next.V)
		}
		time := c.Time
		c = s.Fly(next, false).End
		c.Time += time
	}
	return c
}
