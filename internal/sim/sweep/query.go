package sweep

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
)

// Clearance returns the nearest (or deepest) contact of the whole motion with a
// surface in the golfer frame, continuous in time. Its Clearance is never more
// than Tolerance above the true minimum, and below it by no more than twice the
// Stray of the track and a tenth of a millimetre.
func (t *Track) Clearance(s Surface) Contact {
	if s.Kind.Flat() {
		e := t.extreme(s.Plane.N)
		c := t.contactAt(&s, e.step, e.Part, e.share)
		c.Clearance = e.Value - s.Plane.D
		return c
	}
	q := newSearch(&s, math.Inf(1))
	q.scan(t, 0)
	c, _ := q.contact()
	return c
}

// FirstContact returns the earliest moment at which the cautious clearance
// falls below zero, found by bisection to a few microseconds or, where the
// clearance only just dips below zero, the dip itself. It returns false exactly
// when Clearance is not negative.
func (t *Track) FirstContact(s Surface) (Contact, bool) {
	nearest := t.Clearance(s)
	if nearest.Clearance >= 0 {
		return Contact{}, false
	}
	if c, ok := t.FirstContactBefore(s, nearest.Time); ok {
		return c, true
	}
	return nearest, true
}

// FirstContactBefore is FirstContact for a caller who only wants to know of
// contacts before a time (s): it costs next to nothing when there is none. A dip
// that bisection does not find it takes for none.
func (t *Track) FirstContactBefore(s Surface, before float64) (Contact, bool) {
	f := first{surface: &s, time: before}
	for p := range swing.NumParts {
		f.descend(t, p, 1)
	}
	if !(f.time < before) {
		return Contact{}, false
	}
	return t.contactAt(&s, f.step, f.part, f.share), true
}

// first is a search for the earliest time with a negative cautious clearance.
type first struct {
	surface *Surface
	time    float64
	part    swing.Part
	step    int
	share   float64
}

// bisections limits the bisection of one step: 2⁻¹⁴ of 1/60 s is a microsecond.
const bisections = 14

func (f *first) descend(t *Track, p swing.Part, node int) {
	if f.surface.Gap(t.node(p, node)) >= 0 {
		return
	}
	if node < t.leaves {
		f.descend(t, p, 2*node)
		f.descend(t, p, 2*node+1)
		return
	}
	from, to := t.leafSteps(node - t.leaves)
	for i := from; i < to; i++ {
		if t.times[i] >= f.time {
			return
		}
		sp := t.span(i, p)
		if s, ok := f.earliest(&sp, 0, 1, 0); ok {
			if at := t.times[i] + s*(t.times[i+1]-t.times[i]); at < f.time {
				f.time, f.part, f.step, f.share = at, p, i, s
			}
			return
		}
	}
}

// earliest returns the earliest share of [a,b] that is past the surface.
func (f *first) earliest(sp *span, a, b float64, depth int) (float64, bool) {
	if depth == 0 {
		if d, _, _ := f.surface.separate(sp.from); d < 0 {
			return a, true
		}
	}
	low, mid, _ := f.surface.bound(sp, a, b)
	if low >= 0 {
		return 0, false
	}
	if depth == bisections {
		return (a + b) / 2, mid < 0
	}
	m := (a + b) / 2
	if s, ok := f.earliest(sp, a, m, depth+1); ok {
		return s, true
	}
	if mid < 0 {
		return m, true
	}
	return f.earliest(sp, m, b, depth+1)
}

// Strikes returns, frame by frame (rate frames per second, from the start of
// the track), the parts that are past the surface, for drawing the marks they
// leave. A frame stands for the time from half a frame before to half a frame
// after it and shows the deepest contact within, so that a club which crosses a
// thin cloth between two frames leaves its mark. Contacts come in order of
// frames, then of parts.
func (t *Track) Strikes(s Surface, rate float64) []Contact {
	var out []Contact
	var touch [swing.NumParts]bool
	some := false
	for p := range swing.NumParts {
		touch[p] = s.Gap(t.node(p, 1)) < 0
		some = some || touch[p]
	}
	if !some || !(rate > 0) {
		return nil
	}
	start, end := t.times[0], t.times[len(t.times)-1]
	step := 0
	for k := 0; ; k++ {
		mid := start + float64(k)/rate
		if mid > end {
			return out
		}
		from, to := max(mid-0.5/rate, start), min(mid+0.5/rate, end)
		for step < t.steps()-1 && t.times[step+1] <= from {
			step++
		}
		for p := range swing.NumParts {
			if !touch[p] {
				continue
			}
			if c, ok := t.within(&s, p, step, from, to); ok {
				out = append(out, c)
			}
		}
	}
}

// within returns the deepest negative contact of a part between two times, of
// which the first lies in the given step.
func (t *Track) within(s *Surface, p swing.Part, step int, from, to float64) (Contact, bool) {
	q := newSearch(s, 0)
	q.between(t, p, step, from, to)
	return q.contact()
}

// between searches what a part does between two times, of which the first lies in
// the given step.
func (q *search) between(t *Track, p swing.Part, step int, from, to float64) {
	var b geom.Box
	for i := step; i < t.steps() && t.times[i] <= to; i++ {
		if t.stepBox(i, p, &b); q.surface.gap(&b) >= q.best {
			continue
		}
		sp := t.span(i, p)
		h := t.times[i+1] - t.times[i]
		lo, hi := 0.0, 1.0
		if h > 0 {
			lo, hi = max((from-t.times[i])/h, 0), min((to-t.times[i])/h, 1)
		}
		q.span(t, 0, i, p, &sp, lo, hi, 0)
	}
}

// Window is a track between two moments, to be asked about one surface after
// another.
type Window struct {
	track    *Track
	from, to float64 // s
	step     int     // in which from lies
	boxes    [swing.NumParts]geom.Box
}

// Window returns the track between two moments, s.
func (t *Track) Window(from, to float64) Window {
	w := Window{track: t, from: from, to: to, step: t.stepAt(from)}
	for p := range w.boxes {
		w.boxes[p] = geom.EmptyBox()
		for i := w.step; i < t.steps() && t.times[i] <= to; i++ {
			var b geom.Box
			t.stepBox(i, swing.Part(p), &b)
			w.boxes[p] = w.boxes[p].Union(b)
		}
	}
	return w
}

// Clearance is that of Track, for the time of the window, if it is less than limit
// (m); false otherwise.
func (w *Window) Clearance(s Surface, limit float64) (Contact, bool) {
	q := newSearch(&s, limit)
	for p := range w.boxes {
		if s.gap(&w.boxes[p]) < q.best {
			q.between(w.track, swing.Part(p), w.step, w.from, w.to)
		}
	}
	return q.contact()
}

// stepAt returns the last step that begins at a time or before it.
func (t *Track) stepAt(s float64) int {
	i := 0
	for j := t.steps() - 1; i < j; {
		if m := (i + j + 1) / 2; t.times[m] <= s {
			i = m
		} else {
			j = m - 1
		}
	}
	return i
}

// PoseAt returns the pose on the chord at time s (limited to the track).
func (t *Track) PoseAt(s float64) swing.Pose {
	i := t.stepAt(s)
	u := 0.0
	if h := t.times[i+1] - t.times[i]; h > 0 {
		u = min(max((s-t.times[i])/h, 0), 1)
	}
	var out swing.Pose
	for p := range out {
		out[p] = t.poses[i][p].Lerp(t.poses[i+1][p], u)
	}
	return out
}
