package main

import (
	"strings"
	"testing"
)

func TestSure(t *testing.T) {
	code, out, errOut := invoke(t, "", "sure")
	if code != exitClear || !strings.HasPrefix(out, "Of ") || !strings.Contains(out, "\nShoulders, turn ") {
		t.Errorf("sure = %d with %.200q and stderr %q, want the summary and the figures", code, out, errOut)
	}
	if code, _, errOut := invoke(t, "", "sure", "-wide"); code != exitBad || !strings.Contains(errOut, "-wide") {
		t.Errorf("sure -wide = %d with stderr %q, want %d and the flag named", code, errOut, exitBad)
	}
}
