package ball

import (
	"math"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/lean/halton"
	"wideberth/internal/sim/plan"
)

// Skill is the spread of a player's ordinary shots: standard deviations of a
// normal distribution. Mishits are not in it; see Misses.
type Skill struct {
	Direction float64 // rad, start direction
	Launch    float64 // rad, launch angle
	Speed     float64 // share of the ball's speed
}

// SkillOf returns the spread of a player: "steady", "average" (also for "") or
// "wild".
//
// Assumptions, all of them. The only figures known are of final direction, which
// holds the curve of the flight too: about 3.4° for tour players' drives, 6.5°
// for a golfer who scores 90, 8° for 100 (M. Broadie 2014, from memory, low
// confidence). A start direction spreads less, hence 2.5°, 4° and 6.5°. For
// launch angle and speed nothing was found.
func SkillOf(p plan.Player) Skill {
	switch p.Skill {
	case plan.SkillSteady:
		return Skill{2.5 * degree, 2 * degree, 0.03}
	case plan.SkillWild:
		return Skill{6.5 * degree, 5.5 * degree, 0.10}
	default:
		return Skill{4 * degree, 3.5 * degree, 0.06}
	}
}

// Draw is one shot's departure from the middle, in standard deviations.
type Draw struct{ Direction, Launch, Speed float64 }

// Draws returns n low-discrepancy points (package halton), from a fixed seed and
// mapped to three independent normal variables. The same n gives the same points.
func Draws(n int) []Draw {
	const seed = 1946 // any will do
	out := make([]Draw, n)
	edge := 0.5 / float64(n) // a point may fall near 0, whose quantile is −∞
	for i, u := range halton.Points(n, 3, seed) {
		var z [3]float64
		for j, v := range u {
			z[j] = math.Sqrt2 * math.Erfinv(2*min(max(v, edge), 1-edge)-1)
		}
		out[i] = Draw{z[0], z[1], z[2]}
	}
	return out
}

// Vary returns the launch with the draw's departures.
func (l Launch) Vary(s Skill, d Draw) Launch {
	l.Azimuth += s.Direction * d.Direction
	l.Elevation += s.Launch * d.Launch
	l.Speed *= max(0.2, 1+s.Speed*d.Speed)
	return l
}

// Miss is one named mishit, as a direction: how often it happens is not said.
type Miss struct {
	Name   string
	Launch Launch
}

// Topped names the mishit that runs along the floor.
const Topped = "topped"

// What the named mishits are. Off the hosel is common practice, no source; the
// rest are assumptions.
const (
	ThinPart   = 3.0 // a thin ball's launch angle is divided by it
	SkiedMore  = 30  // degrees that a skied ball starts steeper than meant,
	SkiedLeast = 45  // from this many
	SkiedMost  = 65  // to this many
	HoselLeast = 30  // degrees to the toe side
	HoselMost  = 60
	HoselSpeed = 0.7 // share of the speed
)

// Hosel names the hosel shot that leaves at an angle (degrees) to the toe side.
func Hosel(angle int) string { return fmt.Sprintf("hosel %d°", angle) }

// Misses returns the named worst cases for a well-struck launch: a hosel shot
// leaves to the golfer's toe side, which is right for a right-hander; a thin ball
// leaves low; a topped one skims the mat with topspin; a skied one climbs.
func Misses(l Launch, hand plan.Hand) []Miss {
	toe := -1.0
	if hand == plan.HandLeft {
		toe = 1
	}
	with := func(name string, f func(m *Launch)) Miss {
		m := l
		f(&m)
		return Miss{name, m}
	}
	hosel := func(angle int) Miss {
		return with(Hosel(angle), func(m *Launch) {
			m.Azimuth = toe * float64(angle) * degree
			m.Elevation /= 2
			m.Speed *= HoselSpeed
			m.Spin *= 0.5
		})
	}
	return []Miss{
		with("thin", func(m *Launch) { m.Elevation /= ThinPart; m.Spin *= 0.6 }),
		with(Topped, func(m *Launch) { m.Elevation = 1 * degree; m.Speed *= 0.6; m.Spin *= -0.5 }),
		with("skied", func(m *Launch) {
			m.Elevation = min(max(m.Elevation+SkiedMore*degree, SkiedLeast*degree), SkiedMost*degree)
			m.Speed *= 0.65
		}),
		hosel(HoselLeast), hosel((HoselLeast + HoselMost) / 2), hosel(HoselMost),
	}
}
