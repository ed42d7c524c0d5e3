package draw

import (
	"wideberth/internal/render/scene/paint"
	"wideberth/internal/render/scene/wire"
)

// ribbon is the way of the clubhead through the swing: a strip on the side of the grip,
// with a tick at every inch or centimetre of the way. Where the club is clear of
// everything the ticks stand square, where it is tight they are slanted, and where it
// strikes they are crossed; the colours say the same.
type ribbon struct {
	points []ribbonPoint
	ticks  []ribbonPoint
	tick   float32 // m of way between two ticks
	major  int     // every how many of them is long
	rate   float32 // frames a second
}

// ribbonPoint is one place on the way: when the clubhead was there (frames),
// the unit directions from it towards the grip and along the way, and how the club
// is placed there.
type ribbonPoint struct {
	at, across, along vec
	frame             float32
	number            int // of a tick, from the start
	verdict           wire.Verdict
}

const (
	ribbonStep  = 0.035 // m of way between two points
	ribbonWidth = 0.050 // m
)

// newRibbon walks the way of the clubhead, setting down points and ticks at
// even distances, whatever the speed.
func newRibbon(s *wire.Recording, f *figure) ribbon {
	r := ribbon{tick: s.Tick, major: s.Major, rate: s.Rate}
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
		p.verdict = verdictAt(s, i)
		p.along = p.at.Sub(before.at).Unit()
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

// verdictAt is how near the club is to anything in a frame.
func verdictAt(s *wire.Recording, frame int) wire.Verdict {
	switch club := s.Frames[frame].Club; {
	case club < 0:
		return wire.Strikes
	case club < s.Margin:
		return wire.Tight
	}
	return wire.Clear
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
	return ribbonPoint{at: p.at.Lerp(q.at, t), across: p.across.Lerp(q.across, t).Unit(), along: q.along, frame: p.frame + (q.frame-p.frame)*t, verdict: q.verdict}
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

// The ribbon fades behind the clubhead: after fadeTime (s) it has fadedTo of its ink.
const (
	fadeTime = 0.6
	fadedTo  = 0.30
)

// fresh is how much ink is left of a place that was passed some frames ago.
func fresh(frames, rate float32) float32 {
	return fadedTo + (1-fadedTo)*max(0, 1-max(0, frames)/(fadeTime*rate))
}

// draw queues the ribbon up to the clubhead and, as a fine dashed line,
// the way still to come.
func (r *ribbon) draw(c *canvas, f *figure, at moment) {
	playHead := float32(at.frames)
	inks := [wire.NumVerdicts]verdictInk{
		wire.Clear:   {c.theme.Ribbon, c.theme.RibbonInk},
		wire.Tight:   {c.theme.Tight.Alpha(0.55), c.theme.TapeInk},
		wire.Strikes: {c.theme.Strike.Alpha(0.55), c.theme.StrikeInk},
	}
	n := 0
	for n < len(r.points) && r.points[n].frame <= playHead {
		n++
	}
	if n > 0 {
		for i := range n - 1 {
			r.drawPiece(c, r.points[i], r.points[i+1], &inks, fresh(playHead-r.points[i].frame, r.rate))
		}
		now, _ := f.ribbonEnd()
		now.verdict = r.points[n-1].verdict
		r.drawPiece(c, r.points[n-1], now, &inks, 1)
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
		if t.verdict != wire.Clear {
			step *= 2 // slanted ticks want room
		}
		if t.number%step == 0 {
			ink := inks[t.verdict].ink
			r.drawTick(c, t, ink.Alpha(ink.A*fresh(playHead-t.frame, r.rate)))
		}
	}
}

// verdictInk are the colours of a stretch of the ribbon.
type verdictInk struct{ wash, ink paint.Colour }

// drawTick queues a tick: square to the way, slanted or crossed.
func (r *ribbon) drawTick(c *canvas, t *ribbonPoint, ink paint.Colour) {
	long, width := float32(0.45), float32(1)
	if r.major > 0 && t.number%r.major == 0 {
		long, width = 1.0, 1.6
	}
	if t.verdict == wire.Clear {
		c.strip(t.at, t.at.Along(t.across, ribbonWidth*long), width, ink)
		return
	}
	const slant = 0.7 // along the way, of the ribbon's width
	width = max(width, 1.3)
	rim := t.at.Along(t.across, ribbonWidth)
	back, ahead := -slant/2*ribbonWidth, slant/2*ribbonWidth
	c.strip(t.at.Along(t.along, float32(back)), rim.Along(t.along, float32(ahead)), width, ink)
	if t.verdict == wire.Strikes {
		c.strip(t.at.Along(t.along, float32(ahead)), rim.Along(t.along, float32(back)), width, ink)
	}
}

// drawPiece queues the strip between two places and its rim, with a share of its ink.
func (r *ribbon) drawPiece(c *canvas, p, q ribbonPoint, inks *[wire.NumVerdicts]verdictInk, share float32) {
	corners := [4]vec{p.at, q.at, q.at.Along(q.across, ribbonWidth), p.at.Along(p.across, ribbonWidth)}
	wash, ink := inks[q.verdict].wash, inks[q.verdict].ink
	wash.A *= share
	ink.A *= share
	var v [4]uint16
	depth := float32(0)
	for i, k := range corners {
		x, y, d := c.cam.project(k)
		if d < nearPlane {
			return
		}
		depth += d / 4
		v[i] = c.Vertex(x, y, wash)
	}
	c.Later(v[0], v[1], v[2], depth)
	c.Later(v[0], v[2], v[3], depth)
	// The outer rim in ink.
	x0, y0, _ := c.cam.project(p.at)
	x1, y1, _ := c.cam.project(q.at)
	c.lineAt(point{x0, y0}, point{x1, y1}, 1.2*c.pen, ink, depth-0.005)
}
