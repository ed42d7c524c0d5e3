package fit

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/swing"
)

// strayMoments is at how many moments the members that stray most are sought.
const strayMoments = 8

// strays returns the members whose clubhead strays most to either side of the
// central path at moments spread evenly along it. A box may stand where the
// sweep is hollow, and then the member that comes nearest reaches farthest in no
// direction; but it is far off the path somewhere.
func (r *relatives) strays(times []float64) (out []swing.Variation) {
	head := func(s *swing.Swing, t float64) geom.Vec {
		p := s.PoseAt(t)
		return geom.Lerp(p[swing.Clubhead].A, p[swing.Clubhead].B, 0.5)
	}
	central := r.family.Central
	length := 0.0
	along := make([]float64, len(times))
	for i := 1; i < len(times); i++ {
		length += geom.Norm(r3.Sub(head(central, times[i]), head(central, times[i-1])))
		along[i] = length
	}
	next := 0
	for m := range strayMoments {
		for along[next] < length*(float64(m)+0.5)/strayMoments {
			next++
		}
		t := times[next]
		path := r3.Unit(r3.Sub(head(central, t+1e-3), head(central, t-1e-3)))
		// How the clubhead moves, square to its path, per standard deviation.
		var moves [swing.NumTraits]geom.Vec
		for k := range moves {
			d := r3.Scale(0.5, r3.Sub(head(r.singles[2*k+1].swing, t), head(r.singles[2*k].swing, t)))
			moves[k] = r3.Sub(d, r3.Scale(geom.Dot(d, path), path))
		}
		side := principal(moves[:])
		var slope [swing.NumTraits]float64
		for k := range slope {
			slope[k] = geom.Dot(moves[k], side)
		}
		v := swing.Corner(slope)
		var opposite swing.Variation
		for k := range v {
			opposite[k] = 0 - v[k]
		}
		out = append(out, v, opposite)
	}
	return out
}

// principal returns the direction in which vectors scatter most about zero, by
// power iteration.
func principal(vectors []geom.Vec) geom.Vec {
	d := geom.Vec{X: 0.48, Y: 0.6, Z: 0.64}
	for range 30 {
		var sum geom.Vec
		for _, v := range vectors {
			sum = r3.Add(sum, r3.Scale(geom.Dot(v, d), v))
		}
		n := geom.Norm(sum)
		if n < math.SmallestNonzeroFloat64 {
			return d
		}
		d = r3.Scale(1/n, sum)
	}
	return d
}
