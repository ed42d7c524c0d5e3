package family

import (
	"math"
	"slices"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// roughTolerance is the chord deviation (m) of the central swing at the times at
// which every member is looked at for every box. What a member strays from its
// chords is taken off, so nothing is missed; only more of them are looked at again.
const roughTolerance = 0.03

// everywhere returns where any member is at any time, made at the first call.
// Its motions are the members in the order of all.
func (r *Relatives) everywhere() *sweep.Swath {
	if r.swath == nil {
		times := coarseTimes(r.fine, roughTolerance)
		r.swath = sweep.NewSwath(times)
		r.Family.SetTimes(times)
		poses := make([]swing.Pose, len(times))
		for m := range r.All() {
			r.Family.Poses(m.Swing, swing.AllParts, poses)
			r.swath.Add(poses)
		}
	}
	return r.swath
}

// Beyond reports whether every member stays at least limit (m) from a box of the golfer
// frame, by what is known without an atlas.
func (r *Relatives) Beyond(b geom.Box, limit float64) bool { return r.everywhere().Beyond(b, limit) }

// againstBox returns the least clearance of any member to a box, that of the
// central swing, and which member it is; it marks in touched the members of the
// sample that touch the box.
//
// A few members that come near say how near the nearest comes at most; then every
// other is run past the box roughly, while any may come nearer than that, and
// those that do without what they may stray are looked at closely.
func (r *Relatives) againstBox(s sweep.Surface, touched []bool) (least, typical float64, who *Member) {
	typical = r.fine.Clearance(s).Clearance
	least, who = typical, r.Central
	consider := func(m *Member, v float64) {
		if v < least {
			least, who = v, m
		}
	}
	corners, at := r.ways(with(s.Box))
	for i, m := range corners {
		consider(r.approach(m, at[i].time, s))
	}

	look := r.windows(s, least)
	// Who may come nearer, and who of the sample may touch, by their numbers.
	var near []int
	keep := func(i int, p passage) {
		_, k := r.at(i)
		if k >= 0 && p.clearance < -2*p.stray { // also with what may have been taken off
			touched[k] = true
		}
		if p.clearance < least || k >= 0 && p.clearance < 0 && !touched[k] {
			near = append(near, i)
		}
	}
	for i, p := range r.roughPass(s, look, max(0, least)) {
		keep(i, p)
	}
	closer := near
	near = nil
	members := make([]*Member, len(closer))
	for i, at := range closer {
		members[i], _ = r.at(at)
	}
	for i, p := range r.pass(s, look, coarsely, members, max(0, least)) {
		keep(closer[i], p)
	}
	for _, i := range near {
		m, k := r.at(i)
		p := r.pass(s, look, finely, []*Member{m}, max(0, least))[0]
		if k >= 0 && p.clearance < 0 {
			touched[k] = true
		}
		if p.clearance < least {
			consider(r.approach(m, p.Time, s))
			consider(m, p.clearance)
		}
	}
	return least, typical, who
}

// roughPass runs every member past a box at rough times and returns clearances
// that none undercuts, at most limit, in the order of all. Those of whom it is
// plain that they stay farther off do not run at all.
func (r *Relatives) roughPass(s sweep.Surface, look []window, limit float64) []passage {
	members := slices.Collect(r.All())
	limits, near := make([]float64, len(members)), make([]bool, len(members))
	for i := range limits {
		limits[i] = limit
	}
	for _, w := range look {
		for i, parts := range w.parts {
			r.swath.ClubNear(w.from+i, parts, &s, limits, near)
		}
		if w.clubOnly {
			continue
		}
		times := r.swath.Times()[w.from : w.from+len(w.parts)+1]
		r.Family.SetTimes(times)
		r.poses = slices.Grow(r.poses[:0], len(times))[:len(times)]
		for i, m := range members {
			if near[i] {
				continue
			}
			r.Family.Poses(m.Swing, swing.AllParts, r.poses)
			for j, parts := range w.parts {
				near[i] = near[i] || r.swath.PartsNear(w.from+j, parts, &s, &r.poses[j], &r.poses[j+1], limit)
			}
		}
	}
	var who []*Member
	for i, m := range members {
		if near[i] {
			who = append(who, m)
		}
	}
	out := make([]passage, len(members))
	passed := r.pass(s, look, roughly, who, limit)
	for i := range out {
		if out[i].clearance = limit; near[i] {
			out[i], passed = passed[0], passed[1:]
		}
	}
	return out
}

// at returns the i-th of all members and its place in the sample, or −1.
func (r *Relatives) at(i int) (*Member, int) {
	if i < len(r.Far) {
		return r.Far[i], -1
	}
	if i -= len(r.Far); i < len(r.Sample) {
		return r.Sample[i], i
	}
	return r.Singles[i-len(r.Sample)], -1
}

// approach climbs from a member that comes near to a box at a moment to the one
// that comes nearest to it then, and returns that one with its clearance.
func (r *Relatives) approach(m *Member, at float64, s sweep.Surface) (*Member, float64) {
	const around = 0.08 // s
	fine, _ := r.fine.Samples()
	then := []window{{
		coarse: stretch(r.Times, at-around, at+around),
		fine:   stretch(fine, at-around, at+around),
	}}
	look := func(m *Member) event {
		p := r.pass(s, then, coarsely, []*Member{m}, math.Inf(1))[0]
		return event{p.clearance, awayFrom(p.Contact), p.Time, p.Part}
	}
	m, _ = r.climb(m, look(m), look)
	return m, r.pass(s, then, finely, []*Member{m}, math.Inf(1))[0].clearance
}

// awayFrom returns the direction from the box to the part of a contact, or none.
func awayFrom(c sweep.Contact) geom.Vec {
	away := r3.Sub(c.OnPart, c.OnSurface)
	if c.Clearance < 0 {
		away = r3.Scale(-1, away)
	}
	return unit(away)
}

// NearestTo returns the least clearance that againstBox finds, and nothing else.
func (r *Relatives) NearestTo(s sweep.Surface) float64 {
	least, _, _ := r.againstBox(s, make([]bool, len(r.Sample)))
	return least
}

// singleClearances returns the clearance to a box of each trait alone at −1 and
// +1 standard deviation.
func (r *Relatives) singleClearances(s sweep.Surface) []float64 {
	// No trait alone stays as far off as this.
	limit := max(0, r.coarse.Clearance(s).Clearance) + 0.15
	look := r.windows(s, limit)
	out := make([]float64, len(r.Singles))
	for i, p := range r.pass(s, look, coarsely, r.Singles, limit) {
		out[i] = p.clearance
	}
	return out
}

// window is a stretch of time in which a family may come near a box: the rough,
// the coarse and the fine times of it.
type window struct {
	rough, coarse, fine []float64
	from                int           // first step of the rough times during which
	parts               []swing.Parts // these come near, and so on
	clubOnly            bool          // whether only the club comes near
}

// windows returns the stretches in which any part of any member may be within
// look (m) of a box.
func (r *Relatives) windows(s sweep.Surface, look float64) (out []window) {
	all := r.everywhere()
	rough := all.Times()
	near := all.Near(s.Box, look)
	fine, _ := r.fine.Samples()
	for from := 0; from < len(near); {
		to := from
		for to < len(near) && near[to] != 0 && near[to].Club() == near[from].Club() {
			to++
		}
		if to == from {
			from++
			continue
		}
		// One more moment on either side, for the curvature there.
		first, last := rough[max(0, from-1)], rough[min(len(near), to+1)]
		out = append(out, window{
			stretch(rough, first, last), stretch(r.Times, first, last), stretch(fine, first, last),
			from, near[from:to], near[from].Club(),
		})
		from = to
	}
	return out
}

// stretch returns the part of rising times that just holds all from first to last.
func stretch(times []float64, first, last float64) []float64 {
	i, exact := slices.BinarySearch(times, first)
	if !exact {
		i = max(0, i-1)
	}
	j, _ := slices.BinarySearch(times, last)
	return times[i:min(len(times), j+1)]
}

// passage is a member's nearest contact with a box during some stretches.
type passage struct {
	sweep.Contact
	clearance float64 // the contact's, or the limit for those that stay farther off, m
	stray     float64 // what has been taken off clearances, at most, m
}

// pass runs members past a box.
func (r *Relatives) pass(s sweep.Surface, windows []window, times func(*window) []float64, members []*Member, limit float64) []passage {
	out := make([]passage, len(members))
	for i := range out {
		out[i].clearance = limit
	}
	if r.track == nil {
		r.track = &sweep.Track{}
	}
	for k := range windows {
		times := times(&windows[k])
		first, parts := swing.Part(0), swing.AllParts
		r.Family.SetTimes(times)
		r.poses = slices.Grow(r.poses[:0], len(times))[:len(times)]
		if windows[k].clubOnly {
			first, parts = swing.Grip, swing.ClubParts
		}
		for i, m := range members {
			r.Family.Poses(m.Swing, parts, r.poses)
			r.track.ResetFrom(first, times, r.poses)
			if c, near := r.track.ClearanceWithin(s, out[i].clearance); near {
				out[i] = passage{c, c.Clearance, max(out[i].stray, r.track.Stray())}
			}
		}
	}
	return out
}

// The times at which pass looks.
func roughly(w *window) []float64  { return w.rough }
func coarsely(w *window) []float64 { return w.coarse }
func finely(w *window) []float64   { return w.fine }
