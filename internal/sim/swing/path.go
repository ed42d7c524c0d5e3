package swing

import "wideberth/internal/sim/geom"

// PathSample is where a swung club is at one instant, in the terms in which
// recordings of clubs give it and in the frame of Pose.
type PathSample struct {
	Time  float64  // from impact, s
	Hands geom.Vec // the point of the shaft between both hands, m
	Face  geom.Vec // the centre of the club face, m
	Speed float64  // of the face's centre, m/s
}
