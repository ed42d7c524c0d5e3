package protocol

import (
	"slices"
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/ball/enclosure"
	"wideberth/internal/sim/fit"
	"wideberth/internal/solver/words"
)

// ballSaid is the answer about the ball in three sentences, each over all
// players, clubs and tees.
type ballSaid struct {
	Caught  verdictText `json:"caught"`  // caught or not
	Returns verdictText `json:"returns"` // how deep the returns must be
	Back    verdictText `json:"back"`    // what comes back
}

// verdictText is a sentence with the verdict that it is of.
type verdictText struct {
	Verdict fit.Verdict `json:"verdict"`
	Text    string      `json:"text"`
}

// ballFolds are the figures by which the parts that fold are named.
type ballFolds struct {
	First   string `json:"first"`
	Screen  string `json:"screen"`
	Mishits string `json:"mishits"`
	Back    string `json:"back"`
	Pads    string `json:"pads"`
	Assumed string `json:"assumed"`
}

// caughtSaid says whether the balls of all outcomes are caught, the worst of them.
func (b *balls) caughtSaid(outcomes []ball.Outcome) verdictText {
	if b.plan.Screen == nil {
		return verdictText{fit.Strikes, "Not caught: the plan has no screen."}
	}
	worst := outcomes[0]
	for _, o := range outcomes {
		if !o.Struck.Contact.Caught && worst.Struck.Contact.Caught {
			worst = o // a well-struck ball that is not caught is worse than any share
		}
		if o.Struck.Contact.Caught != worst.Struck.Contact.Caught {
			continue
		}
		if o.Caught.Share < worst.Caught.Share || o.Caught.Share == worst.Caught.Share && o.Caught.Low < worst.Caught.Low {
			worst = o
		}
	}
	who, share := swing3(worst.Player, worst.Club, worst.Tee), words.ShareDown(worst.Caught.Share)
	switch {
	case !worst.Struck.Contact.Caught:
		return verdictText{fit.Strikes, fmt.Sprintf("Not caught: a well-struck ball %s (%s).", b.meeting(worst.Struck.Contact), who)}
	case worst.Caught.Share < b.rate:
		return verdictText{fit.Tight, fmt.Sprintf("Not all caught: every well-struck ball, but only %s of ordinary balls (%s).", share, who)}
	case worst.Caught.Share < 1:
		return verdictText{fit.Clear, fmt.Sprintf("Caught: every well-struck ball, and %s of ordinary balls or more (least: %s).", share, who)}
	}
	return verdictText{fit.Clear, fmt.Sprintf("Caught: every well-struck ball, and all ordinary balls that were flown; of all such balls it may be as few as %s.", words.ShareDown(worst.Caught.Low))}
}

// returnsSaid says how deep the returns must be and what the plan has.
func (b *balls) returnsSaid(e enclosure.Enclosure, out *ballEnclosure) verdictText {
	c := b.plan.Screen
	said := verdictText{out.Side.Verdict.Worse(out.Top.Verdict), "Returns: " + b.depths(e) + ","}
	if e.Side.Depth == 0 && e.Top.Depth == 0 {
		said.Text = "Returns: none needed"
	}
	said.Text += fmt.Sprintf(" to catch %s of ordinary balls; the plan has %s, %s above", words.ShareNear(e.Rate), b.had(c.SideReturn)+" each side", b.had(c.TopReturn))
	if len(e.Lost) > 0 && e.Lost[0].Share > 0 { // worst first
		l := e.Lost[0]
		n := oneIn(l.Share, false)
		said.Text += fmt.Sprintf(". At any depth %s (%s)", lowerFirst(plural(n, n+" "+lostWhere(l.Surface))), swing3(l.Player, l.Club, l.Tee))
		if l.Share > 1-e.Rate {
			said.Verdict = fit.Strikes
		}
	}
	said.Text += "."
	if slices.ContainsFunc(out.Mishits, func(m mishitNeed) bool { return !m.OK }) {
		said.Text += " Mishits ask for more."
	}
	return said
}

// depths are what the returns must have.
func (b *balls) depths(e enclosure.Enclosure) string {
	of := func(m float64, where string) string {
		if m == 0 {
			return "none " + where
		}
		return b.Up(m) + " " + where
	}
	return of(e.Side.Depth, "each side") + ", " + of(e.Top.Depth, "above")
}

// backSaid says of the fastest ball that may come back past the golfer, of all
// players, clubs and tees.
func (b *balls) backSaid(outcomes []ball.Outcome) verdictText {
	worst, off, who, mishit := ball.Return{}, "", "", ""
	see := func(r ball.Return, o ball.Outcome, from, name string) {
		if r.Reaches && (off == "" || r.Speed > worst.Speed) {
			worst, off, who, mishit = r, from, swing3(o.Player, o.Club, o.Tee), name
		}
	}
	for _, o := range outcomes {
		see(o.Struck.High, o, o.Struck.Contact.Surface, "")
		for _, s := range o.Shares {
			see(s.Back, o, s.Surface, "")
		}
		for _, m := range o.Misses {
			see(m.Back, o, m.Contact.Surface, m.Name)
		}
	}
	if off == "" {
		return verdictText{fit.Clear, "What comes back: no ball that was followed gets as far as the golfer."}
	}
	what := "an ordinary ball"
	if mishit != "" {
		what = article(mishit) + " ball"
	}
	verdict := fit.Clear
	if worst.Warn {
		verdict = fit.Tight
	}
	return verdictText{verdict, fmt.Sprintf("What comes back: %s off %s, past the golfer at up to %s, about %s up (%s).",
		what, words.Surface(off), b.SpeedUp(worst.Speed), b.Rough(worst.Height), who)}
}

// article puts "a" or "an" before a word.
func article(word string) string {
	if strings.ContainsAny(word[:1], "aeiou") {
		return "an " + word
	}
	return "a " + word
}

// folds names the parts that fold by what they say.
func (b *balls) folds(out *ballAnswer, outcomes []ball.Outcome) ballFolds {
	caught := 0
	for _, o := range outcomes {
		if o.Struck.Contact.Caught {
			caught++
		}
	}
	f := ballFolds{
		First:   fmt.Sprintf("Met first: screen or returns, by %d of %d well-struck balls", caught, len(outcomes)),
		Back:    "Rebound: nothing is met",
		Pads:    fmt.Sprintf("Pads: %s", count(len(out.Pads), "hard surface")+" in a ball's way"),
		Assumed: "These figures rest on " + count(len(out.Assumed), "assumption"),
	}
	if h := out.Outcome.Struck; h.Contact.Kind != ball.KindNone {
		f.Back = fmt.Sprintf("Rebound: the well-struck ball %s", b.back(h.High, "may come back"))
	}
	caught = 0
	if e := out.Enclosure; e == nil {
		f.Mishits = "Mishits: nothing catches them"
	} else {
		for _, m := range e.Mishits {
			if m.OK {
				caught++
			}
		}
		f.Mishits = fmt.Sprintf("Mishits: %d of %d kinds are caught, whoever makes them", caught, len(e.Mishits))
		on := 0
		for _, s := range out.Outcome.Shares {
			if s.Kind == ball.KindScreen {
				on += s.Count
			}
		}
		f.Screen = fmt.Sprintf("On the screen: %s of %s ordinary balls", words.Thousands(on), words.Thousands(out.Outcome.Balls))
	}
	return f
}

func count(n int, one string) string {
	if n == 0 {
		return "no " + one
	}
	if n == 1 {
		return "1 " + one
	}
	return words.Thousands(n) + " " + one + "s"
}
