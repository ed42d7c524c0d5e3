package fit

import (
	"cmp"
	"math"
	"slices"

	"wideberth/internal/sim/family"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Check runs every player with each of their clubs on each of their tees and
// reports the clearances. The same plan gives the same report.
func (l *Lab) Check(given plan.Checked) (Report, error) {
	p := given.Plan()
	report := Report{Version: Version, Verdict: Clear, ModelError: swing.PathResidual, ModelErrorHow: swing.PathResidualHow}
	surfaces := sweep.Surfaces(p)
	all := 0
	for _, player := range p.Players {
		all += len(p.ClubsOf(player)) * len(p.TeesOf(player))
	}
	l.families.Expect(p.Pairs())
	for _, player := range p.Players {
		for _, club := range p.ClubsOf(player) {
			for _, tee := range p.TeesOf(player) {
				if err := l.Rest(len(report.Checks), all); err != nil {
					return Report{}, err
				}
				c, err := l.check(player, club, sweep.Place(p, tee, player), surfaces, p.Margin)
				if err != nil {
					return Report{}, err
				}
				c.Player, c.Club, c.Tee = player.Name, club.Name, tee.Name
				report.Checks = append(report.Checks, c)
				report.Verdict = report.Verdict.Worse(c.Verdict)
			}
		}
	}
	if most := all + spareChecks; len(l.checks) > most {
		clear(l.checks[most:])
		l.checks = l.checks[:most]
	}
	return report, nil
}

// check answers for one player with one club on one tee, from what it has answered
// before if it can. surfaces are in the room frame.
func (l *Lab) check(player plan.Player, club plan.Club, place sweep.Placement, surfaces []sweep.Surface, margin float64) (Check, error) {
	local := place.Surfaces(surfaces)
	dirs := family.Directions(local)
	key, err := family.KeyOf(player, club, dirs)
	if err != nil {
		return Check{}, err
	}
	one := made{family: key, place: place, surfaces: surfaces, margin: margin}
	if c, ok := l.made(one); ok {
		return c, nil
	}
	kin, err := l.families.Of(player, club, dirs)
	if err != nil {
		return Check{}, err
	}
	t := trial{kin, place, surfaces, local}
	one.check = t.check(margin)
	l.checks = append(l.checks, made{})
	copy(l.checks[1:], l.checks)
	l.checks[0] = one
	return one.check, nil
}

// trial is a family put on one tee of a room.
type trial struct {
	kin      *family.Relatives
	place    sweep.Placement
	surfaces []sweep.Surface // room frame
	local    []sweep.Surface // golfer frame
}

// check answers for the family under a margin (m).
func (t *trial) check(margin float64) Check {
	r := t.kin
	central := r.Family.Central
	c := Check{
		Clearance: math.Inf(1), Typical: math.Inf(1),
		BySurface: map[string]float64{}, TypicalBySurface: map[string]float64{},
		Notes:     r.Notes,
		HeadSpeed: central.ClubheadSpeed(central.ImpactTime()), Heels: central.Stance.BallToHeels,
	}
	tightest, loosest := 0, r.Central
	touched := make([]bool, len(r.Sample))
	var struck []int          // surfaces
	var deep []*family.Member // the members that come deepest into them
	for i, s := range t.local {
		least, typical, who := r.Against(s, touched)
		name := t.surfaces[i].Name
		c.BySurface[name], c.TypicalBySurface[name] = least, typical
		c.Typical = min(c.Typical, typical)
		if least < 0 {
			struck, deep = append(struck, i), append(deep, who)
		}
		if least < c.Clearance {
			c.Clearance, tightest, loosest = least, i, who
		}
	}
	for _, touches := range touched {
		if touches {
			c.Hits++
		}
	}
	c.Tried = len(r.Sample)
	c.HitShare = float64(c.Hits) / float64(c.Tried)
	c.HitError = shareError(c.Hits, c.Tried)
	c.Verdict = VerdictOf(c.Clearance, margin)
	c.Nearest = t.nearest(tightest, loosest)
	if c.Verdict == Strikes {
		c.Contact, c.ContactTypical = t.contacts(struck, touched, deep, c.Nearest, c.Typical < 0)
	}
	c.Causes = t.causes(t.local[tightest])
	return c
}

// causes returns what each trait costs in clearance to a surface of the golfer
// frame, the dearest first.
func (t *trial) causes(s sweep.Surface) []Cause {
	var causes []Cause
	for trait, cost := range t.kin.Costs(s) {
		causes = append(causes, Cause{swing.Trait(trait).String(), cost})
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
func (t *trial) nearest(i int, m *family.Member) Nearest {
	s := t.local[i]
	return t.meeting(i, m, sweep.Around(m.Swing, t.kin.Coarse(m).Clearance(s).Time).Clearance(s))
}

// meeting describes the meeting of one member with surface i.
func (t *trial) meeting(i int, m *family.Member, at sweep.Contact) Nearest {
	inRoom := t.place.ContactToRoom(at)
	return Nearest{
		Surface: t.surfaces[i].Name, Part: at.Part.String(), Phase: m.Swing.PhaseAt(at.Time), Time: at.Time,
		At:        [3]float64{inRoom.OnSurface.X, inRoom.OnSurface.Y, inRoom.OnSurface.Z},
		On:        [3]float64{inRoom.OnPart.X, inRoom.OnPart.Y, inRoom.OnPart.Z},
		Speed:     speedAt(m.Swing, at),
		Variation: m.Variation,
	}
}

// speedAt returns how fast (m/s) the place of the part that meets a surface moves,
// by central difference: a shaft's middle is slower than its end.
func speedAt(s *swing.Swing, c sweep.Contact) float64 {
	const h = 1e-4 // s
	a, b := s.PartAt(c.Time-h, c.Part), s.PartAt(c.Time+h, c.Part)
	share := s.PartAt(c.Time, c.Part).Share(c.OnPart)
	return geom.Norm(r3.Sub(geom.Lerp(b.A, b.B, share), geom.Lerp(a.A, a.B, share))) / (2 * h)
}
