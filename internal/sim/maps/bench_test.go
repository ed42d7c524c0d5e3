package maps

import (
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/remedy"
)

// BenchmarkDemo is everything that the page shows of the demo plan, with no
// family known before: the report and the three maps. Budget in WASM 500 ms.
func BenchmarkDemo(b *testing.B) {
	p := plan.Demo()
	for b.Loop() {
		var lab fit.Lab
		allMaps(b, &lab, p)
	}
}

// BenchmarkDemoAgain is the same once the families are known, as after a change
// of the room.
func BenchmarkDemoAgain(b *testing.B) {
	p := plan.Demo()
	var lab fit.Lab
	allMaps(b, &lab, p)
	for b.Loop() {
		allMaps(b, &lab, p)
	}
}

func allMaps(b *testing.B, lab *fit.Lab, p plan.Plan) {
	b.Helper()
	_, err1 := lab.Check(plantest.Checked(p))
	_, err2 := Stand(lab, plantest.Checked(p), StandOptions{})
	_, err3 := Hang(lab, plantest.Checked(p), HangOptions{Ball: true})
	_, err4 := Onlookers(lab, plantest.Checked(p), OnlookOptions{})
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
		draw func(*fit.Lab) error
	}{
		{"check", func(l *fit.Lab) error { _, err := l.Check(plantest.Checked(p)); return err }},
		{"stand", func(l *fit.Lab) error { _, err := Stand(l, plantest.Checked(p), StandOptions{}); return err }},
		{"stand in a high room", func(l *fit.Lab) error { _, err := Stand(l, plantest.Checked(high), StandOptions{}); return err }},
		{"hang", func(l *fit.Lab) error { _, err := Hang(l, plantest.Checked(p), HangOptions{Ball: true}); return err }},
		{"hang at", func(l *fit.Lab) error {
			_, err := HangAt(l, plantest.Checked(p), HangOptions{Ball: true}, 3, 2)
			return err
		}},
		{"onlookers", func(l *fit.Lab) error { _, err := Onlookers(l, plantest.Checked(p), OnlookOptions{}); return err }},
		{"marks", func(l *fit.Lab) error { _, err := l.Marks(plantest.Checked(p), "Tall guest"); return err }},
		{"remedies", func(l *fit.Lab) error {
			_, err := remedy.Solve(l, plantest.Checked(p), "Host", "7-iron", "")
			return err
		}},
	} {
		b.Run(m.name, func(b *testing.B) {
			var lab fit.Lab
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
