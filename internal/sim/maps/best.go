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

// standing is what a spot is worth: the clearance to all that depends on the
// spot, told apart up to the cap, then that to walls and slopes alone.
type standing struct {
	clearance float64
	flat      float64
}

func (a standing) better(b standing) bool {
	return a.clearance > b.clearance || a.clearance == b.clearance && a.flat > b.flat
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

// tried is a spot with a clearance that one player cannot beat there.
type tried struct {
	fit.Spot
	most float64
}

// best returns the best of the free spots for some players, refined between
// them.
//
// It tries them in the order of their clearance to flat surfaces, which none can
// beat, and passes over those that cannot be better because no clearance changes
// by more than the way between two spots.
func (h *hunt) best(players ...string) Best {
	var chosen []fit.Cast
	var rivals []*rival
	var known []tried
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
		for k := range h.rivals[i] {
			rivals = append(rivals, &h.rivals[i][k])
		}
		chosen = append(chosen, c)
	}
	if len(chosen) == 0 {
		return Best{}
	}
	for _, name := range players {
		known = append(known, h.known[name]...)
	}
	f := newFloor(h.p, chosen)
	type candidate struct {
		fit.Spot
		most standing
	}
	candidates := make([]candidate, len(h.free))
	for i, s := range h.free {
		v := f.movable(s)
		candidates[i] = candidate{s, standing{min(v, f.cap), v}}
	}
	slices.SortStableFunc(candidates, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(b.most.clearance, a.most.clearance), cmp.Compare(b.most.flat, a.most.flat))
	})
	var bestAt fit.Spot
	best := standing{clearance: math.Inf(-1)}
	found := false
	if len(h.free) > 0 {
		v := f.movable(h.likely)
		candidates = append([]candidate{{h.likely, standing{min(v, f.cap), v}}}, candidates...)
	}
search:
	for n, c := range candidates {
		if n > 0 && !c.most.better(best) {
			break
		}
		for i := len(known) - 1; i >= 0; i-- {
			if known[i].most+known[i].To(c.Spot) <= best.clearance {
				continue search
			}
		}
		// How bad a spot is matters only so far as it rules out others.
		v := measure(rivals, c.Spot, best.clearance-ruledOut, c.most.clearance)
		known = append(known, tried{c.Spot, v})
		if s := (standing{v, c.most.flat}); !found || s.better(best) {
			best, bestAt, found = s, c.Spot, true
		}
	}
	if !found {
		return Best{}
	}
	if len(players) == 1 {
		h.known[players[0]] = known
	}
	bestAt = f.refine(bestAt, best, rivals, h.where, h.cell/2)
	// Rounded where it is read: what is said of it must hold there.
	if r := (fit.Spot{X: round(bestAt.X), Y: round(bestAt.Y)}); h.where.against(r) == 0 {
		bestAt = r
	}
	t := f.Tightest(bestAt, math.Inf(1))
	out := Best{Found: true, X: bestAt.X, Y: bestAt.Y, Clearance: t.Clearance, Verdict: fit.VerdictOf(t.Clearance, h.p.Margin), Surface: t.Surface}
	if t.Cast >= 0 {
		out.Player, out.Club = chosen[t.Cast].Player.Name, chosen[t.Cast].Club.Name
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
func (f *floor) refine(at fit.Spot, best standing, rivals []*rival, where *site, step float64) fit.Spot {
	for step > 0.0008 {
		moved := false
		for _, d := range [8][2]float64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
			s := fit.Spot{X: at.X + step*d[0], Y: at.Y + step*d[1]}
			flat := f.movable(s)
			most := standing{min(flat, f.cap), flat}
			if !most.better(best) || where.against(s) != 0 {
				continue
			}
			// Less than a hair worse is measured to the end: along a beam the
			// clearance to it stays, and the rest decides.
			v := standing{measure(rivals, s, best.clearance-1e-6, most.clearance), flat}
			if v.better(best) {
				at, best, moved = s, v, true
			}
		}
		if !moved {
			step /= 2
		}
	}
	return at
}
