package draw

// Vertex is a corner of a triangle: pixel, place in the atlas (pixels) and
// colour, premultiplied by alpha.
type Vertex struct{ X, Y, U, V, R, G, B, A float32 }

// Mesh is one picture, in drawing order. Indices are 16 bits because that is
// what the engine takes.
type Mesh struct {
	Vertices []Vertex
	Indices  []uint16
}

// triangle waits in the painter for its turn.
type triangle struct {
	a, b, c uint16
	key     uint16 // nearness: 0 is farthest
}

// painter gathers triangles and lays them down from the farthest to the
// nearest. All its slices are reused.
type painter struct {
	Mesh
	queue, spare []triangle
	near, far    float32 // depths that the keys span, m
}

// maxVertices is what 16-bit indices can address.
const maxVertices = 1 << 16

func (p *painter) reset(near, far float32) {
	p.Vertices, p.Indices, p.queue = p.Vertices[:0], p.Indices[:0], p.queue[:0]
	p.near, p.far = near, far
}

// vertex adds a corner on the white pixel of the atlas. ok is false when the
// mesh is full; the caller then leaves its triangle out.
func (p *painter) vertex(x, y float32, c Colour) uint16 {
	return p.textured(x, y, whiteU, whiteV, c)
}

func (p *painter) textured(x, y, u, v float32, c Colour) uint16 {
	if len(p.Vertices) >= maxVertices {
		return maxVertices - 1
	}
	p.Vertices = append(p.Vertices, Vertex{x, y, u, v, c.R * c.A, c.G * c.A, c.B * c.A, c.A})
	return uint16(len(p.Vertices) - 1)
}

// now lays a triangle down at once, over everything laid before it and under
// everything that is queued.
func (p *painter) now(a, b, c uint16) { p.Indices = append(p.Indices, a, b, c) }

// later queues a triangle at a depth (m).
func (p *painter) later(a, b, c uint16, depth float32) {
	k := (p.far - depth) / (p.far - p.near) * 65535
	p.queue = append(p.queue, triangle{a, b, c, uint16(max(0, min(k, 65535)))})
}

// flush lays the queue down, the farthest first; equal depths keep the order
// they came in. A radix sort in two passes of a byte: linear, stable, and
// without allocation once the slices have grown.
func (p *painter) flush() {
	if cap(p.spare) < len(p.queue) {
		p.spare = make([]triangle, cap(p.queue))
	}
	from, to := p.queue, p.spare[:len(p.queue)]
	for shift := uint(0); shift < 16; shift += 8 {
		var start [257]int
		for i := range from {
			start[(from[i].key>>shift)&255+1]++
		}
		for i := range 256 {
			start[i+1] += start[i]
		}
		for i := range from {
			b := (from[i].key >> shift) & 255
			to[start[b]] = from[i]
			start[b]++
		}
		from, to = to, from
	}
	for i := range from {
		p.Indices = append(p.Indices, from[i].a, from[i].b, from[i].c)
	}
	p.queue = p.queue[:0]
}

// quad lays down a four-cornered patch, corners in order round it.
func (p *painter) quad(q [4]point, c Colour) {
	var v [4]uint16
	for i := range q {
		v[i] = p.vertex(q[i].x, q[i].y, c)
	}
	p.now(v[0], v[1], v[2])
	p.now(v[0], v[2], v[3])
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
func (p *painter) line(a, b point, width float32, c Colour) { p.quad(stroke(a, b, width), c) }

// lineAt queues a line at a depth.
func (p *painter) lineAt(a, b point, width float32, c Colour, depth float32) {
	q := stroke(a, b, width)
	var v [4]uint16
	for i := range q {
		v[i] = p.vertex(q[i].x, q[i].y, c)
	}
	p.later(v[0], v[1], v[2], depth)
	p.later(v[0], v[2], v[3], depth)
}
