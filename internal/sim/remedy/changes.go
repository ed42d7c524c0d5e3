package remedy

import (
	"cmp"
	"math"
	"slices"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// Change is one to three changes of a plan that, made at once, help many checks.
type Change struct {
	Steps  []Remedy   // what is done; a tee that moves along both axes is two steps in a row
	Count  int        // of changes
	Edits  []Edit     // all of them, in an order in which they can be made
	Report fit.Report // of the plan with the changes made, run and not reckoned
}

// mostOffered is how many changes are offered, mostAtOnce how many are made at once.
const (
	mostOffered = 3
	mostAtOnce  = 3
)

// Changes solves what would help the checks of a report for which want is true,
// without making another check's verdict worse: single changes, and only where
// none does, two and then three at once. It looks first for what makes all of them
// clear, then for what keeps all of them from striking, then for what keeps from
// it as many as can be helped at all. Of as many changes the cheapest come first: a
// tee moved, a club shortened, a hung thing raised or taken away, the floor, the
// ceiling. Every one was run again.
func Changes(l *fit.Lab, given plan.Checked, report fit.Report, want func(fit.Check) bool) ([]Change, error) {
	p := given.Plan()
	casts, err := l.Casts(p, nil, nil)
	if err != nil {
		return nil, err
	}
	j := job{lab: l, p: p, casts: casts, surfaces: sweep.Surfaces(p)}
	var wanted []pair // those asked for that are not clear
	for _, c := range report.Checks {
		x := pair{check: c, level: math.Inf(-1)}
		x.cast = slices.IndexFunc(casts, func(a fit.Cast) bool { return a.Player.Name == c.Player && a.Club.Name == c.Club })
		x.tee = indexOf(p.Tees, c.Tee, func(t plan.Tee) string { return t.Name })
		x.wanted = want(c) && c.Verdict != fit.Clear
		j.pairs = append(j.pairs, x)
		if x.wanted {
			wanted = append(wanted, x)
		}
	}
	if len(wanted) == 0 {
		return nil, nil
	}
	for _, level := range []float64{p.Margin, 0} {
		if level == 0 && report.Verdict != fit.Strikes {
			break // nothing strikes as it is
		}
		j.aim(level, func(pair) bool { return true })
		if out, err := j.search(); len(out) > 0 || err != nil {
			return out, err
		}
	}
	// Not everybody can be helped: those who lack least, as many as it takes.
	slices.SortStableFunc(wanted, func(a, b pair) int { return cmp.Compare(b.check.Clearance, a.check.Clearance) })
	for n := len(wanted) - 1; n > 0; n-- {
		if wanted[n-1].check.Verdict != fit.Strikes {
			break // the rest does not strike as it is
		}
		j.aim(0, func(x pair) bool { return x.check.Clearance >= wanted[n-1].check.Clearance })
		if out, err := j.search(); len(out) > 0 || err != nil {
			return out, err
		}
	}
	return nil, nil
}

// pair is one check: a cast on a tee.
type pair struct {
	cast, tee int
	check     fit.Check // as it is
	wanted    bool
	level     float64 // m that it must reach
}

// job is a search for changes.
type job struct {
	lab      *fit.Lab
	p        plan.Plan
	casts    []fit.Cast
	surfaces []sweep.Surface
	pairs    []pair
	close    int // looks at every member that are still allowed
}

// closeLooks bounds how often a search runs every member of a family past the
// boxes of a room, each some milliseconds.
const closeLooks = 60

// aim sets what every check must reach: level for the wanted ones, for the rest
// what they have.
func (j *job) aim(level float64, helped func(pair) bool) {
	for i := range j.pairs {
		x := &j.pairs[i]
		switch {
		case x.wanted && helped(*x):
			x.level = level
			if x.check.Verdict == fit.Tight {
				x.level = max(level, 0)
			}
		case x.check.Verdict == fit.Clear:
			x.level = j.p.Margin
		case x.check.Verdict == fit.Tight:
			x.level = 0
		default:
			x.level = math.Inf(-1)
		}
	}
}

// search returns the cheapest of the smallest sets of changes that do.
func (j *job) search() ([]Change, error) {
	j.close = closeLooks
	near := map[string]bool{}
	for _, x := range j.pairs {
		for name, v := range x.check.BySurface {
			if v < x.level {
				near[name] = true
			}
		}
	}
	all := j.levers(func(x pair) bool { return x.check.Clearance < x.level }, near)
	most := make([]float64, len(all))
	for i, v := range all {
		most[i] = v.most
	}
	if _, ok := j.does(all, most, true); !ok {
		return nil, nil // not with everything at once
	}
	var out []Change
	for n := 1; n <= min(mostAtOnce, len(all)) && len(out) == 0; n++ {
		for _, set := range sets(all, n) {
			if len(out) == mostOffered {
				break
			}
			steps, ok := j.solve(set)
			if !ok {
				continue
			}
			c, ok, err := j.run(steps, n)
			if err != nil {
				return nil, err
			}
			if ok {
				out = append(out, c)
			}
		}
	}
	return out, nil
}

// sets are all choices of n levers, the cheapest first: by the dearest of each,
// then by the next.
func sets(all []lever, n int) [][]lever {
	var out [][]lever
	var choose func(from int, have []lever)
	choose = func(from int, have []lever) {
		if len(have) == n {
			out = append(out, slices.Clone(have))
			return
		}
		for i := from; i < len(all); i++ {
			choose(i+1, append(have, all[i]))
		}
	}
	choose(0, nil)
	slices.SortStableFunc(out, func(a, b []lever) int {
		for i := n - 1; i >= 0; i-- { // levers come by rank
			if d := cmp.Compare(a[i].rank, b[i].rank); d != 0 {
				return d
			}
		}
		return 0
	})
	return out
}

// solve finds how far each lever of a set must be pulled, the dearest as little as
// will do. ok is false where the set does not do, or would without one of them.
func (j *job) solve(set []lever) (steps []Remedy, ok bool) {
	pulled := make([]float64, len(set))
	for i, v := range set {
		pulled[i] = v.most
	}
	if steps, ok = j.does(set, pulled, false); !ok {
		return nil, false
	}
	for i := len(set) - 1; i >= 0; i-- {
		v := set[i]
		if v.most <= 0 {
			continue
		}
		low, high := 0.0, math.Ceil(v.most/v.step-1e-6) // in steps: too little, enough
		for high-low > 1 {
			mid := math.Floor((low + high) / 2)
			pulled[i] = mid * v.step
			if tried, does := j.does(set, pulled, false); does {
				steps, high = tried, mid
			} else {
				low = mid
			}
		}
		pulled[i] = min(high*v.step, v.most)
	}
	return steps, true
}

// does reports whether a set of levers, pulled so far, does, and the steps. A tee
// that need not move is a lever for nothing, unless idle ones are allowed.
func (j *job) does(set []lever, pulled []float64, idle bool) (steps []Remedy, ok bool) {
	if j.lab.Rest(0, 0) != nil {
		return nil, false // and so on, until there is nothing left to try: nobody waits for it
	}
	free := map[int]bool{}
	for i, v := range set {
		if v.tee >= 0 {
			free[v.tee] = true
		} else {
			steps = append(steps, v.pull(pulled[i]))
		}
	}
	p, err := Apply(j.p, inOrder(steps))
	if err != nil || p.Validate() != nil {
		return nil, false
	}
	stands, ok := j.stands(p)
	if !ok {
		return nil, false
	}
	var moves []Remedy
	for i, t := range p.Tees {
		g := newGreen(p, j, stands, i)
		if g.lacks(g.now, false) <= 0 {
			continue
		}
		if !free[i] {
			return nil, false
		}
		at, ok := g.nearest()
		if !ok {
			return nil, false
		}
		moves = append(moves, moved(t, i, at)...)
		delete(free, i)
	}
	if len(free) > 0 && !idle {
		return nil, false
	}
	return append(moves, steps...), true
}

// moved are the steps that take a tee to a spot: along one axis, or along both.
func moved(t plan.Tee, i int, to fit.Spot) (out []Remedy) {
	for axis, d := range [2]float64{to.X - t.X, to.Y - t.Y} {
		if d == 0 {
			continue
		}
		k := 2 * axis
		if d < 0 {
			k++
		}
		out = append(out, Remedy{
			Kind: KindTee, Subject: t.Name, Towards: sides[k].name, Amount: math.Abs(d), Value: [2]float64{to.X, to.Y}[axis],
			Edits: []Edit{{Path: path("tees", i, [2]string{".x", ".y"}[axis]), Value: [2]float64{to.X, to.Y}[axis]}},
		})
	}
	return out
}

// inOrder are the edits of steps: what is removed goes last, so that no path
// points at another thing than it did.
func inOrder(steps []Remedy) (out []Edit) {
	for _, r := range steps {
		if r.Kind != KindRemove {
			out = append(out, r.Edits...)
		}
	}
	var gone []Edit
	for _, r := range steps {
		if r.Kind == KindRemove {
			gone = append(gone, r.Edits...)
		}
	}
	slices.Reverse(gone) // the levers come in the plan's order
	return append(out, gone...)
}

// stands are the checks of a changed plan. Who swings a shorter club is modelled
// anew where the longer one lacked something; where it did not, it stays.
func (j *job) stands(p plan.Plan) ([]stand, bool) {
	out := make([]stand, len(j.pairs))
	for i, x := range j.pairs {
		c := j.casts[x.cast]
		k := indexOf(p.Clubs, c.Club.Name, func(c plan.Club) string { return c.Name })
		if p.Clubs[k].Length != c.Club.Length && x.check.Clearance < x.level {
			own, err := j.lab.Casts(p, []string{c.Player.Name}, []string{c.Club.Name})
			if err != nil || len(own) == 0 {
				return nil, false // no stance: such a club does not do
			}
			c = own[0]
		}
		c.At = sweep.Place(p, plan.Tee{}, c.Player)
		out[i] = newStand(p, &c, x.tee)
	}
	return out, true
}

// run makes the changes and checks the plan again: ok is false where a check falls
// short of its level after all.
func (j *job) run(steps []Remedy, count int) (Change, bool, error) {
	c := Change{Steps: steps, Count: count, Edits: inOrder(steps)}
	p, err := Apply(j.p, c.Edits)
	if err != nil {
		return c, false, nil
	}
	doc, err := plan.Check(p)
	if err != nil {
		return c, false, nil
	}
	if c.Report, err = j.lab.Check(doc); err != nil {
		return c, false, err
	}
	for i, x := range j.pairs {
		if c.Report.Checks[i].Clearance < x.level {
			return c, false, nil
		}
	}
	return c, true, nil
}

// PutTee is the change that puts the i-th tee to a place (m), run. ok is false
// where it is there already, or may not lie there.
func PutTee(l *fit.Lab, given plan.Checked, i int, x, y float64) (c Change, ok bool, err error) {
	j := job{lab: l, p: given.Plan()}
	steps := moved(j.p.Tees[i], i, fit.Spot{X: x, Y: y})
	if len(steps) == 0 {
		return c, false, nil
	}
	return j.run(steps, 1)
}
