// Package halton gives points that fill a cube more evenly than random ones.
package halton

import "math/rand/v2"

// MaxDimensions is the most that Points serves: one prime each. In higher
// dimensions a few hundred points of a Halton sequence are no better than random.
const MaxDimensions = 16

var primes = [MaxDimensions]int{2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53}

// Points returns n points of the unit cube [0,1)^d: a Halton sequence whose
// digits are shuffled, place by place and base by base (A. B. Owen 2017, A
// randomized Halton algorithm in R, arXiv:1706.02808). The same n, d and seed
// give the same points, and a longer list begins with the shorter one. It panics
// when d is over MaxDimensions.
//
// These are the points of samplemv.Halton in gonum, which brings linear algebra
// and package fmt along; the test holds them against it.
func Points(n, d int, seed uint64) [][]float64 {
	out := make([][]float64, n)
	all := make([]float64, n*d)
	for i := range out {
		out[i] = all[i*d : (i+1)*d : (i+1)*d]
	}
	random := rand.New(rand.NewPCG(seed, seed))
	for j := range d {
		base := primes[j]
		place := 1 // base to the power of the digit's place
		for worth := 1 / float64(base); 1-worth < 1; worth /= float64(base) {
			shuffled := random.Perm(base)
			for i := range out {
				out[i][j] += float64(shuffled[i/place%base]) * worth
			}
			place *= base
		}
	}
	return out
}
