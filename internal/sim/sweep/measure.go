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
	t.twigs = grow(t.twigs, t.leaves)
	for p := range swing.NumParts {
		t.bend(p)
		t.grow(p)
	}
}

// twig is what bend notes of a leaf for grow.
type twig struct {
	bend2  float64 // largest squared |x″| at a sample inside the leaf, m²/s⁴
	radius float64 // largest radius, m
}

// bend sets stray2 and twigs of a part from its divided second differences.
func (t *Track) bend(p swing.Part) {
	n := t.steps()
	out := t.stray2[int(p)*n:][:n]
	for l := range t.twigs {
		from, _ := t.leafSteps(l)
		t.twigs[l] = twig{radius: t.poses[from][p].R}
	}
	if n < 2 {
		out[0], t.worst2[p] = 0, 0
		return
	}
	before := &t.poses[0][p]
	var a, b geom.Vec // velocities of the ends in the step before
	last, worst := 0.0, 0.0
	leaf, inLeaf := 0, 0 // of step i, and how many of its steps come before
	for i := range n {
		c := &t.poses[i+1][p]
		k := t.lens[i+1].inv
		ax, ay, az := (c.A.X-before.A.X)*k, (c.A.Y-before.A.Y)*k, (c.A.Z-before.A.Z)*k
		bx, by, bz := (c.B.X-before.B.X)*k, (c.B.Y-before.B.Y)*k, (c.B.Z-before.B.Z)*k
		before = c
		w := &t.twigs[leaf]
		if c.R > w.radius {
			w.radius = c.R
		}
		if i > 0 {
			x, y, z := ax-a.X, ay-a.Y, az-a.Z
			d := x*x + y*y + z*z
			x, y, z = bx-b.X, by-b.Y, bz-b.Z
			if e := x*x + y*y + z*z; e > d {
				d = e
			}
			k := t.lens[i].k
			d *= k * k // |x″|² at sample i, between steps i−1 and i
			if inLeaf > 0 && d > w.bend2 {
				w.bend2 = d
			}
			if d > last {
				last = d
			}
			worst = t.settle(out, i-1, last, worst)
			last = d
		}
		if inLeaf++; inLeaf == t.perLeaf {
			leaf, inLeaf = leaf+1, 0
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

// grow builds the tree of a part. The box of a leaf is that of the part at the
// leaf's two ends, grown by how far the samples between may lie from the chord:
// over a time H that is at most H²/8 times their largest second difference (the
// discrete form of the bound in Track, with nothing estimated). That is looser
// than the box of all samples, and reads only a few of them.
func (t *Track) grow(p swing.Part) {
	n := t.steps()
	part := t.nodes[int(p)*2*t.leaves:][:2*t.leaves]
	stray2 := t.stray2[int(p)*n:][:n]
	used := (n + t.perLeaf - 1) / t.perLeaf
	a, b := &t.poses[0][p].A, &t.poses[0][p].B
	lo, hi := lower(*a, *b), upper(*a, *b)
	for l := range used {
		from, to := t.leafSteps(l)
		e := 0.0
		for _, s := range stray2[from:to] {
			if s > e {
				e = s
			}
		}
		h := t.times[to] - t.times[from]
		c, w := &t.poses[to][p], t.twigs[l]
		lo1, hi1 := lower(c.A, c.B), upper(c.A, c.B)
		r := w.radius + math.Sqrt(e) + h*h/8*math.Sqrt(w.bend2)
		part[t.leaves+l] = geom.Box{Min: lower(lo, lo1), Max: upper(hi, hi1)}.Grown(r)
		lo, hi = lo1, hi1
	}
	for l := used; l < t.leaves; l++ {
		part[t.leaves+l] = geom.EmptyBox()
	}
	for i := t.leaves - 1; i > 0; i-- {
		l, r := &part[2*i], &part[2*i+1]
		part[i] = geom.Box{Min: lower(l.Min, r.Min), Max: upper(l.Max, r.Max)}
	}
}

// lower and upper return the corners of the box around two points. They are
// vectors, not a box, because the compiler keeps only those in registers.
func lower(a, b geom.Vec) geom.Vec {
	if b.X < a.X {
		a.X = b.X
	}
	if b.Y < a.Y {
		a.Y = b.Y
	}
	if b.Z < a.Z {
		a.Z = b.Z
	}
	return a
}

func upper(a, b geom.Vec) geom.Vec {
	if b.X > a.X {
		a.X = b.X
	}
	if b.Y > a.Y {
		a.Y = b.Y
	}
	if b.Z > a.Z {
		a.Z = b.Z
	}
	return a
}
