package webbuild

import (
	"bytes"
	"sync"

	"wideberth/internal/picture"
	"wideberth/internal/picture/sheet"
	"wideberth/internal/sim/plan"
	"wideberth/internal/solver/protocol"
)

// Pictures are drawings of the demonstration room: the poster of a page that is
// embedded without a room of its own, and what a link to the page looks like where
// links are shown as cards; and the icons that cannot be SVGs.
var Pictures = []Data{
	{"poster.svg", func() ([]byte, error) { return drawn(picture.Options{View: picture.Elevation}, 0) }},
	{"poster-dark.svg", func() ([]byte, error) { return drawn(picture.Options{View: picture.Elevation, Dark: true}, 0) }},
	{"preview.png", func() ([]byte, error) {
		return drawn(picture.Options{View: picture.Elevation, Ratio: previewHeight / previewWidth}, previewWidth)
	}},
	{"icon-180.png", func() ([]byte, error) { return painted(picture.Icon(180), 1) }},
	{"icon-192.png", func() ([]byte, error) { return painted(picture.Icon(192), 1) }},
	{"icon-512.png", func() ([]byte, error) { return painted(picture.Icon(512), 1) }},
}

// The preview's size (px) is what index.html says of it: the one that cards are shown in.
const previewWidth, previewHeight = 1200.0, 630.0

var demo = sync.OnceValues(func() (picture.Answer, error) {
	p, err := plan.Parse(plan.Demo().JSON())
	if err != nil {
		return picture.Answer{}, err
	}
	return picture.Ask(p, protocol.Focus{})
})

// drawn is a picture as a PNG of a width, or as an SVG where none is given.
func drawn(o picture.Options, width float64) ([]byte, error) {
	answer, err := demo()
	if err != nil {
		return nil, err
	}
	s := picture.Draw(answer, o)
	if width == 0 {
		return s.SVG(), nil
	}
	return painted(s, width/s.Width)
}

func painted(s *sheet.Sheet, scale float64) ([]byte, error) {
	var b bytes.Buffer
	err := s.PNG(&b, scale)
	return b.Bytes(), err
}
