package plan_test

import (
	"testing"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/units"
)

// TestEveryValue: nothing that is put into a plan changes its meaning silently. The
// plan that is walked gives every value, none of them the usual one.
func TestEveryValue(t *testing.T) {
	full := plan.Plan{
		Version: plan.Version, Title: "hall", Units: units.Metric, Margin: 0.2,
		Room: plan.Room{Length: 12, Width: 8, Height: 5,
			Slopes: []plan.Slope{{Name: "roof", Wall: plan.WallLeft, KneeHeight: 4, Run: 1}},
			Solids: []plan.Solid{{Name: "beam", Min: [3]float64{1, 1, 4}, Max: [3]float64{2, 2, 5}, Cover: plan.CoverFoam}}},
		Floor:   plan.Floor{Layers: []plan.Layer{{Name: "turf", Thickness: 0.02}}, Mat: &plan.Mat{Thickness: 0.02, Length: 1.2, Width: 1.3, Inset: true}},
		Screen:  &plan.Screen{X: 9, Centre: 4, Bottom: 0.1, Width: 4, Height: 3, SideReturn: 0.5, TopReturn: 0.5},
		Tees:    []plan.Tee{{Name: "tee", X: 5, Y: 4}},
		Clubs:   []plan.Club{{Name: "iron", Kind: plan.KindIron, Length: 0.95, Lie: 61, Loft: 33, Ball: &plan.Ball{Speed: 45, Launch: 17, Spin: 6600}}},
		Players: []plan.Player{{Name: "one", Height: 1.8, Hand: plan.HandLeft, Sex: plan.SexMan, Span: 1.85, Arm: 0.7, BallToToes: 0.8, BallToHands: 0.7, Shoe: 0.02, Turn: plan.TurnLong, Plane: plan.PlaneFlat, Follow: plan.FollowHeld, Skill: plan.SkillWild, Clubs: []string{"iron"}, Tees: []string{"tee"}}},
		Hung:    []plan.Hung{{Name: "lamp", Min: [3]float64{1, 1, 3}, Max: [3]float64{2, 2, 4}, ThrowRatio: 1, LensHeight: 3, Lumens: 3000}},
		Seats:   []plan.Seat{{Name: "chair", X: 1, Y: 1, Radius: 0.4}},
		Sensor:  &plan.Sensor{Name: "sensor", Min: [2]float64{1, 1}, Max: [2]float64{2, 2}},
		Air:     &plan.Air{Temperature: 21, Altitude: 100},
		// What package spec reads has a walk of its own there.
		Projector: struct{}{}, Build: struct{}{},
	}
	parse := func(data []byte) (any, error) {
		c, err := plan.Parse(data)
		return c.Plan(), err
	}
	plantest.Walk(t, full, parse, map[string]any{
		"units": units.Imperial, "margin": 0.15, "floor.mat.length": 1.5, "floor.mat.width": 1.5,
		"clubs[0].length": 0.9398, "clubs[0].lie": 62.0, "clubs[0].loft": 34.0, "clubs[0].ball.speed": 44.0,
		"players[0].hand": "right", "players[0].shoe": 0.025, "players[0].turn": "full", "players[0].plane": "neutral",
		"players[0].follow": "full", "players[0].skill": "average", "seats[0].radius": 0.35,
	}, map[string]string{"max": "greatest", "min": "least", "lumens": "light", "follow": "follow-through", "clubs": "club", "tees": "tee", "centre": "edge"})
}
