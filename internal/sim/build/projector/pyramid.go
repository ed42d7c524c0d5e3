package projector

import (
	"math"

	"wideberth/internal/sim/build/screen"
	"wideberth/internal/sim/geom"
)

// Pyramid is the light: from the lens to the image.
type Pyramid struct {
	Lens  geom.Vec
	Image screen.Image
}

// Throw is the distance from the lens to the cloth, square to it, m.
func (p Pyramid) Throw() float64 { return math.Abs(p.Image.X - p.Lens.X) }

// point is a point of the image: u from its right edge to its left, v upwards, 0 to 1.
func (p Pyramid) point(u, v float64) geom.Vec {
	i := p.Image
	return geom.Vec{X: i.X, Y: i.Centre + (u-0.5)*i.Width, Z: i.Bottom + v*i.Height}
}

// LowestAt is how low (m) the light is at a distance (m) from the screen, for a lens
// above it: at lens height at the lens.
func (p Pyramid) LowestAt(fromScreen float64) float64 {
	return p.Image.Bottom + (p.Lens.Z-p.Image.Bottom)*fromScreen/p.Throw()
}

// Mesh is how many rays are followed: an image is judged by the middles of so many
// cells. Shares are good to a few thousandths.
type Mesh struct{ NX, NY int }

// MeshOf is the mesh of square cells with nx across.
func MeshOf(nx int, i screen.Image) Mesh {
	return Mesh{nx, max(1, int(math.Round(float64(nx)*i.Height/max(i.Width, 1e-6))))}
}

// Shade is which cells of an image no light comes to.
type Shade struct {
	Mesh
	Dark []bool // row by row from the bottom, in each from the right edge
}

// NewShade is an image with light everywhere.
func NewShade(m Mesh) *Shade { return &Shade{m, make([]bool, m.NX*m.NY)} }

// Clear lights every cell again.
func (s *Shade) Clear() { clear(s.Dark) }

// Share is the share of the image that is dark.
func (s *Shade) Share() float64 {
	n := 0
	for _, d := range s.Dark {
		if d {
			n++
		}
	}
	return float64(n) / float64(len(s.Dark))
}

// Capsule darkens what a capsule keeps the light from.
func (s *Shade) Capsule(p Pyramid, c geom.Capsule) {
	r := geom.Vec{X: c.R, Y: c.R, Z: c.R}
	low := geom.Vec{X: min(c.A.X, c.B.X) - r.X, Y: min(c.A.Y, c.B.Y) - r.Y, Z: min(c.A.Z, c.B.Z) - r.Z}
	high := geom.Vec{X: max(c.A.X, c.B.X) + r.X, Y: max(c.A.Y, c.B.Y) + r.Y, Z: max(c.A.Z, c.B.Z) + r.Z}
	s.each(p, geom.Box{Min: low, Max: high}, func(to geom.Vec) bool {
		return apart2(p.Lens, to, c.A, c.B) < c.R*c.R
	})
}

// Box darkens what a box keeps the light from.
func (s *Shade) Box(p Pyramid, b geom.Box) {
	s.each(p, b, func(to geom.Vec) bool { return meets(p.Lens, to, b) })
}

// each darkens the cells whose ray is stopped, of those that a box may darken.
func (s *Shade) each(p Pyramid, b geom.Box, stops func(to geom.Vec) bool) {
	i0, j0, i1, j1, any := s.window(p, b)
	if !any {
		return
	}
	for j := j0; j <= j1; j++ {
		for i := i0; i <= i1; i++ {
			if k := j*s.NX + i; !s.Dark[k] {
				s.Dark[k] = stops(p.point((float64(i)+0.5)/float64(s.NX), (float64(j)+0.5)/float64(s.NY)))
			}
		}
	}
}

// window returns the cells that a box may darken: those in the shadow of its corners,
// of its part between lens and cloth.
func (s *Shade) window(p Pyramid, b geom.Box) (i0, j0, i1, j1 int, any bool) {
	d := p.Image.X - p.Lens.X
	from, to := (b.Min.X-p.Lens.X)/d, (b.Max.X-p.Lens.X)/d // shares of the way to the cloth
	from, to = min(from, to), max(from, to)
	if from > 1 || to <= 0 {
		return 0, 0, 0, 0, false
	}
	const atLens = 1e-6 // what is nearer to the lens casts no shadow but its own
	from = max(from, atLens)
	lowU, highU, lowV, highV := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, t := range [2]float64{from, min(max(to, from), 1)} {
		for _, y := range [2]float64{b.Min.Y, b.Max.Y} {
			u := (p.Lens.Y+(y-p.Lens.Y)/t-p.Image.Centre)/p.Image.Width + 0.5
			lowU, highU = min(lowU, u), max(highU, u)
		}
		for _, z := range [2]float64{b.Min.Z, b.Max.Z} {
			v := (p.Lens.Z + (z-p.Lens.Z)/t - p.Image.Bottom) / p.Image.Height
			lowV, highV = min(lowV, v), max(highV, v)
		}
	}
	if highU < 0 || lowU > 1 || highV < 0 || lowV > 1 {
		return 0, 0, 0, 0, false
	}
	cell := func(v float64, n int) int { return int(min(max(math.Floor(v*float64(n)), 0), float64(n-1))) }
	return cell(lowU, s.NX), cell(lowV, s.NY), cell(highU, s.NX), cell(highV, s.NY), true
}

// apart2 is the squared distance (m²) of the segments p–q and a–b.
func apart2(p, q, a, b geom.Vec) float64 {
	sub := func(x, y geom.Vec) geom.Vec { return geom.Vec{X: x.X - y.X, Y: x.Y - y.Y, Z: x.Z - y.Z} }
	d1, d2, r := sub(q, p), sub(b, a), sub(p, a)
	aa, ee, ff := geom.Dot(d1, d1), geom.Dot(d2, d2), geom.Dot(d2, r)
	c := geom.Dot(d1, r)
	unit := func(v float64) float64 { return min(max(v, 0), 1) }
	s, t := 0.0, 0.0
	if ee <= 1e-18 {
		s = unit(-c / aa)
	} else {
		bb := geom.Dot(d1, d2)
		if den := aa*ee - bb*bb; den > 1e-18 {
			s = unit((bb*ff - c*ee) / den)
		}
		t = (bb*s + ff) / ee
		if t < 0 {
			t, s = 0, unit(-c/aa)
		} else if t > 1 {
			t, s = 1, unit((bb-c)/aa)
		}
	}
	gap := sub(geom.Lerp(p, q, s), geom.Lerp(a, b, t))
	return geom.Dot(gap, gap)
}

// meets is whether the segment from p to q runs through a box.
func meets(p, q geom.Vec, b geom.Box) bool {
	near, far := 0.0, 1.0
	for _, axis := range [3][4]float64{{p.X, q.X, b.Min.X, b.Max.X}, {p.Y, q.Y, b.Min.Y, b.Max.Y}, {p.Z, q.Z, b.Min.Z, b.Max.Z}} {
		d := axis[1] - axis[0]
		if d == 0 {
			if axis[0] <= axis[2] || axis[0] >= axis[3] {
				return false
			}
			continue
		}
		t0, t1 := (axis[2]-axis[0])/d, (axis[3]-axis[0])/d
		near, far = max(near, min(t0, t1)), min(far, max(t0, t1))
	}
	return near < far
}
