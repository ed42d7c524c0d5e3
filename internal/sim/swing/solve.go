package swing

import "math"

// crossing returns where f, which rises or falls through zero between lo and hi,
// crosses it, to within tol of x, by the Illinois form of false position
// (M. Dowell and P. Jarratt 1971, BIT 11:168–174). Where f has one sign it
// returns the end at which f is nearer to zero.
func crossing(lo, hi, tol float64, f func(float64) float64) float64 {
	fLo, fHi := f(lo), f(hi)
	if fLo*fHi > 0 || math.IsNaN(fLo+fHi) {
		if math.Abs(fLo) < math.Abs(fHi) {
			return lo
		}
		return hi
	}
	kept := 0 // which end the last step kept
	for range 60 {
		if math.Abs(hi-lo) < tol || fLo == fHi {
			break
		}
		x := (lo*fHi - hi*fLo) / (fHi - fLo)
		y := f(x)
		if y == 0 {
			return x
		}
		if y*fHi > 0 {
			if math.Abs(x-hi) < tol {
				return x
			}
			hi, fHi = x, y
			if kept == -1 {
				fLo /= 2
			}
			kept = -1
		} else {
			if math.Abs(x-lo) < tol {
				return x
			}
			lo, fLo = x, y
			if kept == 1 {
				fHi /= 2
			}
			kept = 1
		}
	}
	return (lo + hi) / 2
}
