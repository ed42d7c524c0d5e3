package plan

import (
	"math"
	"testing"
)

// heightTol is rounding noise in sums of a few lengths, metres.
const heightTol = 1e-12

func TestStanding(t *testing.T) {
	layers := []Layer{{"plywood", 0.018}, {"turf", 0.012}}
	for _, tc := range []struct {
		name string
		f    Floor
		want float64
	}{
		{"bare floor", Floor{}, 0},
		{"layers", Floor{Layers: layers}, 0.030},
		{"mat on the floor", Floor{Mat: &Mat{Thickness: 0.04}}, 0.040},
		{"mat on layers", Floor{Layers: layers, Mat: &Mat{Thickness: 0.04}}, 0.070},
		{"inset mat thinner than the layers", Floor{Layers: layers, Mat: &Mat{Thickness: 0.02, Inset: true}}, 0.030},
		{"inset mat thicker than the layers", Floor{Layers: layers, Mat: &Mat{Thickness: 0.04, Inset: true}}, 0.040},
	} {
		t.Run(tc.name, func(t *testing.T) {
			if got := tc.f.Standing(); math.Abs(got-tc.want) > heightTol {
				t.Errorf("Standing() = %v, want %v (%g)", got, tc.want, heightTol)
			}
			p := Plan{Room: Room{Height: 2.5}, Floor: tc.f}
			if got := p.Headroom(); math.Abs(got-(2.5-tc.want)) > heightTol {
				t.Errorf("Headroom() = %v, want %v (%g)", got, 2.5-tc.want, heightTol)
			}
		})
	}
}

func TestCeilingAt(t *testing.T) {
	for _, tc := range []struct {
		wall       Wall
		x, y, want float64
	}{
		{"left", 3, 4, 2}, {"left", 3, 3.5, 2.5}, {"left", 3, 3, 3}, {"left", 3, 1, 3},
		{"right", 3, 0, 2}, {"right", 3, 0.5, 2.5}, {"right", 3, 2, 3},
		{"front", 6, 2, 2}, {"front", 5.5, 2, 2.5}, {"front", 1, 2, 3},
		{"back", 0, 2, 2}, {"back", 0.5, 2, 2.5}, {"back", 3, 2, 3},
	} {
		r := Room{Length: 6, Width: 4, Height: 3, Slopes: []Slope{{Name: "s", Wall: tc.wall, KneeHeight: 2, Run: 1}}}
		if got := r.CeilingAt(tc.x, tc.y); math.Abs(got-tc.want) > heightTol {
			t.Errorf("CeilingAt(%v, %v) with a slope at the %s wall = %v, want %v (%g)", tc.x, tc.y, tc.wall, got, tc.want, heightTol)
		}
	}
}

func TestLookups(t *testing.T) {
	p := Demo()
	if v, ok := p.Player("Tall guest"); !ok || v.Height != 1.9304 {
		t.Errorf("Player(Tall guest) = %+v, %v, want the one of 1.9304 m", v, ok)
	}
	if c, ok := p.Club("7-iron"); !ok || c.Kind != KindIron {
		t.Errorf("Club(7-iron) = %+v, %v, want an iron", c, ok)
	}
	if v, ok := p.Tee("middle"); !ok || v.X != 2.8956 {
		t.Errorf("Tee(middle) = %+v, %v, want the one at 2.8956 m", v, ok)
	}
	_, player := p.Player("x")
	_, club := p.Club("x")
	_, tee := p.Tee("x")
	if player || club || tee {
		t.Errorf("lookups of x = %v, %v, %v, want none found", player, club, tee)
	}
	for i, want := range []int{3, 3, 2} {
		if got := len(p.ClubsOf(p.Players[i])); got != want {
			t.Errorf("len(ClubsOf(%s)) = %d, want %d", p.Players[i].Name, got, want)
		}
		if got := len(p.TeesOf(p.Players[i])); got != 1 {
			t.Errorf("len(TeesOf(%s)) = %d, want 1", p.Players[i].Name, got)
		}
	}
	// The plan's order, not the player's.
	if got := p.ClubsOf(Player{Clubs: []string{"7-iron", "driver"}}); len(got) != 2 || got[0].Name != "driver" {
		t.Errorf("ClubsOf(7-iron, driver) = %+v, want driver first", got)
	}
}
