package swing

import (
	"fmt"
	"math"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
)

// apart returns the signed distance between two capsules: the least distance of
// their axes less both radii (C. Ericson 2005, Real-Time Collision Detection,
// section 5.1.9).
func apart(p, q geom.Capsule) float64 {
	d1, d2, r := r3.Sub(p.B, p.A), r3.Sub(q.B, q.A), r3.Sub(p.A, q.A)
	a, e, f := geom.Dot(d1, d1), geom.Dot(d2, d2), geom.Dot(d2, r)
	b, c := geom.Dot(d1, d2), geom.Dot(d1, r)
	clamp := func(x float64) float64 { return max(0, min(1, x)) }
	s, den := 0.0, a*e-b*b
	if den > 1e-12 {
		s = clamp((b*f - c*e) / den)
	}
	t := (b*s + f) / e
	if t < 0 {
		t, s = 0, clamp(-c/a)
	} else if t > 1 {
		t, s = 1, clamp((b-c)/a)
	}
	return geom.Norm(r3.Sub(r3.Add(p.A, r3.Scale(s, d1)), r3.Add(q.A, r3.Scale(t, d2)))) - p.R - q.R
}

// touch is the deepest that the club comes into the golfer's own body.
type touch struct {
	depth      float64
	club, body Part
	time       float64
}

func (c touch) String() string {
	return fmt.Sprintf("%v in %v by %.3f m at %.3f s", c.club, c.body, -c.depth, c.time)
}

// ownBody is what the club must not pass through: all but the forearms and the
// hands, which hold it, and the upper arms, which fold about it at the finish.
var ownBody = []Part{Head, Neck, Trunk, Pelvis, LeadThigh, TrailThigh, LeadShank, TrailShank, LeadFoot, TrailFoot}

func deepest(s *Swing, step float64) touch {
	worst := touch{depth: math.Inf(1)}
	for t := 0.0; t <= s.Duration(); t += step {
		p := s.PoseAt(t)
		for _, body := range ownBody {
			for _, club := range []Part{Grip, Shaft, Clubhead} {
				if d := apart(p[club], p[body]); d < worst.depth {
					worst = touch{d, club, body, t}
				}
			}
		}
	}
	return worst
}

// ownTolerance is how far into the golfer's own body the club may come, m: the
// capsules are as thick as the thickest place of the part they stand for.
const ownTolerance = 0.01

// eachOwnCase calls f with the golfers whose club must miss them: anybody from a child to a
// giant, with clubs of their size, in every style.
func eachOwnCase(t *testing.T, f func(name string, family *Family)) {
	for _, turn := range []string{"compact", "full", "long"} {
		for _, plane := range []string{"upright", "neutral", "flat"} {
			for _, follow := range []string{"held", "full", "loose"} {
				for _, height := range []float64{1.20, 1.45, 1.75, 2.10} {
					for _, club := range []string{"driver", "5-iron", "wedge"} {
						style := Style{Turn: turn, Plane: plane, Follow: follow}
						family, err := NewFamily(golfer(height), clubOf(height, club), style)
						if err != nil {
							t.Fatal(err)
						}
						f(fmt.Sprintf("%s %s %s, %.2f m, %s", turn, plane, follow, height, club), family)
					}
				}
			}
		}
	}
}

func TestClubMissesItsGolfer(t *testing.T) {
	members := Variations(8, 20)
	eachOwnCase(t, func(name string, family *Family) {
		var s Swing
		for i, v := range append(members, Variation{}) {
			if err := family.Fill(v, &s); err != nil {
				t.Fatal(err)
			}
			if hit := deepest(&s, 0.016); hit.depth < -ownTolerance {
				t.Errorf("%s, member %d: %v (%v)", name, i, hit, s.PhaseAt(hit.time))
			}
		}
	})
}

func TestFamilyMissesItsGolfer(t *testing.T) {
	for _, follow := range []string{"held", "full", "loose"} {
		for _, club := range []string{"driver", "wedge"} {
			f, err := NewFamily(golfer(1.78), clubNamed(club), Style{Follow: follow})
			if err != nil {
				t.Fatal(err)
			}
			for i, v := range Variations(256, 20) {
				s, err := f.Member(v)
				if err != nil {
					t.Fatal(err)
				}
				if hit := deepest(s, 0.012); hit.depth < -ownTolerance {
					t.Errorf("%s, %s, member %d: %v (%v)", follow, club, i, hit, s.PhaseAt(hit.time))
				}
			}
		}
	}
}
