package remedy

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

var update = flag.Bool("update", false, "rewrite the golden answers")

// TestGoldenAnswers holds, to the millimetre, what is offered for a check, for everybody,
// for what hangs, and how far club and golfer may go, in rooms in which different things
// help.
func TestGoldenAnswers(t *testing.T) {
	lamp := lowLamp(t)
	iron := plantest.OneClub("7-iron")
	iron.Players = iron.Players[:2]
	wide := lamp
	wide.Room.Width, wide.Room.Length, wide.Hung = 6, 9, nil
	demo := plan.Demo().WithDefaults()
	demo.Players, demo.Clubs = demo.Players[1:2], demo.Clubs[:1]
	demo.Players[0].Clubs = nil
	var b strings.Builder
	line := func(what string, r Remedy) {
		fmt.Fprintf(&b, "  %s: %s %q %s by %.3f to %.3f, then %s %.3f, of all %s %.3f:", what, r.Kind, r.Subject, r.Towards, r.Amount, r.Value, r.Verdict, r.Clearance, r.PlanVerdict, r.PlanClearance)
		for _, e := range r.Edits {
			fmt.Fprintf(&b, " %s=%.3f/%v", e.Path, e.Value, e.Remove)
		}
		b.WriteByte('\n')
	}
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct {
		name string
		plan plan.Plan
	}{{"a low lamp", lamp}, {"an iron in the loft", iron}, {"a wide room", wide}, {"the demo's tall guest", demo}} {
		doc := plantest.Checked(c.plan)
		var lab fit.Lab
		report, err := lab.Check(doc)
		must(err)
		fmt.Fprintf(&b, "%s\n", c.name)
		for _, x := range report.Checks {
			fmt.Fprintf(&b, " %s, %s, %s: %s %.3f\n", x.Player, x.Club, x.Tee, x.Verdict, x.Clearance)
			solved, err := Solve(&lab, doc, x.Player, x.Club, x.Tee)
			must(err)
			for _, r := range solved {
				line("solved", r)
			}
			limits, err := Limits(&lab, doc, x.Player, x.Club, x.Tee)
			must(err)
			for _, r := range limits {
				line("limit", r)
			}
		}
		changes, err := Changes(&lab, doc, report, everybody)
		must(err)
		for i, change := range changes {
			for _, r := range change.Steps {
				line(fmt.Sprintf("change %d of %d", i+1, change.Count), r)
			}
		}
		casts, err := lab.Casts(doc.Plan(), nil, nil)
		must(err)
		for _, h := range Things(doc.Plan(), casts) {
			fmt.Fprintf(&b, " hung %q: %s %.3f of %s, %s, %s\n", h.Name, h.Verdict, h.Clearance, h.Player, h.Club, h.Tee)
			for _, r := range h.Remedies {
				line("hung", r)
			}
		}
	}
	file := filepath.Join("testdata", "answers.txt")
	if *update {
		must(os.MkdirAll("testdata", 0o755))
		must(os.WriteFile(file, []byte(b.String()), 0o644))
	}
	want, err := os.ReadFile(file)
	must(err)
	if got := b.String(); got != string(want) {
		t.Errorf("the answers are now\n%s\nand were in %s\n%s", got, file, want)
	}
}
