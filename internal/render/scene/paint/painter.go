package paint

// triangle waits in the painter for its turn.
type triangle struct {
	a, b, c uint16
	key     uint16 // nearness: 0 is farthest
}

// Painter gathers triangles and lays them down from the farthest to the
// nearest. All its slices are reused.
type Painter struct {
	Mesh
	queue, spare []triangle
	near, far    float32 // depths that the keys span, m
	kept         kept
}

// kept is what Rewind goes back to.
type kept struct {
	vertices, indices int
	queue             []triangle
}

// MaxVertices is what 16-bit indices can address.
const MaxVertices = 1 << 16

// Reset empties the picture. Depths will lie between near and far (m).
func (p *Painter) Reset(near, far float32) {
	p.Vertices, p.Indices, p.queue = p.Vertices[:0], p.Indices[:0], p.queue[:0]
	p.near, p.far = near, far
}

// Keep makes all that was laid and queued so far what Rewind goes back to.
func (p *Painter) Keep() {
	p.kept.vertices, p.kept.indices = len(p.Vertices), len(p.Indices)
	p.kept.queue = append(p.kept.queue[:0], p.queue...)
}

// Rewind undoes all that came after Keep, flushing too.
func (p *Painter) Rewind() {
	p.Vertices, p.Indices = p.Vertices[:p.kept.vertices], p.Indices[:p.kept.indices]
	p.queue = append(p.queue[:0], p.kept.queue...)
}

// Vertex adds a corner on the white pixel of the atlas and returns its number,
// that of the last one when the mesh is full.
func (p *Painter) Vertex(x, y float32, c Colour) uint16 {
	return p.Textured(x, y, whiteU, whiteV, c)
}

// Textured is Vertex at another place of the atlas.
func (p *Painter) Textured(x, y, u, v float32, c Colour) uint16 {
	if len(p.Vertices) >= MaxVertices {
		return MaxVertices - 1
	}
	p.Vertices = append(p.Vertices, Vertex{x, y, u, v, c.R * c.A, c.G * c.A, c.B * c.A, c.A})
	return uint16(len(p.Vertices) - 1)
}

// Now lays a triangle down at once, over everything laid before it and under
// everything that is queued.
func (p *Painter) Now(a, b, c uint16) { p.Indices = append(p.Indices, a, b, c) }

// Later queues a triangle at a depth (m).
func (p *Painter) Later(a, b, c uint16, depth float32) {
	k := (p.far - depth) / (p.far - p.near) * 65535
	p.queue = append(p.queue, triangle{a, b, c, uint16(max(0, min(k, 65535)))})
}

// Flush lays the queue down, the farthest first; equal depths keep the order
// they came in. A radix sort in two passes of a byte: linear, stable, and
// without allocation once the slices have grown.
func (p *Painter) Flush() {
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
