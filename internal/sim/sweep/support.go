package sweep

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// Extreme is how far a motion reaches against one direction N: the clearance
// to any plane {N, D} is Value − D.
type Extreme struct {
	Value float64 // smallest N·p over golfer and club during the motion, m
	Part  swing.Part
	Time  float64 // s
	step  int
	share float64
}

// Support fills out[k] with the cautious extreme of the motion against the unit
// vector dirs[k]; out must be as long as dirs. It takes one scan of the few
// parts whose bounds reach far enough.
func (t *Track) Support(dirs []geom.Vec, out []Extreme) {
	for k, n := range dirs {
		out[k] = t.extreme(n)
	}
}

// extreme returns the cautious extreme against one direction.
func (t *Track) extreme(n geom.Vec) Extreme {
	var low [swing.NumParts]float64
	for p := range low {
		low[p] = t.node(swing.Part(p), 1).Reach(n)
	}
	best := Extreme{Value: math.Inf(1)}
	for range low {
		next := 0
		for p := range low {
			if low[p] < low[next] {
				next = p
			}
		}
		if low[next] >= best.Value {
			break
		}
		low[next] = math.Inf(1)
		t.reach(n, swing.Part(next), 1, &best)
	}
	best.Time = t.times[best.step] + best.share*(t.times[best.step+1]-t.times[best.step])
	return best
}

// reach lowers best by a node of a part's tree, the half that reaches farther
// first. An end of the part that goes from v0 to v1 on its chord and may stray e
// is at least v0 + s(v1−v0) − 4e·s(1−s) at share s. That is least inside the
// step only when |v1−v0| < 4e, and then lies (4e−|v1−v0|)²/16e below the lower
// end.
func (t *Track) reach(n geom.Vec, p swing.Part, node int, best *Extreme) {
	if node < t.leaves {
		l, r := 2*node, 2*node+1
		vl, vr := t.node(p, l).Reach(n), t.node(p, r).Reach(n)
		if vr < vl {
			l, r, vl, vr = r, l, vr, vl
		}
		if vl < best.Value {
			t.reach(n, p, l, best)
		}
		if vr < best.Value {
			t.reach(n, p, r, best)
		}
		return
	}
	from, to := t.leafSteps(node - t.leaves)
	if from >= to {
		return
	}
	worst := math.Sqrt(t.worst2[p])
	c := &t.poses[from][p]
	a0, b0 := geom.Dot(n, c.A)-c.R, geom.Dot(n, c.B)-c.R
	for i := from; i < to; i++ {
		c := &t.poses[i+1][p]
		a1, b1 := geom.Dot(n, c.A)-c.R, geom.Dot(n, c.B)-c.R
		if low := best.Value + worst; a0 < low || a1 < low || b0 < low || b1 < low {
			e := t.stray(i, p)
			if v, s := dip(a0, a1, e); v < best.Value {
				best.Value, best.Part, best.step, best.share = v, p, i, s
			}
			if v, s := dip(b0, b1, e); v < best.Value {
				best.Value, best.Part, best.step, best.share = v, p, i, s
			}
		}
		a0, b0 = a1, b1
	}
}

// dip returns the least of v0 + s(v1−v0) − 4e·s(1−s) over s in [0,1] and where.
func dip(v0, v1, e float64) (v, s float64) {
	d := v1 - v0
	switch {
	case d >= 4*e:
		return v0, 0
	case d <= -4*e:
		return v1, 1
	}
	s = 0.5 - d/(8*e)
	return v0 + s*d - 4*e*s*(1-s), s
}
