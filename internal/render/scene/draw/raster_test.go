package draw

import (
	"image"
	"image/color"
	"math"

	"wideberth/internal/render/scene/paint"
)

// rasterise paints a mesh as the engine does without smooth edges: triangle by
// triangle in the mesh's order, a pixel belonging to a triangle that holds its
// middle, the nearest texel of the atlas, source over.
func rasterise(m *paint.Mesh, width, height int, ground paint.Colour, a *atlas) *image.RGBA {
	pixels := make([][3]float32, width*height)
	for i := range pixels {
		pixels[i] = [3]float32{ground.R, ground.G, ground.B}
	}
	for i := 0; i+2 < len(m.Indices); i += 3 {
		fillTriangle(pixels, width, height, [3]paint.Vertex{m.Vertices[m.Indices[i]], m.Vertices[m.Indices[i+1]], m.Vertices[m.Indices[i+2]]}, a)
	}
	img := image.NewRGBA(image.Rect(0, 0, width, height))
	for i, p := range pixels {
		level := func(v float32) uint8 { return uint8(max(0, min(v, 1))*255 + 0.5) }
		img.SetRGBA(i%width, i/width, color.RGBA{level(p[0]), level(p[1]), level(p[2]), 255})
	}
	return img
}

func fillTriangle(pixels [][3]float32, width, height int, t [3]paint.Vertex, a *atlas) {
	side := func(p, q paint.Vertex, x, y float32) float32 { return (q.X-p.X)*(y-p.Y) - (q.Y-p.Y)*(x-p.X) }
	area := side(t[0], t[1], t[2].X, t[2].Y)
	if area < 0 {
		t[1], t[2], area = t[2], t[1], -area
	}
	if area == 0 {
		return
	}
	// A pixel in the middle of a side that two triangles share is painted once.
	owns := func(p, q paint.Vertex) bool { return q.Y < p.Y || (q.Y == p.Y && q.X > p.X) }
	x0 := max(0, int(math.Floor(float64(min(t[0].X, t[1].X, t[2].X)))))
	x1 := min(width-1, int(math.Ceil(float64(max(t[0].X, t[1].X, t[2].X)))))
	y0 := max(0, int(math.Floor(float64(min(t[0].Y, t[1].Y, t[2].Y)))))
	y1 := min(height-1, int(math.Ceil(float64(max(t[0].Y, t[1].Y, t[2].Y)))))
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			px, py := float32(x)+0.5, float32(y)+0.5
			var share [3]float32
			inside := true
			for k := range share {
				p, q := t[(k+1)%3], t[(k+2)%3]
				share[k] = side(p, q, px, py) / area
				if share[k] < 0 || (share[k] == 0 && !owns(p, q)) {
					inside = false
					break
				}
			}
			if !inside {
				continue
			}
			var v paint.Vertex
			for k, part := range share {
				v.U, v.V = v.U+part*t[k].U, v.V+part*t[k].V
				v.R, v.G, v.B, v.A = v.R+part*t[k].R, v.G+part*t[k].G, v.B+part*t[k].B, v.A+part*t[k].A
			}
			if cover := a.at(v.U, v.V); cover > 0 {
				out := &pixels[y*width+x]
				out[0], out[1], out[2] = v.R+(1-v.A)*out[0], v.G+(1-v.A)*out[1], v.B+(1-v.A)*out[2]
			}
		}
	}
}

// atlas is lettering for tests: each letter is a block of marks made from its
// number, so that a text lies the wrong way round or in the wrong place visibly.
type atlas struct {
	width, height int
	cover         []bool
	places        map[string]Glyphs
}

const (
	letterWide, letterTall = 6, 10 // texels
	lineTall               = 12
)

func newAtlas(texts []Text) *atlas {
	a := &atlas{width: 256, height: paint.WhitePatch + lineTall*len(texts), places: map[string]Glyphs{}}
	a.cover = make([]bool, a.width*a.height)
	for y := range paint.WhitePatch {
		for x := range paint.WhitePatch {
			a.cover[y*a.width+x] = true
		}
	}
	for line, t := range texts {
		top, n := paint.WhitePatch+line*lineTall, 0
		for _, r := range t.String {
			if (n+1)*letterWide > min(a.width, int(t.Most*letterTall)) {
				break
			}
			for y := range letterTall {
				for x := range letterWide - 1 {
					// The stem at the left and the foot tell which way is up.
					mark := x == 0 || y == letterTall-1 || uint32(r)*2654435761>>(uint(x+y/2*5)%31)&1 == 1
					a.cover[(top+y)*a.width+n*letterWide+x] = mark && r != ' '
				}
			}
			n++
		}
		a.places[t.String] = Glyphs{U: 0, V: float32(top), Width: float32(n * letterWide), Height: letterTall}
	}
	return a
}

func (a *atlas) at(u, v float32) float32 {
	x, y := int(u), int(v)
	if x < 0 || y < 0 || x >= a.width || y >= a.height || !a.cover[y*a.width+x] {
		return 0
	}
	return 1
}
