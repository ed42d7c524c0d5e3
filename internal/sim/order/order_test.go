package order

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
)

type pair struct{ key, place int }

func byKey(a, b pair) int { return cmp.Compare(a.key, b.key) }

func TestLikeSlices(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	for n := range 200 {
		for _, keys := range []int{1, 3, 1000} {
			list := make([]pair, n)
			for i := range list {
				list[i] = pair{random.IntN(keys), i}
			}
			want := slices.Clone(list)
			slices.SortStableFunc(want, byKey)
			if Stable(list, byKey); !slices.Equal(list, want) {
				t.Fatalf("Stable of %d values of %d keys = %v, want %v", n, keys, list, want)
			}
		}
	}
}

func TestCompares(t *testing.T) {
	const n = 1000
	list := make([]int, n)
	for i := range list {
		list[i] = i * 7919 % n
	}
	count := 0
	Stable(list, func(a, b int) int { count++; return a - b })
	if most := 10 * n; count > most { // 10: log2 of n, rounded up
		t.Errorf("Stable of %d values took %d comparisons, want at most %d", n, count, most)
	}
}

func BenchmarkStable(b *testing.B) {
	list := make([]float64, 300)
	random := rand.New(rand.NewPCG(1, 1))
	b.ReportAllocs()
	for b.Loop() {
		for i := range list {
			list[i] = random.Float64()
		}
		Stable(list, cmp.Compare[float64])
	}
}

func ExampleStable() {
	list := []string{"wedge", "iron", "wood", "driver"}
	Stable(list, func(a, b string) int { return len(a) - len(b) })
	fmt.Println(list)
	// Output: [iron wood wedge driver]
}
