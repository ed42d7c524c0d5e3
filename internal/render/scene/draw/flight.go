package draw

import "wideberth/internal/render/scene/wire"

const (
	trailWidth = 2.2 // CSS pixels
	fanWidth   = 0.8
	ringWidth  = 1.8
	ringRadius = 0.055 // m, of the mark where the ball met something first
	ringSides  = 20
	leastRing  = 7  // CSS pixels
	angleText  = 14 // height of an angle's lettering, CSS pixels
	labelGap   = 4  // between two labels, CSS pixels
)

// angleAlong is where on a ray its angle may stand: near the end, where the rays have
// parted.
var angleAlong = [...]float32{0.86, 0.72}

// drawFan queues the rays of the fan of launch angles, where they can be read.
func (b *ball) drawFan(c *canvas) {
	if !b.flies() || !b.fanOpen(c) {
		return
	}
	for i := range b.flight.Fan {
		p := b.flight.Fan[i].Points
		for k := 1; k < len(p); k++ {
			c.strip(fromWire(p[k-1]), fromWire(p[k]), fanWidth, c.theme.Hidden)
		}
	}
}

// fanOpen reports whether the fan is seen open enough to be read: from behind it
// is a bundle of lines on one another.
func (b *ball) fanOpen(c *canvas) bool {
	const least = 0.25 // sine of the slant at which it is seen
	fan := b.flight.Fan
	if len(fan) < 2 {
		return false
	}
	low, high := fan[0].Points, fan[len(fan)-2].Points
	if len(low) < 2 || len(high) < 2 {
		return false
	}
	from := fromWire(low[0])
	normal := fromWire(low[len(low)-1]).Sub(from).Cross(fromWire(high[len(high)-1]).Sub(from)).Unit()
	return abs(normal.Dot(from.Sub(c.cam.eye).Unit())) >= least
}

// lettering is where a text stands in the picture.
type lettering struct {
	box
	text Glyphs
}

// placeFan finds where the angles of the fan are lettered: near the ends of their
// rays, where nothing else is, the ball's own first. What finds no place is left out.
func (b *ball) placeFan(c *canvas) {
	b.angles = b.angles[:0]
	if !b.flies() || !b.fanOpen(c) {
		return
	}
	fan := b.flight.Fan
	for i := len(fan) - 1; i >= 0; i-- {
		g, p := c.texts[fan[i].Label], fan[i].Points
		if g.Width == 0 || len(p) < 2 {
			continue
		}
		h := float32(angleText) * c.scale
		size := point{h*g.Width/g.Height + 4*c.scale, h}
		for _, along := range angleAlong {
			x, y, d := c.cam.project(fromWire(p[0]).Lerp(fromWire(p[len(p)-1]), along))
			if d < nearPlane {
				continue
			}
			place := boxAt(point{x - size.x/2, y - size.y/2}, size)
			if c.claim(place, labelGap*c.scale) {
				b.angles = append(b.angles, lettering{place, g})
				break
			}
		}
	}
}

// letterFan letters the angles over the picture.
func (b *ball) letterFan(c *canvas) {
	for i := range b.angles {
		a := &b.angles[i]
		c.box(a.lo, a.hi.sub(a.lo), c.theme.Plate.Alpha(0.8))
		c.write(point{a.lo.x + 2*c.scale, a.lo.y}, a.hi.y-a.lo.y, a.text, c.theme.PlateInk)
	}
}

// drawFlight queues the trail up to the ball and a ring of ink at everything it
// has met.
func (b *ball) drawFlight(c *canvas, at moment) {
	if !b.flies() {
		return
	}
	f := b.flight
	t := float32(at.time)
	first := float32(-1)
	if len(f.Touches) > 0 {
		first = f.Touches[0].Time
	}
	for i := 1; i < len(f.Trail) && f.Trail[i-1].Time < t; i++ {
		from, to := f.Trail[i-1], f.Trail[i]
		end := fromWire(to.At)
		if to.Time > t {
			end = b.at
		}
		c.trailPiece(fromWire(from.At), end, first >= 0 && from.Time >= first)
	}
	for i := range f.Touches {
		if f.Touches[i].Time <= t {
			c.drawRing(&f.Touches[i], i == 0)
		}
	}
}

// trailPiece is a stretch of the trail: a full line on the way there, a finer
// one, broken, on the way back.
func (c *canvas) trailPiece(a, b vec, back bool) {
	n := cells(a.Sub(b).Norm())
	for i := range n {
		p, q := a.Lerp(b, float32(i)/float32(n)), a.Lerp(b, float32(i+1)/float32(n))
		if back {
			c.strip(p, p.Lerp(q, 0.55), trailWidth*0.7, c.theme.Ink)
		} else {
			c.strip(p, q, trailWidth, c.theme.Ink)
		}
	}
}

// drawRing marks where the ball met a surface.
func (c *canvas) drawRing(t *wire.Touch, first bool) {
	at, normal := fromWire(t.At), fromWire(t.Normal).Unit()
	if normal == (vec{}) || c.cam.depth(at) < nearPlane {
		return
	}
	least, r := float32(leastRing)*c.scale/c.cam.pixels(at), float32(ringRadius)
	if !first {
		least, r = least/2, r/2
	}
	r = max(r, least)
	u, v := perpendiculars(facing(normal, c.cam.eye.Sub(at).Unit()))
	at = at.Add(normal.Mul(0.01))
	depth := c.cam.depth(at) - markLift // before the cloth that it is on
	var before point
	for i := range ringSides + 1 {
		d := turn(float64(i) / ringSides)
		x, y, near := c.cam.project(at.Add(u.Mul(r * d.x)).Add(v.Mul(r * d.y)))
		if near < nearPlane {
			return
		}
		if i > 0 {
			c.lineAt(before, point{x, y}, ringWidth*c.pen, c.theme.Ink, depth)
		}
		before = point{x, y}
	}
}
