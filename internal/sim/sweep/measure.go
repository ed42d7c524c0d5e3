package sweep

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// measure fills in the strays and the trees of some parts in one pass over the
// poses. It goes part by part so that the running values stay in registers.
func (t *Track) measure(parts swing.Parts) {
	t.ready()
	t.nodes = grow(t.nodes, 2*t.leaves*int(swing.NumParts))
	for p := range swing.NumParts {
		if parts.Has(p) {
			t.bend(p)
			t.grow(p)
		} else {
			t.nodes[int(p)*2*t.leaves+1] = geom.EmptyBox()
			t.worst2[p] = 0
		}
	}
}

// bendAll fills in the strays alone, of a motion that goes through poses at times.
func (t *Track) bendAll(times []float64, poses []swing.Pose) {
	t.times, t.poses = times, poses
	t.ready()
	for p := range swing.NumParts {
		t.bend(p)
	}
}

// ready makes room for strays, and fills what depends on the times alone.
func (t *Track) ready() {
	n := t.steps()
	if len(t.lensOf) == n+1 && &t.lensOf[0] == &t.times[0] {
		return
	}
	t.lensOf = t.times
	t.lens = grow(t.lens, n+1)
	for i := 1; i <= n; i++ {
		h := t.times[i] - t.times[i-1]
		k := curvatureSafety / 8 * h * h
		t.lens[i].inv, t.lens[i].arch = 1/h, k*k
	}
	for i := 1; i < n; i++ {
		t.lens[i].k = 2 / (t.times[i+1] - t.times[i-1])
	}
	t.stray2 = grow(t.stray2, n*int(swing.NumParts))
	t.layOut()
	t.twigs = grow(t.twigs, t.leaves)
}

// lens is what bend needs of the times around a sample.
type lens struct {
	inv  float64 // 1 / the step before it, 1/s
	k    float64 // 2 / (the two steps around it), 1/s
	arch float64 // stray² of the step before it per squared |x″|, s⁴
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
	poses, lens, twigs := t.poses[:n+1], t.lens[:n+1], t.twigs
	before := &poses[1][p]
	a, b := velocities(&poses[0][p], before, lens[1].inv) // in step i−1
	last, worst := 0.0, 0.0                               // |x″|² at sample i−1; largest stray²
	leaf, end := 0, t.perLeaf                             // leaf of step i−1; its last sample
	w := twig{radius: max(poses[0][p].R, before.R)}
	for i := 1; i < n; i++ { // sample i, between steps i−1 and i
		c := &poses[i+1][p]
		a1, b1 := velocities(before, c, lens[i+1].inv)
		d := apart2(a, a1)
		if e := apart2(b, b1); e > d {
			d = e
		}
		d *= lens[i].k * lens[i].k
		if i == end {
			twigs[leaf] = w
			leaf, end = leaf+1, end+t.perLeaf
			w = twig{radius: before.R}
		} else if d > w.bend2 {
			w.bend2 = d
		}
		if c.R > w.radius {
			w.radius = c.R
		}
		e := d
		if last > e {
			e = last
		}
		e *= lens[i].arch
		out[i-1] = e
		if e > worst {
			worst = e
		}
		last, a, b, before = d, a1, b1, c
	}
	twigs[leaf] = w
	out[n-1] = last * lens[n].arch
	t.worst2[p] = max(worst, out[n-1])
}

// velocities returns those (m/s) of the two ends of a part in a step of 1/inv s.
func velocities(from, to *geom.Capsule, inv float64) (a, b geom.Vec) {
	a = geom.Vec{X: (to.A.X - from.A.X) * inv, Y: (to.A.Y - from.A.Y) * inv, Z: (to.A.Z - from.A.Z) * inv}
	b = geom.Vec{X: (to.B.X - from.B.X) * inv, Y: (to.B.Y - from.B.Y) * inv, Z: (to.B.Z - from.B.Z) * inv}
	return a, b
}

// apart2 returns |a − b|².
func apart2(a, b geom.Vec) float64 {
	x, y, z := a.X-b.X, a.Y-b.Y, a.Z-b.Z
	return x*x + y*y + z*z
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
