package form

import "wideberth/internal/sim/plan"

// Fresh is a first row for every list and a first state for every part, with
// sizes for the room of a plan. Members go by the paths of lists and parts. A name
// is the stem of names: who adds a row adds a number where it is taken.
type Fresh struct {
	Slope  plan.Slope  `json:"room.slopes"`
	Solid  plan.Solid  `json:"room.solids"`
	Player plan.Player `json:"players"`
	Club   plan.Club   `json:"clubs"`
	Tee    plan.Tee    `json:"tees"`
	Layer  plan.Layer  `json:"floor.layers"`
	Mat    plan.Mat    `json:"floor.mat"`
	Screen plan.Screen `json:"screen"`
	Hung   plan.Hung   `json:"hung"`
	Seat   plan.Seat   `json:"seats"`
	Sensor plan.Sensor `json:"sensor"`
}

// FreshFor sizes first rows for the room of a valid plan. The sizes are usual
// ones, common practice without a source, for people to change.
func FreshFor(p plan.Plan) Fresh {
	r := p.Room
	tee := p.Tees[0]
	const lamp, strip = 0.15, 0.15 // m, half the width of a lamp and of a sensor's strip
	return Fresh{
		Slope:  plan.Slope{Name: "slope", Wall: plan.WallLeft, KneeHeight: min(2.1, r.Height), Run: 0.9},
		Solid:  plan.Solid{Name: "beam", Min: [3]float64{0, 0, r.Height - 0.2}, Max: [3]float64{0.2, r.Width, r.Height}},
		Player: plan.Player{Name: "Player", Height: 1.8, Hand: plan.HandRight},
		Club:   plan.Club{Name: "club", Kind: plan.KindIron},
		Tee:    plan.Tee{Name: "tee", X: tee.X, Y: tee.Y},
		Layer:  plan.Layer{Name: "layer", Thickness: 0.01},
		Mat:    plan.Mat{Thickness: 0.04, Inset: true},
		Screen: plan.Screen{X: r.Length - 0.4, Centre: r.Width / 2, Bottom: 0.05, Width: min(3, r.Width), Height: min(2, r.Height-0.1)},
		Hung: plan.Hung{Name: "lamp",
			Min: [3]float64{r.Length/2 - lamp, r.Width/2 - lamp, r.Height - 0.25},
			Max: [3]float64{r.Length/2 + lamp, r.Width/2 + lamp, r.Height}},
		Seat:   plan.Seat{Name: "seat", X: 0.6, Y: 0.6},
		Sensor: plan.Sensor{Name: "sensor", Min: [2]float64{tee.X - strip, tee.Y - strip}, Max: [2]float64{tee.X + strip, tee.Y + strip}},
	}
}
