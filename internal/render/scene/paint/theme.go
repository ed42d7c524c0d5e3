package paint

// StrikeRGB is the one loud colour, the fill of a strike mark and of whatever
// has gone through a surface. It is drawn unshaded and opaque in both themes,
// so that a test can look for exactly this pixel.
const StrikeRGB = 0xD9381E

// TapeRGB is the yellow of the measuring tape, unshaded and opaque too.
const TapeRGB = 0xF5C431

// Theme is the colours of a picture.
type Theme struct {
	Ground, Rule           Colour // the table and its ruled lines
	Wall, Ceiling, Floor   Colour
	Mat, Solid, Hung       Colour
	Cloth                  Colour
	Ink, Hidden, Cut       Colour // lines: seen, hidden, of the walls cut away
	Lettering              Colour
	Shadow                 Colour
	Shirt, Trousers, Skin  Colour // the golfer
	Glove, Dark, Toe       Colour
	Outline                Colour
	Club, Clubhead, Face   Colour
	Ghost, GhostInk        Colour
	Ribbon, RibbonInk      Colour
	Ball                   Colour
	Strike, StrikeInk      Colour
	Tape, TapeInk          Colour
	Plate, PlateInk, Tight Colour
	Lamp                   float32 // how much the lamp's falloff shows, 0–1
}

// Paper model on a drafting table, by day.
var day = Theme{
	Ground: hex(0xE6DCC7), Rule: hex(0x8A7C5E).Alpha(0.10),
	Wall: hex(0xFDF9EF), Ceiling: hex(0xFFFCF5), Floor: hex(0xEDE5D4),
	Mat: hex(0xD3D8C3), Solid: hex(0xE6D6B8), Hung: hex(0xD9CBB0),
	Cloth: hex(0xFFFDF8),
	Ink:   hex(0x2B2A28), Hidden: hex(0x2B2A28).Alpha(0.55), Cut: hex(0x2B2A28).Alpha(0.34),
	Lettering: hex(0x3A3227),
	Shadow:    hex(0xC9BFAA),
	Shirt:     hex(0x8C9196), Trousers: hex(0x666B72), Skin: hex(0xB9AFA2),
	Glove: hex(0xF4F1E8), Dark: hex(0x3F4349), Toe: hex(0x5C6067),
	Outline: hex(0x1F2023),
	Club:    hex(0x6D7278), Clubhead: hex(0x34373C), Face: hex(0xA9AFB5),
	Ghost: hex(0xF6F1E4).Alpha(0.80), GhostInk: hex(0x4A4E55).Alpha(0.75),
	Ribbon: hex(0x44708A).Alpha(0.30), RibbonInk: hex(0x2A5068).Alpha(0.85),
	Ball:   hex(0xFFFFFF),
	Strike: hex(StrikeRGB), StrikeInk: hex(0x4A0F04),
	Tape: hex(TapeRGB), TapeInk: hex(0x2B2106),
	Plate: hex(0xFFFDF6), PlateInk: hex(0x23211D), Tight: hex(0xF5C431),
	Lamp: 0.12,
}

// The same table by lamplight.
var night = Theme{
	Ground: hex(0x17130E), Rule: hex(0xF0DDB0).Alpha(0.05),
	Wall: hex(0x625440), Ceiling: hex(0x5A4D3A), Floor: hex(0x574834),
	Mat: hex(0x4C5142), Solid: hex(0x6E5D43), Hung: hex(0x7A684B),
	Cloth: hex(0x857A68),
	Ink:   hex(0xF1E4C8), Hidden: hex(0xF1E4C8).Alpha(0.50), Cut: hex(0xF1E4C8).Alpha(0.30),
	Lettering: hex(0xF8EEDA),
	Shadow:    hex(0x2E271F),
	Shirt:     hex(0xAEB2B6), Trousers: hex(0x868A90), Skin: hex(0xC9BBA8),
	Glove: hex(0xF2EEE2), Dark: hex(0x54585F), Toe: hex(0x72767C),
	Outline: hex(0x100E0C),
	Club:    hex(0xC4C7CA), Clubhead: hex(0xA8A69F), Face: hex(0xF0EEE6),
	Ghost: hex(0x8C7F69).Alpha(0.70), GhostInk: hex(0xF1E4C8).Alpha(0.75),
	Ribbon: hex(0x8FC3DE).Alpha(0.26), RibbonInk: hex(0xB9E0F4).Alpha(0.80),
	Ball:   hex(0xFFFFFF),
	Strike: hex(StrikeRGB), StrikeInk: hex(0x2A0802),
	Tape: hex(TapeRGB), TapeInk: hex(0x2B2106),
	Plate: hex(0x2A251F), PlateInk: hex(0xF6ECD8), Tight: hex(0xF5C431),
	Lamp: 0.90,
}

// ThemeOf is the theme by day or, dark, by lamplight.
func ThemeOf(dark bool) *Theme {
	if dark {
		return &night
	}
	return &day
}
