package halton

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"
	"gonum.org/v1/gonum/stat/samplemv"
)

func TestPointsAreGonums(t *testing.T) {
	for _, tc := range []struct {
		n, d int
		seed uint64
	}{{1, 1, 0}, {256, 10, 20}, {100, MaxDimensions, 7}, {3000, 3, 1 << 60}} {
		want := mat.NewDense(tc.n, tc.d, nil)
		samplemv.Halton{Kind: samplemv.Owen, Q: distmv.NewUnitUniform(tc.d, nil), Src: rand.NewPCG(tc.seed, tc.seed)}.Sample(want)
		got := Points(tc.n, tc.d, tc.seed)
		for i := range got {
			for j, v := range got[i] {
				if v != want.At(i, j) {
					t.Fatalf("Points(%d, %d, %d)[%d][%d] = %v, want gonum's %v", tc.n, tc.d, tc.seed, i, j, v, want.At(i, j))
				}
			}
		}
	}
}

// TestStrata holds what shuffling must leave alone: of any b^k points in a row
// from a multiple of b^k on, each of the b^k equal strips of the cube holds one.
func TestStrata(t *testing.T) {
	for seed := range uint64(5) {
		points := Points(1024, 3, seed)
		for j, base := range primes[:3] {
			for strips := base; strips <= 128; strips *= base {
				for from := 0; from+strips <= len(points); from += strips {
					held := make([]int, strips)
					for _, p := range points[from : from+strips] {
						held[int(p[j]*float64(strips)+rounding)]++
					}
					for s, n := range held {
						if n != 1 {
							t.Fatalf("seed %d, base %d: points %d–%d: strip %d of %d holds %d points, want 1", seed, base, from, from+strips-1, s, strips, n)
						}
					}
				}
			}
		}
	}
}

// rounding is what the sum of a point's digits may fall short of the strip that
// it belongs to, in strips.
const rounding = 1e-9

// discrepancy is the greatest difference between the share of points in a box
// [0,a)×[0,b) with corners at the points' coordinates, and the box's area: the
// star discrepancy of the plane, from below.
func discrepancy(points [][]float64) float64 {
	worst := 0.0
	for _, p := range points {
		for _, q := range points {
			open, closed := 0, 0
			for _, r := range points {
				if r[0] < p[0] && r[1] < q[1] {
					open++
				}
				if r[0] <= p[0] && r[1] <= q[1] {
					closed++
				}
			}
			area, n := p[0]*q[1], float64(len(points))
			worst = max(worst, area-float64(open)/n, float64(closed)/n-area)
		}
	}
	return worst
}

func TestDiscrepancy(t *testing.T) {
	const n = 256
	random := rand.New(rand.NewPCG(1, 1))
	scattered := make([][]float64, n)
	for i := range scattered {
		scattered[i] = []float64{random.Float64(), random.Float64()}
	}
	bound := discrepancy(scattered) / 2
	for seed := range uint64(3) {
		if got := discrepancy(Points(n, 2, seed)); got > bound {
			t.Errorf("discrepancy(Points(%d, 2, %d)) = %.4f, want at most %.4f, half that of random points", n, seed, got, bound)
		}
	}
}

func TestPointsOfNothingAndOfMore(t *testing.T) {
	if got := Points(0, 5, 1); len(got) != 0 {
		t.Errorf("len(Points(0, 5, 1)) = %d, want 0", len(got))
	}
	long := Points(50, 4, 9)
	for i, p := range Points(20, 4, 9) {
		for j, v := range p {
			if v != long[i][j] || math.IsNaN(v) || v < 0 || v >= 1 {
				t.Fatalf("Points(20, 4, 9)[%d][%d] = %v, want %v and within [0, 1)", i, j, v, long[i][j])
			}
		}
	}
	defer func() {
		if recover() == nil {
			t.Errorf("Points(1, %d, 1) returned, want a panic", MaxDimensions+1)
		}
	}()
	Points(1, MaxDimensions+1, 1)
}

func ExamplePoints() {
	sum := 0.0
	for _, p := range Points(1000, 2, 42) {
		sum += p[0] * p[1]
	}
	fmt.Printf("mean of x·y over the square: %.3f\n", sum/1000)
	// Output: mean of x·y over the square: 0.250
}
