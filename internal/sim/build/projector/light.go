// Package projector judges where a projector hangs: how far it throws, how bright
// the image is, what cuts into its light, and how near the swings come to it.
package projector

import (
	"math"

	"wideberth/internal/units"
)

// Luminances of a white image, cd/m².
const (
	// CinemaWhite is the centre of a digital cinema's screen, 14 fL: SMPTE ST
	// 431-1:2006, read in a text that describes it.
	CinemaWhite = 48.0
	// FootLambert is one foot-lambert: 1 / (π · 0.3048²) cd/m².
	FootLambert = 1 / (math.Pi * units.MetresPerFoot * units.MetresPerFoot)
)

// UsedLeast and UsedMost are the shares of the rated light that are left with a
// picture mode and some hours on the lamp: common practice, no source.
const (
	UsedLeast = 0.60
	UsedMost  = 0.75
)

// Luminance (cd/m²) of a white image of an area (m²) on a flat diffuse screen of a
// gain, by definition: lumens × gain / (π × area).
func Luminance(lumens, gain, area float64) float64 {
	if area <= 0 {
		return 0
	}
	return lumens * gain / (math.Pi * area)
}

// Stray is the luminance (cd/m²) that room light of so many lux gives the screen.
func Stray(lux, gain float64) float64 { return lux * gain / math.Pi }

// Angle is the full horizontal angle (rad) of a throw ratio.
func Angle(ratio float64) float64 { return 2 * math.Atan(1/(2*ratio)) }

// Offsets are the two ways to say where an image lies to the lens, both as shares of
// its height: EdgeOff from the lens axis to the nearest edge, negative when the axis
// meets the image; FarOff from the axis to the farthest edge, so that 1 has an edge
// level with the lens and 0.5 the middle.
func Offsets(lens, bottom, height float64) (edgeOff, farOff float64) {
	above, below := lens-(bottom+height), bottom-lens // of the lens over the top, under the bottom
	near := max(above, below)
	far := max(lens-bottom, bottom+height-lens)
	return near / height, far / height
}
