package mannequin

import "wideberth/internal/render/scene/shape"

// When the eyes leave the ball for the target, s after impact: judgement.
const (
	looksUp   = 0.10
	lookedUp  = 0.45
	eyeHeight = 0.52 // of the head's height above the chin: half way up, nearly
)

// gaze is where the golfer looks: at the ball until it has gone, then up to the
// far wall.
func (f *Figure) gaze(frames float64, eyes vec) vec {
	since := float32(0)
	if f.rate > 0 {
		since = float32((frames - f.impact) / f.rate)
	}
	far := f.most
	far.Z = eyes.Z
	share := max(0, min((since-looksUp)/(lookedUp-looksUp), 1))
	share *= share * (3 - 2*share)
	// Along an arc: first down the line, then up.
	return f.ball.Lerp(far, share*share)
}

// Eyes is where the golfer's eyes are in the last pose, and the way they look.
func (f *Figure) Eyes(frames float64) (at, way vec) {
	h := f.axes[head]
	at = h.Middle()
	way = f.gaze(frames, at).Sub(at).Unit()
	return at.Along(way, 0.9*f.radius[head]), way
}

// shapeHead shapes neck, head, the peak of a cap and a nose, turned to where the
// golfer looks.
func (f *Figure) shapeHead(frames float64) {
	h, r := f.axes[head], f.radius[head]
	up := h.B.Sub(h.A).Unit()
	tall := h.B.Sub(h.A).Norm() + 2*r
	foot := h.A.Along(up, -r)
	front := f.gaze(frames, h.Middle()).Sub(h.Middle()).Across(up)
	side := front.Cross(up)

	f.turn(neck, usual, slice{0.25, 0.84, shape.Skin}, slice{0.9, 0.76, shape.Skin})

	s := f.next(h.Middle(), r, wide)
	for _, k := range [...]struct {
		height, width, deep, forward float32
		tone                         tone
	}{
		{0.02, 0, 0, 0.20, shape.Skin},
		{0.06, 0.34, 0.32, 0.18, shape.Skin},
		{0.22, 0.62, 0.70, 0.12, shape.Skin},
		{0.42, 0.76, 0.88, 0.04, shape.Skin},
		{0.60, 0.80, 0.96, 0, shape.Skin},
		{0.61, 0.84, 0.99, 0, shape.Dark},
		{0.78, 0.78, 0.93, -0.02, shape.Dark},
		{0.92, 0.48, 0.58, -0.02, shape.Dark},
		{0.99, 0, 0, 0, shape.Dark},
	} {
		s.Rings = append(s.Rings, shape.Round(foot.Along(up, k.height*tall).Along(front, k.forward*r), side.Mul(k.width*r), front.Mul(k.deep*r), k.tone))
	}

	brow := foot.Along(up, 0.62*tall)
	s = f.next(brow.Along(front, 1.25*r), 0.3*r, usual)
	for _, k := range [...]struct{ forward, width, thick float32 }{
		{0.60, 0, 0}, {0.61, 0.70, 0.05}, {1.00, 0.74, 0.05}, {1.28, 0.62, 0.04}, {1.44, 0.36, 0.03}, {1.49, 0, 0},
	} {
		at := brow.Along(front, k.forward*r).Along(up, (0.10-0.16*k.forward)*r)
		s.Rings = append(s.Rings, shape.Round(at, side.Mul(k.width*r), up.Mul(k.thick*r), shape.Dark))
	}

	s = f.next(foot.Along(up, 0.42*tall).Along(front, 1.02*r), 0.1*r, small)
	for _, k := range [...]struct{ height, forward, width, deep float32 }{
		{0.56, 0.90, 0, 0}, {0.53, 0.90, 0.06, 0.05}, {0.40, 0.96, 0.13, 0.13}, {0.36, 0.92, 0, 0},
	} {
		at := foot.Along(up, k.height*tall).Along(front, k.forward*r)
		s.Rings = append(s.Rings, shape.Round(at, side.Mul(k.width*r), front.Mul(k.deep*r), shape.Skin))
	}
}
