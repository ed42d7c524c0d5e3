package swing

import (
	"math"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
)

// along returns p + k·n.
func along(p geom.Vec, k float64, n geom.Vec) geom.Vec {
	return geom.Vec{X: p.X + k*n.X, Y: p.Y + k*n.Y, Z: p.Z + k*n.Z}
}

// sum returns a·u + b·v.
func sum(a float64, u geom.Vec, b float64, v geom.Vec) geom.Vec {
	return geom.Vec{X: a*u.X + b*v.X, Y: a*u.Y + b*v.Y, Z: a*u.Z + b*v.Z}
}

// root is the square root of x, 0 for x < 0.
func root(x float64) float64 {
	if x < 0 {
		return 0
	}
	return math.Sqrt(x)
}

func (f *figure) poseLeadArm(c *core, out *Pose) {
	bend := sum(-1, c.up, 0.3, c.lead)
	stretch := c.leadArm
	if most := armLongest * f.armLength; most < stretch {
		stretch = most
	}
	f.arm(c.leadShoulder, along(c.hands, -f.leadAbove, c.club), bend, stretch,
		&out[LeadUpperArm], &out[LeadForearm], &out[LeadHand])
}

func (f *figure) poseTrailArm(c *core, out *Pose) {
	bend := sum(-1, c.up, -0.3, c.lead)
	f.arm(c.trailShoulder, along(c.hands, f.trailBelow, c.club), bend, f.trailLimit,
		&out[TrailUpperArm], &out[TrailForearm], &out[TrailHand])
}

// arm closes one arm between shoulder and hand by inverse kinematics; the elbow
// points as nearly as it can along bend. A shoulder that is farther off than the
// arm stretches slides along.
func (f *figure) arm(shoulder, hand, bend geom.Vec, stretch float64, upper, fore, fist *geom.Capsule) {
	b := &f.body
	line := r3.Sub(hand, shoulder)
	dist := geom.Norm(line)
	dir := r3.Scale(1/dist, line)
	if use := f.softMin(dist, stretch); use < dist {
		shoulder = along(shoulder, dist-use, dir)
		dist = use
	}
	// Forearm and hand are one line: how the club turns in the hands is the wrists'.
	elbow := middleJoint(shoulder, dir, dist, b.UpperArm, b.Forearm+b.Hand, bend)
	wrist := along(elbow, b.Forearm/(b.Forearm+b.Hand), r3.Sub(hand, elbow))
	*upper = geom.Capsule{A: shoulder, B: elbow, R: b.UpperArmRadius}
	*fore = geom.Capsule{A: elbow, B: wrist, R: b.ForearmRadius}
	*fist = geom.Capsule{A: wrist, B: hand, R: b.HandRadius}
}

// middleJoint returns the elbow or knee of a two-bone chain from start along the
// unit vector dir to an end at distance dist; the joint lies towards bend.
func middleJoint(start, dir geom.Vec, dist, first, second float64, bend geom.Vec) geom.Vec {
	if least := math.Abs(first-second) + 0.01; dist < least {
		dist = least
	}
	a := (first*first - second*second + dist*dist) / (2 * dist)
	side := along(bend, -geom.Dot(bend, dir), dir)
	h := root((first*first - a*a) / geom.Dot(side, side))
	return along(along(start, a, dir), h, side)
}

func (f *figure) poseLeadLeg(c *core, out *Pose) {
	hips := c.acrossHips()
	front := geom.Vec{X: hips.Y, Y: -hips.X}
	lead, leadToe := f.leadFoot()
	f.leg(along(c.pelvis, f.body.HipWidth/2, hips), f.leadAnkle, along(leadToe, 0.5, front), &out[LeadThigh], &out[LeadShank])
	out[LeadFoot] = lead
}

func (f *figure) poseTrailLeg(c *core, lift float64, want Parts, out *Pose) {
	trail, ankle := f.trailFoot(lift)
	out[TrailFoot] = trail
	if want&(trailLegParts&^(1<<TrailFoot)) == 0 {
		return
	}
	hips := c.acrossHips()
	front := geom.Vec{X: hips.Y, Y: -hips.X}
	toe := level(trail.B.X-trail.A.X, trail.B.Y-trail.A.Y)
	f.leg(along(c.pelvis, -f.body.HipWidth/2, hips), ankle, r3.Add(toe, front), &out[TrailThigh], &out[TrailShank])
}

// level returns the level unit vector along (x, y), to the bit as r3.Unit does, which
// minds overflow.
//
//go:noinline
func level(x, y float64) geom.Vec {
	p, q := math.Abs(x), math.Abs(y)
	if p < q {
		p, q = q, p
	}
	q /= p
	k := 1 / (p * math.Sqrt(1+q*q))
	return geom.Vec{X: k * x, Y: k * y}
}

// leadFoot returns the lead foot, which stays where it was put, and the way its
// toe points: flared 20° to the target (common practice).
func (f *figure) leadFoot() (foot geom.Capsule, toe geom.Vec) {
	toe = geom.Vec{X: 0.34, Y: -0.94}
	heel, tip, _ := f.footOn(f.leadAnkle, toe)
	return geom.Capsule{A: heel, B: tip, R: f.body.FootRadius}, toe
}

// trailFoot returns the trail foot and its ankle when the heel has come up: 0
// flat, 1 on the toe, about which the foot turns to the target.
func (f *figure) trailFoot(lift float64) (foot geom.Capsule, ankle geom.Vec) {
	_, tip, rise := f.footOn(f.trailAnkle, geom.Vec{X: -0.17, Y: -0.985})
	toe := level(-0.17+0.9*lift, -0.985+0.3*lift)
	sp, cp := math.Sincos(lift * heelUp)
	back := geom.Vec{X: -toe.X * cp, Y: -toe.Y * cp, Z: sp}
	upper := geom.Vec{X: toe.X * sp, Y: toe.Y * sp, Z: cp}
	b := &f.body
	ankle = along(along(tip, (1-ankleAt)*b.FootLength-b.FootRadius, back), rise, upper)
	return geom.Capsule{A: along(tip, b.FootLength-2*b.FootRadius, back), B: tip, R: b.FootRadius}, ankle
}

const (
	ankleAt = 0.25        // ankle ahead of the heel, of the foot's length: assumption
	heelUp  = 69 * degree // of the foot to the floor when it stands on its toe: assumption
)

// footOn returns the ends of the axis of a foot that stands flat under an ankle,
// and how far the ankle is above that axis.
func (f *figure) footOn(ankle, toe geom.Vec) (heel, tip geom.Vec, rise float64) {
	b := &f.body
	ground := geom.Vec{X: ankle.X, Y: ankle.Y, Z: b.FootRadius}
	return along(ground, b.FootRadius-ankleAt*b.FootLength, toe),
		along(ground, (1-ankleAt)*b.FootLength-b.FootRadius, toe), ankle.Z - b.FootRadius
}

// leg closes one leg between hip and ankle; the knee points as nearly as it can
// along bend. A hip that is farther off than the leg is long gives way.
func (f *figure) leg(hip, ankle, bend geom.Vec, thigh, shank *geom.Capsule) {
	line := r3.Sub(ankle, hip)
	dist := geom.Norm(line)
	dir := r3.Scale(1/dist, line)
	use := f.softMin(dist, f.legLimit)
	hip = along(hip, dist-use, dir)
	knee := middleJoint(hip, dir, use, f.thigh, f.shank, bend)
	*thigh = geom.Capsule{A: hip, B: knee, R: f.body.ThighRadius}
	*shank = geom.Capsule{A: knee, B: ankle, R: f.body.ShankRadius}
}
