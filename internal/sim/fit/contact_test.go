package fit

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"wideberth/internal/sim/family"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// distance returns the signed distance of a pose to a surface, part by part.
func distance(pose *swing.Pose, part swing.Part, s sweep.Surface) float64 {
	if s.Kind.Flat() {
		return s.Plane.Distance(pose[part])
	}
	return s.Box.Separate(pose[part]).D
}

// deeperThan returns the first time before a time at which any part of a swing is
// more than depth past any of the surfaces; it steps as far as the fastest clubhead
// would need to get there.
func deeperThan(s *swing.Swing, surfaces []sweep.Surface, depth, before float64) (float64, bool) {
	const fastest, step = 80.0, 2e-5 // m/s, s
	for t := 0.0; t < before; {
		pose, least := s.PoseAt(t), math.Inf(1)
		for _, surface := range surfaces {
			for p := range swing.NumParts {
				least = min(least, distance(&pose, p, surface))
			}
		}
		if least < -depth {
			return t, true
		}
		t += max(step, (least+depth)/fastest)
	}
	return 0, false
}

// demoIn is the demo in another room, with its other things taken out.
func demoIn(length, width, height float64) plan.Plan {
	p := plantest.Loft()
	p.Room = plan.Room{Length: length, Width: width, Height: height}
	p.Hung, p.Screen = nil, nil
	p.Tees[0].X, p.Tees[0].Y = length/2, width/2
	return p
}

// trialOf puts a player's family on the first tee of a plan.
func trialOf(t *testing.T, p plan.Plan, player plan.Player, club plan.Club) trial {
	t.Helper()
	place, surfaces := sweep.Place(p, p.Tees[0], player), sweep.Surfaces(p)
	local := place.Surfaces(surfaces)
	kin, err := family.New(player, club, family.Directions(local))
	if err != nil {
		t.Fatal(err)
	}
	return trial{kin, place, surfaces, local}
}

// TestFirstTouch holds the first touch against every member followed in small
// steps: before it nobody is past anything by more than the tolerance, and at it
// the member that it names is at the surface.
func TestFirstTouch(t *testing.T) {
	file := func(name string) plan.Plan {
		data, err := os.ReadFile(filepath.Join("../../../testdata/plans", name+".json"))
		if err != nil {
			t.Fatal(err)
		}
		p, err := plan.Parse(data)
		if err != nil {
			t.Fatal(err)
		}
		return p.Plan()
	}
	post := demoIn(9, 8, 4)
	post.Room.Solids = []plan.Solid{{Name: "post", Min: [3]float64{4.1, 4.9, 0}, Max: [3]float64{4.2, 5.0, 4}}}
	cases := []struct {
		name string
		plan plan.Plan
	}{
		{"demo", plantest.Loft()}, {"low ceiling", file("low-ceiling")}, {"narrow", file("narrow")}, {"backswing", file("backswing")},
		{"a wall in the stance", demoIn(6, 2.2, 4)}, {"a thin post", post},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			p := c.plan.WithDefaults()
			struckSome := false
			for i, player := range p.Players {
				if testing.Short() && i > 0 {
					break
				}
				club := p.ClubsOf(player)[0]
				on := trialOf(t, p, player, club)
				r := on.kin
				check := on.check(p.Margin)
				if (check.Contact != nil) != (check.Verdict == Strikes) || (check.ContactTypical != nil) != (check.Typical < 0) {
					t.Fatalf("%s: contacts %v and %v with verdict %s, typical clearance %.3f", player.Name, check.Contact, check.ContactTypical, check.Verdict, check.Typical)
				}
				if check.Contact == nil {
					continue
				}
				struckSome = true
				everybody := []*swing.Swing{}
				for _, m := range r.All() {
					everybody = append(everybody, m.Swing)
				}
				holdContact(t, player.Name, on, check.Contact, everybody)
				if check.ContactTypical != nil {
					holdContact(t, player.Name+" (typical)", on, check.ContactTypical, []*swing.Swing{r.Central.Swing})
					if check.ContactTypical.Variation != (swing.Variation{}) {
						t.Errorf("%s: the typical swing is %v", player.Name, check.ContactTypical.Variation)
					}
				}
			}
			if !struckSome {
				t.Error("nothing is struck: the case shows nothing")
			}
		})
	}
}

func holdContact(t *testing.T, who string, on trial, c *Contact, all []*swing.Swing) {
	t.Helper()
	for _, s := range all {
		if at, ok := deeperThan(s, on.local, sweep.Tolerance, c.Time); ok {
			t.Errorf("%s: first touch at %.5f s, but somebody is %g past a surface at %.5f s", who, c.Time, sweep.Tolerance, at)
		}
	}
	s, err := on.kin.Family.Member(c.Variation)
	if err != nil {
		t.Fatal(err)
	}
	pose := s.PoseAt(c.Time)
	for part := range swing.NumParts {
		if part.String() != c.Part {
			continue
		}
		for i, surface := range on.local {
			if on.surfaces[i].Name != c.Surface {
				continue
			}
			if d := distance(&pose, part, surface); d > sweep.Tolerance || d < -sweep.Tolerance && c.Time > 0 {
				t.Errorf("%s: at the first touch the %s is %.4f m from the %s", who, c.Part, d, c.Surface)
			}
			at := geom.Vec{X: c.At[0], Y: c.At[1], Z: c.At[2]}
			off := 0.0
			if surface.Kind.Flat() {
				off = on.surfaces[i].Plane.PointDistance(at)
			} else {
				off = max(on.surfaces[i].Box.PointDistance(at), 0)
			}
			if math.Abs(off) > 1e-9 {
				t.Errorf("%s: the touch lies %g m off the %s", who, off, c.Surface)
			}
			// No place of a part moves faster than the faster of its ends, nor a
			// clubhead much slower.
			const h = 1e-5
			a, b := s.PoseAt(c.Time - h)[part], s.PoseAt(c.Time + h)[part]
			fast := max(geom.Norm(r3.Sub(b.A, a.A)), geom.Norm(r3.Sub(b.B, a.B))) / (2 * h)
			if c.Speed > 1.001*fast || part == swing.Clubhead && c.Speed < 0.8*fast {
				t.Errorf("%s: the %s touches at %.3f m/s, its ends move at up to %.3f", who, c.Part, c.Speed, fast)
			}
		}
	}
	if got, want := c.AfterImpact, c.Time-s.ImpactTime(); got != want {
		t.Errorf("%s: %.5f s after impact, want %.5f", who, got, want)
	}
}

// TestGrazing: where a clearance is negative only by the caution in it, nobody
// followed closely may touch; the touch is then where the check says it is tightest.
func TestGrazing(t *testing.T) {
	p := demoIn(12, 10, 6).WithDefaults()
	player := p.Players[0]
	on := trialOf(t, p, player, p.Clubs[0])
	least, _, _ := on.kin.Reach(geom.Vec{Z: -1})
	p.Room.Height = on.place.Ball.Z - least - 1e-7
	on.surfaces = sweep.Surfaces(p)
	on.local = on.place.Surfaces(on.surfaces)
	c := on.check(p.Margin)
	if c.Verdict != Strikes || c.Contact == nil {
		t.Fatalf("verdict %s with contact %v, want a strike by a hair", c.Verdict, c.Contact)
	}
	if d := math.Abs(c.Contact.Time - c.Nearest.Time); c.Contact.Surface != "ceiling" || d > 0.01 {
		t.Errorf("first touch with the %s at %.4f s, want the ceiling about %.4f s", c.Contact.Surface, c.Contact.Time, c.Nearest.Time)
	}
}
