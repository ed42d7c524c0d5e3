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

// fillTurns fills out with the turns of angles, rad. They are those of math.Sincos to
// the bit (TestTurns): the same reduction and the same polynomials (S. L. Moshier
// 1989, Methods and Programs for Mathematical Functions), without a branch that
// depends on the angle, because half of all a family takes goes through here.
func fillTurns(angles []float64, out []turn) {
	const (
		far = 1 << 20 // beyond this the reduction is another
		// π/4 in three parts, of which multiples are exact.
		p1, p2, p3 = 7.85398125648498535156e-1, 3.77489470793079817668e-8, 2.69515142907905952645e-15
		sign       = 1 << 63
	)
	for i, angle := range angles {
		x := math.Abs(angle)
		if !(x < far) {
			out[i].sin, out[i].cos = math.Sincos(angle)
			continue
		}
		j := uint64(int64(x * (4 / math.Pi)))
		j += j & 1 // to the nearest multiple of π/2
		y := float64(int64(j))
		z := ((x - y*p1) - y*p2) - y*p3
		zz := z * z
		c := math.Float64bits(1.0 - 0.5*zz + zz*zz*((((((-1.13585365213876817300e-11*zz)+2.08757008419747316778e-9)*zz+-2.75573141792967388112e-7)*zz+2.48015872888517045348e-5)*zz+-1.38888888888730564116e-3)*zz+4.16666666666665929218e-2))
		s := math.Float64bits(z + z*zz*((((((1.58962301576546568060e-10*zz)+-2.50507477628578072866e-8)*zz+2.75573136213857245213e-6)*zz+-1.98412698295895385996e-4)*zz+8.33333333332211858878e-3)*zz+-1.66666666666666307295e-1))
		// Every quarter turn swaps them and changes a sign.
		quarter := j >> 1
		swap := (s ^ c) & -(quarter & 1)
		s ^= swap ^ quarter>>1<<63 ^ math.Float64bits(angle)&sign
		c ^= swap ^ (quarter>>1^quarter)<<63
		out[i] = turn{math.Float64frombits(s), math.Float64frombits(c)}
	}
}
