package protocol

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/maps"
	"wideberth/internal/sim/plan"
	"wideberth/internal/solver/words"
)

// dragAnswer is what is known at once of a tee that is being moved.
type dragAnswer struct {
	X        float64     `json:"x"` // m
	Y        float64     `json:"y"`
	Verdict  fit.Verdict `json:"verdict"` // strikes where no ball can lie
	Sentence string      `json:"sentence"`
	Labels   [2]string   `json:"labels"` // of x and y
	Off      string      `json:"off"`    // how far off the middle of the room
}

// drag serves a request of kind drag: the tee named in the focus, moved to x, y.
func (s *Solver) drag(req request) (any, error) {
	doc, err := plan.FromTree(req.Plan)
	if err != nil {
		return nil, err
	}
	return s.reading(doc, req.Focus.Tee, req.X, req.Y)
}

// reading is what is known at once of a tee at x, y; it is held to the floor. It
// leads with the worst of everybody, those on the other tees included.
func (s *Solver) reading(doc plan.Checked, tee string, x, y float64) (dragAnswer, error) {
	p := doc.Plan()
	const inch = 0.01 // m from a wall, the nearest that a tee is held
	hold := func(v, most float64) float64 { return math.Round(min(max(v, inch), most-inch)*1000) / 1000 }
	r, err := s.cache.lab.At(doc, tee, hold(x, p.Room.Length), hold(y, p.Room.Width))
	if err != nil {
		return dragAnswer{}, err
	}
	everybody := slices.Clone(r.Checks)
	out := dragAnswer{X: r.X, Y: r.Y, Labels: words.WordsOf(p).Both(r.X, r.Y), Off: words.WordsOf(p).OffMiddle(r.Y, p.Room.Width)}
	for _, other := range p.Tees {
		if other.Name == r.Tee {
			continue
		}
		there, err := s.cache.lab.At(doc, other.Name, other.X, other.Y)
		if err != nil {
			return dragAnswer{}, err
		}
		everybody = append(everybody, there.Checks...)
	}
	out.Verdict, out.Sentence = told(words.WordsOf(p), r, everybody)
	return out, nil
}

// told puts a reading into words, with the worst verdict of everybody: the checks
// of all tees.
func told(w words.Words, r fit.Reading, everybody []fit.QuickCheck) (verdict fit.Verdict, sentence string) {
	verdicts := make([]fit.Verdict, len(everybody))
	caution := 0.0
	for i, c := range everybody {
		verdicts[i] = c.Verdict
		caution = max(caution, c.Caution)
	}
	verdict = words.Worst(verdicts)
	switch {
	case !r.Free:
		return fit.Strikes, "No ball can lie here."
	case len(r.Checks) == 0:
		return verdict, fmt.Sprintf("Nobody plays from the %s.", words.TeeName(r.Tee))
	}
	c := slices.MinFunc(r.Checks, func(a, b fit.QuickCheck) int { return cmp.Compare(a.Clearance, b.Clearance) })
	from := ""
	if len(everybody) > len(r.Checks) {
		from = fmt.Sprintf("From the %s, ", words.TeeName(r.Tee))
	}
	more := "."
	if caution > 0 { // a check tries every swing against a box, a reading the widest
		more = ". The full check may find up to " + w.Up(caution) + " more."
	}
	return verdict, words.Headline(verdicts) + " " + from + words.With(c.Player, c.Club) + " " + w.Fits(c.Verdict, c.Clearance, c.Surface) + more
}

// hangAnswerAt is how low a thing may hang over one place.
type hangAnswerAt struct {
	X      float64   `json:"x"`
	Y      float64   `json:"y"`
	Lowest float64   `json:"lowest"` // m above the structural floor
	Text   string    `json:"text"`
	Labels [2]string `json:"labels"`
}

// hangAt serves a request of kind hangAt, for whom a request of kind maps is.
func (s *Solver) hangAt(req request) (any, error) {
	doc, err := plan.FromTree(req.Plan)
	if err != nil {
		return nil, err
	}
	return s.spot(doc, req)
}

// spot is how low a thing may hang over the place of a request.
func (s *Solver) spot(doc plan.Checked, req request) (hangAnswerAt, error) {
	p := doc.Plan()
	hold := func(v, most float64) float64 { return min(max(v, 0), most) }
	players, clubs := chosen(p, req.Focus)
	spot, err := maps.HangAt(&s.cache.lab, doc, maps.HangOptions{Players: players, Clubs: clubs, Ball: true}, hold(req.X, p.Room.Length), hold(req.Y, p.Room.Width))
	if err != nil {
		return hangAnswerAt{}, err
	}
	w := words.WordsOf(p)
	return hangAnswerAt{spot.X, spot.Y, spot.Lowest, w.HangSpot(spot), w.Both(spot.X, spot.Y)}, nil
}

// hangThingAnswer is how a thing would fare before it hangs.
type hangThingAnswer struct {
	X       float64     `json:"x"` // the middle of its footprint, m
	Y       float64     `json:"y"`
	Thing   plan.Hung   `json:"thing"` // as the plan would have it
	Verdict fit.Verdict `json:"verdict"`
	Lowest  float64     `json:"lowest"` // m above the structural floor: its underside no lower
	Text    string      `json:"text"`
	Labels  [2]string   `json:"labels"`
}

// hangThing serves a request of kind hangThing: the thing named in the text, of a
// length, a width and a drop, at x, y.
func (s *Solver) hangThing(req request) (any, error) {
	doc, err := plan.FromTree(req.Plan)
	if err != nil {
		return nil, err
	}
	w := words.WordsOf(doc.Plan())
	name := strings.TrimSpace(req.Text)
	if name == "" {
		return nil, &plan.FieldError{Field: "name", Message: "the thing needs a name"}
	}
	c, err := maps.HangThing(&s.cache.lab, doc, maps.Hanging{Name: name, X: req.X, Y: req.Y, Length: req.Length, Width: req.Width, Drop: req.Drop})
	if err != nil {
		return nil, err
	}
	return hangThingAnswer{c.Spot.X, c.Spot.Y, c.Thing, c.Verdict, c.Spot.Lowest, w.Hanging(c), w.Both(c.Spot.X, c.Spot.Y)}, nil
}
