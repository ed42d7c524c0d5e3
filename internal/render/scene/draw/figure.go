package draw

import (
	"wideberth/internal/render/scene/mannequin"
	"wideberth/internal/render/scene/paint"
	"wideberth/internal/render/scene/shape"
	"wideberth/internal/render/scene/wire"
)

// figure is the golfer with the club: the capsules of the recording, and the
// mannequins that are shaped about them.
type figure struct {
	parts        []part
	feet         []part // where they stand at address
	clubheadPart int    // whose way is drawn: the clubhead or else the last; -1: none
	shaftPart    int
	eyes         vec // at address

	// The swing that decides is drawn solid, or as an outline beside the typical one,
	// where the recording has that.
	deciding, typical golfer
	ghost             bool
}

// golfer is one mannequin; without a body, because the recording lacks a part, it has no
// solids.
type golfer struct {
	body   *mannequin.Figure
	axes   []shape.Axis  // of the parts
	solids []shape.Solid // of the pose
}

// part is one capsule of the figure.
type part struct {
	shape.Axis
	radius float32
}

func axisOf(s wire.Segment) shape.Axis { return shape.Axis{A: fromWire(s.A), B: fromWire(s.B)} }

// newFigure stands the golfer of a recording at address.
func newFigure(s *wire.Recording) figure {
	f := figure{clubheadPart: s.PartIndex("clubhead"), shaftPart: s.PartIndex("shaft")}
	if len(s.Frames) == 0 {
		return figure{clubheadPart: -1, shaftPart: -1}
	}
	if f.clubheadPart < 0 {
		f.clubheadPart = len(s.Parts) - 1
	}
	for i, p := range s.Parts {
		f.parts = append(f.parts, part{axisOf(s.Frames[0].Pose[i]), p.Radius})
	}
	f.deciding, f.typical = newGolfer(s), newGolfer(s)
	f.pose(s, moment{})
	f.shape(s, moment{})
	f.eyes = fromWire(s.Ball).Add(xyz(0, 0, 1.5))
	if f.deciding.body != nil {
		f.eyes, _ = f.deciding.body.Eyes(0)
	}
	for _, name := range [2]string{"lead foot", "trail foot"} {
		if i := s.PartIndex(name); i >= 0 {
			f.feet = append(f.feet, f.parts[i])
		}
	}
	return f
}

// middle is the middle of ball and feet, at half a golfer's height.
func (f *figure) middle(s *wire.Recording) vec {
	ball := fromWire(s.Ball)
	stand := ball
	for i := range f.feet {
		stand = stand.Add(f.feet[i].Middle().Sub(ball).Mul(0.5 / float32(len(f.feet))))
	}
	return xyz(stand.X, stand.Y, floorOf(s)+1.0)
}

// leftHanded tells the hand from where the feet stand.
func (f *figure) leftHanded(s *wire.Recording) bool {
	y := float32(0)
	for i := range f.feet {
		y += f.feet[i].Middle().Y - s.Ball[1]
	}
	return y < 0
}

func newGolfer(s *wire.Recording) golfer {
	body, ok := mannequin.New(s)
	if !ok {
		return golfer{}
	}
	return golfer{body: body, axes: make([]shape.Axis, len(s.Parts))}
}

// pose moves the parts to a moment.
func (f *figure) pose(s *wire.Recording, at moment) {
	from, to := s.Frames[at.frame].Pose, s.Frames[min(at.frame+1, len(s.Frames)-1)].Pose
	for i := range f.parts {
		f.parts[i].Axis = at.between(from[i], to[i])
	}
}

// between is where an axis is between two frames, by straight lines: a frame is too
// short for the eye to tell; shifted with the golfer.
func (at moment) between(from, to wire.Segment) shape.Axis {
	t := float32(at.frames - float64(at.frame))
	p, q := axisOf(from), axisOf(to)
	return shape.Axis{A: p.A.Lerp(q.A, t).Add(at.shift), B: p.B.Lerp(q.B, t).Add(at.shift)}
}

// shape shapes the mannequins about their poses.
func (f *figure) shape(s *wire.Recording, at moment) {
	from, to := &s.Frames[at.frame], &s.Frames[min(at.frame+1, len(s.Frames)-1)]
	f.deciding.shape(from.Pose, to.Pose, at)
	if f.besideTypical(s) {
		f.typical.shape(from.Typical, to.Typical, at)
	}
}

// besideTypical reports whether both swings are drawn.
func (f *figure) besideTypical(s *wire.Recording) bool {
	return f.ghost && len(s.Frames) > 0 && len(s.Frames[0].Typical) > 0
}

// shape shapes the mannequin between the poses of two frames.
func (g *golfer) shape(from, to []wire.Segment, at moment) {
	if g.body == nil {
		return
	}
	for i := range g.axes {
		g.axes[i] = at.between(from[i], to[i])
	}
	g.solids = g.body.Pose(g.axes, at.frames)
}

// clubhead is where the middle of the clubhead is.
func (f *figure) clubhead() (at vec, ok bool) {
	if f.clubheadPart < 0 {
		return vec{}, false
	}
	return f.parts[f.clubheadPart].Middle(), true
}

// outlineWidth is the ink round each part of the figure, CSS pixels.
const outlineWidth = 1.3

// thinnest is the least width at which a club is drawn, CSS pixels: a shaft is
// a centimetre thick and would vanish in a whole room.
const thinnest = 2.2

// draw queues the golfer and the club.
func (f *figure) draw(c *canvas, m *room, s *wire.Recording) {
	solid := &f.deciding
	if f.besideTypical(s) {
		f.deciding.drawOutline(c, m, max(f.deciding.farthest(c), f.typical.farthest(c)))
		solid = &f.typical
	}
	tones := tonesOf(c.theme)
	look := solidLook{tones: &tones, outline: c.theme.Outline, width: outlineWidth * c.scale}
	for i := range solid.solids {
		k := &solid.solids[i]
		if k.Rod {
			thicken(k, thinnest/2*c.scale/c.cam.pixels(k.At))
		}
		c.drawSolid(m, k, &look)
	}
}

// farthest is the depth behind which nothing of the golfer is.
func (g *golfer) farthest(c *canvas) (depth float32) {
	for i := range g.solids {
		k := &g.solids[i]
		for j := range k.Rings {
			depth = max(depth, c.cam.depth(k.Rings[j].Centre)+k.Size)
		}
	}
	return depth
}

// drawOutline queues the golfer as a pale sheet with one outline: all outlines of the
// parts first, then their faces. The sheet is at a depth behind the solid golfer.
func (g *golfer) drawOutline(c *canvas, m *room, depth float32) {
	var tones [shape.NumTones]paint.Colour
	for i := range tones {
		tones[i] = c.theme.Ghost
	}
	look := solidLook{tones: &tones, outline: c.theme.GhostInk, width: outlineWidth * c.scale}
	c.meshes = c.meshes[:0]
	for i := range g.solids {
		k := &g.solids[i]
		if k.Rod {
			thicken(k, thinnest/2*c.scale/c.cam.pixels(k.At))
		}
		if !c.solidInFront(k) {
			continue
		}
		if mesh, ok := c.layCorners(m, k, &look); ok {
			c.meshes = append(c.meshes, mesh)
		}
	}
	at := func(_, _, _ int) float32 { return depth }
	for _, ofHull := range [2]bool{true, false} {
		for i := range c.meshes {
			c.laySolid(&c.meshes[i], ofHull, at)
		}
	}
}

// thicken makes a rod at least r (m) thick.
func thicken(s *shape.Solid, r float32) {
	for i := range s.Rings {
		k := &s.Rings[i]
		if w := k.U.Norm(); w > 0 && w < r {
			k.U, k.V = k.U.Mul(r/w), k.V.Mul(r/w)
		}
	}
}

// drawShadow lays the figure's shadow on the floor.
func (f *figure) drawShadow(c *canvas, m *room) {
	for i := range f.parts {
		p := &f.parts[i]
		m.drawShadow(c, p.A, p.B, p.radius)
	}
}

// drawFeet inks where the feet stand at address, at once.
func (f *figure) drawFeet(c *canvas, m *room) {
	if c.cam.eye.Z <= m.floor {
		return
	}
	for i := range f.feet {
		foot := &f.feet[i]
		a, b := foot.A, foot.B
		a.Z, b.Z = m.floor+floorLift, m.floor+floorLift
		c.outline = roundEnded(c.outline[:0], a, b, foot.radius)
		c.inkRing(c.outline, hiddenWidth, c.theme.Hidden)
	}
}

// extent is where the golfer without the club stands in the picture at the tightest
// moment, and head where the head is from then on: what the plate keeps clear of.
func (f *figure) extent(c *canvas, s *wire.Recording) (golfer, head box) {
	golfer, head = emptyBox(), emptyBox()
	from := s.FrameAt(float64(s.Tightest.Time))
	for at := from; at < len(s.Frames); at += headStep {
		for i := range s.Parts {
			isHead := s.Parts[i].Name == "head"
			if club := i == f.clubheadPart || i == f.shaftPart; club || (at > from && !isHead) {
				continue
			}
			axis := axisOf(s.Frames[at].Pose[i])
			for _, end := range [2]vec{axis.A, axis.B} {
				x, y, d := c.cam.project(end)
				if d < nearPlane {
					continue
				}
				r := f.parts[i].radius * c.cam.pixels(end)
				if at == from {
					golfer = golfer.add(point{x, y}, r)
				}
				if isHead {
					head = head.add(point{x, y}, r)
				}
			}
		}
	}
	return golfer, head
}

// headStep is the stride, frames, in which the way of the head is looked at.
const headStep = 12
