package measure

import (
	"math"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/rules"
	"wideberth/internal/sim/swing"
)

// The face's centre of a modelled driver meets the ball: a ball's radius behind
// its middle, above the ground, looking at the target.
func TestPathMeetsTheBall(t *testing.T) {
	s := driverOf(t, 1.84)
	m := pathMeter{path: s.Path(1e-3)}
	hit := m.at(0)
	if math.Abs(hit.Face.X+rules.BallRadius) > 0.02 || math.Abs(hit.Face.Y) > 0.06 || hit.Face.Z < 0.01 || hit.Face.Z > 0.08 {
		t.Errorf("the face's centre is at %.3v at impact, want it at the ball", hit.Face)
	}
	before, after := m.at(-0.002), m.at(0.002)
	if along := r3.Sub(after.Face, before.Face); along.X < 0.9*geom.Norm(along) {
		t.Errorf("the face moves along %.3v at impact, want it towards the target", along)
	}
	if got, want := hit.Speed, s.ClubheadSpeed(s.ImpactTime()); math.Abs(got-want) > 0.08*want {
		t.Errorf("the face's centre is at %.1f m/s at impact, the middle of the head at %.1f", got, want)
	}
	if first, last := m.path[0].Time, m.path[len(m.path)-1].Time; first != -s.ImpactTime() || last < s.Duration()-s.ImpactTime()-1e-3 {
		t.Errorf("the path goes from %.3f to %.3f s about impact, want the whole swing", first, last)
	}
}

// TestPath reads what is known of a path drawn on purpose: hands that
// stand, but for a lift going back, and a face that goes round them in a plane
// of 60°, back a turn and through a turn, faster after impact.
func TestPath(t *testing.T) {
	const slope, back, through = 60 * degree, 4.0, 10.0 // rad, rad/s
	var path []swing.PathSample
	for i := -1000; i <= 1000; i++ {
		s := swing.PathSample{Time: float64(i) / 1000, Hands: geom.Vec{Y: 0.8, Z: 0.9}}
		s.Speed = back
		if s.Time > 0 {
			s.Speed = through
		}
		angle := s.Speed * s.Time // the face goes round at 1 m
		if s.Time < -0.4 && s.Time > -0.6 {
			s.Hands.Z, s.Hands.Y = 1.5, 1.1
		}
		sa, ca := math.Sincos(angle)
		s.Face = geom.Vec{X: sa, Y: 0.8 - ca*math.Cos(slope), Z: 0.9 - ca*math.Sin(slope)}
		path = append(path, s)
	}
	got := map[string]float64{}
	for _, m := range Path(path) {
		if _, twice := got[m.Name]; twice {
			t.Errorf("%q is measured twice", m.Name)
		}
		got[m.Name] = m.Value
	}
	for name, want := range map[string]float64{
		"impact: hands from the ball":                          0.8,
		"impact: hands height":                                 0.9,
		"impact: hands to face slope":                          60,
		"top: hands from the ball":                             1.1,
		"top: hands height":                                    1.5,
		"clubhead plane slope":                                 60,
		"clubhead plane, late downswing slope":                 60,
		"clubhead plane, after impact slope":                   60,
		"face: farthest behind in the backswing":               1.3, // a half turn, 0.785 s before
		"face: farthest behind in the downswing":               0.8 - math.Cos(back*0.599)*math.Cos(slope),
		"face: farthest behind in the follow-through":          1.3,
		"face: farthest behind, time after impact":             math.Pi / through,
		"face: farthest behind, speed":                         through,
		"face: farthest from the target in the follow-through": 1,
		"face: farthest to the target":                         1,
		"face: highest in the follow-through":                  0.9 + math.Sin(slope),
		"face: speed 0.05 s after impact":                      through,
		"hands: highest in the follow-through":                 0.9,
		"hands: farthest behind in the follow-through":         0.8,
		"hands: speed at impact":                               0,
		"hands: to the target, 0.6 s after impact":             0,
		"hands: from the ball, 0.6 s after impact":             0.8,
		"hands: height 0.6 s after impact":                     0.9,
	} {
		if v, ok := got[name]; !ok || !(math.Abs(v-want) < 5e-3*max(1, math.Abs(want))) {
			t.Errorf("%s = %.4f, want %.4f", name, v, want)
		}
	}
}
