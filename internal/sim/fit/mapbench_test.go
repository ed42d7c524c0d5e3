package fit

import (
	"testing"

	"wideberth/internal/sim/plan"
)

// BenchmarkDemo is everything that the page shows of the demo plan, with no
// family known before: the report and the three maps. Budget in WASM 500 ms.
func BenchmarkDemo(b *testing.B) {
	p := plan.Demo()
	for b.Loop() {
		var lab Lab
		allMaps(b, &lab, p)
	}
}

// BenchmarkDemoAgain is the same once the families are known, as after a change
// of the room.
func BenchmarkDemoAgain(b *testing.B) {
	p := plan.Demo()
	var lab Lab
	allMaps(b, &lab, p)
	for b.Loop() {
		allMaps(b, &lab, p)
	}
}

func allMaps(b *testing.B, lab *Lab, p plan.Plan) {
	b.Helper()
	_, err1 := lab.Check(checked(p))
	_, err2 := lab.Stand(checked(p), StandOptions{})
	_, err3 := lab.Hang(checked(p), HangOptions{Ball: true})
	_, err4 := lab.Onlookers(checked(p), OnlookOptions{})
	for _, err := range []error{err1, err2, err3, err4} {
		if err != nil {
			b.Fatal(err)
		}
	}
}

// The parts of it, families known.
func BenchmarkMaps(b *testing.B) {
	p := plan.Demo()
	high := p
	high.Room.Height, high.Room.Solids, high.Room.Slopes = 3.4, nil, nil
	for _, m := range []struct {
		name string
		draw func(*Lab) error
	}{
		{"check", func(l *Lab) error { _, err := l.Check(checked(p)); return err }},
		{"stand", func(l *Lab) error { _, err := l.Stand(checked(p), StandOptions{}); return err }},
		{"stand in a high room", func(l *Lab) error { _, err := l.Stand(checked(high), StandOptions{}); return err }},
		{"hang", func(l *Lab) error { _, err := l.Hang(checked(p), HangOptions{Ball: true}); return err }},
		{"hang at", func(l *Lab) error { _, err := l.HangAt(checked(p), HangOptions{Ball: true}, 3, 2); return err }},
		{"onlookers", func(l *Lab) error { _, err := l.Onlookers(checked(p), OnlookOptions{}); return err }},
		{"marks", func(l *Lab) error { _, err := l.Marks(checked(p), "Tall guest"); return err }},
		{"remedies", func(l *Lab) error { _, err := l.Remedies(checked(p), "Host", "7-iron", ""); return err }},
	} {
		b.Run(m.name, func(b *testing.B) {
			var lab Lab
			if err := m.draw(&lab); err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				if err := m.draw(&lab); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkDragTee is one step of a tee under the finger: the clearances of all
// eight checks. Budget in WASM 16 ms, aim 4 ms.
func BenchmarkDragTee(b *testing.B) {
	p := plan.Demo()
	var lab Lab
	x := 2.5
	if _, err := lab.At(checked(p), "", x, 2.2); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if x += 0.005; x > 3.2 {
			x = 2.5
		}
		if _, err := lab.At(checked(p), "", x, 2.2); err != nil {
			b.Fatal(err)
		}
	}
}
