package measure

import (
	"math"
	"strconv"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/swing"
)

// Path returns what can be read off the path of a club alone, be it
// recorded or modelled: samples in order of time, from address to past the
// finish. Heights are above the surface that the golfer stands on, distances
// behind from the ball to the golfer's back. The top is where the hands are
// highest before impact.
func Path(path []swing.PathSample) []Quantity {
	m := pathMeter{path: path}
	for m.strike < len(path)-1 && path[m.strike].Time < 0 {
		m.strike++
	}
	for i := range m.strike {
		if path[i].Hands.Z > path[m.top].Hands.Z {
			m.top = i
		}
	}
	m.hands("address", path[0])
	m.hands("top", path[m.top])
	m.hands("impact", m.at(0))
	m.planes()
	m.reaches()
	m.after()
	return m.list
}

// pathMeter collects the measurements of one path.
type pathMeter struct {
	path        []swing.PathSample
	top, strike int // samples: at the top, first after impact
	list        []Quantity
}

func (m *pathMeter) add(name, unit string, value float64) {
	m.list = append(m.list, Quantity{name, unit, value})
}

// at returns the path at a time from impact, between samples on the chord.
func (m *pathMeter) at(t float64) swing.PathSample {
	i := 1
	for i < len(m.path)-1 && m.path[i].Time < t {
		i++
	}
	a, b := m.path[i-1], m.path[i]
	share := min(1, max(0, (t-a.Time)/(b.Time-a.Time)))
	return swing.PathSample{
		Time: t, Hands: geom.Lerp(a.Hands, b.Hands, share), Face: geom.Lerp(a.Face, b.Face, share), Speed: a.Speed + share*(b.Speed-a.Speed),
	}
}

func (m *pathMeter) hands(moment string, s swing.PathSample) {
	club := r3.Sub(s.Face, s.Hands)
	m.add(moment+": hands from the ball", "m", s.Hands.Y)
	m.add(moment+": hands height", "m", s.Hands.Z)
	m.add(moment+": hands to face slope", "deg", -elevation(r3.Unit(club)))
}

// planes adds the slopes of the planes that fit the face's path best.
func (m *pathMeter) planes() {
	level := func(step int) int { // the nearest sample with the club level
		i := m.strike
		for i > m.top && i < len(m.path)-1 && m.path[i].Face.Z < m.path[i].Hands.Z {
			i += step
		}
		return i
	}
	m.plane("clubhead plane", m.path[level(-1)].Time, m.path[level(1)].Time)
	m.plane("clubhead plane, late downswing", -0.12, 0)
	m.plane("clubhead plane, after impact", 0, 0.10)
}

func (m *pathMeter) plane(name string, from, to float64) {
	var points []geom.Vec
	for _, s := range m.path {
		if s.Time >= from && s.Time <= to {
			points = append(points, s.Face)
		}
	}
	slope, rms := fitPlane(points)
	m.add(name+" slope", "deg", slope/degree)
	m.add(name+" misfit", "m", rms)
}

// reaches adds how far the face goes, and the hands.
func (m *pathMeter) reaches() {
	back, down, through := m.path[:m.top+1], m.path[m.top:m.strike], m.path[m.strike:]
	behind := func(s swing.PathSample) float64 { return s.Face.Y }
	trail := func(s swing.PathSample) float64 { return -s.Face.X }
	height := func(s swing.PathSample) float64 { return s.Face.Z }
	for _, part := range []struct {
		name string
		path []swing.PathSample
	}{{"backswing", back}, {"downswing", down}, {"follow-through", through}} {
		m.add("face: farthest behind in the "+part.name, "m", behind(farthest(part.path, behind)))
		m.add("face: farthest from the target in the "+part.name, "m", trail(farthest(part.path, trail)))
		m.add("face: highest in the "+part.name, "m", height(farthest(part.path, height)))
	}
	m.add("face: farthest to the target", "m", -trail(farthest(through, func(s swing.PathSample) float64 { return s.Face.X })))
	last := farthest(through, behind)
	m.add("face: farthest behind, time after impact", "s", last.Time)
	m.add("face: farthest behind, speed", "m/s", last.Speed)
	m.add("hands: highest in the follow-through", "m", farthest(through, func(s swing.PathSample) float64 { return s.Hands.Z }).Hands.Z)
	m.add("hands: farthest behind in the follow-through", "m", farthest(through, func(s swing.PathSample) float64 { return s.Hands.Y }).Hands.Y)
}

// farthest returns the sample with the greatest value; a path without samples
// has none, which no comparison takes for a figure.
func farthest(path []swing.PathSample, value func(swing.PathSample) float64) swing.PathSample {
	nan := math.NaN()
	nowhere := geom.Vec{X: nan, Y: nan, Z: nan}
	most := swing.PathSample{Time: nan, Hands: nowhere, Face: nowhere, Speed: nan}
	for i, s := range path {
		if i == 0 || value(s) > value(most) {
			most = s
		}
	}
	return most
}

// after adds how fast the face goes after impact, and where the hands come to
// rest.
func (m *pathMeter) after() {
	for _, ms := range []int{50, 100, 150, 200, 300} {
		t := float64(ms) / 1000
		m.add("face: speed "+strconv.FormatFloat(t, 'f', 2, 64)+" s after impact", "m/s", m.at(t).Speed)
	}
	const half = 0.01 // s
	before, past := m.at(-half), m.at(half)
	m.add("hands: speed at impact", "m/s", geom.Norm(r3.Sub(past.Hands, before.Hands))/(past.Time-before.Time))
	rest := m.at(0.6)
	m.add("hands: to the target, 0.6 s after impact", "m", rest.Hands.X)
	m.add("hands: from the ball, 0.6 s after impact", "m", rest.Hands.Y)
	m.add("hands: height 0.6 s after impact", "m", rest.Hands.Z)
}
