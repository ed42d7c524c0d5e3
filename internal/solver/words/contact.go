package words

import (
	"math"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/swing"
	"wideberth/internal/units"
)

// Figures in these sentences are rounded to the less reassuring side: speeds and
// how far the model may be off, up.

// strike says what is struck first, when and how fast, and how far the loosest
// swing would go past what it goes deepest into.
func (w Words) strike(c fit.Check) string {
	beyond := "it"
	if n := c.Nearest; n.Surface != c.Contact.Surface {
		beyond = Surface(n.Surface) + " " + phase(n.Phase)
	}
	return fmt.Sprintf("%s strikes %s%s; the loosest swing would go %s past %s.",
		part(c.Contact.Part), Surface(c.Contact.Surface), w.moment(*c.Contact), w.past(c.Clearance), beyond)
}

// Touch names a touch for a drawing: what, where, when and how fast.
func (w Words) Touch(c fit.Contact) string {
	return part(c.Part) + " on " + Surface(c.Surface) + w.moment(c)
}

// typicalTouch says the same of the typical swing, where it touches anything.
func (w Words) typicalTouch(c fit.Check) string {
	t := c.ContactTypical
	if t == nil {
		return ""
	}
	return fmt.Sprintf("The typical swing first touches %s with %s%s.", Surface(t.Surface), part(t.Part), w.moment(*t))
}

const slow = 1.0 // m/s under which a speed says nothing

// moment says when a touch comes and how fast: " in the follow-through, 0.1 s after
// impact, at 52 mph".
func (w Words) moment(c fit.Contact) string {
	out := " " + phase(c.Phase)
	side, away := "after", c.AfterImpact
	if away < 0 {
		side, away = "before", -away
	}
	switch {
	case c.Time == 0 || c.Phase == swing.Impact:
	case math.Round(10*away) == 0:
		out += ", just " + side + " impact"
	default:
		out += fmt.Sprintf(", %.1f s %s impact", away, side)
	}
	if c.Speed < slow {
		return out
	}
	return out + ", at " + w.SpeedUp(c.Speed)
}

// speed says how fast passes by what is passed nearest.
func (w Words) speed(c fit.Check) string {
	v := c.Nearest.Speed
	if c.Verdict == fit.Strikes || v < slow {
		return ""
	}
	return UpperFirst(part(c.Nearest.Part)) + " passes there at " + w.SpeedUp(v) + "."
}

// model says how near the model is to recorded swings, and whether the margin
// that is asked for is finer than that.
func (w Words) model(r fit.Report) string {
	near := w.past(-r.ModelError)
	out := fmt.Sprintf("The model's paths lie within %s of recorded ones on average; no tighter reading means anything.", near)
	if r.ModelError > w.Margin {
		out += fmt.Sprintf(" That is more than your %s margin: take anything under %s as tight, whatever the verdict.", units.LabelDown(w.Margin, w.Units), near)
	}
	return out
}
