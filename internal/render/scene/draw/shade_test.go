package draw

import (
	"math"
	"testing"

	"wideberth/internal/render/scene/paint"
)

// sampleShade is a shadow on an image on the sample's front: nothing, a run over two
// rows, and everything.
func sampleShade() *Shade {
	const nx, ny = 40, 20
	return &Shade{Rate: 10, NX: nx, NY: ny, X: 5.5, Right: 0.8, Bottom: 0.3, Width: 2.4, Height: 1.2,
		Runs: [][]int32{{}, {nx - 5, 10}, {0, nx * ny}}}
}

// area is how much (pixels) all triangles of a picture cover, one over another.
func area(m *paint.Mesh) (sum float64) {
	at := func(i int) paint.Vertex { return m.Vertices[m.Indices[i]] }
	for i := 0; i+2 < len(m.Indices); i += 3 {
		a, b, c := at(i), at(i+1), at(i+2)
		sum += math.Abs(float64((b.X-a.X)*(c.Y-a.Y)-(c.X-a.X)*(b.Y-a.Y))) / 2
	}
	return sum
}

// TestShade: a shadow covers as much of the picture as its cells do of the image, at the
// moment that it falls; it is gone when it is taken away, and from behind the screen.
func TestShade(t *testing.T) {
	p := samplePicture()
	v := sampleView()
	rate := float64(p.recording.Rate)
	// The golfer stands still here, so that only the shadow differs.
	covers := func(s *Shade, runs []int32) float64 {
		one := *s
		one.Runs = [][]int32{runs}
		p.ShowShade(&one)
		return area(p.Draw(v, 0))
	}
	s := sampleShade()
	bare := covers(s, nil)
	whole := covers(s, s.Runs[2]) - bare
	c := &p.canvas
	corner := func(y, z float32) (x, up float64) {
		px, py, _ := c.cam.project(xyz(s.X, y, z))
		return float64(px), float64(py)
	}
	x0, y0 := corner(s.Right, s.Bottom)
	x1, y1 := corner(s.Right+s.Width, s.Bottom)
	x2, y2 := corner(s.Right+s.Width, s.Bottom+s.Height)
	x3, y3 := corner(s.Right, s.Bottom+s.Height)
	want := math.Abs((x2-x0)*(y3-y1)-(x3-x1)*(y2-y0)) / 2
	if math.Abs(whole-want) > 0.01*want || want < 1000 {
		t.Errorf("all dark covers %.0f px, want the image's %.0f", whole, want)
	}
	two := covers(s, s.Runs[1]) - bare
	halves := covers(s, []int32{int32(s.NX) - 5, 5}) + covers(s, []int32{int32(s.NX), 5}) - 2*bare
	if two <= 0 || math.Abs(two-halves) > 0.01*two {
		t.Errorf("a run over two rows covers %.1f px, its parts %.1f", two, halves)
	}
	if past := covers(s, []int32{int32(s.NX*s.NY) - 2, 9}) - covers(s, []int32{int32(s.NX*s.NY) - 2, 2}); past != 0 {
		t.Errorf("cells that are not there cover %.1f px", past)
	}

	p.ShowShade(s)
	frame := func(time float64) int { return len(p.Draw(v, time*rate).Indices) }
	with := []int{frame(0), frame(0.1), frame(0.2)}
	p.ShowShade(nil)
	lit := with[0] - frame(0) // the image without anybody in its light
	for k, without := range []int{frame(0), frame(0.1), frame(0.2)} {
		if lit <= 0 || (with[k]-without > lit) != (k > 0) {
			t.Errorf("moment %d: %d indices with the shadow, %d without, %d lit", k, with[k], without, lit)
		}
	}
	p.ShowShade(s)
	v.Stand = preset("target")
	behind := frame(0.2)
	p.ShowShade(nil)
	if got := frame(0.2); got != behind {
		t.Errorf("from behind the screen %d indices with a shadow, %d without", behind, got)
	}
	v = sampleView()
	p.ShowShade(s)
	if n := testing.AllocsPerRun(3, func() { p.Draw(v, 0.1*rate); p.Draw(v, 0.2*rate) }); n > 0 {
		t.Errorf("a picture with a shadow takes %v allocations, want none", n)
	}
}
