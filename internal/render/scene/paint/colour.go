package paint

// Colour is straight (not premultiplied) red, green, blue and alpha, 0–1.
type Colour struct{ R, G, B, A float32 }

// hex is the colour 0xRRGGBB, opaque.
func hex(v uint32) Colour {
	return Colour{float32(v>>16&255) / 255, float32(v>>8&255) / 255, float32(v&255) / 255, 1}
}

// Alpha is the colour with another alpha.
func (c Colour) Alpha(a float32) Colour { c.A = a; return c }

// Lit is the colour made k times as bright.
func (c Colour) Lit(k float32) Colour {
	return Colour{min(1, c.R*k), min(1, c.G*k), min(1, c.B*k), c.A}
}

// Warm is Lit for paper: its shadows turn yellowish, not grey.
func (c Colour) Warm(k float32) Colour {
	return Colour{min(1, c.R*k), min(1, c.G*k*(0.88+0.12*k)), min(1, c.B*k*(0.62+0.38*k)), c.A}
}
