package build

import (
	"math"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/build/floor"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
)

// floor lays the floor, and finds stacks that would meet the mat.
func (r *room) floor() (err error) {
	p, b := r.plan, r.spec.Build
	f := &r.out.Floor
	f.Wanted = b.Floor.Tolerance
	f.Height, f.Standing, f.Headroom = p.Floor.Top(), p.Floor.Standing(), p.Headroom()
	f.Target = f.Height
	if m := p.Floor.Mat; m != nil {
		f.Target = m.Thickness
	}
	f.Error = f.Height - f.Target
	f.Covers = floor.Rect{X0: b.Floor.Covers[0], Y0: b.Floor.Covers[1], X1: b.Floor.Covers[2], Y1: b.Floor.Covers[3]}
	if f.Mats, err = r.mats(); err != nil {
		return err
	}
	cut := f.Mats
	if m := p.Floor.Mat; m != nil && !m.Inset {
		cut = nil // it lies on top of the layers
	}
	sheet := spec.Stock{Long: spec.SheetLong, Wide: spec.SheetWide}
	for _, s := range b.Stock {
		if s.Kind == spec.Panel {
			sheet = s
			break
		}
	}
	f.Panels = floor.Lay(f.Covers, cut, sheet.Long, sheet.Wide, b.Floor.Gap, b.Floor.Panels)
	for _, l := range p.Floor.Layers {
		if kindOf(b.Stock, l.Name) == spec.Panel {
			f.Sheets += f.Panels.Sheets
		}
	}
	f.Turf = floor.Unroll(f.Covers, cut, b.Floor.TurfRoll, b.Floor.Turf)
	f.Step = r.step()
	f.Stacks = []Stack{}
	for _, s := range floor.Stacks(b.Stock, f.Target, b.Floor.Tolerance, int(b.Floor.Layers)) {
		f.Stacks = append(f.Stacks, Stack{Stack: s})
	}
	r.putting(cut)
	return nil
}

// tryStacks says of every stack what it does to the swings.
func (r *room) tryStacks() (err error) {
	all := r.out.Floor.Stacks
	for i := range all {
		if all[i], err = r.tried(all[i].Stack); err != nil {
			return err
		}
	}
	return nil
}

// tried checks the plan with another floor, every layer at its thickest, which leaves
// the least headroom.
func (r *room) tried(s floor.Stack) (Stack, error) {
	p := r.plan
	thick := s.Most / s.Height // the same share for every layer
	p.Floor.Layers = nil
	for i, t := range s.Thickness {
		p.Floor.Layers = append(p.Floor.Layers, plan.Layer{Name: fmt.Sprintf("%d: %s", i+1, s.Layers[i]), Thickness: t * thick})
	}
	out := Stack{Stack: s, Headroom: p.Headroom(), Verdict: fit.Strikes, Clearance: math.Inf(-1)}
	c, err := plan.Check(p)
	if err != nil {
		// Somebody can no longer stand upright: that is an answer, not a mistake.
		out.Clearance = 0
		return out, nil
	}
	report, err := r.lab.Check(c)
	if err != nil {
		return Stack{}, err
	}
	out.Verdict, out.Clearance = report.Verdict, math.Inf(1)
	for _, k := range report.Checks {
		out.Clearance = min(out.Clearance, k.Clearance)
	}
	return out, nil
}

// step is the edge that the floor leaves.
func (r *room) step() Step {
	c, size := r.out.Floor.Covers, r.plan.Room
	const flush = 0.01 // m from a wall: skirting hides it
	free := c.X0 > flush || c.Y0 > flush || c.X1 < size.Length-flush || c.Y1 < size.Width-flush
	h := r.out.Floor.Height
	return Step{Height: h, Free: free, Steep: h > MostRiser, Guard: h > GuardFrom}
}

// putting finds the putts to the cups. Where turf lies on top only its seams count:
// what is under it is not rolled over.
func (r *room) putting(cut []floor.Rect) {
	f := r.out.Floor
	// A ball lies in front of the screen, and far enough from a wall for a putter.
	const room = 0.15 // m, an assumption
	green, size := f.Covers, r.plan.Room
	green = floor.Rect{X0: max(green.X0, room), Y0: max(green.Y0, room), X1: min(green.X1, min(size.Length, r.out.Image.X)-room), Y1: min(green.Y1, size.Width-room)}
	g := floor.Green{Floor: green, Stops: append([]floor.Rect{}, f.Mats...), Seams: f.Panels.Seams}
	if n := len(r.plan.Floor.Layers); n == 0 || kindOf(r.spec.Build.Stock, r.plan.Floor.Layers[n-1].Name) == spec.Turf {
		g.Seams = f.Turf.Seams
	}
	top := f.Height
	for _, s := range r.plan.Room.Solids {
		if s.Min[2] < top+floor.CupDiameter && s.Max[2] > top { // it stands on the floor
			g.Stops = append(g.Stops, floor.Rect{X0: s.Min[0], Y0: s.Min[1], X1: s.Max[0], Y1: s.Max[1]})
		}
	}
	cups := [][2]float64{}
	for _, c := range r.spec.Build.Cups {
		cups = append(cups, [2]float64{c.X, c.Y})
	}
	out := &r.out.Putting
	out.Cups = g.Putts(cups)
	for _, c := range out.Cups {
		out.Longest, out.OneSeam = max(out.Longest, c.Clear), max(out.OneSeam, c.OneSeam)
	}
	out.Depth = top
	out.Deep = top >= floor.CupDepth
}
