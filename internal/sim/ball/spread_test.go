package ball

import (
	"fmt"
	"math"
	"testing"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

func TestSpreadAddsUp(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	wild := p.Players[0]
	wild.Skill = plan.SkillWild
	p.Screen.Width, p.Screen.TopReturn = 2.0, 0.3
	const n = 512
	o := Spread(p, wild, p.Clubs[2], p.Tees[0], 0, n)
	total, share, onScreen, heat := 0, 0.0, 0, 0
	for _, s := range o.Shares {
		total += s.Count
		share += s.Share
		if s.Kind == KindScreen {
			onScreen = s.Count
		}
		if !(s.Estimate.Low <= s.Share && s.Share <= s.Estimate.High) || math.Abs(s.OneIn*s.Share-1) > 1e-12 {
			t.Errorf("%s: share %g, interval %g–%g, one in %g do not agree", s.Surface, s.Share, s.Estimate.Low, s.Estimate.High, s.OneIn)
		}
		for j := range 3 {
			if s.From[j] > s.To[j] {
				t.Errorf("%s: box from %v to %v", s.Surface, s.From, s.To)
			}
		}
	}
	for _, k := range o.Heat.Counts {
		heat += k
	}
	if total != n || math.Abs(share-1) > 1e-12 || heat != onScreen || onScreen == 0 || len(o.Shares) < 4 {
		t.Errorf("counts add up to %d, shares to %g, heat to %d; want %d, 1 and the screen's %d; surfaces %d", total, share, heat, n, onScreen, len(o.Shares))
	}
}

// The share on the screen against the normal distribution: a straight line from
// the tee, side to side only.
func TestSpreadAgainstNormalDistribution(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	p.Screen.Width, p.Screen.SideReturn, p.Screen.TopReturn = 0.6, 0, 0
	o := Spread(p, p.Players[0], p.Clubs[0], p.Tees[0], 0, 2048)
	reach := math.Atan(0.3 / (p.Screen.X - Radius - p.Tees[0].X))
	// The ball's edge may meet the cloth outside its centre, but then the tube
	// beside the cloth is as near: the middle of the ball decides.
	want := math.Erf(reach / SkillOf(p.Players[0]).Direction / math.Sqrt2)
	got := 0.0
	for _, s := range o.Shares {
		if s.Kind == KindScreen {
			got = s.Share
		}
	}
	const tol = 0.012 // lift and drag move a ball little; sampling error of 2048 even points
	if math.Abs(got-want) > tol {
		t.Errorf("share on the screen = %.4f, want %.4f (tol %g)", got, want, tol)
	}
}

// A room that is its own mirror image treats the hands as mirror images.
func TestSpreadMirrors(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	p.Room.Slopes, p.Hung = nil, nil
	right, left := p.Players[0], p.Players[0]
	left.Hand = plan.HandLeft
	a := Spread(p, right, p.Clubs[1], p.Tees[0], 0, 32)
	b := Spread(p, left, p.Clubs[1], p.Tees[0], 0, 32)
	for i := range a.Misses {
		x, y := a.Misses[i].Contact.Point, b.Misses[i].Contact.Point
		if math.Abs(x[0]-y[0]) > 1e-9 || math.Abs(x[1]+y[1]-p.Room.Width) > 1e-9 || math.Abs(x[2]-y[2]) > 1e-9 {
			t.Errorf("%s: %v for a right-hander and %v for a left-hander, want mirror images", a.Misses[i].Name, x, y)
		}
	}
}

func TestEstimate(t *testing.T) {
	for _, c := range []struct{ k, n, low, high float64 }{
		{0, 10, 0, 0.2775}, {5, 10, 0.2366, 0.7634}, {10, 10, 0.7225, 1}, {1, 40, 0.0044, 0.1288},
	} {
		got := estimate(int(c.k), int(c.n))
		if math.Abs(got.Low-c.low) > 1e-3 || math.Abs(got.High-c.high) > 1e-3 || got.Share != c.k/c.n {
			t.Errorf("estimate(%g of %g) = %+v, want %.4f–%.4f", c.k, c.n, got, c.low, c.high)
		}
	}
}

func TestFan(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	rays := Fan(p, p.Tees[0], p.Clubs[0], 0)
	if len(rays) != 13 || !rays[12].Own || math.Abs(rays[12].Launch-12.5) > 1e-9 {
		t.Fatalf("%d rays, the last %+v; want 12 and the club's own", len(rays), rays[len(rays)-1].Launch)
	}
	tee := geomOf(p)
	for _, r := range rays {
		first, last := r.Points[0], r.Points[len(r.Points)-1]
		if first != tee {
			t.Errorf("%g°: starts at %v, want %v", r.Launch, first, tee)
		}
		d := math.Hypot(math.Hypot(last[0]-r.End.Point[0], last[1]-r.End.Point[1]), last[2]-r.End.Point[2])
		if math.Abs(d-Radius) > 1e-6 {
			t.Errorf("%g°: ends %.6f m from its contact, want the ball's radius", r.Launch, d)
		}
		rise := math.Atan2(r.Points[1][2]-first[2], r.Points[1][0]-first[0]) / degree
		if math.Abs(rise-r.Launch) > 0.3 {
			t.Errorf("%g°: sets off at %.2f°", r.Launch, rise)
		}
	}
}

func geomOf(p plan.Plan) [3]float64 {
	at := FromClub(p.Clubs[0], 0).At(p, p.Tees[0]).From
	return [3]float64{at.X, at.Y, at.Z}
}

func ExampleSpread() {
	p := plantest.Loft().WithDefaults()
	p.Screen.TopReturn = 0.3
	o := Spread(p, p.Players[0], plan.DefaultClub(plan.KindWedge, "lob wedge"), p.Tees[0], 0, 512)
	for _, s := range o.Shares {
		if s.Kind == KindCeiling {
			fmt.Printf("1 ball in %.0f with the %s meets the %s %.2f m before the screen\n", s.OneIn, o.Club, s.Surface, s.Short)
		}
	}
	// Output: 1 ball in 57 with the lob wedge meets the ceiling 0.12 m before the screen
}

func BenchmarkSpread512(b *testing.B) {
	p := plantest.Loft().WithDefaults()
	for b.Loop() {
		Spread(p, p.Players[1], p.Clubs[2], p.Tees[0], 0, 512)
	}
}
