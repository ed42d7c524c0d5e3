package swing

import "wideberth/internal/sim/geom"

// Part names one capsule of the golfer or the club.
type Part uint8

// The parts, body first, club last. Lead is the side nearer the target.
const (
	Head Part = iota
	Neck
	Trunk
	Pelvis
	LeadUpperArm
	TrailUpperArm
	LeadForearm
	TrailForearm
	LeadHand
	TrailHand
	LeadThigh
	TrailThigh
	LeadShank
	TrailShank
	LeadFoot
	TrailFoot
	Grip
	Shaft
	Clubhead
	NumParts
)

var partNames = [NumParts]string{
	"head", "neck", "trunk", "pelvis",
	"lead upper arm", "trail upper arm", "lead forearm", "trail forearm",
	"lead hand", "trail hand", "lead thigh", "trail thigh",
	"lead shank", "trail shank", "lead foot", "trail foot",
	"grip", "shaft", "clubhead",
}

func (p Part) String() string { return partNames[p] }

// Pose is every part at one instant, in the golfer frame of a right-hander:
// origin at the ball on the standing surface, x towards the target, y from the
// ball towards the golfer's back, z up; metres. A left-hander is the mirror
// image in y, which the placing of the room takes care of.
type Pose [NumParts]geom.Capsule

// Lines are a golfer's lines that the capsules of a Pose do not show, in its frame:
// points in metres, and unit vectors.
type Lines struct {
	Hub       geom.Vec // middle of the line through the shoulder joints
	Up        geom.Vec // along the trunk, from the middle of the hips to the hub
	Shoulders geom.Vec // from the trail to the lead shoulder, as the trunk turns
	Hips      geom.Vec // from the trail to the lead hip
	Hands     geom.Vec // middle of both hands, on the axis of the shaft
	Club      geom.Vec // from the hands along the shaft
}

// Parts is a set of parts.
type Parts uint32

// Set returns the set of the part alone.
func (p Part) Set() Parts { return 1 << p }

// Sets of parts.
const (
	AllParts  Parts = 1<<NumParts - 1
	ClubParts       = AllParts &^ (1<<Grip - 1)
	BodyParts       = AllParts &^ ClubParts
	ArmParts        = leadArmParts | trailArmParts

	trunkParts    Parts = 1<<Head | 1<<Neck | 1<<Trunk | 1<<Pelvis
	leadArmParts  Parts = 1<<LeadUpperArm | 1<<LeadForearm | 1<<LeadHand
	trailArmParts Parts = 1<<TrailUpperArm | 1<<TrailForearm | 1<<TrailHand
	leadLegParts  Parts = 1<<LeadThigh | 1<<LeadShank | 1<<LeadFoot
	trailLegParts Parts = 1<<TrailThigh | 1<<TrailShank | 1<<TrailFoot
)

// Has reports whether a part is in the set.
func (s Parts) Has(p Part) bool { return s>>p&1 != 0 }

// Club reports whether there are only parts of the club in the set.
func (s Parts) Club() bool { return s&BodyParts == 0 }
