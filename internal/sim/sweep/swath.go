package sweep

import (
	"math"
	"slices"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// Swath is where any of many motions is during each step of times that they
// share, in boxes around them all, with what they may stray. It says at which
// moments and with which parts any of them may come near something, and how near
// the club of each may come. Of a motion it keeps the club alone. A swath may be of
// some parts only.
type Swath struct {
	times  []float64
	parts  swing.Parts
	track  Track // scratch, for the strays
	pieces []piece
	axes   []geom.Box // moment by moment, piece by piece: around the ends of the axis
	radius [swing.NumParts]float64
	stray2 []float64               // step by step, part by part: the largest, m²
	ever   []geom.Box              // piece by piece: around all moments; nil until asked for
	worst  [swing.NumParts]float64 // the largest stray, m; with ever
	clubs  [][][6]float32          // of each motion, moment by moment and part by part: the ends of the axis
}

// clubParts is how many parts a club has.
const clubParts = int(swing.NumParts - swing.Grip)

// NewSwath returns the swath of no motion at some times (s, rising, at least two), for
// some parts.
func NewSwath(parts swing.Parts, times []float64) *Swath {
	of := slices.DeleteFunc(slices.Clone(pieces), func(p piece) bool { return !parts.Has(p.part) })
	return &Swath{
		times:  times,
		parts:  parts,
		pieces: of,
		axes:   slices.Repeat([]geom.Box{geom.EmptyBox()}, len(times)*len(of)),
		stray2: make([]float64, (len(times)-1)*int(swing.NumParts)),
	}
}

// Times returns the times of the swath; they are not to be changed.
func (w *Swath) Times() []float64 { return w.times }

// Add takes in a motion's poses at the times.
func (w *Swath) Add(poses []swing.Pose) {
	w.AddDuring(0, len(w.times)-1, w.parts, poses)
	if w.parts&swing.ClubParts != 0 {
		w.keepClub(poses)
	}
}

// Moments returns the moments (the first, and the one after the last) that AddDuring
// asks for: one more on either side of the steps, for the curvature there.
func (w *Swath) Moments(from, to int) (first, end int) {
	return max(0, from-1), min(len(w.times), to+2)
}

// AddDuring takes in some parts of a motion during the steps from one to the one before
// another; poses are those at the moments of these steps.
func (w *Swath) AddDuring(from, to int, parts swing.Parts, poses []swing.Pose) {
	first, end := w.Moments(from, to)
	for i := from; i <= to; i++ {
		axes := w.axes[i*len(w.pieces):][:len(w.pieces)]
		pose := &poses[i-first]
		for k := range w.pieces {
			p := &w.pieces[k]
			if !parts.Has(p.part) {
				continue
			}
			c := &pose[p.part]
			a, b := c.A, c.B
			if !p.whole() {
				a, b = geom.Lerp(c.A, c.B, p.from), geom.Lerp(c.A, c.B, p.to)
			}
			axes[k].Min, axes[k].Max = lower(axes[k].Min, lower(a, b)), upper(axes[k].Max, upper(a, b))
			if c.R > w.radius[p.part] {
				w.radius[p.part] = c.R
			}
		}
	}
	w.ever = nil
	t := &w.track
	t.times, t.poses = w.times[first:end], poses
	t.ready()
	for p := range swing.NumParts {
		if !parts.Has(p) {
			continue
		}
		t.bend(p)
		for i, e := range t.stray2[int(p)*t.steps():][from-first : to-first] {
			if at := &w.stray2[(from+i)*int(swing.NumParts)+int(p)]; e > *at {
				*at = e
			}
		}
	}
}

// keepClub keeps the club of a motion.
func (w *Swath) keepClub(poses []swing.Pose) {
	club := make([][6]float32, len(poses)*clubParts)
	for i := range poses {
		for k := range clubParts {
			c := &poses[i][int(swing.Grip)+k]
			club[i*clubParts+k] = [6]float32{
				float32(c.A.X), float32(c.A.Y), float32(c.A.Z), float32(c.B.X), float32(c.B.Y), float32(c.B.Z),
			}
		}
	}
	w.clubs = append(w.clubs, club)
}

// stray returns the most that a part strays in a step in any motion.
func (w *Swath) stray(step int, p swing.Part) float64 {
	return math.Sqrt(w.stray2[step*int(swing.NumParts)+int(p)])
}

// Near returns, for each step, the parts that may come nearer to a box than limit
// (m) in any of the motions. What touches the box is near whatever the limit.
func (w *Swath) Near(b geom.Box, limit float64) []swing.Parts {
	out := make([]swing.Parts, len(w.times)-1)
	for i := range out {
		out[i] = w.NearDuring(i, w.parts, b, limit)
	}
	return out
}

// NearDuring is Near for some parts during one step.
func (w *Swath) NearDuring(step int, parts swing.Parts, b geom.Box, limit float64) (near swing.Parts) {
	limit = max(limit, 0)
	from, to := w.axes[step*len(w.pieces):][:len(w.pieces)], w.axes[(step+1)*len(w.pieces):][:len(w.pieces)]
	for k := range w.pieces {
		p := w.pieces[k].part
		if parts.Has(p) && !near.Has(p) && b.Gap(from[k].Union(to[k])) < limit+w.radius[p]+w.stray(step, p) {
			near |= p.Set()
		}
	}
	return near
}

// Beyond reports whether every motion stays at least limit (m) from a box; where it
// says no some may all the same. Nothing that touches the box is beyond any limit: a
// part may go deeper than its pieces.
func (w *Swath) Beyond(b geom.Box, limit float64) bool {
	limit = max(limit, 0)
	if w.ever == nil {
		w.ever = slices.Repeat([]geom.Box{geom.EmptyBox()}, len(w.pieces))
		for i, axis := range w.axes {
			w.ever[i%len(w.pieces)] = w.ever[i%len(w.pieces)].Union(axis)
		}
		for i := range len(w.times) - 1 {
			for p := range swing.NumParts {
				w.worst[p] = max(w.worst[p], w.stray(i, p))
			}
		}
	}
	for k := range w.pieces {
		p := w.pieces[k].part
		room := limit + w.radius[p]
		if b.Gap(w.ever[k]) >= room+w.worst[p] {
			continue
		}
		for i := range len(w.times) - 1 {
			from, to := &w.axes[i*len(w.pieces)+k], &w.axes[(i+1)*len(w.pieces)+k]
			if b.Gap(from.Union(*to)) < room+w.stray(i, p) {
				return false
			}
		}
	}
	return true
}

// ClubNear marks in near the motions of which a part of the club, of those given,
// may come nearer to a surface than their limits (m) during a step, as far as
// what any of them strays tells.
//
// What separates the first motion's club from the surface separates most others
// too; only for the rest a direction of their own is sought.
func (w *Swath) ClubNear(step int, parts swing.Parts, s *Surface, limits []float64, near []bool) {
	const rounding = 1e-6 // m, of what is kept
	for i := range clubParts {
		part := swing.Grip + swing.Part(i)
		if !parts.Has(part) {
			continue
		}
		radius, stray := w.radius[part], w.stray(step, part)+rounding
		from, to := step*clubParts+i, (step+1)*clubParts+i
		_, n, support := s.separate(axisOf(&w.clubs[0][from], radius).Lerp(axisOf(&w.clubs[0][to], radius), 0.5))
		x, y, z := float32(n.X), float32(n.Y), float32(n.Z)
		less := float32(support + radius + stray + 1e-5) // and the rounding of what follows
		for k, club := range w.clubs {
			if near[k] {
				continue
			}
			a, b := &club[from], &club[to]
			low := min(
				x*a[0]+y*a[1]+z*a[2], x*a[3]+y*a[4]+z*a[5],
				x*b[0]+y*b[1]+z*b[2], x*b[3]+y*b[4]+z*b[5])
			if float64(low-less) >= limits[k] {
				continue
			}
			sp := span{axisOf(a, radius), axisOf(b, radius), stray}
			own, _, _ := s.bound(&sp, 0, 1)
			near[k] = own < limits[k]
		}
	}
}

// PartsNear is ClubNear for one motion with its poses at the ends of the step.
func (w *Swath) PartsNear(step int, parts swing.Parts, s *Surface, from, to *swing.Pose, limit float64) bool {
	for p := range swing.NumParts {
		if !parts.Has(p) {
			continue
		}
		sp := span{from[p], to[p], w.stray(step, p)}
		if low, _, _ := s.bound(&sp, 0, 1); low < limit {
			return true
		}
	}
	return false
}

func axisOf(a *[6]float32, radius float64) geom.Capsule {
	return geom.Capsule{
		A: geom.Vec{X: float64(a[0]), Y: float64(a[1]), Z: float64(a[2])},
		B: geom.Vec{X: float64(a[3]), Y: float64(a[4]), Z: float64(a[5])}, R: radius,
	}
}
