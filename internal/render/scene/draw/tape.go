package draw

import (
	"math"
	"strings"

	"wideberth/internal/render/scene/wire"
)

const (
	tapeWidth = 0.030 // m
	leastTape = 10    // CSS pixels
	// A tape shorter than this in the picture (CSS pixels) gets the arrows from
	// outside with which draughtsmen mark a short measure.
	shortTape   = 30
	arrowLength = 20
)

// tapeSeen reports whether the play-head has come to the tightest moment, give
// or take half a frame: the page may have rounded the time it seeks to.
func (sc *Scene) tapeSeen() bool {
	t := &sc.show.Tightest
	return t.Label != "" && sc.playHead+0.5 >= float64(t.Time)*float64(sc.show.Rate)
}

// drawTape lays the tape over the picture, from the club to the surface, and
// the plate with the reading.
func (sc *Scene) drawTape() {
	sc.tapePixel, sc.blade, sc.plate = point{-1, -1}, [4]point{}, [2]point{}
	if !sc.tapeSeen() {
		return
	}
	t := &sc.show.Tightest
	from, to := fromShow(t.From), fromShow(t.To)
	x0, y0, d0 := sc.cam.project(from)
	x1, y1, d1 := sc.cam.project(to)
	if min(d0, d1) < nearPlane {
		return
	}
	p, q := point{x0, y0}, point{x1, y1}
	middle := p.lerp(q, 0.5)
	px := sc.cam.pixels(from.lerp(to, 0.5))
	width := max(tapeWidth*px, leastTape*sc.scale)
	sc.blade = stroke(p.lerp(q, -0.03), q.lerp(p, -0.03), width+9*sc.scale)
	sc.drawBand(p, q, width, to.sub(from).norm())
	sc.tapePixel = p.lerp(q, 0.5).add(q.sub(p).unit().side().mul(width * 0.3))
	sc.drawPlate(middle, point{abs(q.x-p.x) / 2, abs(q.y-p.y) / 2}, width)
}

// underTape reports whether tape or plate covers a place of the picture.
func (sc *Scene) underTape(p point) bool {
	if sc.plate[1] != sc.plate[0] && p.x >= sc.plate[0].x && p.x <= sc.plate[1].x && p.y >= sc.plate[0].y && p.y <= sc.plate[1].y {
		return true
	}
	inside := sc.blade[0] != sc.blade[1]
	for i, a := range sc.blade {
		inside = inside && sc.blade[(i+1)%4].sub(a).side().dot(p.sub(a)) <= 0
	}
	return inside
}

// drawBand draws the blade of the tape and its two ends, with ticks counted
// from the surface.
func (sc *Scene) drawBand(p, q point, width, metres float32) {
	along := q.sub(p).unit()
	side := along.side()
	rim := 1.2 * sc.scale
	sc.line(p.sub(along.mul(rim)), q.add(along.mul(rim)), width+2*rim, sc.pal.tapeInk)
	sc.line(p, q, width, sc.pal.tape)

	s := sc.show
	length := q.sub(p).norm()
	if s.Tick > 0 && metres > s.Tick {
		step := tickEvery(s.Major, s.Tick/metres*length/sc.scale, 3)
		for k := step; float32(k)*s.Tick < metres && k < 2000; k += step {
			at := q.lerp(p, float32(k)*s.Tick/metres)
			long := float32(0.42)
			if s.Major > 0 && k%s.Major == 0 {
				long = 0.85
			}
			edge := at.sub(side.mul(width / 2))
			sc.line(edge, edge.add(side.mul(width*long)), sc.scale, sc.pal.tapeInk)
		}
	}
	if length < shortTape*sc.scale {
		sc.arrow(p.sub(along.mul(arrowLength*sc.scale)), p)
		sc.arrow(q.add(along.mul(arrowLength*sc.scale)), q)
	}
	// The hook at the surface and the case's lip at the club.
	for _, end := range [2]point{p, q} {
		out := side.mul(width/2 + 3*sc.scale)
		sc.line(end.sub(out), end.add(out), 2*sc.scale, sc.pal.tapeInk)
	}
}

// arrow points from a to b in ink.
func (sc *Scene) arrow(a, b point) {
	along := b.sub(a).unit()
	side := along.side().mul(4 * sc.scale)
	back := b.sub(along.mul(9 * sc.scale))
	sc.line(a, back, 2*sc.scale, sc.pal.ink)
	v := [3]uint16{}
	for i, p := range [3]point{b, back.add(side), back.sub(side)} {
		v[i] = sc.vertex(p.x, p.y, sc.pal.ink)
	}
	sc.now(v[0], v[1], v[2])
}

// PlateWords are the two lines of the plate of a tape: the reading, and what
// it says in words, so that colour is never the only sign.
func PlateWords(t *wire.Tightest) (reading, words string) {
	between := " to "
	if t.Verdict == wire.Strikes {
		between = " past "
	}
	return t.Label, strings.ToUpper(t.Verdict.String()) + " · " + t.Part + between + t.Surface
}

// Sizes of the plate, CSS pixels.
const (
	plateText    = 23
	plateSmall   = 18
	platePad     = 6
	plateBadge   = 22
	plateDetach  = 20 // from the tape
	plateMargin  = 6  // from the picture's edge
	plateLeast   = 0.80
	plateFullAt  = 620 // picture width from which the plate has its full size
	plateLeader  = 1.4
	plateOutline = 1.5
)

// drawPlate sets the reading on a plate beside the tape, where it covers the
// least of the golfer, with a leader to the tape's middle. half is half the
// extent of the tape, tape its width.
func (sc *Scene) drawPlate(at, half point, tape float32) {
	g, h := sc.glyphs(sc.show.Tightest.Label), sc.glyphs(sc.words)
	if g.Width == 0 {
		return
	}
	k := sc.scale * max(plateLeast, min(sc.width/sc.scale/plateFullAt, 1))
	text := max(g.Width/g.Height*plateText, h.Width/max(1, h.Height)*plateSmall) * k
	size := point{text + (3*platePad+plateBadge)*k, (plateText + plateSmall + 2*platePad + 3) * k}
	corner := sc.placePlate(at, size, half.add(point{1, 1}.mul(tape/2+plateDetach*k)))

	sc.plate = [2]point{corner, corner.add(size)}

	centre := corner.add(size.mul(0.5))
	edge := point{max(corner.x, min(at.x, corner.x+size.x)), max(corner.y, min(at.y, corner.y+size.y))}
	if edge != at {
		start := at.add(edge.sub(at).unit().mul(tape / 2))
		sc.line(start, edge, plateLeader*k, sc.pal.plateInk)
	}
	o := plateOutline * k
	sc.box(corner.sub(point{o, o}), size.add(point{2 * o, 2 * o}), sc.pal.plateInk)
	sc.box(corner, size, sc.pal.plate)
	sc.badge(point{corner.x + (platePad+plateBadge/2)*k, centre.y}, plateBadge/2*k)
	left := corner.x + (2*platePad+plateBadge)*k
	sc.write(point{left, corner.y + platePad*k}, plateText*k, g, sc.pal.plateInk)
	if h.Width > 0 {
		sc.write(point{left, corner.y + (platePad+plateText+3)*k}, plateSmall*k, h, sc.pal.plateInk)
	}
}

// placePlate is the corner for a plate of the given size: of the places round
// the tape, near and farther off, the one that costs least. It does not depend
// on the play-head, so that the plate stays put while the swing plays.
func (sc *Scene) placePlate(at, size, gap point) point {
	margin := plateMargin * sc.scale
	best, cost := point{}, float32(math.Inf(1))
	for far := float32(1); far < 6; far += 1.5 {
		for _, d := range [8]point{{1, -1}, {-1, -1}, {1, 0}, {-1, 0}, {1, 1}, {-1, 1}, {0, -1}, {0, 1}} {
			c := point{at.x + d.x*(gap.x*far+size.x/2) - size.x/2, at.y + d.y*(gap.y*far+size.y/2) - size.y/2}
			c.x = max(margin, min(c.x, sc.width-margin-size.x))
			c.y = max(margin, min(c.y, sc.height-margin-size.y))
			if k := sc.plateCost(at, c, size); k < cost {
				best, cost = c, k
			}
		}
	}
	return best
}

// plateCost weighs a place for the plate, in pixels: the way to the tape, three
// times the side of a square as large as what it covers of the golfer, much for each strike mark and very
// much for the tape itself.
func (sc *Scene) plateCost(at, corner, size point) float32 {
	const perMark, onTape = 40, 1e4
	end := corner.add(size)
	holds := func(p point) bool { return corner.x < p.x && p.x < end.x && corner.y < p.y && p.y < end.y }
	cost := corner.add(size.mul(0.5)).sub(at).norm()
	w := min(end.x, sc.figureHi.x) - max(corner.x, sc.figureLo.x)
	h := min(end.y, sc.figureHi.y) - max(corner.y, sc.figureLo.y)
	if w > 0 && h > 0 {
		cost += 3 * sqrt(w*h)
	}
	for _, p := range sc.markSpots {
		if holds(p) {
			cost += perMark * sc.scale
		}
	}
	for _, p := range sc.blade {
		if holds(p) {
			cost += onTape
		}
	}
	return cost
}

func (sc *Scene) box(p, size point, c Colour) {
	sc.quad([4]point{p, {p.x + size.x, p.y}, p.add(size), {p.x, p.y + size.y}}, c)
}

// badge is the verdict as a shape: a star for strikes, a triangle for tight, a
// disc with a tick for clear.
func (sc *Scene) badge(at point, r float32) {
	switch sc.show.Tightest.Verdict {
	case wire.Strikes:
		sc.flatStar(at, r, r*0.45, starPoints, sc.pal.strike)
	case wire.Tight:
		sc.flatStar(at, r, r*0.5, 3, sc.pal.plateInk)
		sc.flatStar(at, r*0.72, r*0.36, 3, sc.pal.tight)
	default:
		sc.flatStar(at, r*0.9, r*0.9, 12, sc.pal.plateInk)
		w := r * 0.22
		sc.line(at.add(point{-0.45 * r, 0.02 * r}), at.add(point{-0.1 * r, 0.38 * r}), w, sc.pal.plate)
		sc.line(at.add(point{-0.16 * r, 0.36 * r}), at.add(point{0.46 * r, -0.34 * r}), w, sc.pal.plate)
	}
}

// flatStar is a star in the picture with its first ray upwards; with equal
// radii a disc, with half the radius a regular polygon.
func (sc *Scene) flatStar(at point, long, short float32, rays int, c Colour) {
	middle := sc.vertex(at.x, at.y, c)
	var first, last uint16
	for i := range 2 * rays {
		r := long
		if i%2 == 1 {
			r = short
		}
		d := turn(float64(i) / float64(2*rays))
		v := sc.vertex(at.x+r*d.y, at.y-r*d.x, c)
		if i == 0 {
			first = v
		} else {
			sc.now(middle, last, v)
		}
		last = v
	}
	sc.now(middle, last, first)
}
