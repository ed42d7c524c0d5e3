package fit

import (
	"testing"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

// BenchmarkNewcomer is one player with one club, never seen before, in the demo
// room: the family of 256 and its verdict. Budget in WASM 50 ms.
func BenchmarkNewcomer(b *testing.B) {
	p := plan.Demo().WithDefaults()
	p.Players, p.Clubs = p.Players[:1], p.Clubs[:1]
	for b.Loop() {
		lab := Lab{}
		if _, err := lab.Check(plantest.Checked(p)); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkFirstAnswer is the demo's eight checks with nobody known before.
func BenchmarkFirstAnswer(b *testing.B) {
	p := plan.Demo().WithDefaults()
	for b.Loop() {
		lab := Lab{}
		if _, err := lab.Check(plantest.Checked(p)); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkMoveTee is the demo plan again with its tee moved.
func BenchmarkMoveTee(b *testing.B) {
	p := plan.Demo().WithDefaults()
	lab := Lab{}
	for b.Loop() {
		p.Tees[0].X += 1e-4
		if _, err := lab.Check(plantest.Checked(p)); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkDragTee is one step of a tee under the finger: the clearances of all
// eight checks. Budget in WASM 16 ms, aim 4 ms.
func BenchmarkDragTee(b *testing.B) {
	p := plan.Demo()
	var lab Lab
	x := 2.5
	if _, err := lab.At(plantest.Checked(p), "", x, 2.2); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if x += 0.005; x > 3.2 {
			x = 2.5
		}
		if _, err := lab.At(plantest.Checked(p), "", x, 2.2); err != nil {
			b.Fatal(err)
		}
	}
}
