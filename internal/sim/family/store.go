package family

import (
	"slices"
	"strings"

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
	kept   []kept            // whoever was asked for last comes first
	sample []swing.Variation // of every family, once the first was asked for
	room   scratch
	most   int // families of the plan at hand
}

// kept is a family and all that it depends on.
type kept struct {
	key string
	*Relatives
}

const (
	// spare is how many families are kept beside those of the plan at hand: as many
	// clubs as one golfer usually has in a plan, so that Undo swings nobody again.
	spare = 3
	// mostBytes bounds what all that are kept take, by size: the rest of 400 MB is
	// for what is being worked on and what the collector has not freed yet. All the
	// families of the largest plan are less (TestLargestPlanIsKept).
	mostBytes = 220 << 20
)

// KeyOf is everything that the family of a player with a club depends on, and
// nothing else.
func KeyOf(player plan.Player, club plan.Club, dirs []geom.Vec) (string, error) {
	text, err := json.Encode([]any{player.Height, player.Sex, player.Span, player.Arm, player.BallToToes, player.BallToHands, player.Shoe,
		player.Turn, player.Plane, player.Follow, club.Kind, club.Length, club.Lie, dirs})
	if err != nil {
		return "", fmt.Errorf("player %q with %q: %w", player.Name, club.Name, err)
	}
	return string(text), nil
}

// Expect tells how many families the plan at hand has.
func (s *Store) Expect(most int) {
	s.most = most
	s.forget()
}

// Of returns the family of a player with a club for the given directions, as New
// does.
func (s *Store) Of(player plan.Player, club plan.Club, dirs []geom.Vec) (*Relatives, error) {
	key, err := KeyOf(player, club, dirs)
	if err != nil {
		return nil, err
	}
	if i := slices.IndexFunc(s.kept, func(k kept) bool { return k.key == key }); i >= 0 {
		one := s.kept[i]
		copy(s.kept[1:i+1], s.kept[:i])
		s.kept[0] = one
		return one.Relatives, nil
	}
	if s.sample == nil {
		s.sample = swing.Variations(Sampled, seed)
	}
	r, err := newRelatives(player, club, dirs, s.sample, &s.room)
	if err != nil {
		return nil, err
	}
	s.kept = append(s.kept, kept{})
	copy(s.kept[1:], s.kept)
	s.kept[0] = kept{key, r}
	s.forget()
	return r, nil
}

// Swing is SwingOf, from a family that is kept if there is one.
func (s *Store) Swing(player plan.Player, club plan.Club, v swing.Variation) (*swing.Swing, error) {
	nowhere, err := KeyOf(player, club, nil)
	if err != nil {
		return nil, err
	}
	// Which directions a family was reduced for changes no swing, and they come last.
	whose := strings.TrimSuffix(nowhere, "null]")
	for _, k := range s.kept {
		if strings.HasPrefix(k.key, whose) {
			return k.Family.Member(v)
		}
	}
	return SwingOf(player, club, v)
}

// forget drops what was not asked for the longest: families beyond those of the plan at
// hand and a few, and what maps are made from of those few and as far as there is no
// room for it.
func (s *Store) forget() {
	if n := s.most + spare; len(s.kept) > n {
		clear(s.kept[n:])
		s.kept = s.kept[:n]
	}
	bytes := len(s.kept) * bytesOfFamily
	for i, k := range s.kept {
		more := k.bytes() - bytesOfFamily
		if i >= s.most || bytes+more > mostBytes {
			k.forgetMaps()
		} else {
			bytes += more
		}
	}
}

// What the parts of a family take, about, in bytes (TestFamilyBytes).
const (
	bytesOfFamily    = 17 << 18
	bytesOfAtlas     = 33 << 18
	bytesOfFootprint = 2 << 20
)

// bytes is about what the family takes.
func (r *Relatives) bytes() int {
	n := bytesOfFamily
	if r.maps != nil {
		if n += bytesOfAtlas; r.maps.print != nil {
			n += bytesOfFootprint
		}
	}
	return n
}

// forgetMaps drops what maps are made from; it is made again when it is asked for.
func (r *Relatives) forgetMaps() { r.maps = nil }
