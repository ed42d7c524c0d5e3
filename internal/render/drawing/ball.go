package drawing

import (
	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/geom"
)

// Shot is a ball to be drawn: its way there and back, and how it would go at
// other launch angles.
type Shot struct {
	Club  string
	First string      // what it meets first
	Legs  []ball.Path // with their trails; the first leads to the first contact
	Fan   []ball.Ray
}

// Trajectory is what the ball adds to each drawing.
type Trajectory struct {
	Plan []BallPath `json:"plan"`
	Side []BallPath `json:"side"`
	Face []BallPath `json:"face"`
}

// BallPath is one line of a ball. Label says where it ends or, of a fan, its
// launch angle.
type BallPath struct {
	Club   string  `json:"club"`
	Kind   string  `json:"kind"` // one of the Ball constants
	Label  string  `json:"label"`
	Points []Point `json:"points"`
}

// What a line of a ball stands for.
const (
	BallFlight = "flight"
	BallBounce = "bounce"
	BallFan    = "fan"
)

// bounceTime (s) is how long a ball is followed after its first contact; later
// it rolls about and only clutters the paper.
const bounceTime = 1.5

// Trajectories draws shots into the three views.
func Trajectories(shots []Shot) Trajectory {
	var views [numViews][]BallPath
	for i, pr := range projections {
		views[i] = []BallPath{}
		for _, s := range shots {
			views[i] = append(views[i], s.draw(pr, i == viewSide)...)
		}
	}
	return Trajectory{views[viewPlan], views[viewSide], views[viewFace]}
}

// draw projects a shot. The fan is drawn where it opens: seen from the side.
func (s Shot) draw(pr projection, fan bool) []BallPath {
	var out []BallPath
	add := func(kind, label string, line []geom.Vec) {
		points := make([]Point, len(line))
		for i, p := range line {
			points[i] = pr.flat(p)
		}
		if len(points) < 2 {
			return
		}
		points = append(keepFar(nil, points), points[len(points)-1])
		for i, p := range points {
			points[i] = round(p)
		}
		out = append(out, BallPath{s.Club, kind, label, points})
	}
	if fan {
		for _, r := range s.Fan {
			if r.Own {
				continue // the flight itself
			}
			line := make([]geom.Vec, len(r.Points))
			for i, p := range r.Points {
				line[i] = geom.Vec{X: p[0], Y: p[1], Z: p[2]}
			}
			add(BallFan, fmt.Sprintf("%.0f°", r.Launch), line)
		}
	}
	time := 0.0
	for i, leg := range s.Legs {
		var line []geom.Vec
		for _, at := range leg.Trail {
			if i == 0 || time+at.Time <= bounceTime {
				line = append(line, at.P)
			}
		}
		if i == 0 {
			add(BallFlight, s.First, line)
			continue
		}
		time += leg.End.Time
		add(BallBounce, leg.End.Surface, line)
	}
	return out
}
