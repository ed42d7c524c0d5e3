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

func (f *figure) poseArms(c *core, out *Pose) {
	bend := sum(-1, c.up, 0.3, c.lead)
	f.arm(c.leadShoulder, along(c.hands, -leadAbove, c.club), bend,
		&out[LeadUpperArm], &out[LeadForearm], &out[LeadHand])
	bend = sum(-1, c.up, -0.3, c.lead)
	f.arm(c.trailShoulder, along(c.hands, trailBelow, c.club), bend,
		&out[TrailUpperArm], &out[TrailForearm], &out[TrailHand])
}

// arm closes one arm between shoulder and hand by inverse kinematics; the elbow
// points as nearly as it can along bend. A shoulder that is farther off than the
// arm is long slides along.
func (f *figure) arm(shoulder, hand, bend geom.Vec, upper, fore, fist *geom.Capsule) {
	b := &f.body
	line := r3.Sub(hand, shoulder)
	dist := geom.Norm(line)
	dir := r3.Scale(1/dist, line)
	if use := softMin(dist, f.armLimit); use < dist {
		shoulder = along(shoulder, dist-use, dir)
		dist = use
	}
	wrist := along(hand, -b.Hand, dir)
	elbow := middleJoint(shoulder, dir, dist-b.Hand, b.UpperArm, b.Forearm, bend)
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

func (f *figure) poseLegs(c *core, lift float64, out *Pose) {
	b := &f.body
	front := geom.Vec{X: c.hips.Y, Y: -c.hips.X}
	half := b.HipWidth / 2

	leadToe := geom.Vec{X: 0.34, Y: -0.94} // foot flared 20° to the target, common practice
	f.leg(along(c.pelvis, half, c.hips), f.leadAnkle, along(leadToe, 0.5, front), &out[LeadThigh], &out[LeadShank])
	out[LeadFoot] = f.foot(f.leadAnkle, leadToe, 0)

	trailToe := geom.Vec{X: -0.17 + 0.9*lift, Y: -0.98 + 0.3*lift}
	trailToe = r3.Scale(1/geom.Norm(trailToe), trailToe)
	ankle := r3.Add(f.trailAnkle, geom.Vec{X: 0.06 * lift, Y: -0.07 * lift, Z: 0.45 * b.FootLength * lift})
	f.leg(along(c.pelvis, -half, c.hips), ankle, r3.Add(trailToe, front), &out[TrailThigh], &out[TrailShank])
	out[TrailFoot] = f.foot(ankle, trailToe, lift)
}

// leg closes one leg between hip and ankle; the knee points as nearly as it can
// along bend. A hip that is farther off than the leg is long gives way.
func (f *figure) leg(hip, ankle, bend geom.Vec, thigh, shank *geom.Capsule) {
	line := r3.Sub(ankle, hip)
	dist := geom.Norm(line)
	dir := r3.Scale(1/dist, line)
	use := softMin(dist, f.legLimit)
	hip = along(hip, dist-use, dir)
	knee := middleJoint(hip, dir, use, f.thigh, f.shank, bend)
	*thigh = geom.Capsule{A: hip, B: knee, R: f.body.ThighRadius}
	*shank = geom.Capsule{A: knee, B: ankle, R: f.body.ShankRadius}
}

// foot runs from under the ankle to the toe, which stays on the ground while
// the heel lifts.
func (f *figure) foot(ankle, toe geom.Vec, lift float64) geom.Capsule {
	r := f.body.FootRadius
	length := 0.72*f.body.FootLength - r
	heel := ankle
	heel.Z -= (f.body.AnkleHeight + f.body.Shoe - r) * (1 - 0.6*lift)
	tip := along(heel, length*(1-0.35*lift), toe)
	tip.Z = r
	return geom.Capsule{A: heel, B: tip, R: r}
}
