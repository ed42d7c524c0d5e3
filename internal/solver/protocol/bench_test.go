package protocol

import (
	"testing"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

func solveLoop(b *testing.B, change func(i int, p *plan.Plan)) {
	var s Solver
	p := small()
	s.Handle(solveRequest(p, Focus{}))
	i := 0
	for b.Loop() {
		i++
		change(i, &p)
		s.Handle(solveRequest(p, Focus{}))
	}
}

// Nothing that a clearance depends on changes: reading, drawing and writing.
func BenchmarkSolveAgain(b *testing.B) {
	solveLoop(b, func(int, *plan.Plan) {})
}

func BenchmarkSolveTeeMoves(b *testing.B) {
	solveLoop(b, func(i int, p *plan.Plan) { p.Tees[0].X = 2.9 + 0.001*float64(i%100) })
}

func BenchmarkSolveNewPlayer(b *testing.B) {
	solveLoop(b, func(i int, p *plan.Plan) { p.Players[0].Height = 1.7 + 0.0001*float64(i) })
}

// A focus that was not looked at before: one swing modelled and outlined.
func BenchmarkMotion(b *testing.B) {
	p := small()
	who := cast{p.Players[0], p.Clubs[0], p.Tees[0]}
	for b.Loop() {
		var c cache
		m, err := c.motion(who, swing.Variation{})
		if err != nil || m.swing.Duration() <= 0 {
			b.Fatal(err)
		}
	}
}

func BenchmarkSampleSwing(b *testing.B) {
	p := small()
	var c cache
	m, err := c.motion(cast{p.Players[0], p.Clubs[0], p.Tees[0]}, swing.Variation{})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		sweep.Sample(m.swing, sweep.FineTolerance)
	}
}

// The whole demo's ball, as the page asks for it once the verdict is shown.
func BenchmarkBall(b *testing.B) {
	var s Solver
	body := append([]byte(`{"kind":"ball","plan":`), plan.Demo().JSON()...)
	body = append(body, '}')
	s.Handle(body)
	for b.Loop() {
		s.Handle(body)
	}
}

// A tee on its way over the floor of the demo, as the page asks for each step of
// the mouse. Budget in WASM 16 ms.
func BenchmarkDrag(b *testing.B) {
	var s Solver
	body := append([]byte(`{"kind":"drag","x":2.5,"y":2.1,"plan":`), plan.Demo().JSON()...)
	body = append(body, '}')
	s.Handle(body)
	for b.Loop() {
		s.Handle(body)
	}
}

// Each map of the demo, everybody with every club, once the swings are there.
func BenchmarkMaps(b *testing.B) {
	for _, of := range []string{ofStand, ofHang, ofWatch, ofMarks} {
		b.Run(of, func(b *testing.B) {
			var s Solver
			body := append([]byte(`{"kind":"maps","of":"`+of+`","plan":`), plan.Demo().JSON()...)
			body = append(body, '}')
			s.Handle(body)
			for b.Loop() {
				s.Handle(body)
			}
		})
	}
}

// The reel of a check that was answered before.
func BenchmarkReel(b *testing.B) {
	var s Solver
	p := plan.Demo()
	s.Handle(solveRequest(p, Focus{}))
	for b.Loop() {
		b.SetBytes(int64(len(s.Handle(reelRequest(p, Focus{})))))
	}
}
