package maps

import (
	"math"

	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

// OnlookOptions chooses what an OnlookMap is drawn for. The zero value takes
// everybody with every club and cells of 5 cm.
type OnlookOptions struct {
	Players []string // by name; none: all
	Clubs   []string // by name; none: all
	Cell    float64  // m; 0, or more than 0.05: 0.05
}

// OnlookMap says for every place on the floor how far a person there is, seen
// from above, from whatever golfers and clubs sweep at any height, and from
// where balls fly before they have met anything: ordinary balls within 2.5
// standard deviations of the player's spread, and on the toe side everything out
// to the widest hosel shot. What comes back from a wall is not in it.
//
// A value holds for the whole of its cell, on the cautious side like those of a
// HangMap; from Cap on nothing is told apart.
type OnlookMap struct {
	Grid   Grid    `json:"grid"`   // mm; 0 or less where club, golfer or ball gets to
	Cap    float64 `json:"cap"`    // m
	Margin float64 `json:"margin"` // m

	// Mask tells what takes a cell, by bits: bit k is Reasons[k]. 0 is free.
	Mask    []int16  `json:"mask"`
	Reasons []string `json:"reasons"`

	// Region is where the map is at or above the margin and the floor is free:
	// where onlookers may be.
	Region Contour `json:"region"`
	Area   float64 `json:"area"` // of it, m²

	Seats []SeatCheck `json:"seats"`
}

// The reasons against a place for onlookers, by bit of an OnlookMap's Mask.
const (
	maskClub   = 1 << iota // golfer or club passes within the margin
	maskFlight             // a ball may pass within the margin
	maskBehind             // behind the screen
	maskSolid              // a solid stands there
)

var onlookReasons = [...]string{"club", "ball", "screen", "solid"}

// SeatCheck is the answer for one seat: the whole of its disc counts.
type SeatCheck struct {
	Name    string      `json:"name"`
	Verdict fit.Verdict `json:"verdict"` // the worse of Club's and Ball's

	// Club is the distance from the edge of the seat to the nearest reach of a
	// golfer or a club, m, and whose; from the map's cap on it is that.
	Club        float64     `json:"club"`
	ClubVerdict fit.Verdict `json:"clubVerdict"`
	Player      string      `json:"player"`
	With        string      `json:"with"` // the club
	Tee         string      `json:"tee"`

	// Ball is the distance to the nearest first-hand path of a ball, m, whose, and
	// what shot it is.
	Ball        float64     `json:"ball"`
	BallVerdict fit.Verdict `json:"ballVerdict"`
	From        string      `json:"from"`   // player
	Shot        string      `json:"shot"`   // "ordinary" or "hosel"
	Behind      bool        `json:"behind"` // the seat is behind the screen
}

// Onlookers draws where others may be while somebody plays, and checks the
// plan's seats. The error is the plan's own sentence.
func Onlookers(l *fit.Lab, given plan.Checked, o OnlookOptions) (OnlookMap, error) {
	p := given.Plan()
	casts, err := l.Casts(p, o.Players, o.Clubs)
	if err == nil {
		err = l.Atlases(casts)
	}
	if err != nil {
		return OnlookMap{}, err
	}
	m := OnlookMap{
		Grid: newGrid(p.Room.Length, p.Room.Width, o.Cell), Cap: p.Margin + roomToSpare, Margin: p.Margin,
		Reasons: onlookReasons[:],
	}
	club := make([]float64, m.Grid.NX*m.Grid.NY)
	for i := range club {
		club[i] = m.Cap
	}
	const thickest = 0.40 // m: no part in a footprint has a larger radius
	newShadow(p, casts, &m.Grid, m.Cap+thickest).spread(&m.Grid, m.Cap, club)
	flying := cones(p, casts, true)
	half := geom.Hypot(m.Grid.Cell[0], m.Grid.Cell[1]) / 2
	values := make([]float64, len(club))
	region := make([]float64, len(club))
	for j := range m.Grid.NY {
		for i := range m.Grid.NX {
			at := m.Grid.spot(i, j)
			k := j*m.Grid.NX + i
			flight, _ := nearestCone(flying, at)
			flight = max(0, flight-half) - ball.Radius
			values[k] = min(club[k], flight)
			var mask int16
			if club[k] < p.Margin {
				mask |= maskClub
			}
			if flight < p.Margin {
				mask |= maskFlight
			}
			if p.Screen != nil && at.X+m.Grid.Cell[0]/2 > p.Screen.X {
				mask |= maskBehind
			}
			if solidAt(p, at) {
				mask |= maskSolid
			}
			m.Mask = append(m.Mask, mask)
			region[k] = values[k] - p.Margin
			if mask&(maskBehind|maskSolid) != 0 {
				region[k] = -m.Cap // so that the outline keeps to the cell's edge
			}
			if mask == 0 {
				m.Area += m.Grid.Cell[0] * m.Grid.Cell[1]
			}
		}
	}
	m.Grid.store(values)
	m.Region = m.Grid.contour("onlookers", 0, region)
	m.Region.Level = p.Margin
	m.Seats = seats(p, casts, flying, m.Cap)
	return m, nil
}

// nearestCone returns how far the nearest cone is from a place, and which it is;
// −1 for none.
func nearestCone(flying []cone, at fit.Spot) (float64, int) {
	best, which := math.Inf(1), -1
	for k := range flying {
		if d, _ := flying[k].off(at); d < best {
			best, which = d, k
		}
	}
	return best, which
}

// solidAt reports whether a solid takes the floor of a place, up to the knee.
func solidAt(p plan.Plan, at fit.Spot) bool {
	const knee = 0.45 // m: people sit over what is lower and stand under what is higher
	for _, s := range p.Room.Solids {
		if at.X > s.Min[0] && at.X < s.Max[0] && at.Y > s.Min[1] && at.Y < s.Max[1] &&
			s.Min[2] < knee && s.Max[2] > 0 {
			return true
		}
	}
	return false
}

// seats checks every seat of a plan.
func seats(p plan.Plan, casts []fit.Cast, flying []cone, most float64) []SeatCheck {
	out := []SeatCheck{}
	for _, s := range p.Seats {
		c := SeatCheck{Name: s.Name, Club: most, Ball: most}
		at := fit.Spot{X: s.X, Y: s.Y}
		// A column of air over the middle of the seat.
		column := geom.Box{Min: geom.Vec{X: s.X - hair, Y: s.Y - hair, Z: -1}, Max: geom.Vec{X: s.X + hair, Y: s.Y + hair, Z: p.Room.Height + 1}}
		for k := range casts {
			for _, tee := range p.TeesOf(casts[k].Player) {
				if v, near := casts[k].BoxWithin(column, fit.Spot{X: tee.X, Y: tee.Y}, c.Club+s.Radius); near {
					c.Club, c.Player, c.With, c.Tee = v-s.Radius, casts[k].Player.Name, casts[k].Club.Name, tee.Name
				}
			}
		}
		if d, which := nearestCone(flying, at); which >= 0 && d-ball.Radius-s.Radius < c.Ball {
			c.Ball, c.From, c.Shot = d-ball.Radius-s.Radius, flying[which].player, flying[which].shot
		}
		c.Behind = p.Screen != nil && s.X+s.Radius > p.Screen.X
		c.ClubVerdict, c.BallVerdict = fit.VerdictOf(c.Club, p.Margin), fit.VerdictOf(c.Ball, p.Margin)
		c.Verdict = c.ClubVerdict.Worse(c.BallVerdict)
		out = append(out, c)
	}
	return out
}

// hair (m) is half the width of a column that stands for a line.
const hair = 1e-4
