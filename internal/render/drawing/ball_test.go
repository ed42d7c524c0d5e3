package drawing

import (
	"math"
	"slices"
	"testing"

	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/plan/plantest"
)

// The drawn lines are the computed ones: they start at the tee, end where the
// ball meets something, and the fan is seen from the side only.
func TestTrajectories(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	scene, tee := ball.NewScene(p), p.Tees[0]
	var shots []Shot
	for _, c := range p.Clubs {
		legs := scene.Trace(tee, ball.FromClub(c, 0), ball.Likely)
		shots = append(shots, Shot{Club: c.Name, First: legs[0].End.Surface, Legs: legs})
	}
	shots[2].Fan = ball.Fan(p, tee, p.Clubs[2], 0)
	got := Trajectories(shots)

	for _, v := range []struct {
		name  string
		lines []BallPath
		fan   int
		flat  func([3]float64) Point
	}{
		{"plan", got.Plan, 0, func(a [3]float64) Point { return Point{a[0], a[1]} }},
		{"side", got.Side, 12, func(a [3]float64) Point { return Point{a[0], a[2]} }},
		{"face", got.Face, 0, func(a [3]float64) Point { return Point{a[1], a[2]} }},
	} {
		count := map[string]int{}
		var labels []string
		for _, l := range v.lines {
			count[l.Kind]++
			if l.Kind == BallFan {
				labels = append(labels, l.Label)
				ray := shots[2].Fan[count[BallFan]-1].Points
				for end, p := range map[Point][3]float64{l.Points[0]: ray[0], l.Points[len(l.Points)-1]: ray[len(ray)-1]} {
					if want := v.flat(p); math.Hypot(end[0]-want[0], end[1]-want[1]) > 0.001 {
						t.Errorf("%s: the ray of %s has an end at %v, want %v", v.name, l.Label, end, want)
					}
				}
			}
			if l.Kind != BallFlight {
				continue
			}
			i := slices.IndexFunc(shots, func(s Shot) bool { return s.Club == l.Club })
			end := shots[i].Legs[0].End
			// The line ends at the ball's centre, a radius short of the touch.
			last, touch := l.Points[len(l.Points)-1], v.flat(end.Point)
			if d := math.Hypot(last[0]-touch[0], last[1]-touch[1]); d > ball.Radius+0.001 {
				t.Errorf("%s: the %s's line ends %.4f m from where it meets the %s", v.name, l.Club, d, l.Label)
			}
			if l.Label != end.Surface {
				t.Errorf("%s: the %s's line says %q, want %q", v.name, l.Club, l.Label, end.Surface)
			}
		}
		if count[BallFlight] != len(p.Clubs) || count[BallBounce] < len(p.Clubs) || count[BallFan] != v.fan {
			t.Errorf("%s: %v lines, want a flight and a way back for each club and %d rays", v.name, count, v.fan)
		}
		if v.fan > 0 && (labels[0] != "5°" || labels[11] != "60°") {
			t.Errorf("%s: the rays are %v, want 5° to 60°", v.name, labels)
		}
	}
}
