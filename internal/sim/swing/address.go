package swing

import (
	"errors"
	"math"

	"wideberth/internal/lean/fmt"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/nearest"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/rules"
)

const degree = math.Pi / 180

// What the recorded drivers show of an address beside the posture (package
// published), and what common practice adds.
const (
	// soleShort is how far short of the ball, towards the golfer, the head of a
	// driver stands at address (recorded, both golfers: 0.06 m): the arms stretch
	// and the head swings out by that much until impact. None with a wedge:
	// assumption, in proportion to length between.
	soleShort = 0.06 // m
	// openShoulders is how far the shoulders stand open with a driver, whose ball
	// lies forward (S. E. Kim et al. 2018, read in the abstract: a ball forward
	// opens the shoulders; the size is an assumption), deg.
	openShoulders = 8.0
	// addressExtend is the lead arm at address as a share of its straight length:
	// an elbow of about 163° (nearly straight: common practice).
	addressExtend = 0.993
	// bentMost is the least of it with a club that is too long for its golfer: an
	// elbow at less than a right angle.
	bentMost = 0.50
)

// Stance is the address that a body and a club lead to. Angles are radians.
type Stance struct {
	Forward float64 // trunk line (hips to shoulders) forward of vertical
	Side    float64 // trunk line to the trail side of vertical
	Hang    float64 // arms (hub to hands) forward of vertical
	Shaft   float64 // shaft to the ground, seen along the target line
	Lean    float64 // shaft ahead of vertical, towards the target, seen face-on
	Knee    float64 // knee flexion

	BallToHeels float64 // along y, m
	BallToToes  float64 // along y, m
	BallToHands float64 // to the middle of both hands, along y, m
	StanceWidth float64 // ankle to ankle, m
	BallForward float64 // of mid-stance, towards the target, m
}

// ErrNoStance says that golfer and club do not go together.
var ErrNoStance = errors.New("no stance lets the hands reach the grip with the club on the mat")

// fails says whose swing failed.
func (f *figure) fails(err error) error {
	return fmt.Errorf("a %.2f m golfer with a %.2f m club: %w", f.body.Stature, f.club.Length, err)
}

// wish is one posture angle that golfers keep to, and how readily they give it
// up to suit a club.
type wish struct{ angle, give float64 }

// wishes returns what a golfer would like the trunk, the arms and the shaft to
// do. Two recorded drivers (package published) are played with the shaft at 44°
// to the ground, 14° flatter than the club's own lie, hands low and 0.85 m from
// the ball; shorter clubs are played nearer to their lie (common practice). Arms
// hang within 0–20° of vertical (common practice). Hands so low with arms all but
// straight ask for a trunk line 30–40° forward with a driver, which is what is
// remembered of the surface of the back (several studies, from memory).
func wishes(c Club) (trunk, arms, shaft wish) {
	l := c.longness()
	return wish{(30 + 2*l) * degree, 7 * degree},
		wish{(4 + l) * degree, 4 * degree},
		wish{c.Lie - (5+9*l)*degree, 1.5 * degree}
}

// Deviation is how one address differs from the golfer's usual one.
type Deviation struct {
	Off  float64 // hands farther from the ball, m
	Hang float64 // arms held farther out from the trunk, rad
}

// posture is the three angles that an address is solved for, rad.
type posture struct{ forward, hang, shaft float64 }

// takeStance sets where the figure stands, dev from its usual address, and returns
// the joints there.
func (f *figure) takeStance(usual *wont, dev Deviation) (Stance, joints, error) {
	if !usual.found {
		return Stance{}, joints{}, f.fails(ErrNoStance)
	}
	a := usual.address
	a.figure = f
	p := usual.posture
	// A deviation that no trunk can follow is taken as far as it can.
	for share := 1.0; share > 0.05; share -= 0.1 {
		if q, ok := a.deviate(usual.posture, Deviation{share * dev.Off, share * dev.Hang}); ok {
			p = q
			break
		}
	}
	a.stand(p)
	for range 6 {
		room := f.room(&a.joints, a.butt())
		if room >= 0 {
			break
		}
		// The butt of the grip would meet the body: the arms are held farther out.
		q, ok := a.deviate(p, Deviation{Hang: -room / f.armLength})
		if ok {
			p = q
		}
		a.stand(p) // also where that led nowhere: it leaves its last try behind
		if !ok {
			break
		}
	}
	return a.stance, a.joints, nil
}

// butt returns where the grip ends, at address.
func (a *address) butt() geom.Vec {
	var c core
	a.figure.coreOf(&a.joints, &c)
	return along(c.hands, -a.figure.toCap, c.club)
}

// address is an address being solved.
type address struct {
	figure *figure
	stance Stance
	joints joints
	sole   geom.Vec // where the shaft's axis meets the mat
	hips   float64  // height of the hip joints, m
	ground geom.Vec // from the middle of the hips to the hands, for the posture last tried

	side, chest, lean    turn // which no posture changes
	forward, hang, shaft bend // of the posture last tried
	trunk                core // over the middle of the hips, in that posture
}

// bend is an angle of a posture with its turn.
type bend struct {
	angle float64
	turn
}

// to makes the bend that of an angle, at no cost where it is that already, and returns
// whether it is another.
func (b *bend) to(angle float64) bool {
	if b.angle == angle && b.cos != 0 { // which is that of no angle yet
		return false
	}
	*b = bend{angle, turnOf(angle)}
	return true
}

// newAddress fills what does not depend on the posture.
func (f *figure) newAddress() address {
	l := f.club.longness()
	a := address{figure: f, stance: Stance{
		Side:        (6 + 3*l) * degree,
		Lean:        (3 - 9*min(1, l)) * degree,
		Knee:        (24 + l) * degree,
		StanceWidth: (0.18 + 0.08*l) * f.body.Stature, // heels about shoulder width for a driver, narrower for wedges: common practice
		BallForward: 0.085 * max(0, l) * f.body.Stature,
	}}
	st := &a.stance
	a.hips = f.body.Shoe + f.body.AnkleHeight + (f.thigh+f.shank)*math.Cos(st.Knee/2)
	a.sole = geom.Vec{X: -(rules.BallRadius + f.club.HeadDepth), Y: f.club.axisToBall() + soleShort*max(0, l)}
	a.joints[chSide] = st.Side
	a.joints[chChest] = -openShoulders * degree
	a.joints[chExtend] = addressExtend
	a.side, a.chest, a.lean = turnOf(st.Side), turnOf(a.joints[chChest]), turnOf(st.Lean)
	return a
}

// miss returns how far (m) the hands of a posture are above the grip of the club
// that is soled at the ball.
func (a *address) miss(p posture) float64 {
	a.joints[chForward] = p.forward
	if a.forward.to(p.forward) {
		a.trunk.lean(&a.forward.turn, &a.side, &a.chest)
		a.figure.shoulder(&a.trunk)
	}
	a.hang.to(p.hang)
	a.shaft.to(p.shaft)
	a.ground = a.handsFromHips()
	return a.hips + a.ground.Z - a.figure.reach*a.shaft.sin*a.lean.cos
}

// usual returns the posture that departs least from the wishes.
func (a *address) usual() (posture, bool) {
	trunk, arms, shaft := wishes(a.figure.club)
	departed := func(u geom.Vec) posture {
		return posture{trunk.angle + u.X*trunk.give, arms.angle + u.Y*arms.give, shaft.angle + u.Z*shaft.give}
	}
	at, missed := nearest.On(func(u geom.Vec) float64 { return a.miss(departed(u)) })
	p := departed(at)
	return p, math.Abs(missed) < 1e-6 && p.possible()
}

// deviate returns the posture with the hands and the arms of dev, for which the
// trunk leans as it must.
func (a *address) deviate(usual posture, dev Deviation) (posture, bool) {
	p := usual
	p.shaft = math.Acos(math.Cos(p.shaft) + dev.Off/(a.figure.reach*math.Cos(a.stance.Lean)))
	p.hang += dev.Hang
	p.forward = crossing(-10*degree, 80*degree, 1e-10, func(forward float64) float64 {
		return a.miss(posture{forward, p.hang, p.shaft})
	})
	return p, math.Abs(a.miss(p)) < 1e-6 && p.possible()
}

// possible tells whether a golfer can stand like this. (Not a number is not.)
func (p posture) possible() bool {
	return p.shaft >= 15*degree && p.shaft <= 85*degree && p.forward >= -10*degree && p.forward <= 80*degree
}

// stand sets the figure on its feet in the posture.
func (a *address) stand(p posture) {
	a.miss(p)
	f, st, j := a.figure, &a.stance, &a.joints
	st.Forward, st.Hang, st.Shaft = p.forward, p.hang, p.shaft
	hands := f.handsOver(a.sole, st)
	f.pelvis = geom.Vec{X: -st.BallForward, Y: hands.Y - a.ground.Y, Z: a.hips}

	// The weight is over the middle of the feet. Head, arms and trunk: 0.678 of
	// body mass at 0.626 of the way from hip to shoulder (D. A. Winter 2009,
	// Table 4.1, from memory); the legs' centre about half as far back as the hips.
	const upper, upperAt, legs = 0.678, 0.626, 0.322
	ahead := 0.042 * f.body.Stature // ankle to mid-foot
	back := (upper*upperAt*f.trunk*math.Sin(st.Forward) - ahead) / (upper + legs/2)
	ankle := geom.Vec{X: f.pelvis.X, Y: f.pelvis.Y - back, Z: f.body.Shoe + f.body.AnkleHeight}
	f.leadAnkle = r3.Add(ankle, geom.Vec{X: st.StanceWidth / 2})
	f.trailAnkle = r3.Sub(ankle, geom.Vec{X: st.StanceWidth / 2})
	lead, _ := f.leadFoot()
	trail, _ := f.trailFoot(0)
	st.BallToHeels, st.BallToToes = math.Inf(-1), math.Inf(1)
	for _, foot := range [2]geom.Capsule{lead, trail} {
		end := r3.Scale(foot.R, r3.Unit(r3.Sub(foot.B, foot.A)))
		st.BallToHeels = max(st.BallToHeels, r3.Sub(foot.A, end).Y)
		st.BallToToes = min(st.BallToToes, r3.Add(foot.B, end).Y)
	}
	st.BallToHands = hands.Y

	// In channels: the hands by angle and slope about the hub, the club by its
	// direction.
	var c core
	fillTurns(j[:chTheta], c.turns[:chTheta])
	f.trunkOf(j, &c)
	f.aim(j, r3.Sub(hands, c.hub))
	club := r3.Scale(1/f.reach, r3.Sub(a.sole, hands))
	j[chPhi], j[chClubSlope] = planeAngles(club, 0)
}

// handsOver returns where the hands are with the club soled at a point.
func (f *figure) handsOver(sole geom.Vec, st *Stance) geom.Vec {
	sl, cl := math.Sincos(st.Lean)
	ss, cs := math.Sincos(st.Shaft)
	return r3.Add(sole, geom.Vec{X: f.reach * sl, Y: f.reach * cs * cl, Z: f.reach * ss * cl})
}

// aim sets the hand channels so that the hands lie at offset from the hub.
func (f *figure) aim(j *joints, offset geom.Vec) {
	j[chTheta], j[chHandSlope] = planeAngles(r3.Unit(offset), j[chHandTrace])
}

// handsFromHips returns where the hands are, seen from the middle of the hips,
// with the lead arm straight (or, with the ball far forward, the trail arm
// stretched) in the posture last tried; the ball's place fixes x.
func (a *address) handsFromHips() geom.Vec {
	f, c := a.figure, &a.trunk
	c.club = geom.Vec{X: -a.lean.sin, Y: -a.shaft.cos * a.lean.cos, Z: -a.shaft.sin * a.lean.cos}
	c.leadArm = a.joints[chExtend] * f.armLength
	hub := c.hub.X
	c.hub.X += a.sole.X + f.reach*a.lean.sin + a.stance.BallForward - hub // hands ahead of the hub
	down := geom.Vec{Y: -a.hang.sin, Z: -a.hang.cos}
	hands := along(c.hub, f.handReach(c, &down), down)
	c.hub.X = hub
	return hands
}
