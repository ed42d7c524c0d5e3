// Package screen finds the largest image on a screen, what stays blank around it,
// and how it looks from the tees and the seats.
package screen

import (
	"math"

	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

// Opening is where an image may be: the cloth, or without a screen the front wall,
// less what overlaps it. Room frame, m.
type Opening struct {
	X                        float64 // of the cloth
	Right, Left, Bottom, Top float64
	Wall                     bool // there is no screen
}

// OpeningOf is the opening of a plan: padding off the sides and the top, the sill off
// the bottom, the blank border off all four.
func OpeningOf(p plan.Plan, e spec.Enclosure) Opening {
	o := Opening{X: p.Room.Length, Left: p.Room.Width, Bottom: p.Floor.Top(), Top: p.Room.Height, Wall: true}
	if s := p.Screen; s != nil {
		o.X, o.Wall = s.X, false
		o.Right, o.Left, o.Bottom, o.Top = s.Edges()
	} else {
		for _, y := range [2]float64{0, p.Room.Width} { // slopes meet the wall
			o.Top = min(o.Top, p.Room.CeilingAt(p.Room.Length, y))
		}
	}
	o.Right += e.Padding + e.Border
	o.Left -= e.Padding + e.Border
	o.Top -= e.Padding + e.Border
	o.Bottom += e.Sill + e.Border
	return o
}

// Largest is the largest rectangle of an aspect (width over height) in w × h, m.
func Largest(w, h, aspect float64) (width, height float64) {
	if w <= 0 || h <= 0 {
		return 0, 0
	}
	if w/h > aspect {
		return aspect * h, h
	}
	return w, w / aspect
}

// Image is the picture on the cloth, m.
type Image struct {
	Width    float64 `json:"width"`
	Height   float64 `json:"height"`
	Bottom   float64 `json:"bottom"` // above the structural floor
	Centre   float64 `json:"centre"` // y of its middle
	X        float64 `json:"x"`      // of the cloth
	Diagonal float64 `json:"diagonal"`
	Border   Border  `json:"border"` // of cloth around it, less what covers the cloth
	Cut      bool    `json:"cut"`    // it was wanted larger or elsewhere than the cloth allows
}

// Border is what stays blank, m.
type Border struct {
	Left   float64 `json:"left"`
	Right  float64 `json:"right"`
	Top    float64 `json:"top"`
	Bottom float64 `json:"bottom"`
}

// Place puts an image of an aspect into an opening: as wide as is wanted, else as
// large as can be, and where it is wanted, else with as much border above as below.
// What does not fit is made to, and said to be cut.
func Place(o Opening, aspect float64, want spec.Image) Image {
	w, h := Largest(o.Left-o.Right, o.Top-o.Bottom, aspect)
	cut := false
	if want.Width > 0 {
		cut = want.Width > w+tiny
		w = min(w, want.Width)
		h = w / aspect
	}
	bottom := (o.Bottom + o.Top - h) / 2
	if want.Bottom > 0 {
		bottom = min(max(want.Bottom, o.Bottom), o.Top-h)
		cut = cut || math.Abs(bottom-want.Bottom) > tiny
	}
	centre := (o.Right + o.Left) / 2
	return Image{
		Width: w, Height: h, Bottom: bottom, Centre: centre, X: o.X, Diagonal: geom.Hypot(w, h), Cut: cut,
		Border: Border{Left: max(0, o.Left-centre-w/2), Right: max(0, centre-w/2-o.Right), Top: max(0, o.Top-bottom-h), Bottom: max(0, bottom-o.Bottom)},
	}
}

// tiny (m) is what a plan rounds off.
const tiny = 1e-4

// Around is what is left around the screen, m.
type Around struct {
	Behind  float64 `json:"behind"`  // from the cloth to the front wall
	Left    float64 `json:"left"`    // from its edges to the walls
	Right   float64 `json:"right"`   //
	Ceiling float64 `json:"ceiling"` // from its top to the lowest of the ceiling over it
}

// AroundOf measures the gaps of a plan's screen, which must be there.
func AroundOf(p plan.Plan) Around {
	s := *p.Screen
	right, left, _, top := s.Edges()
	a := Around{Behind: p.Room.Length - s.X, Left: p.Room.Width - left, Right: right, Ceiling: p.Room.Height - top}
	for _, y := range [2]float64{right, left} {
		a.Ceiling = min(a.Ceiling, p.Room.CeilingAt(s.X, y)-top)
	}
	return a
}

// View is the image as somebody sees it.
type View struct {
	Name     string  `json:"name"`
	Kind     string  `json:"kind"`     // "tee" or "seat"
	Distance float64 `json:"distance"` // along the floor to the middle of the image, m
	Wide     float64 `json:"wide"`     // angle that its width takes, degrees
	Aside    float64 `json:"aside"`    // from square on to the middle of the image, degrees
	Pixel    float64 `json:"pixel"`    // angle of one pixel, minutes of arc; 0 without a projector
}

// Views tells how the image looks from every tee and seat, level with its middle.
func Views(p plan.Plan, i Image, columns float64) []View {
	out := []View{}
	add := func(kind, name string, x, y float64) {
		d, side := i.X-x, y-i.Centre
		v := View{Name: name, Kind: kind, Distance: geom.Hypot(d, side)}
		v.Wide = Degrees(math.Atan2(side+i.Width/2, d) - math.Atan2(side-i.Width/2, d))
		v.Aside = math.Abs(Degrees(math.Atan2(side, d)))
		if columns > 0 {
			v.Pixel = v.Wide / columns * 60
		}
		out = append(out, v)
	}
	for _, t := range p.Tees {
		add("tee", t.Name, t.X, t.Y)
	}
	for _, s := range p.Seats {
		add("seat", s.Name, s.X, s.Y)
	}
	return out
}

// Degrees turns radians into degrees.
func Degrees(rad float64) float64 { return rad * 180 / math.Pi }
