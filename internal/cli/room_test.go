package main

import (
	"encoding/json"
	"flag"
	"strings"
	"testing"

	"wideberth/internal/sim/build/figures"
	"wideberth/internal/sim/plan"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// TestGoldenRoom: what room prints for the demonstration plan, numbers to a thousandth
// of a millimetre, cautions and rules left out (they are the same for every plan).
func TestGoldenRoom(t *testing.T) {
	code, out, errOut := invoke(t, string(plan.Demo().JSON()), "room", "-")
	if code != exitClear || errOut != "" {
		t.Fatalf("%d, %s", code, errOut)
	}
	var report map[string]any
	if err := json.Unmarshal([]byte(out), &report); err != nil {
		t.Fatal(err)
	}
	for _, same := range []string{"cautions", "rules"} {
		if list, _ := report[same].([]any); len(list) < 10 {
			t.Errorf("%d %s", len(list), same)
		}
		delete(report, same)
	}
	if err := figures.Held("demo.golden.json", report, *update); err != nil {
		t.Error(err)
	}
}

// TestRoomRefuses: a bad value of what is built is refused by its sentence, by room
// and by check too, which does not need it.
func TestRoomRefuses(t *testing.T) {
	text := strings.Replace(string(plan.Demo().JSON()), `"lumens":3500,"offset"`, `"lumens":3,"offset"`, 1)
	for _, verb := range []string{"room", "check"} {
		code, out, errOut := invoke(t, text, verb, "-")
		if code != exitBad || out != "" || !strings.Contains(errOut, "projector: light 3 lumens is outside 50–100000 lumens") {
			t.Errorf("%s: %d, %q", verb, code, errOut)
		}
	}
}
