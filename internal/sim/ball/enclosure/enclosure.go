// Package enclosure answers what an impact screen and its returns must be for the
// balls of a plan: how deep, how low, how far from the wall, and how steeply a ball
// may start.
package enclosure

import (
	"errors"
	"slices"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

// Enclosure answers how deep the returns must be, and how low the screen hangs,
// for a share of all ordinary balls to be caught.
type Enclosure struct {
	Rate   float64       `json:"rate"`  // asked for, of each pair's balls
	Balls  int           `json:"balls"` // flown per pair
	Side   Need          `json:"side"`
	Top    Need          `json:"top"`
	Curve  []DepthPoint  `json:"curve"`
	Bottom Bottom        `json:"bottom"`
	Lost   []Lost        `json:"lost"`    // ordinary balls that no return can catch, worst first
	Miss   []MissDepth   `json:"mishits"` // what it would take to catch the named mishits
	Launch []HighestLoft `json:"launch"`
	Behind StandOff      `json:"behind"`
}

// Need is a depth of return for the pair that asks the most.
type Need struct {
	Depth  float64 `json:"depth"`  // m, to catch all but its half of the allowance
	All    float64 `json:"all"`    // m, to catch every ball flown
	Player string  `json:"player"` // who asks it; empty when no ball does
	Club   string  `json:"club"`
	Tee    string  `json:"tee"`
}

// DepthPoint is one point of depth (m) against the share of balls that pass in
// front of a return of that depth: over all pairs alike, and of the worst pair.
type DepthPoint struct {
	Depth     float64 `json:"depth"`
	Side      float64 `json:"side"`
	SideWorst float64 `json:"sideWorst"`
	Top       float64 `json:"top"`
	TopWorst  float64 `json:"topWorst"`
}

// Bottom is how low the screen must come, m above the structural floor.
type Bottom struct {
	Flying  *float64 `json:"flying,omitempty"` // catches the asked share of balls in flight; nil when none comes as far
	Rolling float64  `json:"rolling"`          // no ball on the floor can roll under
}

// Lost is the share of a pair's balls that meet something else on their way to
// the planes of screen and returns, or pass under them.
type Lost struct {
	Player  string  `json:"player"`
	Club    string  `json:"club"`
	Tee     string  `json:"tee"`
	Surface string  `json:"surface"`
	Share   float64 `json:"share"`
}

// MissDepth is what would catch a named mishit.
type MissDepth struct {
	Player string  `json:"player"`
	Club   string  `json:"club"`
	Tee    string  `json:"tee"`
	Name   string  `json:"name"`
	Meets  string  `json:"meets"` // "screen", "side return", "top return", or what is in the way
	Depth  float64 `json:"depth"` // m of return that it takes; 0 when no return can
}

// LeastRate is the least share of balls that an enclosure is measured for.
const LeastRate = 0.5

// curveStep (m) is the spacing of the curve's depths.
const curveStep = 0.05

// For flies n ordinary balls of every pair and measures what screen and
// returns would have to be to catch the share rate (LeastRate to 1) of each pair's. Half
// of the allowed misses go to the sides and half to the top. The ball's whole
// width counts.
func For(p plan.Plan, pairs []ball.Pair, rate float64, n int) (Enclosure, error) {
	if p.Screen == nil {
		return Enclosure{}, errors.New("screen: the plan has none, so there is no enclosure to measure")
	}
	if !(rate >= LeastRate && rate <= 1) {
		return Enclosure{}, fmt.Errorf("catch rate %g is outside %g–1", rate, LeastRate)
	}
	if n < 1 || len(pairs) == 0 {
		return Enclosure{}, fmt.Errorf("%d balls of %d pairs: need at least one of each", n, len(pairs))
	}
	s := ball.NewScene(p)
	open := planesOf(p, s)
	shots := ball.Draws(n)
	out := Enclosure{Rate: rate, Balls: n, Behind: standOff(p, pairs)}
	out.Bottom.Rolling = p.Floor.Top() + ball.Diameter
	out.Lost, out.Miss = []Lost{}, []MissDepth{}
	allowed := (1 - rate) * float64(n) * (1 + 1e-12) // whole counts survive rounding
	needs := make([]depths, len(pairs))
	for i, q := range pairs {
		d := open.fly(q, shots)
		needs[i] = d
		out.Side = out.Side.deeper(d.side, int(allowed/2), q)
		out.Top = out.Top.deeper(d.top, int(allowed/2), q)
		if k := min(int(allowed), len(d.low)-1); k >= 0 && (out.Bottom.Flying == nil || d.low[k] < *out.Bottom.Flying) {
			out.Bottom.Flying = &d.low[k]
		}
		for name, k := range d.lost {
			out.Lost = append(out.Lost, Lost{q.Player.Name, q.Club.Name, q.Tee.Name, name, float64(k) / float64(n)})
		}
		out.Miss = append(out.Miss, open.misses(q)...)
		out.Launch = append(out.Launch, highest(s, q))
	}
	out.Curve = curve(needs, n)
	sortLost(out.Lost)
	return out, nil
}

// deeper returns the need that is greater: so far, or of the sorted depths of a
// pair that may miss so many.
func (w Need) deeper(depth []float64, allowed int, q ball.Pair) Need {
	if len(depth) == 0 {
		return w
	}
	w.All = max(w.All, depth[len(depth)-1])
	if k := len(depth) - 1 - allowed; k >= 0 && depth[k] > w.Depth {
		w.Depth, w.Player, w.Club, w.Tee = depth[k], q.Player.Name, q.Club.Name, q.Tee.Name
	}
	return w
}

// openRoom is a room with the cloth and frame taken out and the planes of screen,
// sides and top in their place.
type openRoom struct {
	plan    plan.Plan
	air     ball.Air
	targets []ball.Target
}

func planesOf(p plan.Plan, s *ball.Scene) openRoom {
	right, left, _, top := p.Screen.Edges()
	plane := func(k ball.Kind, n geom.Vec, d float64) ball.Target {
		return ball.Target{Kind: k, Half: geom.Halfspace{N: n, D: d}}
	}
	o := openRoom{p, s.Air, []ball.Target{
		plane(ball.KindScreen, geom.Vec{X: -1}, -p.Screen.X),
		plane(ball.KindSideReturn, geom.Vec{Y: -1}, -left),
		plane(ball.KindSideReturn, geom.Vec{Y: 1}, right),
		plane(ball.KindTopReturn, geom.Vec{Z: -1}, -top),
	}}
	for _, t := range s.Targets {
		switch t.Kind {
		case ball.KindScreen, ball.KindSideReturn, ball.KindTopReturn, ball.KindFrame:
		default:
			o.targets = append(o.targets, t)
		}
	}
	return o
}

// depths are what one pair's balls ask of the enclosure.
type depths struct {
	side, top []float64      // depth (m) that would catch each ball bound for them, rising
	low       []float64      // underside of each ball at the screen's plane (m), rising
	lost      map[string]int // balls that meet something else first, by its name
}

func (o openRoom) fly(q ball.Pair, shots []ball.Draw) depths {
	d := depths{lost: map[string]int{}}
	l, skill := q.Launch(), ball.SkillOf(q.Player)
	for _, shot := range shots {
		c := o.first(q, l.Vary(skill, shot))
		at, depth := c.Arrival.P, o.depth(c)
		switch {
		case c.Kind == ball.KindFloor:
			d.low = append(d.low, o.plan.Floor.Top())
			d.lost[c.Surface]++
		case c.Kind == ball.KindScreen:
			d.low = append(d.low, at.Z-ball.Radius)
			if at.Z-ball.Radius < o.plan.Screen.Bottom {
				d.lost["under the screen"]++
			}
		case (c.Kind == ball.KindSideReturn || c.Kind == ball.KindTopReturn) && at.Z < o.plan.Screen.Bottom:
			d.lost["under the return"]++
		case c.Kind == ball.KindSideReturn:
			d.side = append(d.side, depth)
		case c.Kind == ball.KindTopReturn:
			d.top = append(d.top, depth)
		default:
			d.lost[c.Surface]++
		}
	}
	slices.Sort(d.side)
	slices.Sort(d.top)
	slices.Sort(d.low)
	return d
}

func (o openRoom) first(q ball.Pair, l ball.Launch) ball.Contact {
	return ball.Fly(l.At(o.plan, q.Tee), o.air, o.targets, ball.Options{}).End
}

// depth is how far a return must reach out from the screen to meet the ball with
// its whole width.
func (o openRoom) depth(c ball.Contact) float64 { return o.plan.Screen.X - c.Arrival.P.X + ball.Radius }

// misses tells what would catch the pair's named mishits. A topped ball is left
// out: it runs along the floor, which is a matter for the screen's bottom.
func (o openRoom) misses(q ball.Pair) []MissDepth {
	var out []MissDepth
	for _, m := range ball.Misses(q.Launch(), q.Player.Hand) {
		if m.Name == ball.Topped {
			continue
		}
		c := o.first(q, m.Launch)
		d := MissDepth{Player: q.Player.Name, Club: q.Club.Name, Tee: q.Tee.Name, Name: m.Name, Meets: c.Surface}
		if c.Kind == ball.KindScreen || c.Kind == ball.KindSideReturn || c.Kind == ball.KindTopReturn {
			switch z := c.Arrival.P.Z; {
			case z < o.plan.Screen.Bottom:
				d.Meets = "under the " + string(c.Kind)
			case c.Kind == ball.KindScreen:
				d.Meets = string(c.Kind)
			default:
				d.Meets, d.Depth = string(c.Kind), o.depth(c)
			}
		}
		out = append(out, d)
	}
	return out
}
