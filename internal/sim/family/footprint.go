package family

import (
	"math"
	"slices"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Footprint is what a family sweeps, seen from above in the golfer frame: for
// every bin of the floor and every thickness of part, how high the axes of such
// parts get over it. A part lies within its thickness of its axis.
type Footprint struct {
	X0, Y0 float64 // corner of the first bin, m
	NX, NY int     // bins along x and y
	Layers []Layer
}

// Layer holds the parts of one thickness.
type Layer struct {
	Radius float64   // m, rounded up to thickness
	First  int       // row of the extent with which Top begins
	Top    []float32 // per bin, row by row: highest axis, m; −∞ where nothing passes
}

// Bin is the side of a bin of a Footprint, m.
const Bin = 0.01

const (
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

// Footprint returns the family's footprint, made at the first call: that of the
// members in the atlas, with parts as much thicker as any other member may be
// away from theirs.
func (r *Relatives) Footprint() *Footprint {
	a := r.Atlas()
	if a.print != nil {
		return a.print
	}
	e := a.Extent
	f := &Footprint{X0: e.Min.X, Y0: e.Min.Y,
		NX: int(math.Ceil((e.Max.X-e.Min.X)/Bin)) + 1, NY: int(math.Ceil((e.Max.Y-e.Min.Y)/Bin)) + 1}
	for _, t := range a.tracks {
		for part := range swing.NumParts {
			f.mark(t, part, a.Hollow)
		}
	}
	for i := range f.Layers {
		f.Layers[i].crop(f.NX)
	}
	a.print = f
	return f
}

// crop gives up the rows before and after all that passes.
func (l *Layer) crop(nx int) {
	passes := func(v float32) bool { return v != empty }
	first := slices.IndexFunc(l.Top, passes) / nx
	last := len(l.Top) - 1
	for !passes(l.Top[last]) {
		last--
	}
	l.First, l.Top = l.First+first, slices.Clone(l.Top[first*nx:(last/nx+1)*nx])
}

// mark adds the way of one part, thicker by more (m).
func (f *Footprint) mark(t *sweep.Track, part swing.Part, more float64) {
	times, _ := t.Samples()
	still := lullOf(part)
	last := t.Capsule(0, part)
	l := f.layerFor(last.R + more + still)
	f.beads(l, &last.A, &last.B)
	before, marked := last, true // the last one marked is the one before
	for j := 1; j < len(times); j++ {
		next := t.Capsule(j, part)
		if moved2(&last, &next) < still*still {
			before, marked = next, false
			continue
		}
		n := 1
		if d2 := moved2(&before, &next); d2 > beads*beads {
			n = int(math.Ceil(math.Sqrt(d2) / beads))
		}
		from := 1
		if !marked {
			from = 0
		}
		for k := from; k <= n; k++ {
			u := float64(k) / float64(n)
			a, b := geom.Lerp(before.A, next.A, u), geom.Lerp(before.B, next.B, u)
			f.beads(l, &a, &b)
		}
		before, last, marked = next, next, true
	}
}

// moved2 returns the square of how far the farther-moved end of a part went.
func moved2(a, b *geom.Capsule) float64 {
	x, y, z := b.A.X-a.A.X, b.A.Y-a.A.Y, b.A.Z-a.A.Z
	d := x*x + y*y + z*z
	x, y, z = b.B.X-a.B.X, b.B.Y-a.B.Y, b.B.Z-a.B.Z
	if e := x*x + y*y + z*z; e > d {
		return e
	}
	return d
}

// beads marks the axis of a part in one place, in units of bins.
func (f *Footprint) beads(l *Layer, a, b *geom.Vec) {
	dx, dy, dz := b.X-a.X, b.Y-a.Y, b.Z-a.Z
	n := int(math.Ceil(math.Sqrt(dx*dx+dy*dy+dz*dz) / beads))
	k := 1 / float64(max(n, 1))
	x, y, z := (a.X-f.X0)/Bin, (a.Y-f.Y0)/Bin, a.Z
	dx, dy, dz = dx*k/Bin, dy*k/Bin, dz*k
	nx, top := f.NX, l.Top
	for range n + 1 {
		at := int(y)*nx + int(x) // the extent holds all of it
		if v := float32(z); v > top[at] {
			top[at] = v
		}
		x, y, z = x+dx, y+dy, z+dz
	}
}

func (f *Footprint) layerFor(radius float64) *Layer {
	radius = math.Ceil(radius/thickness-1e-9) * thickness
	for i := range f.Layers {
		if f.Layers[i].Radius == radius {
			return &f.Layers[i]
		}
	}
	l := Layer{Radius: radius, Top: make([]float32, f.NX*f.NY)}
	l.Top[0] = empty
	for n := 1; n < len(l.Top); n *= 2 {
		copy(l.Top[n:], l.Top[:n])
	}
	f.Layers = append(f.Layers, l)
	return &f.Layers[len(f.Layers)-1]
}

// Slack returns how much the radius of the spheres around the middles of bins
// must be raised for them to hold everything within radius of the true axes.
func Slack(radius float64) float64 {
	return 2*coarseTolerance + 2*beads*beads/(8*radius) + Bin*math.Sqrt2/2
}
