// Package figures has what the tests of build hold it to: published figures and golden
// files.
package figures

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
)

// Row is a row by the names of its columns.
type Row map[string]string

// Number is a column as a number; one that is none panics, as it is a fault of the file.
func (r Row) Number(column string) float64 {
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		panic(err)
	}
	return v
}

// Read returns the rows of a file of testdata/build; a file that cannot be read panics.
func Read(name string) (out []Row) {
	f, err := os.Open(filepath.Join(folder(), name))
	if err != nil {
		panic(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		panic(err)
	}
	for _, cells := range rows[1:] {
		row := Row{}
		for i, c := range cells {
			row[rows[0][i]] = c
		}
		out = append(out, row)
	}
	return out
}
