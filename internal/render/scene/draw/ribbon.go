package draw

import "wideberth/internal/render/scene/wire"

// ribbon is the way of the clubhead through the swing: a strip that is widest
// towards the grip, with a tick at every inch or centimetre of the way.
type ribbon struct {
	points []ribbonPoint
	ticks  []ribbonPoint
	tick   float32 // m of way between two ticks
	major  int     // every how many of them is long
}

// ribbonPoint is one place on the way: when the clubhead was there (frames),
// and the unit direction from it towards the grip.
type ribbonPoint struct {
	at, across vec
	frame      float32
	number     int // of a tick, from the start
}

const (
	ribbonStep  = 0.035 // m of way between two points
	ribbonWidth = 0.050 // m
)

// newRibbon walks the way of the clubhead, setting down points and ticks at
// even distances, whatever the speed.
func newRibbon(s *wire.Recording, f *figure) ribbon {
	r := ribbon{tick: s.Tick, major: s.Major}
	var before ribbonPoint
	length, nextPoint := float32(0), float32(ribbonStep)
	nextTick := s.Tick
	for i := range s.Frames {
		f.pose(s, momentAt(s, float64(i)))
		p, ok := f.ribbonEnd()
		if !ok {
			return r
		}
		p.frame = float32(i)
		if i == 0 {
			r.points = append(r.points, p)
			before = p
			continue
		}
		d := p.at.Sub(before.at).Norm()
		for length+d >= nextPoint && len(r.points) < maxRibbon {
			r.points = append(r.points, before.between(p, (nextPoint-length)/d))
			nextPoint += ribbonStep
		}
		for s.Tick > 0.002 && length+d >= nextTick && len(r.ticks) < maxRibbon {
			t := before.between(p, (nextTick-length)/d)
			t.number = len(r.ticks) + 1
			r.ticks = append(r.ticks, t)
			nextTick += s.Tick
		}
		length += d
		before = p
	}
	return r
}

// maxRibbon bounds points and ticks each: 90 m of way.
const maxRibbon = 2600

// ribbonEnd is where the clubhead is in the figure's pose; ok is false for a
// figure without parts.
func (f *figure) ribbonEnd() (p ribbonPoint, ok bool) {
	p.at, ok = f.clubhead()
	if f.shaftPart >= 0 {
		s := f.parts[f.shaftPart].Axis
		grip := s.A
		if s.A.Sub(p.at).Norm() < s.B.Sub(p.at).Norm() {
			grip = s.B
		}
		p.across = grip.Sub(p.at).Unit()
	}
	return p, ok
}

func (p ribbonPoint) between(q ribbonPoint, t float32) ribbonPoint {
	return ribbonPoint{at: p.at.Lerp(q.at, t), across: p.across.Lerp(q.across, t).Unit(), frame: p.frame + (q.frame-p.frame)*t}
}

// tickEvery is how many ticks to step so that neighbours stand at least gap
// apart in the picture: a divisor of the long tick's number, so that long ticks
// stay where they are.
func tickEvery(major int, spacing, gap float32) int {
	for k := 1; k < major; k++ {
		if major%k == 0 && float32(k)*spacing >= gap {
			return k
		}
	}
	return max(1, major)
}

// tickGap is the least distance of two ticks in the picture, CSS pixels.
const tickGap = 5

// draw queues the ribbon up to the clubhead and, as a fine dashed line,
// the way still to come.
func (r *ribbon) draw(c *canvas, f *figure, at moment) {
	playHead := float32(at.frames)
	n := 0
	for n < len(r.points) && r.points[n].frame <= playHead {
		n++
	}
	if n > 0 {
		for i := range n - 1 {
			r.drawPiece(c, r.points[i], r.points[i+1])
		}
		now, _ := f.ribbonEnd()
		r.drawPiece(c, r.points[n-1], now)
	}
	for i := n + 1; i < len(r.points); i += 2 {
		c.strip(r.points[i-1].at, r.points[i].at, hiddenWidth, c.theme.RibbonInk.Alpha(0.5))
	}
	for i := range r.ticks {
		t := &r.ticks[i]
		if t.frame > playHead {
			break
		}
		step := tickEvery(r.major, r.tick*c.cam.pixels(t.at)/c.scale, tickGap)
		if t.number%step != 0 {
			continue
		}
		long := float32(0.45)
		width := float32(1)
		if r.major > 0 && t.number%r.major == 0 {
			long, width = 1.0, 1.6
		}
		c.strip(t.at, t.at.Add(t.across.Mul(ribbonWidth*long)), width, c.theme.RibbonInk)
	}
}

// drawPiece queues the strip between two places and its rim.
func (r *ribbon) drawPiece(c *canvas, p, q ribbonPoint) {
	corners := [4]vec{p.at, q.at, q.at.Add(q.across.Mul(ribbonWidth)), p.at.Add(p.across.Mul(ribbonWidth))}
	var v [4]uint16
	depth := float32(0)
	for i, k := range corners {
		x, y, d := c.cam.project(k)
		if d < nearPlane {
			return
		}
		depth += d / 4
		v[i] = c.Vertex(x, y, c.theme.Ribbon)
	}
	c.Later(v[0], v[1], v[2], depth)
	c.Later(v[0], v[2], v[3], depth)
	// The outer rim in ink.
	x0, y0, _ := c.cam.project(p.at)
	x1, y1, _ := c.cam.project(q.at)
	c.lineAt(point{x0, y0}, point{x1, y1}, 1.2*c.pen, c.theme.RibbonInk, depth-0.005)
}
