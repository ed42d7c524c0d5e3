// Package measure reads off a swing, or off the recorded path of a club, what is
// published of measured swings.
package measure

import (
	"math"

	"wideberth/internal/sim/body"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/swing"
)

const degree = math.Pi / 180

// Quantity is one figure of a swing in the terms in which measured swings are
// published.
type Quantity struct {
	Name  string
	Unit  string // "deg", "m", "s", "m/s", "deg/s", "stature" or "" for a ratio
	Value float64
}

// sampling is the time between two samples of a measured swing, s: 500 Hz, twice
// as fine as the optical systems whose figures it is compared with.
const sampling = 2e-3

// Swing returns what a motion-capture laboratory would read off the swing.
//
// Positions are in statures from the point on the floor midway between the
// ankles at address: x towards the target, y towards the ball, z above the
// soles' ground. Turns are of the line through the shoulder or hip joints in
// plan view against address, positive away from the target before impact and
// "open" (positive towards it) from there on. Trunk lean is of the line from
// the middle of the hips to the middle of the shoulders, from vertical. What a
// recording of the club alone shows comes last, in the terms of Path.
func Swing(s *swing.Swing) []Quantity {
	m := newMeter(s)
	m.address()
	m.top()
	m.down()
	m.impact()
	m.through()
	m.extremes()
	return append(m.list, Path(s.Path(sampling))...)
}

// glimpse is the lines and parts of a swing at one sample.
type glimpse struct {
	t     float64
	lines swing.Lines
	pose  swing.Pose
}

// meter collects the measurements of one swing.
type meter struct {
	swing  *swing.Swing
	body   body.Body
	origin geom.Vec // on the floor midway between the ankles at address
	list   []Quantity

	course []glimpse // the whole swing
	start  glimpse   // standing at address
	crest  glimpse   // at the top
	hit    glimpse   // at impact
	last   glimpse   // holding the finish

	// Samples, as indices of course.
	away, peak, strike int
}

func newMeter(s *swing.Swing) *meter {
	m := &meter{swing: s, body: s.Body()}
	n := int(s.Duration() / sampling)
	m.course = make([]glimpse, n+1)
	for i := range m.course {
		m.course[i] = m.look(float64(i) * sampling)
	}
	m.start, m.crest, m.hit, m.last = m.course[0], m.look(s.TopTime()), m.look(s.ImpactTime()), m.course[n]
	m.origin = geom.Vec{X: -s.Stance.BallForward, Y: m.start.pose[swing.LeadShank].B.Y, Z: m.body.Shoe}
	index := func(t float64) int { return int(math.Round(t / sampling)) }
	m.away, m.peak = index(s.TimeOf(swing.Takeaway)), index(s.TopTime())
	m.strike = index(s.ImpactTime())
	return m
}

func (m *meter) look(t float64) (g glimpse) {
	g.t = t
	g.lines, g.pose = m.swing.LinesAt(t)
	return g
}

func (m *meter) add(name, unit string, value float64) {
	m.list = append(m.list, Quantity{name, unit, value})
}

// place adds a point in statures.
func (m *meter) place(name string, p geom.Vec) {
	q := m.statures(p)
	m.add(name+" x", "stature", q.X)
	m.add(name+" y", "stature", q.Y)
	m.add(name+" z", "stature", q.Z)
}

// statures returns a point in the frame of the measurements.
func (m *meter) statures(p geom.Vec) geom.Vec {
	h := m.body.Stature
	d := r3.Sub(p, m.origin)
	return geom.Vec{X: d.X / h, Y: -d.Y / h, Z: d.Z / h}
}

// turn returns how far a line has turned away from the target in plan view, deg.
func turn(line, from geom.Vec) float64 {
	return (math.Atan2(from.Y, from.X) - math.Atan2(line.Y, line.X)) / degree
}

// lean returns how far the trunk leans to the ball from vertical, deg.
func (g *glimpse) lean() float64 {
	return math.Atan2(-g.lines.Up.Y, g.lines.Up.Z) / degree
}

// leadArm returns the unit vector from the lead shoulder to the lead wrist.
func (g *glimpse) leadArm() geom.Vec {
	return r3.Unit(r3.Sub(g.pose[swing.LeadForearm].B, g.pose[swing.LeadUpperArm].A))
}

// hinge returns the angle between the lead arm and the shaft, 0 in line, deg.
func (g *glimpse) hinge() float64 {
	return math.Acos(geom.Dot(g.leadArm(), g.lines.Club)) / degree
}

// elevation returns how far a unit vector points above level, deg.
func elevation(v geom.Vec) float64 { return math.Asin(v.Z) / degree }

// head returns the middle of the clubhead.
func (g *glimpse) head() geom.Vec {
	return geom.Lerp(g.pose[swing.Clubhead].A, g.pose[swing.Clubhead].B, 0.5)
}

func (g *glimpse) hands() geom.Vec { return g.lines.Hands }

// crown returns the top of the head.
func (g *glimpse) crown() geom.Vec {
	c := g.pose[swing.Head]
	return r3.Add(c.B, r3.Scale(c.R, r3.Unit(r3.Sub(c.B, c.A))))
}

// radius returns the distance from the middle of the shoulders to the hands, in
// statures.
func (m *meter) radius(g *glimpse) float64 {
	return geom.Norm(r3.Sub(g.lines.Hands, g.lines.Hub)) / m.body.Stature
}

// speed returns how fast a point of the figure moves at time t, m/s.
func (m *meter) speed(t float64, point func(*glimpse) geom.Vec) float64 {
	const h = 2e-4
	a, b := m.look(t-h), m.look(t+h)
	return geom.Norm(r3.Sub(point(&b), point(&a))) / (2 * h)
}

// fastest returns the greatest speed of a point between two samples, m/s.
func (m *meter) fastest(from, to int, point func(*glimpse) geom.Vec) float64 {
	most := 0.0
	for i := from + 1; i < to; i++ {
		step := r3.Sub(point(&m.course[i+1]), point(&m.course[i-1]))
		most = max(most, geom.Norm(step)/(2*sampling))
	}
	return most
}

// plane adds the slope to the floor of the plane that best fits a point's path.
func (m *meter) plane(name string, from, to int, point func(*glimpse) geom.Vec) {
	points := make([]geom.Vec, 0, to-from+1)
	for i := from; i <= to; i++ {
		points = append(points, point(&m.course[i]))
	}
	slope, rms := fitPlane(points)
	m.add(name+" slope", "deg", slope/degree)
	m.add(name+" misfit", "m", rms)
}
