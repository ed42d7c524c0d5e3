// Package published holds what measured golf swings were found to do, and sets
// the modelled swing against it. The tests of the model and the page's table
// "How sure is this?" both read the comparison that is made here.
package published

import (
	"embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

//go:embed published.csv recorded.csv recordedclubs.csv clubpath.csv
var tables embed.FS

// Status says how a figure was come by.
type Status string

// The statuses of figures, as the tables write them.
const (
	Read       Status = "R" // in a source that was opened, mostly its abstract
	FromMemory Status = "M" // of a source that was not opened
	Computed   Status = "C" // from a recording, or by trigonometry
	Practice   Status = "P" // commonly held, without a source
)

// Role says what the model's family owes a figure.
type Role string

// The roles of figures, as the tables write them.
const (
	Covers  Role = "covers"  // the family reaches it, and spreads about as much as its SD
	Central Role = "central" // the family does not vary it
	Wide    Role = "wide"    // another figure contradicts it and is followed instead
)

// Figure is one row of the tables: a mean of measured swings (Low = High) or a
// range of means, in the terms of measure.Swing.
type Figure struct {
	Golfer   float64 // stature of the modelled golfer who is compared, m
	Quantity string
	Club     string // "driver", "5-iron", "7-iron", "wedge", or "any"
	Unit     string // as measure.Quantity has it
	Low,
	High float64
	SD     float64 // between golfers, or 0 when not known
	Tol    float64 // how far outside Low to High the central swing may lie
	Family Role
	Status Status
	Cite   string // the source in a few words: "Zheng et al. 2008"
	Source string // where it can be found, or how it was come by
	Note   string
}

// Off returns how far v lies above High (positive) or below Low (negative).
func (f Figure) Off(v float64) float64 {
	return max(v-f.High, 0) - max(f.Low-v, 0)
}

// Clubs returns the clubs that the figure is held against.
func (f Figure) Clubs() []string {
	if f.Club == "any" {
		return []string{"driver", "5-iron", "wedge"}
	}
	return []string{f.Club}
}

// Figures reads the tables: published figures first, then the recorded swing,
// then the recorded clubs. An error names the file and line that cannot be used.
func Figures() ([]Figure, error) {
	var all []Figure
	for _, table := range []struct {
		file   string
		golfer float64
	}{{"published.csv", Height}, {"recorded.csv", Height}, {"recordedclubs.csv", RecordedHeight}} {
		text, err := tables.ReadFile(table.file)
		if err != nil {
			return nil, err
		}
		figures, err := parse(string(text))
		if err != nil {
			return nil, fmt.Errorf("%s: %w", table.file, err)
		}
		for i := range figures {
			figures[i].Golfer = table.golfer
		}
		all = append(all, figures...)
	}
	return all, nil
}

// columns are the tables' heads.
const columns = "quantity,club,unit,low,high,sd,tol,family,status,cite,source,note"

func parse(text string) ([]Figure, error) {
	rows, err := rowsOf(text, columns)
	if err != nil {
		return nil, err
	}
	figures := make([]Figure, 0, len(rows))
	for i, c := range rows {
		f, err := parseRow(c)
		if err != nil {
			return nil, fmt.Errorf("figure %d, %q: %w", i+1, c[0], err)
		}
		figures = append(figures, f)
	}
	return figures, nil
}

// rowsOf returns the rows below a table's heads, without its comments.
func rowsOf(text, heads string) ([][]string, error) {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 || strings.Join(rows[0], ",") != heads {
		return nil, fmt.Errorf("the first row is not %s", heads)
	}
	return rows[1:], nil
}

func parseRow(c []string) (Figure, error) {
	f := Figure{
		Quantity: c[0], Club: c[1], Unit: c[2],
		Family: Role(c[7]), Status: Status(c[8]), Cite: c[9], Source: c[10], Note: c[11],
	}
	for i, to := range []*float64{&f.Low, &f.High, &f.SD, &f.Tol} {
		text := c[3+i]
		if text == "" && to == &f.SD {
			continue
		}
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return f, fmt.Errorf("%s is not a number: %w", strings.Split(columns, ",")[3+i], err)
		}
		*to = v
	}
	switch {
	case f.Low > f.High:
		return f, fmt.Errorf("low %g is above high %g", f.Low, f.High)
	case f.Tol <= 0 || f.SD < 0:
		return f, fmt.Errorf("tol %g must be above 0 and sd %g not below it", f.Tol, f.SD)
	case f.Cite == "" || f.Source == "":
		return f, fmt.Errorf("cite and source must say where it comes from")
	}
	switch f.Family {
	case Covers, Central, Wide:
	default:
		return f, fmt.Errorf("family %q is not covers, central or wide", f.Family)
	}
	switch f.Status {
	case Read, FromMemory, Computed, Practice:
	default:
		return f, fmt.Errorf("status %q is not R, M, C or P", f.Status)
	}
	return f, nil
}
