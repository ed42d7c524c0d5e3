package picture

import (
	"image/color"

	"wideberth/internal/picture/sheet"
	"wideberth/internal/render/drawing"
	"wideberth/internal/sim/fit"
)

// inks are the colours of a sheet, those of the page's style sheets. Under the lamp
// the room's paper stays light, so that ink stays ink; only round it is dark.
type inks struct {
	ground, word, soft, edge color.NRGBA // round the room: paper, words, quiet words, rules
	room, ink, quiet         color.NRGBA // in it: paper, lines, quiet lines
	verdict                  map[fit.Verdict]color.NRGBA
}

func rgb(hex uint32) color.NRGBA {
	return color.NRGBA{uint8(hex >> 16), uint8(hex >> 8), uint8(hex), 255}
}

func faint(c color.NRGBA, share float64) color.NRGBA {
	c.A = uint8(share*255 + 0.5)
	return c
}

var (
	byDay = inks{
		ground: rgb(0xfaf6ea), word: rgb(0x1f2a33), soft: rgb(0x4c5760), edge: rgb(0xc9bb9b),
		room: rgb(0xfffdf6), ink: rgb(0x1f2a33), quiet: rgb(0x4c5760),
		verdict: map[fit.Verdict]color.NRGBA{fit.Strikes: rgb(0xbc2c12), fit.Tight: rgb(0x7a5200), fit.Clear: rgb(0x1f5b57)},
	}
	byLamp = inks{
		ground: rgb(0x2a241b), word: rgb(0xf3e8cf), soft: rgb(0xc6b797), edge: rgb(0x4b4130),
		room: rgb(0xe9dcc0), ink: rgb(0x1f2a33), quiet: rgb(0x465159),
		verdict: map[fit.Verdict]color.NRGBA{fit.Strikes: rgb(0xff8566), fit.Tight: rgb(0xf1bd58), fit.Clear: rgb(0x94cdc0)},
	}

	limbEdge, limb, shaft, clubhead = rgb(0x23282d), rgb(0xa4a8ac), rgb(0x3b4147), rgb(0x5a6067)
	tapeYellow, tapeInk             = rgb(0xf2c230), rgb(0x1d1a12)
	burstRed, white                 = rgb(0xbc2c12), rgb(0xfffdf6)
)

// line is how a line of the room is drawn.
func (k inks) line(l drawing.Line) sheet.Ink {
	ink := sheet.Ink{Stroke: k.ink, Width: 1.4}
	grey := faint(rgb(0x3c4650), 0.16)
	switch l.Kind {
	case drawing.KindWall:
		ink.Width = 2.4
	case drawing.KindFloor:
		ink.Width = 1.8
	case drawing.KindMat:
		ink.Width, ink.Fill = 1, faint(rgb(0x5a6e5a), 0.14)
	case drawing.KindSolid, drawing.KindHung:
		ink.Fill = grey
	case drawing.KindSlope:
		ink.Width = 1.6
	case drawing.KindScreen:
		ink.Stroke, ink.Width, ink.Butt = k.quiet, 4, true
		if l.Closed {
			ink.Width = 1.6
		}
	case drawing.KindReturn:
		ink.Stroke, ink.Width = k.quiet, 2
	case drawing.KindSeat:
		ink.Fill = faint(grey, 0.1)
	case drawing.KindSensor:
		ink.Dash = []float64{1, 4}
	}
	if l.Hidden {
		ink.Dash, ink.Fill, ink.Width, ink.Butt = []float64{6, 4}, color.NRGBA{}, 1.1, true
	}
	return ink
}

// core is the inside of a limb.
func core(part string) color.NRGBA {
	switch part {
	case "shaft":
		return shaft
	case "grip":
		return limbEdge
	case "clubhead":
		return clubhead
	}
	return limb
}
