package ball_test

import (
	"encoding/json"
	"flag"
	"math"
	"os"
	"testing"

	"wideberth/internal/golden"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/ball/enclosure"
	"wideberth/internal/sim/plan/plantest"
)

var update = flag.Bool("update", false, "rewrite the golden files")

func TestGoldenDemo(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	pairs := ball.Pairs(p, nil)
	var got struct {
		Outcomes  []ball.Outcome      `json:"outcomes"`
		Pads      []ball.Pad          `json:"pads"`
		Enclosure enclosure.Enclosure `json:"enclosure"`
	}
	for _, q := range pairs {
		o := ball.Spread(p, q.Player, q.Club, q.Tee, q.HeadSpeed, 256)
		got.Outcomes = append(got.Outcomes, o)
	}
	got.Pads = ball.Pads(got.Outcomes)
	for i := range got.Outcomes { // long lists of little; their sum is checked elsewhere
		got.Outcomes[i].Heat.Counts = nil
	}
	var err error
	if got.Enclosure, err = enclosure.For(p, pairs, 0.98, 256); err != nil {
		t.Fatal(err)
	}
	data, err := json.Marshal(got)
	if err != nil {
		t.Fatal(err)
	}
	var tree any
	if err := json.Unmarshal(data, &tree); err != nil {
		t.Fatal(err)
	}
	if data, err = json.MarshalIndent(golden.Rounded(tree, micro), "", " "); err != nil {
		t.Fatal(err)
	}
	data = append(data, '\n')
	name := "../../../testdata/ball/demo.golden.json"
	if *update {
		if err := os.WriteFile(name, data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != string(data) {
		t.Errorf("outcomes of the demo plan differ from %s; go test -update rewrites it", name)
	}
}

// micro keeps six decimals: a micrometre, and the same on every processor.
func micro(v float64) float64 {
	return math.Round(v*1e6)/1e6 + 0 // no negative zero
}
