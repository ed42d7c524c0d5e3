package maps

import (
	"math"

	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

// cone is where balls of one kind fly from a tee, up to the first thing they
// meet: a sector of the floor with a height over every distance. Walls end it,
// and the screen; what stands or hangs in the way does not, so it is on the
// cautious side of a ball's real paths.
type cone struct {
	tee      fit.Spot
	from, to float64 // rad, azimuths, positive to the left
	edges    [2]edge // where they lie
	shot     string  // "ordinary" or "hosel"
	player   string
	club     string
	cast     int
	over     []float64 // height of the highest balls, m, per profileStep of distance
}

// edge is the direction of one end of a cone's sector.
type edge struct{ sin, cos float64 }

func edgeAt(azimuth float64) edge {
	s, c := math.Sincos(azimuth)
	return edge{s, c}
}

const (
	// sure is how many standard deviations of a player's spread count as where an
	// ordinary ball may go: 99 of 100 in each direction.
	sure = 2.5
	// hoselWidest (rad) is where the hosel shots end. Between there and the ordinary balls anything may come
	// off the toe or the hosel.
	hoselWidest = ball.HoselMost * math.Pi / 180
	// profileStep (m) is the spacing of a cone's heights.
	profileStep = 0.03
)

// cones returns where the balls of casts fly from each of the players' tees;
// those off the hosel too, if asked.
func cones(p plan.Plan, casts []fit.Cast, hosel bool) (out []cone) {
	air := ball.AirOf(p.Air)
	far := geom.Hypot(p.Room.Length, p.Room.Width)
	for k := range casts {
		c := &casts[k]
		launch, skill := ball.FromClub(c.Club, 0), ball.SkillOf(c.Player)
		side, toe := sure*skill.Direction, -1.0
		if c.At.Left {
			toe = 1
		}
		profile := func(l ball.Launch) []float64 {
			l.Azimuth = 0
			l.Elevation = min(l.Elevation+sure*skill.Launch, math.Pi/2)
			over := make([]float64, int(far/profileStep)+1)
			for i := range over {
				over[i] = math.Inf(-1)
			}
			for _, s := range []float64{1 - sure*skill.Speed, 1 + sure*skill.Speed} {
				fast := l
				fast.Speed *= max(s, 0.2)
				flight(fast, air, c.At.Ball.Z, p.Room.Height, over)
			}
			return over
		}
		for _, tee := range p.TeesOf(c.Player) {
			add := func(shot string, a, b float64, l ball.Launch) {
				from, to := min(a, b), max(a, b)
				out = append(out, cone{fit.Spot{X: tee.X, Y: tee.Y}, from, to, [2]edge{edgeAt(from), edgeAt(to)}, shot, c.Player.Name, c.Club.Name, k, profile(l)})
			}
			add("ordinary", -side, side, launch)
			for _, m := range ball.Misses(launch, c.Player.Hand) {
				if hosel && m.Name == ball.Hosel(ball.HoselMost) {
					add("hosel", toe*side, toe*hoselWidest, m.Launch)
				}
			}
		}
	}
	return out
}

// flight raises heights over every profileStep of distance to a ball's way; the
// ceiling holds it down.
func flight(l ball.Launch, air ball.Air, standing, ceiling float64, over []float64) {
	far := float64(len(over)) * profileStep
	speed := l.Speed * math.Cos(l.Elevation)
	path := ball.Fly(l, air, nil, ball.Options{Trail: true, MaxTime: min(5, 1.5*far/max(speed, 0.1))})
	for i := 1; i < len(path.Trail); i++ {
		a, b := path.Trail[i-1].P, path.Trail[i].P
		n := max(1, int(math.Ceil(2*geom.Hypot(b.X-a.X, b.Z-a.Z)/profileStep)))
		for k := range n + 1 {
			u := float64(k) / float64(n)
			at := int((a.X + u*(b.X-a.X)) / profileStep)
			if at < 0 || at >= len(over) {
				continue
			}
			over[at] = max(over[at], min(a.Z+u*(b.Z-a.Z)+standing, ceiling))
		}
	}
}

// off returns how far (m) a place lies to the side of the cone's sector, 0
// inside, and its distance from the tee along the sector.
func (c *cone) off(at fit.Spot) (side, along float64) {
	x, y := at.X-c.tee.X, at.Y-c.tee.Y
	r, a := geom.Hypot(x, y), math.Atan2(y, x)
	if a >= c.from && a <= c.to {
		return 0, r
	}
	side = math.Inf(1)
	for _, e := range c.edges {
		d, on := math.Abs(x*e.sin-y*e.cos), x*e.cos+y*e.sin
		if on < 0 {
			d, on = r, 0
		}
		if d < side {
			side, along = d, on
		}
	}
	return side, along
}

// top returns the highest point that is within reach (m) of the middle of a
// ball somewhere over places up to spread (m) from at; false when there is none.
func (c *cone) top(at fit.Spot, reach, spread float64) (float64, bool) {
	side, along := c.off(at)
	side = max(0, side-spread)
	if side >= reach {
		return 0, false
	}
	m := math.Sqrt(reach*reach - side*side)
	best, found := 0.0, false
	spread += profileStep / 2 // a height holds for the whole of its step
	from := int(max(0, (along-spread-m)/profileStep-1))
	to := min(len(c.over)-1, int((along+spread+m)/profileStep))
	for k := from; k <= to; k++ {
		d := max(0, math.Abs((float64(k)+0.5)*profileStep-along)-spread)
		if d < m && !math.IsInf(c.over[k], -1) {
			if h := c.over[k] + math.Sqrt(m*m-d*d); !found || h > best {
				best, found = h, true
			}
		}
	}
	return best, found
}
