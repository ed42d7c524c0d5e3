package protocol

import (
	"wideberth/internal/lean/fmt"
	"wideberth/internal/render/drawing"
	"wideberth/internal/render/scene/record"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/ball/enclosure"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/solver/words"
	"wideberth/internal/units"
)

const (
	// defaultCatch is the share of ordinary balls an enclosure is measured for
	// when the request names none.
	defaultCatch = 0.99

	// focusBalls is how many balls are flown for the check that is looked at.
	focusBalls = 1000
	// pairBalls is how many are flown for each line of the table, and
	// catchBalls for the enclosure. Together they take a third of the time that
	// an answer about the ball may take.
	pairBalls  = 200
	catchBalls = 500
	// mostBalls bounds the balls of all lines together, and leastBalls those of
	// one: a plan with hundreds of lines is answered more coarsely, and says so.
	mostBalls  = 8000
	leastBalls = 40
	// fineRate is the catch rate from which twice catchBalls are flown: a rare
	// miss takes many balls to see.
	fineRate = 0.995
)

// ballAnswer is the answer about the ball: what it meets, what the enclosure
// must be and what comes back. All text is in the plan's units, all numbers are
// SI, angles degrees.
type ballAnswer struct {
	Focus     Focus              `json:"focus"`
	Said      ballSaid           `json:"said"`  // of everybody
	Folds     ballFolds          `json:"folds"` // the rest, each by its figure
	Summary   string             `json:"summary"`
	Sentences []string           `json:"sentences"`
	Screen    *ballScreen        `json:"screen,omitempty"`
	Outcome   ball.Outcome       `json:"outcome"`
	Mishits   []ballMishit       `json:"mishits"`
	Table     []ballRow          `json:"table"`
	Enclosure *ballEnclosure     `json:"enclosure,omitempty"`
	Rebound   []ballRebound      `json:"rebound"`
	Pads      []string           `json:"pads"`
	Assumed   []assumption       `json:"assumed"`
	Flat      drawing.Trajectory `json:"flat"`
}

// ballScreen is the screen as its face is drawn, seen by the golfer.
type ballScreen struct {
	plan.Screen
	Left   float64 `json:"left"` // y of its left edge, m
	Label  string  `json:"label"`
	Struck *spot   `json:"struck,omitempty"` // where the well-struck ball meets it
}

// spot is a point of the screen (y, z).
type spot [2]float64

// ballMishit is one named mishit in words.
type ballMishit struct {
	Name string `json:"name"`
	Goes string `json:"goes"`
	Back string `json:"back"`
}

// ballRow is one player with one club on one tee.
type ballRow struct {
	Player string `json:"player"`
	Club   string `json:"club"`
	Tee    string `json:"tee"`
	Leaves string `json:"leaves"` // ball speed and launch
	First  string `json:"first"`  // what the well-struck ball meets
	Good   bool   `json:"good"`   // that is the screen
	Caught string `json:"caught"` // share of ordinary balls that screen and returns catch, or "all 200"
	Else   string `json:"else"`   // what most of the others meet
}

// ball serves a request about the ball.
func (s *Solver) ball(req request) (any, error) {
	rate := req.Catch
	if rate == 0 {
		rate = defaultCatch
	}
	if !(rate >= enclosure.LeastRate && rate <= 1) {
		return nil, &plan.FieldError{Field: "catch", Message: fmt.Sprintf("a catch rate of %g is outside %g–1: that is the share of balls to be caught", rate, enclosure.LeastRate)}
	}
	doc, r, focus, _, err := s.check(req)
	if err != nil {
		return nil, err
	}
	p := doc.Plan()
	who, err := castOf(p, r.Checks[focus])
	if err != nil {
		return nil, err
	}
	b := balls{Words: words.WordsOf(p), plan: p, scene: ball.NewScene(p), head: headSpeeds(r.Checks), who: who, rate: rate}
	return b.answer()
}

// headSpeeds tells the clubhead's speed (m/s) of each player with each club, as
// their central swing gives it. A club whose ball speed is not the usual one of
// its kind has been measured: 0, which takes the ball as the plan has it.
func headSpeeds(checks []fit.Check) func(plan.Player, plan.Club) float64 {
	return func(pl plan.Player, c plan.Club) float64 {
		if measured(c) {
			return 0
		}
		for _, k := range checks {
			if k.Player == pl.Name && k.Club == c.Name {
				return k.HeadSpeed
			}
		}
		return 0
	}
}

// measured reports whether somebody typed the speed of the club's ball.
func measured(c plan.Club) bool {
	usual := plan.DefaultClub(c.Kind, c.Name).Ball
	return c.Ball != nil && usual != nil && c.Ball.Speed != usual.Speed
}

// balls answers about the ball for one plan and one focus.
type balls struct {
	words.Words
	plan  plan.Plan
	scene *ball.Scene
	head  func(plan.Player, plan.Club) float64
	who   cast
	rate  float64
}

func (b *balls) answer() (any, error) {
	pairs := ball.Pairs(b.plan, b.head)
	each := max(leastBalls, min(pairBalls, mostBalls/max(1, len(pairs))))
	speed := b.head(b.who.player, b.who.club)
	main := b.scene.Spread(b.who.player, b.who.club, b.who.tee, speed, ball.Draws(focusBalls))

	outcomes := make([]ball.Outcome, len(pairs))
	shots := ball.Draws(each)
	for i, q := range pairs {
		outcomes[i] = b.scene.Spread(q.Player, q.Club, q.Tee, q.HeadSpeed, shots)
	}
	out := ballAnswer{
		Focus:   Focus{b.who.player.Name, b.who.club.Name, b.who.tee.Name},
		Outcome: main, Rebound: b.rebounds(main), Pads: []string{},
		Flat: drawing.Trajectories(b.traces(speed)),
	}
	all := append([]ball.Outcome{main}, outcomes...)
	out.Summary, out.Sentences = b.summary(main), b.sentences(main)
	out.Said = ballSaid{b.caughtSaid(all), verdictText{fit.Strikes, "Returns: without a screen there is nothing to measure them from."}, b.backSaid(all)}
	for _, m := range main.Misses {
		out.Mishits = append(out.Mishits, b.mishit(m))
	}
	for _, o := range outcomes {
		out.Table = append(out.Table, b.row(o))
	}
	for _, pad := range ball.Pads(all) {
		out.Pads = append(out.Pads, b.pad(pad))
	}
	if c := b.plan.Screen; c != nil {
		_, left, _, _ := c.Edges()
		out.Screen = &ballScreen{Screen: *c, Left: left,
			Label: units.Label(c.Width, b.Units) + " by " + units.Label(c.Height, b.Units)}
		if at := main.Struck.Contact; at.Kind == ball.KindScreen {
			out.Screen.Struck = &spot{at.Point[1], at.Point[2]}
		}
		n := catchBalls
		if b.rate > fineRate {
			n *= 2
		}
		e, err := enclosure.For(b.plan, pairs, b.rate, max(leastBalls, min(n, mostBalls/max(1, len(pairs)))))
		if err != nil {
			return nil, err
		}
		out.Enclosure = b.enclosure(e)
		out.Said.Returns = b.returnsSaid(e, out.Enclosure)
	}
	out.Assumed = b.assumed(pairs, each)
	out.Folds = b.folds(&out, outcomes)
	return out, nil
}

// shot is the ball that the scene shows: struck well, and its likely way back.
func shot(p plan.Plan, checks []fit.Check, who cast) record.Shot {
	speed := headSpeeds(checks)(who.player, who.club)
	return record.Shot{
		Legs: ball.NewScene(p).Trace(who.tee, ball.FromClub(who.club, speed), ball.Likely),
		Fan:  ball.Fan(p, who.tee, who.club, speed),
	}
}

// traces are the lines that the drawings show: for every club of the player the
// well-struck ball and its likely way back, and the fan of the club looked at.
func (b *balls) traces(speed float64) []drawing.Shot {
	var shots []drawing.Shot
	for _, c := range b.plan.ClubsOf(b.who.player) {
		legs := b.scene.Trace(b.who.tee, ball.FromClub(c, b.head(b.who.player, c)), ball.Likely)
		shot := drawing.Shot{Club: c.Name, Legs: legs, First: legs[0].End.Surface}
		if c.Name == b.who.club.Name {
			shot.Fan = ball.Fan(b.plan, b.who.tee, c, speed)
		}
		shots = append(shots, shot)
	}
	return shots
}
