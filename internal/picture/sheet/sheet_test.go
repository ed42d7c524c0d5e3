package sheet

import (
	"encoding/xml"
	"errors"
	"image/color"
	"io"
	"math"
	"strings"
	"testing"
)

var black = color.NRGBA{A: 255}

// dark is how much of a painted sheet is black, px².
func dark(s *Sheet, scale float64) float64 {
	picture, sum := s.Paint(scale), 0.0
	for i := 0; i < len(picture.Pix); i += 4 {
		sum += float64(255-picture.Pix[i]) / 255
	}
	return sum / scale / scale
}

// What is painted covers the area that geometry says, also where rings overlap, where
// one is a hole and where something lies off the sheet.
func TestPaintedArea(t *testing.T) {
	square := func(x, y, a float64) []Point { return []Point{{x, y}, {x + a, y}, {x + a, y + a}, {x, y + a}} }
	turned := func(ring []Point) []Point { return []Point{ring[3], ring[2], ring[1], ring[0]} }
	cases := []struct {
		name string
		put  func(s *Sheet)
		want float64
	}{
		{"a square", func(s *Sheet) { s.Outline(Ink{Fill: black}, square(10, 10, 20)) }, 400},
		{"a box", func(s *Sheet) { s.Box(Ink{Fill: black}, 20, 10, 30, 5) }, 150},
		{"half a square off the sheet", func(s *Sheet) { s.Outline(Ink{Fill: black}, square(-10, 10, 20)) }, 200},
		{"two that overlap", func(s *Sheet) { s.Outline(Ink{Fill: black}, square(10, 10, 20), square(20, 10, 20)) }, 600},
		{"one with a hole", func(s *Sheet) { s.Outline(Ink{Fill: black}, square(10, 10, 20), turned(square(15, 15, 10))) }, 300},
		{"half as dark", func(s *Sheet) { s.Outline(Ink{Fill: color.NRGBA{A: 128}}, square(10, 10, 20)) }, 400 * 128.0 / 255},
		{"a line", func(s *Sheet) { s.Line(Ink{Stroke: black, Width: 4, Butt: true}, Point{10, 50}, Point{60, 50}) }, 200},
		{"a round line", func(s *Sheet) { s.Line(Ink{Stroke: black, Width: 4}, Point{10, 50}, Point{60, 50}) }, 200 + 4*math.Pi},
		{"a dashed line", func(s *Sheet) {
			s.Line(Ink{Stroke: black, Width: 4, Butt: true, Dash: []float64{6, 4}}, Point{10, 50}, Point{40, 50}, Point{40, 70})
		}, 4 * 30},
		{"a line of no length", func(s *Sheet) { s.Line(Ink{Stroke: black, Width: 4}, Point{10, 50}, Point{10, 50}) }, 4 * math.Pi},
		{"nothing", func(s *Sheet) { s.Outline(Ink{}, square(10, 10, 20)) }, 0},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			for _, scale := range []float64{1, 2} {
				s := &Sheet{Width: 100, Height: 100}
				c.put(s)
				if got := dark(s, scale); math.Abs(got-c.want) > 0.03*c.want+1 {
					t.Errorf("%.1f px² are dark at scale %v, want %.1f", got, scale, c.want)
				}
			}
		})
	}
}

// A line of text is as long as it says, wherever it is anchored and however turned.
func TestTextStandsWhereItSays(t *testing.T) {
	const words = "WIDE BERTH"
	for _, c := range []struct {
		name       string
		font       Type
		x0, x1, y0 float64 // of what is painted
		y1         float64
	}{
		{"from the start", Type{Size: 20}, 200, 200 + Type{Size: 20}.Width(words), 86, 100},
		{"to the end", Type{Size: 20, Anchor: End}, 200 - Type{Size: 20}.Width(words), 200, 86, 100},
		{"turned a quarter", Type{Size: 20, Anchor: Middle, Turn: 90}, 200, 214, 100 - Type{Size: 20}.Width(words)/2, 100 + Type{Size: 20}.Width(words)/2},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := &Sheet{Width: 400, Height: 200}
			c.font.Colour = black
			s.Text(words, Point{200, 100}, c.font)
			picture := s.Paint(1)
			x0, x1, y0, y1 := 400.0, 0.0, 200.0, 0.0
			for y := range 200 {
				for x := range 400 {
					if picture.RGBAAt(x, y).R < 128 {
						x0, x1, y0, y1 = min(x0, float64(x)), max(x1, float64(x+1)), min(y0, float64(y)), max(y1, float64(y+1))
					}
				}
			}
			const slack = 3 // px: letters have sides, and round ones reach past the line
			for _, e := range []struct{ got, want float64 }{{x0, c.x0}, {x1, c.x1}, {y0, c.y0}, {y1, c.y1}} {
				if math.Abs(e.got-e.want) > slack {
					t.Errorf("painted from %v,%v to %v,%v, want %.0f,%.0f to %.0f,%.0f", x0, y0, x1, y1, c.x0, c.y0, c.x1, c.y1)
					break
				}
			}
		})
	}
}

func TestWrap(t *testing.T) {
	font := Type{Size: 10}
	got := font.Wrap("  one two   three incomprehensibilities ", font.Width("one two")+1)
	if want := "one two|three|incomprehensibilities"; strings.Join(got, "|") != want {
		t.Errorf("wrapped as %q, want %q", got, want)
	}
	if got := font.Wrap("", 100); len(got) != 0 {
		t.Errorf("nothing is wrapped as %q", got)
	}
}

// Names that people type cannot break out of the file.
func TestSVGIsXML(t *testing.T) {
	s := &Sheet{Width: 10, Height: 10, Title: `<script>"&`, About: "]]>"}
	s.Text(`<b onload="x">&`+"\x00", Point{1, 1}, Type{Size: 5, Colour: black})
	s.Outline(Ink{Fill: color.NRGBA{R: 1, G: 2, B: 3, A: 51}, Stroke: black, Width: 1, Dash: []float64{1, 2}}, []Point{{-0.01, 0}, {1.25, 2}})
	text := string(s.SVG())
	d := xml.NewDecoder(strings.NewReader(text))
	var names []string
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("the SVG is not XML: %v", err)
		}
		if start, ok := token.(xml.StartElement); ok {
			names = append(names, start.Name.Local)
		}
	}
	if got := strings.Join(names, " "); got != "svg title desc text path" {
		t.Errorf("elements are %q", got)
	}
	if want := `<text x="1" y="1" font-size="5" textLength="` + px(Type{Size: 5}.Width(`<b onload="x">&`+"\x00")) + `" lengthAdjust="spacingAndGlyphs" fill="#000000">&lt;b onload=`; !strings.Contains(text, want) {
		t.Errorf("the SVG = %s\nwant it to hold %s", text, want)
	}
	if want := `<path d="M0 0L1.2 2Z" fill="#010203" fill-opacity="0.20" stroke="#000000" stroke-width="1" stroke-linecap="round" stroke-linejoin="round" stroke-dasharray="1 2"/>`; !strings.Contains(text, want) {
		t.Errorf("the SVG = %s\nwant it to hold %s", text, want)
	}
}
