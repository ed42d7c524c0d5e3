package drawing

import (
	"math"

	"wideberth/internal/sim/plan"
)

// cutHeight is where the plan view is cut (m above the structural floor): what
// lies wholly above it is drawn hidden. 1.2 m is drawing-office practice, no source.
const cutHeight = 1.2

// seatSides is the number of sides of the polygon that stands for a seat's disc.
const seatSides = 24

// draft collects the lines of the three views.
type draft [numViews][]Line

func (d *draft) line(view int, name, kind string, hidden bool, points ...Point) {
	d.add(view, Line{Name: name, Kind: kind, Points: points, Hidden: hidden})
}

func (d *draft) rect(view int, name, kind string, hidden bool, lo, hi Point) {
	points := []Point{lo, {hi[0], lo[1]}, hi, {lo[0], hi[1]}}
	d.add(view, Line{Name: name, Kind: kind, Points: points, Closed: true, Hidden: hidden})
}

func (d *draft) add(view int, l Line) {
	for i, p := range l.Points {
		l.Points[i] = round(p)
	}
	d[view] = append(d[view], l)
}

// box draws an axis-aligned box into all three views.
func (d *draft) box(name, kind string, lo, hi [3]float64) {
	d.rect(viewPlan, name, kind, lo[2] > cutHeight, Point{lo[0], lo[1]}, Point{hi[0], hi[1]})
	d.rect(viewSide, name, kind, false, Point{lo[0], lo[2]}, Point{hi[0], hi[2]})
	d.rect(viewFace, name, kind, false, Point{lo[1], lo[2]}, Point{hi[1], hi[2]})
}

func roomLines(in Input) draft {
	var d draft
	p := in.Plan
	l, w, h := p.Room.Length, p.Room.Width, p.Room.Height
	top := d.floor(in)

	d.line(viewPlan, "right wall", KindWall, false, Point{0, 0}, Point{l, 0})
	d.line(viewPlan, "front wall", KindWall, false, Point{l, 0}, Point{l, w})
	d.line(viewPlan, "left wall", KindWall, false, Point{l, w}, Point{0, w})
	d.line(viewPlan, "back wall", KindWall, false, Point{0, w}, Point{0, 0})

	d.line(viewSide, "floor", KindWall, false, Point{0, 0}, Point{l, 0})
	d.line(viewSide, "front wall", KindWall, false, Point{l, 0}, Point{l, h})
	d.line(viewSide, "ceiling", KindWall, false, Point{l, h}, Point{0, h})
	d.line(viewSide, "back wall", KindWall, false, Point{0, h}, Point{0, 0})

	d.line(viewFace, "floor", KindWall, false, Point{0, 0}, Point{w, 0})
	d.line(viewFace, "left wall", KindWall, false, Point{w, 0}, Point{w, h})
	d.line(viewFace, "ceiling", KindWall, false, Point{w, h}, Point{0, h})
	d.line(viewFace, "right wall", KindWall, false, Point{0, h}, Point{0, 0})

	for _, s := range p.Room.Slopes {
		d.slope(s, p.Room)
	}
	for _, s := range p.Room.Solids {
		d.box(s.Name, KindSolid, s.Min, s.Max)
	}
	if p.Screen != nil {
		d.screen(*p.Screen)
	}
	for _, s := range p.Hung {
		d.box(s.Name, KindHung, s.Min, s.Max)
	}
	for _, s := range p.Seats {
		d.seat(s, top)
	}
	if s := p.Sensor; s != nil {
		lo, hi := s.Min, s.Max
		d.rect(viewPlan, s.Name, KindSensor, false, lo, hi)
		d.line(viewSide, s.Name, KindSensor, false, Point{lo[0], top}, Point{hi[0], top})
		d.line(viewFace, s.Name, KindSensor, false, Point{lo[1], top}, Point{hi[1], top})
	}
	return d
}

// floor draws the layers as the lines of their tops, and the mat. It returns
// the height of the top layer.
func (d *draft) floor(in Input) (top float64) {
	room := in.Plan.Room
	for _, layer := range in.Plan.Floor.Layers {
		top += layer.Thickness
		d.line(viewSide, layer.Name, KindFloor, false, Point{0, top}, Point{room.Length, top})
		d.line(viewFace, layer.Name, KindFloor, false, Point{0, top}, Point{room.Width, top})
	}
	if m, ok := in.At.Mat(in.Plan, in.Address); ok {
		d.box("mat", KindMat, [3]float64{m.Min.X, m.Min.Y, m.Min.Z}, [3]float64{m.Max.X, m.Max.Y, m.Max.Z})
	}
	return top
}

// slope draws a sloping ceiling: its own line in the elevation that sees it
// edge-on; its knee in the other elevation (hidden when it is on the viewer's
// side); and in the plan the crease where it leaves the ceiling, or where the
// cut meets it.
func (d *draft) slope(s plan.Slope, room plan.Room) {
	across := s.Wall.Side() // it slopes along y
	from, into := 0.0, 1.0
	switch s.Wall {
	case plan.WallLeft:
		from, into = room.Width, -1
	case plan.WallFront:
		from, into = room.Length, -1
	}
	crease := from + into*s.Run
	edge, knee, span := viewSide, viewFace, room.Width
	if across {
		edge, knee, span = viewFace, viewSide, room.Length
	}
	d.line(edge, s.Name, KindSlope, false, Point{from, s.KneeHeight}, Point{crease, room.Height})
	behind := s.Wall == plan.WallRight || s.Wall == plan.WallBack
	d.line(knee, s.Name, KindSlope, behind, Point{0, s.KneeHeight}, Point{span, s.KneeHeight})

	along := func(at float64, hidden bool) {
		a, b := Point{at, 0}, Point{at, room.Width}
		if across {
			a, b = Point{0, at}, Point{room.Length, at}
		}
		d.line(viewPlan, s.Name, KindSlope, hidden, a, b)
	}
	along(crease, true)
	if s.KneeHeight < cutHeight && room.Height > s.KneeHeight {
		along(from+into*s.Run*(cutHeight-s.KneeHeight)/(room.Height-s.KneeHeight), false)
	}
}

func (d *draft) screen(s plan.Screen) {
	y0, y1, z0, z1 := s.Edges()
	d.line(viewPlan, "screen", KindScreen, false, Point{s.X, y0}, Point{s.X, y1})
	d.line(viewSide, "screen", KindScreen, false, Point{s.X, z0}, Point{s.X, z1})
	d.rect(viewFace, "screen", KindScreen, false, Point{y0, z0}, Point{y1, z1})
	if s.SideReturn > 0 {
		x := s.X - s.SideReturn
		d.line(viewPlan, "left return", KindReturn, false, Point{x, y1}, Point{s.X, y1})
		d.line(viewPlan, "right return", KindReturn, false, Point{x, y0}, Point{s.X, y0})
		d.rect(viewSide, "left return", KindReturn, false, Point{x, z0}, Point{s.X, z1})
	}
	if s.TopReturn > 0 {
		x := s.X - s.TopReturn
		d.rect(viewPlan, "top return", KindReturn, z1 > cutHeight, Point{x, y0}, Point{s.X, y1})
		d.line(viewSide, "top return", KindReturn, false, Point{x, z1}, Point{s.X, z1})
	}
}

func (d *draft) seat(s plan.Seat, top float64) {
	ring := make([]Point, seatSides)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / seatSides)
		ring[i] = Point{s.X + s.Radius*cos, s.Y + s.Radius*sin}
	}
	d.add(viewPlan, Line{Name: s.Name, Kind: KindSeat, Points: ring, Closed: true})
	d.line(viewSide, s.Name, KindSeat, false, Point{s.X - s.Radius, top}, Point{s.X + s.Radius, top})
	d.line(viewFace, s.Name, KindSeat, false, Point{s.Y - s.Radius, top}, Point{s.Y + s.Radius, top})
}
