// Package floor lays a floor: stacks of layers that meet the mat, panels and turf
// over the area with their seams and offcuts, and the putts that cross none.
package floor

// Rect is a rectangle of the floor, room frame, m.
type Rect struct {
	X0 float64 `json:"x0"`
	Y0 float64 `json:"y0"`
	X1 float64 `json:"x1"`
	Y1 float64 `json:"y1"`
}

// Area is its area, m².
func (r Rect) Area() float64 { return max(0, r.X1-r.X0) * max(0, r.Y1-r.Y0) }

func (r Rect) empty() bool { return r.X1-r.X0 <= tiny || r.Y1-r.Y0 <= tiny }

// tiny (m) is what no saw can cut: a hundredth of a millimetre.
const tiny = 1e-5

func (r Rect) meet(o Rect) Rect {
	return Rect{max(r.X0, o.X0), max(r.Y0, o.Y0), min(r.X1, o.X1), min(r.Y1, o.Y1)}
}

// turned swaps the axes.
func (r Rect) turned() Rect { return Rect{r.Y0, r.X0, r.Y1, r.X1} }

// without returns what is left of a rectangle less others, as rectangles that do
// not overlap.
func (r Rect) without(cut []Rect) []Rect {
	left := []Rect{r}
	for _, c := range cut {
		var next []Rect
		for _, a := range left {
			m := a.meet(c)
			if m.empty() {
				next = append(next, a)
				continue
			}
			for _, b := range [4]Rect{
				{a.X0, a.Y0, m.X0, a.Y1}, {m.X1, a.Y0, a.X1, a.Y1},
				{m.X0, a.Y0, m.X1, m.Y0}, {m.X0, m.Y1, m.X1, a.Y1},
			} {
				if !b.empty() {
					next = append(next, b)
				}
			}
		}
		left = next
	}
	return left
}

// around is the smallest rectangle around all, which are not none.
func around(all []Rect) Rect {
	out := all[0]
	for _, r := range all[1:] {
		out = Rect{min(out.X0, r.X0), min(out.Y0, r.Y0), max(out.X1, r.X1), max(out.Y1, r.Y1)}
	}
	return out
}

func areaOf(all []Rect) (sum float64) {
	for _, r := range all {
		sum += r.Area()
	}
	return sum
}
