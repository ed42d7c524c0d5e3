package swing

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"wideberth/internal/sim/body"
	"wideberth/internal/sim/plan"
)

// reference is one row of testdata/swing.
type reference struct {
	quantity, club, unit string
	low, high, sd, tol   float64
	family, status       string
}

func references(t testing.TB, file string) []reference {
	t.Helper()
	f, err := os.Open("../../../testdata/swing/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	number := func(s string) float64 {
		if s == "" {
			return 0
		}
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		return v
	}
	var rows []reference
	for line := 0; ; line++ {
		c, err := r.Read()
		if err == io.EOF {
			return rows
		}
		if err != nil {
			t.Fatal(err)
		}
		if line == 0 {
			continue
		}
		rows = append(rows, reference{c[0], c[1], c[2], number(c[3]), number(c[4]), number(c[5]), number(c[6]), c[7], c[8]})
	}
}

// clubNamed returns a club of the default set.
func clubNamed(name string) Club {
	kind := map[string]string{"driver": "driver", "wedge": "wedge", "3-wood": "wood", "hybrid": "hybrid"}[name]
	if kind == "" {
		kind = "iron"
	}
	return NewClub(plan.DefaultClub(kind, name))
}

// golfer returns the body of somebody of whom only the height is known.
func golfer(height float64) body.Body {
	return body.New(plan.Player{Name: "golfer", Height: height, Shoe: plan.DefaultShoe})
}

// referenceHeight is the stature (m) of the golfer who is compared with
// published means: between those of the men (1.75–1.80 m) most of them measured.
const referenceHeight = 1.75

func measured(t testing.TB, s *Swing) map[string]Measurement {
	t.Helper()
	got := map[string]Measurement{}
	for _, m := range Measure(s) {
		if _, twice := got[m.Name]; twice {
			t.Fatalf("%q is measured twice", m.Name)
		}
		got[m.Name] = m
	}
	return got
}

func clubsOf(r reference) []string {
	if r.club == "any" {
		return []string{"driver", "5-iron", "wedge"}
	}
	return []string{r.club}
}

// TestCentralSwingAgainstMeasured holds the central swing of each club against
// every figure of testdata/swing.
func TestCentralSwingAgainstMeasured(t *testing.T) {
	central := map[string]map[string]Measurement{}
	for _, club := range []string{"driver", "5-iron", "7-iron", "wedge"} {
		s, err := New(golfer(referenceHeight), clubNamed(club), Style{})
		if err != nil {
			t.Fatal(err)
		}
		central[club] = measured(t, s)
	}
	for _, file := range []string{"published.csv", "recorded.csv"} {
		for _, ref := range references(t, file) {
			for _, club := range clubsOf(ref) {
				t.Run(fmt.Sprintf("%s/%s/%s/%g", strings.TrimSuffix(file, ".csv"), club, ref.quantity, ref.low), func(t *testing.T) {
					got, ok := central[club][ref.quantity]
					if !ok || got.Unit != ref.unit {
						t.Fatalf("Measure gives no %q in %q", ref.quantity, ref.unit)
					}
					off := max(ref.low-got.Value, got.Value-ref.high, 0)
					t.Logf("%.3f %s, want %g to %g (%s)", got.Value, ref.unit, ref.low, ref.high, ref.status)
					if !(off <= ref.tol) {
						t.Errorf("%s = %.3f, want %g to %g %s (± %g; %s)", ref.quantity, got.Value, ref.low, ref.high, ref.unit, ref.tol, ref.status)
					}
				})
			}
		}
	}
}

// spreadFactor is how far the family's standard deviation may be from a
// published one, either way.
const spreadFactor = 1.5

// span is what a family of swings does in one quantity.
type span struct{ lo, hi, sum, squares, n float64 }

func (s *span) add(v float64) {
	s.lo, s.hi = min(s.lo, v), max(s.hi, v)
	s.sum, s.squares, s.n = s.sum+v, s.squares+v*v, s.n+1
}

func (s *span) sd() float64 {
	mean := s.sum / s.n
	return math.Sqrt(max(0, s.squares/s.n-mean*mean))
}

type spans map[string]*span

func (s spans) add(t testing.TB, sw *Swing) {
	for _, m := range Measure(sw) {
		if s[m.Name] == nil {
			s[m.Name] = &span{lo: math.Inf(1), hi: math.Inf(-1)}
		}
		s[m.Name].add(m.Value)
	}
}

// TestFamilyAgainstMeasured asks that the golfers who can be described, each
// with a family of swings, hold every measured value between them, and that one
// family spreads about as much as measured golfers do.
func TestFamilyAgainstMeasured(t *testing.T) {
	all, one := map[string]spans{}, map[string]spans{}
	add := func(to spans, height float64, club string, style Style, vs ...Variation) {
		f, err := NewFamily(golfer(height), clubNamed(club), style)
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range vs {
			s, err := f.Member(v)
			if err != nil {
				t.Fatal(err)
			}
			to.add(t, s)
		}
	}
	corners := []Variation{{}}
	for trait := range NumTraits {
		corners = append(corners, Single(trait, -Reach), Single(trait, Reach))
	}
	for _, club := range []string{"driver", "5-iron", "7-iron", "wedge"} {
		all[club], one[club] = spans{}, spans{}
		add(one[club], referenceHeight, club, Style{}, Variations(96, 20)...)
		add(all[club], referenceHeight, club, Style{}, append(corners, Variations(32, 21)...)...)
		for _, style := range []Style{{Turn: "compact"}, {Turn: "long"}, {Plane: "upright"}, {Plane: "flat"}, {Follow: "held"}, {Follow: "loose"}} {
			add(all[club], referenceHeight, club, style, corners...)
		}
		for _, height := range []float64{1.65, 1.85} {
			add(all[club], height, club, Style{}, corners...)
		}
	}
	for _, file := range []string{"published.csv", "recorded.csv"} {
		for _, ref := range references(t, file) {
			for _, club := range clubsOf(ref) {
				if sp := all[club][ref.quantity]; ref.family == "covers" && (sp.hi < ref.low || sp.lo > ref.high) {
					t.Errorf("%s, %s: the families span %.3f to %.3f, want them to hold %g to %g %s", club, ref.quantity, sp.lo, sp.hi, ref.low, ref.high, ref.unit)
				}
				if sd := one[club][ref.quantity].sd(); ref.sd > 0 && ref.family == "covers" && (sd < ref.sd/spreadFactor || sd > ref.sd*spreadFactor) {
					t.Errorf("%s, %s: the family's SD is %.2f, want %g %s within a factor %g", club, ref.quantity, sd, ref.sd, ref.unit, spreadFactor)
				}
			}
		}
	}
}
