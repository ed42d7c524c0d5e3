package draw

import "math"

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

// shadeLift is how much nearer than the cloth it lies on a shadow is sorted, m: more than
// the middle of a patch of cloth can be nearer than the middle of a piece of shadow.
const shadeLift = 0.2

// draw queues the image's edge and its dark cells at a time, s. From behind the screen
// nothing is drawn: what one sees there is the back of the cloth.
func (s *Shade) draw(c *canvas, time float64) {
	if s == nil || len(s.Runs) == 0 || c.cam.eye.X >= s.X {
		return
	}
	edge := c.theme.Ink.Alpha(0.5)
	left, top := s.Right+s.Width, s.Bottom+s.Height
	c.strip(xyz(s.X, s.Right, s.Bottom), xyz(s.X, left, s.Bottom), 1.2, edge)
	c.strip(xyz(s.X, left, s.Bottom), xyz(s.X, left, top), 1.2, edge)
	c.strip(xyz(s.X, left, top), xyz(s.X, s.Right, top), 1.2, edge)
	c.strip(xyz(s.X, s.Right, top), xyz(s.X, s.Right, s.Bottom), 1.2, edge)
	runs := s.Runs[max(0, min(int(math.Round(time*s.Rate)), len(s.Runs)-1))]
	longest := max(1, int(patchSize/s.Width*float32(s.NX)))
	for i := 0; i+1 < len(runs); i += 2 {
		at, end := int(runs[i]), int(runs[i]+runs[i+1])
		for at < min(end, s.NX*s.NY) { // to the end of its row, in pieces short enough to be sorted
			n := min(end-at, s.NX-at%s.NX, longest)
			s.cells(c, at%s.NX, at/s.NX, n)
			at += n
		}
	}
}

// cells queues n cells of a row.
func (s *Shade) cells(c *canvas, from, row, n int) {
	across, up := s.Width/float32(s.NX), s.Height/float32(s.NY)
	y0, y1 := s.Right+across*float32(from), s.Right+across*float32(from+n)
	z0, z1 := s.Bottom+up*float32(row), s.Bottom+up*float32(row+1)
	var v [4]uint16
	depth := float32(0)
	for k, p := range [4]vec{xyz(s.X, y0, z0), xyz(s.X, y1, z0), xyz(s.X, y1, z1), xyz(s.X, y0, z1)} {
		x, y, d := c.cam.project(p)
		if d < nearPlane {
			return
		}
		depth += d / 4
		v[k] = c.Vertex(x, y, c.theme.Ink.Alpha(0.7))
	}
	c.Later(v[0], v[1], v[2], depth-shadeLift)
	c.Later(v[0], v[2], v[3], depth-shadeLift)
}
