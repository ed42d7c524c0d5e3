package draw

import "wideberth/internal/render/scene/wire"

// ribbon is the way of the clubhead through the swing: a strip that is widest
// towards the grip, with a tick at every inch or centimetre of the way.
type ribbon struct {
	points []ribbonPoint
	ticks  []ribbonPoint
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
func newRibbon(s *wire.Recording) ribbon {
	var r ribbon
	head := s.PartIndex("clubhead")
	if head < 0 {
		head = len(s.Parts) - 1
	}
	if head < 0 || len(s.Frames) == 0 {
		return r
	}
	shaftPart := s.PartIndex("shaft")
	var before ribbonPoint
	length, nextPoint := float32(0), float32(ribbonStep)
	nextTick := s.Tick
	for i := range s.Frames {
		p := ribbonPointAt(&s.Frames[i], head, shaftPart, float32(i))
		if i == 0 {
			r.points = append(r.points, p)
			before = p
			continue
		}
		d := p.at.sub(before.at).norm()
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

func ribbonPointAt(f *wire.Frame, head, shaft int, frame float32) ribbonPoint {
	h := f.Pose[head]
	p := ribbonPoint{at: fromShow(h.A).lerp(fromShow(h.B), 0.5), frame: frame}
	if shaft >= 0 {
		a, b := fromShow(f.Pose[shaft].A), fromShow(f.Pose[shaft].B)
		if a.sub(p.at).norm() < b.sub(p.at).norm() {
			a = b
		}
		p.across = a.sub(p.at).unit()
	}
	return p
}

func (p ribbonPoint) between(q ribbonPoint, t float32) ribbonPoint {
	return ribbonPoint{at: p.at.lerp(q.at, t), across: p.across.lerp(q.across, t).unit(), frame: p.frame + (q.frame-p.frame)*t}
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

// drawRibbon queues the ribbon up to the play-head and, as a fine dashed line,
// the way still to come.
func (sc *Scene) drawRibbon(playHead float32) {
	r := &sc.ribbon
	n := 0
	for n < len(r.points) && r.points[n].frame <= playHead {
		n++
	}
	if n > 0 {
		for i := range n - 1 {
			sc.ribbonQuad(r.points[i], r.points[i+1])
		}
		now := ribbonPointAt(&sc.show.Frames[sc.frame], sc.headPart, sc.shaftPart, playHead)
		if sc.headPart >= 0 {
			seg := sc.pose[sc.headPart]
			now.at = seg.a.lerp(seg.b, 0.5)
		}
		sc.ribbonQuad(r.points[n-1], now)
	}
	for i := n + 1; i < len(r.points); i += 2 {
		sc.strip(r.points[i-1].at, r.points[i].at, hiddenWidth, sc.pal.ribbonInk.alpha(0.5))
	}
	for i := range r.ticks {
		t := &r.ticks[i]
		if t.frame > playHead {
			break
		}
		step := tickEvery(sc.show.Major, sc.show.Tick*sc.cam.pixels(t.at)/sc.scale, tickGap)
		if t.number%step != 0 {
			continue
		}
		long := float32(0.45)
		width := float32(1)
		if sc.show.Major > 0 && t.number%sc.show.Major == 0 {
			long, width = 1.0, 1.6
		}
		sc.strip(t.at, t.at.add(t.across.mul(ribbonWidth*long)), width, sc.pal.ribbonInk)
	}
}

// strip queues a line between two places of the room.
func (sc *Scene) strip(a, b vec, width float32, c Colour) {
	x0, y0, d0 := sc.cam.project(a)
	x1, y1, d1 := sc.cam.project(b)
	if d0 < nearPlane || d1 < nearPlane {
		return
	}
	sc.lineAt(point{x0, y0}, point{x1, y1}, width*sc.pen, c, (d0+d1)/2-0.01)
}

func (sc *Scene) ribbonQuad(p, q ribbonPoint) {
	corners := [4]vec{p.at, q.at, q.at.add(q.across.mul(ribbonWidth)), p.at.add(p.across.mul(ribbonWidth))}
	var v [4]uint16
	depth := float32(0)
	for i, c := range corners {
		x, y, d := sc.cam.project(c)
		if d < nearPlane {
			return
		}
		depth += d / 4
		v[i] = sc.vertex(x, y, sc.pal.ribbon)
	}
	sc.later(v[0], v[1], v[2], depth)
	sc.later(v[0], v[2], v[3], depth)
	// The outer rim in ink.
	x0, y0, _ := sc.cam.project(p.at)
	x1, y1, _ := sc.cam.project(q.at)
	sc.lineAt(point{x0, y0}, point{x1, y1}, 1.2*sc.pen, sc.pal.ribbonInk, depth-0.005)
}
