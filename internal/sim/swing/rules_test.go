package swing

import (
	"fmt"
	"math"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

const foot = 0.3048 // m

// Extent is the room a swing takes, m, from the ball's place on the ground: the
// box around golfer and club, and the greatest heights going back and through.
type Extent struct {
	Box           geom.Box
	Back, Through float64
}

func ExtentOf(s *Swing, step float64) Extent {
	e := Extent{Box: geom.EmptyBox()}
	for t := 0.0; t <= s.Duration(); t += step {
		p := s.PoseAt(t)
		now := geom.EmptyBox()
		for _, c := range p {
			now = now.Union(c.Bounds())
		}
		e.Box = e.Box.Union(now)
		if t < s.TopTime() {
			e.Back = max(e.Back, now.Max.Z)
		} else if t > s.ImpactTime() {
			e.Through = max(e.Through, now.Max.Z)
		}
	}
	return e
}

// TestCeilingRulesOfThumb holds the golfer of the trade's rules of thumb to
// them (common practice, no source): 6 ft, a 45.5 in driver, bare floor; an 8 ft
// ceiling is struck, a 9 ft one is not, a 10 ft one leaves more than 6 in. The
// last two are asked of the loosest swing of the family.
func TestCeilingRulesOfThumb(t *testing.T) {
	const step = 0.004 // s; the head rises by less than 1 mm between samples near its highest
	f, err := NewFamily(golfer(6*foot), NewClub(plan.Club{Kind: plan.KindDriver, Length: 1.1557, Lie: 58}), Style{})
	if err != nil {
		t.Fatal(err)
	}
	central := ExtentOf(f.Central, step)
	if central.Box.Max.Z <= 8*foot {
		t.Errorf("central swing reaches %.3f m, want above 8 ft = %.3f m", central.Box.Max.Z, 8*foot)
	}
	// Recorded drivers of men of about this height (package published) have the
	// middle of the face at most 2.3 to 2.7 m above the mat, its edge 0.05 m more.
	if central.Box.Max.Z < 2.44 || central.Box.Max.Z > 2.62 {
		t.Errorf("central swing reaches %.3f m, want 2.44 to 2.62 m", central.Box.Max.Z)
	}
	if d := central.Through - central.Back; math.Abs(d) > 0.10 {
		t.Errorf("follow-through %.3f m, backswing %.3f m high, want within 0.10 m of each other", central.Through, central.Back)
	}

	height := func(v Variation) float64 {
		s, err := f.Member(v)
		if err != nil {
			t.Fatal(err)
		}
		return ExtentOf(s, step).Box.Max.Z
	}
	var slope [NumTraits]float64
	highest := central.Box.Max.Z
	for trait := range NumTraits {
		lo, hi := height(Single(trait, -1)), height(Single(trait, 1))
		slope[trait] = -(hi - lo) / 2
		highest = max(highest, height(Single(trait, -Reach)), height(Single(trait, Reach)))
	}
	highest = max(highest, height(Corner(slope)))
	for _, v := range Variations(256, 20) {
		highest = max(highest, height(v))
	}
	if highest > 9*foot {
		t.Errorf("the loosest swing reaches %.3f m, want at most 9 ft = %.3f m", highest, 9*foot)
	}
	if spare := 10*foot - highest; spare <= 0.1524 {
		t.Errorf("the loosest swing leaves %.3f m under 10 ft, want more than 6 in = 0.152 m", spare)
	}
	if highest < central.Box.Max.Z+0.10 {
		t.Errorf("the loosest swing reaches %.3f m, want at least 0.10 m above the central %.3f m: no golfer is a machine", highest, central.Box.Max.Z)
	}
}

// monotoneTol forgives what sampling a swing in time costs, m.
const monotoneTol = 0.001

// TestTallerNeedsMoreCeiling: with the same club a taller golfer never needs
// less ceiling.
func TestTallerNeedsMoreCeiling(t *testing.T) {
	for _, club := range []string{"driver", "7-iron", "wedge"} {
		for _, follow := range []string{"held", "full", "loose"} {
			last := 0.0
			for height := 1.50; height < 2.01; height += 0.05 {
				s, err := New(golfer(height), clubNamed(club), Style{Follow: follow})
				if err != nil {
					t.Fatal(err)
				}
				high := ExtentOf(s, 0.004).Box.Max.Z
				if high < last-monotoneTol {
					t.Errorf("%s, %s: %.2f m tall needs %.3f m of ceiling, 0.05 m shorter %.3f m", club, follow, height, high, last)
				}
				last = high
			}
		}
	}
}

// TestLongerClubNeedsMoreRoom: a longer club of the same kind and lie never
// needs less ceiling or less room to either side of the golfer. (Beyond the ball
// only the toe of the head sticks out, by 5 or 6 cm whatever the length.)
func TestLongerClubNeedsMoreRoom(t *testing.T) {
	for _, height := range []float64{1.55, 1.75, 1.95} {
		for _, club := range []struct {
			kind          string
			from, to, lie float64
		}{{plan.KindDriver, 1.00, 1.24, 58}, {plan.KindIron, 0.86, 1.02, 62}, {plan.KindWedge, 0.84, 0.94, 64}} {
			var last Extent
			for length := club.from; length < club.to+1e-9; length += 0.02 {
				s, err := New(golfer(height), NewClub(plan.Club{Kind: club.kind, Length: length, Lie: club.lie}), Style{})
				if err != nil {
					t.Fatal(err)
				}
				e := ExtentOf(s, 0.004)
				name := fmt.Sprintf("%.2f m, %s of %.2f m", height, club.kind, length)
				if length > club.from {
					for _, room := range []struct {
						what      string
						less, now float64
					}{
						{"ceiling", last.Box.Max.Z, e.Box.Max.Z},
						{"room behind", last.Box.Max.Y, e.Box.Max.Y},
						{"room to the trail side", -last.Box.Min.X, -e.Box.Min.X},
						{"room to the target", last.Box.Max.X, e.Box.Max.X},
					} {
						if room.now < room.less-monotoneTol {
							t.Errorf("%s needs %.3f m of %s, 0.02 m shorter %.3f m", name, room.now, room.what, room.less)
						}
					}
				}
				last = e
			}
		}
	}
}
