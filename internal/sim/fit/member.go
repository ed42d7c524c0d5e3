package fit

import (
	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/body"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Swing returns one swing of a plan and where it stands: player, club and tee by
// name (an empty name takes the first the player has), and the member of the
// family: 0 is the central swing, n the n-th of the sample.
func Swing(given plan.Checked, player, club, tee string, sample int) (*swing.Swing, sweep.Placement, error) {
	var none sweep.Placement
	p := given.Plan()
	if sample < 0 || sample > Sampled {
		return nil, none, fmt.Errorf("sample %d is outside 0–%d", sample, Sampled)
	}
	pl, ok := find(p.Players, player, func(x plan.Player) string { return x.Name })
	if !ok {
		return nil, none, fmt.Errorf("player %q is not in the plan", player)
	}
	c, ok := find(p.ClubsOf(pl), club, func(x plan.Club) string { return x.Name })
	if !ok {
		return nil, none, fmt.Errorf("player %q has no club %q", pl.Name, club)
	}
	t, ok := find(p.TeesOf(pl), tee, func(x plan.Tee) string { return x.Name })
	if !ok {
		return nil, none, fmt.Errorf("player %q has no tee %q", pl.Name, tee)
	}
	v := swing.Variation{}
	if sample > 0 {
		v = swing.Variations(Sampled, seed)[sample-1]
	}
	family, err := familyOf(pl, c)
	if err != nil {
		return nil, none, err
	}
	s, _, err := nearestMember(family, v)
	return s, sweep.Place(p, t, pl), err
}

// Member returns the swing of a player (defaults filled in) with a club that v
// places in the family, such as the Variation of a Nearest.
func Member(player plan.Player, club plan.Club, v swing.Variation) (*swing.Swing, error) {
	family, err := familyOf(player, club)
	if err != nil {
		return nil, err
	}
	return family.Member(v)
}

// familyOf models the family of a player with a club.
func familyOf(player plan.Player, club plan.Club) (*swing.Family, error) {
	family, err := swing.NewFamily(body.New(player), swing.NewClub(club), swing.StyleOf(player))
	if err != nil {
		return nil, fmt.Errorf("player %q with %q: %w", player.Name, club.Name, err)
	}
	return family, nil
}

// find returns the item of a name, or the first for an empty name.
func find[T any](items []T, name string, nameOf func(T) string) (T, bool) {
	for _, x := range items {
		if name == "" || nameOf(x) == name {
			return x, true
		}
	}
	var none T
	return none, false
}
