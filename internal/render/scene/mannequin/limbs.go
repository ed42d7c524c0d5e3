package mannequin

import "wideberth/internal/render/scene/shape"

// shapeArm shapes an arm in a short sleeve, and the hand round the grip.
func (f *Figure) shapeArm(upper, fore, hand int, skin tone) {
	f.turn(upper, usual, slice{0, 0.97, shape.Shirt}, slice{0.25, 0.94, shape.Shirt}, slice{0.56, 0.88, shape.Shirt},
		slice{0.565, 0.78, shape.Skin}, slice{1, 0.70, shape.Skin})
	f.turn(fore, usual, slice{0, 0.80, shape.Skin}, slice{0.25, 0.92, shape.Skin}, slice{0.6, 0.76, shape.Skin}, slice{0.93, 0.56, shape.Skin})
	f.turn(hand, small, slice{-0.15, 0.62, skin}, slice{0.5, 0.74, skin}, slice{0.9, 0.66, skin})
	f.shapeFist(f.axes[hand].B, f.radius[hand], skin)
}

// How a fist lies round the grip: half its length along the club and its radius, of
// the hand's radius, and how deep the furrows between the fingers are.
const (
	fistHalf   = 0.80
	fistRadius = 0.68
	furrow     = 0.86
)

// shapeFist shapes four fingers closed about the grip.
func (f *Figure) shapeFist(at vec, r float32, skin tone) {
	g := f.axes[grip]
	dir := g.B.Sub(g.A).Unit()
	u, v := shape.Perpendiculars(dir)
	s := f.next(at, fistRadius*r, usual)
	const fingers = 4
	add := func(share, width float32) {
		w := width * fistRadius * r
		s.Rings = append(s.Rings, shape.Round(at.Along(dir, (2*share-1)*fistHalf*r), u.Mul(w), v.Mul(w), skin))
	}
	add(0, 0)
	for i := range fingers {
		add((float32(i)+0.06)/fingers, furrow)
		add((float32(i)+0.30)/fingers, 1)
		add((float32(i)+0.70)/fingers, 1)
	}
	add(0.985, furrow)
	add(1, 0)
}

// shapeLeg shapes a leg in trousers and its shoe.
func (f *Figure) shapeLeg(thigh, shank, foot int) {
	f.turn(thigh, usual, slice{0, 0.90, shape.Trousers}, slice{0.2, 0.92, shape.Trousers}, slice{0.6, 0.76, shape.Trousers}, slice{1, 0.62, shape.Trousers})
	f.turn(shank, usual, slice{0, 0.92, shape.Trousers}, slice{0.28, 0.96, shape.Trousers}, slice{0.7, 0.74, shape.Trousers},
		slice{0.86, 0.70, shape.Trousers}, slice{0.865, 0.54, shape.Dark}, slice{0.97, 0.52, shape.Dark})
	f.shapeShoe(foot)
}

// shapeShoe shapes a shoe: flat below, high at the heel, with a toe cap.
func (f *Figure) shapeShoe(foot int) {
	a, r := f.axes[foot], f.radius[foot]
	dir := a.B.Sub(a.A).Unit()
	long := a.B.Sub(a.A).Norm()
	up := vec{Z: 1}.Across(dir)
	side := dir.Cross(up)
	s := f.next(a.Middle(), r, boxy)
	const sole, waist = -0.95, -0.55 // heights of the sole and of where the shoe is widest, of the radius
	for _, k := range [...]struct {
		share, beyond float32 // of the axis, of the radius past it
		width, top    float32
		tone          tone
	}{
		{0, -0.92, 0, 0, shape.Dark},
		{0, -0.90, 0.40, 0.10, shape.Dark},
		{0, -0.55, 0.60, 0.52, shape.Dark},
		{0.12, 0, 0.66, 0.66, shape.Dark},
		{0.42, 0, 0.68, 0.56, shape.Dark},
		{0.75, 0, 0.78, 0.22, shape.Dark},
		{0.76, 0, 0.80, 0.22, shape.Toe},
		{1, 0.05, 0.76, -0.02, shape.Toe},
		{1, 0.60, 0.52, -0.22, shape.Toe},
		{1, 0.86, 0, 0, shape.Toe},
	} {
		at := a.A.Along(dir, k.share*long+k.beyond*r).Along(up, waist*r)
		top := max(0.02, k.top-waist)
		over := top
		if k.width == 0 {
			over = 0
		}
		s.Rings = append(s.Rings, ring{Centre: at, U: side.Mul(k.width * r), V: up.Mul(over * r), Under: (waist - sole) / top, Tone: k.tone})
	}
}
