package words

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
	"wideberth/internal/units"
)

// Sentences is the answer in words. Clearances in it are rounded down and
// overshoots up: no sentence is more reassuring than the figure behind it.
type Sentences struct {
	Headline string   `json:"headline"` // the worst verdict of everybody, whatever is looked at
	Worst    string   `json:"worst"`    // who decides it; nothing with one check
	Verdict  string   `json:"verdict"`  // of the check looked at
	Bar      string   `json:"bar"`      // all of it in one short line
	Model    string   `json:"model"`    // how near the model is to recorded swings
	Share    string   `json:"share"`
	Detail   []string `json:"detail"`
}

// caution ends every answer: what the model leaves out and what to do first.
const (
	leftOut = "This is a model of a golf swing, not a measurement of yours: it leaves out a stumble, a club that slips or breaks, a ball that rebounds, and anybody who moves about."
	before  = "Before a real swing, rehearse it slowly with the club in the hands, have somebody watch the tight places, and put something soft on the surface that comes nearest."
)

// Tell puts the report into words. focus is the check that the page looks
// at, worst the one that decides the plan.
func Tell(p plan.Plan, r fit.Report, focus, worst int) Sentences {
	c := r.Checks[focus]
	w := WordsOf(p)
	out := Sentences{Headline: Headline(verdictsOf(r.Checks)), Worst: worstIs(r.Checks, r.Checks[worst]), Verdict: w.checkSentence(c)}
	out.Bar = fmt.Sprintf("%s %s, %s: %s.", out.Headline, c.Player, c.Club, c.Verdict)
	if len(r.Checks) == 1 {
		out.Bar = fmt.Sprintf("%s %s, %s.", out.Headline, c.Player, c.Club)
	}
	if other := r.Checks[worst]; focus != worst && other.Verdict != fit.Clear {
		out.Detail = append(out.Detail, "Worst in this plan: "+w.checkSentence(other))
	}
	out.Model = w.model(r)
	out.Share = w.share(c)
	out.Detail = append(out.Detail, w.looseAndTypical(c))
	for _, s := range []string{w.typicalTouch(c), w.speed(c), w.cause(c), tally(r.Checks)} {
		if s != "" {
			out.Detail = append(out.Detail, s)
		}
	}
	out.Detail = append(out.Detail, leftOut, before)
	return out
}

// Minus is the sign that labels carry.
const Minus = "−"

// Words writes for one plan: its units and the margin (m) it asks for.
type Words struct {
	Units  string
	Margin float64
}

func WordsOf(p plan.Plan) Words { return Words{Units: p.Units, Margin: p.Margin} }

func (w Words) checkSentence(c fit.Check) string {
	n := c.Nearest
	who, what, where, when := Swinger(c), part(n.Part), Surface(n.Surface), phase(n.Phase)
	switch c.Verdict {
	case fit.Strikes:
		return who + ": " + w.strike(c)
	case fit.Tight:
		return fmt.Sprintf("%s: %s passes %s by %s %s: %s.", who, what, where, w.Gap(c.Clearance), when, w.tighter(c.Clearance))
	}
	return fmt.Sprintf("%s: clear; the closest is %s, %s from %s %s.", who, what, w.Gap(c.Clearance), where, when)
}

// share says how many of the swings tried touch something, and how sure a share
// so counted is.
func (w Words) share(c fit.Check) string {
	tried := Thousands(c.Tried)
	switch {
	case c.Tried <= 0:
		return ""
	case c.Tried == 1 && c.Hits == 1:
		return "Touches in the one swing tried."
	case c.Tried == 1:
		return fmt.Sprintf("One swing tried; it passes by %s.", w.Gap(c.Clearance))
	case c.Hits > 0 && c.HitError > 0:
		return fmt.Sprintf("Touches in %s of %s swings tried: %s of all such swings, give or take %s.", Thousands(c.Hits), tried, percent(c.HitShare), percent(c.HitError))
	case c.Hits > 0:
		return fmt.Sprintf("Touches in %s of %s swings tried.", Thousands(c.Hits), tried)
	case c.Clearance < 0:
		return fmt.Sprintf("None of the %s swings tried touches, but the widest swing to be expected does.", tried) + unseen(c)
	case c.Verdict == fit.Tight:
		return fmt.Sprintf("No touch in all %s swings tried; the closest passes by %s.", tried, w.Gap(c.Clearance)) + unseen(c)
	}
	return fmt.Sprintf("Clear in all %s swings tried; the closest passes by %s.", tried, w.Gap(c.Clearance)) + unseen(c)
}

// unseen says, rounded up, what share may touch though none of the swings tried
// did: with no hits HitError is the middle of an interval that starts at nothing.
func unseen(c fit.Check) string {
	if c.HitError <= 0 {
		return ""
	}
	return fmt.Sprintf(" By the count alone, up to %.0f %% of all such swings might still touch.", math.Ceil(100*2*c.HitError))
}

// looseAndTypical sets the loosest swing against the central one.
func (w Words) looseAndTypical(c fit.Check) string {
	switch {
	case c.Typical < 0:
		return fmt.Sprintf("The typical swing goes %s past what it strikes, the loosest %s.", w.past(c.Typical), w.past(c.Clearance))
	case c.Clearance < 0:
		return fmt.Sprintf("At its closest the typical swing is %s from a surface, but the loosest goes %s past what it strikes.", w.Gap(c.Typical), w.past(c.Clearance))
	}
	return fmt.Sprintf("At its closest the typical swing is %s from a surface, the loosest %s.", w.Gap(c.Typical), w.Gap(c.Clearance))
}

// cause names what tells most at the tightest surface from swing to swing. The
// cost is what one standard deviation of it takes, or gives.
func (w Words) cause(c fit.Check) string {
	if len(c.Causes) == 0 {
		return ""
	}
	most := c.Causes[0]
	does, cost := "taking", most.Cost
	if cost < 0 {
		does, cost = "giving", -cost
	}
	size := units.LabelShort(cost, w.Units)
	if size == units.LabelShort(0, w.Units) {
		return ""
	}
	return fmt.Sprintf("What tells most there from swing to swing: %s, %s %s.", most.Trait, does, size)
}

// tally counts the verdicts of a plan with more than one check.
func tally(checks []fit.Check) string {
	if len(checks) < 2 {
		return ""
	}
	count := times(verdictsOf(checks))
	var parts []string
	add := func(n int, one, many string) {
		if n > 0 {
			parts = append(parts, plural(n, one, many))
		}
	}
	add(count[fit.Strikes], "strikes", "strike")
	add(count[fit.Tight], "is tight", "are tight")
	add(count[fit.Clear], "is clear", "are clear")
	return fmt.Sprintf("Of %d checks, %s.", len(checks), List(parts))
}

// Gap writes a clearance that is not negative, rounded down.
func (w Words) Gap(m float64) string {
	s := units.LabelDown(max(m, 0), w.Units)
	if s == units.LabelDown(0, w.Units) {
		return "less than " + w.step()
	}
	return s
}

// past writes an overshoot, rounded up, without its sign.
func (w Words) past(m float64) string {
	s := strings.TrimPrefix(units.LabelDown(min(m, 0), w.Units), Minus)
	if s == units.LabelDown(0, w.Units) {
		return "less than " + w.step()
	}
	return s
}

// step is the finest that labels tell apart.
func (w Words) step() string {
	if w.Units == units.Metric {
		return "1 mm"
	}
	return "1/8 in"
}

// tighter sets a clearance against the margin that it falls short of. The two
// may read the same once they are rounded.
func (w Words) tighter(clearance float64) string {
	margin := units.LabelShort(w.Margin, w.Units)
	if margin == units.LabelDown(clearance, w.Units) {
		return "just short of your " + margin + " margin"
	}
	return "tighter than your " + margin + " margin"
}

// Swinger names who swings what from where: "Tall guest, driver, middle tee".
func Swinger(c fit.Check) string {
	tee := c.Tee
	if !strings.HasSuffix(strings.ToLower(tee), "tee") {
		tee += " tee"
	}
	return c.Player + ", " + c.Club + ", " + tee
}

// part names a part with its article. A golfer's head is not a club's.
func part(name string) string {
	switch name {
	case swing.Head.String():
		return "the golfer's head"
	case swing.Neck.String(), swing.Trunk.String(), swing.Pelvis.String():
		return "the golfer's " + name
	}
	return "the " + name
}

// Surface names a surface with its article. A name with a comma goes in quotes,
// or the sentence would come apart at it.
func Surface(name string) string {
	switch {
	case strings.HasSuffix(name, " return"):
		return "the screen's " + name
	case strings.Contains(name, ","):
		return "“" + name + "”"
	case strings.HasPrefix(strings.ToLower(name), "the "):
		return name
	}
	return "the " + name
}

// phase says when: "in the follow-through".
func phase(p swing.Phase) string {
	switch p {
	case swing.Address, swing.Impact:
		return "at " + string(p)
	case swing.Top, swing.Finish:
		return "at the " + string(p)
	}
	return "in the " + string(p)
}

// UpperFirst starts a sentence.
func UpperFirst(s string) string {
	_, n := utf8.DecodeRuneInString(s)
	return strings.ToUpper(s[:n]) + s[n:]
}

// List joins phrases: "a, b and c".
func List(parts []string) string {
	if len(parts) < 2 {
		return strings.Join(parts, "")
	}
	last := len(parts) - 1
	return strings.Join(parts[:last], ", ") + " and " + parts[last]
}

// percent writes a share, never as none when there is some.
func percent(share float64) string {
	if share > 0 && share < 0.01 {
		return "less than 1 %"
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

// Thousands writes a count with commas: 1,024.
func Thousands(n int) string {
	s := strconv.Itoa(n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}
