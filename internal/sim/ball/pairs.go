package ball

import "wideberth/internal/sim/plan"

// Pair is one player with one club on one tee.
type Pair struct {
	Player    plan.Player
	Club      plan.Club
	Tee       plan.Tee
	HeadSpeed float64 // clubhead at impact, m/s; 0: the club's own ball
}

// Pairs lists every player with every club and tee that is theirs, in the order
// of the plan. headSpeed gives the clubhead's speed (m/s) of the swing; nil
// takes each club's own ball.
func Pairs(p plan.Plan, headSpeed func(plan.Player, plan.Club) float64) []Pair {
	var out []Pair
	for _, pl := range p.Players {
		for _, c := range p.ClubsOf(pl) {
			u := 0.0
			if headSpeed != nil {
				u = headSpeed(pl, c)
			}
			for _, t := range p.TeesOf(pl) {
				out = append(out, Pair{pl, c, t, u})
			}
		}
	}
	return out
}

// Launch returns the pair's well-struck ball, relative to the tee.
func (q Pair) Launch() Launch { return FromClub(q.Club, q.HeadSpeed) }
