package protocol

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/ball/enclosure"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/solver/words"
	"wideberth/internal/units"
)

// toldBalls answers in millimetres about a plan with a screen of known depths.
func toldBalls() *balls {
	return &balls{
		Words: words.Words{Units: units.Metric, Margin: 0.15}, rate: 0.99,
		plan: plan.Plan{Screen: &plan.Screen{Bottom: 0.0509, SideReturn: 0.4009, TopReturn: 0.3}},
	}
}

func said(t *testing.T, name, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("%s\n got %s\nwant %s", name, got, want)
	}
}

func TestMeetingSaid(t *testing.T) {
	b, bare := toldBalls(), toldBalls()
	bare.plan.Screen = nil
	at := [3]float64{0, 0, 1.2344}
	for _, c := range []struct {
		name string
		b    *balls
		c    ball.Contact
		want string
	}{
		{"nothing", b, ball.Contact{Kind: ball.KindNone}, "meets nothing within the time that was followed"},
		{"the screen", b, ball.Contact{Surface: "screen", Kind: ball.KindScreen, Caught: true, Point: at, Speed: 40.1}, "meets the screen 1.234 m above the bare floor, at 41 m/s"},
		{"the screen from behind", b, ball.Contact{Surface: "screen", Kind: ball.KindScreen, Point: at, Speed: 40.1}, "meets the screen, at 41 m/s"},
		{"past it", b, ball.Contact{Surface: "front wall", Kind: ball.KindGap, Beside: "left of", Speed: 40}, "passes left of the screen and meets the front wall behind it, at 40 m/s"},
		{"in behind it", b, ball.Contact{Surface: "front wall", Kind: ball.KindGap, Beside: "behind", Speed: 40}, "gets in behind the screen and meets the front wall behind it, at 40 m/s"},
		{"a return", b, ball.Contact{Surface: "left return", Kind: ball.KindSideReturn, Caught: true, Speed: 40}, "is caught by the screen's left return, at 40 m/s"},
		{"a return from outside", b, ball.Contact{Surface: "top return", Kind: ball.KindTopReturn, Speed: 40}, "meets the screen's top return from outside, at 40 m/s"},
		{"the ceiling", b, ball.Contact{Surface: "ceiling", Kind: ball.KindCeiling, Short: 0.3501, Speed: 40}, "meets the ceiling 351 mm before the screen, at 40 m/s"},
		{"behind the screen's plane", b, ball.Contact{Surface: "ceiling", Kind: ball.KindCeiling, Short: -0.1, Speed: 40}, "meets the ceiling, at 40 m/s"},
		{"without a screen", bare, ball.Contact{Surface: "ceiling", Kind: ball.KindCeiling, Short: 0.35, Speed: 40}, "meets the ceiling, at 40 m/s"},
	} {
		said(t, c.name, c.b.meeting(c.c), c.want)
	}
}

func TestCaughtSaid(t *testing.T) {
	b, bare := toldBalls(), toldBalls()
	bare.plan.Screen = nil
	o := func(share, low, high float64) ball.Outcome {
		return ball.Outcome{Player: "Ann", Club: "driver", Tee: "middle", Balls: 1000, Caught: ball.Estimate{Share: share, Low: low, High: high},
			Struck: ball.Rebound{Contact: ball.Contact{Kind: ball.KindNone}}}
	}
	said(t, "all", b.caught(o(1, 0.9969, 1)), "Screen and returns caught all 1,000 ordinary balls that were flown; of all such balls it may be as few as 99.6 %.")
	said(t, "none", b.caught(o(0, 0, 0.004)), "Screen and returns caught none of 1,000 ordinary balls that were flown.")
	said(t, "some", b.caught(o(0.9629, 0.9519, 0.9719)), "Screen and returns catch 96.2 % of ordinary balls (95 % interval 95.1 % to 97.1 %, of 1,000 flown).")
	said(t, "no screen", bare.caught(o(1, 1, 1)), "The plan has no screen to catch it.")
	said(t, "summary", b.summary(o(0, 0, 0)), "Ann, driver, middle tee: a well-struck ball meets nothing within the time that was followed. Screen and returns caught none of 1,000 ordinary balls that were flown.")
	said(t, "a tee that says so", swing3("Ann", "driver", "Left Tee"), "Ann, driver, Left Tee")
}

func TestSharesSaid(t *testing.T) {
	b := toldBalls()
	few := ball.Estimate{Share: 0.02512, Low: 0.0199, High: 0.0301}
	most := ball.Estimate{Share: 0.7, Low: 0.68, High: 0.72}
	for _, c := range []struct {
		name   string
		s      ball.Share
		caught bool
		want   string
	}{
		{"nothing", ball.Share{Kind: ball.KindNone, Estimate: few}, false, "1 ball in 39 with the wedge meets nothing within the time that was followed (2.5 %, 95 % interval 1.9 % to 3.1 %)."},
		{"past", ball.Share{Surface: "front wall", Kind: ball.KindGap, Beside: "over", Estimate: few}, false, "1 ball in 39 with the wedge passes over the screen and meets the front wall behind it (2.5 %, 95 % interval 1.9 % to 3.1 %)."},
		{"most past", ball.Share{Surface: "front wall", Kind: ball.KindGap, Beside: "over", Estimate: most}, false, "7 balls in 10 with the wedge pass over the screen and meet the front wall behind it (70 %, 95 % interval 68 % to 72 %)."},
		{"most behind", ball.Share{Surface: "front wall", Kind: ball.KindGap, Beside: "behind", Estimate: most}, false, "7 balls in 10 with the wedge get in behind the screen and meet the front wall behind it (70 %, 95 % interval 68 % to 72 %)."},
		{"caught", ball.Share{Surface: "screen", Kind: ball.KindScreen, Estimate: few, FarShort: 1}, true, "1 ball in 40 with the wedge meets the screen first (2.5 %, 95 % interval 1.9 % to 3.1 %)."},
		{"the ceiling", ball.Share{Surface: "ceiling", Kind: ball.KindCeiling, Estimate: few, FarShort: 0.3501}, false, "1 ball in 39 with the wedge meets the ceiling first, up to 351 mm before the screen (2.5 %, 95 % interval 1.9 % to 3.1 %)."},
		{"the ceiling, not short", ball.Share{Surface: "ceiling", Kind: ball.KindCeiling, Estimate: few}, false, "1 ball in 39 with the wedge meets the ceiling first (2.5 %, 95 % interval 1.9 % to 3.1 %)."},
	} {
		said(t, c.name, b.share(c.s, "wedge", c.caught), c.want)
	}
	// Those that are not caught are told first, the way back last.
	o := ball.Outcome{Club: "wedge", Shares: []ball.Share{
		{Surface: "screen", Kind: ball.KindScreen, Estimate: most},
		{Surface: "left return", Kind: ball.KindSideReturn, Estimate: few},
		{Surface: "ceiling", Kind: ball.KindCeiling, Estimate: few},
		{Surface: "top return", Kind: ball.KindTopReturn, Estimate: few},
	}, Struck: ball.Rebound{Contact: ball.Contact{Kind: ball.KindNone}}}
	got := b.sentences(o)
	var of []string
	for _, s := range got {
		for _, name := range []string{"ceiling", "the screen first", "left return", "top return", "No ball comes back"} {
			if strings.Contains(s, name) {
				of = append(of, name)
			}
		}
	}
	if want := []string{"ceiling", "the screen first", "left return", "top return", "No ball comes back"}; !slices.Equal(of, want) || len(got) != len(want) {
		t.Errorf("told in the order %q of %q, want %q", of, got, want)
	}
}

func TestBackSaid(t *testing.T) {
	b := toldBalls()
	past := ball.Return{Reaches: true, Speed: 6.01, Height: 1.234}
	short := ball.Return{Nearest: 0.5009}
	said(t, "past", b.back(past, "may come back"), "may come back past the golfer at up to 7 m/s, about 1.230 m up")
	said(t, "short", b.back(short, "may come back"), "comes to rest 500 mm short of the golfer")
	said(t, "at the feet", b.back(ball.Return{}, "may come back"), "comes to rest at the golfer's feet")
	said(t, "of the struck one", b.backSentence(ball.Rebound{Contact: ball.Contact{Surface: "screen", Kind: ball.KindScreen}, High: past, Likely: short}),
		"Off the screen the well-struck ball may come back past the golfer at up to 7 m/s, about 1.230 m up; likely it comes to rest 500 mm short of the golfer.")
	said(t, "of none", b.backSentence(ball.Rebound{Contact: ball.Contact{Kind: ball.KindNone}}), "No ball comes back within the time that was followed.")
	said(t, "in a table, past", b.way(past), "7 m/s at the golfer, about 1.230 m up")
	said(t, "in a table, short", b.way(short), "rests 500 mm short")
	said(t, "in a table, at the feet", b.way(ball.Return{}), "rests at the golfer's feet")

	hit := ball.MissOut{Name: "thin", Contact: ball.Contact{Surface: "ceiling", Kind: ball.KindCeiling, Speed: 20}, Back: past, Padded: &short}
	m := b.mishit(hit)
	said(t, "mishit", m.Name+": "+m.Goes+" "+m.Back, "Thin: Meets the ceiling, at 20 m/s. May come back past the golfer at up to 7 m/s, about 1.230 m up. With a foam pad there it comes to rest 500 mm short of the golfer.")
	hit.Back = short
	said(t, "mishit that does not come back", b.mishit(hit).Back, "Comes to rest 500 mm short of the golfer.")
	hit.Contact.Kind = ball.KindNone
	said(t, "mishit that meets nothing", b.mishit(hit).Back, "")
}

func TestArticle(t *testing.T) {
	said(t, "article", article("thin")+", "+article("odd"), "a thin, an odd")
}

func TestRowSaid(t *testing.T) {
	b, bare := toldBalls(), toldBalls()
	bare.plan.Screen = nil
	met := ball.Estimate{Share: 0.02512}
	o := func(c ball.Contact, caught float64, shares ...ball.Share) ball.Outcome {
		return ball.Outcome{Player: "Ann", Club: "driver", Tee: "middle", Balls: 200, Launch: ball.Leaving{Speed: 61.2, Launch: 12.46},
			Struck: ball.Rebound{Contact: c}, Caught: ball.Estimate{Share: caught}, Shares: shares}
	}
	screen := ball.Contact{Surface: "screen", Kind: ball.KindScreen, Caught: true, Short: 0.1}
	for _, c := range []struct {
		name string
		b    *balls
		o    ball.Outcome
		want ballRow
	}{
		{"all caught", b, o(screen, 1, ball.Share{Surface: "screen", Kind: ball.KindScreen, Estimate: met}, ball.Share{Kind: ball.KindNone, Estimate: met}),
			ballRow{First: "Screen", Good: true, Caught: "all 200"}},
		{"most caught", b, o(screen, 0.9759, ball.Share{Surface: "screen", Kind: ball.KindScreen}, ball.Share{Surface: "ceiling", Kind: ball.KindCeiling, Estimate: met}, ball.Share{Surface: "beam", Kind: ball.KindSolid, Estimate: met}),
			ballRow{First: "Screen", Good: true, Caught: "97.5 %", Else: "Ceiling, 1 ball in 39"}},
		{"past it", b, o(ball.Contact{Surface: "front wall", Kind: ball.KindGap, Beside: "over"}, 0.5, ball.Share{Surface: "front wall", Kind: ball.KindGap, Beside: "over", Estimate: met}),
			ballRow{First: "Passes over the screen", Caught: "50 %", Else: "Passes over the screen, 1 ball in 39"}},
		{"nothing", b, o(ball.Contact{Kind: ball.KindNone}, 0), ballRow{First: "Nothing", Caught: "0 %"}},
		{"short of it", b, o(ball.Contact{Surface: "ceiling", Kind: ball.KindCeiling, Short: 0.3501}, 0), ballRow{First: "Ceiling, 351 mm before the screen", Caught: "0 %"}},
		{"without a screen", bare, o(ball.Contact{Surface: "ceiling", Kind: ball.KindCeiling, Short: 0.35}, 0), ballRow{First: "Ceiling", Caught: "0 %"}},
		{"behind its plane", b, o(ball.Contact{Surface: "ceiling", Kind: ball.KindCeiling}, 0), ballRow{First: "Ceiling", Caught: "0 %"}},
	} {
		c.want.Player, c.want.Club, c.want.Tee, c.want.Leaves = "Ann", "driver", "middle", "62 m/s, 12.5°"
		if got := c.b.row(c.o); got != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
}

func TestPadSaid(t *testing.T) {
	b := toldBalls()
	past, slower, faster, short := ball.Return{Reaches: true, Speed: 9.01}, ball.Return{Reaches: true, Speed: 4.01}, ball.Return{Reaches: true, Speed: 10.01}, ball.Return{Nearest: 1}
	pad := func(surface string, kind ball.Kind, share float64, mishits []string, bare ball.Return, padded *ball.Return) ball.Pad {
		return ball.Pad{Surface: surface, Kind: kind, Share: share, Mishits: mishits, Fastest: 40.1, Bare: bare, Padded: padded,
			From: [3]float64{3.019, 1.011, 2.005}, To: [3]float64{3.111, 2.001, 2.5}}
	}
	const x, y, z = "3.010 m to 3.120 m from the back wall", "1.010 m to 2.010 m from the right wall", "2.000 m to 2.500 m above the bare floor"
	for _, c := range []struct {
		name string
		p    ball.Pad
		want string
	}{
		{"ceiling, both", pad("ceiling", ball.KindCeiling, 0.02512, []string{"thin", "skied"}, short, nil),
			"Pad this: the ceiling, " + x + " and " + y + ". Met by 1 ball in 39 of somebody's ordinary shots, and by these mishits: thin and skied, at up to 41 m/s."},
		{"side wall, ordinary", pad("left wall", ball.KindWall, 0.02512, nil, past, nil),
			"Pad this: the left wall, " + x + " and " + z + ". Met by 1 ball in 39 of somebody's ordinary shots, at up to 41 m/s. Bare, it may send one back past the golfer at up to 10 m/s."},
		{"front wall, mishits", pad("front wall", ball.KindWall, 0, []string{"thin"}, past, &short),
			"Pad this: the front wall, " + y + " and " + z + ". Met by these mishits: thin, at up to 41 m/s. Bare, it may send one back past the golfer at up to 10 m/s; with foam it stops short."},
		{"solid, slower with foam", pad("beam", ball.KindSolid, 0, []string{"thin"}, past, &slower),
			"Pad this: the beam, " + x + ", " + y + " and " + z + ". Met by these mishits: thin, at up to 41 m/s. Bare, it may send one back past the golfer at up to 10 m/s; with foam, 5 m/s."},
		{"right wall, faster with foam", pad("right wall", ball.KindWall, 0, []string{"thin"}, past, &faster),
			"Pad this: the right wall, " + x + " and " + z + ". Met by these mishits: thin, at up to 41 m/s. Bare, it may send one back past the golfer at up to 10 m/s; with foam it takes another way, at up to 11 m/s."},
		{"back wall", pad("back wall", ball.KindWall, 0, []string{"thin"}, short, &short),
			"Pad this: the back wall, " + y + " and " + z + ". Met by these mishits: thin, at up to 41 m/s."},
	} {
		said(t, c.name, b.pad(c.p), c.want)
	}
}

func TestEnclosureSaid(t *testing.T) {
	b := toldBalls()
	for _, c := range []struct {
		name    string
		n       enclosure.Need
		have    float64
		verdict fit.Verdict
		want    string
	}{
		{"no ball goes there", enclosure.Need{}, 0, fit.Clear, "The side returns: no ordinary ball flown goes past the screen's sides, so none is needed for them."},
		{"allowed to miss", enclosure.Need{All: 0.2501}, 0, fit.Clear, "The side returns: none needed for that; 251 mm to catch every ordinary ball flown; there is none."},
		{"enough", enclosure.Need{Depth: 0.4001, All: 0.5001, Player: "Ann", Club: "wedge", Tee: "middle"}, 0.4509, fit.Clear, "The side returns must be 401 mm deep (Ann, wedge, middle tee asks the most); the plan has 450 mm. Every ordinary ball flown would take 501 mm."},
		{"just enough", enclosure.Need{Depth: 0.4, All: 0.5}, 0.4, fit.Clear, "The side returns must be 400 mm deep; the plan has 400 mm. Every ordinary ball flown would take 500 mm."},
		{"too little", enclosure.Need{Depth: 0.4001, All: 0.5}, 0.3, fit.Strikes, "The side returns must be 401 mm deep; the plan has 300 mm, 101 mm too little. Every ordinary ball flown would take 500 mm."},
	} {
		got := b.need(c.n, c.have, "side returns", "sides")
		said(t, c.name, got.Text, c.want)
		if got.Verdict != c.verdict || got.Need != c.n.Depth || got.All != c.n.All || got.Have != c.have {
			t.Errorf("%s: %+v, want %v", c.name, got, c.verdict)
		}
	}

	lost := func(surface string, share float64) enclosure.Lost {
		return enclosure.Lost{Player: "Ann", Club: "wedge", Tee: "middle", Surface: surface, Share: share}
	}
	got := b.lost(enclosure.Enclosure{Lost: []enclosure.Lost{lost("ceiling", 0.61), lost("under the screen", 0.02512), lost("ceiling", 0.01), lost("under the return", 0.02), lost("beam", 0)}})
	want := []string{
		"Whatever the returns: 7 balls in 10 meet the ceiling before any return could catch it (Ann, wedge, middle tee, 61 %).",
		"Whatever the returns: 1 ball in 39 passes under the screen (Ann, wedge, middle tee, 2.6 %).",
		"Whatever the returns: 1 ball in 50 passes under the side return (Ann, wedge, middle tee, 2 %).",
	}
	if !slices.Equal(got, want) {
		t.Errorf("lost\n got %q\nwant %q", got, want)
	}

	flying := func(m float64) *float64 { return &m }
	const edge = "The screen's lower edge, above the bare floor: "
	said(t, "nothing flies so far", b.bottom(enclosure.Bottom{Rolling: 0.0609}), edge+"no higher than 60 mm that none rolls under; it hangs at 51 mm.")
	said(t, "low enough", b.bottom(enclosure.Bottom{Flying: flying(0.2009), Rolling: 0.0609}), edge+"no higher than 200 mm to catch 99 % of those that come as far, and no higher than 60 mm that none rolls under; it hangs at 51 mm.")
	said(t, "too high for what flies", b.bottom(enclosure.Bottom{Flying: flying(0.0409), Rolling: 0.0609}), edge+"no higher than 40 mm to catch 99 % of those that come as far, and no higher than 60 mm that none rolls under; it hangs at 51 mm, which is too high.")
	said(t, "too high for what rolls", b.bottom(enclosure.Bottom{Flying: flying(0.2), Rolling: 0.0409}), edge+"no higher than 200 mm to catch 99 % of those that come as far, and no higher than 40 mm that none rolls under; it hangs at 51 mm, which is too high.")

	said(t, "more than the range", b.behind(enclosure.StandOff{Have: 0.4009, Low: 0.1901, High: 0.3401, Verdict: fit.Clear}), "The wall is 400 mm behind the screen. A cloth that stretches 150 mm to 300 mm under a driver's ball, which is assumed, wants 191 mm to 341 mm. That is more than the whole range.")
	const wants = "The wall is 200 mm behind the screen. A cloth that stretches 150 mm to 300 mm under a driver's ball, which is assumed, wants 191 mm to 341 mm."
	said(t, "inside the range", b.behind(enclosure.StandOff{Have: 0.2009, Low: 0.1901, High: 0.3401, Verdict: fit.Tight}), wants+" That is inside the range: press a ball into the cloth and measure.")
	said(t, "less", b.behind(enclosure.StandOff{Have: 0.2009, Low: 0.1901, High: 0.3401, Verdict: fit.Strikes}), wants+" That is less than the range: a ball can reach the wall through the cloth.")
}

func TestMishitNeeds(t *testing.T) {
	b := toldBalls()
	of := func(name, player, meets string, depth float64) enclosure.MissDepth {
		return enclosure.MissDepth{Player: player, Club: "driver", Tee: "middle", Name: name, Meets: meets, Depth: depth}
	}
	got := b.mishitNeeds(enclosure.Enclosure{Miss: []enclosure.MissDepth{
		of("thin", "Ann", "screen", 0), of("thin", "Bob", "screen", 0),
		of("hosel", "Ann", "side return", 0.3001), of("hosel", "Bob", "side return", 0.3501), of("hosel", "Cy", "side return", 0.1), of("hosel", "Di", "screen", 0),
		of("deep", "Ann", "side return", 0.4501),
		of("skied", "Ann", "top return", 0.2501), of("skied", "Bob", "ceiling", 0),
		of("topped", "Ann", "under the screen", 0), of("topped", "Bob", "screen", 0),
		of("lost", "Ann", "", 0),
		of("climbing", "Ann", "top return", 0.3501),
	}})
	want := []mishitNeed{
		{"Thin", "Meets the screen.", true},
		{"Hosel", "Takes a side return 351 mm deep (Bob, driver, middle tee); the plan has 400 mm.", true},
		{"Deep", "Takes a side return 451 mm deep (Ann, driver, middle tee); the plan has 400 mm.", false},
		{"Skied", "Takes a top return 251 mm deep (Ann, driver, middle tee); the plan has 300 mm. In 1 of 2 cases no return can catch it: it meets the ceiling first.", false},
		{"Topped", "No return can catch it in 1 of 2 cases: it passes under the screen first.", false},
		{"Lost", "No return can catch it in 1 of 1 cases: it meets nothing that was looked for first.", false},
		{"Climbing", "Takes a top return 351 mm deep (Ann, driver, middle tee); the plan has 300 mm.", false},
	}
	if !slices.Equal(got, want) {
		t.Errorf("mishits\n got %+v\nwant %+v", got, want)
	}
	said(t, "none", b.has(0), "the plan has none")
	said(t, "nothing", meets(string(ball.KindNone)), "meets nothing that was looked for")
	said(t, "under a return", meets("under the top return"), "passes under the top return")
}

func TestLaunchSaid(t *testing.T) {
	b := toldBalls()
	l := enclosure.HighestLoft{Player: "Ann", Club: "wedge", Tee: "middle", Own: 26.01, Screen: 30.49, Next: "ceiling", Spare: 4.48}
	want := launchLine{Player: "Ann", Club: "wedge", Tee: "middle", Own: "26.1°", Screen: "30.4°", Spare: "4.4°", Next: "Ceiling", OK: true}
	if got := b.launchLine(l); got != want {
		t.Errorf("launch = %+v, want %+v", got, want)
	}
	l.Spare, want.Spare, want.OK = -0.48, words.Minus+"0.5°", false
	if got := b.launchLine(l); got != want {
		t.Errorf("too steep: %+v, want %+v", got, want)
	}
	l.Spare, l.Blocked, want.Spare = 0, "lamp", "0.0°"
	if got := b.launchLine(l); got != want {
		t.Errorf("blocked: %+v, want %+v", got, want)
	}
	l.Screen = -1
	want = launchLine{Player: "Ann", Club: "wedge", Tee: "middle", Own: "26.1°", Screen: "none meets it", Next: "Lamp"}
	if got := b.launchLine(l); got != want {
		t.Errorf("no launch: %+v, want %+v", got, want)
	}
}

// TestThinned: a curve keeps its ends and becomes 24 points at the most.
func TestThinned(t *testing.T) {
	for n := 2; n < 200; n++ {
		var curve []enclosure.DepthPoint
		for i := range n {
			curve = append(curve, enclosure.DepthPoint{Depth: float64(i)})
		}
		got := thinned(curve)
		if len(got) > 24 || n <= 24 && len(got) != n || got[0] != curve[0] || got[len(got)-1] != curve[n-1] {
			t.Errorf("%d points become %d, from %v to %v", n, len(got), got[0].Depth, got[len(got)-1].Depth)
		}
		for i := 1; i < len(got); i++ {
			if got[i].Depth <= got[i-1].Depth {
				t.Errorf("of %d points, %v follows %v", n, got[i].Depth, got[i-1].Depth)
			}
		}
	}
}

// TestMeasured: a club's ball is measured when its speed is not the usual one, and
// its launch is somebody's own when anything else is not.
func TestMeasured(t *testing.T) {
	usual := plan.DefaultClub(plan.KindDriver, "driver")
	with := func(change func(*plan.Ball)) plan.Club {
		c := usual
		own := *usual.Ball
		change(&own)
		c.Ball = &own
		return c
	}
	fast := with(func(b *plan.Ball) { b.Speed++ })
	high := with(func(b *plan.Ball) { b.Launch++ })
	none := usual
	none.Ball = nil
	for _, c := range []struct {
		name            string
		club            plan.Club
		measured, usual bool
	}{{"usual", usual, false, true}, {"fast", fast, true, false}, {"high", high, false, false}, {"no ball", none, false, true}} {
		if got := measured(c.club); got != c.measured {
			t.Errorf("%s: measured = %v", c.name, got)
		}
		if got := isUsual(c.club); got != c.usual {
			t.Errorf("%s: usual = %v", c.name, got)
		}
	}
	checks := []fit.Check{{Player: "Ann", Club: "iron", HeadSpeed: 30}, {Player: "Ann", Club: "driver", HeadSpeed: 40}, {Player: "Bob", Club: "driver", HeadSpeed: 50}}
	head := headSpeeds(checks)
	for _, c := range []struct {
		player string
		club   plan.Club
		want   float64
	}{{"Ann", usual, 40}, {"Bob", usual, 50}, {"Ann", fast, 0}, {"Cy", usual, 0}} {
		if got := head(plan.Player{Name: c.player}, c.club); got != c.want {
			t.Errorf("%s's head comes in at %v m/s, want %v", c.player, got, c.want)
		}
	}
}

// TestSkillsAssumed: each skill among the players is told once, by its name.
func TestSkillsAssumed(t *testing.T) {
	p := plantest.Loft()
	for i, skill := range []string{plan.SkillSteady, "", plan.SkillSteady} {
		p.Players[i].Skill = skill
	}
	b := &balls{plan: p}
	var told []string
	b.assumeSkill(func(status, format string, args ...any) {
		told = append(told, status+": "+fmt.Sprintf(format, args...))
	})
	want := []string{"assumption: Host and Left-handed friend: steady shots, ", "assumption: Tall guest: average shots, "}
	if len(told) != len(want) {
		t.Fatalf("told %q, want %d", told, len(want))
	}
	for i, start := range want {
		if !strings.HasPrefix(told[i], start) {
			t.Errorf("told %q, want it to begin with %q", told[i], start)
		}
	}
}

// TestLaunchAssumed: where each club's launch comes from is told once for those that keep the
// usual one and once for those that have their own, be it one club.
func TestLaunchAssumed(t *testing.T) {
	tell := func(clubs ...plan.Club) (told []string) {
		b := &balls{plan: plan.Plan{Clubs: clubs}, head: func(plan.Player, plan.Club) float64 { return 0 }}
		b.assumeLaunch(func(status, format string, args ...any) {
			told = append(told, status+": "+fmt.Sprintf(format, args...))
		})
		return told
	}
	driver, iron := plan.DefaultClub("driver", "driver"), plan.DefaultClub("iron", "iron")
	own := driver
	ball := *own.Ball
	ball.Launch += 2
	own.Ball = &ball
	for _, c := range []struct {
		name  string
		clubs []plan.Club
		want  []string // beginnings
	}{
		{"usual", []plan.Club{driver, iron}, []string{statusPractice + ": launch and spin of an amateur"}},
		{"one of one's own", []plan.Club{own}, []string{statusYours + ": launch and spin as the plan says: driver "}},
		{"both", []plan.Club{own, iron}, []string{statusPractice + ": launch and spin of an amateur", statusYours + ": launch and spin as the plan says: driver "}},
	} {
		told := tell(c.clubs...)
		if len(told) != len(c.want) {
			t.Errorf("%s: told %q, want %d", c.name, told, len(c.want))
			continue
		}
		for i, start := range c.want {
			if !strings.HasPrefix(told[i], start) {
				t.Errorf("%s: told %q, want it to begin with %q", c.name, told[i], start)
			}
		}
	}
}

// TestSteepest: of launches with as little to spare the first is named; one that never meets the
// screen goes before all.
func TestSteepest(t *testing.T) {
	of := func(player string, spare, screen float64) enclosure.HighestLoft {
		return enclosure.HighestLoft{Player: player, Club: "driver", Tee: "middle", Spare: spare, Screen: screen}
	}
	ann, bob, cy := of("Ann", 3, 20), of("Bob", 3, 20), of("Cy", 1.5, 20)
	said(t, "as little", steepest([]enclosure.HighestLoft{ann, bob}), "Steepest start: 3.0° to spare (Ann, driver, middle tee)")
	said(t, "the least", steepest([]enclosure.HighestLoft{ann, cy, bob}), "Steepest start: 1.5° to spare (Cy, driver, middle tee)")
	said(t, "none", steepest([]enclosure.HighestLoft{cy, of("Di", 9, -1)}), "Steepest start: none of Di's with the driver meets the screen")
}
