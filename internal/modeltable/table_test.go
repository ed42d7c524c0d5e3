package modeltable

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"strings"
	"sync"
	"testing"

	"github.com/andybalholm/brotli"

	"wideberth/internal/sim/family"
	"wideberth/internal/sim/swing/published"
)

var update = flag.Bool("update", false, "write the table to "+goldenFile)

const goldenFile = "testdata/table.txt"

var newOnce = sync.OnceValues(New)

func table(t *testing.T) Table {
	t.Helper()
	table, err := newOnce()
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// TestGolden notices every change of the model, of the measured figures and of
// the words. After a wanted one: go test ./internal/modeltable -update, and read the diff.
func TestGolden(t *testing.T) {
	var got bytes.Buffer
	if err := table(t).Print(&got); err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile(goldenFile, got.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(goldenFile)
	if err != nil {
		t.Fatal(err)
	}
	gotLines, wantLines := strings.Split(got.String(), "\n"), strings.Split(string(want), "\n")
	for i := range min(len(gotLines), len(wantLines)) {
		if gotLines[i] != wantLines[i] {
			t.Errorf("line %d of the table\n got %s\nwant %s", i+1, gotLines[i], wantLines[i])
		}
	}
	if len(gotLines) != len(wantLines) {
		t.Errorf("the table has %d lines, want %d", len(gotLines), len(wantLines))
	}
}

func TestEveryRowSaysWhereItComesFrom(t *testing.T) {
	table := table(t)
	known := map[string]bool{}
	for _, s := range table.Statuses {
		known[s.Word] = s.Meaning != ""
	}
	rows, named := 0, make([]bool, len(table.Sources))
	for _, g := range table.Groups {
		if g.Name == "" || g.About == "" || len(g.Rows) == 0 {
			t.Errorf("the group %q says nothing: %q, %d rows", g.Name, g.About, len(g.Rows))
		}
		for _, r := range g.Rows {
			rows++
			if r.Cite == "" || r.Source < 0 || r.Source >= len(table.Sources) {
				t.Errorf("%s, %s, %s has no source: %q, %d", g.Name, r.Quantity, r.Club, r.Cite, r.Source)
				continue
			}
			named[r.Source] = true
			if !known[r.Status] {
				t.Errorf("%s, %s, %s has the status %q, want one that is explained", g.Name, r.Quantity, r.Club, r.Status)
			}
			if len(r.Measured) == 0 || len(r.Central) == 0 || len(r.Says) == 0 {
				t.Errorf("%s, %s, %s: measured %q, central %q, says %q", g.Name, r.Quantity, r.Club, r.Measured, r.Central, r.Says)
			}
			for _, text := range [][]string{r.Measured, r.Central, r.Off, r.Family} {
				for _, s := range text {
					if !strings.ContainsAny(s, "°%:ms") && !strings.Contains(s, " in") {
						t.Errorf("%s, %s, %s: %q has no unit", g.Name, r.Quantity, r.Club, s)
					}
				}
			}
		}
	}
	figures, err := published.Figures()
	if err != nil {
		t.Fatal(err)
	}
	want := 0
	for _, f := range figures {
		want += len(f.Clubs())
	}
	if rows != want {
		t.Errorf("the table has %d rows, want every figure with every club of it: %d", rows, want)
	}
	for i, used := range named {
		if !used {
			t.Errorf("no row names the source %q", table.Sources[i])
		}
	}
}

// What a row says is what its figures say.
func TestRowOf(t *testing.T) {
	compared := func(central, least, most, allLeast, allMost float64) published.Comparison {
		return published.Comparison{
			Figure: published.Figure{Unit: "m", Low: 1, High: 1.25, Status: published.Read},
			Club:   "driver", Central: central,
			Family: &published.Span{Least: least, Most: most}, All: &published.Span{Least: allLeast, Most: allMost},
		}
	}
	for _, c := range []struct {
		name            string
		comparison      published.Comparison
		mark, off, says string
	}{
		{"inside", compared(1.1, 0.9, 1.2, 0.8, 1.3), Within, "", "Within"},
		{"inside, not varied", compared(1.1, 1.1, 1.1, 1.1, 1.1), Within, "", "Within"},
		{"reached by the family", compared(1.3, 1.2, 1.4, 1.1, 1.5), Within, "0.050 m above / 2.0 in above", "Within"},
		{"reached by others", compared(0.9, 0.8, 0.95, 0.7, 1.1), Others, "0.100 m below / 4.0 in below", "Outside by 0.050 m / Outside by 2.0 in"},
		{"reached by nobody", compared(1.4, 1.2501, 1.5, 1.2501, 1.6), Outside, "0.150 m above / 6.0 in above", "Outside by 0.001 m / Outside by 0.1 in"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := rowOf(c.comparison)
			if off, says := strings.Join(r.Off, " / "), strings.Join(r.Says, " / "); r.Mark != c.mark || off != c.off || says != c.says {
				t.Errorf("rowOf = %s, %q, %q, want %s, %q, %q", r.Mark, off, says, c.mark, c.off, c.says)
			}
			if (r.Then == "") != (r.Mark == Within) {
				t.Errorf("then = %q for %s, want words for what is not within", r.Then, r.Mark)
			}
			if varies := c.comparison.Family.Least != c.comparison.Family.Most; varies != (r.Family != nil) {
				t.Errorf("family = %q, want it only where it varies", r.Family)
			}
		})
	}
}

func TestDrawn(t *testing.T) {
	got := drawn(published.Comparison{Figure: published.Figure{Low: 10, High: 12}, Central: 13, Family: &published.Span{Least: 11, Most: 14}})
	if want := (Drawn{[2]int{6, 50}, 72, [2]int{28, 94}}); got != want {
		t.Errorf("drawn of 10 to 12 with 13 in 11 to 14 = %v, want %v", got, want)
	}
	got = drawn(published.Comparison{Figure: published.Figure{Low: 2, High: 2}, Central: 2, Family: &published.Span{Least: 2, Most: 2}})
	if want := (Drawn{[2]int{50, 50}, 50, [2]int{50, 50}}); got != want {
		t.Errorf("drawn of a single value = %v, want it in the middle: %v", got, want)
	}
}

func TestSpan(t *testing.T) {
	for _, c := range []struct {
		unit      string
		low, high float64
		published bool
		want      string
	}{
		{"deg", 45, 50, true, "45 to 50°"},
		{"deg", -30, 20, true, "−30 to 20°"},
		{"deg", 20.8, 20.8, true, "20.8°"},
		{"deg", 45, 50.04, false, "45.0 to 50.0°"},
		{"deg", -0.04, -0.04, false, "0.0°"},
		{"m", 0.885, 0.98, true, "0.885 to 0.980 m / 34.8 to 38.6 in"},
		{"m/s", 40, 45, true, "40 to 45 m/s / 89.5 to 100.7 mph"},
		{"s", 0.75, 1, true, "0.75 to 1.00 s"},
		{"deg/s", 2413, 2413, true, "2413°/s"},
		{"stature", -0.309, -0.309, true, "−30.9 % of height"},
		{"", 2.7, 3.3, true, "2.7 to 3.3 : 1"},
	} {
		if got := strings.Join(unitNamed(c.unit).span(c.low, c.high, c.published), " / "); got != c.want {
			t.Errorf("span(%g, %g %s) = %q, want %q", c.low, c.high, c.unit, got, c.want)
		}
	}
}

func TestTypeset(t *testing.T) {
	for text, want := range map[string]string{
		"as remembered: 90 deg, 75-110":         "as remembered: 90°, 75–110",
		"J. Sports Sci. 26:181-188":             "J. Sports Sci. 26:181–188",
		"less 10-15 deg (-5 deg)":               "less 10–15° (−5°)",
		"funding from NSF EIA-0196217, 45.5 in": "funding from NSF EIA-0196217, 45.5 in",
		"a 5-iron is not a range":               "a 5-iron is not a range",
	} {
		if got := typeset(text); got != want {
			t.Errorf("typeset(%q) = %q, want %q", text, got, want)
		}
	}
}

// The page speaks of the size of the family in its own words.
func TestPageSaysTheSize(t *testing.T) {
	page, err := os.ReadFile("../../public/index.html")
	if err != nil {
		t.Fatal(err)
	}
	for _, words := range []string{"every player is a family of %d swings", "counting %d swings"} {
		if want := fmt.Sprintf(words, family.Sampled); !strings.Contains(string(page), want) {
			t.Errorf("the page does not say %q", want)
		}
	}
}

func TestFamilyIsAsLargeAsThePages(t *testing.T) {
	if published.Swings != family.Sampled {
		t.Errorf("the compared family has %d swings, want as many as a check tries: %d", published.Swings, family.Sampled)
	}
}

func TestJSONIsSmall(t *testing.T) {
	const most = 25_000 // bytes: it is fetched by somebody who waits for it
	text, err := json.Marshal(table(t))
	if err != nil {
		t.Fatal(err)
	}
	var twin bytes.Buffer
	w := brotli.NewWriterLevel(&twin, 11)
	if _, err := w.Write(text); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	t.Logf("%d bytes, %d compressed", len(text), twin.Len())
	if twin.Len() > most {
		t.Errorf("the table is %d bytes compressed, want at most %d", twin.Len(), most)
	}
	if strings.Contains(strings.ToLower(string(text)), "safe") {
		t.Error("the table calls something safe")
	}
}
