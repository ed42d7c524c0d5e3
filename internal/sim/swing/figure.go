package swing

import (
	"math"

	"wideberth/internal/sim/body"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
)

// figure is a golfer who has taken a stance with a club: all that does not
// change during the swing. It turns joints into capsules.
type figure struct {
	body                  body.Body
	club                  Club
	reach                 float64  // middle of the hands to the sole
	trunk, thigh, shank   float64  // segment lengths, m
	pelvis                geom.Vec // middle of the hips at address
	leadAnkle, trailAnkle geom.Vec
	armLimit              float64 // longest shoulder to hand-centre distance with the elbow all but straight
}

// How far a joint may straighten and give. A limb never quite straightens, so
// that its bend direction stays defined; the shoulder girdle slides forward and
// up by a few centimetres before the arms check the hands (assumption: about
// half of the range that scapular protraction allows).
const (
	armStraight = 0.985
	legStraight = 0.998
	girdleSlide = 0.075                  // m
	softness    = 0.03                   // m over which one limit gives way to another
	girdleEase  = girdleSlide - softness // the most that a stance may ask of the girdle without feeling the stop
)

func newFigure(b body.Body, c Club) figure {
	f := figure{body: b, club: c, reach: c.Reach()}
	f.trunk = b.ShoulderHeight - b.HipHeight
	f.thigh = b.HipHeight - b.KneeHeight
	f.shank = b.KneeHeight - b.AnkleHeight
	f.armLimit = armStraight * b.Arm()
	return f
}

// core is the part of a pose on which everything else hangs.
type core struct {
	pelvis, hub    geom.Vec // middle of the hips, middle of the shoulder line
	up, lead       geom.Vec // along the trunk; from the trail to the lead shoulder
	hips           geom.Vec // from the trail to the lead hip
	leadShoulder   geom.Vec
	trailShoulder  geom.Vec
	hands          geom.Vec // middle of both hands, on the shaft axis
	club, clubFace geom.Vec // from the hands along the shaft; square to it, to the toe side
}

// trunkOf places the trunk.
func (f *figure) trunkOf(j *joints) (c core) {
	sf, cf := math.Sincos(j[chForward])
	ss, cs := math.Sincos(j[chSide])
	c.up = geom.Vec{X: -ss, Y: -sf * cs, Z: cf * cs}
	square := geom.Vec{X: cs, Y: -sf * ss, Z: cf * ss} // the shoulder line without turn
	behind := r3.Cross(c.up, square)
	st, ct := math.Sincos(j[chChest])
	c.lead = r3.Sub(r3.Scale(ct, square), r3.Scale(st, behind))
	sp, cp := math.Sincos(j[chPelvis])
	c.hips = geom.Vec{X: cp, Y: -sp}

	c.pelvis = r3.Add(f.pelvis, geom.Vec{X: j[chPelvisX], Y: j[chPelvisY], Z: j[chPelvisZ]})
	c.hub = r3.Add(c.pelvis, r3.Scale(f.trunk, c.up))
	half := r3.Scale(f.body.ShoulderWidth/2, c.lead)
	c.leadShoulder, c.trailShoulder = r3.Add(c.hub, half), r3.Sub(c.hub, half)
	return c
}

// inPlane returns the unit vector at an angle from straight down a plane of the
// given slope and trace, and the plane's upper normal.
func inPlane(angle, slope, trace float64) (dir, normal geom.Vec) {
	sa, ca := math.Sincos(angle)
	ss, cs := math.Sincos(slope)
	st, ct := math.Sincos(trace)
	x, y := -sa, -ca*cs
	dir = geom.Vec{X: x*ct - y*st, Y: x*st + y*ct, Z: -ca * ss}
	normal = geom.Vec{X: ss * st, Y: -ss * ct, Z: cs}
	return dir, normal
}

// planeAngles is the inverse of inPlane for a unit vector that points downwards
// or nearly so: the angle and the slope, given the trace.
func planeAngles(dir geom.Vec, trace float64) (angle, slope float64) {
	st, ct := math.Sincos(trace)
	x, y := dir.X*ct+dir.Y*st, -dir.X*st+dir.Y*ct
	return math.Asin(max(-1, min(1, -x))), math.Atan2(-dir.Z, -y)
}

// coreOf places trunk, hands and club.
func (f *figure) coreOf(j *joints) core {
	c := f.trunkOf(j)
	arm, _ := inPlane(j[chTheta], j[chHandSlope], j[chHandTrace])
	c.club, c.clubFace = inPlane(j[chPhi], j[chClubSlope], j[chClubTrace])
	limit := f.armLimit + girdleSlide
	reach := softMin(j[chReach], f.stretch(&c, arm, c.leadShoulder, -leadAbove, limit))
	reach = softMin(reach, f.stretch(&c, arm, c.trailShoulder, trailBelow, limit))
	c.hands = r3.Add(c.hub, r3.Scale(reach, arm))
	return c
}

// stretch returns how far from the hub along arm the middle of the hands may go
// before the hand at offset along the club is limit away from its shoulder.
func (f *figure) stretch(c *core, arm, shoulder geom.Vec, offset, limit float64) float64 {
	v := r3.Sub(r3.Add(c.hub, r3.Scale(offset, c.club)), shoulder)
	b := r3.Dot(arm, v)
	return -b + math.Sqrt(max(0, b*b-r3.Dot(v, v)+limit*limit))
}

// softMin is the lesser of a and b with the corner rounded over softness; it is
// never more than either.
func softMin(a, b float64) float64 {
	h := max(softness-math.Abs(a-b), 0) / softness
	return min(a, b) - h*h*softness/4
}

// pose fills out with every part for the joints j.
func (f *figure) pose(j *joints, out *Pose) {
	c := f.coreOf(j)
	f.poseClub(&c, out)
	f.poseArms(&c, out)
	f.poseTrunk(&c, j, out)
	f.poseLegs(&c, j, out)
}

func (f *figure) poseClub(c *core, out *Pose) {
	along := func(d float64) geom.Vec { return r3.Add(c.hands, r3.Scale(d, c.club)) }
	out[Grip] = geom.Capsule{A: along(-gripToCap), B: along(gripLength - gripToCap), R: gripRadius}
	a, b := f.headAxis(c)
	out[Shaft] = geom.Capsule{A: along(gripLength - gripToCap), B: along(f.reach - f.club.HeadRadius), R: shaftRadius}
	out[Clubhead] = geom.Capsule{A: a, B: b, R: f.club.HeadRadius}
}

// headAxis returns the ends of the clubhead's axis, heel and toe. The head lies
// along the sole, which the lie angle fixes to the shaft.
func (f *figure) headAxis(c *core) (heel, toe geom.Vec) {
	sl, cl := math.Sincos(f.club.Lie)
	toToe := r3.Add(r3.Scale(cl, c.club), r3.Scale(sl, c.clubFace))
	upSole := r3.Sub(r3.Scale(cl, c.clubFace), r3.Scale(sl, c.club))
	sole := r3.Add(c.hands, r3.Scale(f.reach, c.club))
	heel = r3.Add(sole, r3.Scale(f.club.HeadRadius, upSole))
	heel = r3.Add(heel, r3.Scale(f.club.HeadRadius/2, toToe))
	return heel, r3.Add(heel, r3.Scale(f.club.HeadSpan, toToe))
}

func (f *figure) poseArms(c *core, out *Pose) {
	down := r3.Scale(-1, c.up)
	out[LeadUpperArm], out[LeadForearm], out[LeadHand] =
		f.arm(c.leadShoulder, r3.Sub(c.hands, r3.Scale(leadAbove, c.club)), r3.Add(down, r3.Scale(0.3, c.lead)))
	out[TrailUpperArm], out[TrailForearm], out[TrailHand] =
		f.arm(c.trailShoulder, r3.Add(c.hands, r3.Scale(trailBelow, c.club)), r3.Sub(down, r3.Scale(0.3, c.lead)))
}

// arm closes one arm between shoulder and hand by inverse kinematics; the elbow
// points as nearly as it can along bend.
func (f *figure) arm(shoulder, hand, bend geom.Vec) (upper, fore, fist geom.Capsule) {
	b := &f.body
	line := r3.Sub(hand, shoulder)
	dist := r3.Norm(line)
	dir := r3.Scale(1/dist, line)
	if use := softMin(dist, f.armLimit); use < dist {
		shoulder = r3.Add(shoulder, r3.Scale(dist-use, dir))
		dist = use
	}
	wrist := r3.Sub(hand, r3.Scale(b.Hand, dir))
	elbow := middleJoint(shoulder, dir, dist-b.Hand, b.UpperArm, b.Forearm, bend)
	return geom.Capsule{A: shoulder, B: elbow, R: b.UpperArmRadius},
		geom.Capsule{A: elbow, B: wrist, R: b.ForearmRadius},
		geom.Capsule{A: wrist, B: hand, R: b.HandRadius}
}

// middleJoint returns the elbow or knee of a two-bone chain from root along the
// unit vector dir to an end at distance dist; the joint lies towards bend.
func middleJoint(root, dir geom.Vec, dist, first, second float64, bend geom.Vec) geom.Vec {
	dist = max(dist, math.Abs(first-second)+0.01)
	a := (first*first - second*second + dist*dist) / (2 * dist)
	h := math.Sqrt(max(0, first*first-a*a))
	side := r3.Sub(bend, r3.Scale(r3.Dot(bend, dir), dir))
	return r3.Add(root, r3.Add(r3.Scale(a, dir), r3.Scale(h/r3.Norm(side), side)))
}

func (f *figure) poseTrunk(c *core, j *joints, out *Pose) {
	b := &f.body
	halfHips := r3.Scale(b.HipWidth/2, c.hips)
	out[Pelvis] = geom.Capsule{A: r3.Sub(c.pelvis, halfHips), B: r3.Add(c.pelvis, halfHips), R: b.PelvisRadius}
	// The shoulder line is the joints' height; the round top of the chest stays under it.
	chest := r3.Sub(c.hub, r3.Scale(b.TrunkRadius*0.8, c.up))
	out[Trunk] = geom.Capsule{A: r3.Add(c.pelvis, r3.Scale(0.05, c.up)), B: chest, R: b.TrunkRadius}

	// The head is carried more forward than the trunk, looking at the ball, and
	// half as far to the side.
	const look = 14 * math.Pi / 180
	sf, cf := math.Sincos(j[chForward] + look)
	ss, cs := math.Sincos(j[chSide] / 2)
	axis := geom.Vec{X: -ss, Y: -sf * cs, Z: cf * cs}
	crown := b.Stature - b.ShoulderHeight
	at := func(d float64) geom.Vec { return r3.Add(c.hub, r3.Scale(d, axis)) }
	out[Head] = geom.Capsule{A: at(crown - b.HeadHeight + b.HeadRadius), B: at(crown - b.HeadRadius), R: b.HeadRadius}
	out[Neck] = geom.Capsule{A: c.hub, B: at(crown - b.HeadHeight + b.HeadRadius), R: b.NeckRadius}
}

func (f *figure) poseLegs(c *core, j *joints, out *Pose) {
	b := &f.body
	front := geom.Vec{X: c.hips.Y, Y: -c.hips.X}
	half := r3.Scale(b.HipWidth/2, c.hips)

	leadToe := geom.Vec{X: 0.34, Y: -0.94} // foot flared 20° to the target, common practice
	out[LeadThigh], out[LeadShank] = f.leg(r3.Add(c.pelvis, half), f.leadAnkle, r3.Add(leadToe, r3.Scale(0.5, front)))
	out[LeadFoot] = f.foot(f.leadAnkle, leadToe, 0)

	lift := j[chHeel]
	trailToe := geom.Vec{X: -0.17 + 0.9*lift, Y: -0.98 + 0.3*lift}
	trailToe = r3.Unit(trailToe)
	ankle := r3.Add(f.trailAnkle, geom.Vec{X: 0.06 * lift, Y: -0.07 * lift, Z: 0.45 * b.FootLength * lift})
	out[TrailThigh], out[TrailShank] = f.leg(r3.Sub(c.pelvis, half), ankle, r3.Add(trailToe, front))
	out[TrailFoot] = f.foot(ankle, trailToe, lift)
}

// leg closes one leg between hip and ankle; the knee points as nearly as it can
// along bend. A hip that is farther off than the leg is long gives way.
func (f *figure) leg(hip, ankle, bend geom.Vec) (thigh, shank geom.Capsule) {
	line := r3.Sub(ankle, hip)
	dist := geom.Norm(line)
	dir := r3.Scale(1/dist, line)
	use := softMin(dist, legStraight*(f.thigh+f.shank))
	hip = r3.Add(hip, r3.Scale(dist-use, dir))
	knee := middleJoint(hip, dir, use, f.thigh, f.shank, bend)
	return geom.Capsule{A: hip, B: knee, R: f.body.ThighRadius}, geom.Capsule{A: knee, B: ankle, R: f.body.ShankRadius}
}

// foot runs from under the ankle to the toe, which stays on the ground while
// the heel lifts.
func (f *figure) foot(ankle, toe geom.Vec, lift float64) geom.Capsule {
	r := f.body.FootRadius
	length := 0.72*f.body.FootLength - r
	heel := ankle
	heel.Z -= (f.body.AnkleHeight + f.body.Shoe - r) * (1 - 0.6*lift)
	tip := r3.Add(heel, r3.Scale(length*(1-0.35*lift), toe))
	tip.Z = r
	return geom.Capsule{A: heel, B: tip, R: r}
}
