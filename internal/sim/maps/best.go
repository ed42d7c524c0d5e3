package maps

import (
	"cmp"
	"math"
	"slices"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// judge fills in the best places of a map whose grid and mask are drawn.
func (m *StandMap) judge(p plan.Plan, casts []fit.Cast, where *site) {
	var free []fit.Spot
	likely, most := fit.Spot{}, int16(math.MinInt16) // where everybody has most room
	for j := range m.Grid.NY {
		for i := range m.Grid.NX {
			if k := j*m.Grid.NX + i; m.Mask[k] == 0 {
				free = append(free, m.Grid.spot(i, j))
				if v := m.Grid.Values[k]; v > most {
					likely, most = m.Grid.spot(i, j), v
				}
			}
		}
	}
	h := hunt{p: p, casts: casts, free: free, likely: likely, where: where, cell: max(m.Grid.Cell[0], m.Grid.Cell[1]),
		rivals: make([][]rival, len(casts)), known: map[string][]tried{}}
	m.Players, m.Hands = []PlayerBest{}, []HandBest{}
	for _, c := range casts {
		if name := c.Player.Name; !slices.ContainsFunc(m.Players, func(q PlayerBest) bool { return q.Player == name }) {
			m.Players = append(m.Players, PlayerBest{name, c.Player.Hand, h.best(name)})
		}
	}
	var all []string
	for _, hand := range []plan.Hand{plan.HandRight, plan.HandLeft} {
		b := HandBest{Hand: hand}
		for _, q := range m.Players {
			if q.Hand == hand {
				b.Players = append(b.Players, q.Player)
				b.Best = q.Best
			}
		}
		if len(b.Players) > 1 {
			b.Best = h.best(b.Players...)
		}
		if len(b.Players) > 0 {
			m.Hands = append(m.Hands, b)
			all = append(all, b.Players...)
			m.Best = b.Best
		}
	}
	if len(m.Hands) > 1 {
		m.Best = h.best(all...)
	}
	m.Sharing = m.sharing(p.Margin)
}

// sharing compares one tee with two.
func (m *StandMap) sharing(margin float64) Sharing {
	const worthIt = 0.01 // m of clearance for which nobody lays a second mat
	if len(m.Hands) < 2 {
		return Sharing{One: true}
	}
	a, b := m.Hands[0].Best, m.Hands[1].Best
	s := Sharing{Both: true}
	if !a.Found || !b.Found || !m.Best.Found {
		return s
	}
	s.Apart = round(geom.Hypot(a.X-b.X, a.Y-b.Y))
	s.Loses = max(0, min(a.Clearance, b.Clearance)-m.Best.Clearance)
	s.One = m.Best.Clearance >= margin || s.Loses <= worthIt
	return s
}

// Slack (m) is how finely a StandMap weighs the clearances of one check against
// another's: who lacks room is not robbed of it by more for somebody else's sake.
const Slack = 0.005

// standing is what a spot is worth: first how everybody fares, the worst first,
// told apart by Slack and no further than the margin; then the clearance to all that
// depends on the spot, told apart up to the cap; then that to walls and slopes alone.
type standing struct {
	ranks     []int // of every cast, ascending
	clearance float64
	flat      float64
}

func (a standing) compare(b standing) int {
	return cmp.Or(slices.Compare(a.ranks, b.ranks), cmp.Compare(a.clearance, b.clearance), cmp.Compare(a.flat, b.flat))
}

func (a standing) better(b standing) bool { return a.compare(b) > 0 }

// clearRank is the rank of who keeps the margin.
const clearRank = math.MaxInt

// rank tells clearances apart.
func rank(v, margin float64) int {
	if v >= margin {
		return clearRank
	}
	return int(math.Floor(v / Slack))
}

// ranked are the ranks of clearances, ascending.
func ranked(clearances []float64, margin float64) []int {
	out := make([]int, len(clearances))
	for i, v := range clearances {
		out[i] = rank(v, margin)
	}
	slices.Sort(out)
	return out
}

// hunt looks for best places, and keeps what it learns about one set of players
// for the next.
type hunt struct {
	p      plan.Plan
	casts  []fit.Cast
	free   []fit.Spot
	likely fit.Spot // a good one to begin with
	where  *site
	cell   float64
	rivals [][]rival // per cast
	known  map[string][]tried
}

// ruledOut (m) is how far around a bad spot others are ruled out with it; how
// much worse a spot is than that is not looked into.
const ruledOut = 0.15

// tried is a spot with a clearance that one player cannot beat there, and where it
// was worth the look, everybody's.
type tried struct {
	fit.Spot
	most float64
	all  []float64
}

// party are the casts that a place is sought for.
type party struct {
	floor
	margin float64
	each   []*fit.Ground // of one cast each
	rivals []*rival      // of all, by whom they hurt most
	whose  map[*fit.Cast]int
	// scratch is room for a list of ranks.
	scratch []int
}

func (h *hunt) party(players []string) party {
	var chosen []fit.Cast
	q := party{margin: h.p.Margin, whose: map[*fit.Cast]int{}}
	for i, c := range h.casts {
		if !slices.Contains(players, c.Player.Name) {
			continue
		}
		if h.rivals[i] == nil {
			for _, s := range sweep.Surfaces(h.p) {
				if !s.Kind.Flat() {
					h.rivals[i] = append(h.rivals[i], rival{cast: &h.casts[i], box: s.Box, value: math.Inf(-1)})
				}
			}
		}
		q.whose[&h.casts[i]] = len(chosen)
		for k := range h.rivals[i] {
			q.rivals = append(q.rivals, &h.rivals[i][k])
		}
		chosen = append(chosen, c)
		q.each = append(q.each, fit.NewGround(h.p, h.casts[i:i+1]))
	}
	q.floor = newFloor(h.p, chosen)
	q.scratch = make([]int, len(chosen))
	return q
}

// most is what a spot is worth at most: by the flat surfaces.
func (q *party) most(s fit.Spot, flats []float64) standing {
	flat := q.movable(s)
	return standing{ranked(flats, q.margin), min(flat, q.cap), flat}
}

// flats are everybody's clearances to flat surfaces, at most the margin.
func (q *party) flats(s fit.Spot) []float64 {
	out := make([]float64, len(q.each))
	for i, g := range q.each {
		out[i], _ = g.Flat(s, q.margin)
	}
	return out
}

// clearances are everybody's clearances, at most the margin.
func (q *party) clearances(s fit.Spot) []float64 {
	out := q.flats(s)
	for _, r := range q.rivals {
		i := q.whose[r.cast]
		if v, near := r.look(s, math.Inf(-1), out[i]); near {
			out[i] = v
		}
	}
	return out
}

// beaten reports whether a spot that is worth most at most cannot beat the best,
// by what is known of another: no clearance changes by more than the way between
// them.
func (q *party) beaten(k tried, s fit.Spot, flats []float64, most, best standing) bool {
	way := k.To(s)
	switch top := rank(k.most+way, q.margin); {
	case top < best.ranks[0]:
		return true
	case best.ranks[0] == clearRank:
		return k.most+way <= best.clearance
	case k.all == nil:
		return false
	}
	most.ranks, most.clearance = q.scratch[:0], min(most.clearance, k.most+way)
	for i, v := range k.all {
		if v < q.margin {
			v = min(flats[i], v+way)
		} else {
			v = flats[i]
		}
		most.ranks = append(most.ranks, rank(v, q.margin))
	}
	slices.Sort(most.ranks)
	return !most.better(best)
}

// value is what a spot is worth that is worth most at most; it need not be right
// where that is less than the best. all is nil where it was not worth the look.
func (q *party) value(s fit.Spot, most, best standing) (v standing, all []float64) {
	// How bad a spot is matters only so far as it rules out others.
	enough := math.Inf(-1)
	if best.ranks != nil {
		enough = best.clearance
		if best.ranks[0] != clearRank {
			enough = min(enough, float64(best.ranks[0])*Slack)
		}
	}
	v = most
	v.clearance = measure(q.rivals, s, enough-ruledOut, most.clearance)
	if first := min(rank(v.clearance, q.margin), most.ranks[0]); best.ranks != nil && first < best.ranks[0] {
		v.ranks = []int{first}
		return v, nil
	}
	all = q.clearances(s)
	v.ranks = ranked(all, q.margin)
	return v, all
}

// lastKnown is how many spots are asked whether they rule out another.
const lastKnown = 100

// best returns the best of the free spots for some players, refined between
// them.
//
// It tries them in the order of what they are worth by the flat surfaces, which
// none can beat, and passes over those that cannot be better because of what is
// known of others near them.
func (h *hunt) best(players ...string) Best {
	q := h.party(players)
	if len(q.each) == 0 || len(h.free) == 0 {
		return Best{}
	}
	var known []tried
	for _, name := range players {
		for _, k := range h.known[name] {
			known = append(known, tried{k.Spot, k.most, nil}) // of fewer casts
		}
	}
	type candidate struct {
		fit.Spot
		flats []float64
		most  standing
	}
	entry := func(s fit.Spot) candidate {
		flats := q.flats(s)
		return candidate{s, flats, q.most(s, flats)}
	}
	candidates := make([]candidate, len(h.free))
	for i, s := range h.free {
		candidates[i] = entry(s)
	}
	slices.SortStableFunc(candidates, func(a, b candidate) int { return b.most.compare(a.most) })
	candidates = append([]candidate{entry(h.likely)}, candidates...)
	var bestAt fit.Spot
	var best standing
search:
	for n, c := range candidates {
		if n > 0 {
			if !c.most.better(best) {
				break
			}
			for i := len(known) - 1; i >= 0; i-- {
				if (known[i].all == nil || i >= len(known)-lastKnown) && q.beaten(known[i], c.Spot, c.flats, c.most, best) {
					continue search
				}
			}
		}
		v, all := q.value(c.Spot, c.most, best)
		known = append(known, tried{c.Spot, v.clearance, all})
		if n == 0 || v.better(best) {
			best, bestAt = v, c.Spot
		}
	}
	if len(players) == 1 {
		h.known[players[0]] = known
	}
	bestAt = q.refine(bestAt, best, h.where, h.cell/2)
	// Rounded where it is read: what is said of it must hold there.
	if r := (fit.Spot{X: round(bestAt.X), Y: round(bestAt.Y)}); h.where.against(r) == 0 {
		bestAt = r
	}
	t := q.Tightest(bestAt, math.Inf(1))
	out := Best{Found: true, X: bestAt.X, Y: bestAt.Y, Clearance: t.Clearance, Verdict: fit.VerdictOf(t.Clearance, h.p.Margin), Surface: t.Surface}
	if t.Cast >= 0 {
		out.Player, out.Club = q.Casts[t.Cast].Player.Name, q.Casts[t.Cast].Club.Name
	}
	return out
}

// movable is the clearance to the flat surfaces that depend on the spot.
func (f *floor) movable(s fit.Spot) float64 {
	v := math.Inf(1)
	for i := range f.Sides {
		if !f.Sides[i].Level() {
			v = min(v, f.Sides[i].At(s))
		}
	}
	return v
}

// measure returns the least clearance of rivals at a spot, at most limit, and
// puts first who set it. When it is enough or less there may be lesser ones.
func measure(rivals []*rival, at fit.Spot, enough, limit float64) float64 {
	for i := range rivals {
		if limit <= enough {
			break
		}
		if v, near := rivals[i].look(at, enough, limit); near {
			limit = v
			r := rivals[i]
			copy(rivals[1:i+1], rivals[:i])
			rivals[0] = r
		}
	}
	return limit
}

// refine climbs from a spot in ever smaller steps down to a millimetre.
func (q *party) refine(at fit.Spot, best standing, where *site, step float64) fit.Spot {
	for step > 0.0008 {
		moved := false
		for _, d := range [8][2]float64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
			s := fit.Spot{X: at.X + step*d[0], Y: at.Y + step*d[1]}
			most := q.most(s, q.flats(s))
			if !most.better(best) || where.against(s) != 0 {
				continue
			}
			if v, _ := q.value(s, most, best); v.better(best) {
				at, best, moved = s, v, true
			}
		}
		if !moved {
			step /= 2
		}
	}
	return at
}
