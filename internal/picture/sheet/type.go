package sheet

import (
	"fmt"
	"math"
	"strings"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// faces are the two weights of the Go font, which the module ships.
var faces = sync.OnceValue(func() [2]*opentype.Font {
	return [2]*opentype.Font{parsed(goregular.TTF), parsed(gobold.TTF)}
})

func parsed(ttf []byte) *opentype.Font {
	f, err := opentype.Parse(ttf)
	if err != nil {
		panic(fmt.Sprintf("the font that golang.org/x/image ships cannot be read: %v", err))
	}
	return f
}

func (t Type) face() *opentype.Font {
	if t.Bold {
		return faces()[1]
	}
	return faces()[0]
}

// em is the size at which glyphs are measured and loaded: fine enough that nothing
// is lost when they are scaled.
const em = 1000

// Width is how long a line of text is, px.
func (t Type) Width(words string) float64 {
	var buf sfnt.Buffer
	f, width := t.face(), fixed.Int26_6(0)
	for _, r := range words {
		if advance, err := f.GlyphAdvance(&buf, glyph(&buf, f, r), fixed.I(em), font.HintingNone); err == nil {
			width += advance
		}
	}
	return float64(width) / 64 * t.Size / em
}

// glyph is a letter's outline in the font; of letters it has not got, that of none.
func glyph(buf *sfnt.Buffer, f *opentype.Font, r rune) sfnt.GlyphIndex {
	g, err := f.GlyphIndex(buf, r)
	if err != nil {
		return 0
	}
	return g
}

// Wrap breaks a sentence into lines of at most width px, between words. A word that
// is longer stands alone, and longer.
func (t Type) Wrap(sentence string, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(sentence) {
		switch longer := line + " " + word; {
		case line == "":
			line = word
		case t.Width(longer) <= width:
			line = longer
		default:
			lines, line = append(lines, line), word
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// start is where the first letter stands, before the line is turned.
func (t Type) start(at Point, width float64) Point {
	return Point{at[0] - width*float64(t.Anchor)/2, at[1]}
}

// turned is a point turned about another, degrees clockwise as y runs down.
func turned(p, about Point, degrees float64) Point {
	if degrees == 0 {
		return p
	}
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	x, y := p[0]-about[0], p[1]-about[1]
	return Point{about[0] + x*cos - y*sin, about[1] + x*sin + y*cos}
}
