package enclosure

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

// wildWedge is one pair whose balls ask something of sides and top.
func wildWedge() (plan.Plan, []ball.Pair) {
	p := plantest.Loft().WithDefaults()
	p.Players = p.Players[:1]
	p.Players[0].Skill = plan.SkillWild
	p.Clubs = p.Clubs[2:]
	p.Screen.Width, p.Screen.Height = 1.2, 1.8
	p.Tees[0].X = 3.3 // clear of the beam
	p.Hung = nil
	return p, ball.Pairs(p, nil)
}

// count builds the returns at given depths and counts the balls they let by,
// through Spread and its real cloth rather than the planes of For.
func count(p plan.Plan, side, top float64, n int) (caught int) {
	p.Screen.SideReturn, p.Screen.TopReturn = side, top
	o := ball.Spread(p, p.Players[0], p.Clubs[0], p.Tees[0], 0, n)
	return int(math.Round(o.Caught.Share * float64(n)))
}

func TestEnclosureDepthsCatch(t *testing.T) {
	const n, rate = 400, 0.95
	p, pairs := wildWedge()
	e, err := For(p, pairs, rate, n)
	if err != nil {
		t.Fatal(err)
	}
	if e.Side.Depth <= 0 || e.Top.Depth <= 0 || e.Side.All < e.Side.Depth || e.Top.All < e.Top.Depth {
		t.Fatalf("needs %+v and %+v, want positive depths", e.Side, e.Top)
	}
	lost := 0
	for _, l := range e.Lost {
		lost += int(math.Round(l.Share * n))
	}
	if got := count(p, e.Side.All+1e-9, e.Top.All+1e-9, n); got != n-lost {
		t.Errorf("with returns of %.3f and %.3f m, %d of %d balls are caught, want all but the %d lost", e.Side.All, e.Top.All, got, n, lost)
	}
	if got := count(p, e.Side.Depth+1e-9, e.Top.Depth+1e-9, n); float64(got) < rate*n-float64(lost) {
		t.Errorf("with returns of %.3f and %.3f m, %d of %d balls are caught, want %g", e.Side.Depth, e.Top.Depth, got, n, rate*n)
	}
	// A return that is too short by a ball's width lets the worst one by.
	if got := count(p, e.Side.All-2.1*ball.Radius, e.Top.All+1e-9, n); got >= n-lost {
		t.Errorf("side returns short by %.3f m still catch all %d", 2.1*ball.Radius, got)
	}
	if got := count(p, e.Side.All+1e-9, e.Top.All-2.1*ball.Radius, n); got >= n-lost {
		t.Errorf("a top return short by %.3f m still catches all %d", 2.1*ball.Radius, got)
	}
}

func TestCurveFallsToNothing(t *testing.T) {
	p, pairs := wildWedge()
	e, err := For(p, pairs, 0.9, 300)
	if err != nil {
		t.Fatal(err)
	}
	for i := 1; i < len(e.Curve); i++ {
		a, b := e.Curve[i-1], e.Curve[i]
		if b.Depth <= a.Depth || b.Side > a.Side || b.Top > a.Top || b.SideWorst > a.SideWorst || b.TopWorst > a.TopWorst {
			t.Errorf("curve rises from %+v to %+v", a, b)
		}
	}
	first, last := e.Curve[0], e.Curve[len(e.Curve)-1]
	if first.Side == 0 || first.Top == 0 || last.SideWorst != 0 || last.TopWorst != 0 {
		t.Errorf("curve runs from %+v to %+v, want from some missed to none", first, last)
	}
}

func TestHighestLaunchIsTheLast(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	pairs := ball.Pairs(p, nil)
	e, err := For(p, pairs, 0.9, 16)
	if err != nil {
		t.Fatal(err)
	}
	for i, h := range e.Launch {
		at := func(deg float64) ball.Contact {
			l := pairs[i].Launch()
			l.Elevation = deg * degree
			return ball.First(p, pairs[i].Tee, l)
		}
		if c := at(h.Screen); c.Kind != ball.KindScreen {
			t.Errorf("%s, %s: %.3f° meets %s, want the screen", h.Player, h.Club, h.Screen, c.Surface)
		}
		if c := at(h.Screen + 0.01); c.Kind == ball.KindScreen || c.Surface != h.Next {
			t.Errorf("%s, %s: %.3f° meets %s, want %s", h.Player, h.Club, h.Screen+0.01, c.Surface, h.Next)
		}
		if c := at(h.Caught); !c.Caught {
			t.Errorf("%s, %s: %.3f° meets %s, want cloth", h.Player, h.Club, h.Caught, c.Surface)
		}
		// The straight ray over the top edge is right to a degree or so.
		ray := math.Atan((p.Screen.Bottom+p.Screen.Height-p.Floor.Standing()-2*ball.Radius)/(p.Screen.X-p.Tees[0].X)) / degree
		if math.Abs(h.Screen-ray) > 1.5 {
			t.Errorf("%s, %s: highest launch %.2f°, far from the straight ray's %.2f°", h.Player, h.Club, h.Screen, ray)
		}
	}
}

func TestBottomOfTheScreen(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	e, err := For(p, ball.Pairs(p, nil), 1, 256)
	if err != nil {
		t.Fatal(err)
	}
	if want := 0.04 + ball.Diameter; math.Abs(e.Bottom.Rolling-want) > 1e-12 {
		t.Errorf("bottom against rolling = %.4f, want floor and a ball, %.4f", e.Bottom.Rolling, want)
	}
	under := func(bottom float64) (k int) {
		p.Screen.Bottom, p.Screen.Height = bottom, 2.05-bottom
		for _, q := range ball.Pairs(p, nil) {
			for _, s := range ball.Spread(p, q.Player, q.Club, q.Tee, 0, 256).Shares {
				if s.Beside == "under" {
					k += s.Count
				}
			}
		}
		return k
	}
	if k := under(*e.Bottom.Flying - 1e-6); k != 0 {
		t.Errorf("%d balls pass under a screen at the height that catches all", k)
	}
	if k := under(*e.Bottom.Flying + 2*ball.Radius + 0.01); k == 0 {
		t.Error("no ball passes under a screen a ball's width higher")
	}
}

func TestStandOff(t *testing.T) {
	for _, c := range []struct {
		x, speed float64
		want     fit.Verdict
	}{{6.00, 62, fit.Clear}, {6.15, 62, fit.Tight}, {6.25, 62, fit.Strikes}, {6.04, 80, fit.Tight}} {
		p := plantest.Loft().WithDefaults()
		p.Screen.X, p.Clubs[0].Ball.Speed = c.x, c.speed
		if got := standOff(p, ball.Pairs(p, nil)); got.Verdict != c.want {
			t.Errorf("screen at %g m, ball at %g m/s: %+v, want %s", c.x, c.speed, got, c.want)
		}
	}
}

func TestMishitsAreNotForgotten(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	e, err := For(p, ball.Pairs(p, nil), 0.98, 64)
	if err != nil {
		t.Fatal(err)
	}
	deepest, skied := 0.0, 0
	for _, m := range e.Miss {
		if strings.HasPrefix(m.Name, "hosel") && m.Meets == "side return" {
			deepest = max(deepest, m.Depth)
		}
		if m.Name == "skied" && m.Meets == "top return" && m.Depth > p.Screen.TopReturn {
			skied++
		}
	}
	// 60° from 1.78 m beside the edge: most of the way back to the tee.
	if want := p.Screen.X - p.Tees[0].X - (p.Screen.Width/2-ball.Radius)/math.Tan(60*degree); math.Abs(deepest-want-ball.Radius) > 0.05 {
		t.Errorf("the widest hosel shot asks %.2f m of side return, want about %.2f", deepest, want+ball.Radius)
	}
	if skied == 0 {
		t.Error("no skied ball asks more top return than the demo's 0.9 m")
	}
}

func TestErrors(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	bare := p
	bare.Screen = nil
	for _, c := range []struct {
		name  string
		plan  plan.Plan
		rate  float64
		pairs []ball.Pair
		want  string
	}{
		{"no screen", bare, 0.9, ball.Pairs(p, nil), "screen"},
		{"rate too low", p, 0.2, ball.Pairs(p, nil), "0.5–1"},
		{"rate is no number", p, math.NaN(), ball.Pairs(p, nil), "0.5–1"},
		{"nobody plays", p, 0.9, nil, "pairs"},
	} {
		if _, err := For(c.plan, c.pairs, c.rate, 8); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: err = %v, want one that names %q", c.name, err, c.want)
		}
	}
}

func ExampleFor() {
	p := plantest.Loft().WithDefaults()
	e, err := For(p, ball.Pairs(p, nil), 0.98, 512)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("top return: %.2f m for the %s of %s\n", e.Top.Depth, e.Top.Club, e.Top.Player)
	fmt.Printf("wedge: up to %.1f° meets the screen, %.1f° more than its own\n", e.Launch[2].Screen, e.Launch[2].Spare)
	// Output:
	// top return: 0.25 m for the pitching wedge of Host
	// wedge: up to 32.5° meets the screen, 6.5° more than its own
}

func BenchmarkForDemo(b *testing.B) {
	p := plantest.Loft().WithDefaults()
	pairs := ball.Pairs(p, nil)
	for b.Loop() {
		if _, err := For(p, pairs, 0.98, 512); err != nil {
			b.Fatal(err)
		}
	}
}
