package answer

import (
	"strings"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/say"
)

// where says a spot of the floor by tape.
func (w words) where(x, y float64) string {
	return say.Sprintf("%s from the back wall and %s from the right wall", plan.Label(x, w.units), plan.Label(y, w.units))
}

// both are the two lengths of where.
func (w words) both(x, y float64) [2]string {
	return [2]string{plan.Label(x, w.units), plan.Label(y, w.units)}
}

// with names who swings what.
func with(player, club string) string { return player + " with the " + club }

// fits says how a clearance to a surface turns out.
func (w words) fits(verdict string, clearance float64, name string) string {
	switch verdict {
	case fit.Strikes:
		return say.Sprintf("strikes %s, %s past it", surface(name), w.past(clearance))
	case fit.Tight:
		return say.Sprintf("passes %s by %s, %s", surface(name), w.gap(clearance), w.tighter(clearance))
	}
	return say.Sprintf("keeps %s from %s", w.gap(clearance), surface(name))
}

// bestPlace is the sentence over the map of where to stand.
func (w words) bestPlace(b fit.Best, who string) string {
	if !b.Found {
		return "No place on this floor is free for a tee."
	}
	at := w.where(b.X, b.Y)
	if b.Verdict == fit.Strikes {
		return say.Sprintf("No place for the tee lets %s swing freely. Least bad is %s: there %s still %s.", who, at, with(b.Player, b.Club), w.fits(b.Verdict, b.Clearance, b.Surface))
	}
	return say.Sprintf("Most room for %s: the tee %s. The tightest there, %s, %s.", who, at, with(b.Player, b.Club), w.fits(b.Verdict, b.Clearance, b.Surface))
}

// bestFor says the best place of one player or hand.
func (w words) bestFor(name string, b fit.Best) string {
	return say.Sprintf("Best for %s: %s; the %s %s.", name, w.where(b.X, b.Y), b.Club, w.fits(b.Verdict, b.Clearance, b.Surface))
}

// sharing says whether one tee serves both hands; nothing for players of one hand.
func (w words) sharing(s fit.Sharing) string {
	switch {
	case !s.Both:
		return ""
	case s.One && s.Loses > 0:
		return say.Sprintf("One tee serves right- and left-handers; sharing it gives away %s.", w.up(s.Loses))
	case s.One:
		return "One tee serves right- and left-handers."
	}
	return say.Sprintf("Right- and left-handers want two tees, %s apart: sharing one gives away %s.", plan.LabelShort(s.Apart, w.units), w.up(s.Loses))
}

// limits says what else keeps a tee off parts of the floor, where it does.
func (w words) limits(m *fit.StandMap) []string {
	var any int16
	for _, k := range m.Mask {
		any |= k
	}
	said := []string{
		say.Sprintf("nearer than %s to the screen (common practice)", plan.Label(m.Nearest, w.units)),
		say.Sprintf("farther than %s from the screen (common practice)", plan.Label(m.Farthest, w.units)),
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

// hangSummary is the sentence over the map of what may hang.
func (w words) hangSummary(highest float64, closed int) string {
	margin := plan.LabelShort(w.margin, w.units)
	switch {
	case closed > 0:
		return say.Sprintf("Over the hatched part nothing may hang at all: club or ball comes within %s of the ceiling. The lines say how low a thing may hang inside them.", margin)
	case highest > 0:
		return say.Sprintf("Nothing lower than %s above the bare floor keeps %s from every swing and ball wherever it hangs. The lines say how low a thing may hang inside them.", w.up(highest), margin)
	}
	return "Nothing passes under this ceiling."
}

// hangSpot says how low a thing may hang over one place.
func (w words) hangSpot(s fit.HangSpot) string {
	who := with(s.Player, s.Club)
	if s.Ball {
		who = "the ball of " + who
	}
	switch {
	case s.Lowest <= 0:
		return "Down to the floor here: no club passes, and no ball."
	case s.Lowest >= s.Ceiling:
		return say.Sprintf("Nothing may hang here: %s needs %s, and the ceiling is at %s.", who, w.up(s.Lowest), plan.LabelDown(s.Ceiling, w.units))
	}
	return say.Sprintf("Down to %s here, above the bare floor: %s passes beneath, with your %s kept.", w.up(s.Lowest), who, plan.LabelShort(w.margin, w.units))
}

// hungThing says how one hung thing fares.
func (w words) hungThing(h fit.HungCheck) string {
	if h.Player == "" {
		return say.Sprintf("%s: no club comes near it.", upperFirst(h.Name))
	}
	who := with(h.Player, h.Club)
	switch h.Verdict {
	case fit.Strikes:
		return say.Sprintf("%s: %s strikes it, %s past its edge.", upperFirst(h.Name), who, w.past(h.Clearance))
	case fit.Tight:
		return say.Sprintf("%s: %s passes it by %s, %s.", upperFirst(h.Name), who, w.gap(h.Clearance), w.tighter(h.Clearance))
	}
	return say.Sprintf("%s: clear; %s keeps %s from it.", upperFirst(h.Name), who, w.gap(h.Clearance))
}

// watchSummary is the sentence over the map of where others may be.
func (w words) watchSummary(m *fit.OnlookMap) string {
	if m.Area <= 0 {
		return "No part of the floor is out of reach of every club and every first-hand ball: others stay outside while somebody plays."
	}
	const footPerMetre = 1 / plan.MetresPerFoot
	area := say.Sprintf("%.1f m²", floorTo(m.Area, 0.1))
	if w.units != plan.UnitsMetric {
		area = say.Sprintf("%.0f sq ft", floorTo(m.Area*footPerMetre*footPerMetre, 1))
	}
	return say.Sprintf("Others may be in the dotted part, %s: no club, and no ball before it has met anything, comes within %s. A ball that bounces back is not in this.", area, plan.LabelShort(w.margin, w.units))
}

func floorTo(v, step float64) float64 {
	n := int(v / step)
	return float64(n) * step
}

// seat says how one seat fares.
func (w words) seat(c fit.SeatCheck) string {
	name := upperFirst(c.Name)
	if c.Behind {
		return name + ": behind the screen, where a ball that misses it lands."
	}
	club, ball := "", ""
	switch {
	case c.ClubVerdict == fit.Strikes:
		club = say.Sprintf("%s reaches %s into it", with(c.Player, c.With), w.past(c.Club))
	case c.Player == "":
		club = say.Sprintf("clubs stay at least %s away", w.gap(c.Club))
	default:
		club = say.Sprintf("%s comes within %s", with(c.Player, c.With), w.gap(c.Club))
	}
	switch {
	case c.BallVerdict == fit.Strikes:
		ball = say.Sprintf("%s of %s can hit it", shotName(c.Shot), c.From)
	case c.From == "":
		ball = say.Sprintf("balls stay at least %s away", w.gap(c.Ball))
	default:
		ball = say.Sprintf("%s of %s comes within %s", shotName(c.Shot), c.From, w.gap(c.Ball))
	}
	return say.Sprintf("%s: %s; %s.", name, club, ball)
}

func shotName(shot string) string {
	if shot == "ordinary" {
		return "an ordinary ball"
	}
	return "a ball off the " + shot
}

// levelStep is the spacing (m) of the levels on the map of what may hang.
func (w words) levelStep() float64 {
	if w.units == plan.UnitsMetric {
		return 0.25
	}
	return plan.MetresPerFoot
}

// level writes a level: whole feet stand alone.
func (w words) level(m float64) string {
	return strings.TrimSuffix(plan.Label(m, w.units), " 0 in")
}
