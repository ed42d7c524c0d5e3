// Package quantity counts what a room is built of, in the units in which it is
// bought, and says of every line how it was counted.
package quantity

import (
	"math"
	"strconv"
	"strings"

	"wideberth/internal/sim/build/spec"
	"wideberth/internal/units"
)

// Line is one item of the list.
type Line struct {
	Item  string  `json:"item"`
	Count float64 `json:"count"`
	Unit  string  `json:"unit"`
	Rule  string  `json:"rule"`  // how it was counted
	Price float64 `json:"price"` // of one unit, in any money; 0: not known
	Cost  float64 `json:"cost"`  // Count × Price
}

// Bill is the list with its total.
type Bill struct {
	Lines    []Line
	Total    float64 // of the lines with a price
	Unpriced int     // lines without
	imperial bool
}

// NewBill is an empty list that counts lengths, areas and volumes in the units of a
// plan: feet, square feet and gallons, or metres, square metres and litres.
func NewBill(system string) *Bill { return &Bill{imperial: system == units.Imperial} }

// Pieces adds a count of whole things.
func (b *Bill) Pieces(item string, n int, unit, rule string) {
	if n > 0 {
		b.Lines = append(b.Lines, Line{Item: item, Count: float64(n), Unit: unit, Rule: rule})
	}
}

const litresPerGallon = 3.785411784 // US liquid gallon, by definition

// Length adds a length (m), rounded up to a tenth.
func (b *Bill) Length(item string, m float64, rule string) {
	b.measure(item, m, "m", "ft", units.MetresPerFoot, rule)
}

// Area adds an area (m²).
func (b *Bill) Area(item string, m2 float64, rule string) {
	b.measure(item, m2, "m²", "ft²", units.MetresPerFoot*units.MetresPerFoot, rule)
}

// Volume adds a volume (L).
func (b *Bill) Volume(item string, litres float64, rule string) {
	b.measure(item, litres, "L", "gal", litresPerGallon, rule)
}

func (b *Bill) measure(item string, v float64, metric, imperial string, per float64, rule string) {
	unit := metric
	if b.imperial {
		v, unit = v/per, imperial
	}
	if v = math.Ceil(v*10-1e-6) / 10; v > 0 {
		b.Lines = append(b.Lines, Line{Item: item, Count: v, Unit: unit, Rule: rule})
	}
}

// Charge puts prices to the lines by their items and adds up.
func (b *Bill) Charge(prices []spec.Price) {
	of := map[string]float64{}
	for _, p := range prices {
		of[p.Item] = p.Price
	}
	b.Total, b.Unpriced = 0, 0
	for i := range b.Lines {
		l := &b.Lines[i]
		if price, known := of[l.Item]; known {
			l.Price = price
		}
		if l.Price == 0 {
			b.Unpriced++
		}
		l.Cost = math.Round(l.Count*l.Price*100) / 100
		b.Total += l.Cost
	}
	b.Total = math.Round(b.Total*100) / 100
}

// head is the first row of the CSV.
var head = []string{"item", "count", "unit", "unit price", "cost", "how it was counted"}

// number writes a number so that it reads back the same.
func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// CSV is the list with its head and its total, as RFC 4180 has it. What a spreadsheet
// would take for a formula is kept text by an apostrophe before it.
func (b *Bill) CSV() string {
	var out strings.Builder
	row := func(cells ...string) {
		for i, c := range cells {
			if i > 0 {
				out.WriteByte(',')
			}
			if strings.ContainsAny(c, "\",\r\n") {
				c = `"` + strings.ReplaceAll(c, `"`, `""`) + `"`
			}
			out.WriteString(c)
		}
		out.WriteString("\r\n")
	}
	row(head...)
	for _, l := range b.Lines {
		price, cost := "", ""
		if l.Price > 0 {
			price, cost = number(l.Price), number(l.Cost)
		}
		row(plain(l.Item), number(l.Count), l.Unit, price, cost, plain(l.Rule))
	}
	row(total, "", "", "", number(b.Total), "")
	return out.String()
}

const total = "total"

// plain keeps text from being taken for a formula.
func plain(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r'", rune(s[0])) {
		return "'" + s
	}
	return s
}
