package maps_test

import (
	"fmt"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/maps"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

// Where does the tee go, for everybody, and does one do for both hands?
func ExampleStand() {
	p := plan.Rooms()[1] // a double garage bay
	var lab fit.Lab
	m, err := maps.Stand(&lab, plantest.Checked(p), maps.StandOptions{Clubs: []string{"7-iron"}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("a place for everybody:", m.Best.Found)
	for _, h := range m.Hands {
		fmt.Println(h.Hand, h.Players, h.Best.Found)
	}
	for _, c := range m.Contours {
		fmt.Printf("%s at %.2f m\n", c.Name, c.Level)
	}
	// Output:
	// a place for everybody: true
	// right [Host] true
	// left [Left-handed friend] true
	// strike at 0.00 m
	// margin at 0.15 m
	// comfort at 0.30 m
}

// May a lamp hang in a corner behind the golfer down to eye level?
func ExampleHangAt() {
	p := plan.Rooms()[1]
	var lab fit.Lab
	corner, err := maps.HangAt(&lab, plantest.Checked(p), maps.HangOptions{Ball: true}, 0.4, 0.4)
	if err != nil {
		fmt.Println(err)
		return
	}
	over, err := maps.HangAt(&lab, plantest.Checked(p), maps.HangOptions{Ball: true}, 3.4, 3.0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("in the corner:", corner.Lowest < 1.6)
	fmt.Println("over the golfer:", over.Lowest < 1.6)
	// Output:
	// in the corner: true
	// over the golfer: false
}
