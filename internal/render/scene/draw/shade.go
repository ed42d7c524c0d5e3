package draw

import (
	"math"

	"wideberth/internal/render/scene/paint"
)

// Shade is the shadow that golfer and club throw on a projector's image, moment by
// moment. Lengths are m in the room's frame.
type Shade struct {
	Rate                            float64 // moments a second
	NX, NY                          int     // cells of the image, across and up
	X, Right, Bottom, Width, Height float32 // of the image; Right is the y of the golfer's right end
	// Runs are the dark cells of every moment: the first and how many, in turn, row by
	// row from the bottom, in each from the golfer's right.
	Runs [][]int32
}

// ShowShade lays a shadow on the screen; nil takes it away again.
func (p *Picture) ShowShade(s *Shade) { p.shade = s }

// The light of an image is sorted so much nearer than the cloth it lies on, m: more than
// the middle of a patch of cloth can be nearer than the middle of a piece of light. The
// shadow lies over the light.
const lightLift, shadeLift = 0.20, 0.25

// draw queues the image and its dark cells at a time, s. From behind the screen nothing
// is drawn: what one sees there is the back of the cloth.
func (s *Shade) draw(c *canvas, time float64) {
	if s == nil || len(s.Runs) == 0 || c.cam.eye.X >= s.X {
		return
	}
	lit := c.theme.Tape.Alpha(0.22)
	nx, ny := cells(s.Width), cells(s.Height)
	for k := range nx * ny {
		y, z := s.Right+s.Width*float32(k%nx)/float32(nx), s.Bottom+s.Height*float32(k/nx)/float32(ny)
		s.piece(c, y, z, s.Width/float32(nx), s.Height/float32(ny), lit, lightLift)
	}
	dark := c.theme.TapeInk.Alpha(0.75) // dark by lamplight too
	across, up := s.Width/float32(s.NX), s.Height/float32(s.NY)
	longest := max(1, int(patchSize/across))
	runs := s.Runs[max(0, min(int(math.Round(time*s.Rate)), len(s.Runs)-1))]
	for i := 0; i+1 < len(runs); i += 2 {
		at, end := int(runs[i]), min(int(runs[i]+runs[i+1]), s.NX*s.NY)
		for at < end { // to the end of its row, in pieces short enough to be sorted
			n := min(end-at, s.NX-at%s.NX, longest)
			s.piece(c, s.Right+across*float32(at%s.NX), s.Bottom+up*float32(at/s.NX), across*float32(n), up, dark, shadeLift)
			at += n
		}
	}
}

// piece queues a rectangle of the image by its lower right corner, as the golfer sees it.
func (s *Shade) piece(c *canvas, y, z, wide, high float32, colour paint.Colour, lift float32) {
	var v [4]uint16
	depth := float32(0)
	for k, p := range [4]vec{xyz(s.X, y, z), xyz(s.X, y+wide, z), xyz(s.X, y+wide, z+high), xyz(s.X, y, z+high)} {
		px, py, d := c.cam.project(p)
		if d < nearPlane {
			return
		}
		depth += d / 4
		v[k] = c.Vertex(px, py, colour)
	}
	c.Later(v[0], v[1], v[2], depth-lift)
	c.Later(v[0], v[2], v[3], depth-lift)
}
