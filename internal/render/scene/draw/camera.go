package draw

import "math"

// Orbit is where the viewer stands, as angles about the golfer.
//
// Yaw 0 looks towards the target from behind; a quarter turn looks along +y, at
// the chest of a right-hander. Pitch is how far the viewer is raised, up to
// straight above at π/2. Zoom 1 shows the whole room.
type Orbit struct {
	Yaw, Pitch float64 // radians
	Zoom       float64
}

// Limits of an orbit. From below the floor the floor would hide everything.
const (
	minPitch = -0.06
	maxPitch = math.Pi / 2
	minZoom  = 1
	maxZoom  = 6
)

// Clamped is the orbit with pitch and zoom kept in their limits and yaw in
// (-π, π]. A value that is not a number becomes the default.
func (o Orbit) Clamped() Orbit {
	o.Yaw = math.Remainder(o.Yaw, 2*math.Pi)
	if math.IsNaN(o.Yaw) {
		o.Yaw = 0
	}
	if math.IsNaN(o.Pitch) {
		o.Pitch = 0
	}
	if math.IsNaN(o.Zoom) {
		o.Zoom = 1
	}
	o.Pitch = max(minPitch, min(o.Pitch, maxPitch))
	o.Zoom = max(minZoom, min(o.Zoom, maxZoom))
	return o
}

// lensHalfAngle is half the angle of view over the longer side of the picture.
// A long lens keeps parallels nearly parallel, as in a drawing, and still shows
// the inside of the walls.
const lensHalfAngle = 19 * math.Pi / 180

// pad is the margin round the room, of the picture's sides.
const pad = 0.035

// nearPlane is the least depth that is drawn, m.
const nearPlane = 0.05

// camera turns room coordinates into pixels. The picture is shifted, not the
// viewer turned, to centre the room: verticals stay vertical.
type camera struct {
	yaw, pitch              float64
	eye, right, up, forward vec
	focal                   float32 // pixels
	cx, cy                  float32 // where the golfer's centre falls, pixels
}

// looking is a camera that looks a way; the rest of it is still open.
func looking(yaw, pitch float64) camera {
	sy, cy := math.Sincos(yaw)
	sp, cp := math.Sincos(pitch)
	c := camera{
		yaw: yaw, pitch: pitch,
		right:   xyz(float32(sy), float32(-cy), 0),
		forward: xyz(float32(cp*cy), float32(cp*sy), float32(-sp)),
	}
	c.up = c.right.Cross(c.forward)
	return c
}

// newCamera looks at pivot from the orbit's direction, from just far enough
// for all the corners to fit a picture of w×h pixels less a margin. Zoom
// lengthens the lens without moving the viewer, so the camera stays outside
// whatever the corners span.
func newCamera(o Orbit, pivot vec, corners []vec, w, h float32) camera {
	c := looking(o.Yaw, o.Pitch)
	focal := max(w, h) / 2 / float32(math.Tan(lensHalfAngle))
	roomW, roomH := w*(1-2*pad), h*(1-2*pad)

	// The spread of the corners in the picture shrinks as the viewer steps
	// back, so bisection finds the distance.
	near := float32(0)
	for _, p := range corners {
		near = max(near, -p.Sub(pivot).Dot(c.forward))
	}
	lo, hi := near+4*nearPlane, near+1000
	for range 48 {
		d := (lo + hi) / 2
		x0, x1, y0, y1 := c.spread(pivot, corners, d, focal)
		if x1-x0 > roomW || y1-y0 > roomH {
			lo = d
		} else {
			hi = d
		}
	}
	c.eye = pivot.Sub(c.forward.Mul(hi))
	x0, x1, y0, y1 := c.spread(pivot, corners, hi, focal)
	// At zoom 1 the room is centred; further in, the golfer comes to the middle.
	keep := float32(1 / (o.Zoom * o.Zoom))
	c.cx = w/2 - (x0+x1)/2*keep
	c.cy = h/2 - (y0+y1)/2*keep
	c.focal = focal * float32(o.Zoom)
	return c
}

// spread is the extent of the corners in the picture from distance d, pixels
// from the pivot's image.
func (c *camera) spread(pivot vec, corners []vec, d, focal float32) (x0, x1, y0, y1 float32) {
	for i, p := range corners {
		r := p.Sub(pivot)
		k := focal / max(nearPlane, d+r.Dot(c.forward))
		x, y := r.Dot(c.right)*k, -r.Dot(c.up)*k
		if i == 0 {
			x0, x1, y0, y1 = x, x, y, y
		}
		x0, x1, y0, y1 = min(x0, x), max(x1, x), min(y0, y), max(y1, y)
	}
	return x0, x1, y0, y1
}

// depth is how far p lies in front of the viewer along the line of sight, m.
func (c *camera) depth(p vec) float32 { return p.Sub(c.eye).Dot(c.forward) }

// project gives the pixel of p (y downwards) and its depth. Points nearer than
// nearPlane must be clipped away before.
func (c *camera) project(p vec) (x, y, depth float32) {
	r := p.Sub(c.eye)
	depth = r.Dot(c.forward)
	k := c.focal / depth
	return c.cx + r.Dot(c.right)*k, c.cy - r.Dot(c.up)*k, depth
}

// unproject is the point at the given pixel and depth: the inverse of project.
func (c *camera) unproject(x, y, depth float32) vec {
	k := depth / c.focal
	return c.eye.Add(c.forward.Mul(depth)).Add(c.right.Mul((x - c.cx) * k)).Add(c.up.Mul((c.cy - y) * k))
}

// pixels is how many pixels a metre covers at p.
func (c *camera) pixels(p vec) float32 { return c.focal / max(nearPlane, c.depth(p)) }
