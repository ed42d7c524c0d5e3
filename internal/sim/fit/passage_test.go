package fit

import (
	"math"
	"testing"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// TestPass holds a passage against its swing followed in small steps: no frame
// says there is more room than there is, and every frame in which something is
// tight or struck lies in a moment of that surface.
func TestPass(t *testing.T) {
	const rate, fine = 120, 8 // frames a second, looks at a frame
	post := demoIn(9, 8, 4)
	post.Room.Solids = []plan.Solid{{Name: "post", Min: [3]float64{4.1, 4.9, 0}, Max: [3]float64{4.2, 5.0, 4}}}
	for _, c := range []struct {
		name string
		plan plan.Plan
		want Verdict
	}{
		{"the loft", plantest.Loft(), Strikes}, {"tight", demoIn(6, 4.55, 3.1), Tight}, {"a wide hall", demoIn(12, 10, 6), Clear}, {"a thin post", post, Strikes},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := c.plan.WithDefaults()
			on := trialOf(t, p, p.Players[0], p.ClubsOf(p.Players[0])[0])
			check := on.check(p.Margin)
			if check.Verdict != c.want {
				t.Fatalf("the case is %s by %.3f m at the %s, want %s", check.Verdict, check.Clearance, check.Nearest.Surface, c.want)
			}
			s, err := on.kin.Family.Member(check.Nearest.Variation)
			if err != nil {
				t.Fatal(err)
			}
			pass := Pass(s, on.place, on.surfaces, check, p.Margin, rate)
			if want := int(math.Ceil(s.Duration()*rate)) + 1; len(pass.Frames) != want {
				t.Fatalf("%d frames, want %d", len(pass.Frames), want)
			}
			for k, f := range pass.Frames {
				for n := -fine / 2; n <= fine/2; n++ {
					at := (float64(k) + float64(n)/fine) / rate
					if at < 0 || at > s.Duration() {
						continue
					}
					for i := range on.local {
						held(t, s, &on, pass, p.Margin, i, k, at, f)
					}
				}
				if f.Clearance < check.Clearance {
					t.Errorf("frame %d: %.4f m, less than the check's %.4f", k, f.Clearance, check.Clearance)
				}
			}
			if got := pass.Frames[int(math.Round(check.Nearest.Time*rate))]; got.Clearance != check.Clearance || got.Surface != check.Nearest.Surface {
				t.Errorf("at the tightest moment %v, want %g from %s", got, check.Clearance, check.Nearest.Surface)
			}
			for i, m := range pass.Moments {
				if m.Time < m.Start-1e-9 || m.Time > m.End+1e-9 || m.Verdict == Clear || m.Part == "" || i > 0 && m.Start < pass.Moments[i-1].Start {
					t.Errorf("moment %d is %+v", i, m)
				}
			}
			if (len(pass.Moments) == 0) != (c.want == Clear) {
				t.Errorf("moments %v of a check that %s", pass.Moments, c.want)
			}
		})
	}
}

// held looks at one surface at one time within frame k.
func held(t *testing.T, s *swing.Swing, on *trial, pass Passage, margin float64, i, k int, at float64, f Passing) {
	t.Helper()
	pose, least := s.PoseAt(at), math.Inf(1)
	for part := range swing.NumParts {
		least = min(least, distance(&pose, part, on.local[i]))
	}
	if f.Clearance > least+sweep.Tolerance {
		t.Errorf("frame %d says %.4f m, but the %s is %.4f m away at %.4f s", k, f.Clearance, on.surfaces[i].Name, least, at)
	}
	if least >= margin {
		return
	}
	strikes := false
	for _, m := range pass.Moments {
		if m.Surface != on.surfaces[i].Name {
			continue
		}
		if m.Start-1e-9 <= at && at <= m.End+1e-9 {
			return
		}
		strikes = strikes || m.Verdict == Strikes
	}
	// Where a surface is struck, what is only tight there is no moment.
	if !strikes || least < 0 {
		t.Errorf("%.4f m from the %s at %.4f s is in none of %+v", least, on.surfaces[i].Name, at, pass.Moments)
	}
}

// TestRun: a stretch that is over leaves nothing to the next one at the same surface.
func TestRun(t *testing.T) {
	const rate, margin = 10, 0.15
	frames := []float64{0.3, 0.1, 0.12, 0.3, 0.14, -0.01, 0.1, 0.3, 0.13, 0.3} // clearances, m
	var open run
	var got []Moment
	for k, v := range frames {
		at := sweep.Contact{Clearance: v, Time: float64(k) / rate, Part: swing.Clubhead}
		got = open.add(got, "wall", float64(k)/rate, rate, at, margin)
	}
	want := []struct {
		start, end, time float64 // frames
		verdict          Verdict
	}{{1, 2, 1, Tight}, {5, 5, 5, Strikes}, {8, 8, 8, Tight}}
	if len(got) != len(want) {
		t.Fatalf("%d moments, want %d: %+v", len(got), len(want), got)
	}
	for i, w := range want {
		m := got[i]
		same := func(a, frame float64) bool { return math.Abs(a-frame/rate) < 1e-9 }
		if !same(m.Start, w.start-0.5) || !same(m.End, w.end+0.5) || !same(m.Time, w.time) || m.Verdict != w.verdict || m.Part != "clubhead" {
			t.Errorf("moment %d is %+v, want %+v in frames", i, m, w)
		}
	}
}
