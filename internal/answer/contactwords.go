package answer

import (
	"math"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/say"
	"wideberth/internal/sim/swing"
)

// Figures in these sentences are rounded to the less reassuring side: speeds and
// how far the model may be off, up.

// strike says what is struck first, when and how fast, and how far the loosest
// swing would go past what it goes deepest into.
func (w words) strike(c fit.Check) string {
	beyond := "it"
	if n := c.Nearest; n.Surface != c.Contact.Surface {
		beyond = surface(n.Surface) + " " + phase(n.Phase)
	}
	return say.Sprintf("%s strikes %s%s; the loosest swing would go %s past %s.",
		part(c.Contact.Part), surface(c.Contact.Surface), w.moment(*c.Contact), w.past(c.Clearance), beyond)
}

// touch names a touch for a drawing: what, where, when and how fast.
func (w words) touch(c fit.Contact) string {
	return part(c.Part) + " on " + surface(c.Surface) + w.moment(c)
}

// typicalTouch says the same of the typical swing, where it touches anything.
func (w words) typicalTouch(c fit.Check) string {
	t := c.ContactTypical
	if t == nil {
		return ""
	}
	return say.Sprintf("The typical swing first touches %s with %s%s.", surface(t.Surface), part(t.Part), w.moment(*t))
}

const (
	mphPerMetrePerSecond = 2.2369362920544 // exact to the digits given: 3600/1609.344
	slow                 = 1.0             // m/s under which a speed says nothing
)

// moment says when a touch comes and how fast: " in the follow-through, 0.1 s after
// impact, at 52 mph".
func (w words) moment(c fit.Contact) string {
	out := " " + phase(c.Phase)
	side, away := "after", c.AfterImpact
	if away < 0 {
		side, away = "before", -away
	}
	switch {
	case c.Time == 0 || c.Phase == swing.Impact.String():
	case math.Round(10*away) == 0:
		out += ", just " + side + " impact"
	default:
		out += say.Sprintf(", %.1f s %s impact", away, side)
	}
	if c.Speed < slow {
		return out
	}
	return out + ", at " + w.speedUp(c.Speed)
}

// speed says how fast passes by what is passed nearest.
func (w words) speed(c fit.Check) string {
	v := c.Nearest.Speed
	if c.Verdict == fit.Strikes || v < slow {
		return ""
	}
	return upperFirst(part(c.Nearest.Part)) + " passes there at " + w.speedUp(v) + "."
}

// model says how near the model is to recorded swings, and whether the margin
// that is asked for is finer than that.
func (w words) model(r fit.Report) string {
	near := w.past(-r.ModelError)
	out := say.Sprintf("The model's paths lie within %s of recorded ones on average; no tighter reading means anything.", near)
	if r.ModelError > w.margin {
		out += say.Sprintf(" That is more than your %s margin: take anything under %s as tight, whatever the verdict.", plan.LabelDown(w.margin, w.units), near)
	}
	return out
}
