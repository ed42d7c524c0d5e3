package quantity

import "wideberth/internal/sim/build/floor"

// Lengths is how many lengths of stock (m) a list of pieces (m) is cut from, with a
// saw cut between; pieces longer than the stock are joined from whole lengths.
func Lengths(pieces []float64, stock float64) int {
	whole := 0
	var short []floor.Size
	for _, p := range pieces {
		for p > stock+1e-9 {
			whole++
			p -= stock
		}
		if p > 0 {
			short = append(short, floor.Size{Long: p, Wide: 1})
		}
	}
	_, n := floor.Nest(short, floor.Size{Long: stock, Wide: 1}, kerf)
	return whole + n
}

// kerf is what a saw takes, m: an assumption.
const kerf = 0.003
