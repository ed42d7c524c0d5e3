//go:build browser

package browsertest

import (
	"os"
	"path/filepath"
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
)

// The page's answer is the command line's: the same checks with the same
// verdicts, computed natively and in the browser.
func TestPageAgreesWithNative(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, alone+"&sheet=sure")
	for _, name := range []string{"low-ceiling.json", "narrow.json", "left-hander.json", "clear-room.json"} {
		t.Run(name, func(t *testing.T) {
			tb.in(t)
			file := filepath.Join(plansDir, name)
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			p, err := plan.Parse(data)
			if err != nil {
				t.Fatal(err)
			}
			report, err := new(fit.Lab).Check(p)
			if err != nil {
				t.Fatal(err)
			}
			tb.openPlan(file)
			shown := map[cell]bool{}
			for _, c := range tb.cells() {
				shown[c] = true
			}
			if len(shown) != len(report.Checks) {
				t.Errorf("the page shows %d checks, want %d", len(shown), len(report.Checks))
			}
			for _, c := range report.Checks {
				want := cell{c.Player, c.Club, c.Tee, string(c.Verdict)}
				if !shown[want] {
					t.Errorf("the page does not show %+v", want)
				}
			}
		})
	}
}
