package ball

import (
	"cmp"
	"math"
	"slices"

	"wideberth/internal/sim/plan"
)

// Outcome is where one player's ordinary shots with one club go.
type Outcome struct {
	Player string      `json:"player"`
	Club   string      `json:"club"`
	Tee    string      `json:"tee"`
	Launch Leaving     `json:"launch"`         // the well-struck ball
	Struck Rebound     `json:"struck"`         // the well-struck ball and its way back
	Balls  int         `json:"balls"`          // how many were flown
	Caught Estimate    `json:"caught"`         // share met by screen or returns on the golfer's side
	Shares []Share     `json:"shares"`         // most frequent first
	Heat   Heat        `json:"heat"`           // on the screen
	Misses []MissOut   `json:"misses"`         // the named mishits
	Mean   *[2]float64 `json:"mean,omitempty"` // of y and z of the touches on the screen, m
	SD     *[2]float64 `json:"sd,omitempty"`   // their standard deviations, m
}

// Leaving is a launch in the units people quote: m/s, degrees, rev/min.
type Leaving struct {
	Speed  float64 `json:"speed"`
	Launch float64 `json:"launch"`
	Spin   float64 `json:"spin"`
}

// Estimate is a share with its 95 % interval (E. B. Wilson 1927, J. Am. Stat.
// Assoc. 22:209–212). The sample is spread more evenly than a random one, so the
// interval is on the wide side. It holds the sampling error only: how well the
// assumed spread fits the player is another matter.
type Estimate struct {
	Share float64 `json:"share"`
	Low   float64 `json:"low"`
	High  float64 `json:"high"`
}

func estimate(k, n int) Estimate {
	if n == 0 {
		return Estimate{High: 1}
	}
	const z = 1.959964
	p, m := float64(k)/float64(n), float64(n)
	mid := (p + z*z/(2*m)) / (1 + z*z/m)
	half := z / (1 + z*z/m) * math.Sqrt(p*(1-p)/m+z*z/(4*m*m))
	return Estimate{p, min(p, max(0, mid-half)), max(p, min(1, mid+half))}
}

// Share is the part of the balls that meet one surface first.
type Share struct {
	Surface string `json:"surface"`
	Kind    Kind   `json:"kind"`
	Beside  string `json:"beside,omitempty"`
	Count   int    `json:"count"`
	Estimate
	OneIn    float64    `json:"oneIn"`            // balls per ball that does
	Short    float64    `json:"short"`            // median distance before the screen's plane, m
	FarShort float64    `json:"farShort"`         // the greatest
	Fastest  float64    `json:"fastest"`          // highest speed on arrival, m/s
	From     [3]float64 `json:"from"`             // box around the points, m
	To       [3]float64 `json:"to"`               //
	Back     Return     `json:"back"`             // the worst of up to 8 of the balls on their way back, at the high end of restitution
	Padded   *Return    `json:"padded,omitempty"` // the same if a bare hard surface were padded with foam
}

// MissOut is one named mishit and what it meets.
type MissOut struct {
	Name    string  `json:"name"`
	Contact Contact `json:"contact"`          // the first thing that is not the floor
	Back    Return  `json:"back"`             // at the high end of restitution
	Padded  *Return `json:"padded,omitempty"` // the same if a bare hard surface were padded with foam
}

// Heat counts balls on a grid over the screen: Counts[row*Cols+col], rows from
// the bottom, columns from the right edge as the golfer sees it (rising y).
type Heat struct {
	Cols   int   `json:"cols"`
	Rows   int   `json:"rows"`
	Counts []int `json:"counts"`
}

// heatCell (m) is about the size of one cell of a heat grid.
const heatCell = 0.10

// backSample is how many balls per surface are followed on their way back.
const backSample = 8

// Spread flies n balls of one player with one club from a tee and counts what
// they meet first. headSpeed is the clubhead's (m/s), 0 for the club's own ball.
func Spread(p plan.Plan, player plan.Player, club plan.Club, tee plan.Tee, headSpeed float64, n int) Outcome {
	return NewScene(p).Spread(player, club, tee, headSpeed, Draws(n))
}

// Spread is as the function Spread, with a scene and draws that serve several.
func (s *Scene) Spread(player plan.Player, club plan.Club, tee plan.Tee, headSpeed float64, shots []Draw) Outcome {
	launch, skill := FromClub(club, headSpeed), SkillOf(player)
	out := Outcome{
		Player: player.Name, Club: club.Name, Tee: tee.Name, Balls: len(shots),
		Launch: Leaving{launch.Speed, launch.Elevation / degree, launch.Spin / rpm},
		Struck: s.Rebound(tee, launch),
		Heat:   s.newHeat(),
	}
	type key struct {
		surface, beside string
		kind            Kind
	}
	groups := map[key][]Contact{}
	caught := 0
	var onScreen [][2]float64
	for _, d := range shots {
		c := s.First(tee, launch.Vary(skill, d))
		k := key{c.Surface, c.Beside, c.Kind}
		groups[k] = append(groups[k], c)
		if c.Caught {
			caught++
		}
		if c.Kind == KindScreen {
			out.Heat.add(*s.screen, c.Point)
			onScreen = append(onScreen, [2]float64{c.Point[1], c.Point[2]})
		}
	}
	out.Caught = estimate(caught, len(shots))
	out.Mean, out.SD = moments(onScreen)
	for k, g := range groups {
		sh := Share{Surface: k.surface, Kind: k.kind, Beside: k.beside, Count: len(g),
			Estimate: estimate(len(g), len(shots)), OneIn: float64(len(shots)) / float64(len(g))}
		s.gather(&sh, g, tee)
		out.Shares = append(out.Shares, sh)
	}
	slices.SortStableFunc(out.Shares, func(a, b Share) int {
		return cmp.Or(b.Count-a.Count, cmp.Compare(a.Surface, b.Surface),
			cmp.Compare(a.Beside, b.Beside), cmp.Compare(a.Kind, b.Kind))
	})
	for _, m := range Misses(launch, player.Hand) {
		c := s.pastFloor(m.Launch.At(s.plan, tee).State())
		out.Misses = append(out.Misses, MissOut{m.Name, c, s.Back(c, tee, High), s.padded(c, tee)})
	}
	return out
}

// gather fills a share's figures from its contacts.
func (s *Scene) gather(sh *Share, g []Contact, tee plan.Tee) {
	short := make([]float64, len(g))
	sh.From, sh.To = g[0].Point, g[0].Point
	for i, c := range g {
		short[i] = c.Short
		sh.Fastest = max(sh.Fastest, c.Speed)
		for j, v := range c.Point {
			sh.From[j], sh.To[j] = min(sh.From[j], v), max(sh.To[j], v)
		}
	}
	slices.Sort(short)
	sh.Short, sh.FarShort = short[len(short)/2], short[len(short)-1]
	for i := range min(len(g), backSample) {
		c := g[i*len(g)/min(len(g), backSample)]
		sh.Back = sh.Back.worse(s.Back(c, tee, High))
		sh.Padded = worseOf(sh.Padded, s.padded(c, tee))
	}
}

func (s *Scene) newHeat() Heat {
	if s.screen == nil {
		return Heat{}
	}
	h := Heat{
		Cols: max(1, int(math.Round(s.screen.Width/heatCell))),
		Rows: max(1, int(math.Round(s.screen.Height/heatCell))),
	}
	h.Counts = make([]int, h.Cols*h.Rows)
	return h
}

func (h *Heat) add(c plan.Screen, at [3]float64) {
	right, _, bottom, _ := c.Edges()
	col := int((at[1] - right) / c.Width * float64(h.Cols))
	row := int((at[2] - bottom) / c.Height * float64(h.Rows))
	h.Counts[min(max(row, 0), h.Rows-1)*h.Cols+min(max(col, 0), h.Cols-1)]++
}

// moments returns mean and standard deviation, nil for fewer than two points.
func moments(at [][2]float64) (mean, sd *[2]float64) {
	if len(at) < 2 {
		return nil, nil
	}
	var m, v [2]float64
	for _, p := range at {
		m[0] += p[0] / float64(len(at))
		m[1] += p[1] / float64(len(at))
	}
	for _, p := range at {
		for j := range 2 {
			v[j] += (p[j] - m[j]) * (p[j] - m[j]) / float64(len(at)-1)
		}
	}
	return &m, &[2]float64{math.Sqrt(v[0]), math.Sqrt(v[1])}
}
