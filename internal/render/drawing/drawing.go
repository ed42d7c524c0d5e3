// Package drawing makes the three orthographic drawings of an answer: the plan
// from above, the side elevation and the elevation that looks at the target.
// Each holds the room's lines, the outline of everything that golfer and club
// sweep through, the clubhead's path, the golfer at the tightest moment and the
// tape from there to the nearest surface. Coordinates are room coordinates in
// metres, rounded to 1 mm; who draws them only scales them to the paper.
package drawing

import (
	"cmp"
	"math"
	"slices"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Point is a point of one drawing, metres.
type Point [2]float64

// Set is the set of drawings.
type Set struct {
	Plan View `json:"plan"` // from above: x, y
	Side View `json:"side"` // from the right wall: x, z
	Face View `json:"face"` // looking at the target: y (growing to the left), z
}

// View is one drawing. Sweep polygons run so that holes turn the other way than
// outlines: even-odd and non-zero filling give the same area.
type View struct {
	Axes   [2]string `json:"axes"`
	Size   Point     `json:"size"`
	Lines  []Line    `json:"lines"`
	Sweep  [][]Point `json:"sweep"`
	Path   []Point   `json:"path"`
	Figure []Limb    `json:"figure"` // farthest first, so that painting in order hides what is behind
	Tape   *TapeLine `json:"tape,omitempty"`
	First  *Mark     `json:"first,omitempty"` // the strike mark: the first touch, in words and where on the surface
	Marks  []Mark    `json:"marks"`
}

// Line is a line of the room. Kind is one of the Kind constants.
type Line struct {
	Name   string  `json:"name"`
	Kind   string  `json:"kind"`
	Points []Point `json:"points"`
	Closed bool    `json:"closed"`
	Hidden bool    `json:"hidden"` // drawn dashed: above the cut, or behind the viewer
}

// What a line stands for.
const (
	KindWall   = "wall"
	KindSlope  = "slope"
	KindSolid  = "solid"
	KindScreen = "screen"
	KindReturn = "return"
	KindHung   = "hung"
	KindMat    = "mat"
	KindFloor  = "floor"
	KindSeat   = "seat"
	KindSensor = "sensor"
)

// Limb is one capsule of the golfer or the club.
type Limb struct {
	Part string  `json:"part"`
	A    Point   `json:"a"`
	B    Point   `json:"b"`
	R    float64 `json:"r"`
}

// TapeLine is the reading from the golfer or club (A) to the nearest surface (B).
type TapeLine struct {
	A       Point       `json:"a"`
	B       Point       `json:"b"`
	Label   string      `json:"label"`
	Verdict fit.Verdict `json:"verdict"`
	Surface string      `json:"surface"`
	// Fray is the share of the tape, from A, over which the model may be wrong: that
	// end is drawn frayed.
	Fray float64 `json:"fray"`
}

// Mark is a named point on the floor or at the ball.
type Mark struct {
	Name string `json:"name"`
	At   Point  `json:"at"`
}

// Tightest is the tightest moment of a swing, in room coordinates.
type Tightest struct {
	Pose    swing.Pose // golfer frame, as the motion's poses
	From    geom.Vec   // the point of golfer or club nearest to the surface
	To      geom.Vec   // the point of the surface nearest to it
	Label   string
	Verdict fit.Verdict
	Surface string
	// ModelError is how far the model's paths lie from recorded ones, m.
	ModelError float64
}

// Touch is the first touch of anybody's swing with a surface, in room coordinates.
type Touch struct {
	Words string
	At    geom.Vec
}

// Input is what a set of drawings is made of.
type Input struct {
	Plan   plan.Plan
	At     sweep.Placement // where the golfer frame lies
	Motion *Motion
	// Address is the golfer at the ball, golfer frame: the marks at the feet.
	Address  swing.Pose
	Tightest Tightest
	First    *Touch // nil where nothing is struck
}

// projection picks the two axes of a drawing and the depth towards the viewer.
type projection struct {
	axes  [2]string
	flat  func(geom.Vec) Point
	lift  func(Point) geom.Vec // any point that flat takes back to the same place
	depth func(geom.Vec) float64
}

var projections = [numViews]projection{
	viewPlan: {
		axes:  [2]string{"x", "y"},
		flat:  func(v geom.Vec) Point { return Point{v.X, v.Y} },
		lift:  func(p Point) geom.Vec { return geom.Vec{X: p[0], Y: p[1]} },
		depth: func(v geom.Vec) float64 { return v.Z },
	},
	viewSide: {
		axes:  [2]string{"x", "z"},
		flat:  func(v geom.Vec) Point { return Point{v.X, v.Z} },
		lift:  func(p Point) geom.Vec { return geom.Vec{X: p[0], Z: p[1]} },
		depth: func(v geom.Vec) float64 { return -v.Y },
	},
	viewFace: {
		axes:  [2]string{"y", "z"},
		flat:  func(v geom.Vec) Point { return Point{v.Y, v.Z} },
		lift:  func(p Point) geom.Vec { return geom.Vec{Y: p[0], Z: p[1]} },
		depth: func(v geom.Vec) float64 { return -v.X },
	},
}

const (
	viewPlan = iota
	viewSide
	viewFace
	numViews
)

// Build draws in. It never fails: what the plan has not got is not drawn.
func Build(in Input) Set {
	room := in.Plan.Room
	lines := roomLines(in)
	sizes := [numViews]Point{
		viewPlan: {room.Length, room.Width},
		viewSide: {room.Length, room.Height},
		viewFace: {room.Width, room.Height},
	}
	var views [numViews]View
	for i, pr := range projections {
		views[i] = View{
			Axes:   pr.axes,
			Size:   sizes[i],
			Lines:  lines[i],
			Sweep:  placeAll(in.Motion.sweep[i], pr, in.At),
			Path:   place(in.Motion.path[i], pr, in.At),
			Figure: figure(in.Tightest.Pose, pr, in.At),
			Tape:   tape(in.Tightest, pr),
			First:  first(in.First, pr),
			Marks:  marks(in, pr),
		}
	}
	return Set{Plan: views[viewPlan], Side: views[viewSide], Face: views[viewFace]}
}

// Standing is the plan of somebody at the ball, from above: the lines of the room
// with the mat as it lies under them, and golfer and club as View's Figure.
func Standing(p plan.Plan, at sweep.Placement, address swing.Pose) (lines []Line, limbs []Limb) {
	return roomLines(Input{Plan: p, At: at, Address: address})[viewPlan], figure(address, projections[viewPlan], at)
}

// place takes a line of a motion into the room.
func place(line []Point, pr projection, at sweep.Placement) []Point {
	out := make([]Point, len(line))
	for i, p := range line {
		out[i] = round(pr.flat(at.ToRoom(pr.lift(p))))
	}
	return out
}

func placeAll(lines [][]Point, pr projection, at sweep.Placement) [][]Point {
	out := make([][]Point, len(lines))
	for i, l := range lines {
		out[i] = place(l, pr, at)
	}
	return out
}

// figure lists the limbs in the order in which to paint them.
func figure(pose swing.Pose, pr projection, at sweep.Placement) []Limb {
	var depth [swing.NumParts]float64
	var parts [swing.NumParts]swing.Part
	for i, c := range pose {
		parts[len(parts)-1-i] = swing.Part(i) // of equally deep ones, the first is painted last
		depth[i] = (pr.depth(at.ToRoom(c.A)) + pr.depth(at.ToRoom(c.B))) / 2
	}
	slices.SortStableFunc(parts[:], func(p, q swing.Part) int { return cmp.Compare(depth[p], depth[q]) })
	out := make([]Limb, len(parts))
	for i, p := range parts {
		c := pose[p]
		out[i] = Limb{Part: p.String(), A: round(pr.flat(at.ToRoom(c.A))), B: round(pr.flat(at.ToRoom(c.B))), R: mm(c.R)}
	}
	return out
}

func tape(r Tightest, pr projection) *TapeLine {
	if r.Label == "" {
		return nil
	}
	fray := 1.0
	if d := geom.Norm(r3.Sub(r.To, r.From)); r.ModelError < d {
		fray = mm(r.ModelError / d)
	}
	return &TapeLine{A: round(pr.flat(r.From)), B: round(pr.flat(r.To)), Label: r.Label, Verdict: r.Verdict, Surface: r.Surface, Fray: fray}
}

func first(t *Touch, pr projection) *Mark {
	if t == nil {
		return nil
	}
	return &Mark{t.Words, round(pr.flat(t.At))}
}

// marks are the ball, the ends of both feet at address, and the other tees.
func marks(in Input, pr projection) []Mark {
	at := func(v geom.Vec) Point { return round(pr.flat(v)) }
	out := []Mark{{Name: "ball", At: at(in.At.ToRoom(geom.Vec{}))}}
	for _, f := range []struct {
		name string
		part swing.Part
	}{{"lead", swing.LeadFoot}, {"trail", swing.TrailFoot}} {
		heel, toe := in.At.Footprint(in.Address[f.part])
		out = append(out, Mark{f.name + " heel", at(heel)}, Mark{f.name + " toe", at(toe)})
	}
	ball := out[0].At
	for _, t := range in.Plan.Tees {
		p := at(geom.Vec{X: t.X, Y: t.Y, Z: in.At.Ball.Z})
		if p != ball {
			out = append(out, Mark{"tee " + t.Name, p})
		}
	}
	return out
}

// mm rounds metres to whole millimetres, which keeps the drawings short as
// JSON. Adding zero turns -0 into 0.
func mm(v float64) float64 { return math.Round(v*1000)/1000 + 0 }

func round(p Point) Point { return Point{mm(p[0]), mm(p[1])} }
