package words

import (
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/maps"
	"wideberth/internal/sim/remedy"
	"wideberth/internal/units"
)

// where says a spot of the floor by tape.
func (w Words) where(x, y float64) string {
	return fmt.Sprintf("%s from the back wall and %s from the right wall", units.Label(x, w.Units), units.Label(y, w.Units))
}

// Both are the two lengths of where.
func (w Words) Both(x, y float64) [2]string {
	return [2]string{units.Label(x, w.Units), units.Label(y, w.Units)}
}

// With names who swings what.
func With(player, club string) string { return player + " with " + theClub(club) }

// theClub names a club with its article, unless somebody's name stands for it:
// "Visitor's driver".
func theClub(name string) string {
	if strings.Contains(name, "'s ") {
		return name
	}
	return "the " + name
}

// Fits says how a clearance to a surface turns out.
func (w Words) Fits(verdict fit.Verdict, clearance float64, name string) string {
	switch verdict {
	case fit.Strikes:
		return fmt.Sprintf("strikes %s, %s past it", Surface(name), w.past(clearance))
	case fit.Tight:
		return fmt.Sprintf("passes %s by %s, %s", Surface(name), w.Gap(clearance), w.tighter(clearance))
	}
	return fmt.Sprintf("keeps %s from %s", w.Gap(clearance), Surface(name))
}

// BestPlace is the sentence over the map of where to stand.
func (w Words) BestPlace(b maps.Best, who string) string {
	if !b.Found {
		return "No place on this floor is free for a tee."
	}
	at := w.where(b.X, b.Y)
	if b.Verdict == fit.Strikes {
		return fmt.Sprintf("No place for the tee lets %s swing freely. Least bad is %s: there %s still %s.", who, at, With(b.Player, b.Club), w.Fits(b.Verdict, b.Clearance, b.Surface))
	}
	return fmt.Sprintf("Most room for %s: the tee %s. The tightest there, %s, %s.", who, at, With(b.Player, b.Club), w.Fits(b.Verdict, b.Clearance, b.Surface))
}

// BestFor says the best place of one player or hand: lead is whose it is, text
// where. A place where they strike is not called best, and it is said why it is
// named at all.
func (w Words) BestFor(name string, b maps.Best) (lead, text string) {
	lead, why, still := "Best for "+name, "", ""
	if b.Verdict == fit.Strikes {
		lead, why, still = "Least bad for "+name, "no place on this floor is free of strikes; ", "still "
	}
	return lead, fmt.Sprintf("%s%s; %s %s%s.", why, w.where(b.X, b.Y), theClub(b.Club), still, w.Fits(b.Verdict, b.Clearance, b.Surface))
}

// Sharing says whether one tee serves both hands; nothing for players of one hand.
func (w Words) Sharing(s maps.Sharing) string {
	switch {
	case !s.Both:
		return ""
	case s.One && s.Loses > 0:
		return fmt.Sprintf("One tee serves right- and left-handers; sharing it gives away %s.", w.Up(s.Loses))
	case s.One:
		return "One tee serves right- and left-handers."
	}
	return fmt.Sprintf("Right- and left-handers want two tees, %s apart: sharing one gives away %s.", units.LabelShort(s.Apart, w.Units), w.Up(s.Loses))
}

// Limits says what else keeps a tee off parts of the floor, where it does.
func (w Words) Limits(m *maps.StandMap) []string {
	var any int16
	for _, k := range m.Mask {
		any |= k
	}
	said := []string{
		fmt.Sprintf("nearer than %s to the screen (common practice)", units.Label(m.Nearest, w.Units)),
		fmt.Sprintf("farther than %s from the screen (common practice)", units.Label(m.Farthest, w.Units)),
		"outside the strip that the ball sensor reads",
		"where the mat would not lie flat",
		"where somebody's feet have no room",
		"where a ball has no room",
	}
	out := []string{}
	for k := range min(len(m.Reasons), len(said)) {
		if any>>k&1 != 0 {
			out = append(out, said[k])
		}
	}
	return out
}

// HangSummary is the sentence over the map of what may hang.
func (w Words) HangSummary(highest float64, closed int) string {
	margin := units.LabelShort(w.Margin, w.Units)
	switch {
	case closed > 0:
		return fmt.Sprintf("Over the hatched part nothing may hang at all: club or ball comes within %s of the ceiling. The lines say how low a thing may hang inside them.", margin)
	case highest > 0:
		return fmt.Sprintf("Nothing lower than %s above the bare floor keeps %s from every swing and ball wherever it hangs. The lines say how low a thing may hang inside them.", w.Up(highest), margin)
	}
	return "Nothing passes under this ceiling."
}

// HangSpot says how low a thing may hang over one place.
func (w Words) HangSpot(s maps.HangSpot) string {
	who := With(s.Player, s.Club)
	if s.Ball {
		who = "the ball of " + who
	}
	switch {
	case s.Lowest <= 0:
		return "Down to the floor here: no club passes, and no ball."
	case s.Lowest >= s.Ceiling:
		return fmt.Sprintf("Nothing may hang here: %s needs %s, and the ceiling is at %s.", who, w.Up(s.Lowest), units.LabelDown(s.Ceiling, w.Units))
	}
	return fmt.Sprintf("Down to %s here, above the bare floor: %s passes beneath, with your %s kept.", w.Up(s.Lowest), who, units.LabelShort(w.Margin, w.Units))
}

// Hanging says how a thing would fare that does not hang yet, and how low it may.
func (w Words) Hanging(c maps.HangCheck) string {
	text := w.HungThing(c.Check)
	if c.Spot.Ball && c.Spot.Lowest > c.Thing.Min[2] {
		text += fmt.Sprintf(" The ball of %s comes within your margin of it.", With(c.Spot.Player, c.Spot.Club))
	}
	switch {
	case c.Spot.Lowest <= 0:
		return text + " Here it may hang down to the floor."
	case c.Spot.Lowest >= c.Spot.Ceiling:
		return text + " Nothing so large may hang here at all."
	case c.Spot.Lowest == c.Thing.Min[2]:
		return text + fmt.Sprintf(" Its underside is at %s; lower may not be clear.", units.LabelDown(c.Thing.Min[2], w.Units))
	}
	return text + fmt.Sprintf(" Its underside, now at %s, may hang no lower than %s.", units.LabelDown(c.Thing.Min[2], w.Units), w.Up(c.Spot.Lowest))
}

// HungThing says how one hung thing fares.
func (w Words) HungThing(h remedy.HungCheck) string {
	if h.Player == "" {
		return fmt.Sprintf("%s: no club comes near it.", UpperFirst(h.Name))
	}
	who := With(h.Player, h.Club)
	switch h.Verdict {
	case fit.Strikes:
		return fmt.Sprintf("%s: %s strikes it, %s past its edge.", UpperFirst(h.Name), who, w.past(h.Clearance))
	case fit.Tight:
		return fmt.Sprintf("%s: %s passes it by %s, %s.", UpperFirst(h.Name), who, w.Gap(h.Clearance), w.tighter(h.Clearance))
	}
	return fmt.Sprintf("%s: clear; %s keeps %s from it.", UpperFirst(h.Name), who, w.Gap(h.Clearance))
}

// WatchSummary is the sentence over the map of where others may be.
func (w Words) WatchSummary(m *maps.OnlookMap) string {
	if m.Area <= 0 {
		return "No part of the floor is out of reach of every club and every first-hand ball: others stay outside while somebody plays."
	}
	const footPerMetre = 1 / units.MetresPerFoot
	area := fmt.Sprintf("%.1f m²", floorTo(m.Area, 0.1))
	if w.Units != units.Metric {
		area = fmt.Sprintf("%.0f sq ft", floorTo(m.Area*footPerMetre*footPerMetre, 1))
	}
	return fmt.Sprintf("Others may be in the dotted part, %s: no club, and no ball before it has met anything, comes within %s. A ball that bounces back is not in this.", area, units.LabelShort(w.Margin, w.Units))
}

// SeatsSummary is the sentence that comes first where the plan has seats: how they
// all fare, and which of them fare worst; nothing without seats.
func (w Words) SeatsSummary(seats []maps.SeatCheck) string {
	verdicts := make([]fit.Verdict, len(seats))
	for i, s := range seats {
		verdicts[i] = s.Verdict
	}
	worst := Worst(verdicts)
	var names []string
	for _, s := range seats {
		if s.Verdict == worst {
			names = append(names, s.Name)
		}
	}
	var said string
	switch worst {
	case fit.Strikes:
		said = "can be hit"
	case fit.Tight:
		said = fmt.Sprintf("closer than your %s margin to a club or a ball", units.LabelShort(w.Margin, w.Units))
	default:
		said = "clear of clubs and of balls on their first flight"
	}
	is := "is "
	if len(names) > 1 {
		is = "are "
	}
	if worst == fit.Strikes {
		is = ""
	}
	switch {
	case len(seats) == 0:
		return ""
	case len(seats) == 1:
		return fmt.Sprintf("The seat %s%s.", is, said)
	case len(names) == len(seats) && len(seats) == 2:
		return fmt.Sprintf("Both seats %s%s.", is, said)
	case len(names) == len(seats):
		return fmt.Sprintf("All %d seats %s%s.", len(seats), is, said)
	}
	return fmt.Sprintf("%d of %d seats %s%s: %s.", len(names), len(seats), is, said, List(names))
}

func floorTo(v, step float64) float64 {
	n := int(v / step)
	return float64(n) * step
}

// Seat says how one seat fares.
func (w Words) Seat(c maps.SeatCheck) string {
	name := UpperFirst(c.Name)
	if c.Behind {
		return name + ": behind the screen, where a ball that misses it lands."
	}
	club, ball := "", ""
	switch {
	case c.ClubVerdict == fit.Strikes:
		club = fmt.Sprintf("%s reaches %s into it", With(c.Player, c.With), w.past(c.Club))
	case c.Player == "":
		club = fmt.Sprintf("clubs stay at least %s away", w.Gap(c.Club))
	default:
		club = fmt.Sprintf("%s comes within %s", With(c.Player, c.With), w.Gap(c.Club))
	}
	switch {
	case c.BallVerdict == fit.Strikes:
		ball = fmt.Sprintf("%s of %s can hit it", shotName(c.Shot), c.From)
	case c.From == "":
		ball = fmt.Sprintf("balls stay at least %s away", w.Gap(c.Ball))
	default:
		ball = fmt.Sprintf("%s of %s comes within %s", shotName(c.Shot), c.From, w.Gap(c.Ball))
	}
	return fmt.Sprintf("%s: %s; %s.", name, club, ball)
}

func shotName(shot string) string {
	if shot == "ordinary" {
		return "an ordinary ball"
	}
	return "a ball off the " + shot
}

// LevelStep is the spacing (m) of the levels on the map of what may hang.
func (w Words) LevelStep() float64 {
	if w.Units == units.Metric {
		return 0.25
	}
	return units.MetresPerFoot
}

// Level writes a level: whole feet stand alone.
func (w Words) Level(m float64) string {
	return strings.TrimSuffix(units.Label(m, w.Units), " 0 in")
}
