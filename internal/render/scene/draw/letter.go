package draw

import (
	"slices"

	"wideberth/internal/render/scene/paint"
)

// Text is one string that the picture letters, for the caller to draw once into
// its atlas.
type Text struct {
	String string
	Bold   bool
	Most   float32 // of its width, in its heights; a longer one ends in an ellipsis
}

// The widest a text may get, in its heights: a name on a wall, and a line of the
// plate, which must fit a phone.
const (
	mostName = 9
	mostLine = 20
)

// claim takes a box of the picture for a label, unless it goes out of the picture or
// another label has part of it, give or take a gap (pixels).
func (c *canvas) claim(b box, gap float32) bool {
	if !b.inside(boxAt(point{}, point{c.width, c.height})) {
		return false
	}
	for _, other := range c.labels {
		if other.grown(gap).common(b) > 0 {
			return false
		}
	}
	c.labels = append(c.labels, b)
	return true
}

// Glyphs is where a text lies in the atlas, pixels; Width 0 means that it is
// not there and is left out. Baseline is not needed: a text fills its height.
type Glyphs struct{ U, V, Width, Height float32 }

// letterSize is the height of lettering on a wall, m, and letterInset its
// distance from the wall's corner.
const (
	letterSize  = 0.17
	letterInset = 0.14
	leastLetter = 10   // CSS pixels; smaller lettering is left out
	mostLetter  = 28   // CSS pixels
	leastSlant  = 0.42 // how far lettering may be squeezed by the slant of its wall
)

// letter letters a face's name on it, upright for the viewer and in the
// face's plane, unless another face of that name has it already.
func (m *room) letter(c *canvas, f *face, queued bool) {
	if !slices.Contains(m.named, f.name) && f.letter(c, queued) {
		m.named = append(m.named, f.name)
	}
}

func (f *face) letter(c *canvas, queued bool) bool {
	g := c.texts[f.name]
	if g.Width == 0 {
		return false
	}
	up := xyz(0, 0, 1)
	if abs(f.normal.Z) > 0.8 {
		up = levelAxis(c.cam.up)
	}
	normal, d := f.normal, f.d
	if normal.Dot(c.cam.eye) < d { // the back of a cloth
		normal, d = normal.Mul(-1), -d
	}
	up = up.Sub(normal.Mul(up.Dot(normal))).Unit()
	right := up.Cross(normal)
	r0, r1 := extent(f.polygon, right)
	u0, u1 := extent(f.polygon, up)

	size := min(letterSize, mostLetter*c.scale/c.cam.pixels(f.centre))
	inset := float32(letterInset)
	if queued {
		size = min(size, 0.6*(u1-u0))
		inset = 0.2 * size
	}
	width := size * g.Width / g.Height
	if width > r1-r0-2*inset || size > u1-u0 {
		return false
	}
	for _, k := range [4]point{{r0 + inset, u1 - inset - size}, {r1 - inset - width, u1 - inset - size}, {r0 + inset, u0 + inset}, {r1 - inset - width, u0 + inset}} {
		at := right.Mul(k.x).Add(up.Mul(k.y)).Add(normal.Mul(d))
		if f.holds(at) && f.holds(at.Add(right.Mul(width))) && f.holds(at.Add(up.Mul(size))) && f.holds(at.Add(right.Mul(width)).Add(up.Mul(size))) {
			if !c.legible(at, right.Mul(width), up.Mul(size), g) {
				return false // a corner that is nearer would do, but looks forced
			}
			if c.letter(at, right.Mul(width), up.Mul(size), g, c.theme.Lettering, queued) {
				return true
			}
		}
	}
	return false
}

// levelAxis is the room axis in the floor that runs most nearly along v.
func levelAxis(v vec) vec {
	switch {
	case abs(v.X) >= abs(v.Y) && v.X >= 0:
		return xyz(1, 0, 0)
	case abs(v.X) >= abs(v.Y):
		return xyz(-1, 0, 0)
	case v.Y >= 0:
		return xyz(0, 1, 0)
	}
	return xyz(0, -1, 0)
}

// holds reports whether a point of the face's plane lies inside the polygon.
func (f *face) holds(p vec) bool {
	for i, a := range f.polygon {
		if f.polygon[(i+1)%len(f.polygon)].Sub(a).Cross(p.Sub(a)).Dot(f.normal) < 0 {
			return false
		}
	}
	return true
}

// letterPieces is how many pieces a line of lettering is laid in, which bends
// it to the perspective.
const letterPieces = 6

// legible reports whether a line of lettering is large enough and not too slanted.
func (c *canvas) legible(at, width, height vec, g Glyphs) bool {
	x0, y0, d0 := c.cam.project(at)
	x1, y1, d1 := c.cam.project(at.Add(height))
	x2, y2, d2 := c.cam.project(at.Add(width))
	tall, long := (point{x1 - x0, y1 - y0}).norm(), (point{x2 - x0, y2 - y0}).norm()
	return min(d0, d1, d2) >= nearPlane && tall >= leastLetter*c.scale &&
		long*g.Height >= leastSlant*tall*g.Width && tall*g.Width >= leastSlant*long*g.Height
}

// letter lays a line of lettering into the room, from its lower left corner, and
// reports whether it could: it may be in the way of another, or of the golfer.
func (c *canvas) letter(at, width, height vec, g Glyphs, colour paint.Colour, queued bool) bool {
	x0, y0, d0 := c.cam.project(at)
	x1, y1, _ := c.cam.project(at.Add(height))
	x2, y2, _ := c.cam.project(at.Add(width))
	place := emptyBox().add(point{x0, y0}, 0).add(point{x1, y1}, 0).add(point{x2, y2}, 0)
	x3, y3, _ := c.cam.project(at.Add(width).Add(height))
	place = place.add(point{x3, y3}, 0)
	if d0 < c.golferDepth && place.common(c.golfer) > 0 { // a name before the golfer would be written on them
		return false
	}
	if !c.claim(place, 0) {
		return false
	}
	var low, high uint16
	for i := range letterPieces + 1 {
		t := float32(i) / letterPieces
		p := at.Add(width.Mul(t))
		x0, y0, d := c.cam.project(p)
		x1, y1, _ := c.cam.project(p.Add(height))
		u := g.U + g.Width*t
		l := c.Textured(x0, y0, u, g.V+g.Height, colour)
		h := c.Textured(x1, y1, u, g.V, colour)
		if i > 0 && queued {
			c.Later(low, high, l, d-edgeLift)
			c.Later(high, l, h, d-edgeLift)
		} else if i > 0 {
			c.Now(low, high, l)
			c.Now(high, l, h)
		}
		low, high = l, h
	}
	return true
}

// write lays a line of text down at once, upright in the picture, its top left
// corner at p and its height as given.
func (c *canvas) write(p point, height float32, g Glyphs, colour paint.Colour) {
	v := c.textCorners(p, height, g, colour)
	c.Now(v[0], v[1], v[2])
	c.Now(v[0], v[2], v[3])
}

// writeAt queues a line of text at a depth.
func (c *canvas) writeAt(p point, height float32, g Glyphs, colour paint.Colour, depth float32) {
	v := c.textCorners(p, height, g, colour)
	c.Later(v[0], v[1], v[2], depth)
	c.Later(v[0], v[2], v[3], depth)
}

func (c *canvas) textCorners(p point, height float32, g Glyphs, colour paint.Colour) (v [4]uint16) {
	w := height * g.Width / g.Height
	for i, k := range [4]point{{0, 0}, {1, 0}, {1, 1}, {0, 1}} {
		v[i] = c.Textured(p.x+k.x*w, p.y+k.y*height, g.U+k.x*g.Width, g.V+k.y*g.Height, colour)
	}
	return v
}
