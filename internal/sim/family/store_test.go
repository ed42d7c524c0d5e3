package family

import (
	"strings"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

// A store swings a player anew exactly when something changed that the swing
// depends on.
func TestStoreTellsSwingsApart(t *testing.T) {
	player := plan.Player{Name: "Host", Height: 1.78, Hand: plan.HandRight, Span: 1.8, Arm: 0.66, BallToToes: 0.8, BallToHands: 0.82,
		Shoe: 0.025, Turn: plan.TurnFull, Plane: plan.PlaneNeutral, Follow: plan.FollowFull}
	club := plan.DefaultClub(plan.KindDriver, "driver")
	dirs := []geom.Vec{{Y: 1}}
	var store Store
	first, err := store.Of(player, club, dirs)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name   string
		change func(*plan.Player)
		anew   bool
	}{
		{"nothing", func(*plan.Player) {}, false},
		{"name", func(p *plan.Player) { p.Name = "Somebody else" }, false},
		{"hand", func(p *plan.Player) { p.Hand = plan.HandLeft }, false},
		{"span", func(p *plan.Player) { p.Span = 1.81 }, true},
		{"arm", func(p *plan.Player) { p.Arm = 0 }, true},
		{"ball to toes", func(p *plan.Player) { p.BallToToes = 0.81 }, true},
		{"ball to hands", func(p *plan.Player) { p.BallToHands = 0 }, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			other := player
			c.change(&other)
			got, err := store.Of(other, club, dirs)
			if err != nil {
				t.Fatal(err)
			}
			if anew := got != first; anew != c.anew {
				t.Errorf("the family is modelled anew: %v, want %v", anew, c.anew)
			}
		})
	}
}

// TestStrangeAddressIsNoted: a distance that nobody of this build stands at
// reaches whoever reads the report.
func TestStrangeAddressIsNoted(t *testing.T) {
	player := plan.Player{Name: "Host", Height: 1.84, BallToHands: 0.60}
	r, err := New(player, plan.DefaultClub(plan.KindDriver, "driver"), []geom.Vec{{Z: -1}})
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Notes) != 1 || !strings.Contains(r.Notes[0], "from the ball to the hands") {
		t.Errorf("notes %q, want one about the distance from the ball to the hands", r.Notes)
	}
}
