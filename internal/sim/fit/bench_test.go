package fit

import (
	"testing"

	"wideberth/internal/sim/plan"
)

// BenchmarkNewcomer is one player with one club, never seen before, in the demo
// room: the family of 256 and its verdict. Budget in WASM 50 ms.
func BenchmarkNewcomer(b *testing.B) {
	p := plan.Demo().WithDefaults()
	p.Players, p.Clubs = p.Players[:1], p.Clubs[:1]
	for b.Loop() {
		lab := Lab{Brief: true}
		if _, err := lab.Check(checked(p)); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkMoveTee is the demo plan again with its tee moved.
func BenchmarkMoveTee(b *testing.B) {
	p := plan.Demo().WithDefaults()
	lab := Lab{Brief: true}
	for b.Loop() {
		p.Tees[0].X += 1e-4
		if _, err := lab.Check(checked(p)); err != nil {
			b.Fatal(err)
		}
	}
}
