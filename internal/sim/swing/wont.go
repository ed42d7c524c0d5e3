package swing

import "math"

// wont is the address that a figure takes of itself: the posture that departs least
// from what the golfer likes, in units of what is readily given up, while the club
// soles at the ball. Nothing in it but the arm differs between the members of a family.
type wont struct {
	address
	posture posture
	found   bool
}

// wonted solves for the figure's usual address.
func (f *figure) wonted() wont {
	a := f.newAddress()
	usual, ok := a.usual()
	// Who has too long a club for an arm that hangs nearly straight bends it.
	trunk, arms, shaft := wishes(f.club)
	for !ok && a.joints[chExtend] > bentMost {
		a.joints[chExtend] -= 0.05
		usual, ok = a.deviate(posture{trunk.angle, arms.angle + 3*arms.give, shaft.angle - 2*shaft.give}, Deviation{})
	}
	return wont{a, usual, ok}
}

// straight reports whether the address was found without bending the lead arm.
func (w *wont) straight() bool { return w.found && w.joints[chExtend] == addressExtend }

// armsSolved is for how many lengths of arm a family's usual posture is solved. Between
// them the angles are those of a polynomial, off by 0.1 mrad at most in 400 golfers with
// drivers of 0.85 to 1.2 m (TestWontsBetweenArms); the trunk leans as the club asks in any case.
const armsSolved = 9

// wonts are the usual postures of a family's golfers with arms from the shortest to the
// longest, at the zeros of a Chebyshev polynomial.
type wonts struct {
	arm     [armsSolved]float64 // standard deviations
	posture [armsSolved]posture
	even    bool // all are found with the arm straight
}

// wontsOf solves them, golfer by golfer.
func wontsOf(solve func(arm float64) wont) *wonts {
	w := &wonts{even: true}
	for i := range w.arm {
		w.arm[i] = Reach * math.Cos(math.Pi*(float64(i)+0.5)/armsSolved)
		at := solve(w.arm[i])
		w.posture[i], w.even = at.posture, w.even && at.straight()
	}
	return w
}

// of returns the posture of a golfer with an arm of the family, and whether it is known.
func (w *wonts) of(arm float64) (p posture, known bool) {
	if !w.even || math.Abs(arm) > Reach {
		return p, false
	}
	for i, x := range w.arm {
		share := 1.0 // J.-L. Lagrange's form
		for k, y := range w.arm {
			if k != i {
				share *= (arm - y) / (x - y)
			}
		}
		p.forward += share * w.posture[i].forward
		p.hang += share * w.posture[i].hang
		p.shaft += share * w.posture[i].shaft
	}
	return p, true
}
