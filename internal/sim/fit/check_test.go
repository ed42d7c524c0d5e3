package fit

import (
	"testing"

	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/sweep"
)

// TestHitsCountsEverySwing compares the count of touching members with one that
// looks at every member in full.
func TestHitsCountsEverySwing(t *testing.T) {
	p := plantest.Loft()
	p = p.WithDefaults()
	for _, player := range p.Players {
		club := p.Clubs[0]
		on := trialOf(t, p, player, club)
		want := 0
		for _, m := range on.kin.Sample {
			track := sweep.Sample(m.Swing, sweep.FineTolerance)
			for _, surface := range on.local {
				if track.Clearance(surface).Clearance < 0 {
					want++
					break
				}
			}
		}
		// A member within the tolerances of touching may fall on either side.
		if got := on.check(p.Margin).Hits; got < want-2 || got > want+2 {
			t.Errorf("%s: %d members touch, want %d", player.Name, got, want)
		}
	}
}
