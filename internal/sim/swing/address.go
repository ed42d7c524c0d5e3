package swing

import (
	"errors"
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/say"
)

const degree = math.Pi / 180

// ballRadius is half of the least diameter, 42.67 mm (Equipment Rules Part 4, 3).
const ballRadius = 0.021335

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
	StanceWidth float64 // ankle to ankle, m
	BallForward float64 // of mid-stance, towards the target, m
}

// ErrNoStance says that golfer and club do not go together.
var ErrNoStance = errors.New("no stance lets the hands reach the grip with the club on the mat")

// fails says whose swing failed.
func (f *figure) fails(err error) error {
	return say.Errorf("a %.2f m golfer with a %.2f m club: %w", f.body.Stature, f.club.Length, err)
}

// wish is one posture angle that golfers keep to, and how readily they give it
// up to suit a club.
type wish struct{ angle, give float64 }

// wishes returns what a golfer would like the trunk, the arms and the shaft to
// do. Trunk: back-surface tilts of 30–40° (driver) to 40–45° (wedge) read over
// several studies (from memory); the line through the hip and shoulder centres
// reads 10–15° less, as a measured swing shows. Arms: within 0–20° of vertical;
// shaft: some degrees flatter than the club's own lie (both common practice).
func wishes(c Club) (trunk, arms, shaft wish) {
	l := c.longness()
	return wish{(27 - 4*l) * degree, 6 * degree},
		wish{(4 + 4*l) * degree, 5 * degree},
		wish{c.Lie - (5+3*l)*degree, 4 * degree}
}

// takeStance solves the address: the posture that departs least from what the
// golfer likes, in units of what is readily given up, while the club soles at
// the ball. It sets where the figure stands and returns the joints there.
// standOff moves the golfer away from the ball against that, m.
func (f *figure) takeStance(standOff float64) (Stance, joints, error) {
	l := f.club.longness()
	h := f.body.Stature
	st := Stance{
		Side:        (6 + 3*l) * degree,
		Lean:        (3 - 6*min(1, l)) * degree,
		Knee:        (24 - 3*l) * degree,
		StanceWidth: (0.18 + 0.08*l) * h, // heels about shoulder width for a driver, narrower for wedges: common practice
		BallForward: 0.100 * max(0, l) * h,
	}
	trunk, arms, shaft := wishes(f.club)
	arms.angle += standOff / 0.6 // hub to hands is about 0.6 m

	sole := f.body.Shoe + f.body.AnkleHeight
	hipHeight := sole + (f.thigh+f.shank)*math.Cos(st.Knee/2)
	head := f.club.HeadSpan/2 + f.club.HeadRadius/2
	soleAt := geom.Vec{X: -(ballRadius + f.club.HeadDepth), Y: head}

	var j joints
	j[chSide] = st.Side
	var ground geom.Vec // from the middle of the hips to the hands
	height := func(x [3]float64) float64 {
		j[chForward] = x[0]
		ground = f.handsFromHips(&j, x[1], x[2], st, soleAt.X)
		return hipHeight + ground.Z - f.reach*math.Sin(x[2])*math.Cos(st.Lean)
	}
	wish := [3]float64{trunk.angle, arms.angle, shaft.angle}
	give := [3]float64{trunk.give, arms.give, shaft.give}
	x := wish
	miss := height(x)
	for range 12 { // Gauss–Newton on the one constraint; settles in 4 to 6
		c := miss
		const step = 1e-5
		var g [3]float64
		norm, off := 0.0, c
		for i := range x {
			y := x
			y[i] += step
			g[i] = (height(y) - c) / step
			norm += g[i] * g[i] * give[i] * give[i]
			off += g[i] * (wish[i] - x[i])
		}
		for i := range x {
			x[i] = wish[i] - g[i]*give[i]*give[i]*off/norm
		}
		if miss = height(x); math.Abs(miss-c) < 1e-9 {
			break
		}
	}
	if !(math.Abs(miss) < 1e-6) || x[2] < 15*degree || x[2] > 85*degree || x[0] < -10*degree || x[0] > 80*degree {
		return st, j, f.fails(ErrNoStance)
	}
	st.Forward, st.Hang, st.Shaft = x[0], x[1], x[2]
	hands := r3.Add(soleAt, geom.Vec{X: f.reach * math.Sin(st.Lean), Y: f.reach * math.Cos(st.Shaft) * math.Cos(st.Lean)})
	f.pelvis = geom.Vec{X: -st.BallForward, Y: hands.Y - ground.Y, Z: hipHeight}

	// The weight is over the middle of the feet. Head, arms and trunk: 0.678 of
	// body mass at 0.626 of the way from hip to shoulder (D. A. Winter 2009,
	// Table 4.1, from memory); the legs' centre about half as far back as the hips.
	const upper, upperAt, legs = 0.678, 0.626, 0.322
	ahead := 0.042 * h // ankle to mid-foot
	back := (upper*upperAt*f.trunk*math.Sin(st.Forward) - ahead) / (upper + legs/2)
	ankleY := f.pelvis.Y - back
	f.leadAnkle = geom.Vec{X: f.pelvis.X + st.StanceWidth/2, Y: ankleY, Z: sole}
	f.trailAnkle = geom.Vec{X: f.pelvis.X - st.StanceWidth/2, Y: ankleY, Z: sole}
	st.BallToHeels = ankleY + 0.25*f.body.FootLength
	st.BallToToes = st.BallToHeels - f.body.FootLength

	// In channels: the hands by angle, slope and reach about the hub, the club
	// by its direction.
	c := f.trunkOf(&j)
	hands.Z = f.reach * math.Sin(st.Shaft) * math.Cos(st.Lean)
	f.aim(&j, r3.Sub(hands, c.hub))
	club := r3.Scale(1/f.reach, r3.Sub(soleAt, hands))
	j[chPhi], j[chClubSlope] = planeAngles(club, 0)
	return st, j, nil
}

// aim sets the hand channels so that the hands lie at offset from the hub.
func (f *figure) aim(j *joints, offset geom.Vec) {
	j[chReach] = geom.Norm(offset)
	j[chTheta], j[chHandSlope] = planeAngles(r3.Scale(1/j[chReach], offset), j[chHandTrace])
}

// handsFromHips returns where the hands are, seen from the middle of the hips,
// with the lead arm straight (or, with the ball far forward, the trail arm
// stretched), the arms hanging at the given angle and the shaft at the given
// slope; the ball's place fixes x.
func (f *figure) handsFromHips(j *joints, hang, shaft float64, st Stance, soleX float64) geom.Vec {
	pelvis := f.pelvis
	f.pelvis = geom.Vec{}
	c := f.trunkOf(j)
	f.pelvis = pelvis
	sl, cl := math.Sincos(st.Lean)
	ss, cs := math.Sincos(shaft)
	c.club = geom.Vec{X: -sl, Y: -cs * cl, Z: -ss * cl}
	across := soleX + f.reach*sl + st.BallForward - c.hub.X // hands ahead of the hub
	c.hub.X += across
	sh, ch := math.Sincos(hang)
	down := geom.Vec{Y: -sh, Z: -ch}
	reach := softMin(f.stretch(&c, down, c.leadShoulder, -leadAbove, f.armLimit),
		f.stretch(&c, down, c.trailShoulder, trailBelow, f.armLimit+girdleEase))
	return r3.Add(c.hub, r3.Scale(reach, down))
}
