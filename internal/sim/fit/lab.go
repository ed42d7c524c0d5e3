package fit

import (
	"slices"

	"wideberth/internal/sim/family"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// Lab answers plans one after another and keeps the families it has modelled. The
// zero value is ready to use; it is not for concurrent use. What it answers does
// not depend on what it was asked before.
type Lab struct {
	families family.Store
}

// Casts returns every player with each of their clubs; where players or clubs
// are named, only those. The plan must be complete and valid.
func (l *Lab) Casts(p plan.Plan, players, clubs []string) ([]Cast, error) {
	surfaces := sweep.Surfaces(p)
	var out []Cast
	for _, player := range p.Players {
		if len(players) > 0 && !slices.Contains(players, player.Name) {
			continue
		}
		for _, club := range p.ClubsOf(player) {
			if len(clubs) > 0 && !slices.Contains(clubs, club.Name) {
				continue
			}
			at := sweep.Place(p, plan.Tee{}, player)
			kin, err := l.families.Of(player, club, family.Directions(at.Surfaces(surfaces)))
			if err != nil {
				return nil, err
			}
			out = append(out, Cast{player, club, kin, at})
		}
	}
	return out, nil
}
