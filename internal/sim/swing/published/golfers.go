package published

import (
	"fmt"
	"slices"

	"wideberth/internal/sim/body"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
	"wideberth/internal/sim/swing/measure"
)

const (
	// Height is the stature (m) of the golfer who is compared with published
	// means: between those of the men (1.75–1.80 m) most of them measured.
	Height = 1.75
	// Swings is how many swings of that golfer's family are measured: as many
	// as the page tries for each player.
	Swings = 256
)

// seed draws the family that is compared. Any would do.
const seed = 20

// Others are the golfers, beside the one who is compared, whom a plan can
// describe: each style of swing, and heights of about the 10th and 90th
// percentile of men.
var (
	otherStyles = [...]swing.Style{
		{Turn: "compact"}, {Turn: "long"}, {Plane: "upright"}, {Plane: "flat"}, {Follow: "held"}, {Follow: "loose"},
	}
	otherHeights = [...]float64{1.65, 1.85}
)

// outfit is one club's reference swings: the central swing of the golfer who is
// compared, the family about it, and the families of the others.
type outfit struct {
	central     map[string]measure.Quantity
	one, others spans
}

func newOutfit(r reference) (outfit, error) {
	o := outfit{central: map[string]measure.Quantity{}, one: spans{}, others: spans{}}
	corners := []swing.Variation{{}}
	for trait := range swing.NumTraits {
		corners = append(corners, swing.Single(trait, -swing.Reach), swing.Single(trait, swing.Reach))
	}
	central, err := measureAll(o.one, r.height, r.club, swing.Style{}, swing.Variations(Swings, seed))
	if err != nil {
		return o, err
	}
	for _, m := range measure.Swing(central) {
		o.central[m.Name] = m
	}
	for _, style := range otherStyles {
		if _, err := measureAll(o.others, r.height, r.club, style, corners); err != nil {
			return o, err
		}
	}
	for _, height := range append(slices.Clone(otherHeights[:]), r.height) {
		if _, err := measureAll(o.others, height, r.club, swing.Style{}, corners); err != nil {
			return o, err
		}
	}
	return o, nil
}

// MemberPaths returns the path of the club in each swing of the family that is
// compared with the recorded clubs, a sample every step seconds.
func MemberPaths(step float64) ([][]swing.PathSample, error) {
	f, err := swing.NewFamily(golfer(RecordedHeight), clubNamed("driver"), swing.Style{})
	if err != nil {
		return nil, fmt.Errorf("a golfer of %g m with the driver: %w", RecordedHeight, err)
	}
	paths := make([][]swing.PathSample, 0, Swings)
	var s swing.Swing
	for _, v := range swing.Variations(Swings, seed) {
		if err := f.Fill(v, &s); err != nil {
			return nil, fmt.Errorf("a golfer of %g m with the driver: %w", RecordedHeight, err)
		}
		paths = append(paths, s.Path(step))
	}
	return paths, nil
}

// measureAll measures members of one golfer's family and returns its central
// swing.
func measureAll(into spans, height float64, club string, style swing.Style, members []swing.Variation) (*swing.Swing, error) {
	f, err := swing.NewFamily(golfer(height), clubNamed(club), style)
	if err != nil {
		return nil, fmt.Errorf("a golfer of %g m with the %s: %w", height, club, err)
	}
	var s swing.Swing
	for _, v := range members {
		if err := f.Fill(v, &s); err != nil {
			return nil, fmt.Errorf("a golfer of %g m with the %s: %w", height, club, err)
		}
		into.add(measure.Swing(&s))
	}
	return f.Central, nil
}

// golfer returns the body of somebody of whom only the height is known.
func golfer(height float64) body.Body {
	return body.New(plan.Player{Name: "golfer", Height: height, Shoe: plan.DefaultShoe})
}

// clubNamed returns a club of the default set.
func clubNamed(name string) swing.Club {
	kind := plan.KindIron
	switch name {
	case "driver":
		kind = plan.KindDriver
	case "wedge":
		kind = plan.KindWedge
	}
	return swing.NewClub(plan.DefaultClub(kind, name))
}
