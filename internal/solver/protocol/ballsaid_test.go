package protocol

import (
	"strings"
	"testing"

	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/ball/enclosure"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
)

// The first sentence is of the worst of everybody: a well-struck ball that is not
// caught comes before any share.
func TestCaughtSaidOfAll(t *testing.T) {
	b, bare := toldBalls(), toldBalls()
	bare.plan.Screen = nil
	of := func(player string, caught bool, share, low float64) ball.Outcome {
		o := ball.Outcome{Player: player, Club: "driver", Tee: "middle", Balls: 200, Caught: ball.Estimate{Share: share, Low: low, High: 1}}
		o.Struck.Contact = ball.Contact{Surface: "ceiling", Kind: ball.KindCeiling, Short: 0.35, Speed: 40}
		if caught {
			o.Struck.Contact = ball.Contact{Surface: "screen", Kind: ball.KindScreen, Caught: true, Speed: 40}
		}
		return o
	}
	for _, c := range []struct {
		name    string
		b       *balls
		of      []ball.Outcome
		verdict fit.Verdict
		want    string
	}{
		{"no screen", bare, []ball.Outcome{of("Ann", false, 0, 0)}, fit.Strikes, "Not caught: the plan has no screen."},
		{"all, the lowest of the intervals", b, []ball.Outcome{of("Ann", true, 1, 0.9969), of("Ben", true, 1, 0.981)}, fit.Clear,
			"Caught: every well-struck ball, and all ordinary balls that were flown; of all such balls it may be as few as 98.1 %."},
		{"one is not well caught", b, []ball.Outcome{of("Ann", true, 1, 0.98), of("Ben", false, 0.6, 0.5), of("Cy", true, 0.2, 0.1)}, fit.Strikes,
			"Not caught: a well-struck ball meets the ceiling 350 mm before the screen, at 40 m/s (Ben, driver, middle tee)."},
		{"of two that are not the worse", b, []ball.Outcome{of("Ann", false, 0.7, 0.6), of("Ben", false, 0.6, 0.5)}, fit.Strikes,
			"Not caught: a well-struck ball meets the ceiling 350 mm before the screen, at 40 m/s (Ben, driver, middle tee)."},
		{"fewer than were asked for", b, []ball.Outcome{of("Ann", true, 1, 0.98), of("Ben", true, 0.9899, 0.97)}, fit.Tight,
			"Not all caught: every well-struck ball, but only 98.9 % of ordinary balls (Ben, driver, middle tee)."},
		{"as many as were asked for", b, []ball.Outcome{of("Ann", true, 0.995, 0.98), of("Ben", true, 1, 0.98)}, fit.Clear,
			"Caught: every well-struck ball, and 99.5 % of ordinary balls or more (least: Ann, driver, middle tee)."},
	} {
		got := c.b.caughtSaid(c.of)
		said(t, c.name, string(got.Verdict)+": "+got.Text, string(c.verdict)+": "+c.want)
	}
}

func TestReturnsSaid(t *testing.T) {
	b := toldBalls() // sides 400 mm, top 300 mm
	none := toldBalls()
	none.plan.Screen = &plan.Screen{}
	of := func(side, top float64, lost ...enclosure.Lost) enclosure.Enclosure {
		return enclosure.Enclosure{Rate: 0.99, Side: enclosure.Need{Depth: side, All: side}, Top: enclosure.Need{Depth: top, All: top}, Lost: lost}
	}
	ceiling := func(share float64) enclosure.Lost {
		return enclosure.Lost{Player: "Ann", Club: "wedge", Tee: "middle", Surface: "ceiling", Share: share}
	}
	missed := []mishitNeed{{OK: true}, {OK: false}}
	for _, c := range []struct {
		name    string
		b       *balls
		e       enclosure.Enclosure
		mishits []mishitNeed
		verdict fit.Verdict
		want    string
	}{
		{"deep enough", b, of(0.3501, 0.2), nil, fit.Clear, "Returns: 351 mm each side, 200 mm above, to catch 99 % of ordinary balls; the plan has 400 mm each side, 300 mm above."},
		{"the top is not", b, of(0, 0.3001), missed, fit.Strikes, "Returns: none each side, 301 mm above, to catch 99 % of ordinary balls; the plan has 400 mm each side, 300 mm above. Mishits ask for more."},
		{"none needed, none there", none, of(0, 0), missed[:1], fit.Clear, "Returns: none needed to catch 99 % of ordinary balls; the plan has none each side, none above."},
		{"some are lost anyhow", b, of(0.1, 0), nil, fit.Clear, ""},
	} {
		out := &ballEnclosure{Side: c.b.need(c.e.Side, c.b.plan.Screen.SideReturn, "", ""), Top: c.b.need(c.e.Top, c.b.plan.Screen.TopReturn, "", ""), Mishits: c.mishits}
		if c.want == "" {
			few, many := c.e, c.e
			few.Lost, many.Lost = []enclosure.Lost{ceiling(0.005)}, []enclosure.Lost{ceiling(0.25)}
			got := c.b.returnsSaid(few, out)
			said(t, c.name+", few", string(got.Verdict)+": "+got.Text, "clear: Returns: 100 mm each side, none above, to catch 99 % of ordinary balls; the plan has 400 mm each side, 300 mm above. At any depth 1 ball in 200 meets the ceiling before any return could catch it (Ann, wedge, middle tee).")
			if got := c.b.returnsSaid(many, out); got.Verdict != fit.Strikes || !strings.Contains(got.Text, "At any depth 1 ball in 4 meets the ceiling") {
				t.Errorf("where 1 ball in 4 is lost: %+v", got)
			}
			continue
		}
		got := c.b.returnsSaid(c.e, out)
		said(t, c.name, string(got.Verdict)+": "+got.Text, string(c.verdict)+": "+c.want)
	}
}

// The third is of the fastest that comes back past somebody, whoever's and
// whatever it is off.
func TestBackSaidOfAll(t *testing.T) {
	b := toldBalls()
	of := func(speed float64, warn bool) ball.Return {
		return ball.Return{Reaches: true, Warn: warn, Speed: speed, Height: 1.234}
	}
	o := ball.Outcome{Player: "Ann", Club: "driver", Tee: "middle",
		Struck: ball.Rebound{Contact: ball.Contact{Surface: "screen"}, High: of(7.01, true)},
		Shares: []ball.Share{{Surface: "ceiling", Back: of(6, true)}},
		Misses: []ball.MissOut{{Name: "thin", Contact: ball.Contact{Surface: "beam"}, Back: of(5, true)}}}
	told := func(name string, outcomes []ball.Outcome, want string) {
		t.Helper()
		got := b.backSaid(outcomes)
		said(t, name, string(got.Verdict)+": "+got.Text, want)
	}
	const past = "What comes back: "
	const tail = ", about 1.230 m up (Ann, driver, middle tee)."
	told("the struck one", []ball.Outcome{o}, "tight: "+past+"an ordinary ball off the screen, past the golfer at up to 8 m/s"+tail)
	o.Shares[0].Back.Speed = 9
	told("an ordinary one", []ball.Outcome{o}, "tight: "+past+"an ordinary ball off the ceiling, past the golfer at up to 9 m/s"+tail)
	o.Misses[0].Back.Speed = 12
	told("a mishit", []ball.Outcome{{}, o}, "tight: "+past+"a thin ball off the beam, past the golfer at up to 12 m/s"+tail)
	o.Misses[0].Back.Reaches = false
	told("not one that stops short", []ball.Outcome{o}, "tight: "+past+"an ordinary ball off the ceiling, past the golfer at up to 9 m/s"+tail)
	o.Shares[0].Back.Warn = false
	told("one that is not warned of", []ball.Outcome{o}, "clear: "+past+"an ordinary ball off the ceiling, past the golfer at up to 9 m/s"+tail)
	o.Shares[0].Back.Reaches, o.Struck.High.Reaches = false, false
	told("none", []ball.Outcome{o}, "clear: "+past+"no ball that was followed gets as far as the golfer.")
}
