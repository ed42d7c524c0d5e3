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

// roughLoss bounds what any part strays over the steps of those times, m: of the 60
// golfers of spreadTimes 0.039 at most (TestSpreadHoldsEveryMember).
const roughLoss = 0.06

// whereabouts is where the members of a family are during the steps of the rough times.
type whereabouts struct {
	sways  *sways
	spread Spread
	swath  *sweep.Swath  // of the parts that are known, step by step; its motions are in the order of all
	known  []swing.Parts // the others are far from every box that was asked
}

// rough returns the family's whereabouts, made at the first call.
func (r *Relatives) rough() *whereabouts {
	w := &r.where
	if w.sways == nil {
		w.sways = r.sways(r.rougher, roughLoss)
		w.spread = w.sways.spread()
		w.swath, w.known = sweep.NewSwath(r.rougher, len(r.Far)+len(r.Sample)+len(r.Singles)), make([]swing.Parts, len(w.spread))
	}
	return w
}

// mayBe returns, for each step of the rough times, the parts that may come nearer to a
// box than limit (m) in any member as far as their sways tell.
func (r *Relatives) mayBe(box *geom.Box, limit float64) []swing.Parts {
	w := r.rough()
	limit = max(limit, 0)
	near := make([]swing.Parts, len(w.spread))
	for i := range near {
		boxes := &w.spread[i]
		for p := range boxes {
			if p := swing.Part(p); geom.Gap(box, &boxes[p]) < limit && !w.sways.clears(i, p, box, limit) {
				near[i] |= p.Set()
			}
		}
	}
	return near
}

// near is mayBe by where everybody is. Most boxes are far from all of them at most
// times, which their sways tell; only where that does not, everybody is looked
// at, and that is kept.
func (r *Relatives) near(box *geom.Box, limit float64) []swing.Parts {
	near := r.mayBe(box, limit)
	r.know(near)
	for i, parts := range near {
		if parts != 0 {
			near[i] = r.where.swath.Near(i, parts, box, limit)
		}
	}
	return near
}

// know looks at some parts of everybody in some steps, unless they are known.
func (r *Relatives) know(parts []swing.Parts) {
	w := r.rough()
	fresh := make([]swing.Parts, len(parts))
	for i := range parts {
		fresh[i] = parts[i] &^ w.known[i]
		w.known[i] |= fresh[i]
	}
	for from := 0; from < len(fresh); from++ {
		to := from
		for to < len(fresh) && fresh[to] != 0 {
			to++
		}
		if to == from {
			continue
		}
		// At each moment, what any of the steps needs that ask for it.
		first, end := w.swath.Moments(from, to)
		wanted := make([]swing.Parts, end-first)
		for i := from; i < to; i++ {
			a, b := w.swath.Moments(i, i+1)
			for j := a; j < b; j++ {
				wanted[j-first] |= fresh[i]
			}
		}
		r.Family.SetTimes(r.rougher[first:end])
		poses := r.scratch.posesFor(end - first)
		for k, m := range r.All() {
			r.Family.PosesOf(m.Swing, wanted, poses)
			w.swath.Add(k, from, fresh[from:to], poses)
		}
		from = to
	}
}

// Beyond reports whether every member stays at least limit (m) from a box of the golfer
// frame, by what is known without an atlas.
func (r *Relatives) Beyond(b geom.Box, limit float64) bool {
	return union(r.near(&b, limit)) == 0
}

// union returns all parts of some sets.
func union(sets []swing.Parts) (all swing.Parts) {
	for _, s := range sets {
		all |= s
	}
	return all
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
	// Who comes nearer than the central swing does it with these parts.
	parts := swing.ClubParts
	if !union(r.mayBe(&s.Box, typical)).Club() {
		parts = swing.AllParts
	}
	r.follow(r.leads(with(s.Box)), func(m *Member, at event) float64 {
		consider(r.approach(m, at.time, s, parts))
		return least
	})

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
	gaps := r.clubGaps(s, look, max(0, least))
	// The corners were climbed to from the central swing: somebody else may be on the
	// way to one that comes nearer. Where hardly anybody may be, they are run first.
	const few = 32
	if first, many := foremost(gaps, max(0, least)); many > few {
		m, _ := r.at(first)
		at := gaps[first].Step
		consider(r.approach(m, (r.rougher[at]+r.rougher[at+1])/2, s, parts))
	}
	for i, p := range r.roughPass(s, look, gaps, max(0, least)) {
		keep(i, p)
	}
	// So may be whoever comes nearest of those.
	const climbers = 3
	for _, c := range nearestFirst(near, climbers) {
		if c.clearance >= least {
			break
		}
		m, _ := r.at(c.index)
		consider(r.approach(m, c.time, s, parts))
	}
	var closer []candidate
	var members []*Member
	for _, c := range near {
		if m, _ := r.at(c.index); c.clearance < max(0, least) {
			closer, members = append(closer, c), append(members, m)
		}
	}
	near = nil
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

// nearestFirst brings the nearest n of some candidates to the front and returns them.
func nearestFirst(near []candidate, n int) []candidate {
	n = min(n, len(near))
	for k := range n {
		for i := k + 1; i < len(near); i++ {
			if near[i].clearance < near[k].clearance {
				near[i], near[k] = near[k], near[i]
			}
		}
	}
	return near[:n]
}

// clubGaps returns how far everybody's club stays from a box, in the order of all, as the
// boxes around where they are tell; at most limit.
func (r *Relatives) clubGaps(s sweep.Surface, look []window, limit float64) []sweep.Gap {
	gaps := make([]sweep.Gap, len(r.Far)+len(r.Sample)+len(r.Singles))
	for i := range gaps {
		gaps[i].Low = limit
	}
	for _, w := range look {
		for i, parts := range w.parts {
			r.where.swath.ClubGaps(w.from+i, parts, &s, gaps)
		}
	}
	return gaps
}

// foremost returns whose gap is the smallest, and how many are smaller than limit (m).
func foremost(gaps []sweep.Gap, limit float64) (first, many int) {
	for i := range gaps {
		if gaps[i].Low < gaps[first].Low {
			first = i
		}
		if gaps[i].Low < limit {
			many++
		}
	}
	return first, many
}

// roughPass runs every member past a box at rough times and returns clearances
// that none undercuts, at most limit, in the order of all. Those of whom it is
// plain that they stay farther off, by the gaps of their clubs and by where their other
// parts are, do not run at all.
func (r *Relatives) roughPass(s sweep.Surface, look []window, gaps []sweep.Gap, limit float64) []passage {
	members := r.All()
	near := make([]bool, len(members))
	for i := range gaps {
		near[i] = gaps[i].Low < limit
	}
	for _, w := range look {
		if w.any.Club() {
			continue
		}
		times := r.rougher[w.from : w.from+len(w.parts)+1]
		r.Family.SetTimes(times)
		poses := r.scratch.posesFor(len(times))
		for i, m := range members {
			if near[i] {
				continue
			}
			r.Family.Poses(m.Swing, w.any, poses)
			for j, parts := range w.parts {
				near[i] = near[i] || r.where.swath.PartsNear(w.from+j, parts, &s, &poses[j], &poses[j+1], limit)
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
	near := r.near(&s.Box, look)
	rough := r.rougher
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
