package fit

import (
	"cmp"
	"math"
	"slices"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// CheckPlan is Lab.Check for a single question.
func CheckPlan(given plan.Checked) (Report, error) {
	var l Lab
	return l.Check(given)
}

// Check runs every player with each of their clubs on each of their tees and
// reports the clearances. The same plan gives the same report.
func (l *Lab) Check(given plan.Checked) (Report, error) {
	p := given.Plan()
	report := Report{Version: Version, Verdict: Clear, ModelError: swing.PathResidual, ModelErrorHow: swing.PathResidualHow}
	surfaces := sweep.Surfaces(p)
	for _, player := range p.Players {
		for _, club := range p.ClubsOf(player) {
			for t, tee := range p.Tees {
				if !uses(player, tee) {
					continue
				}
				room := newRoom(surfaces, sweep.Place(p, tee, player))
				kin, err := l.relatives(player, club, room.dirs())
				if err != nil {
					return Report{}, err
				}
				c := kin.check(room, p.Margin)
				c.Player, c.Club, c.Tee = player.Name, club.Name, tee.Name
				if c.Verdict != Clear && !l.Brief {
					who := cast{player, club, kin, sweep.Place(p, plan.Tee{}, player)}
					c.Remedies = who.advise(p, t, c.BySurface)
				}
				report.Checks = append(report.Checks, c)
				report.Verdict = worse(report.Verdict, c.Verdict)
			}
		}
	}
	return report, nil
}

// worse returns the worse of two verdicts.
func worse(a, b string) string {
	rising := []string{Clear, Tight, Strikes}
	if slices.Index(rising, b) > slices.Index(rising, a) {
		return b
	}
	return a
}

// VerdictOf is the one rule: the verdict for a clearance (m) under a margin (m).
func VerdictOf(clearance, margin float64) string {
	switch {
	case clearance < 0:
		return Strikes
	case clearance < margin:
		return Tight
	}
	return Clear
}

// check answers for the family in one room.
func (r *relatives) check(room room, margin float64) Check {
	central := r.family.Central
	c := Check{
		Clearance: math.Inf(1), Typical: math.Inf(1),
		BySurface: map[string]float64{}, TypicalBySurface: map[string]float64{},
		Notes:     r.notes,
		HeadSpeed: central.ClubheadSpeed(central.ImpactTime()), Heels: central.Stance.BallToHeels,
	}
	tightest, loosest := 0, r.central
	touched := make([]bool, len(r.sample))
	var struck []int  // surfaces
	var deep []*reach // the members that come deepest into them
	for i, s := range room.local {
		against := r.againstFlat
		if !s.Kind.Flat() {
			against = r.againstBox
		}
		least, typical, who := against(s, touched)
		name := room.surfaces[i].Name
		c.BySurface[name], c.TypicalBySurface[name] = least, typical
		c.Typical = min(c.Typical, typical)
		if least < 0 {
			struck, deep = append(struck, i), append(deep, who)
		}
		if least < c.Clearance {
			c.Clearance, tightest, loosest = least, i, who
		}
	}
	for _, t := range touched {
		if t {
			c.Hits++
		}
	}
	c.Tried = len(r.sample)
	c.HitShare = float64(c.Hits) / float64(c.Tried)
	c.HitError = shareError(c.Hits, c.Tried)
	c.Verdict = VerdictOf(c.Clearance, margin)
	c.Nearest = r.nearest(room, tightest, loosest)
	if c.Verdict == Strikes {
		c.Contact, c.ContactTypical = r.contacts(room, struck, touched, deep, c.Nearest, c.Typical < 0)
	}
	c.Causes = r.causes(room.local[tightest])
	return c
}

// againstFlat is againstBox for a flat surface.
func (r *relatives) againstFlat(s sweep.Surface, touched []bool) (least, typical float64, who *reach) {
	k := slices.Index(r.dirs, s.Plane.N)
	for i := range r.sample {
		touched[i] = touched[i] || r.sample[i].least[k] < s.Plane.D
	}
	return r.least[k] - s.Plane.D, r.central.least[k] - s.Plane.D, r.loosest[k]
}

// causes returns what each trait costs in clearance to a surface, the dearest
// first.
func (r *relatives) causes(s sweep.Surface) []Cause {
	var causes []Cause
	add := func(t swing.Trait, cost float64) {
		causes = append(causes, Cause{t.String(), cost})
	}
	if s.Kind.Flat() {
		for t, slope := range r.slopes(slices.Index(r.dirs, s.Plane.N)) {
			add(swing.Trait(t), 0-slope) // no negative zeros in reports
		}
	} else {
		at := r.singleClearances(s)
		for t := range swing.NumTraits {
			add(t, (at[2*t]-at[2*t+1])/2)
		}
	}
	slices.SortStableFunc(causes, func(x, y Cause) int { return cmp.Compare(math.Abs(y.Cost), math.Abs(x.Cost)) })
	return causes
}

// shareError returns half the width of the 95 % score interval of a share
// (E. B. Wilson 1927, J. Am. Stat. Assoc. 22:209–212), which stays honest when
// none or all of the sample touches.
func shareError(hits, tried int) float64 {
	const z = 1.96
	n, p := float64(tried), float64(hits)/float64(tried)
	return z / (1 + z*z/n) * math.Sqrt(p*(1-p)/n+z*z/(4*n*n))
}

// nearest describes the meeting of one member with surface i where it comes
// nearest.
func (r *relatives) nearest(room room, i int, m *reach) Nearest {
	s := room.local[i]
	return r.meeting(room, i, m, sweep.Around(m.swing, r.coarse(m).Clearance(s).Time).Clearance(s))
}

// meeting describes the meeting of one member with surface i.
func (r *relatives) meeting(room room, i int, m *reach, at sweep.Contact) Nearest {
	inRoom := room.place.ContactToRoom(at)
	return Nearest{
		Surface: room.surfaces[i].Name, Part: at.Part.String(), Phase: m.swing.PhaseAt(at.Time).String(), Time: at.Time,
		At:        [3]float64{inRoom.OnSurface.X, inRoom.OnSurface.Y, inRoom.OnSurface.Z},
		On:        [3]float64{inRoom.OnPart.X, inRoom.OnPart.Y, inRoom.OnPart.Z},
		Speed:     speedAt(m.swing, at),
		Variation: m.variation,
	}
}

// speedAt returns how fast (m/s) the place of the part that meets a surface moves,
// by central difference: a shaft's middle is slower than its end.
func speedAt(s *swing.Swing, c sweep.Contact) float64 {
	const h = 1e-4 // s
	a, b := s.PoseAt(c.Time - h)[c.Part], s.PoseAt(c.Time + h)[c.Part]
	share := s.PoseAt(c.Time)[c.Part].Share(c.OnPart)
	return geom.Norm(r3.Sub(geom.Lerp(b.A, b.B, share), geom.Lerp(a.A, a.B, share))) / (2 * h)
}
