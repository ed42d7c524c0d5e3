package remedy

import (
	"math"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
)

// Limits of the rooms that are tried, m: those of a plan, and no more than this
// much added to what there is.
const (
	shortest = 2.0
	narrow   = 1.5
	growth   = 8.0
)

// teeStep (m) is how finely the places of a tee in such a room are tried.
const teeStep = 0.005

// room solves how long (axis 0) or wide (axis 1) the room must be for everybody
// who plays from the asked tee, if the tee may be put anywhere along that axis.
// What stands at the far wall moves with it, what spans the room spans it still,
// and the screen keeps its distance from the front wall and at least the usual
// one from the tee.
func (q *question) room(axis int) *Remedy {
	if q.asked.hopeless(q.p.Margin) {
		return nil
	}
	size := [2]float64{q.p.Room.Length, q.p.Room.Width}[axis]
	least := [2]float64{shortest, narrow}[axis]
	var users []*fit.Cast
	for k := range q.casts {
		if q.casts[k].Player.Uses(q.p.Tees[q.asked.tee]) {
			users = append(users, &q.casts[k])
		}
	}
	solve := func(size float64) (Remedy, plan.Plan, bool) {
		r := q.resized(axis, size)
		p, ok := q.edited(r)
		if !ok {
			return r, p, false
		}
		at, ok := q.along(axis, p, users)
		if !ok {
			return r, p, false
		}
		r.Edits = append(r.Edits, Edit{path("tees", q.asked.tee, [2]string{".x", ".y"}[axis]), at, false})
		p, ok = q.edited(r)
		return r, p, ok && p.Validate() == nil
	}
	// Halve the range until it is a step wide.
	low, high := math.Floor(least/step), math.Ceil((size+growth)/step)
	if _, _, ok := solve(high * step); !ok {
		return nil
	}
	for high-low > 1 {
		mid := math.Floor((low + high) / 2)
		if _, _, ok := solve(mid * step); ok {
			high = mid
		} else {
			low = mid
		}
	}
	r, p, ok := solve(high * step)
	if !ok {
		return nil
	}
	r.Kind, r.Subject = [2]string{KindLength, KindWidth}[axis], q.p.Tees[q.asked.tee].Name
	r.Amount, r.Value = high*step-size, high*step
	return q.verify(r, plain(p))
}

// resized makes the edits for a room of another length or width.
func (q *question) resized(axis int, size float64) Remedy {
	old := [2]float64{q.p.Room.Length, q.p.Room.Width}[axis]
	grow := size - old
	var r Remedy
	set := func(path string, v float64) { r.Edits = append(r.Edits, Edit{Path: path, Value: v}) }
	set([2]string{"room.length", "room.width"}[axis], size)
	const flush = 0.002 // m, as in sweep
	k := [2]string{"[0]", "[1]"}[axis]
	follow := func(list string, i int, low, high float64) {
		if high < old-flush {
			return
		}
		set(path(list, i, ".max"+k), high+grow)
		if low > flush && low > old/2 {
			set(path(list, i, ".min"+k), low+grow)
		}
	}
	for i, b := range q.p.Room.Solids {
		follow("room.solids", i, b.Min[axis], b.Max[axis])
	}
	for i, b := range q.p.Hung {
		follow("hung", i, b.Min[axis], b.Max[axis])
	}
	if s := q.p.Screen; s != nil {
		if axis == 0 {
			set("screen.x", s.X+grow)
		} else {
			width := min(s.Width, size)
			set("screen.width", width)
			set("screen.centre", min(max(s.Centre*size/old, width/2), size-width/2))
		}
	}
	for i, s := range q.p.Seats {
		if v := [2]float64{s.X, s.Y}[axis]; v > size {
			set(path("seats", i, [2]string{".x", ".y"}[axis]), size)
		}
	}
	for i, t := range q.p.Tees {
		// Tees that nobody asked about stay in the room.
		if v := [2]float64{t.X, t.Y}[axis]; i != q.asked.tee && v > size-0.1 {
			set(path("tees", i, [2]string{".x", ".y"}[axis]), size-0.1)
		}
	}
	return r
}

// along looks for a place of the asked tee along an axis from which everybody in
// users is clear, and returns the one nearest to where it is.
func (q *question) along(axis int, p plan.Plan, users []*fit.Cast) (float64, bool) {
	size := [2]float64{p.Room.Length, p.Room.Width}[axis]
	now := [2]float64{q.asked.at.X, q.asked.at.Y}[axis]
	spotAt := func(v float64) fit.Spot {
		at := q.asked.at
		if axis == 0 {
			at.X = v
		} else {
			at.Y = v
		}
		return at
	}
	var stands []stand
	for _, c := range users {
		stands = append(stands, newStand(p, c, q.asked.tee))
	}
	most := p.Room.Length
	if p.Screen != nil && axis == 0 {
		most = p.Screen.X - fit.UsualNearest
	}
	// Where the flat surfaces allow it is a stretch, since their clearance is
	// concave.
	from, to := 0.0, size
	if axis == 0 {
		to = min(to, most)
	}
	for _, s := range stands {
		for _, f := range s.flat {
			slope, v := f.DX, f.At(spotAt(0))
			if axis == 1 {
				slope = f.DY
			}
			switch {
			case slope > 0:
				from = max(from, (p.Margin-v)/slope)
			case slope < 0:
				to = min(to, (v-p.Margin)/-slope)
			case v < p.Margin:
				return 0, false
			}
		}
	}
	clear := func(v float64) float64 {
		at := spotAt(v)
		if !fit.BallFits(p, at) {
			return p.Margin - teeStep
		}
		least := p.Margin
		for i := range stands {
			least = stands[i].cautious(at, least)
		}
		return least
	}
	best, found := 0.0, false
	i0, i1 := math.Ceil(from/teeStep-1e-6), math.Floor(to/teeStep+1e-6)
	start := min(max(math.Round(now/teeStep), i0), i1)
	for _, way := range []float64{1, -1} {
		for i := start; i >= i0 && i <= i1; {
			v := clear(i * teeStep)
			if v >= p.Margin {
				if at := i * teeStep; !found || math.Abs(at-now) < math.Abs(best-now) {
					best, found = at, true
				}
				break
			}
			i += way * max(1, math.Floor((p.Margin-v)/teeStep))
		}
	}
	return best, found
}
