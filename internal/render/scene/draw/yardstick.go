package draw

import "wideberth/internal/render/scene/wire"

// yardstick is what tells how large the room is: a post as high as a door at the wall
// behind the golfer, and a staff of a yard or a metre on the floor.
type yardstick struct {
	post, stick           [2]vec // ends; equal where there is no place
	doorWords, stickWords string

	letters [2]lettering // where the two are lettered
	shown   [2]bool
}

// doorHeight (m) is that of a common door leaf, 6 ft 8 in: common practice.
const doorHeight = 2.032

// newYardstick finds a place for the post, beside the golfer and towards the target,
// where the ceiling is high enough and nothing is built in, and lays the staff along the
// wall before the golfer.
func newYardstick(s *wire.Recording, m *room, leftHanded bool) yardstick {
	const inch, yard, fromWall = 0.0254, 0.9144, 0.03
	y := yardstick{doorWords: "door, 2.03 m", stickWords: "1 m"}
	long := float32(1)
	if s.Tick == inch {
		y.doorWords, y.stickWords, long = "door, 6 ft 8 in", "1 yd", yard
	}
	if len(m.shell) == 0 {
		return yardstick{}
	}
	back, front := m.size.Y-fromWall, float32(0.25)
	if leftHanded {
		back, front = fromWall, m.size.Y-front
	}
	ball := fromWire(s.Ball)
	for _, ahead := range [...]float32{1.5, 1.1, 1.9, -1.5, -1.1, -1.9} {
		foot := xyz(ball.X+ahead, back, m.floor)
		top := xyz(foot.X, foot.Y, m.floor+doorHeight)
		if foot.X > 0 && foot.X < m.size.X && !m.through(top) && !m.through(foot.Lerp(top, 0.5)) {
			y.post = [2]vec{foot, top}
			break
		}
	}
	from := max(0.1, min(ball.X-long/2, m.size.X-long-0.1))
	y.stick = [2]vec{xyz(from, front, m.floor+floorLift), xyz(from+long, front, m.floor+floorLift)}
	return y
}

// place finds room for the two words, at the top of the post and at the end of the
// staff.
func (y *yardstick) place(c *canvas) {
	for i, w := range [2]struct {
		at    vec
		words string
		by    point // where the text stands from there, in its own size
	}{{y.post[1], y.doorWords, point{-0.5, -1.15}}, {y.stick[1], y.stickWords, point{0.1, -0.5}}} {
		y.shown[i] = false
		g := c.texts[w.words]
		px, py, d := c.cam.project(w.at)
		if g.Width == 0 || d < nearPlane || w.at == (vec{}) {
			continue
		}
		h := float32(yardText) * c.scale
		size := point{h * g.Width / g.Height, h}
		if from, _, near := c.cam.project(y.stick[0]); i == 1 && near >= nearPlane && from > px { // seen from the other side
			w.by.x = -1 - w.by.x
		}
		at := boxAt(point{px + w.by.x*size.x, py + w.by.y*size.y}, size)
		y.letters[i] = lettering{at, g}
		y.shown[i] = c.claim(at, labelGap*c.scale)
	}
}

const (
	yardText  = 12  // CSS pixels
	yardWidth = 3.0 // of post and staff, CSS pixels
	yardParts = 4   // light and dark in turn
)

// draw lays post and staff down, light and dark in turn as on a surveyor's staff.
func (y *yardstick) draw(c *canvas) {
	for _, ends := range [2][2]vec{y.post, y.stick} {
		a, b, ok := clipSegment(ends[0], ends[1], c.cam.forward, c.cam.forward.Dot(c.cam.eye)+nearPlane)
		if !ok || ends[0] == ends[1] {
			continue
		}
		for i := range yardParts {
			p, q := a.Lerp(b, float32(i)/yardParts), a.Lerp(b, float32(i+1)/yardParts)
			c.strip(p, q, yardWidth+1.6, c.theme.Lettering)
			if i%2 == 0 {
				c.strip(p, q, yardWidth, c.theme.Plate)
			}
		}
	}
	for i := range y.letters {
		if y.shown[i] {
			l, at := &y.letters[i], [2]vec{y.post[1], y.stick[1]}[i]
			depth := c.cam.depth(at) - markLift // before the edges of the wall behind
			middle := (l.lo.y + l.hi.y) / 2
			c.lineAt(point{l.lo.x, middle}, point{l.hi.x, middle}, l.hi.y-l.lo.y, c.theme.Wall.Alpha(0.75), depth)
			c.writeAt(l.lo, l.hi.y-l.lo.y, l.text, c.theme.Lettering, depth)
		}
	}
}
