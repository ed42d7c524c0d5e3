package swing

import (
	"fmt"
	"math"
	"testing"

	"wideberth/internal/sim/body"
	"wideberth/internal/sim/plan"
)

// far is how far golfer and club reach in one way, m from the ball.
type far struct{ behind, up, trail, target float64 }

func farOf(s *Swing, step float64) far {
	e := ExtentOf(s, step).Box
	return far{e.Max.Y, e.Max.Z, -e.Min.X, e.Max.X}
}

// list returns the four reaches under their names.
func (f far) list() map[string]float64 {
	return map[string]float64{"behind": f.behind, "up": f.up, "to the trail side": f.trail, "to the target": f.target}
}

// loosest returns the farthest that the family reaches each way: over the sample,
// and at the corners along the slopes of the traits.
func loosest(t *testing.T, f *Family, members []Variation, step float64) far {
	t.Helper()
	var s Swing
	at := func(v Variation) far {
		if err := f.Fill(v, &s); err != nil {
			t.Fatal(err)
		}
		return farOf(&s, step)
	}
	most := farOf(f.Central, step)
	take := func(e far) {
		most = far{max(most.behind, e.behind), max(most.up, e.up), max(most.trail, e.trail), max(most.target, e.target)}
	}
	var slope [4][NumTraits]float64
	for trait := range NumTraits {
		lo, hi := at(Single(trait, -1)), at(Single(trait, 1))
		for k, d := range [4]float64{hi.behind - lo.behind, hi.up - lo.up, hi.trail - lo.trail, hi.target - lo.target} {
			slope[k][trait] = -d / 2
		}
	}
	for _, s := range slope {
		take(at(Corner(s)))
	}
	for _, v := range members {
		take(at(v))
	}
	return most
}

// TestStylesInOrder asks that a held follow-through reaches no farther than a full
// one and a loose one farther, in every direction, typically and at the loosest,
// for golfers of any size with every club. (The left-hander is the mirror image:
// sweep's tests hold that.)
func TestStylesInOrder(t *testing.T) {
	const tol = 0.001 // m, of the sampling in time
	members := Variations(12, 3)
	for _, height := range []float64{1.20, 1.50, 1.75, 2.10} {
		for _, club := range []string{"driver", "7-iron", "wedge"} {
			var typical, most [3]far
			for i, follow := range []string{"held", "full", "loose"} {
				f, err := NewFamily(golfer(height), clubOf(height, club), Style{Follow: follow})
				if err != nil {
					t.Fatal(err)
				}
				typical[i], most[i] = farOf(f.Central, 0.004), loosest(t, f, members, 0.008)
			}
			for what, e := range map[string][3]far{"typically": typical, "at the loosest": most} {
				held, full, loose := e[0].list(), e[1].list(), e[2].list()
				for way := range held {
					if held[way] > full[way]+tol || full[way] >= loose[way] {
						t.Errorf("%.2f m, %s: %s %s, held %.3f, full %.3f, loose %.3f m; want them rising", height, club, way, what, held[way], full[way], loose[way])
					}
				}
			}
		}
	}
}

// TestReachOfALooseFinish holds the facts of the trade for the wall behind (common
// practice, no source): a tall golfer with long arms and a loose finish touches a
// wall a little under 2.1 m behind the ball with the driver and clears one about
// 2.25 m behind; a usual finish stays well clear of 2.1 m, typically, even for a
// taller golfer.
func TestReachOfALooseFinish(t *testing.T) {
	driver := NewClub(plan.Club{Kind: plan.KindDriver, Length: 1.156, Lie: 58})
	longArmed := body.New(plan.Player{Height: 1.88, Span: 1.98, Shoe: plan.DefaultShoe})
	f, err := NewFamily(longArmed, driver, Style{Follow: "loose"})
	if err != nil {
		t.Fatal(err)
	}
	most := loosest(t, f, Variations(64, 20), 0.004).behind
	if most < 2.10 || most > 2.25 {
		t.Errorf("a loose finish reaches %.3f m behind the ball, want 2.10 to 2.25 m", most)
	}
	usual, err := New(golfer(1.95), driver, Style{})
	if err != nil {
		t.Fatal(err)
	}
	if reach := farOf(usual, 0.004).behind; reach > 2.0 {
		t.Errorf("a usual finish reaches %.3f m behind the ball, want well under 2.1 m", reach)
	}
}

// TestMeasuredAddress asks that a tape narrows the family, and moves it the right
// way: who stands farther off reaches farther behind.
func TestMeasuredAddress(t *testing.T) {
	members := Variations(32, 5)
	for _, club := range []string{"driver", "7-iron"} {
		reach := map[string]far{}
		spread := map[string]float64{}
		central := map[string]Stance{}
		for name, style := range map[string]Style{
			"unknown":     {},
			"hands near":  {BallToHands: 0.80},
			"hands usual": {BallToHands: 0.86},
			"hands far":   {BallToHands: 0.92},
			"toes near":   {BallToToes: 0.86},
			"toes far":    {BallToToes: 1.02},
			"both far":    {BallToHands: 0.92, BallToToes: 1.03},
		} {
			f, err := NewFamily(golfer(1.84), clubNamed(club), style)
			if err != nil {
				t.Fatal(err)
			}
			if f.Note() != "" {
				t.Errorf("%s: %s", name, f.Note())
			}
			reach[name], central[name] = farOf(f.Central, 0.004), f.Central.Stance
			spread[name] = loosest(t, f, members, 0.008).behind - reach[name].behind
			if club != "driver" {
				continue
			}
			const tol = 0.025 // m: the tape is not the whole truth
			if style.BallToHands > 0 && math.Abs(f.Central.Stance.BallToHands-style.BallToHands) > tol {
				t.Errorf("%s: the hands are %.3f m from the ball, want %.3f", name, f.Central.Stance.BallToHands, style.BallToHands)
			}
			if style.BallToToes > 0 && math.Abs(f.Central.Stance.BallToToes-style.BallToToes) > tol {
				t.Errorf("%s: the toes are %.3f m from the ball, want %.3f", name, f.Central.Stance.BallToToes, style.BallToToes)
			}
		}
		rising := func(names ...string) {
			for i := 1; i < len(names); i++ {
				if reach[names[i]].behind <= reach[names[i-1]].behind {
					t.Errorf("%s: %s reaches %.3f m behind, %s %.3f m; want them rising", club, names[i-1], reach[names[i-1]].behind, names[i], reach[names[i]].behind)
				}
			}
		}
		rising("hands near", "hands usual", "hands far")
		rising("toes near", "toes far")
		for name := range reach {
			if name != "unknown" && spread[name] >= spread["unknown"] {
				t.Errorf("%s: %s leaves a spread of %.3f m, unknown %.3f m; want it narrower", club, name, spread[name], spread["unknown"])
			}
		}
		if spread["both far"] >= spread["hands far"] {
			t.Errorf("%s: both distances leave a spread of %.3f m, the hands' alone %.3f m; want it narrower", club, spread["both far"], spread["hands far"])
		}
	}
}

// TestStrangeAddress asks for a note about a distance that nobody of this build
// stands at.
func TestStrangeAddress(t *testing.T) {
	f, err := NewFamily(golfer(1.84), clubNamed("driver"), Style{BallToHands: 0.60})
	if err != nil {
		t.Fatal(err)
	}
	const want = "The measured distance from the ball to the hands with the driver is far from usual for this height and club (0.60 m, usual 0.86 m): measure it again."
	if f.Note() != want {
		t.Errorf("note %q, want %q", f.Note(), want)
	}
}

func ExampleFamily_Note() {
	b := body.New(plan.Player{Height: 1.84, Shoe: plan.DefaultShoe})
	f, err := NewFamily(b, NewClub(plan.DefaultClub(plan.KindDriver, "driver")), Style{BallToToes: 0.95})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("toes %.2f m from the ball, nothing strange: %t\n", f.Central.Stance.BallToToes, f.Note() == "")
	// Output: toes 0.95 m from the ball, nothing strange: true
}
