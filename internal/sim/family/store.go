package family

import (
	"wideberth/internal/lean/fmt"
	"wideberth/internal/lean/json"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
)

// Store keeps the families that were modelled, so that moving a tee or a wall does
// not swing anybody again. The zero value is ready to use; it is not for
// concurrent use.
type Store struct {
	kept   map[string]*Relatives
	sample []swing.Variation // of every family, once the first was asked for
}

// keepAtMost bounds the families kept; the oldest are forgotten first come the
// next clearing, which bounds memory to about this many times 5 MB.
const keepAtMost = 24

// Of returns the family of a player with a club for the given directions, as New
// does.
func (s *Store) Of(player plan.Player, club plan.Club, dirs []geom.Vec) (*Relatives, error) {
	// Everything that a swing depends on, and nothing else.
	text, err := json.Encode([]any{player.Height, player.Sex, player.Span, player.Arm, player.BallToToes, player.BallToHands, player.Shoe,
		player.Turn, player.Plane, player.Follow, club.Kind, club.Length, club.Lie, dirs})
	if err != nil {
		return nil, fmt.Errorf("player %q with %q: %w", player.Name, club.Name, err)
	}
	key := string(text)
	if r, ok := s.kept[key]; ok {
		return r, nil
	}
	if s.sample == nil {
		s.sample = swing.Variations(Sampled, seed)
	}
	r, err := newRelatives(player, club, dirs, s.sample)
	if err != nil {
		return nil, err
	}
	if s.kept == nil || len(s.kept) >= keepAtMost {
		s.kept = map[string]*Relatives{}
	}
	s.kept[key] = r
	return r, nil
}
