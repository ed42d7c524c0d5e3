package spec

import (
	"encoding/json"
	"testing"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

// TestEveryValue: nothing that is put into the two members changes its meaning
// silently. The plan that is walked gives every value, none of them the usual one.
func TestEveryValue(t *testing.T) {
	type members struct {
		Projector *Projector `json:"projector"`
		Build     Build      `json:"build"`
	}
	box := Zone{[3]float64{1, 1, 1}, [3]float64{2, 2, 2}}
	full := members{
		&Projector{
			Lens: [3]float64{2.5, 2.7, 2.8}, ThrowRatio: [2]float64{0.8, 0.8}, Aspect: 1.5, Lumens: 4000, Gain: 1.1, Mount: MountFloor,
			Offset: []float64{0.1, 0.5}, SideShift: 0.1, Body: [3]float64{0.3, 0.3, 0.2}, Columns: 3840, RoomLight: 20, RiskGroup: "RG2", Image: &Image{Width: 2, Bottom: 0.2},
		},
		Build{
			Floor: Floor{Tolerance: 0.004, Layers: 3, Covers: [4]float64{0.1, 0.1, 6, 5}, Gap: 0.002, Panels: Width, TurfRoll: 3, Turf: Width},
			Stock: []Stock{{Name: "board", Kind: Panel, Least: 0.01, Most: 0.01, Long: 2, Wide: 1, Price: 3}},
			Cups:  []Cup{{1, 1}}, Enclosure: Enclosure{Padding: 0.1, Sill: 0.1, Border: 0.1},
			Sensor: &Sensor{Place: Beside, Body: box, KeepOut: []Zone{box}},
			Finish: Finish{Coats: 3, Coverage: 8, Absorber: 2, Walls: Concrete, Ceiling: WoodFloor},
			Wiring: Wiring{Source: [3]float64{1, 1, 1}, Receptacles: 3, Slack: 2},
			Walls: Walls{
				Feet: []Foot{{"left", 0.1, 0.1}}, Doors: []Door{{Name: "door", Wall: "left", From: 1, Width: 1, Height: 2.1, Gap: 0.01}},
				Garage: &Garage{Wall: "back", From: 1, Width: 2, Height: 2, Open: true}, Slab: &Slab{Towards: "left", Fall: 0.01},
			},
			Prices: []Price{{Item: "board", Price: 2}},
		},
	}
	parse := func(data []byte) (any, error) {
		var text struct{ Projector, Build json.RawMessage }
		if err := json.Unmarshal(data, &text); err != nil {
			t.Fatal(err)
		}
		s, err := read(t, string(text.Projector), string(text.Build))
		return members{s.Projector, s.Build}, err
	}
	p := plan.Demo()
	plantest.Walk(t, full, parse, map[string]any{
		"projector.aspect": 1.6, "projector.lumens": 3000.0, "projector.gain": 1.0, "projector.mount": MountCeiling, "projector.columns": 1920.0,
		"build.floor.tolerance": 0.0032, "build.floor.layers": 4.0, "build.floor.gap": 0.0032, "build.floor.turfRoll": 3.6576, "build.floor.turf": Length,
		"build.stock[0].long": SheetLong, "build.stock[0].wide": SheetWide,
		"build.finish.coats": 2.0, "build.finish.coverage": 9.0, "build.finish.walls": GypsumBoard, "build.finish.ceiling": GypsumBoard,
		"build.wiring.receptacles": 2.0, "build.wiring.slack": 1.0,
		"build.walls.doors[0].height": usual(p, 2.03, 80), "build.walls.doors[0].gap": usual(p, 0.02, 0.75),
	}, map[string]string{"min": "least", "max": "greatest", "from": "start", "towards": "wall", "lumens": "light", "body": "case", "columns": "pixels across", "most": "greatest", "wide": "width", "long": "length", "covers": "floor: "})
}
