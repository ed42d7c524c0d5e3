package words

import (
	"math"
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/units"
)

// Guest is what a guest is told on one tee: first the nearest thing of all, over
// every surface and every club of theirs, then what belongs to the club of the
// mark, then the wall behind them. all are everybody's checks. It encourages
// nobody to a swing that strikes, nor takes one guest's answer for the room's.
func (w Words) Guest(m fit.Mark, own, nearest fit.Check, all []fit.Check) (sentence, more string) {
	n := nearest.Nearest
	switch nearest.Verdict {
	case fit.Strikes:
		sentence = fmt.Sprintf("Do not swing %s here: %s goes %s past %s on your loosest swing.", theClub(nearest.Club), part(n.Part), w.past(nearest.Clearance), Surface(n.Surface))
	case fit.Tight:
		gap := w.Gap(nearest.Clearance)
		if !strings.HasPrefix(gap, "less ") {
			gap = "only " + gap
		}
		sentence = fmt.Sprintf("Tight for you: the nearest thing is %s, %s from %s on your loosest swing with %s.", Surface(n.Surface), gap, part(n.Part), theClub(nearest.Club))
	default:
		sentence = fmt.Sprintf("Clear for you: the nearest thing is %s, %s from %s on your loosest swing with %s.", Surface(n.Surface), w.Gap(nearest.Clearance), part(n.Part), theClub(nearest.Club))
	}
	var told []string
	if nearest.Verdict == fit.Tight {
		told = append(told, "That is "+w.tighter(nearest.Clearance)+": make the first swings slow.")
	}
	if o := w.own(own, nearest); o != "" {
		told = append(told, o)
	}
	if b := m.Behind; own.Nearest.Surface != b.Wall && b.Clearance >= 0 {
		told = append(told, fmt.Sprintf("Nothing comes nearer than %s to the wall behind you with %s.", w.Gap(b.Clearance), theClub(m.Club)))
	}
	if o := others(all, nearest.Verdict); o != "" {
		told = append(told, o)
	}
	return sentence, strings.Join(told, " ")
}

// Beside is what must stand beside a guest's sentence: how they fare with the club
// of the mark where another comes nearest, and that others fare worse.
func (w Words) Beside(own, nearest fit.Check, all []fit.Check) string {
	return strings.TrimSpace(w.own(own, nearest) + " " + others(all, nearest.Verdict))
}

func (w Words) own(own, nearest fit.Check) string {
	if own.Club == nearest.Club {
		return ""
	}
	return fmt.Sprintf("With %s, %s %s.", theClub(own.Club), part(own.Nearest.Part), w.Fits(own.Verdict, own.Clearance, own.Nearest.Surface))
}

// Brief is a check in few words, where the player is named beside it.
func (w Words) Brief(c fit.Check) string {
	return fmt.Sprintf("%s %s", UpperFirst(theClub(c.Club)), w.Fits(c.Verdict, c.Clearance, c.Nearest.Surface))
}

// Moved says how far a mark is from the plan's first tee.
func (w Words) Moved(p plan.Plan, m fit.Mark) string {
	const nothing = 0.0005 // m
	if m.Moved[2] < nothing || len(p.Tees) == 0 {
		return ""
	}
	var ways []string
	for k, towards := range [2][2]string{{"the target", "the back wall"}, {"the left wall", "the right wall"}} {
		if d := m.Moved[k]; math.Abs(d) >= nothing {
			way := towards[0]
			if d < 0 {
				way = towards[1]
			}
			ways = append(ways, fmt.Sprintf("%s towards %s", units.LabelShort(math.Abs(d), w.Units), way))
		}
	}
	return fmt.Sprintf("The ball lies %s from the %s.", List(ways), TeeName(p.Tees[0].Name))
}
