package ball

import (
	"testing"

	"wideberth/internal/sim/plan/plantest"
)

func TestPads(t *testing.T) {
	p := plantest.Loft().WithDefaults()
	var outs []Outcome
	for _, q := range Pairs(p, nil) {
		outs = append(outs, Spread(p, q.Player, q.Club, q.Tee, 0, 128))
	}
	names := map[string]Pad{}
	for _, pad := range Pads(outs) {
		names[pad.Surface] = pad
	}
	for _, want := range []string{"left wall", "right wall", "ceiling"} {
		if pad, ok := names[want]; !ok || pad.Fastest == 0 || len(pad.Mishits) == 0 || pad.Padded == nil || (pad.Bare.Reaches && pad.Padded.Reaches && pad.Padded.Speed > pad.Bare.Speed) {
			t.Errorf("pads %v miss the %s that mishits meet", names, want)
		}
	}
	if _, ok := names["screen"]; ok {
		t.Error("the screen is listed as bare and hard")
	}
}
