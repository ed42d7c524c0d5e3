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
	angleGap   = 20 // least distance of two angles, CSS pixels
	// angleAlong is where on a ray its angle stands: near the end, where the
	// rays have parted.
	angleAlong = 0.86
)

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

// letterFan letters the angles of the fan, over the picture. An angle that would
// stand on one before it is left out, never the ball's own, which comes last.
func (b *ball) letterFan(c *canvas) {
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
		x, y, d := c.cam.project(fromWire(p[0]).Lerp(fromWire(p[len(p)-1]), angleAlong))
		if d < nearPlane {
			continue
		}
		spot, near := point{x, y}, false
		for _, q := range b.angles {
			near = near || q.sub(spot).norm() < angleGap*c.scale
		}
		if near {
			continue
		}
		b.angles = append(b.angles, spot)
		h := float32(angleText) * c.scale
		w := h * g.Width / g.Height
		corner := point{x - w/2, y - h/2}
		c.box(corner.sub(point{2 * c.scale, 0}), point{w + 4*c.scale, h}, c.theme.Plate.Alpha(0.8))
		c.write(corner, h, g, c.theme.PlateInk)
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
