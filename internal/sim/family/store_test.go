package family

import (
	"math"
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

// TestWhatAStoreForgets: families beyond the plan's own and a few are dropped, those few
// keep no maps, and of the plan's own only as many do as there is room for.
func TestWhatAStoreForgets(t *testing.T) {
	for _, c := range []struct {
		name             string
		most, asked      int
		families, mapped int
	}{
		{"fewer than the plan has", 5, 3, 3, 3},
		{"the plan's and some older", 12, 20, 12 + spare, 12},
		{"no room for every map", 30, 40, 30 + spare, (mostBytes - (30+spare)*bytesOfFamily) / (bytesOfAtlas + bytesOfFootprint)},
	} {
		t.Run(c.name, func(t *testing.T) {
			var s Store
			for range c.asked {
				s.kept = append(s.kept, kept{Relatives: &Relatives{maps: &Atlas{print: &Footprint{}}}})
			}
			s.Expect(c.most)
			mapped := 0
			for _, k := range s.kept {
				if k.maps != nil {
					mapped++
				}
			}
			if len(s.kept) != c.families || mapped != c.mapped {
				t.Errorf("%d families are kept, %d with their maps, want %d and %d", len(s.kept), mapped, c.families, c.mapped)
			}
		})
	}
}

// TestNoSuchSwing: what nobody can swing is an error, not a family.
func TestNoSuchSwing(t *testing.T) {
	var s Store
	player := plan.Player{Name: "Host", Height: math.NaN()}
	if r, err := s.Of(player, plan.DefaultClub(plan.KindDriver, "driver"), []geom.Vec{{Z: -1}}); r != nil || err == nil {
		t.Errorf("Of(a height that is no number) = %v, %v, want an error", r, err)
	}
}

// TestSingles: each trait alone, one standard deviation either way.
func TestSingles(t *testing.T) {
	r, err := New(plan.Player{Name: "Host", Height: 1.8}, plan.DefaultClub(plan.KindIron, "iron"), []geom.Vec{{Z: -1}})
	if err != nil {
		t.Fatal(err)
	}
	for i, m := range r.Singles {
		for trait, z := range m.Variation {
			want := 0.0
			if trait == i/2 {
				want = float64(2*(i%2) - 1)
			}
			if z != want {
				t.Errorf("single %d has trait %d at %g, want %g", i, trait, z, want)
			}
		}
	}
}
