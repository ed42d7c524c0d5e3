package answer

import (
	"math"
	"strconv"
	"strings"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/say"
)

func (w words) down(m float64) string { return w.gap(m) }
func (w words) near(m float64) string { return plan.LabelShort(max(0, m), w.units) }

// rough writes how high a ball comes back, to a whole inch or centimetre: what
// it rests on is not known any finer.
func (w words) rough(m float64) string {
	step := w.coarse()
	return plan.Label(step*math.Round(max(0, m)/step), w.units)
}

// coarse is a whole inch or centimetre, m.
func (w words) coarse() float64 {
	if w.units == plan.UnitsMetric {
		return 0.01
	}
	return 0.0254
}

// up rounds a length up to the next 1/8 in or mm.
func (w words) up(m float64) string {
	return strings.TrimPrefix(plan.LabelDown(-max(0, m), w.units), minus)
}

func (w words) speedUp(v float64) string {
	n, unit := w.speedIn(v)
	return say.Sprintf("%.0f", ceil(n)) + unit
}

func (w words) speedDown(v float64) string {
	n, unit := w.speedIn(v)
	return say.Sprintf("%.0f", floor(n)) + unit
}

// speedIn is a speed in the plan's unit, and its name.
func (w words) speedIn(v float64) (float64, string) {
	if w.units == plan.UnitsMetric {
		return v, " m/s"
	}
	return v * plan.MphPerMetrePerSecond, " mph"
}

// shareUp, shareDown and shareNear write a share in percent, to a tenth.
func shareUp(s float64) string   { return percentTenths(ceil(1000 * s)) }
func shareDown(s float64) string { return percentTenths(floor(1000 * s)) }
func shareNear(s float64) string { return percentTenths(math.Round(1000 * s)) }

func percentTenths(tenths float64) string {
	return strconv.FormatFloat(tenths/10, 'f', -1, 64) + " %"
}

// floor and ceil forgive what arithmetic leaves over.
func floor(v float64) float64 { return math.Floor(v + 1e-9) }
func ceil(v float64) float64  { return math.Ceil(v-1e-9) + 0 } // + 0 turns -0 into 0

// sizeDown and sizeUp write a place in a room, to a whole inch or centimetre: a
// pad is not cut finer.
func (w words) sizeDown(m float64) string {
	return plan.Label(w.coarse()*floor(max(0, m)/w.coarse()), w.units)
}

func (w words) sizeUp(m float64) string {
	return plan.Label(w.coarse()*ceil(max(0, m)/w.coarse()), w.units)
}
