package record

import (
	"wideberth/internal/sim/r3"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/geom"
)

// Shot is the ball that a swing sends off: its way to the first contact and
// back, with trails, as ball.Scene.Trace gives it, and its fan of launch angles.
type Shot struct {
	Legs []ball.Path
	Fan  []ball.Ray
}

const (
	// flightTime (s) is how long the ball is followed after impact.
	flightTime = 1.5
	// flightTol (m) is how far the ball's drawn way may be off the computed one.
	flightTol = 0.003
	// rayPiece (m) is the longest piece of a ray: the painter sorts pieces by
	// their middles.
	rayPiece = 0.4
)

// addFlight puts the shot into the recording, from the moment of impact (s) on.
func addFlight(s *wire.Recording, shot Shot, impact float64) {
	start := impact
	var trail []wire.Moment
	for _, leg := range shot.Legs {
		if start > impact+flightTime {
			break
		}
		var samples []ball.Sample
		for _, m := range leg.Trail {
			if start+m.Time <= impact+flightTime {
				samples = append(samples, m)
			}
		}
		for _, m := range thin(samples) {
			trail = append(trail, wire.Moment{Time: float32(start + m.Time), At: vec(m.P)})
		}
		start += leg.End.Time
		if k := leg.End.Kind; k != ball.KindNone && k != ball.KindGolfer && start <= impact+flightTime {
			at := leg.End.Point
			s.Flight.Touches = append(s.Flight.Touches, wire.Touch{
				Time: float32(start), At: vec(geom.Vec{X: at[0], Y: at[1], Z: at[2]}), Normal: vec(leg.End.Normal), Surface: leg.End.Surface,
			})
		}
	}
	s.Flight.Trail = trail
	for _, r := range shot.Fan {
		label := fmt.Sprintf("%.0f°", r.Launch)
		if r.Own {
			label = fmt.Sprintf("%.1f°", r.Launch)
		}
		s.Flight.Fan = append(s.Flight.Fan, wire.Ray{Label: label, Points: pieces(r.Points)})
	}
}

// thin leaves out the samples that a straight, even move between their
// neighbours comes near enough to.
func thin(m []ball.Sample) []ball.Sample {
	if len(m) < 3 {
		return m
	}
	out := []ball.Sample{m[0]}
	for i, from := 2, 0; i < len(m); i++ {
		for j := from + 1; j < i; j++ {
			k := (m[j].Time - m[from].Time) / (m[i].Time - m[from].Time)
			if geom.Norm(r3.Sub(m[j].P, geom.Lerp(m[from].P, m[i].P, k))) > flightTol {
				from = i - 1
				out = append(out, m[from])
				break
			}
		}
	}
	return append(out, m[len(m)-1])
}

// pieces is a line with points at most about rayPiece apart.
func pieces(points [][3]float64) []wire.Vec {
	var out []wire.Vec
	last := geom.Vec{}
	for i, p := range points {
		at := geom.Vec{X: p[0], Y: p[1], Z: p[2]}
		if i == 0 || i == len(points)-1 || geom.Norm(r3.Sub(at, last)) >= rayPiece {
			out = append(out, vec(at))
			last = at
		}
	}
	return out
}
