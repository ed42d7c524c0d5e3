package swing

import "wideberth/internal/sim/geom"

// ClubPoints are the ends of the club that can reach farthest, m: by ShaftEnd,
// Heel and Toe. The grip end is near the hands.
type ClubPoints [3]geom.Vec

// The points of the club: the lower end of the shaft, and the ends of the
// clubhead's axis.
const (
	ShaftEnd = iota
	Heel
	Toe
)

// ClubPoses is Poses for a caller who only looks at the grip, the shaft and the
// clubhead: the other parts of out keep what they held.
func (f *Family) ClubPoses(member *Swing, out []Pose) {
	var j joints
	for i := range f.moments {
		f.joints(member, i, &j)
		c := member.figure.coreOf(&j)
		member.figure.poseClub(&c, &out[i])
	}
}

// ClubPoints is ClubPoses with the points alone.
func (f *Family) ClubPoints(member *Swing, out []ClubPoints) {
	var j joints
	for i := range f.moments {
		f.joints(member, i, &j)
		member.figure.clubPoints(&j, &out[i])
	}
}

// ClubAt is PoseAt for the points of the club only.
func (s *Swing) ClubAt(t float64, out *ClubPoints) {
	j := s.jointsAt(t)
	s.figure.clubPoints(&j, out)
}

func (f *figure) clubPoints(j *joints, out *ClubPoints) {
	c := f.coreOf(j)
	out[Heel], out[Toe] = f.headAxis(&c)
	out[ShaftEnd] = along(c.hands, f.reach-f.club.HeadRadius, c.club)
}
