package draw

import (
	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/rules"
)

// Which of the shared meshes and materials a part takes.
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

// meshes shared by all scenes of a program would be package state; each scene
// has its own few.
type meshes struct{ body, limb, small, rod *unitCapsule }

func newMeshes() meshes {
	return meshes{
		body:  newUnitCapsule(16, 4, 1, false),
		limb:  newUnitCapsule(12, 3, 1, true),
		small: newUnitCapsule(10, 2, 1, false),
		rod:   newUnitCapsule(6, 1, 8, false),
	}
}

// outlineWidth is the ink round each part of the figure, CSS pixels.
const outlineWidth = 1.3

func (sc *Scene) look(m material) capsuleLook {
	p := sc.pal
	l := capsuleLook{mesh: sc.meshes.small, outline: p.outline, width: outlineWidth * sc.scale}
	switch m {
	case plain:
		l.mesh, l.body = sc.meshes.body, p.body
	case jointed:
		l.mesh, l.body, l.joint = sc.meshes.limb, p.body, p.joint
	case joint, grip:
		l.body = p.joint
	case shaft:
		l.mesh, l.body, l.pieces = sc.meshes.rod, p.club, true
	case clubhead:
		l.mesh, l.body = sc.meshes.body, p.clubhead
	}
	return l
}

// thinnest is the least width at which a club is drawn, CSS pixels: a shaft is
// a centimetre thick and would vanish in a whole room.
const thinnest = 2.2

// drawFigure queues the golfer and the club.
func (sc *Scene) drawFigure() {
	for i, seg := range sc.pose {
		l := sc.look(sc.materials[i])
		r := max(sc.show.Parts[i].Radius, thinnest/2*sc.scale/sc.cam.pixels(seg.a))
		sc.drawCapsule(seg.a, seg.b, r, &l)
	}
}

// segment is the axis of a capsule.
type segment struct{ a, b vec }

// findPose sets sc.pose to the pose at a play-head in frames, in between by
// straight lines: 1/240 s is too short for the eye to tell.
func (sc *Scene) findPose(at float64) {
	i := max(0, min(int(at), len(sc.show.Frames)-1))
	j := min(i+1, len(sc.show.Frames)-1)
	t := float32(at - float64(i))
	p, q := sc.show.Frames[i].Pose, sc.show.Frames[j].Pose
	for k := range sc.pose {
		sc.pose[k] = segment{
			fromShow(p[k].A).lerp(fromShow(q[k].A), t),
			fromShow(p[k].B).lerp(fromShow(q[k].B), t),
		}
	}
}

// shadowLift is how far above the floor shadows and marks are taken to lie, m.
const shadowLift = 0.002

// drawShadows lays the figure's shadow on the floor at once: a lamp high
// overhead makes it nearly a plan of the golfer, which shows where a club is
// in depth.
func (sc *Scene) drawShadows() {
	if sc.cam.eye.z <= sc.floor {
		return
	}
	for i, seg := range sc.pose {
		sc.shadow(seg.a, seg.b, sc.show.Parts[i].Radius)
	}
	if sc.ballSeen() {
		sc.shadow(sc.ball, sc.ball, rules.BallRadius)
	}
}

func (sc *Scene) shadow(a, b vec, r float32) {
	z := sc.floor + shadowLift
	fall := func(p vec) vec {
		k := 0.35 * (p.z - z) / light.z
		return vec{p.x - light.x*k, p.y - light.y*k, z}
	}
	a, b = fall(a), fall(b)
	along := b.sub(a).unit()
	if along == (vec{}) {
		along = vec{1, 0, 0}
	}
	across := vec{-along.y, along.x, 0}
	sc.outline = sc.outline[:0]
	for k, end := range [2]vec{a, b} {
		sign := float32(2*k - 1)
		for _, t := range halfCircle {
			sc.outline = append(sc.outline, end.add(along.mul(sign*r*t.y)).add(across.mul(-sign*r*t.x)))
		}
	}
	// The shadow ends where the floor does.
	p, q := sc.outline, sc.clipped[:0]
	for _, n := range [4]struct {
		n vec
		d float32
	}{{vec{1, 0, 0}, 0}, {vec{-1, 0, 0}, -sc.room.x}, {vec{0, 1, 0}, 0}, {vec{0, -1, 0}, -sc.room.y}} {
		q = clipPolygon(q[:0], p, n.n, n.d)
		p, q = q, p
	}
	sc.outline, sc.clipped = p, q
	sc.fill(p, sc.pal.shadow)
}

// halfCircle are the directions of a round end, from one side over the tip to
// the other.
var halfCircle = [...]point{{-1, 0}, {-0.809, 0.588}, {-0.309, 0.951}, {0.309, 0.951}, {0.809, 0.588}, {1, 0}}

// fill lays a convex polygon down at once.
func (sc *Scene) fill(p []vec, c Colour) {
	var first, last uint16
	for i, q := range p {
		x, y, d := sc.cam.project(q)
		if d < nearPlane {
			return
		}
		v := sc.vertex(x, y, c)
		if i == 0 {
			first = v
		}
		if i > 1 {
			sc.now(first, last, v)
		}
		last = v
	}
}

// leastBall is the least width at which the ball is drawn, CSS pixels.
const leastBall = 5

// ballSeen reports whether the ball still lies on its tee.
func (sc *Scene) ballSeen() bool {
	return sc.BallShown() || sc.impact < 0 || sc.frame < sc.impact
}

func (sc *Scene) drawBall() {
	if !sc.ballSeen() {
		return
	}
	l := capsuleLook{mesh: sc.meshes.small, body: sc.pal.ball, outline: sc.pal.outline, width: sc.pen}
	sc.drawCapsule(sc.ball, sc.ball, max(rules.BallRadius, leastBall/2*sc.scale/sc.cam.pixels(sc.ball)), &l)
}

// drawFeet inks where the feet stand at address, at once.
func (sc *Scene) drawFeet() {
	if sc.cam.eye.z <= sc.floor {
		return
	}
	for _, f := range sc.feet {
		a, b := f.a, f.b
		z := sc.floor + shadowLift
		a.z, b.z = z, z
		along := b.sub(a).unit()
		if along == (vec{}) {
			continue
		}
		across := vec{-along.y, along.x, 0}
		r := f.radius
		var before point
		for k := range 2*len(halfCircle) + 1 {
			end, sign := a, float32(-1)
			if k/len(halfCircle) == 1 {
				end, sign = b, 1
			}
			t := halfCircle[k%len(halfCircle)]
			q := end.add(along.mul(sign * r * t.y)).add(across.mul(-sign * r * t.x))
			x, y, d := sc.cam.project(q)
			if d < nearPlane {
				return
			}
			if k > 0 {
				sc.line(before, point{x, y}, hiddenWidth*sc.pen, sc.pal.hidden)
			}
			before = point{x, y}
		}
	}
}

// foot is where a foot stands at address: the axis of its capsule.
type foot struct {
	segment
	radius float32
}

// findFeet are the feet in the first frame.
func findFeet(s *wire.Recording) (feet []foot) {
	for _, name := range [2]string{"lead foot", "trail foot"} {
		if i := s.PartIndex(name); i >= 0 && len(s.Frames) > 0 {
			pose := s.Frames[0].Pose[i]
			feet = append(feet, foot{segment{fromShow(pose.A), fromShow(pose.B)}, s.Parts[i].Radius})
		}
	}
	return feet
}

// leftHanded tells the hand from where the feet stand.
func (sc *Scene) leftHanded() bool {
	y := float32(0)
	for _, f := range sc.feet {
		y += f.a.y + f.b.y - 2*sc.show.Ball[1]
	}
	return y < 0
}
