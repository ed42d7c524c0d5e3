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

// ShowBall says whether the ball's flight and its fan are drawn; they are to
// begin with.
func (sc *Scene) ShowBall(on bool) { sc.noFlight = !on }

// BallShown reports whether the show has a flight and it is drawn.
func (sc *Scene) BallShown() bool { return !sc.noFlight && len(sc.show.Flight.Trail) > 0 }

// time is where the play-head stands, s.
func (sc *Scene) time() float64 {
	if sc.show.Rate <= 0 {
		return 0
	}
	return sc.playHead / float64(sc.show.Rate)
}

// moveBall puts the ball where it is at the play-head.
func (sc *Scene) moveBall() {
	if sc.BallShown() {
		sc.ball = fromShow(sc.show.BallAt(sc.time()))
	} else {
		sc.ball = fromShow(sc.show.Ball)
	}
}

// drawFlight queues the fan of launch angles, the trail up to the play-head and
// a ring of ink at everything the ball has met.
func (sc *Scene) drawFlight() {
	if !sc.BallShown() {
		return
	}
	f := &sc.show.Flight
	for i := range f.Fan {
		if !sc.fanOpen() {
			break
		}
		p := f.Fan[i].Points
		for k := 1; k < len(p); k++ {
			sc.strip(fromShow(p[k-1]), fromShow(p[k]), fanWidth, sc.pal.hidden)
		}
	}
	t := float32(sc.time())
	first := float32(-1)
	if len(f.Touches) > 0 {
		first = f.Touches[0].Time
	}
	for i := 1; i < len(f.Trail) && f.Trail[i-1].Time < t; i++ {
		a, b := f.Trail[i-1], f.Trail[i]
		end := fromShow(b.At)
		if b.Time > t {
			end = sc.ball
		}
		sc.trailPiece(fromShow(a.At), end, first >= 0 && a.Time >= first)
	}
	for i := range f.Touches {
		if f.Touches[i].Time <= t {
			sc.drawRing(&f.Touches[i], i == 0)
		}
	}
}

// fanOpen reports whether the fan is seen open enough to be read: from behind it
// is a bundle of lines on one another.
func (sc *Scene) fanOpen() bool {
	const least = 0.25 // sine of the slant at which it is seen
	fan := sc.show.Flight.Fan
	if len(fan) < 2 {
		return false
	}
	low, high := fan[0].Points, fan[len(fan)-2].Points
	if len(low) < 2 || len(high) < 2 {
		return false
	}
	from := fromShow(low[0])
	normal := fromShow(low[len(low)-1]).sub(from).cross(fromShow(high[len(high)-1]).sub(from)).unit()
	return abs(normal.dot(from.sub(sc.cam.eye).unit())) >= least
}

// trailPiece is a stretch of the trail: a full line on the way there, a finer
// one, broken, on the way back.
func (sc *Scene) trailPiece(a, b vec, back bool) {
	n := cells(a.sub(b).norm())
	for i := range n {
		p, q := a.lerp(b, float32(i)/float32(n)), a.lerp(b, float32(i+1)/float32(n))
		if back {
			sc.strip(p, p.lerp(q, 0.55), trailWidth*0.7, sc.pal.ink)
		} else {
			sc.strip(p, q, trailWidth, sc.pal.ink)
		}
	}
}

// drawRing marks where the ball met a surface.
func (sc *Scene) drawRing(t *wire.Touch, first bool) {
	at, normal := fromShow(t.At), fromShow(t.Normal).unit()
	if normal == (vec{}) || sc.cam.depth(at) < nearPlane {
		return
	}
	least, r := float32(leastRing)*sc.scale/sc.cam.pixels(at), float32(ringRadius)
	if !first {
		least, r = least/2, r/2
	}
	r = max(r, least)
	u, v := perpendiculars(facing(normal, sc.cam.eye.sub(at).unit()))
	at = at.add(normal.mul(0.01))
	depth := sc.cam.depth(at) - markLift // before the cloth that it is on
	var before point
	for i := range ringSides + 1 {
		d := turn(float64(i) / ringSides)
		x, y, near := sc.cam.project(at.add(u.mul(r * d.x)).add(v.mul(r * d.y)))
		if near < nearPlane {
			return
		}
		if i > 0 {
			sc.lineAt(before, point{x, y}, ringWidth*sc.pen, sc.pal.ink, depth)
		}
		before = point{x, y}
	}
}

// drawAngles letters the fan, over the picture. An angle that would stand on
// the one before it is left out, never the ball's own, which comes last.
func (sc *Scene) drawAngles() {
	if !sc.BallShown() || !sc.fanOpen() {
		return
	}
	fan := sc.show.Flight.Fan
	sc.angles = sc.angles[:0]
	for i := len(fan) - 1; i >= 0; i-- {
		g, p := sc.glyphs(fan[i].Label), fan[i].Points
		if g.Width == 0 || len(p) < 2 {
			continue
		}
		x, y, d := sc.cam.project(fromShow(p[0]).lerp(fromShow(p[len(p)-1]), angleAlong))
		if d < nearPlane {
			continue
		}
		spot, near := point{x, y}, false
		for _, q := range sc.angles {
			near = near || q.sub(spot).norm() < angleGap*sc.scale
		}
		if near {
			continue
		}
		sc.angles = append(sc.angles, spot)
		h := float32(angleText) * sc.scale
		w := h * g.Width / g.Height
		corner := point{x - w/2, y - h/2}
		sc.box(corner.sub(point{2 * sc.scale, 0}), point{w + 4*sc.scale, h}, sc.pal.plate.alpha(0.8))
		sc.write(corner, h, g, sc.pal.plateInk)
	}
}
