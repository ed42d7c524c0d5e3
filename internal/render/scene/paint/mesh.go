// Package paint lays coloured triangles into a mesh, the farthest first, and
// holds the colours. It knows nothing of what the triangles show.
package paint

// Vertex is a corner of a triangle: pixel, place in the atlas (pixels) and
// colour, premultiplied by alpha.
type Vertex struct{ X, Y, U, V, R, G, B, A float32 }

// Mesh is one picture, in drawing order. Indices are 16 bits because that is
// what the engine takes.
type Mesh struct {
	Vertices []Vertex
	Indices  []uint16
}

// The atlas keeps a white patch round this pixel for everything that is not text.
const whiteU, whiteV = 2, 2

// WhitePatch is the side of the square at the atlas's origin that must be
// opaque white, pixels.
const WhitePatch = 4
