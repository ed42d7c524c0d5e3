package sheet

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image/color"
	"strconv"
)

// families are the fonts that an SVG asks for, best first; a line of text is made as
// long as it was planned, whichever there is.
const families = "Go, 'Liberation Sans', 'Segoe UI', Helvetica, Arial, sans-serif"

// SVG writes the sheet. Everything is said in presentation attributes: a strict
// content security policy refuses styles in a file that is opened by itself.
func (s *Sheet) SVG() []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %s %s" width="%s" height="%s" role="img" font-family="%s">`+"\n",
		px(s.Width), px(s.Height), px(s.Width), px(s.Height), families)
	fmt.Fprintf(&b, "<title>%s</title>\n<desc>%s</desc>\n", escaped(s.Title), escaped(s.About))
	for _, it := range s.items {
		if it.words != "" {
			it.text(&b)
		} else {
			it.outline(&b)
		}
	}
	b.WriteString("</svg>\n")
	return b.Bytes()
}

func (it item) outline(b *bytes.Buffer) {
	b.WriteString(`<path d="`)
	for _, ring := range it.rings {
		for i, p := range ring {
			b.WriteByte("ML"[min(i, 1)])
			b.WriteString(px(p[0]) + " " + px(p[1]))
		}
		if it.closed {
			b.WriteByte('Z')
		}
	}
	b.WriteByte('"')
	paint(b, "fill", it.ink.Fill)
	if it.ink.Stroke.A > 0 {
		paint(b, "stroke", it.ink.Stroke)
		fmt.Fprintf(b, ` stroke-width="%s"`, px(it.ink.Width))
		if !it.ink.Butt {
			b.WriteString(` stroke-linecap="round" stroke-linejoin="round"`)
		}
		for i, d := range it.ink.Dash {
			b.WriteString([]string{` stroke-dasharray="`, " "}[min(i, 1)] + px(d))
		}
		if len(it.ink.Dash) > 0 {
			b.WriteByte('"')
		}
	}
	b.WriteString("/>\n")
}

func (it item) text(b *bytes.Buffer) {
	fmt.Fprintf(b, `<text x="%s" y="%s" font-size="%s"`, px(it.at[0]), px(it.at[1]), px(it.font.Size))
	if it.font.Bold {
		b.WriteString(` font-weight="700"`)
	}
	if it.font.Anchor != Start {
		fmt.Fprintf(b, ` text-anchor="%s"`, [...]string{"start", "middle", "end"}[it.font.Anchor])
	}
	if it.font.Turn != 0 {
		fmt.Fprintf(b, ` transform="rotate(%s %s %s)"`, px(it.font.Turn), px(it.at[0]), px(it.at[1]))
	}
	fmt.Fprintf(b, ` textLength="%s" lengthAdjust="spacingAndGlyphs"`, px(it.font.Width(it.words)))
	paint(b, "fill", it.font.Colour)
	fmt.Fprintf(b, ">%s</text>\n", escaped(it.words))
}

// paint names a colour, "none" where there is none.
func paint(b *bytes.Buffer, name string, c color.NRGBA) {
	if c.A == 0 {
		fmt.Fprintf(b, ` %s="none"`, name)
		return
	}
	fmt.Fprintf(b, ` %s="#%02x%02x%02x"`, name, c.R, c.G, c.B)
	if c.A < 255 {
		fmt.Fprintf(b, ` %s-opacity="%.2f"`, name, float64(c.A)/255)
	}
}

// px writes a length to a tenth of a pixel.
func px(v float64) string {
	s := strconv.FormatFloat(v, 'f', 1, 64)
	if s == "-0.0" {
		return "0"
	}
	return string(bytes.TrimSuffix([]byte(s), []byte(".0")))
}

func escaped(s string) string {
	var b bytes.Buffer
	if err := xml.EscapeText(&b, []byte(s)); err != nil {
		return "" // a buffer takes everything
	}
	return b.String()
}
