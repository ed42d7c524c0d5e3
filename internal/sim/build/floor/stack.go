package floor

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"wideberth/internal/sim/build/spec"
)

// Stack is layers upon one another.
type Stack struct {
	Layers    []string `json:"layers"`    // from the slab upwards
	Height    float64  `json:"height"`    // of the middle of every layer's range, m
	Error     float64  `json:"error"`     // Height less the mat's, m: positive stands above it
	Tolerance float64  `json:"tolerance"` // to either side, if every layer is at the end of its range, m
	Least     float64  `json:"least"`     // if every layer is at its thinnest, m
	Most      float64  `json:"most"`      // at its thickest, m
	Level     bool     `json:"level"`     // within the owner's tolerance as a rule
	Sure      bool     `json:"sure"`      // within it at worst
	Price     float64  `json:"price"`     // of a square metre; 0 where a layer's price is not known

	Thickness []float64 `json:"thickness"` // of the layers, middle of the range, m
	kinds     string
}

// NewStack piles stock up, from the slab upwards, beside a mat of height target (m).
func NewStack(layers []spec.Stock, target, tolerance float64) Stack {
	s := Stack{}
	known := true
	for _, l := range layers {
		s.Layers = append(s.Layers, l.Name)
		s.Thickness = append(s.Thickness, (l.Least+l.Most)/2)
		s.Least += l.Least
		s.Most += l.Most
		s.kinds += l.Kind + " "
		known = known && l.Price > 0
		s.Price += perArea(l)
	}
	if !known {
		s.Price = 0
	}
	s.Height, s.Tolerance = (s.Least+s.Most)/2, (s.Most-s.Least)/2
	s.Error = s.Height - target
	s.Level = math.Abs(s.Error) <= tolerance
	s.Sure = math.Abs(s.Error)+s.Tolerance <= tolerance
	return s
}

// perArea is the price of a square metre.
func perArea(l spec.Stock) float64 {
	if l.Kind == spec.Panel {
		return l.Price / (l.Long * l.Wide)
	}
	return l.Price
}

// mostShown is how many stacks are offered.
const mostShown = 5

// mostPanels is how many panels lie upon one another at most.
const mostPanels = 3

// Stacks finds the stacks of stock whose height is nearest to the mat's: for each
// number of layers up to most the best few, so that a simple floor is never hidden
// by a fussy one, in the order of their error, then layers, then price. Panels lie
// lowest, the thickest first; above them at most one foam and one rubber; turf on
// top, if the stock has any.
func Stacks(stock []spec.Stock, target, tolerance float64, most int) []Stack {
	const perCount = 2 // of each number of layers
	of := map[string][]spec.Stock{}
	for _, s := range stock {
		of[s.Kind] = append(of[s.Kind], s)
	}
	slices.SortStableFunc(of[spec.Panel], func(a, b spec.Stock) int { return cmp.Compare(b.Most, a.Most) })
	best := make([][]Stack, most+1)
	consider := func(layers []spec.Stock) {
		if n := len(layers); n > 0 && n <= most {
			at := append(best[n], NewStack(layers, target, tolerance))
			slices.SortStableFunc(at, better)
			best[n] = at[:min(len(at), perCount)]
		}
	}
	// soft lays what comes over the panels, one kind after another.
	var soft func(under []spec.Stock, kinds []string)
	soft = func(under []spec.Stock, kinds []string) {
		if len(kinds) == 0 {
			consider(under)
			return
		}
		if kinds[0] != spec.Turf || len(of[spec.Turf]) == 0 {
			soft(under, kinds[1:])
		}
		if len(under) < most {
			for _, s := range of[kinds[0]] {
				soft(append(under[:len(under):len(under)], s), kinds[1:])
			}
		}
	}
	var panels func(under []spec.Stock, from int)
	panels = func(under []spec.Stock, from int) {
		soft(under, []string{spec.Foam, spec.Rubber, spec.Turf})
		if len(under) == min(mostPanels, most) {
			return
		}
		for i := from; i < len(of[spec.Panel]); i++ {
			panels(append(under[:len(under):len(under)], of[spec.Panel][i]), i)
		}
	}
	panels(nil, 0)
	all := []Stack{}
	for _, b := range best {
		all = append(all, b...)
	}
	slices.SortStableFunc(all, better)
	// What does not meet the mat is only shown where nothing does.
	level := slices.DeleteFunc(slices.Clone(all), func(s Stack) bool { return !s.Level })
	if len(level) > 0 {
		return level[:min(len(level), mostShown)]
	}
	return all[:min(len(all), perCount)]
}

// better puts the stack with less error first; what differs by less than a tenth of
// a millimetre is as good, and then fewer layers win, then the lower price, if both
// are known.
func better(a, b Stack) int {
	tenths := func(s Stack) int { return int(math.Round(math.Abs(s.Error) * 1e4)) }
	price := 0
	if a.Price > 0 && b.Price > 0 {
		price = cmp.Compare(a.Price, b.Price)
	}
	return cmp.Or(cmp.Compare(tenths(a), tenths(b)), cmp.Compare(len(a.Layers), len(b.Layers)), price,
		strings.Compare(strings.Join(a.Layers, "+"), strings.Join(b.Layers, "+")))
}
