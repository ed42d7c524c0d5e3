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
