package modeltable

import (
	"cmp"
	"slices"
	"strconv"
)

// pen writes the path data of an SVG in whole units, each point from the one
// before: a third of the length of places.
type pen struct {
	out []byte
	at  [2]int
}

// line moves to the first point and draws to the others; a point twice is once.
func (d *pen) line(points [][2]int) {
	for i, p := range points {
		if i == 0 {
			d.to('m', p)
			d.out = append(d.out, 'l')
		} else if p != d.at {
			d.to(0, p)
		}
	}
}

// close goes back to where the line began.
func (d *pen) close() { d.out = append(d.out, 'z') }

func (d *pen) to(letter byte, p [2]int) {
	if letter != 0 {
		// Places, not steps: where a closed line ends depends on how it is closed.
		d.out, d.at = append(d.out, letter-'a'+'A'), [2]int{}
	}
	for i := range p {
		d.number(p[i] - d.at[i])
	}
	d.at = p
}

// number puts a blank only where the numbers would run together.
func (d *pen) number(n int) {
	if len(d.out) > 0 && n >= 0 {
		if c := d.out[len(d.out)-1]; c >= '0' && c <= '9' {
			d.out = append(d.out, ' ')
		}
	}
	d.out = strconv.AppendInt(d.out, int64(n), 10)
}

func (d *pen) String() string { return string(d.out) }

// hull returns the corners of the least convex outline about the points, all
// outlines turning the same way (A. M. Andrew 1979, monotone chains).
func hull(points [][2]int) [][2]int {
	slices.SortFunc(points, func(a, b [2]int) int {
		return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1]))
	})
	points = slices.Compact(points)
	if len(points) < 3 {
		return points
	}
	chain := func(out [][2]int, p [2]int, keep int) [][2]int {
		for len(out) > keep {
			a, b := out[len(out)-2], out[len(out)-1]
			if (b[0]-a[0])*(p[1]-a[1])-(b[1]-a[1])*(p[0]-a[0]) > 0 {
				break
			}
			out = out[:len(out)-1]
		}
		return append(out, p)
	}
	var out [][2]int
	for _, p := range points {
		out = chain(out, p, 1)
	}
	lower := len(out)
	for _, p := range slices.Backward(points[:len(points)-1]) {
		out = chain(out, p, lower)
	}
	return out[:len(out)-1]
}
