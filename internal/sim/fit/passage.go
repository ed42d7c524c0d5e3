package fit

import (
	"cmp"
	"math"
	"slices"

	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Passing is what of golfer and club is nearest to anything at one moment of a
// swing. Its clearance is the least from half a frame before that moment to half a
// frame after it.
type Passing struct {
	Surface, Part string
	Clearance     float64 // signed, m
	Speed         float64 // of the part, at the place that is nearest, m/s
}

// Moment is a stretch of a swing in which it is tight at one surface, or past it.
type Moment struct {
	Start, End float64 // s
	Time       float64 // of the least clearance, s
	Verdict    Verdict
	Surface    string
	Part       string // that is nearest at Time
}

// Passage is one swing in its place, frame by frame.
type Passage struct {
	Frames  []Passing // rate to the second, the first at address
	Moments []Moment  // by their start
}

// Pass goes through the swing that sets the clearance of a check, standing at
// place among the surfaces of a room (room frame), rate frames to the second.
//
// No frame says more than the check: the frame of the tightest moment has the
// check's own clearance, and no other has less, because the check's is at most
// sweep.Tolerance above what any modelled swing comes to. The moments hold the
// check's first touch too, which may be another swing's.
func Pass(s *swing.Swing, place sweep.Placement, room []sweep.Surface, c Check, margin, rate float64) Passage {
	local := place.Surfaces(room)
	track := sweep.Sample(s, sweep.FineTolerance)
	frames := int(math.Ceil(s.Duration()*rate-1e-9)) + 1
	tightest := int(math.Round(c.Nearest.Time * rate))
	open := make([]run, len(room))
	var out Passage
	last := 0 // nearest surface
	for k := range frames {
		mid := float64(k) / rate
		nearest, at := Passing{Clearance: math.Inf(1)}, sweep.Contact{}
		around := track.Window(mid-0.5/rate, mid+0.5/rate)
		for n := range local {
			i := (n + last) % len(local) // what was nearest before is so again, mostly
			limit := max(nearest.Clearance, margin)
			own := k == tightest && room[i].Name == c.Nearest.Surface
			if own {
				limit = math.Inf(1)
			}
			seen, near := around.Clearance(local[i], limit)
			if seen.Clearance = max(seen.Clearance, c.Clearance); own {
				seen.Clearance = c.Clearance
			}
			if near && seen.Clearance < nearest.Clearance {
				nearest, at = Passing{Surface: room[i].Name, Clearance: seen.Clearance}, seen
				last = i
			}
			out.Moments = open[i].add(out.Moments, room[i].Name, mid, rate, seen, margin)
		}
		nearest.Part, nearest.Speed = at.Part.String(), speedAt(s, at)
		if k == tightest {
			nearest = Passing{c.Nearest.Surface, c.Nearest.Part, c.Clearance, c.Nearest.Speed}
		}
		out.Frames = append(out.Frames, nearest)
	}
	for i := range open {
		out.Moments = open[i].close(out.Moments)
	}
	out.Moments = withTouch(out.Moments, c.Contact, rate)
	slices.SortStableFunc(out.Moments, func(a, b Moment) int { return cmp.Compare(a.Start, b.Start) })
	return out
}

// run is a stretch of frames, under way, in which a swing is tight at one surface.
type run struct {
	tight   *Moment  // from the first frame under the margin
	strikes []Moment // in it
	least   float64  // of the moment under way
	past    bool     // the last frame was past the surface
}

// add takes one frame to the run, and a run that it ends to the moments.
func (r *run) add(moments []Moment, surface string, mid, rate float64, at sweep.Contact, margin float64) []Moment {
	verdict := VerdictOf(at.Clearance, margin)
	if verdict == Clear {
		return r.close(moments)
	}
	fresh := Moment{Start: max(0, mid-0.5/rate), Verdict: verdict, Surface: surface}
	if r.tight == nil {
		r.tight, r.least = &fresh, math.Inf(1)
	}
	under := r.tight
	if verdict == Strikes {
		if !r.past {
			r.strikes, r.least = append(r.strikes, fresh), math.Inf(1)
		}
		under = &r.strikes[len(r.strikes)-1]
	}
	r.past = verdict == Strikes
	if r.strikes == nil || r.past {
		under.End = mid + 0.5/rate
		if at.Clearance < r.least {
			r.least, under.Time, under.Part = at.Clearance, at.Time, at.Part.String()
		}
	}
	return moments
}

// close ends the run: where a surface is struck, being tight on the way there and
// back is no moment of its own.
func (r *run) close(moments []Moment) []Moment {
	switch {
	case r.tight == nil:
	case r.strikes == nil:
		moments = append(moments, *r.tight)
	default:
		moments = append(moments, r.strikes...)
	}
	*r = run{}
	return moments
}

// soon (s) is how long after the first touch of a family one of its members may be
// said to touch in the same stroke.
const soon = 0.1

// withTouch adds a first touch that may be another swing's: it begins the moment at
// that surface which follows soon, or is one of its own.
func withTouch(moments []Moment, first *Contact, rate float64) []Moment {
	if first == nil {
		return moments
	}
	for i := range moments {
		m := &moments[i]
		if m.Surface == first.Surface && m.Verdict == Strikes && first.Time <= m.End && first.Time > m.Start-soon {
			m.Start = min(m.Start, first.Time)
			return moments
		}
	}
	return append(moments, Moment{
		Start: first.Time, End: first.Time + 1/rate, Time: first.Time,
		Verdict: Strikes, Surface: first.Surface, Part: first.Part,
	})
}
