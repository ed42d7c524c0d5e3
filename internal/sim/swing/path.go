package swing

import (
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
)

// PathSample is where a swung club is at one instant, in the terms in which
// recordings of clubs give it and in the frame of Pose.
type PathSample struct {
	Time  float64  // from impact, s
	Hands geom.Vec // the point of the shaft between both hands, m
	Face  geom.Vec // the centre of the club face, m
	Speed float64  // of the face's centre, m/s
}

// Path returns the path of the club over the whole swing, a sample every step
// seconds.
func (s *Swing) Path(step float64) []PathSample {
	path := make([]PathSample, int(s.Duration()/step)+1)
	for i := range path {
		t := float64(i) * step
		pose := s.PoseAt(t)
		path[i] = s.sample(t, &pose)
	}
	addSpeeds(path)
	return path
}

// sample returns hands and face of a pose of this swing at time t.
func (s *Swing) sample(t float64, pose *Pose) PathSample {
	grip, head := &pose[Grip], &pose[Clubhead]
	shaft := r3.Unit(r3.Sub(grip.B, grip.A))
	// The face looks square to the shaft and to the head's axis, heel to toe.
	face := r3.Unit(r3.Cross(r3.Sub(head.B, head.A), shaft))
	return PathSample{
		Time:  t - s.ImpactTime(),
		Hands: along(grip.A, s.figure.toCap, shaft),
		Face:  along(geom.Lerp(head.A, head.B, 0.5), s.figure.club.HeadDepth, face),
	}
}

// addSpeeds gives every sample the speed between its neighbours.
func addSpeeds(path []PathSample) {
	for i := range path {
		a, b := &path[max(i-1, 0)], &path[min(i+1, len(path)-1)]
		path[i].Speed = geom.Norm(r3.Sub(b.Face, a.Face)) / (b.Time - a.Time)
	}
}

// PathResidual is how far the model's paths lie from recorded ones, m: the mean
// distance between recorded paths of driver heads and the nearest member of the
// family that the model makes of the same golfer and club, from the takeaway to
// 0.30 s after impact. The tests of package published find it again. A clearance
// smaller than this says nothing tighter than that the place is close.
const PathResidual = 0.05

// PathResidualHow says for a reader of the report how PathResidual is found.
const PathResidualHow = "the mean distance between recorded paths of driver heads and the nearest swing of the modelled family, from takeaway to 0.30 s after impact"
