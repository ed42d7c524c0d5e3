package mannequin

import (
	"math"

	"wideberth/internal/render/scene/shape"
)

// blade is what a clubhead looks like by its kind, lengths in its capsule's
// radii.
type blade struct {
	loft    float32 // degrees, where the recording gives none
	tall    float32 // half the face's height
	wide    float32 // of the face past each end of the axis, heel to toe
	lean    float32 // how far the top stands towards the toe
	front   float32 // of the face before the axis
	outline *shape.Section
	back    []slab // from the face to the back
}

// slab is a slice behind the face: how far back, and its size against the face's.
type slab struct{ back, wide, tall, low float32 }

// blades by kind of club; any other kind is an iron.
var blades = map[string]*blade{
	"driver": {10, 0.60, 0.52, 0.06, 0.70, usual, []slab{{0.16, 1.10, 1.06, 0}, {0.70, 1.20, 1.0, 0.04}, {1.15, 1.06, 0.78, 0.08}, {1.50, 0.68, 0.46, 0.12}, {1.62, 0.30, 0.2, 0.14}}},
	"wood":   {15, 0.52, 0.52, 0.08, 0.66, usual, []slab{{0.16, 1.10, 1.06, 0}, {0.70, 1.16, 0.96, 0.06}, {1.10, 0.98, 0.72, 0.10}, {1.45, 0.60, 0.40, 0.14}}},
	"hybrid": {22, 0.56, 0.56, 0.14, 0.60, usual, []slab{{0.16, 1.06, 1.04, 0}, {0.60, 1.04, 0.86, 0.10}, {1.05, 0.70, 0.50, 0.18}}},
	"iron":   {34, 0.66, 0.60, 0.26, 0.14, boxy, []slab{{0.10, 1.02, 1.02, 0}, {0.30, 0.94, 0.80, 0.12}}},
	"wedge":  {50, 0.70, 0.60, 0.28, 0.14, boxy, []slab{{0.10, 1.02, 1.02, 0}, {0.38, 0.94, 0.72, 0.18}}},
}

// shapeClub shapes grip, shaft, hosel and head.
func (f *Figure) shapeClub() {
	f.rod(f.axes[grip], f.radius[grip], 0.8*f.radius[grip], shape.Grip)
	f.rod(f.axes[shaft], f.radius[shaft], 0.75*f.radius[shaft], shape.Steel)
	h, r := f.axes[clubhead], f.radius[clubhead]
	s := f.axes[shaft]
	f.rod(axis{A: s.B, B: h.A.Lerp(s.B, 0.1)}, 1.5*f.radius[shaft], 1.5*f.radius[shaft], shape.Clubhead)

	heel, normal, up := f.headFrame()
	b := blades[f.club.Kind]
	if b == nil {
		b = blades["iron"]
	}
	loft := f.club.Loft
	if loft <= 0 {
		loft = b.loft
	}
	sin, cos := math.Sincos(float64(loft) * math.Pi / 180)
	face := normal.Mul(float32(cos)).Along(up, float32(sin))
	tall := up.Mul(float32(cos)).Along(normal, -float32(sin))

	middle := h.Middle()
	half := h.B.Sub(h.A).Norm()/2 + b.wide*r
	height := tall.Mul(b.tall*r).Along(heel, -b.lean*r)
	at := middle.Along(normal, b.front*r).Along(up, -0.1*r)
	out := f.next(middle, r, b.outline)
	flat := ring{Centre: at, Under: 1, Tone: shape.Face, Flat: true}
	// Without a size the slice has no plane, so the middle of the face is a speck.
	flat.U, flat.V = heel.Mul(1e-4), tall.Mul(1e-4)
	rim := flat
	rim.U, rim.V = heel.Mul(half), height
	edge := rim
	edge.Flat, edge.Tone = false, shape.Clubhead
	out.Rings = append(out.Rings, flat, rim, edge)
	for _, k := range b.back {
		// The back stands upright, whatever the loft of the face.
		out.Rings = append(out.Rings, ring{
			Centre: at.Along(normal, -k.back*r).Along(up, -k.low*r),
			U:      heel.Mul(half * k.wide), V: height.Lerp(up.Mul(b.tall*r), min(1, k.back)).Mul(k.tall), Under: 1, Tone: shape.Clubhead,
		})
	}
	last := out.Rings[len(out.Rings)-1]
	last.U, last.V, last.Centre = vec{}, vec{}, last.Centre.Along(face, -0.05*r)
	out.Rings = append(out.Rings, last)
}

// headFrame is the base of the clubhead: from toe to heel, out of the face (of no
// loft) and up from the sole, all unit.
func (f *Figure) headFrame() (heel, normal, up vec) {
	h, s := f.axes[clubhead], f.axes[shaft]
	heel = h.A.Sub(h.B).Unit()
	normal = s.B.Sub(s.A).Cross(heel).Mul(f.side).Across(heel)
	return heel, normal, normal.Cross(heel).Mul(f.side)
}

// rodLengths is the number of pieces in which a rod is placed among the others.
const rodLengths = 8

// rod shapes a round rod.
func (f *Figure) rod(a axis, from, to float32, tone tone) {
	dir := a.B.Sub(a.A).Unit()
	u, v := shape.Perpendiculars(dir)
	s := f.next(a.Middle(), from, small)
	s.Rod = true
	s.Rings = append(s.Rings, shape.Round(a.A, vec{}, vec{}, tone))
	for i := range rodLengths + 1 {
		t := float32(i) / rodLengths
		w := from + (to-from)*t
		s.Rings = append(s.Rings, shape.Round(a.A.Lerp(a.B, t), u.Mul(w), v.Mul(w), tone))
	}
	s.Rings = append(s.Rings, shape.Round(a.B, vec{}, vec{}, tone))
}
