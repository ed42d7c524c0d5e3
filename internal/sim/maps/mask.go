package maps

import (
	"slices"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
)

// The reasons why a tee may not be put somewhere, by bit of a StandMap's Mask.
const (
	maskScreenNear = 1 << iota // nearer to the screen than StandOptions.Nearest
	maskScreenFar              // farther than StandOptions.Farthest
	maskSensor                 // outside the strip that the ball sensor reads
	maskMat                    // the mat would not lie flat: across a wall, the screen or a solid
	maskFeet                   // somebody's feet would be in a wall or a solid
	maskBall                   // no room for a ball: in a solid, or under a slope's foot
)

var maskReasons = [...]string{"screen near", "screen far", "sensor", "mat", "feet", "ball"}

// rect is a rectangle on the floor, m.
type rect struct{ x0, y0, x1, y1 float64 }

func (r rect) around(at fit.Spot) rect {
	return rect{at.X + r.x0, at.Y + r.y0, at.X + r.x1, at.Y + r.y1}
}

func (r rect) within(o rect) bool {
	const slack = 1e-6 // m
	return r.x0 >= o.x0-slack && r.y0 >= o.y0-slack && r.x1 <= o.x1+slack && r.y1 <= o.y1+slack
}

func (r rect) meets(o rect) bool {
	return r.x0 < o.x1 && o.x0 < r.x1 && r.y0 < o.y1 && o.y0 < r.y1
}

// footing is the rectangle of floor, seen from the ball, that both feet of
// everybody of a cast need.
func footing(c *fit.Cast) rect {
	s := c.Kin.Family.Central.Stance
	foot := (s.BallToHeels - s.BallToToes) / 4 // about half a foot's breadth
	r := rect{
		-s.BallForward - s.StanceWidth/2 - foot, s.BallToToes,
		-s.BallForward + s.StanceWidth/2 + foot, s.BallToHeels,
	}
	if c.At.Left {
		r.y0, r.y1 = -r.y1, -r.y0
	}
	return r
}

// site is what a tee must keep clear of, apart from swings.
type site struct {
	p        plan.Plan
	floor    rect   // in front of the screen
	onFloor  []rect // solids that a mat or a foot would meet
	feet     []rect // of everybody, seen from the ball
	nearest  float64
	farthest float64
}

func newSite(p plan.Plan, casts []fit.Cast, o StandOptions) site {
	s := site{p: p, floor: rect{0, 0, p.Room.Length, p.Room.Width}, nearest: o.Nearest, farthest: o.Farthest}
	if p.Screen != nil {
		s.floor.x1 = min(s.floor.x1, p.Screen.X)
	}
	standing := p.Floor.Standing()
	for _, b := range p.Room.Solids {
		const step = 0.10 // m above the surface: feet fit under what is higher
		if b.Min[2] < standing+step && b.Max[2] > standing {
			s.onFloor = append(s.onFloor, rect{b.Min[0], b.Min[1], b.Max[0], b.Max[1]})
		}
	}
	for i := range casts {
		s.feet = append(s.feet, footing(&casts[i]))
	}
	return s
}

// fits reports whether a rectangle lies on free floor.
func (s *site) fits(r rect) bool {
	return r.within(s.floor) && !slices.ContainsFunc(s.onFloor, r.meets)
}

// against returns the reasons against a tee on a spot; 0 for none.
func (s *site) against(at fit.Spot) (m int16) {
	const slack = 1e-6 // m
	if c := s.p.Screen; c != nil {
		if c.X-at.X < s.nearest-slack {
			m |= maskScreenNear
		}
		if c.X-at.X > s.farthest+slack {
			m |= maskScreenFar
		}
	}
	if c := s.p.Sensor; c != nil && (at.X < c.Min[0]-slack || at.X > c.Max[0]+slack || at.Y < c.Min[1]-slack || at.Y > c.Max[1]+slack) {
		m |= maskSensor
	}
	if c := s.p.Floor.Mat; c != nil && !s.fits(rect{-c.Length / 2, -c.Width / 2, c.Length / 2, c.Width / 2}.around(at)) {
		m |= maskMat
	}
	if slices.ContainsFunc(s.feet, func(f rect) bool { return !s.fits(f.around(at)) }) {
		m |= maskFeet
	}
	if !fit.BallFits(s.p, at) {
		m |= maskBall
	}
	return m
}
