package words

import (
	"slices"
	"strings"
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
	"wideberth/internal/units"
)

func checkOf(player string, verdict fit.Verdict, clearance float64, near fit.Nearest) fit.Check {
	return fit.Check{Player: player, Club: "driver", Tee: "middle", Verdict: verdict, Clearance: clearance, Typical: clearance + 0.05, Nearest: near}
}

// striking is checkOf for a strike whose first touch is of the same place, a tenth
// of a second after impact.
func striking(player string, clearance float64, near fit.Nearest) fit.Check {
	c := checkOf(player, fit.Strikes, clearance, near)
	first := near
	first.Time, first.Speed = 1.44, 23.1
	c.Contact = &fit.Contact{Nearest: first, AfterImpact: 0.096}
	return c
}

func near(surface, part string, phase swing.Phase) fit.Nearest {
	return fit.Nearest{Surface: surface, Part: part, Phase: phase, Speed: 21.4}
}

func TestCheckSentence(t *testing.T) {
	cases := []struct {
		name  string
		units string
		check fit.Check
		want  string
	}{
		{"strike, overshoot rounded up", units.Imperial,
			striking("Tall guest", -0.042, near("left wall", "clubhead", "follow-through")),
			"Tall guest, driver, middle tee: the clubhead strikes the left wall in the follow-through, 0.1 s after impact, at 52 mph; the loosest swing would go 1 3/4 in past it."},
		{"strike, metric", units.Metric,
			striking("Tall guest", -0.0412, near("left wall", "clubhead", "follow-through")),
			"Tall guest, driver, middle tee: the clubhead strikes the left wall in the follow-through, 0.1 s after impact, at 24 m/s; the loosest swing would go 42 mm past it."},
		{"least strike", units.Imperial,
			striking("Host", -0.0001, near("ceiling", "shaft", "top")),
			"Host, driver, middle tee: the shaft strikes the ceiling at the top, 0.1 s after impact, at 52 mph; the loosest swing would go 1/8 in past it."},
		{"strike below what labels tell apart", units.Metric,
			striking("Host", -1e-10, near("ceiling", "shaft", "top")),
			"Host, driver, middle tee: the shaft strikes the ceiling at the top, 0.1 s after impact, at 24 m/s; the loosest swing would go less than 1 mm past it."},
		{"strike of a yard", units.Imperial,
			striking("Host", -1.3, near("boxed beam", "trail forearm", "backswing")),
			"Host, driver, middle tee: the trail forearm strikes the boxed beam in the backswing, 0.1 s after impact, at 52 mph; the loosest swing would go 4 ft 3 1/4 in past it."},
		{"head under a slope with a comma", units.Imperial,
			striking("Host", -0.01, near("rafters, left", "head", "address")),
			"Host, driver, middle tee: the golfer's head strikes “rafters, left” at address, 0.1 s after impact, at 52 mph; the loosest swing would go 1/2 in past it."},
		{"tight, rounded down", units.Imperial,
			checkOf("Host", fit.Tight, 0.0825, near("ceiling", "clubhead", "backswing")),
			"Host, driver, middle tee: the clubhead passes the ceiling by 3 1/8 in in the backswing: tighter than your 5 7/8 in margin."},
		{"tight, metric", units.Metric,
			checkOf("Host", fit.Tight, 0.0829, near("ceiling", "clubhead", "backswing")),
			"Host, driver, middle tee: the clubhead passes the ceiling by 82 mm in the backswing: tighter than your 150 mm margin."},
		{"tight by a hair", units.Imperial,
			checkOf("Host", fit.Tight, 0.1499, near("screen", "clubhead", "release")),
			"Host, driver, middle tee: the clubhead passes the screen by 5 7/8 in in the release: just short of your 5 7/8 in margin."},
		{"touching", units.Imperial,
			checkOf("Host", fit.Tight, 0.002, near("left return", "lead hand", "finish")),
			"Host, driver, middle tee: the lead hand passes the screen's left return by less than 1/8 in at the finish: tighter than your 5 7/8 in margin."},
		{"clear", units.Imperial,
			checkOf("Host", fit.Clear, 0.2351, near("the duct", "trunk", "impact")),
			"Host, driver, middle tee: clear; the closest is the golfer's trunk, 9 1/4 in from the duct at impact."},
		{"clear, metric, beyond a metre", units.Metric,
			checkOf("Host", fit.Clear, 1.2349, near("back wall", "grip", "takeaway")),
			"Host, driver, middle tee: clear; the closest is the grip, 1.234 m from the back wall in the takeaway."},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			w := Words{Units: c.units, Margin: 0.15}
			if got := w.checkSentence(c.check); got != c.want {
				t.Errorf("checkSentence\n got %s\nwant %s", got, c.want)
			}
		})
	}
}

// TestStrikes puts first touches into words: when, how fast, and against which
// surface, which need not be the one that a swing goes deepest into.
func TestStrikes(t *testing.T) {
	first := func(surface string, phase swing.Phase, time, afterImpact, speed float64) *fit.Contact {
		return &fit.Contact{Nearest: fit.Nearest{Surface: surface, Part: "clubhead", Phase: phase, Time: time, Speed: speed}, AfterImpact: afterImpact}
	}
	cases := []struct {
		name  string
		units string
		first *fit.Contact
		want  string
	}{
		{"in the backswing", units.Imperial, first("left wall", "backswing", 0.87, -0.48, 6.01), "the clubhead strikes the left wall in the backswing, 0.5 s before impact, at 14 mph; the loosest swing would go 1 5/8 in past it."},
		{"metric, speed rounded up", units.Metric, first("left wall", "follow-through", 1.47, 0.13, 14.02), "the clubhead strikes the left wall in the follow-through, 0.1 s after impact, at 15 m/s; the loosest swing would go 42 mm past it."},
		{"just before impact", units.Metric, first("left wall", "downswing", 1.33, -0.04, 40), "the clubhead strikes the left wall in the downswing, just before impact, at 40 m/s; the loosest swing would go 42 mm past it."},
		{"just after impact", units.Metric, first("left wall", "release", 1.37, 0.03, 40), "the clubhead strikes the left wall in the release, just after impact, at 40 m/s; the loosest swing would go 42 mm past it."},
		{"at impact", units.Metric, first("left wall", "impact", 1.34, -0.001, 40), "the clubhead strikes the left wall at impact, at 40 m/s; the loosest swing would go 42 mm past it."},
		{"from the start", units.Metric, first("left wall", "address", 0, -1.3, 0), "the clubhead strikes the left wall at address; the loosest swing would go 42 mm past it."},
		{"another surface first", units.Metric, first("rafters, left", "backswing", 0.87, -0.48, 6.01), "the clubhead strikes “rafters, left” in the backswing, 0.5 s before impact, at 7 m/s; the loosest swing would go 42 mm past the left wall in the follow-through."},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			check := striking("Host", -0.0412, near("left wall", "clubhead", "follow-through"))
			check.Contact = c.first
			if got, want := (Words{Units: c.units, Margin: 0.15}).checkSentence(check), "Host, driver, middle tee: "+c.want; got != want {
				t.Errorf("checkSentence\n got %s\nwant %s", got, want)
			}
		})
	}
}

// TestModel: the model's error is rounded up, and a finer margin is named.
func TestModel(t *testing.T) {
	const end = " of recorded ones on average; no tighter reading means anything."
	cases := []struct {
		name          string
		units         string
		margin, error float64
		want          string
	}{
		{"imperial", units.Imperial, 0.15, 0.05, "The model's paths lie within 2 in" + end},
		{"metric, rounded up", units.Metric, 0.15, 0.0462, "The model's paths lie within 47 mm" + end},
		{"as large as the margin", units.Metric, 0.05, 0.05, "The model's paths lie within 50 mm" + end},
		{"larger than the margin", units.Imperial, 0.0254, 0.05, "The model's paths lie within 2 in" + end + " That is more than your 1 in margin: take anything under 2 in as tight, whatever the verdict."},
		{"no margin", units.Metric, 0, 0.05, "The model's paths lie within 50 mm" + end + " That is more than your 0 mm margin: take anything under 50 mm as tight, whatever the verdict."},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			w := Words{Units: c.units, Margin: c.margin}
			if got := w.model(fit.Report{ModelError: c.error}); got != c.want {
				t.Errorf("model\n got %s\nwant %s", got, c.want)
			}
		})
	}
}

func TestTeeThatSaysTee(t *testing.T) {
	c := fit.Check{Player: "Host", Club: "driver", Tee: "Back tee"}
	if got, want := Swinger(c), "Host, driver, Back tee"; got != want {
		t.Errorf("swinger = %q, want %q", got, want)
	}
}

func TestShare(t *testing.T) {
	cases := []struct {
		name        string
		units       string
		verdict     fit.Verdict
		clearance   float64
		tried, hits int
		want        string
	}{
		{"touches", units.Imperial, fit.Strikes, -0.04, 256, 46, "Touches in 46 of 256 swings tried."},
		{"touches, with its error", units.Imperial, fit.Strikes, -0.04, 256, 46, "Touches in 46 of 256 swings tried: 18 % of all such swings, give or take 5 %."},
		{"touches in all", units.Imperial, fit.Strikes, -0.4, 1024, 1024, "Touches in 1,024 of 1,024 swings tried."},
		{"only the corners touch", units.Imperial, fit.Strikes, -0.01, 256, 0, "None of the 256 swings tried touches, but the widest swing to be expected does."},
		{"tight", units.Imperial, fit.Tight, 0.0775, 1024, 0, "No touch in all 1,024 swings tried; the closest passes by 3 in."},
		{"clear", units.Imperial, fit.Clear, 0.0775, 1024, 0, "Clear in all 1,024 swings tried; the closest passes by 3 in."},
		{"clear, metric", units.Metric, fit.Clear, 0.2359, 256, 0, "Clear in all 256 swings tried; the closest passes by 235 mm."},
		{"clear, with its error", units.Metric, fit.Clear, 0.2359, 256, 0, "Clear in all 256 swings tried; the closest passes by 235 mm. By the count alone, up to 2 % of all such swings might still touch."},
		{"tight, with its error", units.Metric, fit.Tight, 0.0359, 256, 0, "No touch in all 256 swings tried; the closest passes by 35 mm. By the count alone, up to 2 % of all such swings might still touch."},
		{"only the corners touch, with its error", units.Metric, fit.Strikes, -0.01, 256, 0, "None of the 256 swings tried touches, but the widest swing to be expected does. By the count alone, up to 2 % of all such swings might still touch."},
		{"one swing", units.Metric, fit.Clear, 0.2359, 1, 0, "One swing tried; it passes by 235 mm."},
		{"one swing that touches", units.Metric, fit.Strikes, -0.2, 1, 1, "Touches in the one swing tried."},
		{"not counted", units.Metric, fit.Clear, 0.2, 0, 0, ""},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			w := Words{Units: c.units, Margin: 0.15}
			check := fit.Check{Verdict: c.verdict, Clearance: c.clearance, Tried: c.tried, Hits: c.hits}
			if strings.Contains(c.name, "error") {
				check.HitShare, check.HitError = float64(c.hits)/float64(c.tried), 0.047
				if c.hits == 0 {
					check.HitError = 0.0074 // what none of 256 leaves
				}
			}
			if got := w.share(check); got != c.want {
				t.Errorf("share\n got %s\nwant %s", got, c.want)
			}
		})
	}
}

func TestSentences(t *testing.T) {
	strike := striking("Tall guest", -0.042, near("left wall", "clubhead", "follow-through"))
	strike.Typical = 0.031
	strike.Causes = []fit.Cause{{Trait: "wider follow-through", Cost: 0.038}, {Trait: "sway", Cost: 0.01}}
	deep := strike
	deep.Typical = -0.02
	deep.ContactTypical = &fit.Contact{Nearest: fit.Nearest{Surface: "left wall", Part: "clubhead", Phase: "follow-through", Time: 1.47, Speed: 18.1}, AfterImpact: 0.13}
	deep.Causes = []fit.Cause{{Trait: "steeper plane", Cost: -0.02}}
	tight := checkOf("Host", fit.Tight, 0.08, near("ceiling", "clubhead", "backswing"))
	clear := checkOf("Host", fit.Clear, 0.2351, near("ceiling", "clubhead", "backswing"))
	clear2 := checkOf("Tall guest", fit.Clear, 0.3, near("ceiling", "clubhead", "top"))
	clear3 := clear
	clear3.Club = "7-iron"

	const (
		strikes  = "Tall guest, driver, middle tee: the clubhead strikes the left wall in the follow-through, 0.1 s after impact, at 52 mph; the loosest swing would go 1 3/4 in past it."
		hostIs   = "Host, driver, middle tee: clear; the closest is the clubhead, 9 1/4 in from the ceiling in the backswing."
		passes   = "The clubhead passes there at 48 mph."
		hostMean = "At its closest the typical swing is 11 1/8 in from a surface, the loosest 9 1/4 in."
	)
	cases := []struct {
		name         string
		checks       []fit.Check
		focus, worst int
		headline     string // with who is worst
		bar          string
		verdict      string
		detail       []string
	}{
		{"the worst strikes", []fit.Check{clear, strike, tight}, 1, 1,
			"Strikes: 1 of 3. Worst: Tall guest with the driver.", "Strikes: 1 of 3. Tall guest, driver: strikes.", strikes, []string{
				"At its closest the typical swing is 1 1/8 in from a surface, but the loosest goes 1 3/4 in past what it strikes.",
				"What tells most there from swing to swing: wider follow-through, taking 1 1/2 in.",
				"Of 3 checks, 1 strikes, 1 is tight and 1 is clear.", leftOut, before}},
		{"even the typical strikes", []fit.Check{deep}, 0, 0,
			"Strikes. ", "Strikes. Tall guest, driver.", strikes, []string{
				"The typical swing goes 7/8 in past what it strikes, the loosest 1 3/4 in.",
				"The typical swing first touches the left wall with the clubhead in the follow-through, 0.1 s after impact, at 41 mph.",
				"What tells most there from swing to swing: steeper plane, giving 3/4 in.", leftOut, before}},
		{"looking at another check", []fit.Check{clear, strike}, 0, 1,
			"Strikes: 1 of 2. Worst: Tall guest with the driver.", "Strikes: 1 of 2. Host, driver: clear.", hostIs, []string{
				"Worst in this plan: " + strikes, hostMean, passes,
				"Of 2 checks, 1 strikes and 1 is clear.", leftOut, before}},
		{"everyone clears", []fit.Check{clear, clear2}, 0, 0,
			"Clear: all 2. Closest: Host with the driver.", "Clear: all 2. Host, driver: clear.",
			hostIs, []string{hostMean, passes, "Of 2 checks, 2 are clear.", leftOut, before}},
		{"one player clears with all clubs", []fit.Check{clear, clear3}, 0, 0,
			"Clear: all 2. Closest: Host with the driver.", "Clear: all 2. Host, driver: clear.",
			hostIs, []string{hostMean, passes, "Of 2 checks, 2 are clear.", leftOut, before}},
		{"a single check", []fit.Check{clear}, 0, 0,
			"Clear. ", "Clear. Host, driver.", hostIs, []string{hostMean, passes, leftOut, before}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := Tell(plan.Plan{Units: units.Imperial, Margin: 0.15}, fit.Report{Checks: c.checks}, c.focus, c.worst)
			if said := got.Headline + " " + got.Worst; said != c.headline || got.Bar != c.bar {
				t.Errorf("headline %q, bar %q\nwant %q, %q", said, got.Bar, c.headline, c.bar)
			}
			if got.Verdict != c.verdict {
				t.Errorf("verdict\n got %s\nwant %s", got.Verdict, c.verdict)
			}
			if !slices.Equal(got.Detail, c.detail) {
				t.Errorf("detail\n got %q\nwant %q", got.Detail, c.detail)
			}
			for _, s := range append(got.Detail, got.Headline, got.Verdict, got.Share, got.Model) {
				if strings.Contains(strings.ToLower(s), "safe") {
					t.Errorf("an answer calls a room safe: %s", s)
				}
			}
		})
	}
}

// No sentence claims more room than there is: the figure it names, read back,
// is never above the clearance, nor below an overshoot.
func TestLabelsNeverFlatter(t *testing.T) {
	for _, system := range []string{units.Imperial, units.Metric} {
		w := Words{Units: system}
		for i := range 4000 {
			m := float64(i) * 0.000271
			if s := w.Gap(m); !strings.HasPrefix(s, "less") {
				if got, err := units.ParseLength(s, system); err != nil || got > m+1e-8 {
					t.Fatalf("gap(%v m) = %q, which is %v m (%v)", m, s, got, err)
				}
			}
			if s := w.past(-m); !strings.HasPrefix(s, "less") {
				if got, err := units.ParseLength(s, system); err != nil || got < m-1e-8 {
					t.Fatalf("past(%v m) = %q, which is %v m (%v)", -m, s, got, err)
				}
			}
		}
	}
}
