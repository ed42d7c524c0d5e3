// Package modeltable makes the page's table "How sure is this?": every measured
// figure of the golf swing beside what the model does, in words and units that
// somebody reads. Nothing in it is typed by hand but names and explanations;
// the figures come from package published, which the model's tests read too.
package modeltable

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"

	"wideberth/internal/sim/swing/published"
	"wideberth/internal/units"
)

// Table is what build/sure.json holds.
type Table struct {
	Summary  string    `json:"summary"`  // how many figures the model meets
	Spread   string    `json:"spread"`   // how wide the family is where golfers were measured
	Near     Text      `json:"near"`     // how near members of the family come to the recorded swings
	Golfer   Text      `json:"golfer"`   // the height of the golfer who is compared
	Swings   int       `json:"swings"`   // the size of that golfer's family
	Statuses []Status  `json:"statuses"` // what the status words mean
	Pictures []Picture `json:"pictures"` // of the recorded clubs over the family
	Groups   []Group   `json:"groups"`
	Sources  []string  `json:"sources"` // in full; a row names its place here
}

// Status is a word of the table and what it means.
type Status struct {
	Word    string `json:"word"`
	Meaning string `json:"meaning"`
}

// Group is the figures of one part of the swing.
type Group struct {
	Name  string `json:"name"`
	About string `json:"about"` // how its quantities are to be read
	Tally string `json:"tally"` // "12 of 15 within"
	Rows  []Row  `json:"rows"`
}

// Row is one figure with one club.
type Row struct {
	Quantity string `json:"quantity"`
	Club     string `json:"club"`
	Golfer   Text   `json:"golfer,omitempty"` // the height of the golfer compared, if not the table's
	Measured Text   `json:"measured"`         // a mean, or a range of means
	Central  Text   `json:"central"`          // the model's central swing
	Off      Text   `json:"off,omitempty"`    // how far that lies outside; nil inside
	Family   Text   `json:"family,omitempty"` // least and most of the family; nil where it does not vary
	Mark     string `json:"mark"`             // Within, Others or Outside
	Says     Text   `json:"says"`             // the mark in words
	Then     string `json:"then,omitempty"`   // who gets there instead
	Drawn    Drawn  `json:"drawn"`
	Status   string `json:"status"` // a word of Table.Statuses
	Cite     string `json:"cite"`   // the source in a few words
	Source   int    `json:"source"` // index of Table.Sources
	Note     string `json:"note,omitempty"`
}

// Drawn is a row as a strip from 0 to 100: where the measured range, the central
// swing and the family lie on it.
type Drawn struct {
	Measured [2]int `json:"measured"`
	Central  int    `json:"central"`
	Family   [2]int `json:"family"`
}

// Marks of a row.
const (
	Within  = "within"  // the family's range meets the measured figure
	Others  = "others"  // only golfers of other heights or styles get there
	Outside = "outside" // none of them does
)

var statusWords = map[published.Status]Status{
	published.Read:       {"read", "The figure stands in a source that was opened, mostly in its abstract."},
	published.FromMemory: {"from memory", "The source was not opened. The figure is a range that may itself be off: slopes by 6°, turns by 15°, times by 30 %, speeds by 15 %."},
	published.Computed:   {"computed", "Worked out from recorded swings, or by trigonometry from lengths and angles of clubs."},
	published.Practice:   {"common practice", "Commonly held by people of the trade; no source was found."},
}

// New sets the model against every figure. The same source code gives the same
// table. It swings some two thousand times, which takes seconds.
func New() (Table, error) {
	all, err := published.Compare()
	if err != nil {
		return Table{}, err
	}
	t := Table{
		Golfer: length(published.Height, units.Label),
		Swings: published.Swings,
	}
	for _, status := range []published.Status{published.Read, published.FromMemory, published.Computed, published.Practice} {
		t.Statuses = append(t.Statuses, statusWords[status])
	}
	for _, kind := range kinds {
		t.Groups = append(t.Groups, Group{Name: kind.name, About: kind.about})
	}
	for _, c := range all {
		i, name, err := nameOf(c.Figure.Quantity)
		if err != nil {
			return Table{}, err
		}
		row := rowOf(c)
		row.Quantity = name
		source := typeset(c.Figure.Source)
		if row.Source = slices.Index(t.Sources, source); row.Source < 0 {
			row.Source = len(t.Sources)
			t.Sources = append(t.Sources, source)
		}
		t.Groups[i].Rows = append(t.Groups[i].Rows, row)
	}
	t.count()
	t.Spread = spread(all)
	if t.Near, err = near(); err != nil {
		return t, err
	}
	t.Pictures, err = pictures(all)
	return t, err
}

// near says how far the nearest member of the family goes from each recorded
// swing.
func near() (Text, error) {
	paths, err := published.ClubPaths()
	if err != nil {
		return nil, err
	}
	u := unitNamed("m")
	metric, imperial := []string{}, []string{}
	for i, path := range paths {
		l, err := published.Nearest(path)
		if err != nil {
			return nil, err
		}
		hands, face := u.size(l.Hands, 0), u.size(l.Face, 0)
		say := func(k int) string {
			return fmt.Sprintf("beside golfer %d, hands %s and clubface %s away", i+1, hands[k], face[k])
		}
		metric, imperial = append(metric, say(0)), append(imperial, say(1))
	}
	const before, after = "For each recorded swing there is a member of the family that goes the same way, from the takeaway to 0.3 s after impact: on average ", "."
	return both(before+strings.Join(metric, "; ")+after, before+strings.Join(imperial, "; ")+after), nil
}

func rowOf(c published.Comparison) Row {
	f := c.Figure
	unit := unitNamed(f.Unit)
	row := Row{
		Club: c.Club, Measured: unit.span(f.Low, f.High, true), Central: unit.span(c.Central, c.Central, false),
		Status: statusWords[f.Status].Word, Cite: f.Cite, Note: typeset(f.Note),
	}
	if f.Golfer != published.Height {
		row.Golfer = length(f.Golfer, units.Label)
	}
	if unit.apart(c.Family.Least, c.Family.Most) {
		row.Family = unit.span(c.Family.Least, c.Family.Most, false)
	}
	row.Drawn = drawn(c)
	if off := c.Off(); off != 0 {
		row.Off = unit.off(off)
	}
	short := unit.size(f.Low-c.Family.Most, c.Family.Least-f.High)
	switch {
	case c.Family.Meets(f):
		row.Mark, row.Says = Within, Text{"Within"}
	case c.All.Meets(f):
		row.Mark, row.Says, row.Then = Others, short.wrapped("Outside by ", ""), "other heights or styles get there"
	default:
		row.Mark, row.Says, row.Then = Outside, short.wrapped("Outside by ", ""), "no modelled golfer gets there"
	}
	return row
}

// spread says how far members of the family differ where it is known how far
// golfers do.
func spread(all []published.Comparison) string {
	var parts []string
	for _, c := range all {
		f := c.Figure
		if f.SD == 0 || f.Family != published.Covers {
			continue
		}
		_, name, err := nameOf(f.Quantity)
		if err != nil {
			continue // New has said so
		}
		u := unitNamed(f.Unit)
		parts = append(parts, fmt.Sprintf("%s, %s: %s between golfers, %s in the family", name, c.Club, u.span(f.SD, f.SD, true)[0], u.span(c.Family.SD(), c.Family.SD(), false)[0]))
	}
	return "One standard deviation, where one between golfers is published. " + strings.Join(parts, "; ") + ". The other spreads are assumed, and held to the ranges below."
}

// drawn fits everything that a row compares into the strip, with a little to
// spare at either end.
func drawn(c published.Comparison) Drawn {
	f := c.Figure
	from, to := min(f.Low, c.Family.Least), max(f.High, c.Family.Most)
	at := func(v float64) int {
		const spare = 6
		if from == to {
			return 50
		}
		return int(math.Round(spare + (100-2*spare)*(v-from)/(to-from)))
	}
	return Drawn{[2]int{at(f.Low), at(f.High)}, at(c.Central), [2]int{at(c.Family.Least), at(c.Family.Most)}}
}

// count writes the sentences that say how many figures are met.
func (t *Table) count() {
	total := map[string]int{}
	all, central := 0, 0
	for i := range t.Groups {
		g := &t.Groups[i]
		within := 0
		for _, r := range g.Rows {
			total[r.Mark]++
			if r.Mark == Within {
				within++
			}
			if r.Off == nil {
				central++
			}
		}
		all += len(g.Rows)
		g.Tally = fmt.Sprintf("%d of %d within", within, len(g.Rows))
	}
	t.Summary = fmt.Sprintf("Of %d comparisons, one golfer's family of %d swings reaches the measured figure in %d, and the central swing by itself in %d. In %d more only golfers of another height or style get there; in %d no modelled golfer does.",
		all, t.Swings, total[Within], central, total[Others], total[Outside])
}

// JSON returns the table as the page fetches it.
func JSON() ([]byte, error) {
	t, err := New()
	if err != nil {
		return nil, err
	}
	return json.Marshal(t)
}
