package draw

import (
	"math"
	"strings"

	"wideberth/internal/render/scene/paint"
	"wideberth/internal/render/scene/wire"
)

// plate says the tape's reading, and what it means in words, beside the tape.
type plate struct {
	reading, words string
	verdict        wire.Verdict

	// Where it lies in the picture.
	corner, size point
	tapeMiddle   point
	tapeWidth    float32
	unit         float32 // device pixels in one of the sizes below
}

func newPlate(t *wire.Tightest) plate {
	reading, words := PlateWords(t)
	return plate{reading: reading, words: words, verdict: t.Verdict}
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

// obstacles are what a plate keeps clear of in the picture.
type obstacles struct {
	golfer, head box
	marks        []point
	blade        [4]point // of the tape
}

// place finds where the plate covers least. A plate whose reading is not in the
// atlas has no size and is left out.
func (p *plate) place(c *canvas, o obstacles, tape [2]point, tapeWidth float32) {
	p.size = point{}
	g, h := c.texts[p.reading], c.texts[p.words]
	if g.Width == 0 {
		return
	}
	p.tapeMiddle, p.tapeWidth = tape[0].lerp(tape[1], 0.5), tapeWidth
	k := c.scale * max(plateLeast, min(c.width/c.scale/plateFullAt, 1))
	wide := max(g.Width/g.Height*plateText, h.Width/max(1, h.Height)*plateSmall)
	// A line that is too wide for the picture has been cut at mostLine; a very small
	// picture has the whole plate smaller.
	if fits := (c.width - 2*plateMargin*c.scale) / (wide + 3*platePad + plateBadge); k > fits {
		k = fits
	}
	text := wide * k
	p.unit = k
	p.size = point{text + (3*platePad+plateBadge)*k, (plateText + plateSmall + 2*platePad + 3) * k}
	half := point{abs(tape[1].x-tape[0].x) / 2, abs(tape[1].y-tape[0].y) / 2}
	p.corner = o.bestPlace(c, p.tapeMiddle, p.size, half.add(point{1, 1}.mul(tapeWidth/2+plateDetach*k)))
}

// covers reports whether the plate covers a place of the picture.
func (p *plate) covers(q point) bool {
	end := p.corner.add(p.size)
	return p.size != (point{}) && q.x >= p.corner.x && q.x <= end.x && q.y >= p.corner.y && q.y <= end.y
}

// draw lays the plate down, with a leader to the tape's middle.
func (p *plate) draw(c *canvas) {
	if p.size == (point{}) {
		return
	}
	g, h, k := c.texts[p.reading], c.texts[p.words], p.unit
	at, corner, size := p.tapeMiddle, p.corner, p.size
	edge := point{max(corner.x, min(at.x, corner.x+size.x)), max(corner.y, min(at.y, corner.y+size.y))}
	if edge != at {
		start := at.add(edge.sub(at).unit().mul(p.tapeWidth / 2))
		c.line(start, edge, plateLeader*k, c.theme.PlateInk)
	}
	o := plateOutline * k
	c.box(corner.sub(point{o, o}), size.add(point{2 * o, 2 * o}), c.theme.PlateInk)
	c.box(corner, size, c.theme.Plate)
	p.badge(c, point{corner.x + (platePad+plateBadge/2)*k, corner.y + size.y/2}, plateBadge/2*k)
	left := corner.x + (2*platePad+plateBadge)*k
	c.write(point{left, corner.y + platePad*k}, plateText*k, g, c.theme.PlateInk)
	if h.Width > 0 {
		c.write(point{left, corner.y + (platePad+plateText+3)*k}, plateSmall*k, h, c.theme.PlateInk)
	}
}

// bestPlace is the corner for a plate of the given size: of the places round
// the tape, near and farther off, and along the rim of the picture, the one that
// costs least.
func (o *obstacles) bestPlace(c *canvas, at, size, gap point) point {
	margin := plateMargin * c.scale
	best, cost := point{}, float32(math.Inf(1))
	try := func(k point) {
		k.x = max(margin, min(k.x, c.width-margin-size.x))
		k.y = max(margin, min(k.y, c.height-margin-size.y))
		if w := o.cost(at, k, size, c.scale); w < cost {
			best, cost = k, w
		}
	}
	for far := float32(1); far < 6; far += 1.5 {
		for _, d := range [8]point{{1, -1}, {-1, -1}, {1, 0}, {-1, 0}, {1, 1}, {-1, 1}, {0, -1}, {0, 1}} {
			try(point{at.x + d.x*(gap.x*far+size.x/2) - size.x/2, at.y + d.y*(gap.y*far+size.y/2) - size.y/2})
		}
	}
	const steps = 4
	for i := range steps + 1 {
		along := point{c.width - size.x, c.height - size.y}.mul(float32(i) / steps)
		for _, k := range [4]point{{along.x, 0}, {along.x, c.height}, {0, along.y}, {c.width, along.y}} {
			try(k)
		}
	}
	return best
}

// cost weighs a place for the plate, in pixels: the way to the tape, three times
// the side of a square as large as what it covers of the golfer, much for each
// strike mark, more for the head and most for the tape itself.
func (o *obstacles) cost(at, corner, size point, scale float32) float32 {
	const perMark, onHead, onTape = 40, 3e3, 1e4
	plate := boxAt(corner, size)
	cost := corner.add(size.mul(0.5)).sub(at).norm() + 3*sqrt(plate.common(o.golfer))
	if plate.common(o.head) > 0 {
		cost += onHead + sqrt(plate.common(o.head))
	}
	for _, p := range o.marks {
		if plate.holds(p) {
			cost += perMark * scale
		}
	}
	for _, p := range o.blade {
		if plate.holds(p) {
			cost += onTape
		}
	}
	return cost
}

// badge is the verdict as a shape: a star for strikes, a triangle for tight, a
// disc with a tick for clear.
func (p *plate) badge(c *canvas, at point, r float32) {
	switch p.verdict {
	case wire.Strikes:
		c.flatStar(at, r, r*0.45, starPoints, c.theme.Strike)
	case wire.Tight:
		c.flatStar(at, r, r*0.5, 3, c.theme.PlateInk)
		c.flatStar(at, r*0.72, r*0.36, 3, c.theme.Tight)
	default:
		c.flatStar(at, r*0.9, r*0.9, 12, c.theme.PlateInk)
		w := r * 0.22
		c.line(at.add(point{-0.45 * r, 0.02 * r}), at.add(point{-0.1 * r, 0.38 * r}), w, c.theme.Plate)
		c.line(at.add(point{-0.16 * r, 0.36 * r}), at.add(point{0.46 * r, -0.34 * r}), w, c.theme.Plate)
	}
}

// flatStar is a star in the picture with its first ray upwards; with equal
// radii a disc, with half the radius a regular polygon.
func (c *canvas) flatStar(at point, long, short float32, rays int, colour paint.Colour) {
	middle := c.Vertex(at.x, at.y, colour)
	var first, last uint16
	for i := range 2 * rays {
		r := long
		if i%2 == 1 {
			r = short
		}
		d := turn(float64(i) / float64(2*rays))
		v := c.Vertex(at.x+r*d.y, at.y-r*d.x, colour)
		if i == 0 {
			first = v
		} else {
			c.Now(middle, last, v)
		}
		last = v
	}
	c.Now(middle, last, first)
}

// turn is the direction a share of a full turn from (1, 0).
func turn(share float64) point {
	s, c := math.Sincos(2 * math.Pi * share)
	return point{float32(c), float32(s)}
}
