package words

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"testing"

	leanjson "wideberth/internal/lean/json"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

var update = flag.Bool("update", false, "rewrite the golden reports")

// TestGoldenReports holds the reports of some plans to the byte. It also runs
// compiled for the browser, so the bytes are the same there.
func TestGoldenReports(t *testing.T) {
	plans := map[string]plan.Plan{"carriage-house-loft": plan.Demo(), "tight-loft": plantest.Loft()}
	for _, name := range []string{"clear-room", "low-ceiling", "left-hander"} {
		if testing.Short() && name != "left-hander" {
			continue // the demo and one more are enough where time is short
		}
		data, err := os.ReadFile(filepath.Join("../../../testdata/plans", name+".json"))
		if err != nil {
			t.Fatal(err)
		}
		c, err := plan.Parse(data)
		if err != nil {
			t.Fatal(err)
		}
		plans[name] = c.Plan()
	}
	for name, p := range plans {
		t.Run(name, func(t *testing.T) {
			var lab fit.Lab
			report, err := lab.Check(plantest.Checked(p))
			if err != nil {
				t.Fatal(err)
			}
			if err := Advise(&lab, plantest.Checked(p), &report); err != nil {
				t.Fatal(err)
			}
			compact, err := leanjson.Encode(report)
			if err != nil {
				t.Fatal(err)
			}
			var pretty bytes.Buffer
			if err := json.Indent(&pretty, compact, "", "  "); err != nil {
				t.Fatal(err)
			}
			got := append(pretty.Bytes(), '\n')
			file := filepath.Join("../../../testdata/reports", name+".json")
			if *update {
				if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(file, got, 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(got, want) {
				at := 0
				for at < min(len(got), len(want)) && got[at] == want[at] {
					at++
				}
				t.Errorf("the report differs from %s at byte %d: …%s…, want …%s… (go test ./internal/solver/words -update rewrites it)",
					file, at, around(got, at), around(want, at))
			}
		})
	}
}

// around returns what stands about a byte.
func around(b []byte, at int) []byte { return b[max(0, at-60):min(len(b), at+40)] }
