package measure_test

import (
	"fmt"

	"wideberth/internal/sim/body"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
	"wideberth/internal/sim/swing/measure"
)

// What a motion-capture laboratory would read off the swing.
func ExampleSwing() {
	iron := swing.NewClub(plan.DefaultClub(plan.KindIron, "7-iron"))
	s, err := swing.New(body.New(plan.Player{Name: "golfer", Height: 1.75, Shoe: plan.DefaultShoe}), iron, swing.Style{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range measure.Swing(s) {
		if m.Name == "top: shoulder turn" || m.Name == "time: backswing" {
			fmt.Printf("%s: %.2g %s\n", m.Name, m.Value, m.Unit)
		}
	}
	// Output:
	// top: shoulder turn: 94 deg
	// time: backswing: 0.88 s
}
