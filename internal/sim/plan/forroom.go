package plan

import (
	"math"
	"reflect"

	"wideberth/internal/units"
)

// Walls are the three sizes (m) of a bare room: Length along x, Width along y,
// Height from the structural floor to the ceiling.
type Walls struct {
	Length float64 `json:"length"`
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
}

// Walls are the room's sizes.
func (r Room) Walls() Walls { return Walls{r.Length, r.Width, r.Height} }

// ForRoom is everything of a plan but its people that follows from the walls: an
// impact screen, a tee in the middle of the width, a mat, three clubs and a
// margin, for somebody to change. The screen hangs far enough from the front wall
// to give, and leaves a hand's breadth beside it; the ball lies as far short of it
// as a plan that names no tee has it. The sizes are common practice without a
// source, and round in the units of the plan.
func ForRoom(w Walls, system string) Plan {
	step := 0.01
	if system != units.Metric {
		step = units.MetresPerInch
	}
	size := func(metres, inches float64) float64 { return Usual(system, metres, inches) }
	// down is the next whole step that is no more; a wall that was rounded to 0.1 mm
	// is taken for the step it stands for.
	down := func(m float64) float64 { return roundTenthMM(math.Floor((m+fitTolerance)/step) * step) }
	usual := Plan{Units: system}
	mat := usual.defaultMatSide()
	p := Plan{
		Version: Version, Units: system, Margin: usual.defaultMargin(),
		Room:  Room{Length: w.Length, Width: w.Width, Height: w.Height},
		Floor: Floor{Mat: &Mat{Thickness: size(0.04, 1.5), Length: mat, Width: mat}},
		Screen: &Screen{
			X: down(w.Length - size(0.4, 16)), Centre: roundTenthMM(w.Width / 2), Bottom: size(0.05, 2),
			Width:  min(down(w.Width-2*size(0.1, 4)), size(3.6, 144)),
			Height: min(down(w.Height-size(0.05, 2)-size(0.1, 4)), size(2.4, 96)),
		},
		Clubs: []Club{{Name: "driver", Kind: KindDriver}, {Name: "7-iron", Kind: KindIron}, {Name: "pitching wedge", Kind: KindWedge}},
	}
	tee := p.defaultTee()
	tee.X = down(tee.X)
	p.Tees = []Tee{tee}
	return p
}

// Follow moves screen and tee along with the walls for as long as nobody has
// touched them: if they are what ForRoom gives for the walls before, in either kind
// of unit, they become what it gives for the walls now. Anything else of the plan
// stays as it is.
func (p Plan) Follow(before Walls) Plan {
	now := p.Room.Walls()
	if now == before || p.Screen == nil {
		return p
	}
	for _, system := range [...]string{units.Imperial, units.Metric} {
		was := ForRoom(before, system)
		if *p.Screen == *was.Screen && reflect.DeepEqual(p.Tees, was.Tees) {
			fits := ForRoom(now, p.Units)
			p.Screen, p.Tees = fits.Screen, fits.Tees
			return p
		}
	}
	return p
}
