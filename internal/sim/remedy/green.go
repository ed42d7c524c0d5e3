package remedy

import (
	"cmp"
	"math"
	"slices"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// green is the floor about one tee, for everybody who plays from it and what each
// must reach there.
type green struct {
	p      plan.Plan
	job    *job
	tee    int
	now    fit.Spot // where the tee is
	stands []stand
	pairs  []pair // of each
	// flat are the flat surfaces, each with who comes nearest to it; a clearance of 0
	// is what they must reach.
	flat []fit.Ramp
}

func newGreen(p plan.Plan, j *job, all []stand, tee int) green {
	g := green{p: p, job: j, tee: tee, now: fit.Spot{X: p.Tees[tee].X, Y: p.Tees[tee].Y}}
	for i, x := range j.pairs {
		if x.tee != tee || math.IsInf(x.level, -1) {
			continue
		}
		s := all[i]
		g.stands, g.pairs = append(g.stands, s), append(g.pairs, x)
		for k, f := range s.flat {
			f.At0 -= x.level
			if k == len(g.flat) {
				g.flat = append(g.flat, f.Ramp)
			} else if f.At0 < g.flat[k].At0 {
				g.flat[k] = f.Ramp
			}
		}
	}
	return g
}

// lacksFlat is how much (m) somebody lacks to a flat surface on a spot; not
// positive where nobody lacks anything.
func (g *green) lacksFlat(at fit.Spot) float64 {
	least := math.Inf(1)
	for _, f := range g.flat {
		least = min(least, f.At(at))
	}
	return -least
}

// lacks is lacksFlat with boxes. Near them, of a spot that does not do, it may be
// less. What the check of the plan as it is found is enough where little changed.
// Elsewhere every member is tried, or where many spots are looked at those of the
// atlas first, which takes as long to make as a dozen looks.
func (g *green) lacks(at fit.Spot, many bool) float64 {
	short := g.lacksFlat(at)
	if short > 0 {
		return short
	}
	for i := range g.stands {
		s, x := &g.stands[i], g.pairs[i]
		for _, b := range s.box {
			if g.knownClear(s, x, b, at) {
				continue
			}
			if many {
				v, near := s.BoxWithin(b.Box, at, x.level)
				if !near {
					continue
				}
				if sure := x.level - v - s.Kin.Atlas().Rosy(); sure > 0 {
					return sure
				}
				if g.job.close--; g.job.close < 0 {
					return x.level - v
				}
			}
			local := s.Placed(at).Surface(sweep.Surface{Kind: sweep.Solid, Box: b.Box})
			if v := s.Kin.NearestTo(local); v < x.level {
				return x.level - v
			}
		}
	}
	return short
}

// knownClear reports whether the check of the plan as it is leaves no doubt: no
// clearance changes by more than the golfer is moved.
func (g *green) knownClear(s *stand, x pair, b sweep.Surface, at fit.Spot) bool {
	j := g.job
	k := slices.IndexFunc(j.surfaces, func(o sweep.Surface) bool { return o.Name == b.Name })
	if k < 0 || s.Kin != j.casts[x.cast].Kin {
		return false
	}
	had, old := x.check.BySurface[b.Name], j.surfaces[k].Box
	if b.Box != old {
		// What grows on with a raised ceiling is above the old one.
		if old.Max.Z = b.Box.Max.Z; b.Box != old {
			return false
		}
		had = min(had, x.check.BySurface["ceiling"])
	}
	t := j.p.Tees[x.tee]
	return had-fit.Spot{X: t.X, Y: t.Y}.To(at)-math.Abs(g.p.Floor.Standing()-j.p.Floor.Standing()) >= x.level
}

// free reports whether a ball may lie on a spot and be hit from there: no nearer to
// the screen and no farther from it than is usual, or than it is now, and within
// what the ball sensor reads, if it is now.
func (g *green) free(at fit.Spot) bool {
	if !fit.BallFits(g.p, at) {
		return false
	}
	if s := g.p.Screen; s != nil {
		if d, now := s.X-at.X, s.X-g.now.X; d < min(fit.UsualNearest, now) || d > max(fit.UsualFarthest, now) {
			return false
		}
	}
	reads := func(s *plan.Sensor, at fit.Spot) bool {
		return at.X >= s.Min[0] && at.X <= s.Max[0] && at.Y >= s.Min[1] && at.Y <= s.Max[1]
	}
	return g.p.Sensor == nil || reads(g.p.Sensor, at) || !reads(g.p.Sensor, g.now)
}

// cell (m) is how finely the floor is searched for a spot off both axes.
const cell = 0.05

// nearest returns the spot nearest to the tee's on which everybody reaches what
// they must: straight to a side if that does, else anywhere.
func (g *green) nearest() (fit.Spot, bool) {
	for _, f := range g.flat {
		if f.Level() && f.At0 < 0 {
			return fit.Spot{}, false // from everywhere
		}
	}
	size := geom.Hypot(g.p.Room.Length, g.p.Room.Width)
	best, least := fit.Spot{}, math.Inf(1)
	for _, s := range sides {
		if at, d, ok := g.along(s.x, s.y, min(size, least)); ok && d < least {
			best, least = at, d
		}
	}
	if !math.IsInf(least, 1) {
		return best, true
	}
	var spots []fit.Spot
	for i := math.Ceil(-g.now.X / cell); g.now.X+i*cell < g.p.Room.Length; i++ {
		for k := math.Ceil(-g.now.Y / cell); g.now.Y+k*cell < g.p.Room.Width; k++ {
			if at := (fit.Spot{X: g.now.X + i*cell, Y: g.now.Y + k*cell}); g.lacksFlat(at) <= 0 && g.free(at) {
				spots = append(spots, at)
			}
		}
	}
	slices.SortStableFunc(spots, func(a, b fit.Spot) int { return cmp.Compare(g.now.To(a), g.now.To(b)) })
	type failed struct {
		fit.Spot
		short float64
	}
	var bad []failed
	for _, at := range spots {
		// No clearance changes by more than the way between two spots.
		if slices.ContainsFunc(bad, func(b failed) bool { return b.To(at) < b.short }) {
			continue
		}
		short := g.lacks(at, true)
		if short <= 0 {
			return fit.Spot{X: toStep(at.X), Y: toStep(at.Y)}, g.lacks(fit.Spot{X: toStep(at.X), Y: toStep(at.Y)}, true) <= 0
		}
		bad = append(bad, failed{at, short})
	}
	return fit.Spot{}, false
}

// along returns the first spot that does on the way to a side, and how far it is.
func (g *green) along(dx, dy, most float64) (fit.Spot, float64, bool) {
	at := func(d float64) fit.Spot { return fit.Spot{X: g.now.X + d*dx, Y: g.now.Y + d*dy} }
	w := walk{0, most, func(d float64) (float64, bool) {
		if s := at(d); g.free(s) {
			return -g.lacks(s, false), true
		}
		return 0, false
	}}
	d, ok := w.first(step)
	return at(d), d, ok
}

// toStep rounds a coordinate (m) to a whole step.
func toStep(v float64) float64 { return math.Round(v/step) * step }
