// Package swing is the modelled full swing: from a body and a club to where
// every part of golfer and club is at any time.
//
// The golfer is a jointed figure with fifteen degrees of freedom (channels)
// over ten key moments; the hands travel in an inclined plane about the middle
// of the shoulders, the club turns in a plane of its own, the arms are closed by
// inverse kinematics. The downswing of arm and club is not drawn but integrated
// (Downswing). Lengths are metres, angles radians, times seconds.
package swing

import (
	"wideberth/internal/sim/body"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
)

// Swing is one full swing, from address to the finish.
type Swing struct {
	Stance    Stance
	Downswing *Downswing // one for the whole family

	figure figure
	times  keys
	curves curves
}

// Times of the parts of a swing that are not a result of the dynamics, s.
// Takeaway to top: 0.8 s on tour, 0.9 s amateurs (McTeigue et al. 1994, read in
// the abstract); the through-swing 0.4–0.7 s (from memory).
const (
	addressHold = 0.15
	backswing   = 0.88
	finishHold  = 0.25
)

// New models the central swing of a body with a club in a style. It fails with
// a sentence when no stance reaches the ball.
func New(b body.Body, c Club, style Style) (*Swing, error) {
	f, err := NewFamily(b, c, style)
	if err != nil {
		return nil, err
	}
	return f.Central, nil
}

// swinger is a body with one length of arm and a club, before it takes its stance.
type swinger struct {
	arm    float64 // the trait, standard deviations
	figure figure
	usual  wont
}

// newSwinger returns the golfer with the arms of a body.
func newSwinger(b body.Body, c Club) swinger {
	g := swinger{figure: newFigure(b, c)}
	g.usual = g.figure.wonted()
	return g
}

// stood is a golfer who has taken a stance.
type stood struct {
	arm    float64 // of the swinger
	dev    Deviation
	figure figure
	stance Stance
	start  joints
	err    error
}

// stand puts a golfer at the ball, dev from the usual address.
func (g *swinger) stand(dev Deviation) stood {
	s := stood{arm: g.arm, dev: dev, figure: g.figure}
	s.stance, s.start, s.err = s.figure.takeStance(&g.usual, dev)
	return s
}

// build models the swing from an address with traits in their own units, over
// whatever s held. The downswing may be given, to let a family share one.
func (s *Swing) build(from *stood, style Style, trait [NumTraits]float64, down *Downswing) error {
	if from.err != nil {
		return from.err
	}
	s.figure, s.Stance = from.figure, from.stance
	b, c := s.figure.body, s.figure.club
	score, err := s.figure.write(style, trait, s.Stance, from.start)
	if err != nil {
		return s.figure.fails(err)
	}
	if down != nil {
		s.Downswing = down
	} else if s.Downswing, err = bringDown(b, c, &score, s.figure.hubToHands(&score, kImpact)); err != nil {
		return s.figure.fails(err)
	}
	s.time()
	for ch := range score {
		for k, v := range score[ch] {
			s.curves.value[k][ch] = v
		}
	}
	s.curves.bend(&s.times)
	s.joinDownswing()
	return nil
}

// recordedSpeed is the mean speed (m/s) of the two recorded clubheads at impact,
// whose times after it are written into the key times: a slower golfer takes
// longer over the same way.
const recordedSpeed = 50.5

// time sets the key times. The through-swing's first keys follow from how fast
// the club leaves the ball.
func (s *Swing) time() {
	top := addressHold + backswing
	d := s.Downswing
	impact := top + d.Duration
	slow := recordedSpeed / d.HeadSpeed
	s.times = keys{
		addressHold, addressHold + 0.42*backswing, addressHold + 0.66*backswing, top,
		top + 0.62*d.Duration, impact,
		impact + 0.05*slow, impact + 0.10*slow, impact + 0.15*slow, impact + 0.20*slow, impact + 0.30*slow, impact + 0.60*slow,
	}
}

// joinDownswing makes the hand and club angles follow the dynamics between the
// top and impact: at rest at the top, at the pendulum's speed at impact.
func (s *Swing) joinDownswing() {
	d, c := s.Downswing, &s.curves
	for _, ch := range []channel{chTheta, chPhi} {
		profile := &d.arm
		if ch == chPhi {
			profile = &d.club
		}
		arc := c.value[kTop][ch] - c.value[kImpact][ch]
		c.slope[kTop][ch] = 0
		c.slope[kImpact][ch] = arc * (1.5*profile[profileSteps] - 2*profile[profileSteps-1] + 0.5*profile[profileSteps-2]) * profileSteps / d.Duration
		c.value[kArmDown][ch] = c.value[kImpact][ch] + arc*d.share(profile, s.times[kArmDown]-s.times[kTop])
	}
}

// jointsAt fills every channel at time t.
func (s *Swing) jointsAt(t float64, j *joints) {
	m := momentAt(&s.times, t)
	s.curves.at(&m, j)
	if t > s.times[kTop] && t < s.times[kImpact] {
		d, since := s.Downswing, t-s.times[kTop]
		s.curves.comeDown(d.share(&d.arm, since), d.share(&d.club, since), j)
	}
}

// comeDown sets the angles of arm and club with the given shares of the downswing's
// arcs to go.
func (c *curves) comeDown(arm, club float64, j *joints) {
	top, impact := &c.value[kTop], &c.value[kImpact]
	j[chTheta] = impact[chTheta] + arm*(top[chTheta]-impact[chTheta])
	j[chPhi] = impact[chPhi] + club*(top[chPhi]-impact[chPhi])
}

// PoseAt returns where every part is at time t, 0 ≤ t ≤ Duration, in the frame
// of Pose. Before the takeaway and after the finish the golfer stands still.
func (s *Swing) PoseAt(t float64) Pose {
	var p Pose
	s.poseAt(t, AllParts, &p)
	return p
}

// PartAt is PoseAt for one part alone.
func (s *Swing) PartAt(t float64, part Part) geom.Capsule {
	var p Pose
	s.poseAt(t, part.Set(), &p)
	return p[part]
}

// poseAt fills some parts of a pose at time t.
func (s *Swing) poseAt(t float64, want Parts, p *Pose) {
	var j joints
	s.jointsAt(t, &j)
	s.figure.pose(&j, want, p)
}

// LinesAt is PoseAt with the lines of the golfer.
func (s *Swing) LinesAt(t float64) (Lines, Pose) {
	c := s.coreAt(t)
	return Lines{Hub: c.hub, Up: c.up, Shoulders: c.lead, Hips: c.acrossHips(), Hands: c.hands, Club: c.club}, s.PoseAt(t)
}

// coreAt returns the core of the pose at time t.
func (s *Swing) coreAt(t float64) (c core) {
	var j joints
	s.jointsAt(t, &j)
	s.figure.coreOf(&j, &c)
	return c
}

// Body returns the golfer's body, with this swing's traits in it.
func (s *Swing) Body() body.Body { return s.figure.body }

// Club returns the club that is swung.
func (s *Swing) Club() Club { return s.figure.club }

// Duration returns the length of the swing, from standing at address to holding
// the finish, s.
func (s *Swing) Duration() float64 { return s.times[kFinish] + finishHold }

// Lengths of the two phases that are instants, s either side: the pause at the
// top and the strike.
const (
	topHalf    = 0.03
	impactHalf = 0.006
)

// TimeOf returns when a phase begins, s.
func (s *Swing) TimeOf(p Phase) float64 {
	switch p {
	case Address:
		return 0
	case Takeaway:
		return s.times[kAddress]
	case Backswing:
		return s.times[kShaftBack]
	case Top:
		return s.times[kTop] - topHalf
	case DownswingPhase:
		return s.times[kTop] + topHalf
	case Impact:
		return s.times[kImpact] - impactHalf
	case Release:
		return s.times[kImpact] + impactHalf
	case FollowThrough:
		return s.times[kThrough]
	default:
		return s.times[kFinish]
	}
}

// PhaseAt returns the phase at time t.
func (s *Swing) PhaseAt(t float64) Phase {
	phase := Address
	for _, p := range Phases() {
		if t >= s.TimeOf(p) {
			phase = p
		}
	}
	return phase
}

// ClubheadSpeed returns the speed of the middle of the clubhead at t, m/s, by
// central difference.
func (s *Swing) ClubheadSpeed(t float64) float64 {
	const h = 1e-4
	a, b := s.PartAt(t-h, Clubhead), s.PartAt(t+h, Clubhead)
	return geom.Norm(r3.Sub(r3.Add(b.A, b.B), r3.Add(a.A, a.B))) / 2 / (2 * h)
}

// ImpactTime returns when the clubhead is back at the ball, s.
func (s *Swing) ImpactTime() float64 { return s.times[kImpact] }

// TopTime returns when the club turns from back to down, s.
func (s *Swing) TopTime() float64 { return s.times[kTop] }
