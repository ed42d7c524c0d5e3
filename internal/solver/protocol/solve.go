package protocol

import (
	"errors"
	"slices"
	"strings"

	"wideberth/internal/form"
	"wideberth/internal/lean/fmt"
	"wideberth/internal/render/drawing"
	"wideberth/internal/render/scene/record"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
	"wideberth/internal/solver/words"
	"wideberth/internal/units"
)

// Focus names the check that the page looks at. What is empty, or names what
// the plan has not got, leaves the choice to the worst check that is left.
type Focus struct {
	Player string `json:"player"`
	Club   string `json:"club"`
	Tee    string `json:"tee"`
}

// solveAnswer is the answer to a plan.
type solveAnswer struct {
	Plan      plan.Plan       `json:"plan"` // with its defaults
	Report    fit.Report      `json:"report"`
	Focus     Focus           `json:"focus"`
	Sentences words.Sentences `json:"sentences"`
	Flat      drawing.Set     `json:"flat"`
	Figures   figures         `json:"figures"`
	Fresh     form.Fresh      `json:"fresh"`
	Sparse    plan.Plan       `json:"sparse"` // what a link keeps
	Notes     []string        `json:"notes"`
}

func (s *Solver) solve(req request) (any, error) {
	typed, err := form.Read(req.Plan)
	if err != nil {
		return nil, err
	}
	doc, r, focus, worst, err := s.check(req)
	if err != nil {
		return nil, typed.Tell(err)
	}
	p, c := doc.Plan(), r.Checks[focus]
	drawn, err := s.draw(p, r, c)
	if err != nil {
		return nil, err
	}
	return solveAnswer{
		Plan: p, Report: r, Focus: Focus{c.Player, c.Club, c.Tee},
		Sentences: words.Tell(p, r, focus, worst),
		Flat:      drawn, Notes: append(typed.Notes, notes(p, r)...),
		Figures: figuresOf(p, r, c, drawn), Fresh: form.FreshFor(p), Sparse: p.Sparse(),
	}, nil
}

// check reads the plan of a request and runs it, unless it was run before. It
// returns the indices of the check that the request looks at and of the worst.
func (s *Solver) check(req request) (doc plan.Checked, r fit.Report, focus, worst int, err error) {
	p, err := plan.Fill(req.Plan)
	if err != nil {
		return
	}
	if doc, err = plan.Check(p.Follow(req.Walls)); err != nil {
		return
	}
	if r, err = s.cache.report(doc); err != nil {
		return
	}
	if len(r.Checks) == 0 {
		err = &plan.FieldError{Field: "players", Message: "nobody in the plan swings a club: add a player and a club"}
		return
	}
	worst = worstOf(r.Checks, Focus{})
	focus = worst
	if f := req.Focus; f != (Focus{}) {
		if i := worstOf(r.Checks, f); i >= 0 {
			focus = i
		}
	}
	return
}

// worstOf is the index of the check with the least clearance among those that f
// allows, the first of equals; -1 when there is none.
func worstOf(checks []fit.Check, f Focus) int {
	worst := -1
	allows := func(want, got string) bool { return want == "" || want == got }
	for i, c := range checks {
		if allows(f.Player, c.Player) && allows(f.Club, c.Club) && allows(f.Tee, c.Tee) &&
			(worst < 0 || c.Clearance < checks[worst].Clearance) {
			worst = i
		}
	}
	return worst
}

// notes are the plan's remarks and those of its checks, each once.
func notes(p plan.Plan, r fit.Report) []string {
	out := append([]string{}, p.Notes()...)
	for _, c := range r.Checks {
		for _, n := range c.Notes {
			if !slices.Contains(out, n) {
				out = append(out, n)
			}
		}
	}
	return out
}

// draw makes the flat drawings of the swing that decides a check.
func (s *Solver) draw(p plan.Plan, r fit.Report, c fit.Check) (drawing.Set, error) {
	who, err := castOf(p, c)
	if err != nil {
		return drawing.Set{}, err
	}
	m, err := s.cache.motion(who, c.Nearest.Variation)
	if err != nil {
		return drawing.Set{}, err
	}
	var touch *drawing.Touch
	if t := c.Contact; t != nil {
		touch = &drawing.Touch{Words: words.Words{Units: p.Units}.Touch(*t), At: vec(t.At)}
	}
	return drawing.Build(drawing.Input{
		Plan: p, At: sweep.Place(p, who.tee, who.player),
		Motion: m.outline, Address: m.swing.PoseAt(0),
		Tightest: drawing.Tightest{
			Pose: m.swing.PoseAt(c.Nearest.Time),
			From: vec(c.Nearest.On), To: vec(c.Nearest.At),
			Label: tapeLabel(c.Clearance, p.Units), Verdict: c.Verdict, Surface: c.Nearest.Surface,
			ModelError: r.ModelError,
		},
		First: touch,
	}), nil
}

// firstTouch is where the scene's strike marks begin, nil where nothing is struck.
func firstTouch(c fit.Check) *record.Touch {
	if c.Contact == nil {
		return nil
	}
	return &record.Touch{Time: c.Contact.Time, At: vec(c.Contact.At), Surface: c.Contact.Surface, Part: c.Contact.Part}
}

// deciding is the check that a request looks at, and the swing that decides it.
type deciding struct {
	plan   plan.Plan
	report fit.Report
	check  fit.Check
	who    cast
	swing  *swing.Swing
}

func (s *Solver) deciding(req request) (deciding, error) {
	doc, r, focus, _, err := s.check(req)
	if err != nil {
		return deciding{}, err
	}
	p, c := doc.Plan(), r.Checks[focus]
	who, err := castOf(p, c)
	if err != nil {
		return deciding{}, err
	}
	m, err := s.cache.motion(who, c.Nearest.Variation)
	return deciding{p, r, c, who, m.swing}, err
}

// show makes the scene's bytes for the swing that decides a check.
func (s *Solver) show(req request) ([]byte, error) {
	at, err := s.deciding(req)
	if err != nil {
		return nil, err
	}
	p, r, c, who := at.plan, at.report, at.check, at.who
	typical, err := s.cache.motion(who, swing.Variation{})
	if err != nil {
		return nil, err
	}
	recording := record.Swing(record.Input{
		Plan: p, Player: who.player, Club: who.club, Tee: who.tee, Swing: at.swing, Typical: typical.swing,
		// The scene's tape reads as the sentence above it does.
		Tightest: record.Tightest{
			Time: c.Nearest.Time, From: vec(c.Nearest.On), To: vec(c.Nearest.At),
			Label: tapeLabel(c.Clearance, p.Units), Verdict: c.Verdict, Surface: c.Nearest.Surface, Part: c.Nearest.Part,
			ModelError: r.ModelError,
		},
		First: firstTouch(c),
		Ball:  shot(p, r.Checks, who),
	})
	return recording.Encode(), nil
}

// cast is who swings what from where.
type cast struct {
	player plan.Player
	club   plan.Club
	tee    plan.Tee
}

func castOf(p plan.Plan, c fit.Check) (cast, error) {
	player, ok1 := p.Player(c.Player)
	club, ok2 := p.Club(c.Club)
	tee, ok3 := p.Tee(c.Tee)
	if !ok1 || !ok2 || !ok3 {
		return cast{}, fmt.Errorf("this is a fault of the program, not of your numbers: the report names %s, which the plan has not got", words.Swinger(c))
	}
	return cast{player, club, tee}, nil
}

// tapeLabel is the reading on the tape, in both kinds of unit; an overshoot is
// said to be one, since a tape shows no sign.
func tapeLabel(clearance float64, system string) string {
	label := units.LabelTape(clearance, system)
	if clearance < 0 {
		return strings.ReplaceAll(label, words.Minus, "") + " past"
	}
	return label
}

func vec(v [3]float64) geom.Vec { return geom.Vec{X: v[0], Y: v[1], Z: v[2]} }

// cache keeps what the last requests worked out. Moving a slider asks for the
// same plan with another title, unit or focus, or the same swing on another tee.
type cache struct {
	lab     fit.Lab
	key     string // of the plan that last was run
	last    fit.Report
	motions map[swingKey]motion
}

// motion is one swing and the outline of what it sweeps.
type motion struct {
	swing   *swing.Swing
	outline *drawing.Motion
}

// maxMotions bounds the motions kept, some 50 kB each.
const maxMotions = 64

// report runs a plan, unless it last ran one that differs only in what no
// clearance depends on.
func (c *cache) report(doc plan.Checked) (fit.Report, error) {
	same := doc.Plan()
	same.Title, same.Units, same.Seats, same.Sensor, same.Air = "", "", nil, nil, nil
	key := string(same.JSON())
	if key == "" {
		return fit.Report{}, errors.New("this is a fault of the program, not of your numbers: a checked plan cannot be written down")
	}
	if key == c.key {
		return c.last, nil
	}
	r, err := c.lab.Check(doc)
	if err != nil {
		return fit.Report{}, err
	}
	c.key, c.last = key, r
	return r, nil
}

// motion makes one member of a player's family with a club.
func (c *cache) motion(who cast, v swing.Variation) (motion, error) {
	key := keyOf(who, v)
	if m, ok := c.motions[key]; ok {
		return m, nil
	}
	s, err := c.lab.Swing(who.player, who.club, v)
	if err != nil {
		return motion{}, err
	}
	_, poses := sweep.Sample(s, sweep.FineTolerance).Samples()
	m := motion{s, drawing.Reduce(poses)}
	if c.motions == nil || len(c.motions) >= maxMotions {
		c.motions = map[swingKey]motion{}
	}
	c.motions[key] = m
	return m, nil
}

// swingKey is everything that one swing depends on, and nothing else.
type swingKey struct {
	height, span, arm, shoe  float64
	toes, hands              float64 // from the ball, measured
	sex, turn, plane, follow string
	kind                     string
	length, lie              float64
	variation                swing.Variation
}

func keyOf(who cast, v swing.Variation) swingKey {
	p, c := who.player, who.club
	return swingKey{
		p.Height, p.Span, p.Arm, p.Shoe, p.BallToToes, p.BallToHands, p.Sex, p.Turn, p.Plane, p.Follow,
		c.Kind, c.Length, c.Lie, v,
	}
}
