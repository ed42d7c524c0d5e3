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
// ones, common practice without a source, for people to change, and round in the
// plan's units.
func FreshFor(p plan.Plan) Fresh {
	size := func(metres, inches float64) float64 { return plan.Usual(p.Units, metres, inches) }
	r := p.Room
	tee := p.Tees[0]
	lamp, strip := size(0.15, 6), size(0.15, 6) // half the width of a lamp and of a sensor's strip
	return Fresh{
		Slope:  plan.Slope{Name: "slope", Wall: plan.WallLeft, KneeHeight: min(size(2.1, 84), r.Height), Run: size(0.9, 36)},
		Solid:  plan.Solid{Name: "beam", Min: [3]float64{0, 0, r.Height - size(0.2, 8)}, Max: [3]float64{size(0.2, 8), r.Width, r.Height}},
		Player: plan.Player{Name: "Player", Height: size(1.8, 71), Hand: plan.HandRight},
		Club:   plan.Club{Name: "club", Kind: plan.KindIron},
		Tee:    plan.Tee{Name: "tee", X: tee.X, Y: tee.Y},
		Layer:  plan.Layer{Name: "layer", Thickness: size(0.01, 0.375)},
		Mat:    plan.Mat{Thickness: size(0.04, 1.5), Inset: true},
		Screen: plan.Screen{X: r.Length - size(0.4, 16), Centre: r.Width / 2, Bottom: size(0.05, 2), Width: min(size(3, 120), r.Width), Height: min(size(2, 78), r.Height-size(0.1, 4))},
		Hung: plan.Hung{Name: "lamp",
			Min: [3]float64{r.Length/2 - lamp, r.Width/2 - lamp, r.Height - size(0.25, 10)},
			Max: [3]float64{r.Length/2 + lamp, r.Width/2 + lamp, r.Height}},
		Seat:   plan.Seat{Name: "seat", X: size(0.6, 24), Y: size(0.6, 24)},
		Sensor: plan.Sensor{Name: "sensor", Min: [2]float64{tee.X - strip, tee.Y - strip}, Max: [2]float64{tee.X + strip, tee.Y + strip}},
	}
}
