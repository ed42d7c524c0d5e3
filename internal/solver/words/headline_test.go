package words

import (
	"strings"
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/maps"
	"wideberth/internal/units"
)

func TestHeadline(t *testing.T) {
	const s, n, c = fit.Strikes, fit.Tight, fit.Clear
	cases := []struct {
		name     string
		verdicts []fit.Verdict
		want     string
	}{
		{"half strike", []fit.Verdict{c, s, s, n, c, s, s, c}, "Strikes: 4 of 8."},
		{"a strike outweighs any number of tight ones", []fit.Verdict{n, n, n, s}, "Strikes: 1 of 4."},
		{"tight", []fit.Verdict{c, n, c, n}, "Tight: 2 of 4."},
		{"all clear", []fit.Verdict{c, c, c}, "Clear: all 3."},
		{"all strike", []fit.Verdict{s, s}, "Strikes: all 2."},
		{"one check", []fit.Verdict{n}, "Tight."},
	}
	for _, tc := range cases {
		t.Run(tc.name, func(t *testing.T) {
			if got := Headline(tc.verdicts); got != tc.want {
				t.Errorf("Headline(%q) = %q, want %q", tc.verdicts, got, tc.want)
			}
		})
	}
}

func TestWorstIs(t *testing.T) {
	far := checkOf("Host", fit.Tight, 0.08, near("ceiling", "clubhead", "top"))
	other := checkOf("Host", fit.Clear, 0.3, near("ceiling", "clubhead", "top"))
	if got, want := worstIs([]fit.Check{far, other}, far), "Tightest: Host with the driver."; got != want {
		t.Errorf("from one tee: %q, want %q", got, want)
	}
	far.Club = "Visitor's driver"
	if got, want := worstIs([]fit.Check{far, other}, far), "Tightest: Host with Visitor's driver."; got != want {
		t.Errorf("with somebody's own club: %q, want %q", got, want)
	}
	far.Club = "driver"
	other.Tee = "back"
	if got, want := worstIs([]fit.Check{far, other}, far), "Tightest: Host with the driver from the middle tee."; got != want {
		t.Errorf("from two tees: %q, want %q", got, want)
	}
}

// A guest reads the nearest thing first, whichever club and surface it is of, and
// never that the room is clear where it strikes others.
func TestGuest(t *testing.T) {
	club := func(c fit.Check, name string) fit.Check {
		c.Club = name
		return c
	}
	beam := checkOf("Guest", fit.Tight, 0.035, near("boxed beam", "clubhead", "top"))
	hair := checkOf("Guest", fit.Tight, 0.001, near("boxed beam", "clubhead", "top"))
	roomy := club(checkOf("Guest", fit.Clear, 0.30, near("ceiling", "shaft", "backswing")), "7-iron")
	wall := checkOf("Guest", fit.Clear, 0.25, near("left wall", "clubhead", "follow-through"))
	hits := striking("Guest", -0.042, near("ceiling", "clubhead", "backswing"))
	hers := striking("Tall guest", -0.042, near("ceiling", "clubhead", "backswing"))
	mark := func(club string) fit.Mark {
		return fit.Mark{Player: "Guest", Club: club, Behind: fit.Behind{Wall: "left wall", Clearance: 0.25, Part: "clubhead"}}
	}
	cases := []struct {
		name           string
		mark           fit.Mark
		own, nearest   fit.Check
		all            []fit.Check
		sentence, more string
	}{
		{"a beam before the wall behind", mark("driver"), beam, beam, []fit.Check{beam, roomy},
			"Tight for you: the nearest thing is the boxed beam, only 1 3/8 in from the clubhead on your loosest swing with the driver.",
			"That is tighter than your 5 7/8 in margin: make the first swings slow. Nothing comes nearer than 9 3/4 in to the wall behind you with the driver."},
		{"next to nothing", mark("driver"), hair, hair, []fit.Check{hair},
			"Tight for you: the nearest thing is the boxed beam, less than 1/8 in from the clubhead on your loosest swing with the driver.",
			"That is tighter than your 5 7/8 in margin: make the first swings slow. Nothing comes nearer than 9 3/4 in to the wall behind you with the driver."},
		{"another club comes nearer than the one shown", mark("7-iron"), roomy, beam, []fit.Check{beam, roomy},
			"Tight for you: the nearest thing is the boxed beam, only 1 3/8 in from the clubhead on your loosest swing with the driver.",
			"That is tighter than your 5 7/8 in margin: make the first swings slow. With the 7-iron, the shaft keeps 11 3/4 in from the ceiling. Nothing comes nearer than 9 3/4 in to the wall behind you with the 7-iron."},
		{"the wall behind is nearest", mark("driver"), wall, wall, []fit.Check{wall},
			"Clear for you: the nearest thing is the left wall, 9 3/4 in from the clubhead on your loosest swing with the driver.", ""},
		{"strikes", mark("driver"), hits, hits, []fit.Check{hits},
			"Do not swing the driver here: the clubhead goes 1 3/4 in past the ceiling on your loosest swing.",
			"Nothing comes nearer than 9 3/4 in to the wall behind you with the driver."},
		{"clear where others strike", mark("driver"), wall, wall, []fit.Check{wall, hers, beam},
			"Clear for you: the nearest thing is the left wall, 9 3/4 in from the clubhead on your loosest swing with the driver.",
			"This is yours alone: of everybody's 3 checks in this room, 1 strikes something."},
		{"clear where others are tight", mark("driver"), wall, wall, []fit.Check{wall, beam, beam},
			"Clear for you: the nearest thing is the left wall, 9 3/4 in from the clubhead on your loosest swing with the driver.",
			"This is yours alone: of everybody's 3 checks in this room, 2 are tight."},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			sentence, more := Words{Units: units.Imperial, Margin: 0.15}.Guest(c.mark, c.own, c.nearest, c.all)
			if sentence != c.sentence || more != c.more {
				t.Errorf("Guest\n got %s\n     %s\nwant %s\n     %s", sentence, more, c.sentence, c.more)
			}
			if strings.HasPrefix(sentence, "Clear.") || strings.HasPrefix(sentence, "Clear:") {
				t.Errorf("a guest reads a bare %q", sentence)
			}
		})
	}
}

// A place where somebody strikes is not called best, and it is said why.
func TestBestFor(t *testing.T) {
	b := maps.Best{Found: true, X: 2.9, Y: 2.21, Clearance: -0.1, Verdict: fit.Strikes, Club: "driver", Surface: "ceiling"}
	w := Words{Units: units.Metric, Margin: 0.15}
	lead, text := w.BestFor("Tall guest", b)
	if want := "no place on this floor is free of strikes; 2.900 m from the back wall and 2.210 m from the right wall; the driver still strikes the ceiling, 100 mm past it."; lead != "Least bad for Tall guest" || text != want {
		t.Errorf("BestFor = %q, %q, want the least bad and %q", lead, text, want)
	}
	b.Clearance, b.Verdict = 0.2, fit.Clear
	lead, text = w.BestFor("Tall guest", b)
	if want := "2.900 m from the back wall and 2.210 m from the right wall; the driver keeps 200 mm from the ceiling."; lead != "Best for Tall guest" || text != want {
		t.Errorf("BestFor = %q, %q, want the best and %q", lead, text, want)
	}
}
