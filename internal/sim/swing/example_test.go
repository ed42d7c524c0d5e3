package swing_test

import (
	"fmt"

	"wideberth/internal/sim/body"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
)

func player(height float64) body.Body {
	return body.New(plan.Player{Name: "Tall guest", Height: height, Shoe: plan.DefaultShoe})
}

// A tall guest's driver: where the ball lies, how fast the head comes down and
// where it is at the top.
func ExampleNew() {
	driver := swing.NewClub(plan.DefaultClub(plan.KindDriver, "driver"))
	s, err := swing.New(player(1.92), driver, swing.Style{Turn: plan.TurnFull, Follow: plan.FollowFull})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("ball to toes %.1f m\n", s.Stance.BallToToes)
	fmt.Printf("impact after %.1f s at %.0f m/s\n", s.ImpactTime(), s.ClubheadSpeed(s.ImpactTime()))
	head := s.PoseAt(s.TopTime())[swing.Clubhead]
	fmt.Printf("%v at the top %.1f m above the mat\n", swing.Clubhead, head.A.Z)
	// Output:
	// ball to toes 1.0 m
	// impact after 1.3 s at 48 m/s
	// clubhead at the top 2.0 m above the mat
}

// The family says how much higher than usual the guest's club may come.
func ExampleNewFamily() {
	driver := swing.NewClub(plan.DefaultClub(plan.KindDriver, "driver"))
	f, err := swing.NewFamily(player(1.92), driver, swing.Style{Follow: plan.FollowLoose})
	if err != nil {
		fmt.Println(err)
		return
	}
	highest := func(s *swing.Swing) (most float64) {
		for t := 0.0; t <= s.Duration(); t += 0.01 {
			most = max(most, s.PoseAt(t)[swing.Clubhead].Bounds().Max.Z)
		}
		return most
	}
	loosest := 0.0
	var s swing.Swing
	for _, v := range swing.Variations(256, 1) {
		if err := f.Fill(v, &s); err != nil {
			fmt.Println(err)
			return
		}
		loosest = max(loosest, highest(&s))
	}
	fmt.Printf("central %.1f m, loosest of 256 %.1f m\n", highest(f.Central), loosest)
	// Output: central 2.7 m, loosest of 256 2.9 m
}
