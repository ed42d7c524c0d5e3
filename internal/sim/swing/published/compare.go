package published

import (
	"fmt"
	"slices"
	"sync"
)

// Comparison is one figure against the modelled swing with one club.
type Comparison struct {
	Figure  Figure
	Club    string  // one club where the figure is for any
	Central float64 // of the central swing
	Family  *Span   // of the Swings swings of the golfer who is compared
	All     *Span   // of those and of golfers of other heights and styles
}

// Off returns how far the central swing lies outside the measured range.
func (c Comparison) Off() float64 { return c.Figure.Off(c.Central) }

// Compare sets the model against every figure, in the order of the tables. It
// swings some two thousand times, which takes seconds.
func Compare() ([]Comparison, error) {
	figures, err := Figures()
	if err != nil {
		return nil, err
	}
	outfits, err := newOutfits(figures)
	if err != nil {
		return nil, err
	}
	var all []Comparison
	for _, f := range figures {
		for _, club := range f.Clubs() {
			o := outfits[reference{f.Golfer, club}]
			m, ok := o.central[f.Quantity]
			if !ok || m.Unit != f.Unit {
				return nil, fmt.Errorf("measure.Swing gives no %q in %q", f.Quantity, f.Unit)
			}
			all = append(all, Comparison{
				Figure: f, Club: club, Central: m.Value,
				Family: o.one[f.Quantity], All: o.one.with(o.others, f.Quantity),
			})
		}
	}
	return all, nil
}

// reference is whose swings with which club a figure is compared with.
type reference struct {
	height float64
	club   string
}

// newOutfits swings every club that a figure asks for, side by side.
func newOutfits(figures []Figure) (map[reference]outfit, error) {
	var asked []reference
	for _, f := range figures {
		for _, club := range f.Clubs() {
			if r := (reference{f.Golfer, club}); !slices.Contains(asked, r) {
				asked = append(asked, r)
			}
		}
	}
	made, errs := make([]outfit, len(asked)), make([]error, len(asked))
	var work sync.WaitGroup
	for i, r := range asked {
		work.Go(func() { made[i], errs[i] = newOutfit(r) })
	}
	work.Wait()
	outfits := map[reference]outfit{}
	for i, r := range asked {
		if errs[i] != nil {
			return nil, errs[i]
		}
		outfits[r] = made[i]
	}
	return outfits, nil
}
