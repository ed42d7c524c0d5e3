package plan

import (
	"math"
	"testing"

	"wideberth/internal/units"
)

// TestUsualClubs: what is assumed of a club by its kind and the number or word in
// its name, the ball included; a number beyond the set counts as its last club.
func TestUsualClubs(t *testing.T) {
	for _, c := range []struct {
		kind, name          string
		inches, lie, loft   float64
		speed, launch, spin float64
	}{
		{KindDriver, "big one", 45.5, 58, 10.5, 62, 12.5, 2700},
		{KindWood, "wood", 43, 57, 15, 58, 11, 3600},
		{KindWood, "2-wood", 43, 57, 15, 58, 11, 3600},
		{KindWood, "3-wood", 43, 57, 15, 58, 11, 3600},
		{KindWood, "4-wood", 42.5, 57.5, 18, 55, 12.5, 4300},
		{KindWood, "5-wood", 42.5, 57.5, 18, 55, 12.5, 4300},
		{KindWood, "6-wood", 42, 58, 21, 53, 14, 4700},
		{KindHybrid, "hybrid", 40.5, 59.5, 22, 51, 13.5, 4500},
		{KindHybrid, "1-hybrid", 41.5, 58.5, 16, 55, 10.5, 3700},
		{KindHybrid, "2-hybrid", 41.5, 58.5, 16, 55, 10.5, 3700},
		{KindHybrid, "3-hybrid", 41, 59, 19, 53, 12, 4100},
		{KindHybrid, "6-hybrid", 39.5, 60.5, 28, 47, 16.5, 5300},
		{KindHybrid, "7-hybrid", 39.5, 60.5, 28, 47, 16.5, 5300},
		{KindIron, "iron", 37, 62, 34, 44, 18, 6500},
		{KindIron, "0-iron", 40, 56, 13, 56.6, 4.8, 2900},
		{KindIron, "1-iron", 40, 56, 13, 56.6, 4.8, 2900},
		{KindIron, "6-iron", 37.5, 61, 30.5, 46.1, 15.8, 5900},
		{KindIron, "9-iron", 36, 64, 41, 39.8, 22.4, 7700},
		{KindIron, "10-iron", 36, 64, 41, 39.8, 22.4, 7700},
		{KindIron, "no. 8 of 9", 36.5, 63, 37.5, 41.9, 20.2, 7100},
		{KindWedge, "wedge", 35.75, 64, 46, 37.5, 26, 8500},
		{KindWedge, "PW", 35.75, 64, 46, 37.5, 26, 8500},
		{KindWedge, "pitching wedge", 35.75, 64, 46, 37.5, 26, 8500},
		{KindWedge, "gap", 35.55, 64, 51, 36, 29, 8750},
		{KindWedge, "GW", 35.55, 64, 51, 36, 29, 8750},
		{KindWedge, "approach wedge", 35.55, 64, 51, 36, 29, 8750},
		{KindWedge, "my aw", 35.55, 64, 51, 36, 29, 8750},
		{KindWedge, "sand-wedge", 35.35, 64, 56, 34.5, 32, 9000},
		{KindWedge, "sw", 35.35, 64, 56, 34.5, 32, 9000},
		{KindWedge, "lob wedge", 35.19, 64, 60, 33.3, 34.4, 9200},
		{KindWedge, "LW", 35.19, 64, 60, 33.3, 34.4, 9200},
		{KindWedge, "52° gap", 35.51, 64, 52, 35.7, 29.6, 8800},
		{KindWedge, "39°", 35.99, 64, 40, 39.3, 22.4, 8200},
		{KindWedge, "65°", 35.03, 64, 64, 32.1, 36.8, 9400},
	} {
		got := DefaultClub(c.kind, c.name)
		if got.Name != c.name || got.Kind != c.kind || got.Ball == nil {
			t.Errorf("DefaultClub(%s, %s) = %+v", c.kind, c.name, got)
			continue
		}
		near := func(what string, got, want, tol float64) {
			t.Helper()
			if math.Abs(got-want) > tol {
				t.Errorf("%s %q: %s %v, want %v", c.kind, c.name, what, got, want)
			}
		}
		near("inches", got.Length/units.MetresPerInch, c.inches, inchTol)
		near("lie", got.Lie, c.lie, 0)
		near("loft", got.Loft, c.loft, 0)
		near("ball speed", got.Ball.Speed, c.speed, 1e-9)
		near("launch", got.Ball.Launch, c.launch, 1e-9)
		near("spin", got.Ball.Spin, c.spin, 1e-9)
	}
}
