package body

// segment is one arm segment's share of the body: mass over body mass, centre
// of mass from the upper end and radius of gyration about that centre over the
// segment's length.
type segment struct{ mass, com, gyration float64 }

// ArmInertia returns the mass (kg), first moment (kg·m) and moment of inertia
// (kg·m²) about the shoulder of both arms together, straight and side by side:
// the upper rod of a double pendulum.
func (b Body) ArmInertia() (mass, firstMoment, inertia float64) {
	// D. A. Winter, Biomechanics and Motor Control of Human Movement, 4th ed.,
	// 2009, Table 4.1, after W. T. Dempster (1955). From memory. Winter's hand
	// runs from the wrist to the knuckles, for which the palm's length stands
	// here: twice Body.Hand, so a fist's mass sits at the grip's centre.
	upperArm := segment{0.028, 0.436, 0.322}
	forearm := segment{0.016, 0.430, 0.303}
	hand := segment{0.006, 0.506, 0.297}
	for _, part := range []struct {
		segment
		from, length float64
	}{
		{upperArm, 0, b.UpperArm},
		{forearm, b.UpperArm, b.Forearm},
		{hand, b.UpperArm + b.Forearm, 2 * b.Hand},
	} {
		m := 2 * part.mass * b.Mass
		r := part.from + part.com*part.length
		k := part.gyration * part.length
		mass += m
		firstMoment += m * r
		inertia += m * (r*r + k*k)
	}
	return mass, firstMoment, inertia
}
