package sweep

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// packed is what a track that is only asked for clearances to boxes is kept in: less
// than half the memory. Where parts are is rounded to single precision, and what that
// may be off is in the strays.
type packed struct {
	axes   [][6]float32 // part by part, per sample: the ends of the axis
	strays []float32    // part by part, per step, rounded up
	nodes  []smallBox   // as in a track
	radius [swing.NumParts]float64
}

// packing (m) is no less than what a point within 8 m of the ball is off by when its
// coordinates are rounded to single precision: √3·8·2⁻²⁴.
const packing = 1e-6

// Packed returns the track without its poses, for a Tree to be asked in its place. Its
// clearances are up to 2·packing less than the track's, and never more.
func (t *Track) Packed() *Track {
	n := len(t.times)
	s := &packed{axes: make([][6]float32, n*int(swing.NumParts)), strays: make([]float32, t.steps()*int(swing.NumParts))}
	for p := range swing.NumParts {
		axes, strays := s.axes[int(p)*n:][:n], s.strays[int(p)*t.steps():][:t.steps()]
		for i := range axes {
			c := &t.poses[i][p]
			axes[i] = [6]float32{
				float32(c.A.X), float32(c.A.Y), float32(c.A.Z), float32(c.B.X), float32(c.B.Y), float32(c.B.Z),
			}
			if c.R > s.radius[p] {
				s.radius[p] = c.R
			}
		}
		for i := range strays {
			strays[i] = roundedUp(t.stray(i, p) + packing)
		}
	}
	s.nodes = make([]smallBox, len(t.nodes))
	for i := range t.nodes {
		s.nodes[i] = smaller(t.nodes[i].Grown(2 * packing)) // rounded parts and their strays too
	}
	return &Track{times: t.times, leaves: t.leaves, perLeaf: t.perLeaf, worst2: t.worst2, packed: s}
}

// Capsule returns where a part is at a sample.
func (t *Track) Capsule(sample int, p swing.Part) geom.Capsule {
	if t.packed == nil {
		return t.poses[sample][p]
	}
	return axisOf(&t.packed.axes[int(p)*len(t.times)+sample], t.packed.radius[p])
}

// smallBox is a box in single precision: its least corner, then its greatest.
type smallBox [6]float32

// smaller returns the least such box that holds b.
func smaller(b geom.Box) smallBox {
	return smallBox{
		-roundedUp(-b.Min.X), -roundedUp(-b.Min.Y), -roundedUp(-b.Min.Z),
		roundedUp(b.Max.X), roundedUp(b.Max.Y), roundedUp(b.Max.Z),
	}
}

func (b smallBox) box() geom.Box {
	return geom.Box{
		Min: geom.Vec{X: float64(b[0]), Y: float64(b[1]), Z: float64(b[2])},
		Max: geom.Vec{X: float64(b[3]), Y: float64(b[4]), Z: float64(b[5])},
	}
}

// roundedUp returns the least number of single precision that is no less than v.
func roundedUp(v float64) float32 {
	r := float32(v)
	if float64(r) >= v {
		return r
	}
	switch bits := math.Float32bits(r); {
	case r > 0:
		return math.Float32frombits(bits + 1)
	case r < 0:
		return math.Float32frombits(bits - 1)
	}
	return math.SmallestNonzeroFloat32
}
