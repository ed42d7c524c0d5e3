package family

import (
	"cmp"
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

// roughLoss bounds what bodies stray over the steps of those times, m
// (TestBodiesStayInTheirSpread).
const roughLoss = 0.10

// clubs returns where any member's club is at any time, made at the first call. Its
// motions are the members in the order of all.
func (r *Relatives) clubs() *sweep.Swath {
	if r.ofClubs == nil {
		r.ofClubs = r.swath(swing.ClubParts, coarseTimes(r.fine, roughTolerance))
	}
	return r.ofClubs
}

// swath returns where parts of any member are.
func (r *Relatives) swath(parts swing.Parts, times []float64) *sweep.Swath {
	w := sweep.NewSwath(parts, times)
	r.Family.SetTimes(times)
	poses := r.scratch.posesFor(len(times))
	for m := range r.All() {
		r.Family.Poses(m.Swing, parts, poses)
		w.Add(poses)
	}
	return w
}

// bodies is where the bodies of a family are during the steps of the rough times.
type bodies struct {
	spread Spread
	swath  *sweep.Swath  // of the parts that are known, step by step
	known  []swing.Parts // the others are far from every box that was asked
}

// bodiesMayBe returns, for each step of the rough times, the parts of the body that may
// come nearer to a box than limit (m) in any member as far as their Spread tells, and
// whether there are any.
func (r *Relatives) bodiesMayBe(box geom.Box, limit float64) (near []swing.Parts, some bool) {
	times := r.clubs().Times()
	b := &r.bodies
	if b.spread == nil {
		b.spread = r.spread(swing.BodyParts, times, roughLoss)
		b.swath, b.known = sweep.NewSwath(swing.BodyParts, times), make([]swing.Parts, len(times)-1)
	}
	limit = max(limit, 0)
	near = make([]swing.Parts, len(b.known))
	for i := range near {
		for p := range swing.Grip {
			if box.Gap(b.spread[i][p]) < limit {
				near[i] |= p.Set()
				some = true
			}
		}
	}
	return near, some
}

// bodiesNear is bodiesMayBe by where every body is. Most boxes are far from all of them
// at any time, which their Spread tells; only where that does not, everybody is looked
// at, and that is kept.
func (r *Relatives) bodiesNear(box geom.Box, limit float64) (near []swing.Parts, some bool) {
	near, some = r.bodiesMayBe(box, limit)
	if !some {
		return near, false
	}
	r.know(near)
	some = false
	for i, parts := range near {
		near[i] = r.bodies.swath.NearDuring(i, parts, box, limit)
		some = some || near[i] != 0
	}
	return near, some
}

// know looks at some parts of every body in some steps, unless they are known.
func (r *Relatives) know(parts []swing.Parts) {
	b := &r.bodies
	for from := 0; from < len(parts); from++ {
		var fresh swing.Parts
		to := from
		for ; to < len(parts) && parts[to]&^b.known[to] != 0; to++ {
			fresh |= parts[to]
		}
		// To add again what a step knows does no harm.
		for i := from; i < to; i++ {
			b.known[i] |= fresh
		}
		if to == from {
			continue
		}
		first, end := b.swath.Moments(from, to)
		r.Family.SetTimes(b.swath.Times()[first:end])
		poses := r.scratch.posesFor(end - first)
		for m := range r.All() {
			r.Family.Poses(m.Swing, fresh, poses)
			b.swath.AddDuring(from, to, fresh, poses)
		}
		from = to
	}
}

// Beyond reports whether every member stays at least limit (m) from a box of the golfer
// frame, by what is known without an atlas.
func (r *Relatives) Beyond(b geom.Box, limit float64) bool {
	if !r.clubs().Beyond(b, limit) {
		return false
	}
	_, near := r.bodiesNear(b, limit)
	return !near
}

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
	// Who comes nearer than the central swing does it with these parts.
	parts := swing.ClubParts
	if _, some := r.bodiesMayBe(s.Box, typical); some {
		parts = swing.AllParts
	}
	for i, m := range corners {
		consider(r.approach(m, at[i].time, s, parts))
	}

	look := r.windows(s, least)
	// Who may come nearer, and who of the sample may touch.
	var near []candidate
	keep := func(i int, p passage) {
		_, k := r.at(i)
		if k >= 0 && p.clearance < -2*p.stray { // also with what may have been taken off
			touched[k] = true
		}
		if p.clearance < least || k >= 0 && p.clearance < 0 && !touched[k] {
			near = append(near, candidate{i, p.clearance, p.Time})
		}
	}
	for i, p := range r.roughPass(s, look, max(0, least)) {
		keep(i, p)
	}
	// The corners were climbed to from the central swing: somebody else may be on the
	// way to one that comes nearer.
	if len(near) > 0 {
		c := slices.MinFunc(near, func(a, b candidate) int { return cmp.Compare(a.clearance, b.clearance) })
		m, _ := r.at(c.index)
		consider(r.approach(m, c.time, s, parts))
	}
	closer := near
	near = nil
	members := make([]*Member, len(closer))
	for i, c := range closer {
		members[i], _ = r.at(c.index)
	}
	for i, p := range r.pass(s, look, coarsely, members, max(0, least)) {
		keep(closer[i].index, p)
	}
	for _, c := range near {
		m, k := r.at(c.index)
		if c.clearance >= least && (k < 0 || c.clearance >= 0) {
			continue // somebody else came nearer meanwhile
		}
		p := r.pass(s, look, finely, []*Member{m}, max(0, least))[0]
		if k >= 0 && p.clearance < 0 {
			touched[k] = true
		}
		if p.clearance < least {
			consider(r.approach(m, p.Time, s, parts))
			consider(m, p.clearance)
		}
	}
	return least, typical, who
}

// candidate is a member that may come nearer to a box than any known one.
type candidate struct {
	index     int     // in the order of all
	clearance float64 // which it does not undercut, m
	time      float64 // at which it comes so near, s
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
			r.clubs().ClubNear(w.from+i, parts, &s, limits, near)
		}
		if w.any.Club() {
			continue
		}
		times := r.clubs().Times()[w.from : w.from+len(w.parts)+1]
		r.Family.SetTimes(times)
		poses := r.scratch.posesFor(len(times))
		for i, m := range members {
			if near[i] {
				continue
			}
			r.Family.Poses(m.Swing, w.any, poses)
			for j, parts := range w.parts {
				near[i] = near[i] || r.clubs().PartsNear(w.from+j, parts&swing.ClubParts, &s, &poses[j], &poses[j+1], limit) ||
					r.bodies.swath.PartsNear(w.from+j, parts&swing.BodyParts, &s, &poses[j], &poses[j+1], limit)
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
// that comes nearest to it then with some of the parts, and returns that one with its
// clearance.
func (r *Relatives) approach(m *Member, at float64, s sweep.Surface, parts swing.Parts) (*Member, float64) {
	const around = 0.08 // s
	fine, _ := r.fine.Samples()
	then := []window{{
		coarse: stretch(r.Times, at-around, at+around),
		fine:   stretch(fine, at-around, at+around),
		any:    parts,
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
	any                 swing.Parts   // all of those
}

// windows returns the stretches in which any part of any member may be within
// look (m) of a box.
func (r *Relatives) windows(s sweep.Surface, look float64) (out []window) {
	rough := r.clubs().Times()
	near := r.clubs().Near(s.Box, look)
	if bodies, some := r.bodiesNear(s.Box, look); some {
		for i, parts := range bodies {
			near[i] |= parts
		}
	}
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
		var parts swing.Parts
		for _, p := range near[from:to] {
			parts |= p
		}
		out = append(out, window{
			stretch(rough, first, last), stretch(r.Times, first, last), stretch(fine, first, last),
			from, near[from:to], parts,
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
	for k := range windows {
		times, parts := times(&windows[k]), windows[k].any
		for i, m := range members {
			track := r.glance(m, parts, times)
			if c, near := track.ClearanceWithin(s, out[i].clearance); near {
				out[i] = passage{c, c.Clearance, max(out[i].stray, track.Stray())}
			}
		}
	}
	return out
}

// The times at which pass looks.
func roughly(w *window) []float64  { return w.rough }
func coarsely(w *window) []float64 { return w.coarse }
func finely(w *window) []float64   { return w.fine }
