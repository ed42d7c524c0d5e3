package quantity

import "wideberth/internal/sim/build/spec"

// Bands are the octave bands (Hz) that absorption is given for.
var bands = [6]float64{125, 250, 500, 1000, 2000, 4000}

// Bands are the octave bands of a Reverberation, Hz.
func Bands() [6]float64 { return bands }

// absorption are the shares of sound that a surface takes, by band: the standard
// handbook table, read (testdata/build/absorption.csv).
var absorption = map[string][6]float64{
	spec.GypsumBoard:   {0.10, 0.08, 0.05, 0.03, 0.03, 0.03},
	spec.Concrete:      {0.01, 0.01, 0.02, 0.02, 0.02, 0.02},
	spec.BlockCoarse:   {0.36, 0.44, 0.31, 0.29, 0.39, 0.25},
	spec.BlockPainted:  {0.10, 0.05, 0.06, 0.07, 0.09, 0.08},
	spec.CarpetOnSolid: {0.02, 0.06, 0.14, 0.37, 0.60, 0.65},
	spec.CarpetOnFoam:  {0.08, 0.24, 0.57, 0.69, 0.71, 0.73},
	spec.HeavyVelour:   {0.14, 0.35, 0.55, 0.72, 0.70, 0.65},
	spec.WoodFloor:     {0.15, 0.11, 0.10, 0.07, 0.06, 0.07},
}

// Absorption is the share of sound that a material takes in each band.
func Absorption(material string) [6]float64 { return absorption[material] }

// Surface is a part of the room's inside.
type Surface struct {
	Material string
	Area     float64 // m²
}

// sabine is the constant of Sabine's formula in metres, s/m: T60 = 0.161 V / A.
const sabine = 0.161

// Reverberation is Sabine's estimate of how long sound takes to fall by 60 dB (s), in
// each band. Of a small room with absorbers in one place it is a rough one.
func Reverberation(volume float64, surfaces []Surface) (seconds [6]float64) {
	for k := range seconds {
		a := 0.0
		for _, s := range surfaces {
			a += s.Area * absorption[s.Material][k]
		}
		if a > 0 {
			seconds[k] = sabine * volume / a
		}
	}
	return seconds
}
