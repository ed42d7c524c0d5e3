package swing

// channel names one degree of freedom of the modelled golfer. Angles are
// radians, lengths metres.
type channel int

// The angles. The trunk hangs on the first four, hands and club on all but the first.
const (
	chPelvis  channel = iota // turn of the hip line about the vertical, positive away from the target
	chForward                // trunk line forward of vertical, towards the ball
	chSide                   // trunk line to the trail side of vertical
	chChest                  // turn of the shoulder line about the trunk, the same way as the hips

	// The hands go round the hub (the middle of the shoulder line) in the hand
	// plane: theta is their angle from straight down that plane, positive on
	// the trail side; the plane has a slope to the ground and a trace, the turn
	// of its floor line from the target line, positive to the left.
	chTheta
	chHandSlope
	chHandTrace

	// The club points from the hands to the head: phi is its angle in the club
	// plane, measured as theta is.
	chPhi
	chClubSlope
	chClubTrace
	numAngles
)

// The channels that are no angles.
const (
	chExtend  = numAngles + iota // how far the lead arm stretches: shoulder to the middle of its fist, over its length
	chPelvisX                    // middle of the hips against address, m
	chPelvisY
	chPelvisZ
	chHeel // how far the trail heel has come up: 0 flat, 1 on the toe
	numChannels
)

// joints is one value per channel at one instant.
type joints [numChannels]float64
