package protocol

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"wideberth/internal/form"
	"wideberth/internal/render/drawing"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/solver/words"
	"wideberth/internal/units"
)

// figures are the numbers of an answer as the page writes them, so that it need
// not ask for each.
type figures struct {
	Fields   map[string]string `json:"fields"`   // what the fields of the form show, by their paths
	Checks   []string          `json:"checks"`   // the clearance of each check of the report
	Surfaces []surfaceFigure   `json:"surfaces"` // of the check looked at, the nearest first
	Causes   []causeFigure     `json:"causes"`   // of the same, the dearest first
	Off      []string          `json:"off"`      // how far each tee of the plan lies off the middle of the room
	Mat      []string          `json:"mat"`      // its near and far edge off the back wall, then off the right wall; none without a mat
}

// surfaceFigure is the clearance to one surface over the loosest swing.
type surfaceFigure struct {
	Name      string      `json:"name"`
	Clearance float64     `json:"clearance"` // m
	Verdict   fit.Verdict `json:"verdict"`
	Label     string      `json:"label"`
	Typical   string      `json:"typical,omitempty"` // of the central swing
}

// causeFigure is what one habit tells from one swing to the next.
type causeFigure struct {
	Trait string  `json:"trait"`
	Cost  float64 `json:"cost"` // m; positive takes room
	Label string  `json:"label"`
}

const (
	leastCause = 0.001 // m: less than a millimetre is not worth a line
	mostCauses = 5
)

func figuresOf(p plan.Plan, r fit.Report, c fit.Check, drawn drawing.Set) figures {
	out := figures{Fields: form.Show(p), Checks: []string{}, Surfaces: []surfaceFigure{}, Causes: []causeFigure{}, Off: []string{}, Mat: matOf(drawn.Plan, p.Units)}
	for _, tee := range p.Tees {
		out.Off = append(out.Off, words.WordsOf(p).OffMiddle(tee.Y, p.Room.Width))
	}
	for _, one := range r.Checks {
		out.Checks = append(out.Checks, units.LabelDown(one.Clearance, p.Units))
	}
	for name, d := range c.BySurface {
		s := surfaceFigure{Name: name, Clearance: d, Verdict: fit.VerdictOf(d, p.Margin), Label: units.LabelDown(d, p.Units)}
		if typical, ok := c.TypicalBySurface[name]; ok {
			s.Typical = units.LabelDown(typical, p.Units)
		}
		out.Surfaces = append(out.Surfaces, s)
	}
	slices.SortStableFunc(out.Surfaces, func(a, b surfaceFigure) int {
		return cmp.Or(cmp.Compare(a.Clearance, b.Clearance), strings.Compare(a.Name, b.Name))
	})
	for _, cause := range c.Causes {
		if size := math.Abs(cause.Cost); size >= leastCause && len(out.Causes) < mostCauses {
			out.Causes = append(out.Causes, causeFigure{cause.Trait, cause.Cost, units.LabelShort(size, p.Units)})
		}
	}
	return out
}

// matOf are the distances of the mat's edges from the walls.
func matOf(plan drawing.View, length string) []string {
	for _, line := range plan.Lines {
		if line.Kind != drawing.KindMat {
			continue
		}
		lo, hi := line.Points[0], line.Points[0]
		for _, at := range line.Points {
			lo, hi = drawing.Point{min(lo[0], at[0]), min(lo[1], at[1])}, drawing.Point{max(hi[0], at[0]), max(hi[1], at[1])}
		}
		return []string{units.Label(lo[0], length), units.Label(hi[0], length), units.Label(lo[1], length), units.Label(hi[1], length)}
	}
	return []string{}
}
