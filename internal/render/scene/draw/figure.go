package draw

import "wideberth/internal/render/scene/wire"

// figure is the golfer with the club, as a jointed mannequin.
type figure struct {
	parts        []part
	feet         []part // where they stand at address
	clubheadPart int    // whose way is drawn: the clubhead or else the last; -1: none
	shaftPart    int
	meshes       meshes
}

// part is one capsule of the figure: what it is made of and where its axis is.
type part struct {
	segment
	radius float32
	made   material
}

// segment is the axis of a capsule.
type segment struct{ a, b vec }

func (s segment) middle() vec { return s.a.Lerp(s.b, 0.5) }

func fromWireSegment(s wire.Segment) segment { return segment{fromWire(s.A), fromWire(s.B)} }

// material says which of the shared meshes and colours a part takes.
type material uint8

const (
	plain    material = iota // turned in one piece
	jointed                  // a limb with a ball joint at each end
	joint                    // all joint: neck, hands
	shaft                    //
	grip                     //
	clubhead                 //
)

// materials by the part names of the contract; any other part is plain.
var materials = map[string]material{
	"neck":           joint,
	"lead upper arm": jointed, "trail upper arm": jointed,
	"lead forearm": jointed, "trail forearm": jointed,
	"lead hand": joint, "trail hand": joint,
	"lead thigh": jointed, "trail thigh": jointed,
	"lead shank": jointed, "trail shank": jointed,
	"grip": grip, "shaft": shaft, "clubhead": clubhead,
}

// meshes are the capsules that the parts are drawn with.
type meshes struct{ body, limb, small, rod *unitCapsule }

func newMeshes() meshes {
	return meshes{
		body:  newUnitCapsule(16, 4, 1, false),
		limb:  newUnitCapsule(12, 3, 1, true),
		small: newSmallCapsule(),
		rod:   newUnitCapsule(6, 1, 8, false),
	}
}

// newFigure stands the golfer of a recording at address.
func newFigure(s *wire.Recording) figure {
	f := figure{meshes: newMeshes(), clubheadPart: s.PartIndex("clubhead"), shaftPart: s.PartIndex("shaft")}
	if len(s.Frames) == 0 {
		return figure{clubheadPart: -1, shaftPart: -1}
	}
	if f.clubheadPart < 0 {
		f.clubheadPart = len(s.Parts) - 1
	}
	for i, p := range s.Parts {
		f.parts = append(f.parts, part{fromWireSegment(s.Frames[0].Pose[i]), p.Radius, materials[p.Name]})
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
		stand = stand.Add(f.feet[i].middle().Sub(ball).Mul(0.5 / float32(len(f.feet))))
	}
	return xyz(stand.X, stand.Y, floorOf(s)+1.0)
}

// leftHanded tells the hand from where the feet stand.
func (f *figure) leftHanded(s *wire.Recording) bool {
	y := float32(0)
	for i := range f.feet {
		y += f.feet[i].middle().Y - s.Ball[1]
	}
	return y < 0
}

// pose moves the parts to a moment, between two frames by straight lines: a
// frame is too short for the eye to tell.
func (f *figure) pose(s *wire.Recording, at moment) {
	t := float32(at.frames - float64(at.frame))
	from, to := s.Frames[at.frame].Pose, s.Frames[min(at.frame+1, len(s.Frames)-1)].Pose
	for i := range f.parts {
		p, q := fromWireSegment(from[i]), fromWireSegment(to[i])
		f.parts[i].segment = segment{p.a.Lerp(q.a, t), p.b.Lerp(q.b, t)}
	}
}

// clubhead is where the middle of the clubhead is.
func (f *figure) clubhead() (at vec, ok bool) {
	if f.clubheadPart < 0 {
		return vec{}, false
	}
	return f.parts[f.clubheadPart].middle(), true
}

// outlineWidth is the ink round each part of the figure, CSS pixels.
const outlineWidth = 1.3

func (f *figure) look(c *canvas, m material) capsuleLook {
	t := c.theme
	l := capsuleLook{mesh: f.meshes.small, outline: t.Outline, width: outlineWidth * c.scale}
	switch m {
	case plain:
		l.mesh, l.body = f.meshes.body, t.Body
	case jointed:
		l.mesh, l.body, l.joint = f.meshes.limb, t.Body, t.Joint
	case joint, grip:
		l.body = t.Joint
	case shaft:
		l.mesh, l.body, l.pieces = f.meshes.rod, t.Club, true
	case clubhead:
		l.mesh, l.body = f.meshes.body, t.Clubhead
	}
	return l
}

// thinnest is the least width at which a club is drawn, CSS pixels: a shaft is
// a centimetre thick and would vanish in a whole room.
const thinnest = 2.2

// draw queues the golfer and the club.
func (f *figure) draw(c *canvas, m *room) {
	for i := range f.parts {
		p := &f.parts[i]
		l := f.look(c, p.made)
		c.drawCapsule(m, p.a, p.b, max(p.radius, thinnest/2*c.scale/c.cam.pixels(p.a)), &l)
	}
}

// drawShadow lays the figure's shadow on the floor.
func (f *figure) drawShadow(c *canvas, m *room) {
	for i := range f.parts {
		p := &f.parts[i]
		m.drawShadow(c, p.a, p.b, p.radius)
	}
}

// drawFeet inks where the feet stand at address, at once.
func (f *figure) drawFeet(c *canvas, m *room) {
	if c.cam.eye.Z <= m.floor {
		return
	}
	for i := range f.feet {
		foot := &f.feet[i]
		a, b := foot.a, foot.b
		a.Z, b.Z = m.floor+floorLift, m.floor+floorLift
		c.outline = roundEnded(c.outline[:0], a, b, foot.radius)
		c.inkRing(c.outline, hiddenWidth, c.theme.Hidden)
	}
}

// extent is where the golfer stands in the picture at the tightest moment, for
// the plate to keep clear of: two corners.
func (f *figure) extent(c *canvas, s *wire.Recording) (lo, hi point) {
	if len(s.Frames) == 0 {
		return point{}, point{}
	}
	pose := s.Frames[s.FrameAt(float64(s.Tightest.Time))].Pose
	first := true
	for i := range f.parts {
		if m := f.parts[i].made; m == shaft || m == clubhead || m == grip {
			continue
		}
		axis := fromWireSegment(pose[i])
		for _, end := range [2]vec{axis.a, axis.b} {
			x, y, d := c.cam.project(end)
			if d < nearPlane {
				continue
			}
			r := f.parts[i].radius * c.cam.pixels(end)
			if first {
				lo, hi = point{x, y}, point{x, y}
				first = false
			}
			lo = point{min(lo.x, x-r), min(lo.y, y-r)}
			hi = point{max(hi.x, x+r), max(hi.y, y+r)}
		}
	}
	return lo, hi
}
