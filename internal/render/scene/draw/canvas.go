package draw

import (
	"math"

	"wideberth/internal/render/scene/paint"
	"wideberth/internal/render/scene/shape"
)

// canvas is the picture that is being drawn: where it is seen from, its colours
// and sizes, and the painter that gathers its triangles.
type canvas struct {
	paint.Painter
	cam           camera
	theme         *paint.Theme
	width, height float32 // device pixels
	scale         float32 // device pixels in a CSS pixel
	pen           float32 // device pixels in a unit of line width
	texts         map[string]Glyphs
	labels        []box // places in the picture that are taken
	golfer        box   // where the golfer stands in the picture, and how far away
	golferDepth   float32

	// Scratch.
	depths           []float32
	dashes           []span
	outline, clipped []vec
	crossings        []float32    // of a line of a map with its rings
	cut              []corner     // of a patch at the near plane
	meshes           []solidMesh  // of an outline
	rings            []shape.Ring // of a solid
	corners, normals []vec        // of a solid's mesh
}

// penFullAt is the width of a picture, CSS pixels, from which lines have their
// full width.
const penFullAt = 720

// start clears the canvas for a view of what the corners span.
func (c *canvas) start(v View, cam camera, corners []vec) {
	c.width, c.height, c.scale = v.Width, v.Height, max(0.5, v.Scale)
	c.pen = c.scale * max(0.7, min(v.Width/c.scale/penFullAt, 1))
	c.theme = paint.ThemeOf(v.Dark)
	c.cam = cam
	c.labels = c.labels[:0]
	near, far := float32(math.Inf(1)), float32(0)
	for _, p := range corners {
		d := c.cam.depth(p)
		near, far = min(near, d), max(far, d)
	}
	c.Reset(near-1, far+1)
}

// quad lays down a four-cornered patch, corners in order round it.
func (c *canvas) quad(q [4]point, colour paint.Colour) {
	var v [4]uint16
	for i := range q {
		v[i] = c.Vertex(q[i].x, q[i].y, colour)
	}
	c.Now(v[0], v[1], v[2])
	c.Now(v[0], v[2], v[3])
}

// point is a place in the picture, pixels.
type point struct{ x, y float32 }

func (a point) add(b point) point             { return point{a.x + b.x, a.y + b.y} }
func (a point) sub(b point) point             { return point{a.x - b.x, a.y - b.y} }
func (a point) mul(s float32) point           { return point{a.x * s, a.y * s} }
func (a point) dot(b point) float32           { return a.x*b.x + a.y*b.y }
func (a point) side() point                   { return point{-a.y, a.x} }
func (a point) norm() float32                 { return sqrt(a.dot(a)) }
func (a point) lerp(b point, t float32) point { return a.add(b.sub(a).mul(t)) }

func (a point) unit() point {
	n := a.norm()
	if n == 0 {
		return point{1, 0}
	}
	return a.mul(1 / n)
}

// stroke is the four corners of a straight line of the given width.
func stroke(a, b point, width float32) [4]point {
	s := b.sub(a).unit().side().mul(width / 2)
	return [4]point{a.add(s), b.add(s), b.sub(s), a.sub(s)}
}

// line lays a line down at once.
func (c *canvas) line(a, b point, width float32, colour paint.Colour) {
	c.quad(stroke(a, b, width), colour)
}

// lineAt queues a line at a depth.
func (c *canvas) lineAt(a, b point, width float32, colour paint.Colour, depth float32) {
	q := stroke(a, b, width)
	var v [4]uint16
	for i := range q {
		v[i] = c.Vertex(q[i].x, q[i].y, colour)
	}
	c.Later(v[0], v[1], v[2], depth)
	c.Later(v[0], v[2], v[3], depth)
}

// box lays down a rectangle.
func (c *canvas) box(p, size point, colour paint.Colour) {
	c.quad([4]point{p, {p.x + size.x, p.y}, p.add(size), {p.x, p.y + size.y}}, colour)
}

// strip queues a line between two places of the room.
func (c *canvas) strip(a, b vec, width float32, colour paint.Colour) {
	x0, y0, d0 := c.cam.project(a)
	x1, y1, d1 := c.cam.project(b)
	if d0 < nearPlane || d1 < nearPlane {
		return
	}
	c.lineAt(point{x0, y0}, point{x1, y1}, width*c.pen, colour, (d0+d1)/2-0.01)
}

// fill lays a convex polygon down at once.
func (c *canvas) fill(p []vec, colour paint.Colour) {
	var first, last uint16
	for i, q := range p {
		x, y, d := c.cam.project(q)
		if d < nearPlane {
			return
		}
		v := c.Vertex(x, y, colour)
		if i == 0 {
			first = v
		}
		if i > 1 {
			c.Now(first, last, v)
		}
		last = v
	}
}

// ink queues a seen line in pieces short enough to be sorted.
func (c *canvas) ink(a, b vec, lift float32) {
	n := cells(a.Sub(b).Norm())
	for i := range n {
		p, q := a.Lerp(b, float32(i)/float32(n)), a.Lerp(b, float32(i+1)/float32(n))
		x0, y0, d0 := c.cam.project(p)
		x1, y1, d1 := c.cam.project(q)
		c.lineAt(point{x0, y0}, point{x1, y1}, inkWidth*c.pen, c.theme.Ink, (d0+d1)/2-lift)
	}
}

// dash queues a dashed line. The dashes are even in the picture and start and
// end with half a dash, so that corners are always marked.
func (c *canvas) dash(a, b vec, width float32, colour paint.Colour, lift float32) {
	x0, y0, d0 := c.cam.project(a)
	x1, y1, d1 := c.cam.project(b)
	p, q := point{x0, y0}, point{x1, y1}
	c.dashes = dashSpans(c.dashes[:0], q.sub(p).norm()/c.scale)
	for _, s := range c.dashes {
		mid := (s.from + s.to) / 2
		c.lineAt(p.lerp(q, s.from), p.lerp(q, s.to), width*c.pen, colour, d0+(d1-d0)*mid-lift)
	}
}

// maxDashes bounds the dashes of one line.
const maxDashes = 400

// dashSpans appends the dashes of a line of the given length (CSS pixels) as
// shares of it: half a dash at each end and whole ones between, the pitch
// stretched to fit.
func dashSpans(dst []span, length float32) []span {
	n := int(length/(dashOn+dashOff) + 0.5)
	if n < 1 {
		return append(dst, span{from: 0, to: 1})
	}
	n = min(n, maxDashes)
	pitch := 1 / float32(n)
	half := pitch * dashOn / (dashOn + dashOff) / 2
	for i := range n + 1 {
		at := float32(i) * pitch
		dst = append(dst, span{from: max(0, at-half), to: min(1, at+half)})
	}
	return dst
}

// inkRing lays down the outline of a closed figure, unless part of it is behind
// the viewer.
func (c *canvas) inkRing(ring []vec, width float32, colour paint.Colour) {
	for i, a := range ring {
		x0, y0, d0 := c.cam.project(a)
		x1, y1, d1 := c.cam.project(ring[(i+1)%len(ring)])
		if d0 < nearPlane || d1 < nearPlane {
			return
		}
		c.line(point{x0, y0}, point{x1, y1}, width*c.pen, colour)
	}
}
