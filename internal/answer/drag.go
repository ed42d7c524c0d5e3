package answer

import (
	"math"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/say"
)

// dragAnswer is what is known at once of a tee that is being moved.
type dragAnswer struct {
	X        float64     `json:"x"` // m
	Y        float64     `json:"y"`
	Free     bool        `json:"free"` // a ball may lie there
	Verdict  string      `json:"verdict"`
	Sentence string      `json:"sentence"`
	Place    string      `json:"place"`  // by tape
	Labels   [2]string   `json:"labels"` // of x and y
	Checks   []dragCheck `json:"checks"`
}

// dragCheck is one player with one club.
type dragCheck struct {
	Player    string  `json:"player"`
	Club      string  `json:"club"`
	Verdict   string  `json:"verdict"`
	Clearance float64 `json:"clearance"` // m
	Surface   string  `json:"surface"`
	Label     string  `json:"label"`
}

// drag serves a request of kind drag: the tee named in the focus, moved to x, y.
// It is held to the floor.
func (s *Solver) drag(req request) (any, error) {
	p, err := plan.FromTree(req.Plan)
	if err != nil {
		return nil, err
	}
	const inch = 0.01 // m from a wall, the nearest that a tee is held
	hold := func(v, most float64) float64 { return math.Round(min(max(v, inch), most-inch)*1000) / 1000 }
	r, err := s.cache.lab.At(p, req.Focus.Tee, hold(req.X, p.Room.Length), hold(req.Y, p.Room.Width))
	if err != nil {
		return nil, err
	}
	w := words{units: p.Units, margin: p.Margin}
	out := dragAnswer{X: r.X, Y: r.Y, Free: r.Free, Verdict: r.Verdict, Place: w.where(r.X, r.Y), Labels: w.both(r.X, r.Y), Checks: []dragCheck{}}
	worst := -1
	for i, c := range r.Checks {
		out.Checks = append(out.Checks, dragCheck{c.Player, c.Club, c.Verdict, c.Clearance, c.Surface, plan.LabelDown(c.Clearance, p.Units)})
		if worst < 0 || c.Clearance < r.Checks[worst].Clearance {
			worst = i
		}
	}
	switch {
	case !r.Free:
		out.Sentence = "No ball can lie here."
	case worst < 0:
		out.Sentence = say.Sprintf("Nobody plays from the %s.", teeName(r.Tee))
	default:
		c := r.Checks[worst]
		more := "."
		if c.Caution > 0 { // a check tries every swing against a box, a reading the widest
			more = ". The full check may find up to " + w.up(c.Caution) + " more."
		}
		out.Sentence = with(c.Player, c.Club) + " " + w.fits(c.Verdict, c.Clearance, c.Surface) + more
	}
	return out, nil
}

// hangAnswerAt is how low a thing may hang over one place.
type hangAnswerAt struct {
	X       float64   `json:"x"`
	Y       float64   `json:"y"`
	Lowest  float64   `json:"lowest"` // m above the structural floor
	Ceiling float64   `json:"ceiling"`
	Text    string    `json:"text"`
	Place   string    `json:"place"`
	Labels  [2]string `json:"labels"`
}

// hangAt serves a request of kind hangAt, for whom a request of kind maps is.
func (s *Solver) hangAt(req request) (any, error) {
	p, err := plan.FromTree(req.Plan)
	if err != nil {
		return nil, err
	}
	hold := func(v, most float64) float64 { return min(max(v, 0), most) }
	players, clubs := chosen(p, req.Focus)
	spot, err := s.cache.lab.HangAt(p, fit.HangOptions{Players: players, Clubs: clubs, Ball: true}, hold(req.X, p.Room.Length), hold(req.Y, p.Room.Width))
	if err != nil {
		return nil, err
	}
	w := words{units: p.Units, margin: p.Margin}
	return hangAnswerAt{spot.X, spot.Y, spot.Lowest, spot.Ceiling, w.hangSpot(spot), w.where(spot.X, spot.Y), w.both(spot.X, spot.Y)}, nil
}
