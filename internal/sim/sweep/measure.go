package sweep

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// measure fills in the strays and the trees in one pass over the poses. It goes
// part by part so that the running values stay in registers.
func (t *Track) measure() {
	n := t.steps()
	t.lens = grow(t.lens, n+1)
	for i := 1; i <= n; i++ {
		t.lens[i].inv = 1 / (t.times[i] - t.times[i-1])
	}
	for i := 1; i < n; i++ {
		t.lens[i].k = 2 / (t.times[i+1] - t.times[i-1])
	}
	t.stray2 = grow(t.stray2, n*int(swing.NumParts))
	t.layOut()
	for p := range swing.NumParts {
		t.bend(p)
		t.grow(p)
	}
}

// bend sets stray2 of a part from its divided second differences.
func (t *Track) bend(p swing.Part) {
	n := t.steps()
	out := t.stray2[int(p)*n:][:n]
	if n < 2 {
		out[0], t.worst2[p] = 0, 0
		return
	}
	before := &t.poses[0][p]
	var a, b geom.Vec // velocities of the ends in the step before
	last, worst := 0.0, 0.0
	for i := range n {
		c := &t.poses[i+1][p]
		k := t.lens[i+1].inv
		ax, ay, az := (c.A.X-before.A.X)*k, (c.A.Y-before.A.Y)*k, (c.A.Z-before.A.Z)*k
		bx, by, bz := (c.B.X-before.B.X)*k, (c.B.Y-before.B.Y)*k, (c.B.Z-before.B.Z)*k
		before = c
		if i > 0 {
			x, y, z := ax-a.X, ay-a.Y, az-a.Z
			d := x*x + y*y + z*z
			x, y, z = bx-b.X, by-b.Y, bz-b.Z
			if e := x*x + y*y + z*z; e > d {
				d = e
			}
			k := t.lens[i].k
			d *= k * k // |x″|² at sample i, between steps i−1 and i
			if d > last {
				last = d
			}
			worst = t.settle(out, i-1, last, worst)
			last = d
		}
		a, b = geom.Vec{X: ax, Y: ay, Z: az}, geom.Vec{X: bx, Y: by, Z: bz}
	}
	t.worst2[p] = t.settle(out, n-1, last, worst)
}

// settle stores the stray of a step with squared acceleration accel2 and
// returns the larger of it and worst.
func (t *Track) settle(out []float64, step int, accel2, worst float64) float64 {
	h := t.times[step+1] - t.times[step]
	k := curvatureSafety / 8 * h * h
	e := accel2 * k * k
	out[step] = e
	if e > worst {
		return e
	}
	return worst
}

// grow builds the tree of a part.
func (t *Track) grow(p swing.Part) {
	n := t.steps()
	part := t.nodes[int(p)*2*t.leaves:][:2*t.leaves]
	stray2 := t.stray2[int(p)*n:][:n]
	for l := range t.leaves {
		from, to := t.leafSteps(l)
		if from >= to {
			part[t.leaves+l] = geom.EmptyBox()
			continue
		}
		c := &t.poses[from][p]
		b, r, e := geom.Box{Min: c.A, Max: c.A}, c.R, 0.0
		stretch(&b, &c.B)
		for i := from; i < to; i++ {
			c := &t.poses[i+1][p]
			stretch(&b, &c.A)
			stretch(&b, &c.B)
			if c.R > r {
				r = c.R
			}
			if stray2[i] > e {
				e = stray2[i]
			}
		}
		part[t.leaves+l] = b.Grown(r + math.Sqrt(e))
	}
	for i := t.leaves - 1; i > 0; i-- {
		part[i] = part[2*i].Union(part[2*i+1])
	}
}

// stretch takes a point into the box.
func stretch(b *geom.Box, v *geom.Vec) {
	if v.X < b.Min.X {
		b.Min.X = v.X
	} else if v.X > b.Max.X {
		b.Max.X = v.X
	}
	if v.Y < b.Min.Y {
		b.Min.Y = v.Y
	} else if v.Y > b.Max.Y {
		b.Max.Y = v.Y
	}
	if v.Z < b.Min.Z {
		b.Min.Z = v.Z
	} else if v.Z > b.Max.Z {
		b.Max.Z = v.Z
	}
}
