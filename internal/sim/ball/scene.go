package ball

import (
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// Tube (m) is the width of the enclosure's frame, taken as square tube outside
// the cloth along its sides and top, at the screen and at the front edge of each
// return. An assumption: 2 in. There is none along the bottom.
const Tube = 0.05

// flush (m): a mat that rises less than this above the floor is level with it.
const flush = 1e-6

// Scene is a plan made ready for many balls.
type Scene struct {
	Air     Air
	Targets []Target
	screen  *plan.Screen
	plan    plan.Plan
}

// NewScene lists what a ball can meet in the plan's room. Room, slopes and hung
// things count as bare and hard, and solids without a cover.
func NewScene(p plan.Plan) *Scene {
	s := &Scene{Air: AirOf(p.Air), screen: p.Screen, plan: p}
	s.addScreen(p.Screen)
	plane := func(name string, k Kind, m Material, h geom.Halfspace) {
		s.Targets = append(s.Targets, Target{Name: name, Kind: k, Material: m, Half: h})
	}
	bare := p
	bare.Screen = nil // its plane would hide the front wall from a ball that passes it
	for _, f := range sweep.Surfaces(bare) {
		switch f.Kind {
		case sweep.Ceiling:
			plane(f.Name, KindCeiling, Hard, f.Plane)
		case sweep.Wall:
			plane(f.Name, KindWall, Hard, f.Plane)
		case sweep.Slope:
			plane(f.Name, KindSlope, Hard, f.Plane)
		case sweep.Solid:
			s.addBox(f.Name, KindSolid, coverOf(f.Cover), f.Box.Min, f.Box.Max)
		case sweep.Hung:
			s.addBox(f.Name, KindHung, Hard, f.Box.Min, f.Box.Max)
		}
	}
	plane("floor", KindFloor, Ground, geom.Halfspace{N: geom.Vec{Z: 1}, D: p.Floor.Top()})
	// A mat that stands proud is a step for the ball, laid about the tee for golfers of
	// either hand; where it lies under one of them says sweep.Placement.Mat.
	if m := p.Floor.Mat; m != nil && p.Floor.Standing() > p.Floor.Top()+flush {
		for _, t := range p.Tees {
			s.addBox("mat", KindFloor, Ground,
				geom.Vec{X: t.X - m.Length/2, Y: t.Y - m.Width/2, Z: 0},
				geom.Vec{X: t.X + m.Length/2, Y: t.Y + m.Width/2, Z: p.Floor.Standing()})
		}
	}
	return s
}

// coverOf is what a ball meets of a solid.
func coverOf(cover string) Material {
	switch cover {
	case plan.CoverFoam:
		return Foam
	case plan.CoverCloth:
		return Cloth
	}
	return Hard
}

func (s *Scene) addBox(name string, k Kind, m Material, low, high geom.Vec) {
	s.Targets = append(s.Targets, Target{Name: name, Kind: k, Material: m, Box: &geom.Box{Min: low, Max: high}})
}

// addScreen adds cloth and frame. The cloth comes first: a ball that straddles
// the edge of cloth and tube counts as on the cloth.
func (s *Scene) addScreen(c *plan.Screen) {
	if c == nil {
		return
	}
	right, left, bottom, top := c.Edges()
	sheet := func(name string, k Kind, x0, x1, y0, y1, z0, z1 float64) {
		m := Cloth
		if k == KindFrame {
			m = Steel
		}
		s.addBox(name, k, m, geom.Vec{X: x0, Y: y0, Z: z0}, geom.Vec{X: x1, Y: y1, Z: z1})
	}
	sheet("screen", KindScreen, c.X, c.X, right, left, bottom, top)
	hoop := func(name string, x float64, sides, above bool) {
		if sides {
			sheet(name, KindFrame, x, x+Tube, left, left+Tube, bottom, top+Tube)
			sheet(name, KindFrame, x, x+Tube, right-Tube, right, bottom, top+Tube)
		}
		if above {
			sheet(name, KindFrame, x, x+Tube, right, left, top, top+Tube)
		}
	}
	if d := c.SideReturn; d > 0 {
		sheet("left return", KindSideReturn, c.X-d, c.X, left, left, bottom, top)
		sheet("right return", KindSideReturn, c.X-d, c.X, right, right, bottom, top)
		hoop("front frame", c.X-d-Tube, true, false)
	}
	if d := c.TopReturn; d > 0 {
		sheet("top return", KindTopReturn, c.X-d, c.X, right, left, top, top)
		hoop("front frame", c.X-d-Tube, false, true)
	}
	hoop("frame", c.X, true, true)
}

// First returns what a ball meets first. The launch is relative to the tee, as
// FromClub gives it.
func First(p plan.Plan, t plan.Tee, l Launch) Contact {
	return NewScene(p).First(t, l)
}

// First is as the function First, for one of many balls.
func (s *Scene) First(t plan.Tee, l Launch) Contact {
	return s.Fly(l.At(s.plan, t).State(), false).End
}

// Fly flies a ball from any state in the room to what it meets first.
func (s *Scene) Fly(from State, keepTrail bool) Path {
	p := fly(from, s.Air, s.Targets, Options{Trail: keepTrail})
	s.judge(from, &p.End)
	return p
}

// judge says of a contact whether the enclosure caught the ball or it slipped
// past the screen.
func (s *Scene) judge(from State, c *Contact) {
	if s.screen == nil {
		return
	}
	right, left, bottom, top := s.screen.Edges()
	at := c.Arrival.P
	c.Short = s.screen.X - at.X
	switch c.Kind {
	case KindScreen:
		c.Caught = c.Normal.X < 0
	case KindSideReturn, KindTopReturn:
		c.Caught = at.Y > right && at.Y < left && at.Z < top
	}
	if c.Caught || c.Short > 0 || from.P.X > s.screen.X || c.Kind == KindNone || c.Kind == KindFrame {
		return
	}
	c.Kind = KindGap
	y, z := s.crossing(from)
	switch {
	case z > top:
		c.Beside = "over"
	case z < bottom:
		c.Beside = "under"
	case y > left:
		c.Beside = "left of"
	case y < right:
		c.Beside = "right of"
	default:
		c.Beside = "behind"
	}
}

// crossing returns where (y, z) the ball from the state meets the plane of the
// screen with nothing else in its way.
func (s *Scene) crossing(from State) (y, z float64) {
	plane := []Target{{Half: geom.Halfspace{N: geom.Vec{X: -1}, D: -s.screen.X - Radius}}}
	at := fly(from, s.Air, plane, Options{}).End.Arrival.P
	return at.Y, at.Z
}
