// Package sheet is a sheet of paper to draw on: outlines and lines of text in px,
// y down, painted in the order in which they were put. One sheet is written as an
// SVG and painted as a PNG, so the two cannot show different things.
package sheet

import "image/color"

// Point is a place on the sheet: px from the left, px from the top.
type Point [2]float64

// Ink is how an outline is drawn. A colour that is not given is not drawn.
type Ink struct {
	Fill   color.NRGBA
	Stroke color.NRGBA
	Width  float64   // of the stroke, px
	Dash   []float64 // px on, px off, and so on; none for a whole line
	Butt   bool      // the stroke ends where its line does, rather than half a width later, round
}

// Anchor says which point of a line of text stands at its place.
type Anchor int

// The points of a line of text.
const (
	Start Anchor = iota
	Middle
	End
)

// Type is how text is set.
type Type struct {
	Size   float64 // px to the em
	Bold   bool
	Colour color.NRGBA
	Anchor Anchor
	Turn   float64 // degrees clockwise about its place
}

// Sheet is a drawing under way. Its zero value has no size.
type Sheet struct {
	Width, Height float64 // px
	Title         string  // its name, for who cannot see it
	About         string  // what it shows, likewise
	items         []item
}

// item is one thing on the sheet: an outline, or a line of text.
type item struct {
	rings  [][]Point
	closed bool
	ink    Ink
	words  string
	at     Point
	font   Type
}

// Outline puts rings on the sheet, each closed; where they turn the other way they
// are holes.
func (s *Sheet) Outline(ink Ink, rings ...[]Point) { s.put(rings, true, ink) }

// Line puts a line on the sheet.
func (s *Sheet) Line(ink Ink, points ...Point) { s.put([][]Point{points}, false, ink) }

func (s *Sheet) put(rings [][]Point, closed bool, ink Ink) {
	s.items = append(s.items, item{rings: rings, closed: closed, ink: ink})
}

// Box puts a rectangle on the sheet.
func (s *Sheet) Box(ink Ink, x, y, width, height float64) {
	s.Outline(ink, []Point{{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}})
}

// Text puts one line of text on the sheet, its base line at a place.
func (s *Sheet) Text(words string, at Point, font Type) {
	if words != "" {
		s.items = append(s.items, item{words: words, at: at, font: font})
	}
}
