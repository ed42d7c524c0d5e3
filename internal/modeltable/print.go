package modeltable

import (
	"fmt"
	"io"
	"text/tabwriter"
)

// Print writes the table as text, in metric units.
func (t Table) Print(w io.Writer) error {
	fmt.Fprintf(w, "%s\n%s\n%s\nOne golfer of %s and a family of %d swings.\n", t.Summary, t.Spread, t.Near[0], t.Golfer[0], t.Swings)
	for _, p := range t.Pictures {
		fmt.Fprintf(w, "Drawn %s: %s\n", p.Name, p.Says[0])
	}
	columns := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	for _, g := range t.Groups {
		fmt.Fprintf(columns, "\n%s: %s\n", g.Name, g.Tally)
		fmt.Fprintln(columns, "quantity\tclub\tmeasured\tcentral\tfamily\tmeasured in it\tstatus\tsource")
		for _, r := range g.Rows {
			central, family := r.Central[0], "as central"
			if r.Off != nil {
				central += ", " + r.Off[0]
			}
			if r.Family != nil {
				family = r.Family[0]
			}
			who := r.Club
			if r.Golfer != nil {
				who += ", " + r.Golfer[0]
			}
			says := r.Says[0]
			if r.Then != "" {
				says += "; " + r.Then
			}
			fmt.Fprintf(columns, "%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s [%d]\n",
				r.Quantity, who, r.Measured[0], central, family, says, r.Status, r.Cite, r.Source+1)
		}
	}
	fmt.Fprintln(columns, "\nsources")
	for i, source := range t.Sources {
		fmt.Fprintf(columns, "[%d]\t%s\n", i+1, source)
	}
	return columns.Flush()
}
