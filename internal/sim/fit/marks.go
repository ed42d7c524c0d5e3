package fit

import (
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// Mark is where one player stands with one club on one tee, in room coordinates,
// m, with what to measure in the room to find the place again.
type Mark struct {
	Player string    `json:"player"`
	Club   string    `json:"club"`
	Tee    string    `json:"tee"`
	Hand   plan.Hand `json:"hand"`

	Ball  [2]float64 `json:"ball"`
	Lead  Foot       `json:"lead"`  // nearer to the target
	Trail Foot       `json:"trail"` // the other

	// Tapes are distances to measure square to a wall: from the nearer side wall
	// and from the back wall to the ball and to the heels, and from the screen to
	// the ball.
	Tapes []Tape `json:"tapes"`

	// Moved is how far the ball lies from the plan's first tee, along x, along y
	// and straight.
	Moved [3]float64 `json:"moved"`

	// Behind is how near the swing comes to the wall behind the golfer's back.
	Behind Behind `json:"behind"`

	// At is where the golfer's frame lies, and Address the golfer at the ball in it,
	// in the central swing: for whoever draws them.
	At      sweep.Placement `json:"-"`
	Address swing.Pose      `json:"-"`
}

// Foot is where a foot is on the floor at address.
type Foot struct {
	Heel [2]float64 `json:"heel"`
	Toe  [2]float64 `json:"toe"`
}

// Tape is one distance between a wall and a mark.
type Tape struct {
	From     string     `json:"from"` // "left wall", "right wall", "back wall" or "screen"
	To       string     `json:"to"`   // "ball" or "heels"
	Distance float64    `json:"distance"`
	A        [2]float64 `json:"a"` // on the wall
	B        [2]float64 `json:"b"` // at the mark
}

// Behind is the room behind the golfer's back: the clearance to that wall alone
// over the loosest swing of the family, over the central one, and what comes
// nearest to it. Other things may be nearer: see the Check.
type Behind struct {
	Wall      string      `json:"wall"`
	Clearance float64     `json:"clearance"` // m
	Typical   float64     `json:"typical"`   // m
	Verdict   Verdict     `json:"verdict"`
	Part      string      `json:"part"`
	Phase     swing.Phase `json:"phase"`
}

// Marks returns the standing marks of every player (or of the one named) with
// each of their clubs on each of their tees, in the order of a Report's checks.
// The error is the plan's own sentence.
func (l *Lab) Marks(given plan.Checked, player string) ([]Mark, error) {
	p := given.Plan()
	var only []string
	if player != "" {
		if _, _, _, err := p.Named(player, "", ""); err != nil {
			return nil, err
		}
		only = []string{player}
	}
	casts, err := l.Casts(p, only, nil)
	if err != nil {
		return nil, err
	}
	out := []Mark{}
	for k := range casts {
		c := &casts[k]
		var tightest sweep.Contact
		var phase swing.Phase
		for i, tee := range p.TeesOf(c.Player) {
			m := c.mark(p, tee)
			if i == 0 { // the same wall and the same swing from all tees
				tightest, phase = c.behind(m.Behind.Wall, p)
			}
			m.Behind.Part, m.Behind.Phase = tightest.Part.String(), phase
			out = append(out, m)
		}
	}
	return out, nil
}

// mark places the stance of a cast's central swing.
func (c *Cast) mark(p plan.Plan, tee plan.Tee) Mark {
	at := c.Placed(Spot{tee.X, tee.Y})
	pose := c.Kin.Family.Central.PoseAt(0)
	foot := func(part swing.Part) Foot {
		heel, toe := at.Footprint(pose[part])
		return Foot{flat2(heel), flat2(toe)}
	}
	first := p.Tees[0]
	m := Mark{
		Player: c.Player.Name, Club: c.Club.Name, Tee: tee.Name, Hand: c.Player.Hand,
		Ball: [2]float64{tee.X, tee.Y}, Lead: foot(swing.LeadFoot), Trail: foot(swing.TrailFoot),
		Moved: [3]float64{tee.X - first.X, tee.Y - first.Y, geom.Hypot(tee.X-first.X, tee.Y-first.Y)},
		At:    at, Address: pose,
	}
	m.tape(p)
	wall := "left wall"
	if c.At.Left {
		wall = "right wall"
	}
	for _, s := range sweep.Surfaces(p) {
		if s.Name == wall && s.Kind == sweep.Wall {
			v := c.Ramp(s).At(Spot{tee.X, tee.Y})
			least, typical, _ := c.Kin.Reach(at.Surface(s).Plane.N)
			m.Behind = Behind{Wall: wall, Clearance: v, Typical: v - least + typical, Verdict: VerdictOf(v, p.Margin)}
		}
	}
	return m
}

func flat2(v geom.Vec) [2]float64 { return [2]float64{v.X, v.Y} }

// tape measures from the walls.
func (m *Mark) tape(p plan.Plan) {
	wall, y := "right wall", 0.0
	if m.Ball[1] > p.Room.Width/2 {
		wall, y = "left wall", p.Room.Width
	}
	heels := [2]float64{(m.Lead.Heel[0] + m.Trail.Heel[0]) / 2, (m.Lead.Heel[1] + m.Trail.Heel[1]) / 2}
	add := func(from, to string, a, b [2]float64) {
		m.Tapes = append(m.Tapes, Tape{from, to, geom.Hypot(b[0]-a[0], b[1]-a[1]), a, b})
	}
	add(wall, "ball", [2]float64{m.Ball[0], y}, m.Ball)
	add("back wall", "ball", [2]float64{0, m.Ball[1]}, m.Ball)
	add(wall, "heels", [2]float64{heels[0], y}, heels)
	// The trailing heel is the one that can be measured from the back wall.
	add("back wall", "heels", [2]float64{0, m.Trail.Heel[1]}, m.Trail.Heel)
	if p.Screen != nil {
		add("screen", "ball", [2]float64{p.Screen.X, m.Ball[1]}, m.Ball)
	}
}

// behind returns the meeting of the loosest swing with the wall behind.
func (c *Cast) behind(wall string, p plan.Plan) (sweep.Contact, swing.Phase) {
	for _, s := range sweep.Surfaces(p) {
		if s.Name == wall && s.Kind == sweep.Wall {
			local := c.At.Surface(s)
			_, _, who := c.Kin.Reach(local.Plane.N)
			at := sweep.Sample(who.Swing, sweep.FineTolerance).Clearance(local)
			return at, who.Swing.PhaseAt(at.Time)
		}
	}
	return sweep.Contact{}, swing.Address
}
