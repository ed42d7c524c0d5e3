package picture

import (
	"math"

	"wideberth/internal/picture/sheet"
	"wideberth/internal/render/drawing"
)

// margin (px) is left round a room for its measures and what its edges are called.
const margin = 30.0

// frame is a room on a sheet: where metres lie.
type frame struct {
	left, top float64 // px, of the room's paper
	around    float64 // px of sheet round it that are its own
	scale     float64 // px to the metre
	size      drawing.Point
	mirrored  bool // the first coordinate grows to the left
}

// framed fits a view into a place of a sheet and centres it there.
func framed(v drawing.View, around, left, top, width, height float64) frame {
	scale := min((width-2*around)/v.Size[0], (height-2*around)/v.Size[1])
	return frame{
		left: left + (width-v.Size[0]*scale)/2, top: top + (height-v.Size[1]*scale)/2,
		around: around, scale: scale, size: v.Size, mirrored: v.Axes[0] == "y",
	}
}

func (f frame) at(p drawing.Point) sheet.Point {
	across := p[0]
	if f.mirrored {
		across = f.size[0] - across
	}
	return sheet.Point{f.left + across*f.scale, f.top + (f.size[1]-p[1])*f.scale}
}

func (f frame) all(line []drawing.Point) []sheet.Point {
	out := make([]sheet.Point, len(line))
	for i, p := range line {
		out[i] = f.at(p)
	}
	return out
}

func (f frame) right() float64  { return f.left + f.size[0]*f.scale }
func (f frame) bottom() float64 { return f.top + f.size[1]*f.scale }

// view draws one view of the room into its frame; with measures and the names of its
// edges where there are any.
func (k inks) view(s *sheet.Sheet, v drawing.View, f frame, names *edges) {
	s.Box(sheet.Ink{Fill: k.room}, f.left, f.top, f.size[0]*f.scale, f.size[1]*f.scale)
	if len(v.Sweep) > 0 {
		rings := make([][]sheet.Point, len(v.Sweep))
		for i, ring := range v.Sweep {
			rings[i] = f.all(ring)
		}
		s.Outline(sheet.Ink{Fill: faint(k.ink, 0.17)}, rings...)
	}
	for _, l := range v.Lines {
		if ink := k.line(l); l.Closed {
			s.Outline(ink, f.all(l.Points))
		} else {
			s.Line(ink, f.all(l.Points)...)
		}
	}
	if len(v.Path) > 0 {
		s.Line(sheet.Ink{Stroke: k.ink, Width: 1.5, Dash: []float64{10, 3, 2, 3}, Butt: true}, f.all(v.Path)...)
	}
	for _, l := range v.Figure {
		k.limb(s, l, f)
	}
	for _, m := range v.Marks {
		if v.Axes[1] == "y" || m.Name == "ball" { // where a foot stands is seen from above
			k.mark(s, m, f)
		}
	}
	if names != nil {
		k.edges(s, f, *names)
	}
	if v.First != nil {
		at := f.at(v.First.At)
		s.Outline(sheet.Ink{Fill: burstRed, Stroke: white, Width: 1.2}, star(at, 11))
	}
	if v.Tape != nil {
		k.tape(s, *v.Tape, f, busy(v, f))
	}
}

// limb is an inked outline under a graphite core, both round-ended.
func (k inks) limb(s *sheet.Sheet, l drawing.Limb, f frame) {
	least := 3.0
	if l.Part == "shaft" {
		least = 1.6
	}
	a, b, across := f.at(l.A), f.at(l.B), max(2*l.R*f.scale, least)
	if a == b {
		b[0] += 0.1 // a line of no length is not drawn everywhere
	}
	s.Line(sheet.Ink{Stroke: limbEdge, Width: across + 2}, a, b)
	s.Line(sheet.Ink{Stroke: core(l.Part), Width: across}, a, b)
}

func (k inks) mark(s *sheet.Sheet, m drawing.Mark, f frame) {
	at := f.at(m.At)
	if m.Name == "ball" {
		s.Outline(sheet.Ink{Fill: rgb(0xffffff), Stroke: k.ink, Width: 1.5}, ring(at, 4, 4, 10))
		return
	}
	for _, d := range []sheet.Point{{5, 0}, {0, 5}} {
		s.Line(sheet.Ink{Stroke: k.ink, Width: 1.2, Butt: true}, sheet.Point{at[0] - d[0], at[1] - d[1]}, sheet.Point{at[0] + d[0], at[1] + d[1]})
	}
}

// star is the mark of a strike: eight points.
func star(at sheet.Point, r float64) []sheet.Point { return ring(at, r, r*5/11, 8) }

// ring has n corners at the outer radius and n between them at the inner one.
func ring(at sheet.Point, outer, inner float64, n int) []sheet.Point {
	out := make([]sheet.Point, 2*n)
	for i := range out {
		r := outer
		if i%2 == 1 {
			r = inner
		}
		sin, cos := math.Sincos(float64(i) * math.Pi / float64(n))
		out[i] = sheet.Point{at[0] + r*sin, at[1] - r*cos}
	}
	return out
}

// edges are what is written round a room.
type edges struct {
	top, right string // what lies beyond
	across, up string // how long and how wide or high it is
}

var beyond = map[string][2]string{"plan": {"left wall", "target"}, "side": {"ceiling", "target"}, "face": {"ceiling", "right wall"}}

func (k inks) edges(s *sheet.Sheet, f frame, e edges) {
	const size = 11.5
	quiet := sheet.Type{Size: size, Colour: k.soft, Anchor: sheet.End}
	s.Text(e.top, sheet.Point{f.right(), f.top - 9}, quiet)
	quiet.Anchor, quiet.Turn = sheet.Middle, 90
	s.Text(e.right, sheet.Point{f.right() + 9, (f.top + f.bottom()) / 2}, quiet)
	k.dimension(s, sheet.Point{f.left, f.bottom() + 16}, sheet.Point{f.right(), f.bottom() + 16}, e.across, 0)
	k.dimension(s, sheet.Point{f.left - 16, f.bottom()}, sheet.Point{f.left - 16, f.top}, e.up, -90)
}

// dimension is a measured line with arrowheads and its reading.
func (k inks) dimension(s *sheet.Sheet, a, b sheet.Point, label string, turn float64) {
	ink := sheet.Ink{Stroke: k.soft, Width: 1, Butt: true}
	long := math.Hypot(b[0]-a[0], b[1]-a[1])
	if long == 0 || label == "" {
		return
	}
	ux, uy := (b[0]-a[0])/long, (b[1]-a[1])/long
	at := func(p sheet.Point, along, off float64) sheet.Point {
		return sheet.Point{p[0] + ux*along - uy*off, p[1] + uy*along + ux*off}
	}
	s.Line(ink, a, b)
	for _, end := range []struct {
		p  sheet.Point
		in float64
	}{{a, 7}, {b, -7}} {
		s.Line(ink, at(end.p, 0, -6), at(end.p, 0, 6))
		s.Line(ink, at(end.p, end.in, -3), end.p, at(end.p, end.in, 3))
	}
	font := sheet.Type{Size: 12.5, Colour: k.word, Anchor: sheet.Middle, Turn: turn}
	half := font.Width(label)/2 + 5
	s.Outline(sheet.Ink{Fill: k.ground}, []sheet.Point{at(a, long/2-half, -8), at(a, long/2+half, -8), at(a, long/2+half, 8), at(a, long/2-half, 8)})
	s.Text(label, at(a, long/2, 4.5), font)
}
