package protocol

import (
	"encoding/json"
	"strings"
	"testing"

	"wideberth/internal/sim/plan"
	"wideberth/internal/solver/reply"
	"wideberth/internal/units"
)

// Three numbers and a height, as typed, make a plan that solves; what cannot be is
// told beside its field.
func TestRoomRequest(t *testing.T) {
	for _, c := range []struct{ name, plan, field, message string }{
		{"feet", `{"units":"imperial","room":{"length":"21'","width":"12'","height":"9'2\""},"players":[{"name":"Me","height":"6'1\""}]}`, "", ""},
		{"metres", `{"units":"metric","room":{"length":"6.4","width":"3.6","height":"2.8"},"players":[{"name":"Me","height":"185"},{"name":"You","height":"1.70"}]}`, "", ""},
		{"no length", `{"units":"imperial","room":{"length":"","width":"12'","height":"9'"},"players":[{"name":"Me","height":"6'"}]}`, "room.length", "no length given"},
		{"a word", `{"units":"imperial","room":{"length":"20'","width":"wide","height":"9'"},"players":[{"name":"Me","height":"6'"}]}`, "room.width", "“wide”"},
		{"far too long", `{"units":"metric","room":{"length":"640 m","width":"4","height":"3"},"players":[{"name":"Me","height":"1.8"}]}`, "room.length", "640 m is more than the 60 m this can do"},
		{"no name", `{"units":"metric","room":{"length":"6","width":"4","height":"3"},"players":[{"name":"","height":"1.8"}]}`, "players[0].name", "name"},
		{"one name for two", `{"units":"metric","room":{"length":"6","width":"4","height":"3"},"players":[{"name":"Me","height":"1.8"},{"name":"Me","height":"1.7"}]}`, "players[1].name", "Me"},
		{"under a low ceiling", `{"units":"metric","room":{"length":"6","width":"4","height":"1.8"},"players":[{"name":"Me","height":"1.8"}]}`, "players[0].height", "do not fit under the ceiling"},
		{"nobody", `{"units":"metric","room":{"length":"6","width":"4","height":"3"},"players":[]}`, "players", "at least one player"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var s Solver
			var got struct {
				Plan  json.RawMessage
				Error *reply.Problem
			}
			if err := json.Unmarshal(s.Handle([]byte(`{"kind":"room","plan":`+c.plan+`}`)), &got); err != nil {
				t.Fatal(err)
			}
			if c.field != "" {
				if got.Error == nil || got.Error.Field != c.field || !strings.Contains(got.Error.Message, c.message) {
					t.Errorf("error = %+v, want %q about %s", got.Error, c.message, c.field)
				}
				return
			}
			if got.Error != nil {
				t.Fatal(got.Error.Message)
			}
			made, err := plan.Parse(got.Plan)
			if err != nil {
				t.Fatal(err)
			}
			if p := made.Plan(); p.Screen == nil || len(p.Tees) != 1 || len(p.Clubs) != 3 || p.Players[0].Name != "Me" {
				t.Errorf("plan = %s, want a screen, a tee, three clubs and who was named", got.Plan)
			}
		})
	}
}

// A solve that says where the walls stood takes screen and tee along; without, or
// once they were touched, it leaves them.
func TestSolveFollows(t *testing.T) {
	before := plan.Walls{Length: 6.4, Width: 4, Height: 2.8}
	base := plan.ForRoom(before, units.Metric)
	base.Players, base.Clubs = []plan.Player{{Name: "Me", Height: 1.8}}, base.Clubs[1:2]
	walls, err := json.Marshal(before)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, walls string
		touch       func(*plan.Plan)
		x           float64
	}{
		{"untouched", `,"walls":` + string(walls), func(*plan.Plan) {}, 6.6},
		{"touched", `,"walls":` + string(walls), func(p *plan.Plan) { p.Screen.X = 5.9 }, 5.9},
		{"an undo", ``, func(*plan.Plan) {}, 6},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := base.WithDefaults()
			c.touch(&p)
			typed := strings.Replace(string(p.JSON()), `"length":6.4`, `"length":"7 m"`, 1)
			var s Solver
			var got struct {
				Plan  plan.Plan
				Error *reply.Problem
			}
			if err := json.Unmarshal(s.Handle([]byte(`{"kind":"solve","plan":`+typed+c.walls+`}`)), &got); err != nil || got.Error != nil {
				t.Fatal(err, got.Error)
			}
			if got.Plan.Room.Length != 7 || got.Plan.Screen.X != c.x {
				t.Errorf("room %v m long with its screen at %v, want 7 and %v", got.Plan.Room.Length, got.Plan.Screen.X, c.x)
			}
		})
	}
}
