package swing_test

import (
	"bytes"
	"encoding/csv"
	"flag"
	"math"
	"os"
	"strconv"
	"testing"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
	"wideberth/internal/sim/swing/measure"
)

var update = flag.Bool("update", false, "write the model's own figures to testdata/swing/model.csv")

const goldenFile = "../../../testdata/swing/model.csv"

// goldenTol is how far a figure may be from the file, as a fraction of it or in
// its unit: what other processors and libraries may change, far below what a
// changed constant of the model does.
const goldenTol = 2e-4

// referenceHeight is the stature (m) of the golfer whose figures model.csv keeps:
// the one whom the package published compares with measured swings.
const referenceHeight = 1.75

// modelRows is what the model says of its reference golfer: every measurement
// of the central swings, and how much each trait moves the far points, per
// standard deviation.
func modelRows(t *testing.T) [][]string {
	row := func(club, quantity, unit string, v float64) []string {
		return []string{club, quantity, unit, strconv.FormatFloat(v, 'f', 5, 64)}
	}
	rows := [][]string{{"club", "quantity", "unit", "value"}}
	for _, c := range []plan.Club{plan.DefaultClub(plan.KindDriver, "driver"), plan.DefaultClub(plan.KindIron, "7-iron"), plan.DefaultClub(plan.KindWedge, "wedge")} {
		club := c.Name
		f, err := swing.NewFamily(player(referenceHeight), swing.NewClub(c), swing.Style{})
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range measure.Swing(f.Central) {
			rows = append(rows, row(club, m.Name, m.Unit, m.Value))
		}
		for trait := range swing.NumTraits {
			var e [2]swing.Extent
			for i, z := range []float64{-1, 1} {
				s, err := f.Member(swing.Single(trait, z))
				if err != nil {
					t.Fatal(err)
				}
				e[i] = swing.ExtentOf(s, 0.01)
			}
			for _, far := range []struct {
				name       string
				less, more float64
			}{
				{"highest going back", e[0].Back, e[1].Back}, {"highest going through", e[0].Through, e[1].Through},
				{"farthest behind", e[0].Box.Max.Y, e[1].Box.Max.Y}, {"farthest to the target", e[0].Box.Max.X, e[1].Box.Max.X},
				{"farthest to the trail side", -e[0].Box.Min.X, -e[1].Box.Min.X},
			} {
				rows = append(rows, row(club, trait.String()+": "+far.name, "m per SD", (far.more-far.less)/2))
			}
		}
	}
	return rows
}

// TestModelGolden notices every change of the model, wanted or not. After a
// wanted one: go test ./internal/sim/swing -run Golden -update, and read the diff.
func TestModelGolden(t *testing.T) {
	rows := modelRows(t)
	if *update {
		var buf bytes.Buffer
		buf.WriteString("# The model's own figures for a golfer of 1.75 m, written by go test ./internal/sim/swing -run Golden -update.\n" +
			"# Not a reference: swing/published holds those. This file shows what a change of the model changes.\n")
		w := csv.NewWriter(&buf)
		if err := w.WriteAll(rows); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(goldenFile, buf.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	file, err := os.Open(goldenFile)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	want, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != len(want) {
		t.Fatalf("the model has %d figures, want %d", len(rows)-1, len(want)-1)
	}
	for i := 1; i < len(rows); i++ {
		got, want := rows[i], want[i]
		if got[0] != want[0] || got[1] != want[1] || got[2] != want[2] {
			t.Fatalf("row %d is %v, want %v", i, got[:3], want[:3])
		}
		a, _ := strconv.ParseFloat(got[3], 64)
		b, err := strconv.ParseFloat(want[3], 64)
		if err != nil || math.Abs(a-b) > goldenTol*max(1, math.Abs(b)) {
			t.Errorf("%s, %s = %s, want %s %s", got[0], got[1], got[3], want[3], got[2])
		}
	}
}
