package record

import (
	"math"
	"testing"

	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/plan"
)

// The drawn ball is where the computed one is, from impact to the screen and on
// the way back.
func TestFlightFollowsTheBall(t *testing.T) {
	in := input(t, "Tall guest", nil)
	scene := ball.NewScene(in.Plan)
	in.Ball = Shot{
		Legs: scene.Trace(in.Tee, ball.FromClub(in.Club, 0), ball.Likely),
		Fan:  ball.Fan(in.Plan, in.Tee, in.Club, 0),
	}
	s := Swing(in)
	impact := in.Swing.ImpactTime()

	start := impact
	for leg, path := range in.Ball.Legs {
		for _, m := range path.Trail {
			at := start + m.Time
			if at <= impact || at > impact+flightTime {
				continue
			}
			got := s.BallAt(at)
			want := vec(m.P)
			var off float64
			for i := range got {
				off = math.Hypot(off, float64(got[i]-want[i]))
			}
			if tol := flightTol + 1e-4; off > tol { // float32 times of a fast ball
				t.Fatalf("leg %d, %.4f s after impact: the ball is drawn %.4f m off", leg, at-impact, off)
			}
		}
		start += path.End.Time
	}
	if first := s.Flight.Touches[0]; first.Surface != "screen" || math.Abs(float64(first.Time)-impact-in.Ball.Legs[0].End.Time) > 1e-5 {
		t.Errorf("first touch = %+v, want the screen %.4f s after impact", first, in.Ball.Legs[0].End.Time)
	}
	if last := s.Flight.Trail[len(s.Flight.Trail)-1]; float64(last.Time) > impact+flightTime+1e-3 {
		t.Errorf("the ball is followed to %v s, want %v s after impact at most", last.Time, flightTime)
	}
	if n := len(s.Flight.Trail); n > 200 {
		t.Errorf("%d moments for one ball: too many to send", n)
	}
	if n := len(s.Flight.Fan); n != 13 || s.Flight.Fan[12].Label != "12.5°" || s.Flight.Fan[0].Label != "5°" {
		t.Errorf("fan of %d rays, want 5° to 60° and the club's own 12.5°", n)
	}
	if _, err := wire.Decode(s.Encode()); err != nil {
		t.Errorf("a recording with a flight does not survive the wire: %v", err)
	}
}

// Without a shot the ball stays on its tee.
func TestNoFlight(t *testing.T) {
	s := Swing(input(t, "Host", func(p *plan.Plan) { p.Screen = nil }))
	if len(s.Flight.Trail)+len(s.Flight.Touches)+len(s.Flight.Fan) != 0 || s.BallAt(9) != s.Ball {
		t.Errorf("flight = %+v, want none", s.Flight)
	}
}
