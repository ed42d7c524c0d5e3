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
	toCap                 float64  // middle of the hands to the grip cap
	leadAbove, trailBelow float64  // centres of the hands from that middle, up and down the grip
	trunk, thigh, shank   float64  // segment lengths, m
	pelvis                geom.Vec // middle of the hips at address
	leadAnkle, trailAnkle geom.Vec
	armLength             float64 // shoulder to the middle of the fist, straight
	trailLimit            float64 // longest shoulder to fist distance of the trail arm before its shoulder gives
	girdle, girdleMost    float64 // how far the lead shoulder is drawn forward, and the most that the trail one may be, m
	soft                  float64 // m over which one limit gives way to another
	legLimit              float64 // the same from hip to ankle
	sinLie, cosLie        float64
}

// How far a joint may straighten and give. A limb never quite straightens, so
// that its bend direction stays defined; the shoulder girdle slides forward and
// up by a few centimetres before the arms check the hands (assumption: about
// half of the range that scapular protraction allows).
const (
	armStraight = 0.988
	armLongest  = 0.996
	legStraight = 0.998
	girdleEase  = 0.026 // of stature: the lead shoulder drawn forward by the arms that hang from it
	girdleSlide = 0.062 // of stature: the most that a shoulder slides
	softness    = 0.016 // of stature: over which one limit gives way to another
)

func newFigure(b body.Body, c Club) figure {
	hand := min(1, b.Stature/wholeHands)
	f := figure{body: b, club: c, toCap: hand * gripToCap, leadAbove: hand * leadAbove, trailBelow: hand * trailBelow}
	f.reach = c.Length - f.toCap
	f.trunk = b.ShoulderHeight - b.HipHeight
	f.thigh = b.HipHeight - b.KneeHeight
	f.shank = b.KneeHeight - b.AnkleHeight
	f.armLength = b.Arm()
	f.trailLimit = armStraight * f.armLength
	f.girdle, f.girdleMost = girdleEase*b.Stature, girdleSlide*b.Stature
	f.soft = softness * b.Stature
	f.legLimit = legStraight * (f.thigh + f.shank)
	f.sinLie, f.cosLie = math.Sincos(c.Lie)
	return f
}

// core is the part of a pose on which everything else hangs.
type core struct {
	turns [numAngles]turn

	pelvis, hub    geom.Vec // middle of the hips, middle of the shoulder line
	up, lead       geom.Vec // along the trunk; from the trail to the lead shoulder
	leadShoulder   geom.Vec
	trailShoulder  geom.Vec
	leadArm        float64  // how far the lead arm stretches from its shoulder, which gives by the girdle's ease
	hands          geom.Vec // middle of both hands, on the shaft axis
	club, clubFace geom.Vec // from the hands along the shaft; square to it, to the toe side
}

// trunkOf places the trunk, for which the turns must be there.
func (f *figure) trunkOf(j *joints, c *core) {
	c.lean(&c.turns[chForward], &c.turns[chSide], &c.turns[chChest])
	c.pelvis = f.hips(j)
	f.shoulder(c)
}

// hips places the middle of the hips.
func (f *figure) hips(j *joints) geom.Vec {
	return r3.Add(f.pelvis, geom.Vec{X: j[chPelvisX], Y: j[chPelvisY], Z: j[chPelvisZ]})
}

// acrossHips returns the direction from the trail to the lead hip.
func (c *core) acrossHips() geom.Vec {
	t := &c.turns[chPelvis]
	return geom.Vec{X: t.cos, Y: -t.sin}
}

// lean gives the trunk and the line of the shoulders their directions.
func (c *core) lean(forward, side, chest *turn) {
	sf, cf := forward.sin, forward.cos
	ss, cs := side.sin, side.cos
	c.up = geom.Vec{X: -ss, Y: -sf * cs, Z: cf * cs}
	square := geom.Vec{X: cs, Y: -sf * ss, Z: cf * ss} // the shoulder line without turn
	behind := r3.Cross(c.up, square)
	c.lead = sum(chest.cos, square, -chest.sin, behind)
}

// shoulder places hub and shoulders over the hips.
func (f *figure) shoulder(c *core) {
	c.hub = along(c.pelvis, f.trunk, c.up)
	half := f.body.ShoulderWidth / 2
	c.leadShoulder, c.trailShoulder = along(c.hub, half, c.lead), along(c.hub, -half, c.lead)
}

// inPlane returns the unit vector at an angle from straight down a plane of the
// given slope and trace.
func inPlane(angle, slope, trace *turn) geom.Vec {
	x, y := -angle.sin, -angle.cos*slope.cos
	return geom.Vec{X: x*trace.cos - y*trace.sin, Y: x*trace.sin + y*trace.cos, Z: -angle.cos * slope.sin}
}

// planeAngles is the inverse of inPlane for a unit vector that points downwards
// or nearly so: the angle and the slope, given the trace.
func planeAngles(dir geom.Vec, trace float64) (angle, slope float64) {
	st, ct := math.Sincos(trace)
	x, y := dir.X*ct+dir.Y*st, -dir.X*st+dir.Y*ct
	return math.Asin(max(-1, min(1, -x))), math.Atan2(-dir.Z, -y)
}

// coreOf fills the whole core.
func (f *figure) coreOf(j *joints, c *core) {
	fillTurns(j[:numAngles], c.turns[:])
	f.trunkOf(j, c)
	f.handsOf(j, c)
}

// handsOf places hands and club about the trunk.
func (f *figure) handsOf(j *joints, c *core) {
	t := &c.turns
	arm := inPlane(&t[chTheta], &t[chHandSlope], &t[chHandTrace])
	slope, trace := &t[chClubSlope], &t[chClubTrace]
	c.club = inPlane(&t[chPhi], slope, trace)
	c.clubFace = geom.Vec{X: slope.sin * trace.sin, Y: -slope.sin * trace.cos, Z: slope.cos}
	c.leadArm = j[chExtend] * f.armLength
	c.hands = along(c.hub, f.handReach(c, &arm), arm)
	f.clearMat(c)
}

// clearMat lifts the hands, and so bends the arms, where clubhead or hands would dig
// into the mat: a golfer feels the ground.
func (f *figure) clearMat(c *core) {
	heel, toe := f.headAxis(c)
	low := heel.Z
	if toe.Z < low {
		low = toe.Z
	}
	low -= f.club.HeadRadius
	if end := c.hands.Z + (f.reach-f.club.HeadRadius)*c.club.Z - shaftRadius; end < low {
		low = end
	}
	// The greater of the two, with the corner rounded.
	over := low - matDepth
	c.hands.Z += (math.Sqrt(over*over+matSoftness*matSoftness) - over) / 2
	// Nor do the hands dig, of arms that reach the ground. (One of them is the lower.)
	lower := -f.leadAbove * c.club.Z
	if trail := f.trailBelow * c.club.Z; trail < lower {
		lower = trail
	}
	if fist := c.hands.Z + lower - f.body.HandRadius; fist < matDepth {
		c.hands.Z += matDepth - fist
	}
}

const (
	matDepth    = -0.007 // m: how deep a head may press into the mat
	matSoftness = 0.004  // m over which the mat makes itself felt
)

// handReach returns how far from the hub along arm the middle of the hands is
// with the lead arm stretched as it is and its shoulder drawn forward, unless the
// trail arm holds it back with its shoulder as far forward as it goes.
func (f *figure) handReach(c *core, arm *geom.Vec) float64 {
	return f.softMin(f.stretch(c, arm, &c.leadShoulder, -f.leadAbove, c.leadArm+f.girdle),
		f.stretch(c, arm, &c.trailShoulder, f.trailBelow, f.trailLimit+f.girdleMost))
}

// hubToHands returns the distance from the hub to the hands at a key moment, m.
func (f *figure) hubToHands(s *score, key int) float64 {
	var j joints
	for ch := range numChannels {
		j[ch] = s[ch][key]
	}
	var c core
	f.coreOf(&j, &c)
	return geom.Norm(r3.Sub(c.hands, c.hub))
}

// stretch returns how far from the hub along arm the middle of the hands may go
// before the hand at offset along the club is limit away from its shoulder.
func (f *figure) stretch(c *core, arm, shoulder *geom.Vec, offset, limit float64) float64 {
	v := r3.Sub(along(c.hub, offset, c.club), *shoulder)
	b := geom.Dot(*arm, v)
	return root(b*b-geom.Dot(v, v)+limit*limit) - b
}

// softMin is the lesser of a and b with the corner rounded over f.soft; it is
// never more than either. (Comparisons: the min and max builtins cost more, for
// the sake of NaN and −0.)
func (f *figure) softMin(a, b float64) float64 {
	d := a - b
	if d >= f.soft {
		return b
	}
	if d <= -f.soft {
		return a
	}
	if d > 0 {
		a, d = b, -d
	}
	h := f.soft + d
	return a - h*h/(4*f.soft)
}

// pose fills the wanted parts of out for the joints j; the others keep what they held.
func (f *figure) pose(j *joints, want Parts, out *Pose) {
	const hangs = ClubParts | leadArmParts | trailArmParts // on the hands
	var c core
	first, end := chPelvis, numAngles
	if want&^hangs == 0 {
		first = chForward
	} else if want&hangs == 0 {
		end = chTheta
	}
	fillTurns(j[first:end], c.turns[first:end])
	f.trunkOf(j, &c)
	if want&hangs != 0 {
		f.handsOf(j, &c)
	}
	if want&ClubParts != 0 {
		f.poseClub(&c, out)
	}
	if want&leadArmParts != 0 {
		f.poseLeadArm(&c, out)
	}
	if want&trailArmParts != 0 {
		f.poseTrailArm(&c, out)
	}
	if want&trunkParts != 0 {
		f.poseTrunk(&c, out)
	}
	if want&leadLegParts != 0 {
		f.poseLeadLeg(&c, out)
	}
	if want&trailLegParts != 0 {
		f.poseTrailLeg(&c, j[chHeel], want, out)
	}
}

func (f *figure) poseClub(c *core, out *Pose) {
	end := along(c.hands, gripLength-f.toCap, c.club)
	out[Grip] = geom.Capsule{A: along(c.hands, -f.toCap, c.club), B: end, R: gripRadius}
	out[Shaft] = geom.Capsule{A: end, B: along(c.hands, f.reach-f.club.HeadRadius, c.club), R: shaftRadius}
	heel, toe := f.headAxis(c)
	out[Clubhead] = geom.Capsule{A: heel, B: toe, R: f.club.HeadRadius}
}

// headAxis returns the ends of the clubhead's axis, heel and toe. The head lies
// along the sole, which the lie angle fixes to the shaft.
func (f *figure) headAxis(c *core) (heel, toe geom.Vec) {
	r := f.club.HeadRadius
	sl, cl := f.sinLie, f.cosLie
	toToe := sum(cl, c.club, sl, c.clubFace)
	// From the sole by the radius square to it and half the radius along it.
	heel = along(c.hands, f.reach-r*sl, c.club)
	heel = along(heel, r*cl, c.clubFace)
	heel = along(heel, r/2, toToe)
	return heel, along(heel, f.club.HeadSpan, toToe)
}

func (f *figure) poseTrunk(c *core, out *Pose) {
	b := &f.body
	half := b.HipWidth / 2
	hips, forward, side := c.acrossHips(), &c.turns[chForward], &c.turns[chSide]
	out[Pelvis] = geom.Capsule{A: along(c.pelvis, -half, hips), B: along(c.pelvis, half, hips), R: b.PelvisRadius}
	// The round top of the chest carries the shoulders and rises between them to the neck.
	out[Trunk] = geom.Capsule{A: along(c.pelvis, 0.05, c.up), B: along(c.hub, -0.55*b.TrunkRadius, c.up), R: b.TrunkRadius}

	// The head is carried 14° more forward than the trunk, looking at the ball,
	// and half as far to the side.
	const sinLook, cosLook = 0.24192189559966773, 0.97029572627599647
	sf, cf := forward.sin*cosLook+forward.cos*sinLook, forward.cos*cosLook-forward.sin*sinLook
	cs := math.Sqrt((1 + side.cos) / 2)
	ss := side.sin / (2 * cs)
	axis := geom.Vec{X: -ss, Y: -sf * cs, Z: cf * cs}
	crown := b.Stature - b.ShoulderHeight
	chin := along(c.hub, crown-b.HeadHeight+b.HeadRadius, axis)
	out[Head] = geom.Capsule{A: chin, B: along(c.hub, crown-b.HeadRadius, axis), R: b.HeadRadius}
	out[Neck] = geom.Capsule{A: c.hub, B: chin, R: b.NeckRadius}
}
