package fit

import (
	"slices"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/family"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Lab answers plans one after another and keeps the families it has modelled. The
// zero value is ready to use; it is not for concurrent use. What it answers does
// not depend on what it was asked before.
type Lab struct {
	// Pause, if there is one, is called every few dozen milliseconds of long work, with
	// how much of it is done where that is known (else all is 0). Work ends with the
	// error that it returns; nothing may be asked of the lab before that.
	Pause func(done, all int) error

	families family.Store
	checks   []made // whoever was asked for last comes first
}

// Rest calls Pause.
func (l *Lab) Rest(done, all int) error {
	if l.Pause == nil {
		return nil
	}
	return l.Pause(done, all)
}

// MostMapped is how many families one map is made of at most: all of them are in use at
// once, and what more would take a browser on a phone may not have.
const MostMapped = 20

// Atlases makes what maps ask of casts, pausing between them: each takes as long as
// the family did. More than MostMapped are refused.
func (l *Lab) Atlases(casts []Cast) error {
	if n := len(casts); n > MostMapped {
		return fmt.Errorf("%d players and clubs together take more memory than a phone has; choose one player or one club", n)
	}
	for k := range casts {
		if err := l.Rest(k, len(casts)); err != nil {
			return err
		}
		casts[k].Kin.Atlas()
	}
	return l.Rest(0, 0)
}

// Swing returns the swing of a player (defaults filled in) with a club that v places
// in the family, such as the Variation of a Nearest.
func (l *Lab) Swing(player plan.Player, club plan.Club, v swing.Variation) (*swing.Swing, error) {
	return l.families.Swing(player, club, v)
}

// made is a check that was made, and all that it depends on.
type made struct {
	family   string
	place    sweep.Placement
	surfaces []sweep.Surface // room frame
	margin   float64
	check    Check
}

// spareChecks is how many checks are kept beside those of the plan at hand, some
// 2 kB each.
const spareChecks = 40

// made returns the check that was made of the same before.
func (l *Lab) made(of made) (Check, bool) {
	i := slices.IndexFunc(l.checks, func(m made) bool {
		return m.family == of.family && m.place == of.place && m.margin == of.margin && slices.Equal(m.surfaces, of.surfaces)
	})
	if i < 0 {
		return Check{}, false
	}
	one := l.checks[i]
	copy(l.checks[1:i+1], l.checks[:i])
	l.checks[0] = one
	return one.check, true
}

// Casts returns every player with each of their clubs; where players or clubs
// are named, only those. The plan must be complete and valid.
func (l *Lab) Casts(p plan.Plan, players, clubs []string) ([]Cast, error) {
	surfaces := sweep.Surfaces(p)
	l.families.Expect(p.Pairs())
	var out []Cast
	for _, player := range p.Players {
		if len(players) > 0 && !slices.Contains(players, player.Name) {
			continue
		}
		for _, club := range p.ClubsOf(player) {
			if len(clubs) > 0 && !slices.Contains(clubs, club.Name) {
				continue
			}
			if err := l.Rest(0, 0); err != nil {
				return nil, err
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
