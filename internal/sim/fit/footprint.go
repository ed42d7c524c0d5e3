package fit

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// footprint is what a family sweeps, seen from above in the golfer frame: for
// every bin of the floor and every thickness of part, how high the axes of such
// parts get over it. A part lies within its thickness of its axis.
type footprint struct {
	x0, y0 float64 // corner of the first bin, m
	nx, ny int
	layers []layer
}

// layer holds the parts of one thickness.
type layer struct {
	radius float64   // m, rounded up to thickness
	top    []float32 // per bin, row by row: highest axis, m; empty for none
}

const (
	bin       = 0.01 // m, side of a bin
	thickness = 0.01 // m, step of radii
	// beads (m) is how far apart axes are marked, along a part and along its way.
	// The spheres of radius R around such marks reach all of what lies within R of
	// the axes less beads²/8R, once for each of the two directions.
	beads = 0.04
	// lull and bodyLull (m): a part of club or arms, or one of the body, that has
	// moved less since it was marked is not marked anew. That counts as thickness.
	lull     = 0.005
	bodyLull = 0.015
)

// lullOf returns the lull of a part.
func lullOf(p swing.Part) float64 {
	if p >= swing.LeadUpperArm && p <= swing.TrailHand || p >= swing.Grip {
		return lull
	}
	return bodyLull
}

// empty marks a bin that nothing passes over.
var empty = float32(math.Inf(-1))

// footprint returns the family's footprint, made at the first call: that of the
// members in the atlas, with parts as much thicker as any other member may be
// away from theirs.
func (r *relatives) footprint() *footprint {
	a := r.atlas()
	if a.print != nil {
		return a.print
	}
	e := a.extent
	f := &footprint{x0: e.Min.X, y0: e.Min.Y,
		nx: int(math.Ceil((e.Max.X-e.Min.X)/bin)) + 1, ny: int(math.Ceil((e.Max.Y-e.Min.Y)/bin)) + 1}
	for _, t := range a.tracks {
		for part := range swing.NumParts {
			f.mark(t, part, a.hollow)
		}
	}
	a.print = f
	return f
}

// mark adds the way of one part, thicker by more (m).
func (f *footprint) mark(t *sweep.Track, part swing.Part, more float64) {
	_, poses := t.Samples()
	still := lullOf(part)
	l := f.layerFor(poses[0][part].R + more + still)
	last := &poses[0][part]
	f.beads(l, last.A, last.B)
	for j := 1; j < len(poses); j++ {
		next := &poses[j][part]
		if moved2(last, next) < still*still {
			continue
		}
		before := &poses[j-1][part]
		n := 1
		if d2 := moved2(before, next); d2 > beads*beads {
			n = int(math.Ceil(math.Sqrt(d2) / beads))
		}
		from := 1
		if before != last {
			from = 0
		}
		for k := from; k <= n; k++ {
			u := float64(k) / float64(n)
			f.beads(l, geom.Lerp(before.A, next.A, u), geom.Lerp(before.B, next.B, u))
		}
		last = next
	}
}

// moved2 returns the square of how far the farther-moved end of a part went.
func moved2(a, b *geom.Capsule) float64 {
	x, y, z := b.A.X-a.A.X, b.A.Y-a.A.Y, b.A.Z-a.A.Z
	d := x*x + y*y + z*z
	x, y, z = b.B.X-a.B.X, b.B.Y-a.B.Y, b.B.Z-a.B.Z
	return max(d, x*x+y*y+z*z)
}

// beads marks the axis of a part in one place, in units of bins.
func (f *footprint) beads(l *layer, a, b geom.Vec) {
	dx, dy, dz := b.X-a.X, b.Y-a.Y, b.Z-a.Z
	n := int(math.Ceil(math.Sqrt(dx*dx+dy*dy+dz*dz) / beads))
	k := 1 / float64(max(n, 1))
	x, y, z := (a.X-f.x0)/bin, (a.Y-f.y0)/bin, a.Z
	dx, dy, dz = dx*k/bin, dy*k/bin, dz*k
	for range n + 1 {
		i, j := int(x), int(y) // the extent holds all of it
		at := &l.top[j*f.nx+i]
		if v := float32(z); v > *at {
			*at = v
		}
		x, y, z = x+dx, y+dy, z+dz
	}
}

func (f *footprint) layerFor(radius float64) *layer {
	radius = math.Ceil(radius/thickness-1e-9) * thickness
	for i := range f.layers {
		if f.layers[i].radius == radius {
			return &f.layers[i]
		}
	}
	l := layer{radius, make([]float32, f.nx*f.ny)}
	for i := range l.top {
		l.top[i] = empty
	}
	f.layers = append(f.layers, l)
	return &f.layers[len(f.layers)-1]
}

// beadSlack returns how much the radius of the spheres around the middles of bins
// must be raised for them to hold everything within radius of the true axes.
func beadSlack(radius float64) float64 {
	return 2*coarseTolerance + 2*beads*beads/(8*radius) + bin*math.Sqrt2/2
}
