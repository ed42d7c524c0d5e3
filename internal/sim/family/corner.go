package family

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// event is a moment at which a part reaches far along a direction, or comes near
// to something that lies there.
type event struct {
	value float64  // N·p of the part, or its clearance, m
	n     geom.Vec // unit vector against which it is measured: less is farther
	time  float64  // s
	part  swing.Part
}

// reach returns how far along −N the part of the event reaches at its moment in
// another swing.
func (e *event) reach(s *swing.Swing) float64 { return s.PartAt(e.time, e.part).Reach(e.n) }

// member models the member of the family that v places. Where golfer and club
// cannot stand like that it is the nearest to v of those towards the central
// swing that can, so that no corner is left out.
func (r *Relatives) member(v swing.Variation) (*Member, error) {
	s, v, err := nearestMember(r.Family, v)
	if err != nil {
		return nil, err
	}
	return &Member{Variation: v, Swing: s}, nil
}

// nearestMember is member of any family; it returns where in the family it is.
func nearestMember(f *swing.Family, v swing.Variation) (*swing.Swing, swing.Variation, error) {
	const tries = 20
	for k := range tries {
		near := v.Times(1 - float64(k)/tries)
		if s, err := f.Member(near); err == nil {
			return s, near, nil
		}
	}
	s, err := f.Member(swing.Variation{})
	return s, swing.Variation{}, err
}

// singleSlopes returns how the reach of an event changes per standard deviation
// of each trait at the central swing. What a trait does to the least reach is
// what it does to the part that reaches farthest, when it does (the envelope
// theorem).
func (r *Relatives) singleSlopes(e *event) (slope [swing.NumTraits]float64) {
	for t := range slope {
		slope[t] = r.perDeviation(t, e.reach(r.Singles[2*t].Swing), e.reach(r.Singles[2*t+1].Swing))
	}
	return slope
}

// perDeviation returns a change per standard deviation of a trait, from what is
// so with the trait alone below and above the central swing.
func (r *Relatives) perDeviation(t int, below, above float64) float64 {
	if d := r.Singles[2*t+1].Variation[t] - r.Singles[2*t].Variation[t]; d > 0 {
		return (above - below) / d
	}
	return 0
}

// slopesAt is singleSlopes about any member.
func (r *Relatives) slopesAt(m *Member, e *event) (slope [swing.NumTraits]float64) {
	const aside = 0.2 // standard deviations
	var s swing.Swing
	here := e.reach(m.Swing)
	for t := range slope {
		for _, step := range [2]float64{aside, -aside} {
			v := m.Variation
			v[t] += step
			if r.Family.Fill(v, &s) == nil {
				slope[t] = (e.reach(&s) - here) / step
				break
			}
		}
	}
	return slope
}

const (
	// climbs is how often a corner is sought anew from the slopes at the last one.
	climbs = 12
	// climbed (m) is the least gain for which that goes on, and that must be promised.
	climbed = 0.0005
)

// strides are the shares of the way to a corner that a climb tries.
var strides = [...]float64{1, 0.5, 0.2, 0.1, 0.05}

// climb goes from a member on to ever farther-reaching ones: to the corner that
// the slopes where it is point at, as long as that one reaches farther, or only
// some of the way there. look says what a member does, and where.
//
// A swing answers to its traits nearly in proportion, so the corner that the
// slopes at the central swing point at is nearly the farthest-reaching of all;
// two or three more steps leave nobody who goes much farther. Where a step gains
// less than half of what the slopes promise it has gone past a ridge, on whose other
// side the next one would only come back: then half of the way is tried too.
func (r *Relatives) climb(m *Member, e event, look func(*Member) event) (*Member, event) {
	for range climbs {
		from, before := m, e
		slopes := r.slopesAt(from, &before)
		corner := swing.Corner(slopes)
		for i, share := range strides {
			v, promised := from.Variation, 0.0
			for t := range v {
				v[t] += share * (corner[t] - v[t])
			}
			v = v.Onto(swing.Reach)
			for t, slope := range slopes {
				promised += slope * (from.Variation[t] - v[t])
			}
			if promised < climbed {
				break
			}
			next, err := r.member(v)
			if err != nil {
				continue
			}
			if at := look(next); at.value < e.value {
				m, e = next, at
			}
			if m != from && (i > 0 || before.value-e.value > promised/2) {
				break
			}
		}
		if e.value > before.value-climbed {
			break
		}
	}
	return m, e
}

func extremeOf(t *sweep.Track, n geom.Vec) event {
	var e [1]sweep.Extreme
	t.Support([]geom.Vec{n}, e[:])
	return event{e[0].Value, n, e[0].Time, e[0].Part}
}

// meeting says how far a part is from something, m, and against which direction
// that is measured.
type meeting func(geom.Capsule) (float64, geom.Vec)

// facing is the meeting with a plane that faces n, far off.
func facing(n geom.Vec) meeting {
	return func(c geom.Capsule) (float64, geom.Vec) { return c.Reach(n), n }
}

// with is the meeting with a box.
func with(b geom.Box) meeting {
	return func(c geom.Capsule) (float64, geom.Vec) {
		s := b.Separate(c)
		return s.D, s.N
	}
}

// lead is a moment at which the central swing comes near to something, and the corner that the
// slopes there point at.
type lead struct {
	event
	corner swing.Variation
	least  float64 // how near the corner comes then, as the slopes have it, m
}

// leads returns those to whoever comes nearest to something: one for each moment at which the
// central swing comes near, because a later one, or another part, may be the loosest swing's
// nearest.
func (r *Relatives) leads(meet meeting) []lead {
	times, poses := r.coarse.Samples()
	near := make([]event, len(poses))
	for j := range poses {
		near[j] = event{value: math.Inf(1), time: times[j]}
		for part := range swing.NumParts {
			if v, n := meet(poses[j][part]); v < near[j].value {
				near[j].value, near[j].n, near[j].part = v, n, part
			}
		}
	}
	var leads []lead
	for j, e := range near {
		if j > 0 && e.value >= near[j-1].value || j < len(near)-1 && e.value > near[j+1].value {
			continue
		}
		slope := r.singleSlopes(&e)
		w := lead{e, swing.Corner(slope), e.value}
		for t := range slope {
			w.least += slope[t] * w.corner[t]
		}
		leads = append(leads, w)
	}
	return leads
}

// follow climbs along leads, the most promising first, as long as one may lead nearer than what
// was found: climb goes on from a corner and returns how near the nearest comes that is known then.
func (r *Relatives) follow(leads []lead, climb func(*Member, event) float64) {
	const within = 0.10 // m: how much farther a corner goes than the slopes have it
	first, found := math.Inf(1), math.Inf(1)
	for n := len(leads); n > 0; n-- {
		best := 0
		for i := range n {
			if leads[i].least < leads[best].least {
				best = i
			}
		}
		l := leads[best]
		leads[best] = leads[n-1]
		first = min(first, l.least)
		if l.least > first+within && l.least >= found {
			return
		}
		if m, err := r.member(l.corner); err == nil {
			found = climb(m, l.event)
		}
	}
}

// corners returns the members that reach farthest along a direction.
func (r *Relatives) corners(n geom.Vec) (out []*Member) {
	found := math.Inf(1)
	r.follow(r.leads(facing(n)), func(m *Member, at event) float64 {
		look := func(m *Member) event { return extremeOf(r.around(m, at.time), n) }
		m, e := r.climb(m, look(m), look)
		out, found = append(out, m), min(found, e.value)
		return found
	})
	return out
}
