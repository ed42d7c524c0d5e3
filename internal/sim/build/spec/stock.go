package spec

import "wideberth/internal/units"

const inch = units.MetresPerInch

// Categories are panels by performance category of US PS 1 and PS 2 with their least
// and greatest thickness in inches: APA – The Engineered Wood Association, table of
// performance category and thickness, read (testdata/build/panels.csv).
var categories = []struct {
	name        string
	least, most float64
}{
	{"1/4", 0.219, 0.281}, {"3/8", 0.344, 0.406}, {"7/16", 0.406, 0.469}, {"15/32", 0.438, 0.500},
	{"1/2", 0.469, 0.531}, {"19/32", 0.563, 0.625}, {"5/8", 0.594, 0.656}, {"23/32", 0.688, 0.750},
	{"3/4", 0.719, 0.781}, {"1-1/8", 1.069, 1.181},
}

// soft is what lies over the panels, in inches, with a least and greatest thickness
// of a tenth to either side: an assumption without a source, measure what you buy.
var soft = []struct {
	name, kind string
	inches     float64
}{
	{"1/4 in rubber", Rubber, 0.25}, {"3/8 in rubber", Rubber, 0.375}, {"1/2 in rubber", Rubber, 0.5},
	{"1/2 in foam tile", Foam, 0.5}, {"3/4 in foam tile", Foam, 0.75},
	{"2/5 in putting turf", Turf, 0.4}, {"1/2 in putting turf", Turf, 0.5}, {"3/5 in putting turf", Turf, 0.6},
}

// softSpread is the share by which soft stock is taken to differ from its name.
const softSpread = 0.10

// UsualStock is common stock in the order of thickness within its kinds; without
// prices, since prices are nobody's to guess. Sheets are 96 × 48 in.
func UsualStock() []Stock {
	var out []Stock
	for _, c := range categories {
		out = append(out, Stock{Name: c.name + " panel", Kind: Panel, Least: c.least * inch, Most: c.most * inch})
	}
	for _, s := range soft {
		out = append(out, Stock{Name: s.name, Kind: s.kind, Least: s.inches * (1 - softSpread) * inch, Most: s.inches * (1 + softSpread) * inch})
	}
	return out
}

// Materials of walls and ceilings, by how they take sound.
const (
	GypsumBoard   = "gypsum board"
	Concrete      = "concrete"
	BlockCoarse   = "concrete block"
	BlockPainted  = "painted concrete block"
	WoodFloor     = "wood on joists"
	CarpetOnFoam  = "carpet on foam"
	HeavyVelour   = "heavy velour"
	CarpetOnSolid = "carpet on concrete"
)

// Materials lists what walls and ceiling may be said to be made of.
func Materials() []string {
	return []string{GypsumBoard, Concrete, BlockCoarse, BlockPainted, WoodFloor}
}
