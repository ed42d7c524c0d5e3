package picture

import (
	"wideberth/internal/picture/sheet"
	"wideberth/internal/render/drawing"
)

// View is what a picture shows.
type View string

// The views. Elevation is the one of the two that shows the tape longer.
const (
	Plan      View = "plan"
	Elevation View = "elevation"
	Frames    View = "frames"
	All       View = "all"
)

// Views are all of them.
var Views = []View{Plan, Elevation, Frames, All}

// Options say how a picture is laid out.
type Options struct {
	View View
	// Ratio is height over width, of a single view; 0 leaves the height to what is on
	// the sheet. One much wider than high has its words beside the view.
	Ratio float64
	Dark  bool // by lamplight
}

const (
	single  = 480.0  // px across a sheet of one view: what it is drawn for, however large it is painted
	several = 1200.0 // px across a sheet of several
	pad     = 14.0   // px round everything
	low     = 0.75   // ratio below which the words stand beside the view
	beside  = 0.62   // of the width that the view has then
	least   = 150.0  // px that a view is high
	grow    = 1.05   // from one try of a sheet to the next
	notMe   = "A model of a golf swing, not a measurement of yours."
)

// Draw draws an answer.
func Draw(a Answer, o Options) *sheet.Sheet {
	k := byDay
	if o.Dark {
		k = byLamp
	}
	s := &sheet.Sheet{Width: single, Title: "Wide Berth", About: a.headline + " " + a.sentence}
	if a.title != "" {
		s.Title = a.title
	}
	name, elevation := "side", a.flat.Side
	if a.reel.Face {
		name, elevation = "face", a.flat.Face
	}
	switch {
	case o.View == Plan:
		k.one(s, a, "plan", a.flat.Plan, o.Ratio)
	case o.View == Elevation:
		k.one(s, a, name, elevation, o.Ratio)
	default:
		s.Width = several
		top := 0.0
		strip := a.stripHeight(elevation, s.Width)
		if o.View == All {
			top = (s.Width/2-2*margin)*max(a.flat.Plan.Size[1]/a.flat.Plan.Size[0], elevation.Size[1]/elevation.Size[0]) + 2*margin
		}
		s.Height = top + pad + strip + k.tall(a, s.Width-2*pad) + pad
		k.cover(s)
		if o.View == All {
			k.view(s, a.flat.Plan, framed(a.flat.Plan, margin, 0, 0, s.Width/2, top), a.edges("plan"))
			k.view(s, elevation, framed(elevation, margin, s.Width/2, 0, s.Width/2, top), a.edges(name))
		}
		k.strip(s, a, elevation, top+pad)
		k.words(s, a, pad, top+pad+strip, s.Width-2*pad)
	}
	return s
}

// cover covers a sheet with paper.
func (k inks) cover(s *sheet.Sheet) { s.Box(sheet.Ink{Fill: k.ground}, 0, 0, s.Width, s.Height) }

// one draws a single view with its words below, or beside where the sheet is low. A
// sheet whose ratio leaves too little room is drawn larger, which makes all on it smaller.
func (k inks) one(s *sheet.Sheet, a Answer, name string, v drawing.View, ratio float64) {
	if ratio > 0 && ratio < low {
		at, width, told := 0.0, 0.0, 0.0
		for ; ; s.Width *= grow {
			s.Height, at = ratio*s.Width, beside*s.Width
			width = s.Width - at - 4 - pad
			if told = k.tall(a, width); told <= s.Height-2*pad {
				break
			}
		}
		k.cover(s)
		k.view(s, v, framed(v, margin, 0, 0, at, s.Height), a.edges(name))
		k.words(s, a, at+4, (s.Height-told)/2, width)
		return
	}
	room := (s.Width-2*margin-2*pad)*v.Size[1]/v.Size[0] + 2*margin
	s.Height = room + k.tall(a, s.Width-2*pad) + pad
	for ratio > 0 {
		s.Height = ratio * s.Width
		if room = s.Height - k.tall(a, s.Width-2*pad) - pad; room >= least {
			break
		}
		s.Width *= grow
	}
	k.cover(s)
	k.view(s, v, framed(v, margin, pad, 0, s.Width-2*pad, room), a.edges(name))
	k.words(s, a, pad, room, s.Width-2*pad)
}

// edges are the measures and names round a view.
func (a Answer) edges(name string) *edges {
	e := edges{top: beyond[name][0], right: beyond[name][1], across: a.fields["room.length"], up: a.fields["room.height"]}
	switch name {
	case "plan":
		e.up = a.fields["room.width"]
	case "face":
		e.across = a.fields["room.width"]
	}
	return &e
}

const (
	stripAround  = 8.0  // px round each key frame
	stripCaption = 24.0 // px below it
)

func (a Answer) stripHeight(v drawing.View, width float64) float64 {
	each := (width - 2*pad) / float64(len(a.reel.moments()))
	return (each-2*stripAround)*v.Size[1]/v.Size[0] + 2*stripAround + stripCaption
}

// strip draws the key frames side by side.
func (k inks) strip(s *sheet.Sheet, a Answer, v drawing.View, top float64) {
	all := a.reel.moments()
	each, height := (s.Width-2*pad)/float64(len(all)), a.stripHeight(v, s.Width)
	for i, m := range all {
		shown := drawing.View{Axes: v.Axes, Size: v.Size, Lines: v.Lines, Figure: a.reel.figure(m.time)}
		if m.time == a.reel.Tightest {
			shown.Figure, shown.Tape = v.Figure, v.Tape
		}
		if a.reel.First != nil && m.time >= *a.reel.First {
			shown.First = v.First
		}
		for _, mark := range v.Marks {
			if mark.Name == "ball" && m.time <= a.impact() {
				shown.Marks = append(shown.Marks, mark)
			}
		}
		left := pad + each*float64(i)
		k.view(s, shown, framed(v, stripAround, left, top, each, height-stripCaption), nil)
		s.Text(m.String(), sheet.Point{left + each/2, top + height - stripCaption + 12}, sheet.Type{Size: 14, Colour: k.soft, Anchor: sheet.Middle})
	}
}

// impact is when the ball goes, s.
func (a Answer) impact() float64 {
	for _, p := range a.reel.Phases {
		if p.Name == "impact" {
			return p.Start
		}
	}
	return a.reel.Duration
}

// The type of the words beside a drawing.
const (
	headSize, saidSize, smallSize = 20.0, 16.0, 11.5
	sign                          = 26.0 // px across the sign of the verdict
)

// tall is how high the words are at a width, px.
func (k inks) tall(a Answer, width float64) float64 { return k.words(&sheet.Sheet{}, a, 0, 0, width) }

// words sets title, verdict and sentence from a top edge on and returns their height.
func (k inks) words(s *sheet.Sheet, a Answer, left, top, width float64) float64 {
	y := top
	head := sheet.Type{Size: headSize, Bold: true, Colour: k.verdict[a.worst]}
	said := sheet.Type{Size: saidSize, Colour: k.word}
	small := sheet.Type{Size: smallSize, Colour: k.soft}
	lines := func(font sheet.Type, text string, indent float64) {
		for _, line := range font.Wrap(text, width-indent) {
			y += font.Size * 1.28
			s.Text(line, sheet.Point{left + indent, y - font.Size*0.28}, font)
		}
	}
	if a.title != "" {
		lines(small, a.title, 0)
		y += 3
	}
	k.sign(s, a.worst, left, y)
	lines(head, a.headline, sign+8)
	y += 4
	lines(said, a.sentence, 0)
	y += 4
	lines(small, notMe, 0)
	return y - top
}
