package fit

import (
	"slices"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/lean/json"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Lab answers plans one after another and keeps the families it has modelled,
// so that moving a tee or a wall does not swing anybody again. The zero value is
// ready to use; it is not for concurrent use. What it answers does not depend
// on what it was asked before.
type Lab struct {
	// Brief leaves the remedies out of reports, for a caller who asks for them by
	// Remedies once the verdict stands.
	Brief bool

	kept   map[string]*relatives
	sample []swing.Variation
}

// keepAtMost bounds the families kept; the oldest are forgotten first come the
// next clearing, which bounds memory to about this many times 5 MB.
const keepAtMost = 24

// relatives returns the family of a player with a club for the given directions.
func (l *Lab) relatives(player plan.Player, club plan.Club, dirs []geom.Vec) (*relatives, error) {
	// Everything that a swing depends on, and nothing else.
	text, err := json.Encode([]any{player.Height, player.Sex, player.Span, player.Arm, player.BallToToes, player.BallToHands, player.Shoe,
		player.Turn, player.Plane, player.Follow, club.Kind, club.Length, club.Lie, dirs})
	if err != nil {
		return nil, fmt.Errorf("player %q with %q: %w", player.Name, club.Name, err)
	}
	key := string(text)
	if r, ok := l.kept[key]; ok {
		return r, nil
	}
	if l.sample == nil {
		l.sample = swing.Variations(Sampled, seed)
	}
	r, err := newRelatives(player, club, dirs, l.sample)
	if err != nil {
		return nil, err
	}
	if l.kept == nil || len(l.kept) >= keepAtMost {
		l.kept = map[string]*relatives{}
	}
	l.kept[key] = r
	return r, nil
}

// room is the surfaces of a plan in the golfer frame of one placement.
type room struct {
	place    sweep.Placement
	surfaces []sweep.Surface // room frame
	local    []sweep.Surface // golfer frame
}

func newRoom(surfaces []sweep.Surface, place sweep.Placement) room {
	return room{place, surfaces, place.Surfaces(surfaces)}
}

// dirs returns the normals of the flat surfaces in the golfer frame, each once.
// The upright walls come first and in one order for both hands, so that players
// of either hand share families in a room without slopes.
func (r *room) dirs() []geom.Vec {
	dirs := slices.Clone(axes)
	for _, s := range r.local {
		if s.Kind.Flat() && !slices.Contains(dirs, s.Plane.N) {
			dirs = append(dirs, s.Plane.N)
		}
	}
	return dirs
}
