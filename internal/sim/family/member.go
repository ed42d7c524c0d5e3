package family

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
	pl, c, t, err := p.Named(player, club, tee)
	if err != nil {
		return nil, none, err
	}
	v := swing.Variation{}
	if sample > 0 {
		v = swing.Variations(Sampled, seed)[sample-1]
	}
	f, err := model(pl, c)
	if err != nil {
		return nil, none, err
	}
	s, _, err := nearestMember(f, v)
	return s, sweep.Place(p, t, pl), err
}

// SwingOf returns the swing of a player (defaults filled in) with a club that v
// places in the family, such as the Variation of a Nearest.
func SwingOf(player plan.Player, club plan.Club, v swing.Variation) (*swing.Swing, error) {
	f, err := model(player, club)
	if err != nil {
		return nil, err
	}
	return f.Member(v)
}

// model models the family of a player with a club.
func model(player plan.Player, club plan.Club) (*swing.Family, error) {
	f, err := swing.NewFamily(body.New(player), swing.NewClub(club), swing.StyleOf(player))
	if err != nil {
		return nil, fmt.Errorf("player %q with %q: %w", player.Name, club.Name, err)
	}
	return f, nil
}
