package draw

// Colour is straight (not premultiplied) red, green, blue and alpha, 0–1.
type Colour struct{ R, G, B, A float32 }

// hex is the colour 0xRRGGBB, opaque.
func hex(v uint32) Colour {
	return Colour{float32(v>>16&255) / 255, float32(v>>8&255) / 255, float32(v&255) / 255, 1}
}

func (c Colour) alpha(a float32) Colour { c.A = a; return c }

// lit is the colour made k times as bright.
func (c Colour) lit(k float32) Colour {
	return Colour{min(1, c.R*k), min(1, c.G*k), min(1, c.B*k), c.A}
}

// warm is lit for paper: its shadows turn yellowish, not grey.
func (c Colour) warm(k float32) Colour {
	return Colour{min(1, c.R*k), min(1, c.G*k*(0.88+0.12*k)), min(1, c.B*k*(0.62+0.38*k)), c.A}
}

func (c Colour) mix(d Colour, t float32) Colour {
	return Colour{c.R + (d.R-c.R)*t, c.G + (d.G-c.G)*t, c.B + (d.B-c.B)*t, c.A + (d.A-c.A)*t}
}

// StrikeRGB is the one loud colour, the fill of a strike mark and of whatever
// has gone through a surface. It is drawn unshaded and opaque in both themes,
// so that a test can look for exactly this pixel.
const StrikeRGB = 0xD9381E

// TapeRGB is the yellow of the measuring tape, unshaded and opaque too.
const TapeRGB = 0xF5C431

// palette is one theme.
type palette struct {
	ground, rule           Colour // the table and its ruled lines
	wall, ceiling, floor   Colour
	mat, solid, hung       Colour
	cloth                  Colour
	ink, hidden, cut       Colour // lines: seen, hidden, of the walls cut away
	lettering              Colour
	shadow                 Colour
	body, joint, outline   Colour // the mannequin
	club, clubhead         Colour
	ribbon, ribbonInk      Colour
	ball                   Colour
	strike, strikeInk      Colour
	tape, tapeInk          Colour
	plate, plateInk, tight Colour
	lamp                   float32 // how much the lamp's falloff shows, 0–1
}

// Paper model on a drafting table, by day.
var day = palette{
	ground: hex(0xE6DCC7), rule: hex(0x8A7C5E).alpha(0.10),
	wall: hex(0xFDF9EF), ceiling: hex(0xFFFCF5), floor: hex(0xEDE5D4),
	mat: hex(0xD3D8C3), solid: hex(0xE6D6B8), hung: hex(0xD9CBB0),
	cloth: hex(0xFFFDF8),
	ink:   hex(0x2B2A28), hidden: hex(0x2B2A28).alpha(0.55), cut: hex(0x2B2A28).alpha(0.34),
	lettering: hex(0x6E6353),
	shadow:    hex(0xC9BFAA),
	body:      hex(0x868A90), joint: hex(0x3F4349), outline: hex(0x1F2023),
	club: hex(0x6D7278), clubhead: hex(0x34373C),
	ribbon: hex(0x44708A).alpha(0.30), ribbonInk: hex(0x2A5068).alpha(0.85),
	ball:   hex(0xFFFFFF),
	strike: hex(StrikeRGB), strikeInk: hex(0x4A0F04),
	tape: hex(TapeRGB), tapeInk: hex(0x2B2106),
	plate: hex(0xFFFDF6), plateInk: hex(0x23211D), tight: hex(0xF5C431),
	lamp: 0.12,
}

// The same table by lamplight.
var night = palette{
	ground: hex(0x17130E), rule: hex(0xF0DDB0).alpha(0.05),
	wall: hex(0x625440), ceiling: hex(0x5A4D3A), floor: hex(0x574834),
	mat: hex(0x4C5142), solid: hex(0x6E5D43), hung: hex(0x7A684B),
	cloth: hex(0x857A68),
	ink:   hex(0xF1E4C8), hidden: hex(0xF1E4C8).alpha(0.50), cut: hex(0xF1E4C8).alpha(0.30),
	lettering: hex(0xD9C8A4),
	shadow:    hex(0x2E271F),
	body:      hex(0xAEB2B6), joint: hex(0x6C7076), outline: hex(0x100E0C),
	club: hex(0xC4C7CA), clubhead: hex(0xE4E2DC),
	ribbon: hex(0x8FC3DE).alpha(0.26), ribbonInk: hex(0xB9E0F4).alpha(0.80),
	ball:   hex(0xFFFFFF),
	strike: hex(StrikeRGB), strikeInk: hex(0x2A0802),
	tape: hex(TapeRGB), tapeInk: hex(0x2B2106),
	plate: hex(0x2A251F), plateInk: hex(0xF6ECD8), tight: hex(0xF5C431),
	lamp: 0.90,
}
