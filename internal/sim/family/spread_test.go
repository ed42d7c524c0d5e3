package family

import (
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
)

// TestSpreadHoldsEveryMember checks the boxes that say when anybody may be at a
// surface at all, for golfers of all manners.
func TestSpreadHoldsEveryMember(t *testing.T) {
	players := []plan.Player{
		{Name: "Loose", Height: 1.92, Follow: "loose", Span: 2.01, Turn: "long"},
		{Name: "Full", Height: 1.78},
		{Name: "Held", Height: 1.60, Follow: "held", Plane: "flat", Turn: "compact"},
	}
	if testing.Short() {
		players = players[:1]
	}
	for _, player := range players {
		for _, club := range []plan.Club{plan.DefaultClub("driver", "driver"), plan.DefaultClub("wedge", "wedge")} {
			r, err := New(player, club, []geom.Vec{{Z: -1}})
			if err != nil {
				t.Fatal(err)
			}
			const between = 3
			for j, boxes := range r.Spread() {
				var times []float64
				for k := range between + 1 {
					times = append(times, r.Times[j]+(r.Times[j+1]-r.Times[j])*float64(k)/between)
				}
				r.Family.SetTimes(times)
				poses := make([]swing.Pose, len(times))
				for m := range r.All() {
					r.Family.Poses(m.Swing, swing.AllParts, poses)
					for k := range poses {
						for p := range swing.NumParts {
							if b := poses[k][p].Bounds(); boxes[p].Union(b) != boxes[p] {
								t.Fatalf("%s, %s: %v of %v at %.4f s is at %v, outside %v", player.Name, club.Name, p, m.Variation, times[k], b, boxes[p])
							}
						}
					}
				}
			}
		}
	}
}
