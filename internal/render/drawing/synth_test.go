package drawing

import (
	"math"
	"math/rand/v2"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// hub is the centre that synthPose swings about, golfer frame.
var hub = geom.Vec{Y: 0.75, Z: 1.4}

// synthPose is a made-up motion with a known shape: a still trunk and feet, and
// arms, shaft and head on a rigid arm that turns in an inclined plane about hub.
func synthPose(t float64) swing.Pose {
	var p swing.Pose
	for i := range p {
		p[i] = geom.Capsule{A: hub, B: geom.Vec{Y: 0.85, Z: 0.9}, R: 0.15}
	}
	p[swing.LeadFoot] = geom.Capsule{A: geom.Vec{X: 0.2, Y: 0.85, Z: 0.04}, B: geom.Vec{X: 0.22, Y: 0.65, Z: 0.04}, R: 0.04}
	p[swing.TrailFoot] = geom.Capsule{A: geom.Vec{X: -0.2, Y: 0.85, Z: 0.04}, B: geom.Vec{X: -0.22, Y: 0.65, Z: 0.04}, R: 0.04}
	angle := math.Pi * (1.3*math.Cos(math.Pi*t) - 1) // one swing there and back in 1 s
	sin, cos := math.Sincos(angle)
	out := func(r float64) geom.Vec {
		// In the plane: x, and the steepest line of a plane sloped 60° at hub.
		return geom.Vec{X: r * sin, Y: hub.Y - 0.5*r*cos, Z: hub.Z - math.Sqrt(3)/2*r*cos}
	}
	p[swing.LeadForearm] = geom.Capsule{A: hub, B: out(0.6), R: 0.045}
	p[swing.Shaft] = geom.Capsule{A: out(0.6), B: out(1.55), R: 0.006}
	p[swing.Clubhead] = geom.Capsule{A: out(1.55), B: out(1.55), R: 0.06}
	return p
}

func synthPlan() plan.Plan {
	return plan.Plan{
		Version: plan.Version, Margin: 0.15,
		Room: plan.Room{Length: 6.4, Width: 4.42, Height: 2.87,
			Slopes: []plan.Slope{
				{Name: "rafters, left", Wall: "left", KneeHeight: 2.1, Run: 0.9},
				{Name: "eaves", Wall: "back", KneeHeight: 0.8, Run: 1.2},
			},
			Solids: []plan.Solid{{Name: "boxed beam", Min: [3]float64{3, 0, 2.62}, Max: [3]float64{3.2, 4.42, 2.87}}},
		},
		Floor: plan.Floor{
			Layers: []plan.Layer{{Name: "plywood", Thickness: 0.018}, {Name: "rubber", Thickness: 0.01}, {Name: "turf", Thickness: 0.012}},
			Mat:    &plan.Mat{Thickness: 0.04, Length: 1.5, Width: 1.5, Inset: true},
		},
		Screen: &plan.Screen{X: 6, Centre: 2.21, Bottom: 0.05, Width: 3.56, Height: 2, SideReturn: 1, TopReturn: 0.9},
		Tees:   []plan.Tee{{Name: "middle", X: 2.9, Y: 2.21}, {Name: "left", X: 2.9, Y: 2.6}},
		Hung:   []plan.Hung{{Name: "projector", Min: [3]float64{2.1, 2, 2.45}, Max: [3]float64{2.5, 2.45, 2.8}}},
		Seats:  []plan.Seat{{Name: "bench", X: 0.6, Y: 0.8, Radius: 0.3}},
		Sensor: &plan.Sensor{Name: "sensor strip", Min: [2]float64{2.6, 1.9}, Max: [2]float64{3.1, 2.5}},
	}
}

func synthInput() Input {
	at := sweep.Placement{Ball: geom.Vec{X: 2.9, Y: 2.21, Z: 0.04}}
	pose := synthPose(0.2)
	return Input{
		Plan: synthPlan(), At: at,
		Motion:  Reduce(Sample(synthPose, 1)),
		Address: synthPose(0.5),
		Tightest: Tightest{
			Pose: pose, From: at.ToRoom(pose[swing.Clubhead].B), To: geom.Vec{X: 2.9, Y: 2.21, Z: 2.87},
			Label: "5 7/8 in · 149 mm", Verdict: "tight", Surface: "ceiling",
			ModelError: 0.05,
		},
		First: &Touch{Words: "the clubhead on the ceiling, 0.1 s after impact", At: geom.Vec{X: 2.6, Y: 2.4, Z: 2.87}},
	}
}

func randomCapsule(r *rand.Rand) geom.Capsule {
	v := func() geom.Vec { return geom.Vec{X: 3 * r.Float64(), Y: 3 * r.Float64(), Z: 3 * r.Float64()} }
	return geom.Capsule{A: v(), B: v(), R: 0.02 + 0.15*r.Float64()}
}
