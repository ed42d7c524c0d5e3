package published

import (
	"math"

	"wideberth/internal/sim/swing/measure"
)

// Span is what a set of swings does in one quantity.
type Span struct {
	Least, Most     float64
	n, sum, squares float64
}

func newSpan() *Span { return &Span{Least: math.Inf(1), Most: math.Inf(-1)} }

func (s *Span) add(v float64) {
	s.Least, s.Most = min(s.Least, v), max(s.Most, v)
	s.n, s.sum, s.squares = s.n+1, s.sum+v, s.squares+v*v
}

// SD returns the standard deviation.
func (s *Span) SD() float64 {
	mean := s.sum / s.n
	return math.Sqrt(max(0, s.squares/s.n-mean*mean))
}

// Meets says whether any swing between the least and the most is as measured.
func (s *Span) Meets(f Figure) bool { return s.Least <= f.High && s.Most >= f.Low }

// spans holds the span of each quantity of measure.Swing, by its name.
type spans map[string]*Span

func (s spans) add(measured []measure.Quantity) {
	for _, m := range measured {
		if s[m.Name] == nil {
			s[m.Name] = newSpan()
		}
		s[m.Name].add(m.Value)
	}
}

// with returns the span of a quantity over two sets of swings.
func (s spans) with(other spans, quantity string) *Span {
	a, b := s[quantity], other[quantity]
	return &Span{
		Least: min(a.Least, b.Least), Most: max(a.Most, b.Most),
		n: a.n + b.n, sum: a.sum + b.sum, squares: a.squares + b.squares,
	}
}
