package picture

import (
	"math"

	"wideberth/internal/picture/sheet"
	"wideberth/internal/render/drawing"
)

const (
	tick        = 6.0  // px between the ticks on the tape
	plateHeight = 25.0 // px
	plateGap    = 30.0 // px from the tape's middle to the plate
)

// threads are the frayed end of the tape: how long each is, as shares of the fray.
var threads = []float64{0.78, 1, 0.6, 0.92, 0.7}

// plateWays are where the plate may lie, seen from the tape's middle.
var plateWays = []sheet.Point{{1, 1}, {1, 0}, {1, -1}, {-1, 1}, {-1, 0}, {-1, -1}, {0, 1.4}, {0, -1.4}}

// tape is the signature: a yellow carpenter's tape from the club to the nearest
// surface, frayed at the club as far as the model may be wrong, and its reading.
func (k inks) tape(s *sheet.Sheet, t drawing.TapeLine, f frame, busy []sheet.Point) {
	a, b := f.at(t.A), f.at(t.B)
	long := math.Hypot(b[0]-a[0], b[1]-a[1])
	ux, uy := 0.0, -1.0
	if long > 0.5 {
		ux, uy = (b[0]-a[0])/long, (b[1]-a[1])/long
	}
	at := func(along, off float64) sheet.Point {
		return sheet.Point{a[0] + ux*along - uy*off, a[1] + uy*along + ux*off}
	}
	whole := t.Fray * long // px from the club to where the blade begins
	for _, ink := range []sheet.Ink{{Stroke: tapeInk, Width: 3, Butt: true}, {Stroke: tapeYellow, Width: 1.5, Butt: true}} {
		for i, share := range threads {
			off := 1.7 * float64(i-2)
			s.Line(ink, at(whole, off), at(whole*(1-share), off*(1+0.6*share)))
		}
	}
	if whole < long {
		s.Line(sheet.Ink{Stroke: tapeInk, Width: 11, Butt: true}, at(whole, 0), at(long, 0))
		s.Line(sheet.Ink{Stroke: tapeYellow, Width: 8.5, Butt: true}, at(whole, 0), at(long, 0))
	}
	for i := 1; float64(i)*tick < long-1; i++ {
		along, end := float64(i)*tick, 1.0
		if i%4 == 0 {
			end = -2
		}
		if along > whole+1 {
			s.Line(sheet.Ink{Stroke: tapeInk, Width: 1, Butt: true}, at(along, 4), at(along, end))
		}
	}
	s.Line(sheet.Ink{Stroke: tapeInk, Width: 3, Butt: true}, at(long, -8), at(long, 8))
	k.plate(s, t.Label, sheet.Point{(a[0] + b[0]) / 2, (a[1] + b[1]) / 2}, f, busy)
}

// plate is the reading, with a leader to the tape; of the places round the tape it
// takes the one that hides least of the golfer.
func (k inks) plate(s *sheet.Sheet, label string, at sheet.Point, f frame, busy []sheet.Point) {
	font := sheet.Type{Size: 14, Bold: true, Colour: tapeInk, Anchor: sheet.Middle}
	width := font.Width(label) + 18
	clamp := func(v, low, high float64) float64 { return max(low, min(v, high)) }
	left, top, least := 0.0, 0.0, math.Inf(1)
	for rank, way := range plateWays {
		x := clamp(at[0]+way[0]*(width/2+plateGap)-width/2, f.left-f.around+2, f.right()+f.around-width-2)
		y := clamp(at[1]+way[1]*plateGap-plateHeight/2, f.top-f.around+2, f.bottom()+f.around-plateHeight-2)
		hides := func(p sheet.Point) bool {
			return p[0] > x-6 && p[0] < x+width+6 && p[1] > y-6 && p[1] < y+plateHeight+6
		}
		cost := float64(rank)
		if hides(at) {
			cost += 100
		}
		for _, p := range busy {
			if hides(p) {
				cost += 10
			}
		}
		if cost < least {
			left, top, least = x, y, cost
		}
	}
	s.Line(sheet.Ink{Stroke: tapeInk, Width: 1.2}, at, sheet.Point{clamp(at[0], left+4, left+width-4), clamp(at[1], top, top+plateHeight)})
	s.Box(sheet.Ink{Fill: tapeYellow, Stroke: tapeInk, Width: 1.5}, left, top, width, plateHeight)
	s.Text(label, sheet.Point{left + width/2, top + plateHeight/2 + 5}, font)
}

// busy are points of golfer, club, first touch and the room's names, for the reading
// to keep clear of.
func busy(v drawing.View, f frame) []sheet.Point {
	out := []sheet.Point{{f.right() - 20, f.top - 12}}
	if v.First != nil {
		out = append(out, f.at(v.First.At))
	}
	for _, l := range v.Figure {
		for _, k := range []float64{0, 0.25, 0.5, 0.75, 1} {
			out = append(out, f.at(drawing.Point{l.A[0] + k*(l.B[0]-l.A[0]), l.A[1] + k*(l.B[1]-l.A[1])}))
		}
	}
	return out
}
