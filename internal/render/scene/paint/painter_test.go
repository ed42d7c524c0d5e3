package paint

import (
	"math/rand/v2"
	"slices"
	"testing"
)

func TestPainterOrder(t *testing.T) {
	var p Painter
	rng := rand.New(rand.NewPCG(3, 3))
	depths := make([]float32, 500)
	p.Reset(2, 12)
	for i := range depths {
		depths[i] = 2 + 10*float32(rng.IntN(60))/60 // many ties
		v := p.Vertex(float32(i), 0, Colour{})
		p.Later(v, v, v, depths[i])
	}
	p.Flush()
	order := make([]int, 0, len(depths))
	for i := 0; i < len(p.Indices); i += 3 {
		order = append(order, int(p.Vertices[p.Indices[i]].X))
	}
	want := make([]int, len(depths))
	for i := range want {
		want[i] = i
	}
	slices.SortStableFunc(want, func(a, b int) int {
		switch {
		case depths[a] > depths[b]:
			return -1
		case depths[a] < depths[b]:
			return 1
		}
		return 0
	})
	if !slices.Equal(order, want) {
		t.Errorf("flush order = %v, want %v", order, want)
	}
}

func TestPainterIsFull(t *testing.T) {
	var p Painter
	for range MaxVertices + 10 {
		p.Vertex(0, 0, Colour{})
	}
	if len(p.Vertices) != MaxVertices {
		t.Errorf("%d vertices, want %d", len(p.Vertices), MaxVertices)
	}
}

// What is kept comes back in its place among what is laid after it.
func TestKeepAndRewind(t *testing.T) {
	var p Painter
	p.Reset(0, 10)
	tri := func(x float32) (v uint16) { return p.Vertex(x, 0, Colour{}) }
	order := func() (xs []float32) {
		p.Flush()
		for i := 0; i < len(p.Indices); i += 3 {
			xs = append(xs, p.Vertices[p.Indices[i]].X)
		}
		return xs
	}
	a, b, c := tri(1), tri(2), tri(3)
	p.Now(a, a, a)
	p.Later(b, b, b, 2)
	p.Later(c, c, c, 8)
	p.Keep()
	for _, tt := range []struct {
		name  string
		depth float32
		want  []float32
	}{
		{"between", 5, []float32{1, 9, 3, 7, 2}}, {"farthest", 9, []float32{1, 9, 7, 3, 2}},
		{"nearest", 1, []float32{1, 9, 3, 2, 7}}, {"beyond the far end", 1e6, []float32{1, 9, 7, 3, 2}}, {"before the near end", -5, []float32{1, 9, 3, 2, 7}},
	} {
		p.Rewind()
		d, e := tri(7), tri(9)
		p.Later(d, d, d, tt.depth)
		p.Now(e, e, e)
		if got := order(); !slices.Equal(got, tt.want) {
			t.Errorf("%s: order = %v, want %v", tt.name, got, tt.want)
		}
	}
	p.Rewind()
	if got, want := order(), []float32{1, 3, 2}; !slices.Equal(got, want) || len(p.Vertices) != 3 {
		t.Errorf("after rewinding: order = %v of %d corners, want %v of 3", got, len(p.Vertices), want)
	}
	p.Reset(0, 10)
	if got := order(); len(got) != 0 || len(p.Vertices) != 0 {
		t.Errorf("after a reset: %v, want nothing", got)
	}
}

// A corner's colour is multiplied by its alpha, and without lettering it lies
// inside the atlas's white patch, half a pixel from its rim at least.
func TestVertex(t *testing.T) {
	var p Painter
	p.Vertex(3, 4, Colour{1, 0.5, 0.25, 0.5})
	if got, want := p.Vertices[0], (Vertex{3, 4, 2, 2, 0.5, 0.25, 0.125, 0.5}); got != want {
		t.Errorf("corner = %v, want %v", got, want)
	}
	if v := p.Vertices[0]; v.U < 0.5 || v.U > WhitePatch-0.5 || v.V < 0.5 || v.V > WhitePatch-0.5 || WhitePatch != 4 {
		t.Errorf("corner at (%v, %v) of the atlas, white is %d across", v.U, v.V, WhitePatch)
	}
	p.Textured(3, 4, 5, 6, Colour{1, 1, 1, 1})
	if got, want := p.Vertices[1], (Vertex{3, 4, 5, 6, 1, 1, 1, 1}); got != want {
		t.Errorf("lettered corner = %v, want %v", got, want)
	}
}

// The keys span the depths that were asked for, whole.
func TestKeys(t *testing.T) {
	var p Painter
	p.Reset(2, 12)
	for _, depth := range []float32{12, 7, 2} {
		p.Later(0, 0, 0, depth)
	}
	for i, want := range []uint16{0, 32767, 65535} {
		if got := p.queue[i].key; got != want {
			t.Errorf("key %d = %d, want %d", i, got, want)
		}
	}
}
