package mannequin

import "wideberth/internal/render/scene/shape"

// shapeTrunk shapes the hips with their belt, and a trunk that is turned from the
// hips to the shoulders and carries these on a yoke.
func (f *Figure) shapeTrunk() {
	back, hips := f.axes[trunk], f.axes[pelvis]
	up := back.B.Sub(back.A).Unit()
	across := hips.B.Sub(hips.A).Unit()
	f.shapeHips(hips, across, up.Across(across))

	r, rp := f.radius[trunk], f.radius[pelvis]
	half := hips.B.Sub(hips.A).Norm() / 2
	lead, trail := f.axes[leadUpperArm].A, f.axes[trailUpperArm].A
	shoulders := lead.Sub(trail)
	hub := back.B.Along(up, hubAbove*r)
	// The yoke follows the shoulders forward, and up as far as the trunk goes.
	yoke := hub.Lerp(lead.Lerp(trail, 0.5), 0.75)
	yoke = yoke.Along(up, min(0, 0.02*r-yoke.Sub(hub).Dot(up)))
	// Square to the trunk, but the yoke, which goes from shoulder to shoulder.
	chest := shoulders.Across(up)
	hip := across.Across(up)
	s := f.next(back.A.Lerp(hub, 0.55), r*0.9, wide)
	for _, k := range [...]struct {
		centre      vec
		turn        float32 // from the hips to the chest
		width, deep float32
		tone        tone
	}{
		{hips.Middle().Along(up, 0.52*rp), 0, 0, 0, shape.Shirt},
		{hips.Middle().Along(up, 0.55*rp), 0, half + 0.36*rp, 0.68 * rp, shape.Shirt},
		{back.A.Lerp(back.B, 0.30), 0.3, 0.80 * r, 0.62 * r, shape.Shirt},
		{back.A.Lerp(back.B, 0.58), 0.75, 0.90 * r, 0.72 * r, shape.Shirt},
		{back.A.Lerp(back.B, 0.88), 1, 0.98 * r, 0.76 * r, shape.Shirt},
		{back.B.Along(up, 0.22*r), 1, 0.94 * r, 0.70 * r, shape.Shirt},
		{yoke, 2, 0.49 * shoulders.Norm(), 0.36 * r, shape.Shirt},
		{hub.Along(up, 0.14*r), 1, 0.76 * r, 0.44 * r, shape.Shirt},
		{hub.Along(up, 0.26*r), 1, 0.52 * r, 0.40 * r, shape.Shirt},
		{hub.Along(up, 0.34*r), 1, 0.42 * r, 0.38 * r, shape.Shirt},
		{hub.Along(up, 0.40*r), 1, 0.40 * r, 0.36 * r, shape.Dark},
		{hub.Along(up, 0.42*r), 1, 0, 0, shape.Dark},
	} {
		side := shoulders.Unit()
		if k.turn <= 1 {
			side = hip.Lerp(chest, k.turn).Unit()
		}
		s.Rings = append(s.Rings, shape.Round(k.centre, side.Mul(k.width), side.Cross(up).Unit().Mul(k.deep), k.tone))
	}
}

// hubAbove is how far the middle of the shoulder line lies above the end of the
// trunk's axis, of its radius: see the simulation's figure.
const hubAbove = 0.55

// shapeHips shapes the trousers' seat and the belt.
func (f *Figure) shapeHips(hips axis, across, up vec) {
	r := f.radius[pelvis]
	half := hips.B.Sub(hips.A).Norm() / 2
	deep := across.Cross(up)
	s := f.next(hips.Middle(), r, wide)
	for _, k := range [...]struct {
		height, width, deep float32
		tone                tone
	}{
		{-0.82, 0, 0, shape.Trousers},
		{-0.74, half + 0.20*r, 0.45, shape.Trousers},
		{-0.34, half + 0.68*r, 0.80, shape.Trousers},
		{0.10, half + 0.64*r, 0.80, shape.Trousers},
		{0.46, half + 0.40*r, 0.70, shape.Trousers},
		{0.47, half + 0.44*r, 0.73, shape.Dark},
		{0.62, half + 0.40*r, 0.70, shape.Dark},
		{0.64, 0, 0, shape.Dark},
	} {
		s.Rings = append(s.Rings, shape.Round(hips.Middle().Along(up, k.height*r), across.Mul(k.width), deep.Mul(k.deep*r), k.tone))
	}
}
