package remedy

import (
	"cmp"
	"math"
	"slices"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// advised is how many remedies a Check names.
const advised = 3

// adviceStep (m) is how finely a Check's remedies are solved: as finely as they
// are written down.
const adviceStep = 0.01

// advice is a remedy in a Check's words.
type advice struct {
	amount float64
	text   string
}

// Advise adds to the checks of a report that are not clear the smallest remedies
// that are cheap to solve, in words: moves of the tee, a higher ceiling, a hung
// thing raised. Near boxes the tee goes as far as the cautious clearance of a
// Reading asks, so the check of the changed plan is clear by no less than is said.
func Advise(l *fit.Lab, given plan.Checked, report *fit.Report) error {
	p := given.Plan()
	for i := range report.Checks {
		c := &report.Checks[i]
		if c.Verdict == fit.Clear {
			continue
		}
		q, err := ask(l, given, c.Player, c.Club, c.Tee)
		if err != nil {
			return err
		}
		c.Remedies = advise(&q.asked, p, c.BySurface)
	}
	return nil
}

func advise(s *stand, p plan.Plan, by map[string]float64) []string {
	var out []advice
	out = append(out, s.adviseTee(p)...)
	out = append(out, s.adviseCeiling(p, by)...)
	out = append(out, s.adviseHung(p, by)...)
	slices.SortStableFunc(out, func(a, b advice) int { return cmp.Compare(a.amount, b.amount) })
	var words []string
	for _, a := range out[:min(advised, len(out))] {
		words = append(words, a.text)
	}
	return words
}

func (s *stand) adviseTee(p plan.Plan) (out []advice) {
	if s.hopeless(p.Margin) {
		return nil
	}
	for _, side := range sides {
		at := func(d float64) fit.Spot { return fit.Spot{X: s.at.X + d*side.x, Y: s.at.Y + d*side.y} }
		w := walk{p.Margin, geom.Hypot(p.Room.Length, p.Room.Width), adviceStep, func(d float64) (float64, bool) {
			return s.cautious(at(d), p.Margin), fit.BallFits(p, at(d)) && s.reachable(at(d), side.x, side.y, p.Margin)
		}}
		if d, ok := w.first(0); ok {
			towards := "the " + side.name
			out = append(out, advice{d, fmt.Sprintf("Move the tee %.2f m towards %s: clear by %s", d, towards, down(s.cautious(at(d), math.Inf(1))))})
		}
	}
	return out
}

// reachable reports whether farther along a direction the flat surfaces still
// leave a margin somewhere: those that come nearer must not be too near already.
func (s *stand) reachable(at fit.Spot, dx, dy, margin float64) bool {
	for _, f := range s.flat {
		if f.DX*dx+f.DY*dy <= 0 && f.At(at) < margin {
			return false
		}
	}
	return true
}

// adviseCeiling works on what the check has found already.
func (s *stand) adviseCeiling(p plan.Plan, by map[string]float64) []advice {
	need := 0.0
	for _, f := range s.flat {
		switch n, v := f.surface.Plane.N.Z, by[f.surface.Name]; {
		case n < 0:
			need = max(need, (p.Margin-v)/-n)
		case v < p.Margin:
			return nil
		}
	}
	rest := math.Inf(1)
	for _, b := range s.box {
		rest = min(rest, by[b.Name])
	}
	if rest < p.Margin || need <= 0 {
		return nil
	}
	h := math.Ceil(need/adviceStep-1e-6) * adviceStep
	for _, f := range s.flat {
		rest = min(rest, by[f.surface.Name]-min(0, f.surface.Plane.N.Z)*h)
	}
	what := "the ceiling"
	if len(p.Room.Slopes) > 0 {
		what = "the ceiling and its slopes"
	}
	return []advice{{h, fmt.Sprintf("Raise %s %.2f m, the ceiling to %.2f m: clear by %s", what, h, p.Room.Height+h, down(rest))}}
}

// adviseHung raises the one hung thing that is in the way, if there is just one.
func (s *stand) adviseHung(p plan.Plan, by map[string]float64) []advice {
	which := -1
	rest := math.Inf(1)
	for i, h := range p.Hung {
		if by[h.Name] < p.Margin {
			if which >= 0 {
				return nil
			}
			which = i
		}
	}
	if which < 0 {
		return nil
	}
	h := p.Hung[which]
	for name, v := range by {
		if name != h.Name {
			rest = min(rest, v)
		}
	}
	if rest < p.Margin {
		return nil
	}
	thing := func(d float64) (sweep.Surface, bool) {
		q, err := Apply(p, raised(p, which, d))
		if err != nil {
			return sweep.Surface{}, false
		}
		return hungSurface(q, h.Name), true
	}
	w := walk{p.Margin, p.Room.Height - recess - h.Min[2], adviceStep, func(d float64) (float64, bool) {
		b, ok := thing(d)
		if !ok {
			return 0, false
		}
		v, _ := s.BoxWithin(b.Box, s.at, p.Margin)
		return v, true
	}}
	d, ok := w.first(0)
	if !ok {
		return nil
	}
	if b, ok := thing(d); ok {
		rest, _ = s.BoxWithin(b.Box, s.at, rest)
	}
	return []advice{{d, fmt.Sprintf("Raise the %s %.2f m: clear by %s", h.Name, d, down(rest))}}
}

// down writes a clearance in metres, rounded down to a centimetre.
func down(v float64) string {
	return fmt.Sprintf("%.2f m", math.Floor(v*100+1e-6)/100)
}
