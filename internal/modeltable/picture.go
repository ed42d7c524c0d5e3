package modeltable

import (
	"fmt"
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/swing"
	"wideberth/internal/sim/swing/published"
)

// Picture is one view of the recorded paths of the clubface over those of the
// family. Its drawing unit is the centimetre, with the ball at the origin and y
// down; paths are written as SVG writes them.
type Picture struct {
	Name    string  `json:"name"`
	Says    Text    `json:"says"` // the figures that the view shows
	Box     [4]int  `json:"box"`  // left, top, width and height
	Band    string  `json:"band"` // where the family goes
	Ground  bool    `json:"ground"`
	Traces  []Trace `json:"traces"`
	Moments []Mark  `json:"moments"` // times after impact, on every trace
	Across  Axis    `json:"across"`  // along the lower edge
	Up      Axis    `json:"up"`      // along the left edge
}

// Trace is the path of one recorded clubface.
type Trace struct {
	Line  string `json:"line"`
	Label Mark   `json:"label"`
}

// Mark is a point with words beside it, or none.
type Mark struct {
	At   [2]int `json:"at"`
	To   [2]int `json:"to"` // where the words go
	Text string `json:"text,omitempty"`
}

// Axis is the ends of a ruler's scale and what it counts; zero is the ball.
type Axis struct {
	From  int    `json:"from"`
	To    int    `json:"to"`
	Flip  bool   `json:"flip,omitempty"` // counts more towards the left
	Title string `json:"title"`
}

// view is a way to look at the swing.
type view struct {
	name       string
	look       func(geom.Vec) [2]float64 // in the picture's axes, but m
	ground     bool
	across, up string
	flip       bool
	quantity   string // the figure it shows best
}

var views = []view{
	{"from above", func(p geom.Vec) [2]float64 { return [2]float64{p.X, -p.Y} }, false,
		"to the target", "behind the ball", false, behindThrough},
	{"along the target line", func(p geom.Vec) [2]float64 { return [2]float64{-p.Y, -p.Z} }, true,
		"behind the ball", "height", true, highThrough},
	{"facing the golfer", func(p geom.Vec) [2]float64 { return [2]float64{p.X, -p.Z} }, true,
		"to the target", "height", false, trailBack},
}

const (
	pathStep = 0.004 // s between samples of a member
	bandStep = 0.08  // m of path, on average, from one outline of the band to the next
	edge     = 10    // cm left free round what is drawn
	away     = 20    // cm from a point to its words
)

// moments are the times after impact that are marked, s.
var moments = [...]float64{0.05, 0.10, 0.15, 0.20, 0.30}

// pictures draws the recorded clubs over the family.
func pictures(all []published.Comparison) ([]Picture, error) {
	recorded, err := published.ClubPaths()
	if err != nil {
		return nil, err
	}
	members, err := published.MemberPaths(pathStep)
	if err != nil {
		return nil, err
	}
	out := make([]Picture, 0, len(views))
	frames := make([]box, len(views))
	for k, v := range views {
		p := Picture{Name: v.name, Ground: v.ground}
		for _, c := range all {
			if c.Figure.Quantity == v.quantity {
				p.Says, err = caption(c)
			}
		}
		if err != nil {
			return nil, err
		}
		seen := &frames[k]
		p.Band = band(members, v.look, seen)
		lines := make([][][2]int, len(recorded))
		for i, r := range recorded {
			for _, s := range r.Samples {
				lines[i] = append(lines[i], point(s.Face, v.look))
				seen.add(lines[i][len(lines[i])-1])
			}
		}
		for i, r := range recorded {
			p.trace(i, lines, r.Samples, seen)
		}
		out = append(out, p)
	}
	// One width, so that all are of one scale.
	width := 0
	for _, f := range frames {
		width = max(width, f.hi[0]-f.lo[0]+2*edge)
	}
	for k, v := range views {
		p, f := &out[k], frames[k]
		p.Box = [4]int{(f.lo[0] + f.hi[0] - width) / 2, f.lo[1] - edge, width, f.hi[1] - f.lo[1] + 2*edge}
		p.Across = Axis{p.Box[0], p.Box[0] + width, v.flip, v.across}
		p.Up = Axis{p.Box[1], p.Box[1] + p.Box[3], true, v.up}
	}
	return out, nil
}

// caption sets the recorded clubs beside the family in one figure.
func caption(c published.Comparison) (Text, error) {
	_, name, err := nameOf(c.Figure.Quantity)
	u := unitNamed(c.Figure.Unit)
	recorded, family := u.span(c.Figure.Low, c.Figure.High, true), u.span(c.Family.Least, c.Family.Most, false)
	says := make(Text, len(recorded))
	for i := range says {
		says[i] = fmt.Sprintf("%s: recorded %s, modelled %s.", name, recorded[i], family[i])
	}
	return says, err
}

// box is the least rectangle about what is drawn.
type box struct {
	lo, hi [2]int
	any    bool // whether anything is drawn
}

func (b *box) add(p [2]int) {
	if !b.any {
		b.lo, b.hi, b.any = p, p, true
	}
	for i := range p {
		b.lo[i], b.hi[i] = min(b.lo[i], p[i]), max(b.hi[i], p[i])
	}
}

// point returns a place in the picture.
func point(p geom.Vec, look func(geom.Vec) [2]float64) [2]int {
	q := look(p)
	return [2]int{int(math.Round(100 * q[0])), int(math.Round(100 * q[1]))}
}

// band is where the members' faces go: the outlines of where they are from one
// moment to a next, which together cover the whole sweep. All turn the same way
// round, so that what lies in any of them is filled.
func band(members [][]swing.PathSample, look func(geom.Vec) [2]float64, seen *box) string {
	var d pen
	last, from := 0.0, 0
	for i := 1; i < len(members[0]); i++ {
		for _, m := range members {
			last += geom.Norm(geom.Vec{X: m[i].Face.X - m[i-1].Face.X, Y: m[i].Face.Y - m[i-1].Face.Y, Z: m[i].Face.Z - m[i-1].Face.Z})
		}
		if last < bandStep*float64(len(members)) && i < len(members[0])-1 {
			continue
		}
		var points [][2]int
		for _, m := range members {
			points = append(points, point(m[from].Face, look), point(m[i].Face, look))
		}
		outline := hull(points)
		for _, p := range outline {
			seen.add(p)
		}
		d.line(outline)
		d.close()
		last, from = 0, i
	}
	return d.String()
}

// trace adds the i-th recorded path with its moments. Only the first one's are
// named: the other's follow in the same order. The path itself is named after
// impact, where it is farthest from the others.
func (p *Picture) trace(i int, lines [][][2]int, samples []swing.PathSample, seen *box) {
	line := lines[i]
	middle := centre(line)
	var name Mark
	next, most := 0, -1
	for k, at := range line {
		if samples[k].Time < moments[0] {
			continue
		}
		if next < len(moments) && samples[k].Time >= moments[next] {
			m := beside(at, middle, "")
			if i == 0 {
				m = beside(at, middle, fmt.Sprintf("%.2f s", moments[next]))
			}
			p.Moments = append(p.Moments, m)
			seen.words(m)
			next++
		}
		for o, other := range lines {
			if o == i {
				continue
			}
			if near := nearest(at, other); apart(at, near) > most {
				most = apart(at, near)
				name = beside(at, near, fmt.Sprintf("golfer %d", i+1))
			}
		}
	}
	seen.words(name)
	var d pen
	d.line(line)
	p.Traces = append(p.Traces, Trace{d.String(), name})
}

// nearest returns the point of a line that is nearest to p.
func nearest(p [2]int, line [][2]int) [2]int {
	best := line[0]
	for _, q := range line {
		if apart(p, q) < apart(p, best) {
			best = q
		}
	}
	return best
}

// apart returns the square of the distance between two points.
func apart(a, b [2]int) int {
	dx, dy := a[0]-b[0], a[1]-b[1]
	return dx*dx + dy*dy
}

// centre returns the middle of the points.
func centre(points [][2]int) [2]int {
	var b box
	for _, p := range points {
		b.add(p)
	}
	return [2]int{(b.lo[0] + b.hi[0]) / 2, (b.lo[1] + b.hi[1]) / 2}
}

// beside puts words next to a point, on the far side of another.
func beside(at, from [2]int, text string) Mark {
	d := math.Sqrt(float64(max(1, apart(at, from))))
	m := Mark{At: at, To: at, Text: text}
	for i := range m.To {
		m.To[i] += int(math.Round(away * float64(at[i]-from[i]) / d))
	}
	return m
}

// words makes room for what a mark says.
func (b *box) words(m Mark) {
	const wide, high = 8, 12 // of a letter, about
	w := wide * len(m.Text)
	b.add([2]int{m.To[0] - w, m.To[1] - high})
	b.add([2]int{m.To[0] + w, m.To[1] + high})
}
