package published

import (
	"fmt"
	"math"
	"strings"
	"sync"
	"testing"
)

var compareOnce = sync.OnceValues(Compare)

func comparisons(t *testing.T) []Comparison {
	t.Helper()
	all, err := compareOnce()
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < 100 {
		t.Fatalf("%d figures are compared, want the tables' hundred and more", len(all))
	}
	return all
}

// TestCentralSwingAgainstMeasured holds the central swing of each club against
// every figure of the tables.
func TestCentralSwingAgainstMeasured(t *testing.T) {
	for _, c := range comparisons(t) {
		f := c.Figure
		t.Run(fmt.Sprintf("%s/%s/%g", c.Club, f.Quantity, f.Low), func(t *testing.T) {
			t.Logf("%.3f %s, want %g to %g (%s)", c.Central, f.Unit, f.Low, f.High, f.Status)
			if !(math.Abs(c.Off()) <= f.Tol) {
				t.Errorf("%s = %.3f, want %g to %g %s (± %g; %s)", f.Quantity, c.Central, f.Low, f.High, f.Unit, f.Tol, f.Status)
			}
		})
	}
}

// spreadFactor is how far the family's standard deviation may be from a
// published one, either way.
const spreadFactor = 1.5

// TestFamilyAgainstMeasured asks that the golfers who can be described, each
// with a family of swings, hold every measured value between them, and that one
// family spreads about as much as measured golfers do.
func TestFamilyAgainstMeasured(t *testing.T) {
	for _, c := range comparisons(t) {
		f := c.Figure
		if f.Family != Covers {
			continue
		}
		if !c.All.Meets(f) {
			t.Errorf("%s, %s: the families span %.3f to %.3f, want them to meet %g to %g %s", c.Club, f.Quantity, c.All.Least, c.All.Most, f.Low, f.High, f.Unit)
		}
		if sd := c.Family.SD(); f.SD > 0 && (sd < f.SD/spreadFactor || sd > f.SD*spreadFactor) {
			t.Errorf("%s, %s: the family's SD is %.2f, want %g %s within a factor %g", c.Club, f.Quantity, sd, f.SD, f.Unit, spreadFactor)
		}
	}
}

func TestOff(t *testing.T) {
	f := Figure{Low: 10, High: 12}
	for v, want := range map[float64]float64{9: -1, 10: 0, 11: 0, 12: 0, 12.5: 0.5} {
		if got := f.Off(v); got != want {
			t.Errorf("Off(%g) of 10 to 12 = %g, want %g", v, got, want)
		}
	}
}

func TestMeets(t *testing.T) {
	f := Figure{Low: 10, High: 12}
	for _, c := range []struct {
		least, most float64
		want        bool
	}{{5, 9, false}, {5, 10, true}, {11, 11.5, true}, {12, 20, true}, {13, 20, false}, {5, 20, true}} {
		if got := (&Span{Least: c.least, Most: c.most}).Meets(f); got != c.want {
			t.Errorf("Meets of %g to %g with 10 to 12 = %v, want %v", c.least, c.most, got, c.want)
		}
	}
}

func TestParseNamesWhatIsWrong(t *testing.T) {
	const good = "address: trunk lean,driver,deg,17,28,,5,covers,M,several studies,several studies of it,"
	for _, c := range []struct{ name, row, want string }{
		{"not a number", strings.Replace(good, "17", "about 17", 1), "low is not a number"},
		{"upside down", strings.Replace(good, "17,28", "28,17", 1), "low 28 is above high 17"},
		{"no tolerance", strings.Replace(good, ",5,", ",0,", 1), "tol 0"},
		{"no role", strings.Replace(good, "covers", "holds", 1), `family "holds"`},
		{"no status", strings.Replace(good, ",M,", ",,", 1), `status ""`},
		{"no source", strings.Replace(good, "several studies of it", "", 1), "cite and source"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := parse(columns + "\n" + good + "\n" + c.row + "\n")
			if err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "figure 2") {
				t.Errorf("parse = %v, want figure 2 and %q", err, c.want)
			}
		})
	}
	if _, err := parse(columns + "\n" + good + "\n"); err != nil {
		t.Errorf("parse of a good row: %v", err)
	}
	if _, err := parse("quantity,club\n"); err == nil {
		t.Error("parse of other columns gives no error")
	}
}
