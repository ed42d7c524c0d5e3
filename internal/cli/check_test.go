package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"wideberth/internal/link"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
)

const plansDir = "../../testdata/plans"

// invoke runs one command line and returns what came of it.
func invoke(t *testing.T, stdin string, args ...string) (code int, out, errOut string) {
	t.Helper()
	var o, e bytes.Buffer
	code = run(t.Context(), args, strings.NewReader(stdin), &o, &e)
	return code, o.String(), e.String()
}

func planText(t *testing.T, name string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(plansDir, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// withCeiling returns a plan's text with the ceiling at another height (m).
func withCeiling(t *testing.T, text string, height float64) string {
	t.Helper()
	var doc map[string]any
	if err := json.Unmarshal([]byte(text), &doc); err != nil {
		t.Fatal(err)
	}
	doc["room"].(map[string]any)["height"] = height
	delete(doc, "screen") // which may not stand higher than the ceiling
	out, err := json.Marshal(doc)
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// A hall is clear; with its ceiling brought down to half the margin over the
// highest swing it is tight.
func TestCheckVerdicts(t *testing.T) {
	hall := planText(t, "clear-room.json")
	const hallHeight, halfMargin = 5.0, 0.075
	var report fit.Report
	if _, out, _ := invoke(t, hall, "check", "-"); json.Unmarshal([]byte(out), &report) != nil {
		t.Fatalf("the report is not JSON: %q", out)
	}
	over := report.Checks[0].BySurface["ceiling"]
	for _, c := range report.Checks {
		over = min(over, c.BySurface["ceiling"])
	}
	tests := []struct {
		name, plan string
		verdict    fit.Verdict
		code       int
	}{
		{"clear", hall, fit.Clear, exitClear},
		{"tight", withCeiling(t, hall, hallHeight-over+halfMargin), fit.Tight, exitTight},
		{"ceiling", planText(t, "low-ceiling.json"), fit.Strikes, exitStrikes},
		{"walls", planText(t, "narrow.json"), fit.Strikes, exitStrikes},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			code, out, errOut := invoke(t, tt.plan, "check", "-")
			if code != tt.code || errOut != "" {
				t.Errorf("check = %d with stderr %q, want %d and silence", code, errOut, tt.code)
			}
			var report fit.Report
			if err := json.Unmarshal([]byte(out), &report); err != nil {
				t.Fatalf("the report is not JSON: %v", err)
			}
			if report.Verdict != tt.verdict || len(report.Checks) == 0 {
				t.Errorf("verdict %q with %d checks, want %q with some", report.Verdict, len(report.Checks), tt.verdict)
			}
		})
	}
}

// The same plan gives the same bytes, from a file, from standard input or from a
// page's address.
func TestCheckIsDeterministic(t *testing.T) {
	doc, err := plan.Parse([]byte(planText(t, "left-hander.json")))
	if err != nil {
		t.Fatal(err)
	}
	address, err := link.Encode(doc)
	if err != nil {
		t.Fatal(err)
	}
	if _, third, _ := invoke(t, "", "check", "https://example.org/"+address); third != reportOf(t, "left-hander.json") {
		t.Errorf("checked from its address the plan has another report:\n%s", third)
	}
	_, first, _ := invoke(t, "", "check", filepath.Join(plansDir, "left-hander.json"))
	_, second, _ := invoke(t, planText(t, "left-hander.json"), "check", "-")
	if first != second || first == "" {
		t.Errorf("two checks of one plan differ: %d and %d bytes", len(first), len(second))
	}
}

func reportOf(t *testing.T, name string) string {
	t.Helper()
	_, out, _ := invoke(t, planText(t, name), "check", "-")
	return out
}

// Every plan that is wrong gives code 3, one sentence and no report.
func TestCheckBadPlans(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(plansDir, "bad-*.json"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no bad plans in %s: %v", plansDir, err)
	}
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			code, out, errOut := invoke(t, "", "check", file)
			if code != exitBad || out != "" {
				t.Errorf("check = %d with %d bytes of report, want %d and none", code, len(out), exitBad)
			}
			if sentence := strings.TrimSuffix(errOut, "\n"); len(sentence) < 20 || strings.Contains(sentence, "\n") {
				t.Errorf("stderr = %q, want one sentence", errOut)
			}
		})
	}
}

func TestCheckBadInput(t *testing.T) {
	tests := []struct {
		name, stdin string
		args        []string
		want        string
	}{
		{"no plan named", "", []string{"check"}, "name one plan"},
		{"two plans named", "", []string{"check", "a.json", "b.json"}, "got 2"},
		{"no such file", "", []string{"check", "no-such.json"}, "no-such.json"},
		{"a damaged link", "", []string{"check", "https://example.org/#p=AAAAAAAA"}, "damaged or cut short"},
		{"empty", "", []string{"check", "-"}, "the plan is empty"},
		{"a megabyte and more", strings.Repeat(" ", 3<<20), []string{"check", "-"}, "more than the 1 MB"},
		{"no player named", "", []string{"swing", "-club", "driver", "-tee", "middle", "x.json"}, "-player NAME"},
		{"unknown player", planText(t, "low-ceiling.json"), []string{"swing", "-player", "Nobody", "-club", "driver", "-tee", "middle", "-"}, "Nobody"},
		{"unknown club", planText(t, "low-ceiling.json"), []string{"swing", "-player", "Host", "-club", "spoon", "-tee", "middle", "-"}, "spoon"},
		{"unknown tee", planText(t, "low-ceiling.json"), []string{"swing", "-player", "Host", "-club", "driver", "-tee", "moon", "-"}, "moon"},
		{"negative sample", planText(t, "low-ceiling.json"), []string{"swing", "-player", "Host", "-club", "driver", "-tee", "middle", "-sample", "-1", "-"}, "-1"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			code, out, errOut := invoke(t, tt.stdin, tt.args...)
			if code != exitBad || out != "" || !strings.Contains(errOut, tt.want) {
				t.Errorf("run(%q) = %d, %d bytes out, stderr %q; want %d, none, a sentence with %q", tt.args, code, len(out), errOut, exitBad, tt.want)
			}
		})
	}
}
