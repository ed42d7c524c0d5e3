package swing

import (
	"fmt"
	"math"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
)

// bones returns the angle between two bones at the joint where they meet: 180° is
// straight.
func bones(upper, lower geom.Capsule) float64 {
	return 180 - angleOf(r3.Sub(upper.B, upper.A), r3.Sub(lower.B, lower.A))
}

// angleOf returns the angle between two directions, degrees.
func angleOf(a, b geom.Vec) float64 {
	return math.Acos(max(-1, min(1, geom.Dot(r3.Unit(a), r3.Unit(b))))) / degree
}

// jointAngles returns what the joints of a swing do at an instant, degrees.
func jointAngles(s *Swing, at float64) map[string]float64 {
	p := s.PoseAt(at)
	c := s.coreAt(at)
	var j joints
	s.jointsAt(at, &j)
	line := func(part Part) geom.Vec { return r3.Sub(p[part].B, p[part].A) }
	return map[string]float64{
		"lead elbow":     bones(p[LeadUpperArm], p[LeadForearm]),
		"trail elbow":    bones(p[TrailUpperArm], p[TrailForearm]),
		"lead knee":      bones(p[LeadThigh], p[LeadShank]),
		"trail knee":     bones(p[TrailThigh], p[TrailShank]),
		"lead wrist":     angleOf(line(LeadForearm), c.club),
		"trail wrist":    angleOf(line(TrailForearm), c.club),
		"lead shoulder":  angleOf(line(LeadUpperArm), r3.Scale(-1, c.up)),
		"trail shoulder": angleOf(line(TrailUpperArm), r3.Scale(-1, c.up)),
		"trunk's twist":  (j[chChest] - j[chPelvis]) / degree,
	}
}

// jointRanges is where a joint may be, degrees, and how fast it may turn, degrees
// a second. Knees and elbows: 180 is straight, and the least is what flexion of
// 140–145° leaves (American Academy of Orthopaedic Surgeons 1965, Joint Motion,
// from memory; a knee never nearly so far in a swing). Wrists are the shaft to the
// forearm, which is the wrist's 80° and what a grip in the fingers adds (assumption).
// Shoulders are the upper arm to the trunk, 180 overhead. Speeds: the fastest of
// joints that throw, an elbow's extension at 2,200–2,500°/s (G. S. Fleisig et al.
// 1999, J. Biomech. 32:1371–1375, from memory); of the trunk, twice the 720°/s that
// fast golfers turn at (assumption); a golfer's shaft turns at 2,413 SD 442°/s
// (N. Zheng et al. 2008, read), and the wrists at no more than that.
var jointRanges = map[string]struct{ least, most, fastest float64 }{
	"lead elbow":     {38, 180, 2500},
	"trail elbow":    {35, 180, 2500},
	"lead knee":      {100, 180, 700},
	"trail knee":     {95, 180, 700},
	"lead wrist":     {0, 140, 2413 + 442},
	"trail wrist":    {0, 155, 2413 + 442},
	"lead shoulder":  {0, 150, 1440},
	"trail shoulder": {0, 150, 1440},
	"trunk's twist":  {-50, 75, 1440},
}

// TestJointLimits asks, over golfers of any size, styles, clubs and the members of
// their families, that no joint bends farther than a golfer's or turns faster, and
// that both hands are on the grip.
func TestJointLimits(t *testing.T) {
	const dt = 0.004 // s
	members := append(Variations(6, 9), Variation{})
	var s Swing
	for _, height := range []float64{1.20, 1.50, 1.84, 2.10} {
		for _, club := range []string{"driver", "wedge"} {
			for _, style := range []Style{{Follow: "held", Turn: "compact"}, {}, {Follow: "loose", Turn: "long", Plane: "flat"}, {Plane: "upright"}} {
				f, err := NewFamily(golfer(height), clubOf(height, club), style)
				if err != nil {
					t.Fatal(err)
				}
				for i, v := range members {
					if err := f.Fill(v, &s); err != nil {
						t.Fatal(err)
					}
					name := fmt.Sprintf("%.2f m, %s, %v, member %d", height, club, style, i)
					last := jointAngles(&s, 0)
					for at := dt; at <= s.Duration(); at += dt {
						now := jointAngles(&s, at)
						for joint, limit := range jointRanges {
							a := now[joint]
							if !(a >= limit.least && a <= limit.most) {
								t.Fatalf("%s: %s at %.0f°, want %g to %g (%.3f s after impact)", name, joint, a, limit.least, limit.most, at-s.ImpactTime())
							}
							if speed := math.Abs(a-last[joint]) / dt; speed > limit.fastest {
								t.Fatalf("%s: %s turns at %.0f°/s, want at most %g (%.3f s after impact)", name, joint, speed, limit.fastest, at-s.ImpactTime())
							}
						}
						last = now
						p := s.PoseAt(at)
						for _, hand := range []Part{LeadHand, TrailHand} {
							along := geom.Dot(r3.Sub(p[hand].B, p[Grip].A), r3.Unit(r3.Sub(p[Grip].B, p[Grip].A)))
							if along < 0.02 || along > gripLength-0.02 {
								t.Fatalf("%s: %v is %.3f m down the grip, want it on it", name, hand, along)
							}
						}
					}
				}
			}
		}
	}
}

// TestArms asks for straight arms where golfers have them (common practice, no
// source): the lead elbow 160° and more from address through the top to 0.06 s
// after impact, the trail one a little more bent at address and straight by then;
// and for shoulders that sit on the trunk.
func TestArms(t *testing.T) {
	for _, height := range []float64{1.50, 1.65, 1.75, 1.84, 1.95, 2.10} {
		for _, club := range []string{"driver", "7-iron", "wedge"} {
			s, err := New(golfer(height), clubNamed(club), Style{})
			if err != nil {
				t.Fatal(err)
			}
			name := fmt.Sprintf("%.2f m, %s", height, club)
			until := s.ImpactTime() + 0.06
			for at := 0.0; at <= until; at += 0.01 {
				if a := jointAngles(s, at)["lead elbow"]; a < 160 {
					t.Fatalf("%s: lead elbow at %.0f°, %.2f s from impact; want 160° and more", name, a, at-s.ImpactTime())
				}
			}
			address := jointAngles(s, 0)
			if a, b := address["trail elbow"], address["lead elbow"]; a >= b || a < b-25 {
				t.Errorf("%s: trail elbow at address %.0f°, lead %.0f°; want it a little more bent", name, a, b)
			}
			if a := jointAngles(s, until)["trail elbow"]; a < 155 {
				t.Errorf("%s: trail elbow 0.06 s after impact at %.0f°, want it straight", name, a)
			}
			for at := 0.0; at <= s.Duration(); at += 0.01 {
				p := s.PoseAt(at)
				for _, arm := range []Part{LeadUpperArm, TrailUpperArm} {
					joint := geom.Capsule{A: p[arm].A, B: p[arm].A, R: p[arm].R}
					// The girdle draws a shoulder forward by at most 0.062 statures.
					if gap := pointApart(joint, p[Trunk]); gap > 0.03*height {
						t.Fatalf("%s: %v starts %.3f m beside the trunk at %.2f s", name, arm, gap, at)
					}
				}
			}
		}
	}
}

// pointApart is the distance between a sphere and a capsule, less both radii.
func pointApart(ball, c geom.Capsule) float64 {
	axis := r3.Sub(c.B, c.A)
	at := max(0, min(1, geom.Dot(r3.Sub(ball.A, c.A), axis)/geom.Dot(axis, axis)))
	return geom.Norm(r3.Sub(ball.A, along(c.A, at, axis))) - ball.R - c.R
}
