package words

import (
	"slices"
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/maps"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/remedy"
	"wideberth/internal/units"
)

// The sentences below are told of figures that are no whole step of a label, so
// that each says which way it was rounded.
var (
	metric   = Words{Units: units.Metric, Margin: 0.15}
	imperial = Words{Units: units.Imperial, Margin: 0.15}
)

// said compares sentences by name.
func said(t *testing.T, name, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("%s\n got %s\nwant %s", name, got, want)
	}
}

func TestFitsWords(t *testing.T) {
	said(t, "strikes", metric.Fits(fit.Strikes, -0.0412, "ceiling"), "strikes the ceiling, 42 mm past it")
	said(t, "tight", metric.Fits(fit.Tight, 0.0829, "rafters, left"), "passes “rafters, left” by 82 mm, tighter than your 150 mm margin")
	said(t, "clear", metric.Fits(fit.Clear, 0.2359, "top return"), "keeps 235 mm from the screen's top return")
}

func TestPlacesInWords(t *testing.T) {
	if got, want := imperial.Both(2.9, 2.21), [2]string{"9 ft 6 1/8 in", "7 ft 3 in"}; got != want {
		t.Errorf("Both = %q, want %q", got, want)
	}
	best := maps.Best{Found: true, X: 2.9, Y: 2.21, Clearance: 0.2359, Verdict: fit.Clear, Player: "Ann", Club: "driver", Surface: "ceiling"}
	said(t, "best", metric.BestPlace(best, "everybody"), "Most room for everybody: the tee 2.900 m from the back wall and 2.210 m from the right wall. The tightest there, Ann with the driver, keeps 235 mm from the ceiling.")
	best.Clearance, best.Verdict = -0.0412, fit.Strikes
	said(t, "least bad", metric.BestPlace(best, "everybody"), "No place for the tee lets everybody swing freely. Least bad is 2.900 m from the back wall and 2.210 m from the right wall: there Ann with the driver still strikes the ceiling, 42 mm past it.")
	said(t, "none", metric.BestPlace(maps.Best{}, "everybody"), "No place on this floor is free for a tee.")
}

func TestSharing(t *testing.T) {
	said(t, "one hand", metric.Sharing(maps.Sharing{One: true, Loses: 0.1}), "")
	said(t, "nothing lost", metric.Sharing(maps.Sharing{Both: true, One: true}), "One tee serves right- and left-handers.")
	said(t, "something lost", metric.Sharing(maps.Sharing{Both: true, One: true, Loses: 0.0041}), "One tee serves right- and left-handers; sharing it gives away 5 mm.")
	said(t, "two tees", metric.Sharing(maps.Sharing{Both: true, Apart: 1.25, Loses: 0.1031}), "Right- and left-handers want two tees, 1.250 m apart: sharing one gives away 104 mm.")
}

// TestLimits: bit by bit, the reason that a map gives is the one that is said.
func TestLimits(t *testing.T) {
	want := []string{
		"nearer than 3.050 m to the screen (common practice)",
		"farther than 6.100 m from the screen (common practice)",
		"outside the strip that the ball sensor reads",
		"where the mat would not lie flat",
		"where somebody's feet have no room",
		"where a ball has no room",
	}
	m := maps.StandMap{Nearest: 3.05, Farthest: 6.1, Reasons: make([]string, len(want))}
	for k := range want {
		m.Mask = []int16{0, 1 << k, 0}
		if got := metric.Limits(&m); !slices.Equal(got, want[k:k+1]) {
			t.Errorf("bit %d: %q, want %q", k, got, want[k])
		}
	}
	m.Mask = []int16{1, 32, 0, 4}
	if got := metric.Limits(&m); !slices.Equal(got, []string{want[0], want[2], want[5]}) {
		t.Errorf("three bits: %q", got)
	}
	m.Reasons, m.Mask = m.Reasons[:2], []int16{63}
	if got := metric.Limits(&m); !slices.Equal(got, want[:2]) {
		t.Errorf("a map that knows two: %q", got)
	}
	m.Mask = nil
	if got := metric.Limits(&m); got == nil || len(got) != 0 {
		t.Errorf("nothing: %#v, want an empty list", got)
	}
}

func TestHangWords(t *testing.T) {
	said(t, "closed", metric.HangSummary(2.4, 1), "Over the hatched part nothing may hang at all: club or ball comes within 150 mm of the ceiling. The lines say how low a thing may hang inside them.")
	said(t, "open", metric.HangSummary(2.4005, 0), "Nothing lower than 2.401 m above the bare floor keeps 150 mm from every swing and ball wherever it hangs. The lines say how low a thing may hang inside them.")
	said(t, "nothing passes", metric.HangSummary(0, 0), "Nothing passes under this ceiling.")

	s := maps.HangSpot{Lowest: 2.1004, Ceiling: 2.8709, Player: "Ann", Club: "driver"}
	said(t, "a club", metric.HangSpot(s), "Down to 2.101 m here, above the bare floor: Ann with the driver passes beneath, with your 150 mm kept.")
	s.Ball = true
	said(t, "a ball", metric.HangSpot(s), "Down to 2.101 m here, above the bare floor: the ball of Ann with the driver passes beneath, with your 150 mm kept.")
	s.Lowest = s.Ceiling
	said(t, "no room", metric.HangSpot(s), "Nothing may hang here: the ball of Ann with the driver needs 2.871 m, and the ceiling is at 2.870 m.")
	s.Lowest = 0
	said(t, "free", metric.HangSpot(s), "Down to the floor here: no club passes, and no ball.")

	h := remedy.HungCheck{Name: "lamp", Player: "Ann", Club: "driver", Verdict: fit.Strikes, Clearance: -0.0412}
	said(t, "struck", metric.HungThing(h), "Lamp: Ann with the driver strikes it, 42 mm past its edge.")
	h.Verdict, h.Clearance = fit.Tight, 0.0829
	said(t, "tight", metric.HungThing(h), "Lamp: Ann with the driver passes it by 82 mm, tighter than your 150 mm margin.")
	h.Verdict, h.Clearance = fit.Clear, 0.2359
	said(t, "clear", metric.HungThing(h), "Lamp: clear; Ann with the driver keeps 235 mm from it.")
	c := maps.HangCheck{Thing: plan.Hung{Min: [3]float64{0, 0, 2.5009}}, Check: h, Spot: maps.HangSpot{Lowest: 2.1004, Ceiling: 2.87, Player: "Ben", Club: "wedge"}}
	const clear = "Lamp: clear; Ann with the driver keeps 235 mm from it."
	said(t, "not hung yet", metric.Hanging(c), clear+" Its underside, now at 2.500 m, may hang no lower than 2.101 m.")
	c.Spot.Lowest = 2.5009
	said(t, "known to be clear where it is", metric.Hanging(c), clear+" Its underside is at 2.500 m; lower may not be clear.")
	c.Spot.Ball, c.Spot.Lowest = true, 2.6
	said(t, "in the way of a ball", metric.Hanging(c), clear+" The ball of Ben with the wedge comes within your margin of it. Its underside, now at 2.500 m, may hang no lower than 2.600 m.")
	c.Spot.Ball, c.Spot.Lowest = false, 2.87
	said(t, "nothing may hang", metric.Hanging(c), clear+" Nothing so large may hang here at all.")
	c.Spot.Lowest = 0
	said(t, "where nothing passes", metric.Hanging(c), clear+" Here it may hang down to the floor.")
	said(t, "nobody near", metric.HungThing(remedy.HungCheck{Name: "écran"}), "Écran: no club comes near it.")
}

func TestWatchWords(t *testing.T) {
	said(t, "metric", metric.WatchSummary(&maps.OnlookMap{Area: 3.99}), "Others may be in the dotted part, 3.9 m²: no club, and no ball before it has met anything, comes within 150 mm. A ball that bounces back is not in this.")
	said(t, "imperial", imperial.WatchSummary(&maps.OnlookMap{Area: 3.99}), "Others may be in the dotted part, 42 sq ft: no club, and no ball before it has met anything, comes within 5 7/8 in. A ball that bounces back is not in this.")
	said(t, "nowhere", metric.WatchSummary(&maps.OnlookMap{}), "No part of the floor is out of reach of every club and every first-hand ball: others stay outside while somebody plays.")

	near := maps.SeatCheck{Name: "sofa", ClubVerdict: fit.Tight, BallVerdict: fit.Tight, Player: "Ann", With: "driver", Club: 0.0829, From: "Bob", Shot: "ordinary", Ball: 0.2359}
	said(t, "near", metric.Seat(near), "Sofa: Ann with the driver comes within 82 mm; an ordinary ball of Bob comes within 235 mm.")
	hit := near
	hit.ClubVerdict, hit.Club, hit.BallVerdict, hit.Shot = fit.Strikes, -0.0412, fit.Strikes, "hosel"
	said(t, "hit", metric.Seat(hit), "Sofa: Ann with the driver reaches 42 mm into it; a ball off the hosel of Bob can hit it.")
	said(t, "far", metric.Seat(maps.SeatCheck{Name: "sofa", Club: 1.5, Ball: 1.5}), "Sofa: clubs stay at least 1.500 m away; balls stay at least 1.500 m away.")
	hit.Behind = true
	said(t, "behind", metric.Seat(hit), "Sofa: behind the screen, where a ball that misses it lands.")
}

func TestLevels(t *testing.T) {
	if got := metric.LevelStep(); got != 0.25 {
		t.Errorf("metric levels are %v m apart, want 0.25", got)
	}
	if got := imperial.LevelStep(); got != 0.3048 {
		t.Errorf("imperial levels are %v m apart, want a foot", got)
	}
	said(t, "whole feet", imperial.Level(7*0.3048), "7 ft")
	said(t, "feet and inches", imperial.Level(7*0.3048+0.0254), "7 ft 1 in")
	said(t, "metric", metric.Level(2.25), "2.250 m")
}

func TestMoved(t *testing.T) {
	tees := plan.Plan{Tees: []plan.Tee{{Name: "middle"}, {Name: "back"}}}
	for _, c := range []struct {
		name string
		p    plan.Plan
		by   [3]float64
		want string
	}{
		{"not at all", tees, [3]float64{0.0004, 0, 0.0004}, ""},
		{"just so", tees, [3]float64{0.0005, 0, 0.0005}, "The ball lies 1 mm towards the target from the middle tee."},
		{"ahead", tees, [3]float64{0.25, 0, 0.25}, "The ball lies 250 mm towards the target from the middle tee."},
		{"back and left", tees, [3]float64{-0.3, 0.4, 0.5}, "The ball lies 300 mm towards the back wall and 400 mm towards the left wall from the middle tee."},
		{"right", tees, [3]float64{0.0004, -1.2, 1.2}, "The ball lies 1.200 m towards the right wall from the middle tee."},
		{"no tee", plan.Plan{}, [3]float64{1, 0, 1}, ""},
	} {
		said(t, c.name, metric.Moved(c.p, fit.Mark{Moved: c.by}), c.want)
	}
}

// TestChange: what must be added is rounded up and what is allowed down, and
// whether a remedy gives room up goes by its kind.
func TestChange(t *testing.T) {
	sloped := plan.Plan{Room: plan.Room{Slopes: []plan.Slope{{Name: "roof"}}}}
	for _, c := range []struct {
		r      remedy.Remedy
		p      plan.Plan
		want   string
		spares bool
	}{
		{remedy.Remedy{Kind: remedy.KindTee, Subject: "middle", Towards: remedy.TowardsBack, Amount: 0.1201}, plan.Plan{}, "Move the middle tee 121 mm towards the back wall", false},
		{remedy.Remedy{Kind: remedy.KindTee, Subject: "Back tee", Towards: remedy.TowardsTarget, Amount: 0.12}, plan.Plan{}, "Move the Back tee 120 mm towards the target", false},
		{remedy.Remedy{Kind: remedy.KindCeiling, Amount: 0.1201, Value: 2.9901}, plan.Plan{}, "Raise the ceiling 121 mm, the ceiling to 2.991 m", false},
		{remedy.Remedy{Kind: remedy.KindCeiling, Amount: 0, Value: 2.9901}, sloped, "Raise the ceiling and its slopes 0 mm, the ceiling to 2.991 m", false},
		{remedy.Remedy{Kind: remedy.KindCeiling, Amount: -0.2, Value: 2.6701}, sloped, "Lowest ceiling that would do: 2.671 m", true},
		{remedy.Remedy{Kind: remedy.KindLength, Amount: 0.2, Value: 6.6001}, plan.Plan{}, "Make the room 6.601 m long", false},
		{remedy.Remedy{Kind: remedy.KindWidth, Amount: 0.2, Value: 4.6001}, plan.Plan{}, "Make the room 4.601 m wide", false},
		{remedy.Remedy{Kind: remedy.KindLength, Amount: -0.2, Value: 6.6001}, plan.Plan{}, "Smallest room that would do for everybody: 6.601 m long", true},
		{remedy.Remedy{Kind: remedy.KindWidth, Amount: -0.2, Value: 4.6001}, plan.Plan{}, "Smallest room that would do for everybody: 4.601 m wide", true},
		{remedy.Remedy{Kind: remedy.KindFloor, Amount: 0.0301, Value: 0.0109}, plan.Plan{}, "Take 31 mm off the floor build-up, down to 10 mm", false},
		{remedy.Remedy{Kind: remedy.KindClub, Subject: "driver", Amount: 0.02, Value: 1.1759}, plan.Plan{}, "Longest driver that would do: 1.175 m", true},
		{remedy.Remedy{Kind: remedy.KindClub, Subject: "driver", Amount: -0.02, Value: 1.1359}, plan.Plan{}, "Shorten the driver to 1.135 m", false},
		{remedy.Remedy{Kind: remedy.KindClub, Subject: "driver", Amount: 0, Value: 1.15}, plan.Plan{}, "Shorten the driver to 1.150 m", false},
		{remedy.Remedy{Kind: remedy.KindPlayer, Subject: "Ann", Amount: 0.02, Value: 1.8209}, plan.Plan{}, "Tallest golfer in place of Ann: 1.820 m", true},
		{remedy.Remedy{Kind: remedy.KindPlayer, Subject: "Ann", Amount: -0.02, Value: 1.7809}, plan.Plan{}, "Tallest golfer in place of Ann: 1.780 m", false},
		{remedy.Remedy{Kind: remedy.KindRaise, Subject: "lamp", Amount: 0.0501, Value: 2.5501}, plan.Plan{}, "Raise the lamp 51 mm, its underside to 2.551 m", false},
		{remedy.Remedy{Kind: remedy.KindShift, Subject: "lamp", Towards: remedy.TowardsLeft, Amount: 0.0501}, plan.Plan{}, "Shift the lamp 51 mm towards the left wall", false},
		{remedy.Remedy{Kind: remedy.KindRemove, Subject: "lamp"}, plan.Plan{}, "Take the lamp away", false},
	} {
		said(t, c.r.Kind, metric.Change(c.p, c.r), c.want)
		if got := metric.Spares(c.r); got != c.spares {
			t.Errorf("%s: Spares = %v, want %v", c.want, got, c.spares)
		}
	}
}

func TestAfter(t *testing.T) {
	r := remedy.Remedy{Clearance: 0.1509, PlanVerdict: fit.Clear}
	said(t, "clear everywhere", metric.After(r), "clear by 150 mm")
	r.PlanVerdict = fit.Tight
	said(t, "tight elsewhere", metric.After(r), "clear by 150 mm; elsewhere in the plan something is still tight")
	r.PlanVerdict = fit.Strikes
	said(t, "strikes elsewhere", metric.After(r), "clear by 150 mm; elsewhere in the plan something still strikes")
}

func TestTouch(t *testing.T) {
	c := fit.Contact{Nearest: fit.Nearest{Surface: "ceiling", Part: "shaft", Phase: "top", Time: 0.9, Speed: 2.01}, AfterImpact: -0.26}
	said(t, "touch", metric.Touch(c), "the shaft on the ceiling at the top, 0.3 s before impact, at 3 m/s")
	c.Speed = 0.99
	said(t, "slow", metric.Touch(c), "the shaft on the ceiling at the top, 0.3 s before impact")
	c.Speed, c.AfterImpact = 1, -0.049
	said(t, "just before", metric.Touch(c), "the shaft on the ceiling at the top, just before impact, at 1 m/s")
	c.AfterImpact = 0.051
	said(t, "a tenth after", metric.Touch(c), "the shaft on the ceiling at the top, 0.1 s after impact, at 1 m/s")
	c.AfterImpact = 0
	said(t, "at impact by time", metric.Touch(c), "the shaft on the ceiling at the top, just after impact, at 1 m/s")
}

// TestRounding: each way to write a figure, on either side of a step.
func TestRounding(t *testing.T) {
	for _, c := range []struct{ name, got, want string }{
		{"down", metric.Down(0.0829), "82 mm"},
		{"down to nothing", metric.Down(0.0009), "less than 1 mm"},
		{"down to nothing, imperial", imperial.Down(0.003), "less than 1/8 in"},
		{"near", metric.Near(0.0829), "83 mm"},
		{"near, below nothing", metric.Near(-0.5), "0 mm"},
		{"rough", metric.Rough(1.2349), "1.230 m"},
		{"rough, up", metric.Rough(1.2351), "1.240 m"},
		{"rough, imperial", imperial.Rough(0.99), "3 ft 3 in"},
		{"rough, below nothing", metric.Rough(-1), "0 mm"},
		{"up", metric.Up(0.0821), "83 mm"},
		{"up, whole", metric.Up(0.083), "83 mm"},
		{"up, below nothing", metric.Up(-1), "0 mm"},
		{"speed up", metric.SpeedUp(14.001), "15 m/s"},
		{"speed up, whole", metric.SpeedUp(14), "14 m/s"},
		{"speed up, imperial", imperial.SpeedUp(10), "23 mph"},
		{"speed down", metric.SpeedDown(14.999), "14 m/s"},
		{"speed down, whole", metric.SpeedDown(15), "15 m/s"},
		{"speed down, imperial", imperial.SpeedDown(10), "22 mph"},
		{"share up", ShareUp(0.12341), "12.4 %"},
		{"share up, whole", ShareUp(0.12), "12 %"},
		{"share down", ShareDown(0.12399), "12.3 %"},
		{"share near", ShareNear(0.12349), "12.3 %"},
		{"share near, up", ShareNear(0.12351), "12.4 %"},
		{"no share", ShareUp(0), "0 %"},
		{"size down", metric.SizeDown(1.2399), "1.230 m"},
		{"size down, whole", metric.SizeDown(1.24), "1.240 m"},
		{"size down, imperial", imperial.SizeDown(0.99), "3 ft 2 in"},
		{"size down, below nothing", metric.SizeDown(-1), "0 mm"},
		{"size up", metric.SizeUp(1.2301), "1.240 m"},
		{"size up, whole", metric.SizeUp(1.23), "1.230 m"},
		{"size up, imperial", imperial.SizeUp(0.99), "3 ft 3 in"},
		{"size up, below nothing", metric.SizeUp(-1), "0 mm"},
		{"some", percent(0.0099), "less than 1 %"},
		{"a hundredth", percent(0.01), "1 %"},
		{"none", percent(0), "0 %"},
		{"all", percent(1), "100 %"},
		{"hundreds", Thousands(999), "999"},
		{"thousands", Thousands(1000), "1,000"},
		{"millions", Thousands(1234567), "1,234,567"},
		{"no list", List(nil), ""},
		{"one", List([]string{"a"}), "a"},
		{"two", List([]string{"a", "b"}), "a and b"},
		{"three", List([]string{"a", "b", "c"}), "a, b and c"},
		{"a tee", TeeName("middle"), "middle tee"},
		{"a tee that says so", TeeName("left Tee"), "left Tee"},
		{"first letter", UpperFirst("lamp"), "Lamp"},
		{"first letter, accented", UpperFirst("écran"), "Écran"},
		{"first letter, large", UpperFirst("Émile's seat"), "Émile's seat"},
		{"first letter, a figure", UpperFirst("2nd lamp"), "2nd lamp"},
	} {
		said(t, c.name, c.got, c.want)
	}
}

// TestCause: a trait that takes or gives nothing that a label could show is not
// named.
func TestCause(t *testing.T) {
	check := func(cost float64) fit.Check {
		return fit.Check{Causes: []fit.Cause{{Trait: "sway", Cost: cost}, {Trait: "other", Cost: 9}}}
	}
	said(t, "takes", metric.cause(check(0.012)), "What tells most there from swing to swing: sway, taking 12 mm.")
	said(t, "gives", metric.cause(check(-0.012)), "What tells most there from swing to swing: sway, giving 12 mm.")
	said(t, "next to nothing", metric.cause(check(0.0004)), "")
	said(t, "none", metric.cause(fit.Check{}), "")
}

// TestSpeed: how fast the nearest passes, unless it strikes or hardly moves.
func TestSpeed(t *testing.T) {
	c := fit.Check{Verdict: fit.Clear, Nearest: fit.Nearest{Part: "head", Speed: 1}}
	said(t, "passes", metric.speed(c), "The golfer's head passes there at 1 m/s.")
	c.Nearest.Speed = 0.99
	said(t, "slow", metric.speed(c), "")
	c.Nearest.Speed, c.Verdict = 20, fit.Strikes
	said(t, "strikes", metric.speed(c), "")
}

// TestOthers: who fares better reads how everybody does, who fares as badly does not.
func TestOthers(t *testing.T) {
	of := func(verdicts ...fit.Verdict) (out []fit.Check) {
		for _, v := range verdicts {
			out = append(out, fit.Check{Verdict: v})
		}
		return out
	}
	const s, n, c = fit.Strikes, fit.Tight, fit.Clear
	said(t, "tight among strikes", others(of(n, s, s), n), "This is yours alone: of everybody's 3 checks in this room, 2 strike something.")
	said(t, "clear among both", others(of(c, s, n), c), "This is yours alone: of everybody's 3 checks in this room, 1 strikes something.")
	said(t, "clear among one tight", others(of(c, n), c), "This is yours alone: of everybody's 2 checks in this room, 1 is tight.")
	said(t, "tight among tight", others(of(n, n), n), "")
	said(t, "strikes among strikes", others(of(s, s), s), "")
	said(t, "clear among clear", others(of(c, c), c), "")
	said(t, "tally", tally(of(s, s, n, n, c)), "Of 5 checks, 2 strike, 2 are tight and 1 is clear.")
	said(t, "one check", tally(of(s)), "")
}

// TestOneHit: one touch of many is told, with what the count leaves open.
func TestOneHit(t *testing.T) {
	c := fit.Check{Verdict: fit.Strikes, Clearance: -0.01, Tried: 256, Hits: 1, HitShare: 1.0 / 256, HitError: 0.0106}
	said(t, "with its error", metric.share(c), "Touches in 1 of 256 swings tried: less than 1 % of all such swings, give or take 1 %.")
	c.HitError = 0
	said(t, "counted alone", metric.share(c), "Touches in 1 of 256 swings tried.")
	c.Hits, c.Tried = 0, 2
	said(t, "none of two", metric.share(c), "None of the 2 swings tried touches, but the widest swing to be expected does.")
}
