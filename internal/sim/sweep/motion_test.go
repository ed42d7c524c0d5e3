package sweep

import (
	"math"
	"math/rand/v2"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// Limits of the synthetic motions: a little more than the clubhead of a very
// fast driver swing, which pulls about 50² / 1.3 m/s² towards its centre.
const (
	topSpeed     = 50.0   // m/s
	topAccel     = 3000.0 // m/s²
	topFrequency = 8.0    // Hz, within what Sample promises to see
	waves        = 3
)

// wobble moves the ends of every part on sums of sinusoids.
type wobble struct {
	length float64    // s
	parts  swing.Part // how many move each by itself; the others move with one of those
	radius [swing.NumParts]float64
	speed  [swing.NumParts]float64 // no end of the part is ever faster, m/s
	ends   [swing.NumParts][2]path
}

type path struct {
	centre geom.Vec
	most   int // waves of an axis
	wave   [3][waves]struct{ size, rate, phase float64 }
}

func newWobble(seed uint64) *wobble { return newWobbleOf(swing.NumParts, waves, seed) }

// newBrief returns a motion that is cheap to ask about: of a few parts, each on one wave
// an axis, for a tenth of the time.
func newBrief(seed uint64) *wobble {
	w := newWobbleOf(2, 1, seed)
	w.length /= 10
	return w
}

func newWobbleOf(parts swing.Part, most int, seed uint64) *wobble {
	rnd := rand.New(rand.NewPCG(seed, 7))
	w := &wobble{length: 0.2 + 0.4*rnd.Float64(), parts: parts}
	for p := range parts {
		w.radius[p] = 0.005 + 0.15*rnd.Float64()
		// Half of the parts are slow, as a body is.
		k := 1.0
		if p%2 == 0 {
			k = 0.1
		}
		for e := range 2 {
			w.ends[p][e] = newPath(rnd, most, k)
			w.speed[p] = max(w.speed[p], w.ends[p][e].fastest())
		}
	}
	return w
}

// newPath shares out speed and acceleration among so many waves of each axis so that
// the sums stay within k times the limits.
func newPath(rnd *rand.Rand, most int, k float64) path {
	a := path{most: most, centre: geom.Vec{X: 2*rnd.Float64() - 1, Y: 2*rnd.Float64() - 1, Z: 2 * rnd.Float64()}}
	share := k / (float64(most) * math.Sqrt(3))
	for i := range a.wave {
		for j := range most {
			rate := 2 * math.Pi * topFrequency * (0.05 + 0.95*rnd.Float64())
			limit := min(share*topSpeed/rate, share*topAccel/(rate*rate), 0.6)
			v := &a.wave[i][j]
			v.size, v.rate, v.phase = limit*rnd.Float64(), rate, 2*math.Pi*rnd.Float64()
		}
	}
	return a
}

// fastest returns a speed (m/s) that is never exceeded.
func (a *path) fastest() float64 {
	var v [3]float64
	for i := range a.wave {
		for _, w := range a.wave[i] {
			v[i] += w.size * w.rate
		}
	}
	return geom.Norm(geom.Vec{X: v[0], Y: v[1], Z: v[2]})
}

func (a *path) at(t float64) geom.Vec {
	axis := func(i int) float64 {
		v := 0.0
		for _, w := range a.wave[i][:a.most] {
			v += w.size * math.Sin(w.rate*t+w.phase)
		}
		return v
	}
	return geom.Vec{X: a.centre.X + axis(0), Y: a.centre.Y + axis(1), Z: a.centre.Z + axis(2)}
}

func (w *wobble) Duration() float64 { return w.length }

func (w *wobble) PoseAt(t float64) swing.Pose {
	var out swing.Pose
	for p := range out {
		if p := swing.Part(p); p < w.parts {
			out[p] = w.part(p, t)
		} else {
			out[p] = out[p%w.parts]
		}
	}
	return out
}

func (w *wobble) part(p swing.Part, t float64) geom.Capsule {
	p %= w.parts
	return geom.Capsule{A: w.ends[p][0].at(t), B: w.ends[p][1].at(t), R: w.radius[p]}
}

// brute returns the smallest distance of the motion to the surface, and when it
// was, at steps so fine that nothing moves more than reach between them. It
// only leaves out steps in which a part could not get to the smallest distance
// so far.
func brute(w *wobble, s Surface, reach float64) (d, at float64) {
	d = math.Inf(1)
	for p := range w.parts {
		for t := 0.0; t <= w.length; {
			v, _, _ := s.separate(w.part(p, t))
			if v < d {
				d, at = v, t
			}
			t += max(reach, v-d) / w.speed[p]
		}
	}
	return d, at
}

// bruteFirst returns the first moment at which the motion is more than depth
// past the surface, at such steps.
func bruteFirst(w *wobble, s Surface, depth, reach float64) float64 {
	first := math.Inf(1)
	for p := range w.parts {
		for t := 0.0; t <= min(w.length, first); {
			v, _, _ := s.separate(w.part(p, t))
			if v < -depth {
				first = min(first, t)
			}
			t += max(reach, v+depth) / w.speed[p]
		}
	}
	return first
}

// randomSurface returns a box or a tilted half-space near the motions.
func randomSurface(seed uint64) Surface {
	rnd := rand.New(rand.NewPCG(seed, 11))
	v := func(k float64) geom.Vec {
		return geom.Vec{X: k * (2*rnd.Float64() - 1), Y: k * (2*rnd.Float64() - 1), Z: k * (2*rnd.Float64() - 1)}
	}
	if rnd.IntN(3) == 0 {
		n := v(1)
		k := 1 / geom.Norm(n)
		n = geom.Vec{X: n.X * k, Y: n.Y * k, Z: n.Z * k}
		return Surface{Name: "plane", Kind: Wall, Plane: geom.Halfspace{N: n, D: 3*rnd.Float64() - 4}}
	}
	at, size := v(3), rnd.Float64()
	b := geom.Box{Min: at, Max: at}
	b.Max.X += size * rnd.Float64()
	b.Max.Y += size * rnd.Float64()
	if rnd.IntN(4) != 0 { // otherwise a sheet without thickness
		b.Max.Z += size * rnd.Float64()
	}
	return Surface{Name: "box", Kind: Solid, Box: b}
}
