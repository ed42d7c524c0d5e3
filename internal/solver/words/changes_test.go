package words

import (
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/remedy"
	"wideberth/internal/units"
)

// made is a report in which checks have verdicts.
func made(verdicts ...fit.Verdict) fit.Report {
	var r fit.Report
	for _, v := range verdicts {
		r.Checks = append(r.Checks, fit.Check{Verdict: v})
	}
	return r
}

func TestOffer(t *testing.T) {
	const in = units.MetresPerInch
	w := Words{Units: units.Imperial, Margin: 6 * in}
	one := plan.Plan{Tees: []plan.Tee{{Name: "middle"}}}
	two := plan.Plan{Tees: []plan.Tee{{Name: "middle"}, {Name: "left-handers"}}}
	tee := func(towards string, inches float64) remedy.Remedy {
		return remedy.Remedy{Kind: remedy.KindTee, Subject: "middle", Towards: towards, Amount: inches * in}
	}
	club := remedy.Remedy{Kind: remedy.KindClub, Subject: "driver", Amount: -2 * in, Value: 43 * in}
	for _, c := range []struct {
		name  string
		p     plan.Plan
		steps []remedy.Remedy
		after fit.Report
		want  string
	}{
		{"a tee", one, []remedy.Remedy{tee(remedy.TowardsRight, 14)}, made(fit.Clear, fit.Clear), "Move the tee 14 in right: all 2 clear."},
		{"one of two tees", two, []remedy.Remedy{tee(remedy.TowardsBack, 14)}, made(fit.Clear), "Move the middle tee 14 in back: clear."},
		{"both ways", one, []remedy.Remedy{tee(remedy.TowardsTarget, 3), tee(remedy.TowardsLeft, 4), club}, made(fit.Clear, fit.Tight),
			"Move the tee 3 in forward and 4 in left and shorten the driver to 43 in: nothing strikes, 1 of 2 is tight."},
		{"three", one, []remedy.Remedy{club, {Kind: remedy.KindRemove, Subject: "lamp"}, {Kind: remedy.KindFloor, Amount: in}}, made(fit.Strikes, fit.Tight),
			"Shorten the driver to 43 in, take the lamp away and take 1 in off the floor build-up: 1 of 2 still strikes."},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := w.Offer(c.p, remedy.Change{Steps: c.steps, Report: c.after}).Sentence; got != c.want {
				t.Errorf("%q, want %q", got, c.want)
			}
		})
	}
}

// Who can play what: a club counts by the worst of somebody's tees.
func TestPlaysOf(t *testing.T) {
	check := func(player, club, tee string, v fit.Verdict) fit.Check {
		return fit.Check{Player: player, Club: club, Tee: tee, Verdict: v}
	}
	got := PlaysOf(fit.Report{Checks: []fit.Check{
		check("Host", "driver", "a", fit.Clear), check("Host", "driver", "b", fit.Strikes),
		check("Host", "iron", "a", fit.Clear), check("Host", "iron", "b", fit.Tight), check("Host", "wedge", "a", fit.Clear),
		check("Guest", "driver", "a", fit.Strikes),
		check("Friend", "iron", "a", fit.Clear),
	}})
	want := []string{"Host: wedge; iron, tight.", "Guest: no club.", "Friend: iron."}
	if len(got) != len(want) {
		t.Fatalf("%d players, want %d", len(got), len(want))
	}
	for i := range want {
		if got[i].Text != want[i] {
			t.Errorf("%q, want %q", got[i].Text, want[i])
		}
	}
}
