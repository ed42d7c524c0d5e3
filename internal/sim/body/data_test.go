package body

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// record is one row of a reference file, by column name.
type record map[string]string

// num returns a column as a number; an empty cell is absent.
func (r record) num(t *testing.T, column string) (v float64, present bool) {
	t.Helper()
	text, known := r[column]
	if !known {
		t.Fatalf("no column %q in %v", column, r)
	}
	if text == "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatalf("column %q: %v", column, err)
	}
	return v, true
}

// must returns a column that has to be there.
func (r record) must(t *testing.T, column string) float64 {
	t.Helper()
	v, ok := r.num(t, column)
	if !ok {
		t.Fatalf("column %q is empty in %v", column, r)
	}
	return v
}

// readRecords reads a file of testdata/body; lines that begin with # hold its
// citation.
func readRecords(t *testing.T, name string) []record {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "..", "testdata", "body", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if len(rows) < 2 {
		t.Fatalf("%s holds no rows", name)
	}
	records := make([]record, 0, len(rows)-1)
	for _, row := range rows[1:] {
		rec := record{}
		for i, column := range rows[0] {
			rec[column] = row[i]
		}
		records = append(records, rec)
	}
	return records
}
