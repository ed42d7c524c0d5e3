package plan

import (
	"slices"

	"wideberth/internal/lean/fmt"
)

// Top is the height (m) of the uppermost layer above the structural floor: of the
// floor around a mat.
func (f Floor) Top() float64 {
	sum := 0.0
	for _, l := range f.Layers {
		sum += l.Thickness
	}
	return sum
}

// Standing is the height (m) of the surface that ball and golfer stand on,
// above the structural floor: the layers, and the mat on top of them. An inset
// mat is brought flush with the layers, but one that is thicker than all of
// them still rises to its own thickness, since it cannot sink into the
// structural floor.
func (f Floor) Standing() float64 {
	sum := f.Top()
	switch {
	case f.Mat == nil:
		return sum
	case f.Mat.Inset:
		return max(sum, f.Mat.Thickness)
	default:
		return sum + f.Mat.Thickness
	}
}

// Edges are where the cloth of the screen ends: y of right and left as the golfer
// sees it, z of bottom and top, m.
func (s Screen) Edges() (right, left, bottom, top float64) {
	return s.Centre - s.Width/2, s.Centre + s.Width/2, s.Bottom, s.Bottom + s.Height
}

// Headroom is the height (m) from the standing surface to the flat ceiling.
func (p Plan) Headroom() float64 { return p.Room.Height - p.Floor.Standing() }

// CeilingAt is the height (m) of the ceiling above (x, y), slopes included,
// beams and other solids not.
func (r Room) CeilingAt(x, y float64) float64 {
	h := r.Height
	for _, s := range r.Slopes {
		d := 0.0 // distance from the knee wall
		switch s.Wall {
		case WallLeft:
			d = r.Width - y
		case WallRight:
			d = y
		case WallFront:
			d = r.Length - x
		case WallBack:
			d = x
		default:
			continue
		}
		if s.Run > 0 && d < s.Run {
			h = min(h, s.KneeHeight+(r.Height-s.KneeHeight)*d/s.Run)
		}
	}
	return h
}

// Player finds a player by name.
func (p Plan) Player(name string) (Player, bool) {
	i := slices.IndexFunc(p.Players, func(v Player) bool { return v.Name == name })
	if i < 0 {
		return Player{}, false
	}
	return p.Players[i], true
}

// Club finds a club by name.
func (p Plan) Club(name string) (Club, bool) {
	i := slices.IndexFunc(p.Clubs, func(v Club) bool { return v.Name == name })
	if i < 0 {
		return Club{}, false
	}
	return p.Clubs[i], true
}

// Tee finds a tee by name.
func (p Plan) Tee(name string) (Tee, bool) {
	i := slices.IndexFunc(p.Tees, func(v Tee) bool { return v.Name == name })
	if i < 0 {
		return Tee{}, false
	}
	return p.Tees[i], true
}

// ClubsOf lists the clubs that a player swings, in the plan's order. A player
// who names none swings all.
func (p Plan) ClubsOf(pl Player) []Club {
	var out []Club
	for _, c := range p.Clubs {
		if len(pl.Clubs) == 0 || slices.Contains(pl.Clubs, c.Name) {
			out = append(out, c)
		}
	}
	return out
}

// TeesOf lists the tees that a player uses, in the plan's order. A player who
// names none uses all.
func (p Plan) TeesOf(pl Player) []Tee {
	var out []Tee
	for _, t := range p.Tees {
		if pl.Uses(t) {
			out = append(out, t)
		}
	}
	return out
}

// Uses reports whether a player plays from a tee.
func (pl Player) Uses(t Tee) bool { return len(pl.Tees) == 0 || slices.Contains(pl.Tees, t.Name) }

// Named finds a player, a club of theirs and a tee of theirs; an empty name takes
// the first.
func (p Plan) Named(player, club, tee string) (Player, Club, Tee, error) {
	pl, ok := find(p.Players, player, func(x Player) string { return x.Name })
	if !ok {
		return pl, Club{}, Tee{}, fmt.Errorf("player %q is not in the plan", player)
	}
	c, ok := find(p.ClubsOf(pl), club, func(x Club) string { return x.Name })
	if !ok {
		return pl, c, Tee{}, fmt.Errorf("player %q has no club %q", pl.Name, club)
	}
	t, ok := find(p.TeesOf(pl), tee, func(x Tee) string { return x.Name })
	if !ok {
		return pl, c, t, fmt.Errorf("player %q has no tee %q", pl.Name, tee)
	}
	return pl, c, t, nil
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

// Pairs counts the players with each of their clubs.
func (p Plan) Pairs() int {
	n := 0
	for _, player := range p.Players {
		n += len(p.ClubsOf(player))
	}
	return n
}
