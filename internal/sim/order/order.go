// Package order sorts lists of a few hundred things.
//
// Package slices sorts faster, by code that the compiler makes anew for each
// type, some 12 KB a time; this makes 2 KB. Use it in everything that becomes
// part of the solver.
package order

// Stable sorts a list by a comparison that is negative, zero or positive as
// cmp.Compare's; what compares as equal keeps its order. It merges sorted halves
// (J. von Neumann 1945): n·log n comparisons and room for n values.
func Stable[T any](list []T, compare func(a, b T) int) {
	spare := make([]T, len(list))
	for run := 1; run < len(list); run *= 2 {
		for from := 0; from < len(list); from += 2 * run {
			i, middle := from, min(from+run, len(list))
			j, end := middle, min(from+2*run, len(list))
			for k := from; k < end; k++ {
				if i < middle && (j == end || compare(list[i], list[j]) <= 0) {
					spare[k] = list[i]
					i++
				} else {
					spare[k] = list[j]
					j++
				}
			}
		}
		copy(list, spare)
	}
}
