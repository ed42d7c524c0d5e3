package maps

import (
	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/remedy"
)

// HangOptions chooses what a HangMap is drawn for. The zero value takes
// everybody with every club, cells of 5 cm and no balls.
type HangOptions struct {
	Players []string // by name; none: all
	Clubs   []string // by name; none: all
	Cell    float64  // m; 0, or more than 0.05: 0.05
	Ball    bool     // count the paths of ordinary balls
}

// HangMap says for every place under the ceiling how low a thing may hang there
// and still be the plan's margin away, in every direction, from anything that
// golfers and clubs sweep from the players' tees.
//
// A value holds for the whole of its cell. It is cautious: some members of every
// family, as much as any other may be away from those (some 0.08 m), and the
// highest that is asked anywhere in the cell or 2 cm to the side of it. So it asks
// some 10 cm more height over a flat part of the sweep, 35 cm where the sweep is
// steep, and never less than the truth. HangAt tells of one place more exactly.
type HangMap struct {
	// Lowest allowed underside, mm above the structural floor; 0 where nothing
	// passes at any height.
	Grid   Grid    `json:"grid"`
	Margin float64 `json:"margin"` // m

	// Who is, per cell, an index into Swings: whose sweep or ball sets the value.
	// −1 where nothing does.
	Who    []int16    `json:"who"`
	Swings []HangName `json:"swings"`

	// Things are the plan's hung things in its order.
	Things []remedy.HungCheck `json:"things"`
}

// HangName names who sets a value of a HangMap.
type HangName struct {
	Player string `json:"player"`
	Club   string `json:"club"`
	Ball   bool   `json:"ball"` // the ball, not the club or the golfer
}

// Hang draws the map of what may hang how low. The error is the plan's own
// sentence.
func Hang(l *fit.Lab, given plan.Checked, o HangOptions) (HangMap, error) {
	p := given.Plan()
	casts, err := l.Casts(p, o.Players, o.Clubs)
	if err == nil {
		err = l.Atlases(casts)
	}
	if err != nil {
		return HangMap{}, err
	}
	m := HangMap{Grid: newGrid(p.Room.Length, p.Room.Width, o.Cell), Margin: p.Margin, Swings: []HangName{}}
	for _, ball := range []bool{false, true} {
		for _, c := range casts {
			m.Swings = append(m.Swings, HangName{c.Player.Name, c.Club.Name, ball})
		}
	}
	extra := p.Margin
	const thickest = 0.40 // m: no part in a footprint has a larger radius
	heights := make([]float64, m.Grid.NX*m.Grid.NY)
	m.Who = make([]int16, len(heights))
	for i := range m.Who {
		m.Who[i] = -1
	}
	newShadow(p, casts, &m.Grid, extra+thickest).lift(&m.Grid, extra, heights, m.Who)
	if o.Ball {
		flying := cones(p, casts, false)
		m.overBalls(p, flying, len(casts), heights)
	}
	m.Grid.storeUp(heights)
	m.Things = remedy.Things(p, casts)
	return m, nil
}

// HangSpot is how low a thing may hang over one place.
type HangSpot struct {
	X       float64 `json:"x"` // m
	Y       float64 `json:"y"`
	Lowest  float64 `json:"lowest"`  // m above the structural floor; 0 where nothing passes
	Ceiling float64 `json:"ceiling"` // m, of the ceiling over the place
	Player  string  `json:"player"`  // whose sweep or ball it is; "" for none
	Club    string  `json:"club"`
	Ball    bool    `json:"ball"`
}

// hangStep (m) is how finely the height over one place is found.
const hangStep = 0.001

// HangAt tells of one place what a HangMap tells of its cell, without the cell's
// share of caution: a thread down to Lowest is the margin away from everything,
// and some 0.08 m more.
func HangAt(l *fit.Lab, given plan.Checked, o HangOptions, x, y float64) (HangSpot, error) {
	p := given.Plan()
	if !(x >= 0 && y >= 0 && x <= p.Room.Length && y <= p.Room.Width) {
		return HangSpot{}, fmt.Errorf("%.2f, %.2f m is outside the room", x, y)
	}
	casts, err := l.Casts(p, o.Players, o.Clubs)
	if err != nil {
		return HangSpot{}, err
	}
	s := HangSpot{X: x, Y: y, Ceiling: p.Room.CeilingAt(x, y)}
	s.overSwings(p, casts, hair, hair)
	if o.Ball {
		s.overBalls(p, casts, 0)
	}
	return s, nil
}

// overSwings raises the height to what the swings ask for over a footprint of
// these half sizes (m) about the spot.
func (s *HangSpot) overSwings(p plan.Plan, casts []fit.Cast, alongX, alongY float64) {
	for k := range casts {
		c := &casts[k]
		for _, tee := range p.TeesOf(c.Player) {
			at := fit.Spot{X: tee.X, Y: tee.Y}
			near := func(from float64) bool {
				column := geom.Box{Min: geom.Vec{X: s.X - alongX, Y: s.Y - alongY, Z: from}, Max: geom.Vec{X: s.X + alongX, Y: s.Y + alongY, Z: from + 2*p.Room.Height}}
				_, near := c.BoxBetween(column, at, p.Margin-hangStep, p.Margin)
				return near
			}
			if !near(s.Lowest) {
				continue
			}
			// The lower it hangs the nearer it is.
			low, high := s.Lowest, c.Extent().Max.Z+p.Margin
			for high-low > hangStep {
				if mid := (low + high) / 2; near(mid) {
					low = mid
				} else {
					high = mid
				}
			}
			s.Lowest, s.Player, s.Club, s.Ball = high, c.Player.Name, c.Club.Name, false
		}
	}
}

// overBalls raises the height to what ordinary balls ask for over places up to
// spread (m) from the spot.
func (s *HangSpot) overBalls(p plan.Plan, casts []fit.Cast, spread float64) {
	reach := p.Margin + ball.Radius
	for _, f := range cones(p, casts, false) {
		if h, ok := f.top(fit.Spot{X: s.X, Y: s.Y}, reach, spread); ok && h > s.Lowest {
			s.Lowest, s.Player, s.Club, s.Ball = h, f.player, f.club, true
		}
	}
}

// overBalls raises heights over the cones of balls.
func (m *HangMap) overBalls(p plan.Plan, flying []cone, casts int, heights []float64) {
	reach := m.Margin + ball.Radius
	reach += profileStep * profileStep / (8 * reach)
	spread := geom.Hypot(m.Grid.Cell[0], m.Grid.Cell[1]) / 2
	for j := range m.Grid.NY {
		for i := range m.Grid.NX {
			at := m.Grid.spot(i, j)
			if p.Screen != nil && at.X > p.Screen.X+reach+spread {
				continue
			}
			cell := j*m.Grid.NX + i
			for k := range flying {
				if h, ok := flying[k].top(at, reach, spread); ok && h > heights[cell] {
					heights[cell], m.Who[cell] = h, int16(casts+flying[k].cast)
				}
			}
		}
	}
}
