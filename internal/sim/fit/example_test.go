package fit_test

import (
	"fmt"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
)

// checked stands for the plan.Parse of a plan file.
func checked(p plan.Plan) plan.Checked {
	c, err := plan.Check(p)
	if err != nil {
		panic(err)
	}
	return c
}

// Where does the tee go, for everybody, and does one do for both hands?
func ExampleLab_Stand() {
	p := plan.Rooms()[1] // a double garage bay
	var lab fit.Lab
	m, err := lab.Stand(checked(p), fit.StandOptions{Clubs: []string{"7-iron"}})
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
func ExampleLab_HangAt() {
	p := plan.Rooms()[1]
	var lab fit.Lab
	corner, err := lab.HangAt(checked(p), fit.HangOptions{Ball: true}, 0.4, 0.4)
	if err != nil {
		fmt.Println(err)
		return
	}
	over, err := lab.HangAt(checked(p), fit.HangOptions{Ball: true}, 3.4, 3.0)
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

// A remedy is a change of the plan that has been verified.
func ExampleLab_Remedies() {
	p := plan.Rooms()[0] // a single garage bay, too narrow for a ball off to the side
	p.Tees[0].Y = 3.0
	var lab fit.Lab
	remedies, err := lab.Remedies(checked(p), "Host", "7-iron", "")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range remedies {
		if r.Kind == fit.KindTee && r.Towards == fit.TowardsRight {
			better, err := fit.Apply(p, r.Edits)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Println(r.Edits[0].Path, better.Tees[0].Y < p.Tees[0].Y, r.Verdict)
		}
	}
	// Output:
	// tees[0].y true clear
}
