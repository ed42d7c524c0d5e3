package swing

// numKeys is how many moments of the swing carry key values.
const numKeys = 12

// The key moments, in order.
const (
	kAddress   = iota
	kShaftBack // shaft level on the way back
	kArmBack   // lead arm level on the way back
	kTop       //
	kArmDown   // lead arm level on the way down
	kImpact    //
	kThrough   // shaft about level on the way through
	kHigh      // shaft about upright behind the golfer, the head near its highest and farthest behind
	kOver      // hands at their highest, the head on its way round the trail side
	kAround    // the head past the trail side
	kWrap      // shaft behind the neck, the head coming round to the front
	kFinish    //
)

// keys is one number per key moment: their times, or one channel's values.
type keys [numKeys]float64

// curves are all channels of a motion: their values and slopes at every key
// moment, joined by cubic Hermite segments, so that position and velocity are
// continuous.
type curves struct{ value, slope [numKeys]joints }

// bends holds the weights of the rise before and the rise after each inner key.
type bends struct{ before, after keys }

// bendWeights returns the weights that make the slope at an inner key that of
// the parabola through it and its neighbours (C. de Boor 2001, A Practical Guide
// to Splines, ch. IV: cubic Bessel interpolation).
func bendWeights(times *keys) (w bends) {
	for k := 1; k < numKeys-1; k++ {
		a, b := times[k]-times[k-1], times[k+1]-times[k]
		w.before[k], w.after[k] = b/a/(a+b), a/b/(a+b)
	}
	return w
}

// bend fills the slopes from the values: zero at both ends.
func (c *curves) bend(times *keys) {
	w := bendWeights(times)
	c.slope[0], c.slope[numKeys-1] = joints{}, joints{}
	for k := 1; k < numKeys-1; k++ {
		v, slope := c.value[k-1:k+2], &c.slope[k]
		for ch := range slope {
			slope[ch] = (v[1][ch]-v[0][ch])*w.before[k] + (v[2][ch]-v[1][ch])*w.after[k]
		}
	}
}

// moment locates a time between two keys: the segment and the four Hermite
// weights of values and slopes at its ends. It serves every curve that shares
// the key times.
type moment struct {
	seg            int
	v0, m0, v1, m1 float64
}

// momentAt locates t; before the first key and after the last the curves rest.
func momentAt(times *keys, t float64) moment {
	seg := 0
	for seg < numKeys-2 && t > times[seg+1] {
		seg++
	}
	h := times[seg+1] - times[seg]
	x := min(1, max(0, (t-times[seg])/h))
	x2, x3 := x*x, x*x*x
	return moment{seg, 2*x3 - 3*x2 + 1, (x3 - 2*x2 + x) * h, 3*x2 - 2*x3, (x3 - x2) * h}
}

// at fills j with the values of all channels at the moment.
func (c *curves) at(m *moment, j *joints) {
	v0, m0, v1, m1 := &c.value[m.seg], &c.slope[m.seg], &c.value[m.seg+1], &c.slope[m.seg+1]
	for ch := range j {
		j[ch] = m.v0*v0[ch] + m.m0*m0[ch] + m.v1*v1[ch] + m.m1*m1[ch]
	}
}
