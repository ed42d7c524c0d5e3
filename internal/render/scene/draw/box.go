package draw

import "math"

// box is an upright rectangle in the picture, pixels.
type box struct{ lo, hi point }

// emptyBox holds nothing; add makes it grow.
func emptyBox() box {
	inf := float32(math.Inf(1))
	return box{point{inf, inf}, point{-inf, -inf}}
}

// boxAt is the box of a size at its top left corner.
func boxAt(corner, size point) box { return box{corner, corner.add(size)} }

// add is the box grown to hold a disc.
func (b box) add(p point, r float32) box {
	return box{point{min(b.lo.x, p.x-r), min(b.lo.y, p.y-r)}, point{max(b.hi.x, p.x+r), max(b.hi.y, p.y+r)}}
}

// grown is the box with a margin.
func (b box) grown(by float32) box {
	return box{b.lo.sub(point{by, by}), b.hi.add(point{by, by})}
}

// common is the area that two boxes share, square pixels.
func (b box) common(o box) float32 {
	w, h := min(b.hi.x, o.hi.x)-max(b.lo.x, o.lo.x), min(b.hi.y, o.hi.y)-max(b.lo.y, o.lo.y)
	if w <= 0 || h <= 0 {
		return 0
	}
	return w * h
}

// holds reports whether a point lies inside.
func (b box) holds(p point) bool {
	return b.lo.x < p.x && p.x < b.hi.x && b.lo.y < p.y && p.y < b.hi.y
}

// inside reports whether the box lies wholly in another.
func (b box) inside(o box) bool {
	return b.lo.x >= o.lo.x && b.lo.y >= o.lo.y && b.hi.x <= o.hi.x && b.hi.y <= o.hi.y
}
