package protocol

import (
	"math"
	"strings"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/ball/enclosure"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/rules"
	"wideberth/internal/solver/words"
	"wideberth/internal/units"
)

// assumption is something that an answer about the ball rests on.
type assumption struct {
	Text   string `json:"text"`
	Status string `json:"status"` // one of the status constants
}

// How well an assumption is founded.
const (
	statusSource   = "source"          // published, and read
	statusMemory   = "source, unread"  // published, but quoted by others or from memory
	statusPractice = "common practice" // of the trade, no source
	statusAssumed  = "assumption"      // nothing published was found
	statusYours    = "your number"
	statusModel    = "this model"
)

// assumed lists what the figures about the ball rest on. each is how many balls
// were flown for a line of the table.
func (b *balls) assumed(pairs []ball.Pair, each int) []assumption {
	var out []assumption
	add := func(status, format string, args ...any) {
		out = append(out, assumption{"Assumed: " + fmt.Sprintf(format, args...), status})
	}
	b.assumeSkill(add)
	b.assumeLaunch(add)
	add(statusAssumed, "mishits are named, not counted: nobody says how often they happen. A thin ball starts at 1/%.0f of the launch angle, a topped one skims the mat, a skied one starts %d° steeper than meant, at %d° to %d°.",
		ball.ThinPart, ball.SkiedMore, ball.SkiedLeast, ball.SkiedMost)
	add(statusPractice, "a ball off the hosel starts %d° to %d° to the toe side, right for a right-hander, at %.1f of the speed.", ball.HoselLeast, ball.HoselMost, ball.HoselSpeed)
	add(statusSource, "the ball is the smallest and heaviest the Rules allow: %s across, %.2f g (Equipment Rules 2019, Part 4).", ballSize(b.Units), 1000*ball.Mass)
	add(statusSource, "drag and lift of %s, as digitised in an open course (NTNU TKT4140). Over a room other published figures move the ball by less than %s at %s.",
		ball.BearmanHarvey.Name, b.Up(ball.AeroDoubt), units.Label(ball.AeroDoubtAt, b.Units))
	air := plan.DefaultAir()
	if b.plan.Air != nil {
		air = *b.plan.Air
	}
	add(statusYours, "air at %s and %s above sea level; the ball flies straight, its spin axis level.", units.LabelQuantity(units.Temperature, air.Temperature, b.Units), units.LabelQuantity(units.Altitude, air.Altitude, b.Units))
	back := func(m ball.Material, g ball.Give) float64 { return 100 * m.Restitution(0, g) }
	add(statusAssumed, "hung cloth gives back %.0f %% to %.0f %% of a ball's speed, likely %.0f %%; foam %.0f %% to %.0f %%; turf or mat %.0f %% to %.0f %%. No measured figure for cloth was found: try soft shots first.",
		back(ball.Cloth, ball.Low), back(ball.Cloth, ball.High), back(ball.Cloth, ball.Likely), back(ball.Foam, ball.Low), back(ball.Foam, ball.High), back(ball.Ground, ball.Low), back(ball.Ground, ball.High))
	add(statusMemory, "a bare hard surface gives back %.2f less %.4f for every m/s (Penner 2001), %.2f less where boards give, %.2f more for the doubt. Walls, ceiling, slopes, beams and hung things all count as bare and hard.",
		ball.HardStill, ball.HardPerSpeed, ball.BoardsLess, ball.DoubtMore)
	if b.plan.Screen != nil {
		add(statusPractice, "a screen stretches %s to %s under a driver's ball at %s, more in proportion for a faster one.", b.Near(enclosure.StretchLeast), b.Near(enclosure.StretchMost), b.SpeedUp(enclosure.StretchSpeed))
		add(statusAssumed, "the enclosure stands on square tube %s wide outside the cloth, along the sides and the top, none along the bottom.", units.LabelShort(ball.Tube, b.Units))
	}
	add(statusAssumed, "a ball that passes the golfer with more than %.0f joule is worth a warning: one dropped from %s has that. No published limit was found.", ball.WarnEnergy, units.Label(ball.WarnDrop(), b.Units))
	add(statusModel, "%s balls are flown for the player and club looked at and %s for each line of the table, spread evenly (Halton 1960). The interval (Wilson 1927) holds the error of counting only, not how well the spread fits a player.", words.Thousands(focusBalls), words.Thousands(each))
	return out
}

// assumeSkill says how wide each skill among the players spreads the balls.
func (b *balls) assumeSkill(add func(status, format string, args ...any)) {
	const degree = math.Pi / 180
	who := map[ball.Skill][]string{}
	var skills []ball.Skill
	for _, pl := range b.plan.Players {
		s := ball.SkillOf(pl)
		if who[s] == nil {
			skills = append(skills, s)
		}
		who[s] = append(who[s], pl.Name)
	}
	for _, s := range skills {
		word := plan.SkillAverage
		if pl, ok := b.plan.Player(who[s][0]); ok && pl.Skill != "" {
			word = pl.Skill
		}
		add(statusAssumed, "%s: %s shots, with standard deviations of %.1f° in start direction, %.1f° in launch angle and %.0f %% in ball speed.",
			words.List(who[s]), word, s.Direction/degree, s.Launch/degree, 100*s.Speed)
	}
}

// assumeLaunch says where each club's launch comes from.
func (b *balls) assumeLaunch(add func(status, format string, args ...any)) {
	var usual, own []string
	for _, c := range b.plan.Clubs {
		l := ball.BallOf(c)
		text := fmt.Sprintf("%s %.1f° and %s rev/min", c.Name, l.Launch, words.Thousands(int(math.Round(l.Spin))))
		switch {
		case measured(c):
			add(statusYours, "the %s's ball leaves at %s for everybody, as the plan says, not as each swing gives it.", c.Name, b.SpeedUp(l.Speed))
			own = append(own, text)
		case !isUsual(c):
			own = append(own, text)
		default:
			usual = append(usual, text)
		}
	}
	if len(usual) > 0 {
		add(statusPractice, "launch and spin of an amateur man's well-struck ball, partly from memory: %s.", strings.Join(usual, "; "))
	}
	if len(own) > 0 {
		add(statusYours, "launch and spin as the plan says: %s.", strings.Join(own, "; "))
	}
	speed := b.head(b.who.player, b.who.club)
	if speed > 0 {
		driver, least, most := ball.Restitutions()
		add(statusModel, "ball speed from each player's own modelled swing. %s's clubhead with the %s comes in at %s and the ball leaves %.2f times as fast (impact of a free head and a ball: restitution %.2f for a driver, USGA 1998, %.2f to %.2f else; form of Penner 2003, from memory). Spin goes with it.",
			b.who.player.Name, b.who.club.Name, b.SpeedUp(speed), ball.Smash(b.who.club), driver, least, most)
	}
}

// ballSize is the Rules' least diameter as they write it.
func ballSize(system string) string {
	if system == units.Metric {
		return fmt.Sprintf("%.2f mm", 1000*rules.BallDiameter)
	}
	return fmt.Sprintf("%.3f in", rules.BallDiameter/units.MetresPerInch)
}

// isUsual reports whether launch and spin of a club's ball are those of its kind.
func isUsual(c plan.Club) bool {
	usual := plan.DefaultClub(c.Kind, c.Name).Ball
	return c.Ball == nil || usual == nil || *c.Ball == *usual
}
