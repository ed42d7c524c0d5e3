package swing

import (
	"fmt"
	"math"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/rules"
)

// eachSwing calls f with central swings over styles, statures and clubs, and
// with members of a loose family.
func eachSwing(t *testing.T, f func(t *testing.T, s *Swing)) {
	for _, style := range []Style{{}, {Turn: "compact", Plane: "flat", Follow: "held"}, {Turn: "long", Plane: "upright", Follow: "loose"}} {
		for _, height := range []float64{1.50, 1.75, 2.00} {
			for _, club := range []string{"driver", "5-iron", "wedge"} {
				s, err := New(golfer(height), clubNamed(club), style)
				if err != nil {
					t.Fatal(err)
				}
				t.Run(fmt.Sprintf("%.2f m/%s/%s%s%s", height, club, style.Turn, style.Plane, style.Follow), func(t *testing.T) { f(t, s) })
			}
		}
	}
	family, err := NewFamily(golfer(1.78), clubNamed("driver"), Style{Follow: "loose"})
	if err != nil {
		t.Fatal(err)
	}
	for i, v := range Variations(24, 20) {
		s, err := family.Member(v)
		if err != nil {
			t.Fatal(err)
		}
		t.Run(fmt.Sprintf("member %d", i), func(t *testing.T) { f(t, s) })
	}
}

func length(c geom.Capsule) float64 { return geom.Norm(r3.Sub(c.B, c.A)) }

// TestLimbsKeepTheirLength asks for rigid bones, a rigid club, hands that stay
// on the grip, and a lead foot that stays where it was put.
func TestLimbsKeepTheirLength(t *testing.T) {
	const (
		boneTol = 1e-9  // rounding: every bone is laid off by its length
		hipTol  = 0.040 // m that a hip may give way: the pelvis drops and tilts, which the model leaves out
		gripTol = 1e-3
	)
	eachSwing(t, func(t *testing.T, s *Swing) {
		b := &s.figure.body
		first := s.PoseAt(0)
		for at := 0.0; at <= s.Duration(); at += 0.01 {
			p := s.PoseAt(at)
			for _, bone := range []struct {
				part      Part
				want, tol float64
			}{
				{LeadUpperArm, b.UpperArm, boneTol}, {TrailUpperArm, b.UpperArm, boneTol},
				{LeadForearm, b.Forearm, boneTol}, {TrailForearm, b.Forearm, boneTol},
				{LeadHand, b.Hand, boneTol}, {TrailHand, b.Hand, boneTol},
				{LeadThigh, s.figure.thigh, boneTol}, {TrailThigh, s.figure.thigh, boneTol},
				{LeadShank, s.figure.shank, boneTol}, {TrailShank, s.figure.shank, boneTol},
				{Shaft, length(first[Shaft]), boneTol}, {Grip, gripLength, boneTol}, {Clubhead, length(first[Clubhead]), boneTol},
			} {
				if got := length(p[bone.part]); math.Abs(got-bone.want) > bone.tol {
					t.Fatalf("%v at %.2f s is %.4f m long, want %.4f m (± %g)", bone.part, at, got, bone.want, bone.tol)
				}
			}
			for thigh, hip := range map[Part]geom.Vec{LeadThigh: p[Pelvis].B, TrailThigh: p[Pelvis].A} {
				if gap := geom.Norm(r3.Sub(p[thigh].A, hip)); gap > hipTol {
					t.Fatalf("%v at %.2f s starts %.4f m from its hip, want 0 (± %g)", thigh, at, gap, hipTol)
				}
			}
			axis := r3.Unit(r3.Sub(p[Grip].B, p[Grip].A))
			for _, hand := range []Part{LeadHand, TrailHand} {
				off := r3.Cross(axis, r3.Sub(p[hand].B, p[Grip].A))
				if geom.Norm(off) > gripTol {
					t.Fatalf("%v at %.2f s is %.4f m off the grip's axis, want 0 (± %g)", hand, at, geom.Norm(off), gripTol)
				}
			}
			if p[LeadShank].B != first[LeadShank].B || p[LeadFoot] != first[LeadFoot] {
				t.Fatalf("the lead foot has moved at %.2f s", at)
			}
		}
	})
}

// TestMotionIsSmooth asks that positions do not jump, and that velocities do
// not either, most of all at the key times where curves join.
func TestMotionIsSmooth(t *testing.T) {
	const (
		h       = 1e-5
		jumpTol = 1e-6 // m over an instant of 1e-9 s: 100 m/s would go 1e-7 m
		kinkTol = 0.3  // m/s
	)
	eachSwing(t, func(t *testing.T, s *Swing) {
		times := append([]float64{}, s.times[:]...)
		d := s.ImpactTime() - s.TopTime()
		for i := 1; i < profileSteps; i++ {
			times = append(times, s.TopTime()+d*float64(i)/profileSteps)
		}
		for at := 0.013; at < s.Duration(); at += 0.031 {
			times = append(times, at)
		}
		for _, at := range times {
			a, m, c := s.PoseAt(at-h), s.PoseAt(at), s.PoseAt(at+h)
			before, after := s.PoseAt(at-1e-9), s.PoseAt(at+1e-9)
			for part := range NumParts {
				for end, ends := range [2][5]geom.Vec{
					{a[part].A, m[part].A, c[part].A, before[part].A, after[part].A},
					{a[part].B, m[part].B, c[part].B, before[part].B, after[part].B},
				} {
					if jump := geom.Norm(r3.Sub(ends[4], ends[3])); jump > jumpTol {
						t.Fatalf("end %d of %v jumps %.2g m at %.4f s", end, part, jump, at)
					}
					kink := r3.Sub(r3.Add(ends[0], ends[2]), r3.Scale(2, ends[1]))
					if v := geom.Norm(kink) / h; v > kinkTol {
						t.Fatalf("end %d of %v changes speed by %.2f m/s at %.4f s (%v)", end, part, v, at, s.PhaseAt(at))
					}
				}
			}
		}
	})
}

// TestClubMeetsTheBall asks that the club soles at the ball at address and is
// back there at impact, square behind it, and does not dig.
func TestClubMeetsTheBall(t *testing.T) {
	const (
		addressTol = 0.003 // m
		impactTol  = 0.005
		digTol     = 0.010
	)
	eachSwing(t, func(t *testing.T, s *Swing) {
		sole := func(at float64) geom.Vec {
			c := s.coreAt(at)
			return r3.Add(c.hands, r3.Scale(s.figure.reach, c.club))
		}
		club := s.figure.club
		// A driver stands 0.06 m short of the ball at address and meets it on its tee
		// (both recorded); a wedge does neither.
		short, tee := 0.06*max(0, club.longness()), 0.0
		if club.Kind == plan.KindDriver {
			tee = 0.02
		}
		for _, at := range []struct {
			name    string
			t, tol  float64
			further geom.Vec
		}{{"address", 0, addressTol, geom.Vec{Y: short}}, {"impact", s.ImpactTime(), impactTol, geom.Vec{Z: tee}}} {
			want := r3.Add(at.further, geom.Vec{X: -(rules.BallRadius + club.HeadDepth), Y: club.HeadSpan/2 + club.HeadRadius/2})
			if off := geom.Norm(r3.Sub(sole(at.t), want)); off > at.tol {
				t.Errorf("sole at %s = %.4f, want %.4f (± %g)", at.name, sole(at.t), want, at.tol)
			}
		}
		if low := s.PoseAt(0)[Clubhead].Bounds().Min.Z; math.Abs(low) > 2*addressTol {
			t.Errorf("the head stands %.4f m above the mat at address, want 0 (± %g)", low, 2*addressTol)
		}
		for at := 0.0; at < s.Duration(); at += 5e-4 {
			if low := s.PoseAt(at)[Clubhead].Bounds().Min.Z; low < -digTol {
				t.Fatalf("the head is %.4f m under the mat at %.3f s, impact %.3f s", -low, at, s.ImpactTime())
			}
		}
	})
}

// TestFinish asks for what each follow-through is called, in the words of
// common practice: belt and chest to the target or past it, weight on the lead
// foot, trail heel up; held, the shaft up in front of the golfer with the hands at
// the shoulders; full and loose, the hands beside the lead ear or shoulder and the
// shaft across behind the neck.
func TestFinish(t *testing.T) {
	for _, height := range []float64{1.3, 1.6, 1.75, 1.9, 2.1} {
		for _, club := range []string{"driver", "7-iron", "wedge"} {
			for _, follow := range []string{"held", "full", "loose"} {
				name := fmt.Sprintf("%.2f m, %s, %s", height, club, follow)
				s, err := New(golfer(height), clubOf(height, club), Style{Follow: follow})
				if err != nil {
					t.Fatal(err)
				}
				c, p := s.coreAt(s.Duration()), s.PoseAt(s.Duration())
				facing := geom.Vec{X: c.lead.Y, Y: -c.lead.X} // of the chest, in plan
				if facing.X < 0.4 {
					t.Errorf("%s: the chest faces %.2f, want it to the target", name, facing)
				}
				if belt := -c.acrossHips().Y; math.Abs(belt) < 0.95 {
					t.Errorf("%s: the hips' line is %.2f, want it square to the target", name, c.acrossHips())
				}
				lead, trail := p[LeadFoot], p[TrailFoot]
				if heel := trail.A.Z - lead.A.Z; heel < 0.08*height {
					t.Errorf("%s: the trail heel is %.2f m up, want it up", name, heel)
				}
				// Weight: the hips over the lead foot rather than between the feet.
				foot := geom.Lerp(lead.A, lead.B, 0.4)
				if off := math.Abs(c.pelvis.X - foot.X); off > 0.06*height {
					t.Errorf("%s: the hips are %.2f m from over the lead foot", name, off)
				}
				hands := r3.Sub(c.hands, c.hub)
				neck := c.hub.Z
				if follow == "held" {
					if up := math.Asin(c.club.Z) / degree; up < 35 || math.Abs(hands.Z) > 0.12*height || geom.Dot(hands, facing) < 0 {
						t.Errorf("%s: shaft %.0f° above level, hands %.2f from the shoulders; want the shaft up and the hands before the shoulders", name, up, hands)
					}
					continue
				}
				if hands.Z < 0.04*height || hands.Z > 0.18*height {
					t.Errorf("%s: the hands are %.2f m above the shoulders, want them at the ear", name, hands.Z)
				}
				if far := geom.Norm(r3.Sub(c.hands, geom.Lerp(p[Head].A, p[Head].B, 0.5))); far > 0.22*height {
					t.Errorf("%s: the hands are %.2f m from the head, want them beside it", name, far)
				}
				// Where the shaft passes the neck, it passes behind it.
				past := (c.hub.Y - c.hands.Y) / c.club.Y
				across := along(c.hands, max(0, past), c.club)
				if past > s.figure.reach || c.hub.X-across.X < p[Neck].R || math.Abs(across.Z-neck) > 0.18*height {
					t.Errorf("%s: the shaft passes %.2f from the neck, want it close behind", name, r3.Sub(across, c.hub))
				}
			}
		}
	}
}
