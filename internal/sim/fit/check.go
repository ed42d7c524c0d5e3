package fit

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// CheckPlan runs every player with each of their clubs on each of their tees and
// reports the clearances. The plan is filled with defaults and validated first;
// the error is the plan's own sentence. The same plan gives the same report.
func CheckPlan(p plan.Plan) (Report, error) {
	p = p.WithDefaults()
	if err := p.Validate(); err != nil {
		return Report{}, err
	}
	report := Report{Version: Version, Verdict: Clear}
	surfaces := sweep.Surfaces(p)
	for _, player := range p.Players {
		for _, club := range p.ClubsOf(player) {
			b, err := newBout(player, club)
			if err != nil {
				return Report{}, err
			}
			for _, tee := range p.TeesOf(player) {
				r := newRoom(p, surfaces, tee, player)
				if err := b.run(r); err != nil {
					return Report{}, err
				}
				report.Checks = append(report.Checks, b.check(p, r, tee))
			}
		}
	}
	for _, c := range report.Checks {
		report.Verdict = worse(report.Verdict, c.Verdict)
	}
	return report, nil
}

// worse returns the worse of two verdicts.
func worse(a, b string) string {
	order := []string{Clear, Tight, Strikes}
	if slices.Index(order, b) > slices.Index(order, a) {
		return b
	}
	return a
}

// verdictOf returns the verdict for a clearance under a margin.
func verdictOf(clearance, margin float64) string {
	switch {
	case clearance < 0:
		return Strikes
	case clearance < margin:
		return Tight
	}
	return Clear
}

// check writes the check of a bout that has been run against r.
func (b *bout) check(p plan.Plan, r room, tee plan.Tee) Check {
	c := Check{
		Player: b.player.Name, Club: b.club.Name, Tee: tee.Name,
		Clearance: math.Inf(1), Typical: math.Inf(1),
		BySurface: map[string]float64{}, TypicalBySurface: map[string]float64{},
		Tried: len(b.sample), Notes: b.notes,
		HeadSpeed: b.family.Central.ClubheadSpeed(b.family.Central.ImpactTime()),
		Heels:     b.family.Central.Stance.BallToHeels,
	}
	tightest, loosest := 0, &b.central
	for i, s := range r.surfaces {
		typical := r.clearance(&b.central, i)
		least, who := typical, &b.central
		for _, list := range [][]member{b.sample, b.singles, b.corners} {
			for k := range list {
				if v := r.clearance(&list[k], i); v < least {
					least, who = v, &list[k]
				}
			}
		}
		c.BySurface[s.Name], c.TypicalBySurface[s.Name] = least, typical
		c.Typical = min(c.Typical, typical)
		if least < c.Clearance {
			c.Clearance, tightest, loosest = least, i, who
		}
	}
	for k := range b.sample {
		for i := range r.surfaces {
			if r.clearance(&b.sample[k], i) < 0 {
				c.Hits++
				break
			}
		}
	}
	c.HitShare = float64(c.Hits) / float64(c.Tried)
	c.HitError = shareError(c.Hits, c.Tried)
	c.Verdict = verdictOf(c.Clearance, p.Margin)
	c.Nearest = b.nearest(r, tightest, loosest)
	slope := b.slopes(r, tightest)
	for t, s := range slope {
		c.Causes = append(c.Causes, Cause{swing.Trait(t).String(), -s})
	}
	slices.SortStableFunc(c.Causes, func(x, y Cause) int { return cmp.Compare(math.Abs(y.Cost), math.Abs(x.Cost)) })
	return c
}

// shareError returns half the width of the 95 % score interval of a share
// (E. B. Wilson 1927, J. Am. Stat. Assoc. 22:209–212), which stays honest when
// none or all of the sample touches.
func shareError(hits, tried int) float64 {
	const z = 1.96
	n, p := float64(tried), float64(hits)/float64(tried)
	return z / (1 + z*z/n) * math.Sqrt(p*(1-p)/n+z*z/(4*n*n))
}

// nearest describes the meeting of one member with surface i.
func (b *bout) nearest(r room, i int, m *member) Nearest {
	s, err := b.family.Member(m.variation)
	if err != nil { // it was built before, so this cannot happen
		return Nearest{}
	}
	track := sweep.Sample(s, sweep.FineTolerance)
	at := track.Clearance(r.local[i])
	room := r.place.ContactToRoom(at)
	return Nearest{
		Surface: r.surfaces[i].Name, Part: at.Part.String(), Phase: s.PhaseAt(at.Time).String(), Time: at.Time,
		At:        [3]float64{room.OnSurface.X, room.OnSurface.Y, room.OnSurface.Z},
		On:        [3]float64{room.OnPart.X, room.OnPart.Y, room.OnPart.Z},
		Speed:     partSpeed(s, at),
		Variation: m.variation,
	}
}

// partSpeed returns how fast the part of a contact moves there: the faster of
// its two ends, by central difference.
func partSpeed(s *swing.Swing, c sweep.Contact) float64 {
	const h = 1e-4 // s
	a, b := s.PoseAt(c.Time - h)[c.Part], s.PoseAt(c.Time + h)[c.Part]
	return max(r3.Norm(r3.Sub(b.A, a.A)), r3.Norm(r3.Sub(b.B, a.B))) / (2 * h)
}
