package draw

import "math"

// Stand is where the viewer stands and how they look.
type Stand struct {
	Inside Inside
	Orbit  Orbit
	// Pan is how far the picture is shifted to the right and down, of its shorter
	// side; it grows with the zoom.
	Pan [2]float64
}

// Inside is a place inside the room; there an orbit says which way one looks.
type Inside uint8

// The places.
const (
	Outside Inside = iota // looking in, round the golfer
	AtEyes                // at the golfer's eyes, at address
	AtWall                // high at the back wall, where a camera may hang
)

// maxPan bounds a pan: the room stays in the picture.
const maxPan = 0.6

// Clamped is the stand kept in its limits.
func (s Stand) Clamped() Stand {
	pitch := s.Orbit.Pitch
	s.Orbit = s.Orbit.Clamped()
	if s.Inside != Outside && !math.IsNaN(pitch) { // one may look up inside
		s.Orbit.Pitch = max(-1.3, min(pitch, 1.5))
	}
	for i, p := range s.Pan {
		if math.IsNaN(p) {
			p = 0
		}
		s.Pan[i] = max(-maxPan, min(p, maxPan))
	}
	return s
}

// Turned is the stand turned by so many radians, as if the picture was dragged: what
// is near follows, on an orbit, and what is seen from inside.
func (s Stand) Turned(yaw, pitch float64) Stand {
	if s.Inside != Outside {
		yaw, pitch = -yaw, -pitch
	}
	s.Orbit.Yaw += yaw
	s.Orbit.Pitch += pitch
	return s.Clamped()
}

// Panned is the stand with the picture shifted by shares of its shorter side.
func (s Stand) Panned(right, down float64) Stand {
	s.Pan[0] += right / s.Orbit.Zoom
	s.Pan[1] += down / s.Orbit.Zoom
	return s.Clamped()
}

// Between is a stand on the way from one to another, 0 to 1, by the shorter turn; it
// is the goal when one of them is inside.
func Between(from, to Stand, share float64) Stand {
	if from.Inside != Outside || to.Inside != Outside {
		return to
	}
	mix := func(a, b float64) float64 { return a + (b-a)*share }
	to.Orbit.Yaw = from.Orbit.Yaw + math.Remainder(to.Orbit.Yaw-from.Orbit.Yaw, 2*math.Pi)*share
	to.Orbit.Pitch = mix(from.Orbit.Pitch, to.Orbit.Pitch)
	to.Orbit.Zoom = mix(from.Orbit.Zoom, to.Orbit.Zoom)
	to.Pan = [2]float64{mix(from.Pan[0], to.Pan[0]), mix(from.Pan[1], to.Pan[1])}
	return to
}

// Eased is how far one has come when a share of the time is over: slow at both ends.
func Eased(share float64) float64 {
	share = max(0, min(share, 1))
	return share * share * (3 - 2*share)
}

// Preset is the stand of a named view of this recording's golfer: "behind" (down the
// line, towards the target), "face-on" (a left-hander from the other side), "above",
// "target" (from the target), "golfer" (what the golfer sees at address) or "camera"
// (what a camera sees that hangs high at the back wall). ok is false for any other
// name.
func (p *Picture) Preset(name string) (s Stand, ok bool) {
	face := math.Pi / 2
	if p.figure.leftHanded(p.recording) {
		face = -face
	}
	at := func(yaw, pitch float64) (Stand, bool) { return Stand{Orbit: Orbit{yaw, pitch, 1}}, true }
	switch name {
	case "behind":
		return at(0, 0.16)
	case "face-on":
		return at(face, 0.14)
	case "above":
		return at(math.Pi/2, maxPitch)
	case "target":
		return at(math.Pi, 0.16)
	case "golfer":
		return p.lookAt(AtEyes), true
	case "camera":
		return p.lookAt(AtWall), true
	}
	return Stand{}, false
}

// eye is where the viewer is inside the room, and what must fit the picture.
func (p *Picture) eye(at Inside) (eye vec, seen [4]vec) {
	ball, far := fromWire(p.recording.Ball), p.room.size
	target := xyz(far.X, ball.Y, p.room.floor+1)
	if at == AtEyes {
		return p.figure.eyes, [4]vec{ball, target, target, target}
	}
	const fromWall, fromCeiling = 0.12, 0.15
	y := far.Y / 2
	eye = xyz(fromWall, y, p.room.ceilingAt(fromWall, y)-fromCeiling)
	const foreground = 0.6 // m of floor this side of ball and feet
	low := p.room.floor
	return eye, [4]vec{xyz(far.X, 0, far.Z), xyz(far.X, far.Y, far.Z), xyz(ball.X-foreground, ball.Y, low), xyz(p.room.golfer.X-foreground, p.room.golfer.Y, low)}
}

// lookAt looks at the middle of what must be seen from inside.
func (p *Picture) lookAt(at Inside) Stand {
	eye, seen := p.eye(at)
	way := vec{}
	for _, q := range seen {
		way = way.Add(q.Sub(eye).Unit())
	}
	if at == AtEyes { // the target counts as much as the ball
		way = seen[0].Sub(eye).Unit().Add(seen[1].Sub(eye).Unit())
	}
	way = way.Unit()
	return Stand{Inside: at, Orbit: Orbit{math.Atan2(float64(way.Y), float64(way.X)), -math.Asin(float64(way.Z)), 1}}
}

// The widest and the narrowest lens inside, as half the angle over the picture's
// shorter side.
const (
	narrowLens = 24 * math.Pi / 180
	widestLens = 58 * math.Pi / 180
)

// insideCamera looks from a place inside, as wide as it takes to see what must be seen
// from there when one looks straight at it.
func (p *Picture) insideCamera(s Stand, w, h float32) camera {
	eye, seen := p.eye(s.Inside)
	straight := p.lookAt(s.Inside).Orbit
	c := looking(straight.Yaw, straight.Pitch)
	wide, high := float32(1e-3), float32(1e-3)
	for _, q := range seen {
		r := q.Sub(eye)
		d := max(nearPlane, r.Dot(c.forward))
		wide, high = max(wide, abs(r.Dot(c.right))/d), max(high, abs(r.Dot(c.up))/d)
	}
	const used = 0.86 // of the picture
	focal := min(w/2*used/wide, h/2*used/high)
	side := min(w, h) / 2
	focal = max(side/float32(math.Tan(widestLens)), min(focal, side/float32(math.Tan(narrowLens))))
	c = looking(s.Orbit.Yaw, s.Orbit.Pitch)
	c.eye, c.focal, c.cx, c.cy = eye, focal*float32(s.Orbit.Zoom), w/2, h/2
	return c
}

// cameraOf is the camera of a view, on its way between two stands or there.
func (p *Picture) cameraOf(v View) camera {
	if v.Left <= 0 {
		return p.standing(v.Stand, v)
	}
	share := 1 - v.Left
	if v.Inside == Outside && v.From.Inside == Outside {
		return p.standing(Between(v.From, v.Stand, float64(share)), v)
	}
	return between(p.standing(v.From, v), p.standing(v.Stand, v), share)
}

// standing is the camera of a viewer who stands still.
func (p *Picture) standing(s Stand, v View) camera {
	var c camera
	if s.Inside == Outside {
		c = newCamera(s.Orbit, p.room.golfer, p.corners, v.Width, v.Height)
	} else {
		c = p.insideCamera(s, v.Width, v.Height)
	}
	shift := float32(s.Orbit.Zoom) * min(v.Width, v.Height)
	c.cx += float32(s.Pan[0]) * shift
	c.cy += float32(s.Pan[1]) * shift
	return c
}

// between is a camera on the way from a to b.
func between(a, b camera, share float32) camera {
	k := float64(share)
	c := looking(a.yaw+math.Remainder(b.yaw-a.yaw, 2*math.Pi)*k, a.pitch+(b.pitch-a.pitch)*k)
	c.eye = a.eye.Lerp(b.eye, share)
	c.focal = a.focal * float32(math.Pow(float64(b.focal/a.focal), k))
	c.cx, c.cy = a.cx+(b.cx-a.cx)*share, a.cy+(b.cy-a.cy)*share
	return c
}
