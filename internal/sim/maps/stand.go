package maps

import (
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

// Comfort (m) is the clearance from which people stop flinching: 12 in, common
// practice, no source.
const Comfort = 0.30

// StandOptions chooses what a StandMap is drawn for. The zero value takes
// everybody with every club, cells of 5 cm and the usual distances.
type StandOptions struct {
	Players  []string // by name; none: all
	Clubs    []string // by name; none: all
	Cell     float64  // m; 0, or more than 0.05: 0.05
	Nearest  float64  // m from tee to screen; 0: fit.UsualNearest
	Farthest float64  // m from tee to screen; 0: fit.UsualFarthest
}

// StandMap says for every place of the tee how near the tightest of the chosen
// swings comes to anything.
//
// The clearance is as cautious as Reading's: near boxes it is some centimetres
// less than a Check of that tee finds (a QuickCheck's Caution at most), and never
// more. From Cap on, and
// from Floor down, nothing is told apart.
type StandMap struct {
	// Clearance in mm for the ball at the middle of each cell.
	Grid  Grid    `json:"grid"`
	Cap   float64 `json:"cap"`   // m
	Floor float64 `json:"floor"` // m

	// Mask tells why a tee may not be put in a cell, by bits: bit k is Reasons[k].
	// 0 is free.
	Mask    []int16  `json:"mask"`
	Reasons []string `json:"reasons"`
	// Nearest and Farthest are the distances from the screen that Mask knows, m.
	Nearest  float64 `json:"nearest"`
	Farthest float64 `json:"farthest"`

	// Contours at strike (0), margin and comfort.
	Contours []Contour `json:"contours"`

	Best    Best         `json:"best"`    // for everybody chosen
	Players []PlayerBest `json:"players"` // for each alone
	Hands   []HandBest   `json:"hands"`   // right-handers, left-handers
	Sharing Sharing      `json:"sharing"`
}

// Best is the place that serves everybody best: the worst off as well as can be,
// then the next, and so on, each up to the margin and told apart by Slack; then the
// one with most room to spare. Where somebody strikes there it is a compromise, the
// least bad.
type Best struct {
	Found     bool        `json:"found"` // false when no place is free
	X         float64     `json:"x"`     // m
	Y         float64     `json:"y"`
	Clearance float64     `json:"clearance"` // cautious, m
	Verdict   fit.Verdict `json:"verdict"`
	Surface   string      `json:"surface"` // the tightest there
	Player    string      `json:"player"`  // whose swing is tightest there
	Club      string      `json:"club"`
}

// PlayerBest is a player's best place.
type PlayerBest struct {
	Player string    `json:"player"`
	Hand   plan.Hand `json:"hand"`
	Best   Best      `json:"best"`
}

// HandBest is the best place for all players of one hand.
type HandBest struct {
	Hand    plan.Hand `json:"hand"`
	Players []string  `json:"players"`
	Best    Best      `json:"best"`
}

// Sharing says whether one tee serves both hands.
type Sharing struct {
	// Both: there are right- and left-handers among the chosen.
	Both bool `json:"both"`
	// One: a shared tee reaches the margin, or comes within a centimetre of what
	// two tees could.
	One bool `json:"one"`
	// Apart is the distance between the two hands' best places, m.
	Apart float64 `json:"apart"`
	// Loses is how much clearance the shared best place gives away against the
	// tighter of the two hands' own, m.
	Loses float64 `json:"loses"`
}

// Stand draws the map of where to put the tee. Its tees and players' tees do not
// matter; the error is the plan's own sentence.
func Stand(l *fit.Lab, given plan.Checked, o StandOptions) (StandMap, error) {
	p := given.Plan()
	casts, err := l.Casts(p, o.Players, o.Clubs)
	if err != nil {
		return StandMap{}, err
	}
	orNumber(&o.Nearest, fit.UsualNearest)
	orNumber(&o.Farthest, fit.UsualFarthest)
	f := newFloor(p, casts)
	if len(f.Boxes) > 0 {
		if err := l.Atlases(casts); err != nil {
			return StandMap{}, err
		}
	}
	m := StandMap{
		Grid: newGrid(p.Room.Length, p.Room.Width, o.Cell), Cap: f.cap, Floor: deepest,
		Reasons: maskReasons[:], Nearest: o.Nearest, Farthest: o.Farthest,
	}
	values := f.clearances(&m.Grid)
	m.Grid.store(values)
	where := newSite(p, casts, o)
	for j := range m.Grid.NY {
		for i := range m.Grid.NX {
			m.Mask = append(m.Mask, where.against(m.Grid.spot(i, j)))
		}
	}
	for _, c := range []struct {
		name  string
		level float64
	}{{"strike", 0}, {"margin", p.Margin}, {"comfort", max(Comfort, p.Margin)}} {
		m.Contours = append(m.Contours, m.Grid.contour(c.name, c.level, values))
	}
	m.judge(p, casts, &where)
	return m, nil
}

func orNumber(v *float64, d float64) {
	if *v == 0 {
		*v = d
	}
}

// floor is the ground on which a map of where to stand is drawn.
type floor struct {
	*fit.Ground
	cap float64 // m: clearances from here on are not told apart
}

// roomToSpare (m) is how much beyond comfort and margin clearances are told
// apart.
const roomToSpare = 0.20

func newFloor(p plan.Plan, casts []fit.Cast) floor {
	return floor{fit.NewGround(p, casts), max(Comfort, p.Margin) + roomToSpare}
}

// deepest (m) is how far past a surface a map tells apart.
const deepest = -0.10

// clearances returns the map's values (m) row by row.
func (f *floor) clearances(g *Grid) []float64 {
	values := make([]float64, g.NX*g.NY)
	for j := range g.NY {
		for i := range g.NX {
			values[j*g.NX+i], _ = f.Flat(g.spot(i, j), f.cap)
		}
	}
	f.lowerByBoxes(g, values)
	for i := range values {
		values[i] = max(values[i], deepest)
	}
	return values
}

// run says along which axes a box may as well be endless: nobody swings past
// its ends from anywhere in the room, and the way out of it is never there.
func run(c *fit.Cast, b geom.Box, length, width float64) (x, y bool) {
	e := c.Extent()
	// The way out by the box's underside or top, whichever serves better.
	out := max(0, min(e.Max.Z-b.Min.Z, b.Max.Z-e.Min.Z))
	x = b.Min.X < e.Min.X-out && b.Max.X > length+e.Max.X+out
	y = b.Min.Y < e.Min.Y-out && b.Max.Y > width+e.Max.Y+out
	return x, y
}
