package words

import (
	"math"
	"strconv"
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/units"
)

func (w Words) Down(m float64) string { return w.Gap(m) }
func (w Words) Near(m float64) string { return units.LabelShort(max(0, m), w.Units) }

// Rough writes how high a ball comes back, to a whole inch or centimetre: what
// it rests on is not known any finer.
func (w Words) Rough(m float64) string {
	step := w.coarse()
	return units.Label(step*math.Round(max(0, m)/step), w.Units)
}

// coarse is a whole inch or centimetre, m.
func (w Words) coarse() float64 {
	if w.Units == units.Metric {
		return 0.01
	}
	return 0.0254
}

// Up rounds a length up to the next 1/8 in or mm.
func (w Words) Up(m float64) string {
	return strings.TrimPrefix(units.LabelDown(-max(0, m), w.Units), Minus)
}

func (w Words) SpeedUp(v float64) string {
	n, unit := w.speedIn(v)
	return fmt.Sprintf("%.0f", Ceil(n)) + unit
}

func (w Words) SpeedDown(v float64) string {
	n, unit := w.speedIn(v)
	return fmt.Sprintf("%.0f", Floor(n)) + unit
}

// speedIn is a speed in the plan's unit, and its name.
func (w Words) speedIn(v float64) (float64, string) {
	if w.Units == units.Metric {
		return v, " m/s"
	}
	return v * units.MphPerMetrePerSecond, " mph"
}

// shareUp, shareDown and shareNear write a share in percent, to a tenth.
func ShareUp(s float64) string   { return percentTenths(Ceil(1000 * s)) }
func ShareDown(s float64) string { return percentTenths(Floor(1000 * s)) }
func ShareNear(s float64) string { return percentTenths(math.Round(1000 * s)) }

func percentTenths(tenths float64) string {
	return strconv.FormatFloat(tenths/10, 'f', -1, 64) + " %"
}

// Floor and ceil forgive what arithmetic leaves over.
func Floor(v float64) float64 { return math.Floor(v + 1e-9) }
func Ceil(v float64) float64  { return math.Ceil(v-1e-9) + 0 } // + 0 turns -0 into 0

// SizeDown and sizeUp write a place in a room, to a whole inch or centimetre: a
// pad is not cut finer.
func (w Words) SizeDown(m float64) string {
	return units.Label(w.coarse()*Floor(max(0, m)/w.coarse()), w.Units)
}

func (w Words) SizeUp(m float64) string {
	return units.Label(w.coarse()*Ceil(max(0, m)/w.coarse()), w.Units)
}
