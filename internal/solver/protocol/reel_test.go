package protocol

import (
	"bytes"
	"encoding/json"
	"fmt"
	"hash/fnv"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wideberth/internal/sim/family"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// planFile reads a plan that all tests share.
func planFile(t testing.TB, name string) plan.Plan {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("../../../testdata/plans", name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	c, err := plan.Parse(data)
	if err != nil {
		t.Fatal(err)
	}
	return c.Plan()
}

func reelRequest(p plan.Plan, f Focus) []byte {
	return bytes.Replace(solveRequest(p, f), []byte(`"solve"`), []byte(`"reel"`), 1)
}

// reelled asks for the reel of a plan, and for the check that it is of.
func reelled(t testing.TB, p plan.Plan, f Focus) (reelAnswer, fit.Check) {
	t.Helper()
	var s Solver
	var reel reelAnswer
	if err := json.Unmarshal(s.Handle(reelRequest(p, f)), &reel); err != nil {
		t.Fatal(err)
	}
	var solved struct{ Report fit.Report }
	if err := json.Unmarshal(s.Handle(solveRequest(p, f)), &solved); err != nil {
		t.Fatal(err)
	}
	for _, c := range solved.Report.Checks {
		if (Focus{c.Player, c.Club, c.Tee}) == reel.Focus {
			return reel, c
		}
	}
	t.Fatalf("the reel is of %v, which the report has not got", reel.Focus)
	return reelAnswer{}, fit.Check{}
}

// reelPlans are rooms in which all is clear, tight, struck, and a left-hander's.
func reelPlans(t testing.TB) map[string]plan.Plan {
	plans := map[string]plan.Plan{"demo": plan.Demo()}
	for _, name := range []string{"clear-room", "low-ceiling", "backswing", "narrow", "left-hander"} {
		plans[name] = planFile(t, name)
	}
	return plans
}

// ends returns where a part's ends are in each frame.
func (a *reelAnswer) ends(part int) (out []geom.Capsule) {
	width := 6 * len(a.Parts)
	sum := make([]int, width)
	for k := 0; k+width <= len(a.Motion); k += width {
		for i := range sum {
			sum[i] += a.Motion[k+i]
		}
		at := func(i int) float64 { return float64(sum[6*part+i]) / 1000 }
		out = append(out, geom.Capsule{
			A: geom.Vec{X: at(0), Y: at(1), Z: at(2)}, B: geom.Vec{X: at(3), Y: at(4), Z: at(5)}, R: a.Parts[part].R,
		})
	}
	return out
}

// The frames are the poses of the swing that decides the check, to the millimetre.
func TestReelFollowsTheSwing(t *testing.T) {
	for name, p := range reelPlans(t) {
		t.Run(name, func(t *testing.T) {
			reel, c := reelled(t, p, Focus{})
			who, err := castOf(p, c)
			if err != nil {
				t.Fatal(err)
			}
			s, err := family.SwingOf(who.player, who.club, c.Nearest.Variation)
			if err != nil {
				t.Fatal(err)
			}
			place := sweep.Place(p, who.tee, who.player)
			frames := int(math.Ceil(s.Duration()*reel.Rate)) + 1
			if len(reel.Said) != frames || len(reel.Parts) != int(swing.NumParts) || len(reel.Motion) != frames*6*int(swing.NumParts) {
				t.Fatalf("%d lines, %d parts and %d numbers, want those of %d frames", len(reel.Said), len(reel.Parts), len(reel.Motion), frames)
			}
			for part := range reel.Parts {
				for k, got := range reel.ends(part) {
					want := place.Capsule(s.PoseAt(min(float64(k)/reel.Rate, s.Duration()))[part])
					for _, d := range []float64{got.A.X - want.A.X, got.A.Y - want.A.Y, got.A.Z - want.A.Z, got.B.X - want.B.X, got.B.Y - want.B.Y, got.B.Z - want.B.Z, got.R - want.R} {
						if math.Abs(d) > 0.00051 {
							t.Fatalf("frame %d: the %s is at %v, want %v", k, reel.Parts[part].Name, got, want)
						}
					}
				}
			}
		})
	}
}

// Phases follow each other without a gap from address to the end.
func TestReelPhases(t *testing.T) {
	reel, _ := reelled(t, plan.Demo(), Focus{})
	at := 0.0
	for _, p := range reel.Phases {
		if p.Start != at || p.End <= p.Start {
			t.Errorf("%s goes from %g to %g s, want it to begin at %g", p.Name, p.Start, p.End, at)
		}
		at = p.End
	}
	if at != reel.Duration || len(reel.Phases) != len(swing.Phases()) {
		t.Errorf("%d phases end at %g s, want %d and %g", len(reel.Phases), at, len(swing.Phases()), reel.Duration)
	}
}

// What is said at the tightest moment is the report's own clearance; the moments
// hold it where it is not clear, and the first touch of the family.
func TestReelAgreesWithTheReport(t *testing.T) {
	for name, p := range reelPlans(t) {
		t.Run(name, func(t *testing.T) {
			reel, c := reelled(t, p, Focus{})
			said := reel.Texts[reel.Said[int(math.Round(c.Nearest.Time*reel.Rate))]]
			label := strings.TrimPrefix(strings.Split(tapeLabel(c.Clearance, p.Units), " · ")[0], "−")
			for _, part := range []string{c.Nearest.Part, label, c.Nearest.Surface} {
				if !strings.Contains(said, part) {
					t.Errorf("at the tightest moment it says %q, want %q in it", said, part)
				}
			}
			covers := func(at float64, surface string) bool {
				for _, m := range reel.Moments {
					if m.Surface == surface && m.Verdict == c.Verdict && m.Start <= at && at <= m.End {
						return true
					}
				}
				return false
			}
			if got := covers(c.Nearest.Time, c.Nearest.Surface); got != (c.Verdict != fit.Clear) {
				t.Errorf("%s at %s, %g s: among %v: %t", c.Verdict, c.Nearest.Surface, c.Nearest.Time, reel.Moments, got)
			}
			if c.Contact == nil {
				if reel.First != nil {
					t.Errorf("a first touch at %g s, and the report has none", *reel.First)
				}
				return
			}
			if reel.First == nil || *reel.First != c.Contact.Time || !covers(c.Contact.Time, c.Contact.Surface) {
				t.Errorf("the first touch, %s at %g s, is not among %v", c.Contact.Surface, c.Contact.Time, reel.Moments)
			}
		})
	}
}

// The ball lies where the tee is until impact, and comes to the screen.
func TestReelBall(t *testing.T) {
	p := plan.Demo()
	reel, c := reelled(t, p, Focus{})
	tee, _ := p.Tee(c.Tee)
	if len(reel.Ball)%4 != 0 || len(reel.Ball) < 8 || reel.Ball[0] != 0 || reel.Ball[1] != millimetres(tee.X) || reel.Ball[2] != millimetres(tee.Y) {
		t.Fatalf("the ball goes %v, want it to start on the tee at %g, %g", reel.Ball, tee.X, tee.Y)
	}
	farthest, last, back := 0, 0, false
	for i := 0; i < len(reel.Ball); i += 4 {
		if reel.Ball[i] < last {
			t.Errorf("the ball's times go back at %d", i)
		}
		last = reel.Ball[i]
		back = back || reel.Ball[i+1] < farthest
		if !back { // it may come forward again off the back wall
			farthest = reel.Ball[i+1]
		}
	}
	if d := p.Screen.X*1000 - float64(farthest); d < 0 || d > 60 {
		t.Errorf("the ball comes to x = %d mm, want it at the screen at %g m", farthest, p.Screen.X)
	}
	if float64(last)/1000 > reel.Duration-reel.Impact {
		t.Errorf("the ball flies until %d ms after impact, the swing only for %g s", last, reel.Duration-reel.Impact)
	}
}

// A reel is small enough to be asked for with every edit.
func TestReelIsSmall(t *testing.T) {
	var s Solver
	if n := len(s.Handle(reelRequest(plan.Demo(), Focus{}))); n > 400_000 {
		t.Errorf("a reel of %d bytes, want at most 400,000", n)
	}
}

// TestGoldenReel holds the reel of the demo to the byte, the frames by their sum.
func TestGoldenReel(t *testing.T) {
	reel, _ := reelled(t, plan.Demo(), Focus{})
	sum := fnv.New64a()
	for _, n := range reel.Motion {
		fmt.Fprintln(sum, n)
	}
	reel.Motion = reel.Motion[:6*len(reel.Parts)]
	compact, err := json.Marshal(reel)
	if err != nil {
		t.Fatal(err)
	}
	var pretty bytes.Buffer
	if err := json.Indent(&pretty, compact, "", " "); err != nil {
		t.Fatal(err)
	}
	fmt.Fprintf(&pretty, "\n%x\n", sum.Sum64())
	const file = "testdata/reel-demo.txt"
	if *update {
		if err := os.WriteFile(file, pretty.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(pretty.Bytes(), want) {
		t.Errorf("the reel differs from %s (go test ./internal/solver/protocol -run Golden -update rewrites it)", file)
	}
}
