package sheet

import (
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"io"
	"math"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// PNG paints the sheet at scale pixels to its px and writes the picture.
func (s *Sheet) PNG(w io.Writer, scale float64) error {
	return (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(w, s.Paint(scale))
}

// Paint paints the sheet on white at scale pixels to its px.
func (s *Sheet) Paint(scale float64) *image.RGBA {
	to := image.NewRGBA(image.Rect(0, 0, int(math.Round(s.Width*scale)), int(math.Round(s.Height*scale))))
	draw.Draw(to, to.Rect, image.White, image.Point{}, draw.Src)
	p := painter{to: to, scale: scale}
	for _, it := range s.items {
		switch {
		case it.words != "":
			p.fill(it.font.Colour, letters(it))
		default:
			if it.ink.Fill.A > 0 {
				p.fill(it.ink.Fill, it.rings)
			}
			if it.ink.Stroke.A > 0 {
				p.fill(it.ink.Stroke, stroked(it))
			}
		}
	}
	return to
}

// painter fills rings of straight lines. Rings that overlap and turn the same way
// are one area.
type painter struct {
	to    *image.RGBA
	scale float64
}

func (p painter) fill(c color.NRGBA, rings [][]Point) {
	lo, hi := Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, ring := range rings {
		for _, at := range ring {
			for k, v := range at {
				lo[k], hi[k] = min(lo[k], v*p.scale), max(hi[k], v*p.scale)
			}
		}
	}
	box := image.Rect(int(math.Floor(lo[0])), int(math.Floor(lo[1])), int(math.Ceil(hi[0])), int(math.Ceil(hi[1])))
	if len(rings) == 0 || box.Empty() {
		return
	}
	r := vector.NewRasterizer(box.Dx(), box.Dy())
	for _, ring := range rings {
		for i, at := range ring {
			x, y := float32(at[0]*p.scale-float64(box.Min.X)), float32(at[1]*p.scale-float64(box.Min.Y))
			if i == 0 {
				r.MoveTo(x, y)
			} else {
				r.LineTo(x, y)
			}
		}
		r.ClosePath()
	}
	mask := image.NewAlpha(image.Rect(0, 0, box.Dx(), box.Dy()))
	r.Draw(mask, mask.Rect, image.Opaque, image.Point{})
	draw.DrawMask(p.to, box, image.NewUniform(c), image.Point{}, mask, image.Point{}, draw.Over) // cuts off what lies outside
}

// letters are the outlines of a line of text.
func letters(it item) [][]Point {
	var (
		rings [][]Point
		buf   sfnt.Buffer
		f     = it.font.face()
		pen   = it.font.start(it.at, it.font.Width(it.words))
		unit  = it.font.Size / em / 64
	)
	for _, r := range it.words {
		g := glyph(&buf, f, r)
		segments, err := f.LoadGlyph(&buf, g, fixed.I(em), nil)
		if err == nil {
			at := func(p fixed.Point26_6) Point {
				return turned(Point{pen[0] + float64(p.X)*unit, pen[1] + float64(p.Y)*unit}, it.at, it.font.Turn)
			}
			rings = append(rings, flattened(segments, at)...)
		}
		pen[0] += it.font.Width(string(r))
	}
	return rings
}

// bends is how many straight lines stand for one curve of a letter.
const bends = 6

// flattened are the contours of a glyph as straight lines.
func flattened(segments sfnt.Segments, at func(fixed.Point26_6) Point) (rings [][]Point) {
	var last Point
	for _, s := range segments {
		a := at(s.Args[0])
		if s.Op == sfnt.SegmentOpMoveTo {
			rings, last = append(rings, []Point{a}), a
			continue
		}
		ring := &rings[len(rings)-1]
		switch s.Op {
		case sfnt.SegmentOpLineTo:
			*ring, last = append(*ring, a), a
		case sfnt.SegmentOpQuadTo:
			b := at(s.Args[1])
			for i := 1; i <= bends; i++ {
				t := float64(i) / bends
				*ring = append(*ring, mixed(mixed(last, a, t), mixed(a, b, t), t))
			}
			last = b
		case sfnt.SegmentOpCubeTo:
			b, c := at(s.Args[1]), at(s.Args[2])
			for i := 1; i <= bends; i++ {
				t := float64(i) / bends
				ab := mixed(a, b, t)
				*ring = append(*ring, mixed(mixed(mixed(last, a, t), ab, t), mixed(ab, mixed(b, c, t), t), t))
			}
			last = c
		}
	}
	return rings
}

func mixed(a, b Point, t float64) Point { return Point{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1])} }
