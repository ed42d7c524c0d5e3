package plan

import "slices"

// Standing is the height (m) of the surface that ball and golfer stand on,
// above the structural floor: the layers, and the mat on top of them. An inset
// mat is brought flush with the layers, but one that is thicker than all of
// them still rises to its own thickness, since it cannot sink into the
// structural floor.
func (f Floor) Standing() float64 {
	sum := 0.0
	for _, l := range f.Layers {
		sum += l.Thickness
	}
	switch {
	case f.Mat == nil:
		return sum
	case f.Mat.Inset:
		return max(sum, f.Mat.Thickness)
	default:
		return sum + f.Mat.Thickness
	}
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
		case "left":
			d = r.Width - y
		case "right":
			d = y
		case "front":
			d = r.Length - x
		case "back":
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
		if len(pl.Tees) == 0 || slices.Contains(pl.Tees, t.Name) {
			out = append(out, t)
		}
	}
	return out
}
