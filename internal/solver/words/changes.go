package words

import (
	"slices"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/maps"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/remedy"
)

// Offer is one to three changes that are made at once, and what they lead to.
type Offer struct {
	Sentence string        `json:"sentence"` // "Move the tee 14 in right: all 8 clear."
	Edits    []remedy.Edit `json:"edits"`
	Headline string        `json:"headline"` // of the report with them made
	Verdict  fit.Verdict   `json:"verdict"`
}

// Plays is what one player can play in the room as it is.
type Plays struct {
	Player string   `json:"player"`
	Clear  []string `json:"clear"` // clubs
	Tight  []string `json:"tight"`
	Text   string   `json:"text"`
}

// Advice is what would do for the whole room: at most three offers, and where they
// leave somebody striking, what is left.
type Advice struct {
	Offers     []Offer `json:"offers"`
	Plays      []Plays `json:"plays"`                // where not everybody can be helped
	Compromise *Offer  `json:"compromise,omitempty"` // the least bad tee there, if it is another
}

// AdviseRoom solves what would do for everybody in a room that has this report.
func AdviseRoom(lab *fit.Lab, given plan.Checked, report fit.Report) (Advice, error) {
	p := given.Plan()
	w := WordsOf(p)
	out := Advice{Offers: []Offer{}, Plays: []Plays{}}
	found, err := remedy.Changes(lab, given, report, func(fit.Check) bool { return true })
	if err != nil {
		return out, err
	}
	left := report.Verdict // the best that can be had
	for _, c := range found {
		out.Offers = append(out.Offers, w.Offer(p, c))
	}
	if len(found) > 0 {
		left = found[0].Report.Verdict
	}
	if left != fit.Strikes {
		return out, nil
	}
	out.Plays = PlaysOf(report)
	if len(p.Tees) > 1 {
		return out, nil // which of them is whose is not a compromise to make for people
	}
	m, err := maps.Stand(lab, given, maps.StandOptions{})
	if err != nil || !m.Best.Found {
		return out, err
	}
	c, ok, err := remedy.PutTee(lab, given, 0, m.Best.X, m.Best.Y)
	if ok && fewer(c.Report, report) {
		o := w.Offer(p, c)
		o.Sentence = "Least bad tee. " + o.Sentence
		out.Compromise = &o
	}
	return out, err
}

// AdviseCheck solves what would make one check of a report clear without making
// another's verdict worse.
func AdviseCheck(lab *fit.Lab, given plan.Checked, report fit.Report, check fit.Check) ([]Offer, error) {
	same := func(c fit.Check) bool { return c.Player == check.Player && c.Club == check.Club && c.Tee == check.Tee }
	found, err := remedy.Changes(lab, given, report, same)
	out := []Offer{}
	for _, c := range found {
		out = append(out, WordsOf(given.Plan()).Offer(given.Plan(), c))
	}
	return out, err
}

// fewer reports whether fewer checks strike in a than in b, or as many strike and
// fewer are tight.
func fewer(a, b fit.Report) bool {
	n, m := times(verdictsOf(a.Checks)), times(verdictsOf(b.Checks))
	if n[fit.Strikes] != m[fit.Strikes] {
		return n[fit.Strikes] < m[fit.Strikes]
	}
	return n[fit.Tight] < m[fit.Tight]
}

// Offer puts changes of a plan into words.
func (w Words) Offer(p plan.Plan, c remedy.Change) Offer {
	var parts []string
	for i, r := range c.Steps {
		if i > 0 && r.Kind == remedy.KindTee && c.Steps[i-1].Kind == r.Kind && c.Steps[i-1].Subject == r.Subject {
			parts[len(parts)-1] += fmt.Sprintf(" and %s %s", w.Up(r.Amount), way(r.Towards))
			continue
		}
		parts = append(parts, w.doing(p, r))
	}
	verdicts := verdictsOf(c.Report.Checks)
	return Offer{
		Sentence: UpperFirst(List(parts)) + ": " + outcome(verdicts) + ".",
		Edits:    c.Edits, Headline: Headline(verdicts), Verdict: Worst(verdicts),
	}
}

// doing says one of several changes, in few words.
func (w Words) doing(p plan.Plan, r remedy.Remedy) string {
	switch r.Kind {
	case remedy.KindTee:
		tee := "tee"
		if len(p.Tees) > 1 {
			tee = TeeName(r.Subject)
		}
		return fmt.Sprintf("move the %s %s %s", tee, w.Up(r.Amount), way(r.Towards))
	case remedy.KindCeiling:
		if len(p.Room.Slopes) > 0 {
			return fmt.Sprintf("raise the ceiling and its slopes %s", w.Up(r.Amount))
		}
		return fmt.Sprintf("raise the ceiling %s", w.Up(r.Amount))
	case remedy.KindFloor:
		return fmt.Sprintf("take %s off the floor build-up", w.Up(r.Amount))
	case remedy.KindRaise:
		return fmt.Sprintf("raise the %s %s", r.Subject, w.Up(r.Amount))
	}
	s := w.Change(p, r)
	return string(s[0]|0x20) + s[1:] // "Shorten the driver to 43 in", "Take the lamp away"
}

// way is a side as somebody sees it who looks to the target.
func way(towards string) string {
	return map[string]string{remedy.TowardsTarget: "forward", remedy.TowardsBack: "back", remedy.TowardsLeft: "left", remedy.TowardsRight: "right"}[towards]
}

// outcome is what changes lead to: "all 8 clear", "2 of 8 still strike".
func outcome(verdicts []fit.Verdict) string {
	n, all := times(verdicts), len(verdicts)
	switch {
	case n[fit.Strikes] == 1:
		return fmt.Sprintf("1 of %d still strikes", all)
	case n[fit.Strikes] > 0:
		return fmt.Sprintf("%d of %d still strike", n[fit.Strikes], all)
	case n[fit.Tight] == 1:
		return fmt.Sprintf("nothing strikes, 1 of %d is tight", all)
	case n[fit.Tight] > 0:
		return fmt.Sprintf("nothing strikes, %d of %d are tight", n[fit.Tight], all)
	case all == 1:
		return "clear"
	}
	return fmt.Sprintf("all %d clear", all)
}

// PlaysOf is what everybody can play in a room as it is, in the order of the
// report. Somebody with a choice of tees must be able to from each of them.
func PlaysOf(report fit.Report) []Plays {
	worst := map[[2]string]fit.Verdict{}
	for _, c := range report.Checks {
		key := [2]string{c.Player, c.Club}
		if v, ok := worst[key]; ok {
			worst[key] = v.Worse(c.Verdict)
		} else {
			worst[key] = c.Verdict
		}
	}
	out := []Plays{}
	seen := map[[2]string]bool{}
	for _, c := range report.Checks {
		key := [2]string{c.Player, c.Club}
		if seen[key] {
			continue
		}
		seen[key] = true
		i := slices.IndexFunc(out, func(x Plays) bool { return x.Player == c.Player })
		if i < 0 {
			i, out = len(out), append(out, Plays{Player: c.Player, Clear: []string{}, Tight: []string{}})
		}
		switch worst[key] {
		case fit.Clear:
			out[i].Clear = append(out[i].Clear, c.Club)
		case fit.Tight:
			out[i].Tight = append(out[i].Tight, c.Club)
		}
	}
	for i := range out {
		out[i].Text = out[i].text()
	}
	return out
}

// text says it: "Host: 7-iron and wedge; driver only just."
func (x Plays) text() string {
	switch {
	case len(x.Clear)+len(x.Tight) == 0:
		return x.Player + ": no club."
	case len(x.Tight) == 0:
		return fmt.Sprintf("%s: %s.", x.Player, List(x.Clear))
	case len(x.Clear) == 0:
		return fmt.Sprintf("%s: %s, tight.", x.Player, List(x.Tight))
	}
	return fmt.Sprintf("%s: %s; %s, tight.", x.Player, List(x.Clear), List(x.Tight))
}
