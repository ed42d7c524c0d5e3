package floor

import (
	"math"
	"slices"
)

// CupDiameter is 4 1/4 in and CupDepth at least 4 in: Rules of Golf, definition of a
// hole, from memory. m.
const (
	CupDiameter = 0.108
	CupDepth    = 0.1016
)

// Green is what a putt rolls over.
type Green struct {
	Floor Rect
	Seams []Seam
	Stops []Rect // mats, columns: nothing rolls across their edges
}

// Putt is the longest straight putts to a cup, from the ball to its middle.
type Putt struct {
	Cup     int        `json:"cup"` // from 1
	At      [2]float64 `json:"at"`
	Clear   float64    `json:"clear"`   // over no seam and no edge, m
	From    [2]float64 `json:"from"`    // where its ball lies
	OneSeam float64    `json:"oneSeam"` // over one seam at most, m
	FromOne [2]float64 `json:"fromOne"`
	OnSeam  bool       `json:"onSeam"` // a seam runs through the cup
	OnEdge  bool       `json:"onEdge"` // the cup is in or across an edge: no hole can be cut there
}

// Putts finds the longest putts to each cup.
func (g Green) Putts(cups [][2]float64) []Putt {
	out := []Putt{}
	for i, c := range cups {
		p := Putt{Cup: i + 1, At: c, From: c, FromOne: c, OnEdge: g.overEdge(c)}
		for _, s := range g.Seams {
			p.OnSeam = p.OnSeam || toSeam(c, s) < CupDiameter/2
		}
		if !p.OnEdge {
			for _, d := range g.directions(c) {
				clear, one := g.roll(c, d)
				if clear > p.Clear {
					p.Clear, p.From = clear, along(c, d, clear)
				}
				if one > p.OneSeam {
					p.OneSeam, p.FromOne = one, along(c, d, one)
				}
			}
		}
		out = append(out, p)
	}
	return out
}

func along(c, d [2]float64, t float64) [2]float64 { return [2]float64{c[0] + t*d[0], c[1] + t*d[1]} }

// overEdge is whether a cup is not wholly on the green.
func (g Green) overEdge(c [2]float64) bool {
	const r = CupDiameter / 2
	f := g.Floor
	if c[0]-r < f.X0 || c[1]-r < f.Y0 || c[0]+r > f.X1 || c[1]+r > f.Y1 {
		return true
	}
	return slices.ContainsFunc(g.Stops, func(s Rect) bool {
		dx, dy := max(s.X0-c[0], 0, c[0]-s.X1), max(s.Y0-c[1], 0, c[1]-s.Y1)
		return dx*dx+dy*dy < r*r
	})
}

func toSeam(c [2]float64, s Seam) float64 {
	dx := max(min(s.X0, s.X1)-c[0], 0, c[0]-max(s.X0, s.X1))
	dy := max(min(s.Y0, s.Y1)-c[1], 0, c[1]-max(s.Y0, s.Y1))
	return math.Sqrt(dx*dx + dy*dy)
}

// directions are unit vectors in which the longest putt may lie: what ends it is
// straight, so it goes to a corner or just past one.
func (g Green) directions(c [2]float64) [][2]float64 {
	const aside = 1e-6 // rad
	var out [][2]float64
	add := func(x, y float64) {
		a := math.Atan2(y-c[1], x-c[0])
		for _, d := range [3]float64{0, -aside, aside} {
			s, co := math.Sincos(a + d)
			out = append(out, [2]float64{co, s})
		}
	}
	for _, r := range append([]Rect{g.Floor}, g.Stops...) {
		add(r.X0, r.Y0)
		add(r.X0, r.Y1)
		add(r.X1, r.Y0)
		add(r.X1, r.Y1)
	}
	for _, s := range g.Seams {
		add(s.X0, s.Y0)
		add(s.X1, s.Y1)
		// Where it meets the border of the floor square on, and its foot below the cup.
		add(c[0], s.Y0)
		add(s.X0, c[1])
	}
	for _, d := range [4][2]float64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
		out = append(out, d)
	}
	return out
}

// roll is how far a ball may lie from the cup in a direction: over no seam, and over
// one. Seams inside the cup do not count.
func (g Green) roll(c, d [2]float64) (clear, one float64) {
	end := math.Inf(1)
	f := g.Floor
	for k, v := range d {
		low, high := [2]float64{f.X0, f.Y0}[k], [2]float64{f.X1, f.Y1}[k]
		switch {
		case v > 0:
			end = min(end, (high-c[k])/v)
		case v < 0:
			end = min(end, (low-c[k])/v)
		}
	}
	for _, s := range g.Stops {
		if t, hit := enters(c, d, s); hit {
			end = min(end, t)
		}
	}
	first, second := math.Inf(1), math.Inf(1)
	for _, s := range g.Seams {
		t, hit := crosses(c, d, s)
		if !hit || t < CupDiameter/2 {
			continue
		}
		if t < first {
			first, second = t, first
		} else {
			second = min(second, t)
		}
	}
	return max(0, min(end, first)), max(0, min(end, second))
}

// enters is how far along a ray from c it enters a rectangle.
func enters(c, d [2]float64, r Rect) (t float64, hit bool) {
	near, far := 0.0, math.Inf(1)
	for k, v := range d {
		low, high := [2]float64{r.X0, r.Y0}[k], [2]float64{r.X1, r.Y1}[k]
		if v == 0 {
			if c[k] <= low || c[k] >= high {
				return 0, false
			}
			continue
		}
		a, b := (low-c[k])/v, (high-c[k])/v
		near, far = max(near, min(a, b)), min(far, max(a, b))
	}
	return near, near < far-tiny
}

// crosses is how far along a ray from c it crosses a seam.
func crosses(c, d [2]float64, s Seam) (t float64, hit bool) {
	k := 0 // the axis that the seam stands across
	if s.Y0 == s.Y1 {
		k = 1
	}
	if d[k] == 0 {
		return 0, false
	}
	at := [2]float64{s.X0, s.Y0}[k]
	t = (at - c[k]) / d[k]
	other := c[1-k] + t*d[1-k]
	low, high := [2]float64{s.X0, s.Y0}[1-k], [2]float64{s.X1, s.Y1}[1-k]
	return t, t > 0 && other >= min(low, high) && other <= max(low, high)
}
