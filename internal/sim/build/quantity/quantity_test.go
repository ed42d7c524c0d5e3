package quantity

import (
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"

	"wideberth/internal/sim/build/figures"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/units"
)

// TestCSV: what is written is read back by the standard reader, cell by cell, with
// commas, quotes, line breaks and what a spreadsheet takes for a formula.
func TestCSV(t *testing.T) {
	b := NewBill(units.Metric)
	b.Pieces(`sheet, 4 "ft"`, 3, "sheet", "one\ntwo, three")
	b.Area("turf", 12.34, "strips")
	b.Length("=2+3", 7.01, "-rule")
	b.Charge([]spec.Price{{Item: "turf", Price: 2.5}, {Item: "nobody's", Price: 9}})
	rows, err := csv.NewReader(strings.NewReader(b.CSV())).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != len(b.Lines)+2 || strings.Join(rows[0], "|") != "item|count|unit|unit price|cost|how it was counted" {
		t.Fatalf("%q", rows)
	}
	sum := 0.0
	for i, l := range b.Lines {
		r := rows[i+1]
		count, _ := strconv.ParseFloat(r[1], 64)
		if strings.TrimPrefix(r[0], "'") != l.Item || count != l.Count || r[2] != l.Unit || strings.TrimPrefix(r[5], "'") != l.Rule {
			t.Errorf("row %q of %+v", r, l)
		}
		if strings.ContainsAny(r[0][:1], "=+-@") || strings.ContainsAny(r[5][:1], "=+-@") {
			t.Errorf("row %q starts like a formula", r)
		}
		if cost, _ := strconv.ParseFloat(r[4], 64); r[4] != "" {
			sum += cost
		}
	}
	if last := rows[len(rows)-1]; last[0] != "total" || last[4] != strconv.FormatFloat(sum, 'f', -1, 64) || b.Total != sum || sum != 31 || b.Unpriced != 2 {
		t.Errorf("total %q, %v, %v, unpriced %d; want 12.4 m² at 2.5 and two without", last, b.Total, sum, b.Unpriced)
	}
}

// TestMeasures: counts are rounded up to a tenth in the units of the plan.
func TestMeasures(t *testing.T) {
	for _, c := range []struct {
		system string
		want   [3]float64
		units  [3]string
	}{{units.Metric, [3]float64{3, 9.3, 3.8}, [3]string{"m", "m²", "L"}}, {units.Imperial, [3]float64{9.9, 100, 1}, [3]string{"ft", "ft²", "gal"}}} {
		b := NewBill(c.system)
		b.Length("a", 3, "")
		b.Area("b", 9.290304, "")
		b.Volume("c", litresPerGallon, "")
		b.Area("none", 0, "")
		b.Pieces("none", 0, "", "")
		if len(b.Lines) != 3 {
			t.Fatalf("%+v", b.Lines)
		}
		for i, l := range b.Lines {
			if math.Abs(l.Count-c.want[i]) > 1e-9 || l.Unit != c.units[i] {
				t.Errorf("%s %s: %v %s, want %v %s", c.system, l.Item, l.Count, l.Unit, c.want[i], c.units[i])
			}
		}
	}
}

func TestAbsorption(t *testing.T) {
	rows := figures.Read("absorption.csv")
	if len(rows) != len(absorption) {
		t.Errorf("%d materials, the table has %d", len(absorption), len(rows))
	}
	for _, r := range rows {
		for k, band := range Bands() {
			if got := Absorption(r["material"])[k]; got != r.Number(strconv.FormatFloat(band, 'f', -1, 64)) {
				t.Errorf("%s at %v Hz: %v", r["material"], band, got)
			}
		}
	}
	for _, m := range spec.Materials() {
		if _, known := absorption[m]; !known {
			t.Errorf("%s takes no sound", m)
		}
	}
}

// TestSabine is worked by hand: a concrete box of 6 × 5 × 3 m has 126 m² inside and 90
// m³; at 500 Hz 0.161 · 90 / (126 · 0.02) = 5.75 s. More absorber never makes it longer.
func TestSabine(t *testing.T) {
	got := Reverberation(90, []Surface{{spec.Concrete, 126}})[2]
	if math.Abs(got-5.75) > 1e-9 {
		t.Errorf("%v s, want 5.75", got)
	}
	last := got
	for a := 1.0; a < 60; a += 7 {
		now := Reverberation(90, []Surface{{spec.Concrete, 126 - a}, {spec.HeavyVelour, a}})[2]
		if now >= last {
			t.Errorf("%v m² of velour make %v s after %v", a, now, last)
		}
		last = now
	}
	if Reverberation(90, nil) != [6]float64{} {
		t.Error("without a surface there is no answer")
	}
}

func TestLengths(t *testing.T) {
	for _, c := range []struct {
		name   string
		pieces []float64
		want   int
	}{{"none", nil, 0}, {"one", []float64{2.4}, 1}, {"two from one", []float64{1.2, 1.2}, 1}, {"a saw cut too many", []float64{1.22, 1.2184}, 2}, {"longer than stock", []float64{5}, 3}, {"longer and a rest", []float64{2.6, 2.2}, 2}} {
		if got := Lengths(c.pieces, 2.4384); got != c.want {
			t.Errorf("%s: %d lengths, want %d", c.name, got, c.want)
		}
	}
}
