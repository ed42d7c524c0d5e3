package swing

import "math"

// turn holds an angle's sine and cosine.
type turn struct{ sin, cos float64 }

// turnOf returns the turn of an angle, rad.
//
//go:noinline
func turnOf(angle float64) turn {
	in, out := [1]float64{angle}, [1]turn{}
	fillTurns(in[:], out[:])
	return out[0]
}

const steps = 256

// stops are the turns of whole steps round the circle: of half a quarter as package math has
// them, which are the most exact, and of the rest by symmetry.
var stops = func() (out [steps]turn) {
	const quarter = steps / 4
	for i := range quarter {
		s, c := math.Sincos(float64(min(i, quarter-i)) * math.Pi / (steps / 2))
		if i > quarter/2 {
			s, c = c, s
		}
		out[i], out[quarter+i], out[2*quarter+i], out[3*quarter+i] = turn{s, c}, turn{c, -s}, turn{-s, -c}, turn{-c, s}
	}
	return out
}()

// fillTurns fills out with the turns of angles, rad, each within its last bit (TestTurns): of the
// nearest stop and, by the first terms of their series, of the rest, as the sine of a sum
// has it. (Every pose of every member asks for nine of them, and package math takes twice
// as long.)
func fillTurns(angles []float64, out []turn) {
	const (
		far = 1 << 20 // beyond this the rest would not be exact
		// A step in three parts, of which multiples are exact (S. L. Moshier 1989, Methods
		// and Programs for Mathematical Functions, for π/4).
		p1, p2, p3 = 7.85398125648498535156e-1 / 32, 3.77489470793079817668e-8 / 32, 2.69515142907905952645e-15 / 32
	)
	for i, angle := range angles {
		if !(math.Abs(angle) < far) {
			out[i].sin, out[i].cos = math.Sincos(angle)
			continue
		}
		k := math.RoundToEven(angle * (steps / (2 * math.Pi)))
		stop := &stops[int64(k)&(steps-1)]
		x := ((angle - k*p1) - k*p2) - k*p3
		xx := x * x
		s := x + x*xx*(xx*(1.0/120)-1.0/6)
		c := xx * (xx*(1.0/24-xx*(1.0/720)) - 0.5) // less 1
		out[i] = turn{stop.sin + (stop.sin*c + stop.cos*s), stop.cos + (stop.cos*c - stop.sin*s)}
	}
}
