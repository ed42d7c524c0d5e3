package swing

// ClubPoses is Poses for a caller who only looks at the grip, the shaft and the
// clubhead: the other parts of out keep what they held.
func (f *Family) ClubPoses(member *Swing, out []Pose) {
	top, impact := member.times[kTop], member.times[kImpact]
	var j joints
	for i := range f.moments {
		m := &f.moments[i]
		for ch := range chHeel {
			j[ch] = member.curves[ch].at(m)
		}
		if t := f.times[i]; t > top && t < impact {
			j[chTheta] = arcAt(&member.curves[chTheta], f.shares[i][0])
			j[chPhi] = arcAt(&member.curves[chPhi], f.shares[i][1])
		}
		c := member.figure.coreOf(&j)
		member.figure.poseClub(&c, &out[i])
	}
}
