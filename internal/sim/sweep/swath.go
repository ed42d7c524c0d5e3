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
// the club of each may come. Of a motion it keeps the club alone. It knows of those
// parts and steps that were added for every motion, and of no others.
type Swath struct {
	times  []float64
	track  Track      // scratch, for the strays
	axes   []geom.Box // moment by moment, piece by piece: around the ends of the axis
	radius [swing.NumParts]float64
	stray2 []float64      // step by step, part by part: the largest, m²
	clubs  [][][6]float32 // of each moment, part by part and motion by motion: the ends of the axis; nil until added
	many   int            // motions
}

// clubParts is how many parts a club has.
const clubParts = int(swing.NumParts - swing.Grip)

// NewSwath returns the swath of many motions of which nothing is known, at some times
// (s, rising, at least two).
func NewSwath(times []float64, many int) *Swath {
	return &Swath{
		times:  times,
		axes:   slices.Repeat([]geom.Box{geom.EmptyBox()}, len(times)*len(pieces)),
		stray2: make([]float64, (len(times)-1)*int(swing.NumParts)),
		clubs:  make([][][6]float32, len(times)),
		many:   many,
	}
}

// Times returns the times of the swath; they are not to be changed.
func (w *Swath) Times() []float64 { return w.times }

// Moments returns the moments (the first, and the one after the last) that Add
// asks for: one more on either side of the steps, for the curvature there.
func (w *Swath) Moments(from, to int) (first, end int) {
	return max(0, from-1), min(len(w.times), to+2)
}

// Add takes in some parts of the k-th motion during each of the steps from one on; poses
// are those at the moments of these steps, and what a step needs at its own is in them.
func (w *Swath) Add(k, from int, steps []swing.Parts, poses []swing.Pose) {
	to := from + len(steps)
	first, end := w.Moments(from, to)
	var all swing.Parts
	for i := from; i <= to; i++ {
		var parts swing.Parts // of the steps that begin or end here
		if i > from {
			parts = steps[i-1-from]
		}
		if i < to {
			parts |= steps[i-from]
		}
		all |= parts
		axes := w.axes[i*len(pieces):][:len(pieces)]
		pose := &poses[i-first]
		w.keepClub(k, i, parts, pose)
		for k := range pieces {
			p := &pieces[k]
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
	t := &w.track
	t.times, t.poses = w.times[first:end], poses
	t.ready()
	for p := range swing.NumParts {
		if !all.Has(p) {
			continue
		}
		t.bend(p)
		for i, e := range t.stray2[int(p)*t.steps():][from-first : to-first] {
			if at := &w.stray2[(from+i)*int(swing.NumParts)+int(p)]; steps[i].Has(p) && e > *at {
				*at = e
			}
		}
	}
}

// keepClub keeps some parts of the club of the k-th motion at a moment.
func (w *Swath) keepClub(k, moment int, parts swing.Parts, pose *swing.Pose) {
	if parts&swing.ClubParts == 0 {
		return
	}
	if w.clubs[moment] == nil {
		w.clubs[moment] = make([][6]float32, clubParts*w.many)
	}
	for i := range clubParts {
		if p := swing.Grip + swing.Part(i); parts.Has(p) {
			c := &pose[p]
			w.clubs[moment][i*w.many+k] = [6]float32{
				float32(c.A.X), float32(c.A.Y), float32(c.A.Z), float32(c.B.X), float32(c.B.Y), float32(c.B.Z),
			}
		}
	}
}

// stray returns the most that a part strays in a step in any motion.
func (w *Swath) stray(step int, p swing.Part) float64 {
	return math.Sqrt(w.stray2[step*int(swing.NumParts)+int(p)])
}

// Near returns those of some parts that may come nearer to a box than limit (m)
// in any of the motions during a step. What touches the box is near whatever the limit.
func (w *Swath) Near(step int, parts swing.Parts, b *geom.Box, limit float64) (near swing.Parts) {
	limit = max(limit, 0)
	from, to := w.axes[step*len(pieces):][:len(pieces)], w.axes[(step+1)*len(pieces):][:len(pieces)]
	for k := range pieces {
		p := pieces[k].part
		if parts.Has(p) && !near.Has(p) && b.Gap(from[k].Union(to[k])) < limit+w.radius[p]+w.stray(step, p) {
			near |= p.Set()
		}
	}
	return near
}

// Gap is how far a motion stays from something at least, and the step in which.
type Gap struct {
	Low  float64 // m
	Step int
}

// ClubGaps lowers the gaps of the motions to what no part of their clubs, of those given,
// undercuts during a step on the way to a surface, as far as what any of them strays tells.
// What does not lower a gap is not looked at closely.
//
// What separates the first motion's club from the surface separates most others
// too; only for the rest a direction of their own is sought.
func (w *Swath) ClubGaps(step int, parts swing.Parts, s *Surface, gaps []Gap) {
	const rounding = 1e-6 // m, of what is kept
	for i := range clubParts {
		part := swing.Grip + swing.Part(i)
		if !parts.Has(part) {
			continue
		}
		radius, stray := w.radius[part], w.stray(step, part)+rounding
		from, to := w.clubs[step][i*w.many:][:w.many], w.clubs[step+1][i*w.many:][:w.many]
		_, n, support := s.separate(axisOf(&from[0], radius).Lerp(axisOf(&to[0], radius), 0.5))
		x, y, z := float32(n.X), float32(n.Y), float32(n.Z)
		less := float32(support + radius + stray + 1e-5) // and the rounding of what follows
		for k := range from {
			a, b := &from[k], &to[k]
			low := min(
				x*a[0]+y*a[1]+z*a[2], x*a[3]+y*a[4]+z*a[5],
				x*b[0]+y*b[1]+z*b[2], x*b[3]+y*b[4]+z*b[5])
			if float64(low-less) >= gaps[k].Low {
				continue
			}
			sp := span{axisOf(a, radius), axisOf(b, radius), stray}
			if own, _, _ := s.bound(&sp, 0, 1); own < gaps[k].Low {
				gaps[k] = Gap{own, step}
			}
		}
	}
}

// PartsNear reports whether some parts of one motion, with its poses at the ends of a step,
// may come nearer to a surface than limit (m) during it.
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
