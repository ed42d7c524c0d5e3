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
			o := outfits[club]
			m, ok := o.central[f.Quantity]
			if !ok || m.Unit != f.Unit {
				return nil, fmt.Errorf("swing.Measure gives no %q in %q", f.Quantity, f.Unit)
			}
			all = append(all, Comparison{
				Figure: f, Club: club, Central: m.Value,
				Family: o.one[f.Quantity], All: o.one.with(o.others, f.Quantity),
			})
		}
	}
	return all, nil
}

// newOutfits swings every club that a figure asks for, side by side.
func newOutfits(figures []Figure) (map[string]outfit, error) {
	var clubs []string
	for _, f := range figures {
		for _, club := range f.Clubs() {
			if !slices.Contains(clubs, club) {
				clubs = append(clubs, club)
			}
		}
	}
	made, errs := make([]outfit, len(clubs)), make([]error, len(clubs))
	var work sync.WaitGroup
	for i, club := range clubs {
		work.Go(func() { made[i], errs[i] = newOutfit(club) })
	}
	work.Wait()
	outfits := map[string]outfit{}
	for i, club := range clubs {
		if errs[i] != nil {
			return nil, errs[i]
		}
		outfits[club] = made[i]
	}
	return outfits, nil
}
