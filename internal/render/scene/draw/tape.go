package draw

import (
	"wideberth/internal/render/scene/paint"
	"wideberth/internal/render/scene/wire"
)

const (
	tapeWidth = 0.030 // m
	leastTape = 10    // CSS pixels
	// A tape shorter than this in the picture (CSS pixels) gets the arrows from
	// outside with which draughtsmen mark a short measure.
	shortTape   = 30
	arrowLength = 20
	// maxTapeTicks bounds the ticks of a tape.
	maxTapeTicks = 2000
)

// tape is the measuring tape at the tightest moment, with its plate.
type tape struct {
	time     float64 // when it is stretched, frames
	from, to vec     // on the part, on the surface
	tick     float32 // m between two ticks
	major    int     // every how many of them is long
	fray     float32 // m, over which the end at the part is frayed
	plate

	// Where it lies in the picture, drawn or not.
	ends    [2]point
	width   float32
	blade   [4]point // what it covers
	whole   point    // where the whole blade begins; at the surface: nowhere
	inFront bool     // of the viewer

	drawn bool  // in the last picture
	bare  point // a spot of the whole blade without ticks
}

func newTape(s *wire.Recording) tape {
	t := &s.Tightest
	return tape{
		time: float64(t.Time) * float64(s.Rate), from: fromWire(t.From), to: fromWire(t.To),
		tick: s.Tick, major: s.Major, fray: t.Fray, plate: newPlate(t),
	}
}

// shown reports whether the recording has a tape.
func (t *tape) shown() bool { return t.reading != "" }

// stretched reports whether the play-head has come to the tightest moment, give
// or take half a frame: the page may have rounded the time it seeks to.
func (t *tape) stretched(at moment) bool { return t.shown() && at.frames+0.5 >= t.time }

// place finds where tape and plate lie in the picture. It does not depend on the
// play-head, so that the plate stays put while the swing plays.
func (t *tape) place(c *canvas, o obstacles) {
	x0, y0, d0 := c.cam.project(t.from)
	x1, y1, d1 := c.cam.project(t.to)
	t.inFront = min(d0, d1) >= nearPlane
	if !t.shown() || !t.inFront {
		return
	}
	p, q := point{x0, y0}, point{x1, y1}
	t.ends = [2]point{p, q}
	t.width = max(tapeWidth*c.cam.pixels(t.from.Lerp(t.to, 0.5)), leastTape*c.scale)
	t.blade = stroke(p.lerp(q, -0.03), q.lerp(p, -0.03), t.width+9*c.scale)
	t.whole = q
	if metres := t.to.Sub(t.from).Norm(); t.fray < metres {
		t.whole = p.lerp(q, t.fray/metres)
	}
	t.bare = t.whole.lerp(q, 0.5).add(q.sub(p).unit().side().mul(t.width * 0.3))
	o.blade = t.blade
	t.plate.place(c, o, t.ends, t.width)
	if t.plate.size != (point{}) {
		blade := emptyBox()
		for _, corner := range t.blade {
			blade = blade.add(corner, 0)
		}
		c.labels = append(c.labels, blade, boxAt(t.plate.corner, t.plate.size).grown(plateOutline*t.plate.unit))
	}
}

// draw lays the tape over the picture, from the club to the surface, and the
// plate with the reading.
func (t *tape) draw(c *canvas, at moment) {
	t.drawn = t.stretched(at) && t.inFront
	if t.drawn {
		t.drawBand(c)
		t.plate.draw(c)
	}
}

// covers reports whether tape or plate covers a place of the last picture.
func (t *tape) covers(p point) bool {
	if !t.drawn {
		return false
	}
	if t.plate.covers(p) {
		return true
	}
	for i, a := range t.blade {
		if t.blade[(i+1)%4].sub(a).side().dot(p.sub(a)) > 0 {
			return false
		}
	}
	return true
}

// frayed reports whether nothing of the blade is whole.
func (t *tape) frayed() bool { return t.whole == t.ends[1] }

// drawBand draws the blade of the tape from the club to the surface and its two
// ends, with ticks counted from the surface. Near the club it is frayed.
func (t *tape) drawBand(c *canvas) {
	p, q, width := t.ends[0], t.ends[1], t.width
	along := q.sub(p).unit()
	side := along.side()
	rim := 1.2 * c.scale
	c.drawFringe(t.whole, p, width)
	if !t.frayed() {
		c.line(t.whole.sub(along.mul(rim)), q.add(along.mul(rim)), width+2*rim, c.theme.TapeInk)
		c.line(t.whole, q, width, c.theme.Tape)
	}

	length, metres := q.sub(p).norm(), t.to.Sub(t.from).Norm()
	if t.tick > 0 && metres > t.tick {
		step := tickEvery(t.major, t.tick/metres*length/c.scale, 3)
		for k := step; float32(k)*t.tick < metres-t.fray && k < maxTapeTicks; k += step {
			at := q.lerp(p, float32(k)*t.tick/metres)
			long := float32(0.42)
			if t.major > 0 && k%t.major == 0 {
				long = 0.85
			}
			edge := at.sub(side.mul(width / 2))
			c.line(edge, edge.add(side.mul(width*long)), c.scale, c.theme.TapeInk)
		}
	}
	if length < shortTape*c.scale {
		c.arrow(p.sub(along.mul(arrowLength*c.scale)), p)
		c.arrow(q.add(along.mul(arrowLength*c.scale)), q)
	}
	// The hook at the surface.
	out := side.mul(width/2 + 3*c.scale)
	c.line(q.sub(out), q.add(out), 2*c.scale, c.theme.TapeInk)
}

// threads are those of the frayed end: how long each is, as a share of the fray.
var threads = [...]float32{0.78, 1, 0.6, 0.92, 0.7}

// drawFringe draws the threads of the blade that ends at from, out to tip.
func (c *canvas) drawFringe(from, tip point, width float32) {
	side := tip.sub(from).unit().side()
	thick := width / float32(len(threads)+1)
	for _, layer := range [2]struct {
		width  float32
		colour paint.Colour
	}{{thick + 1.6*c.scale, c.theme.TapeInk}, {thick, c.theme.Tape}} {
		for i, share := range threads {
			at := (float32(i) - float32(len(threads)-1)/2) / float32(len(threads)) * width
			end := from.lerp(tip, share).add(side.mul(at * (1 + 0.5*share))) // they spread
			c.line(from.add(side.mul(at)), end, layer.width, layer.colour)
		}
	}
}

// arrow points from a to b in ink.
func (c *canvas) arrow(a, b point) {
	along := b.sub(a).unit()
	side := along.side().mul(4 * c.scale)
	back := b.sub(along.mul(9 * c.scale))
	c.line(a, back, 2*c.scale, c.theme.Ink)
	v := [3]uint16{}
	for i, p := range [3]point{b, back.add(side), back.sub(side)} {
		v[i] = c.Vertex(p.x, p.y, c.theme.Ink)
	}
	c.Now(v[0], v[1], v[2])
}
