// Package wire is what the scene is sent: a recording of one swing, computed
// beforehand, with the surfaces of the room, the frames, the marks where it
// strikes and its tightest moment. It holds no physics and imports nothing of
// ours, so that the scene program can read a recording without carrying the
// simulation.
//
// Everything is in room coordinates (origin at a floor corner, x towards the
// target, y to the left when facing it, z up; metres, seconds), left-handers
// already mirrored into place. Numbers are float32: half a micrometre at room
// size, far below the tolerance of the answer they illustrate.
package wire

// Vec is a point or a direction in room coordinates, metres.
type Vec [3]float32

// Kind says what a face is made of, which decides how it is drawn.
type Kind uint8

// The kinds of face.
const (
	Wall Kind = iota
	Ceiling
	Slope
	Floor
	Mat
	Solid  // built into the room: beam, duct, column
	Screen // the impact cloth
	Return // cloth along the screen's sides and top
	Hung   // a thing hung from the ceiling or a wall
	NumKinds
)

var kindNames = [NumKinds]string{
	"wall", "ceiling", "slope", "floor", "mat", "solid", "screen", "return", "hung",
}

func (k Kind) String() string {
	if k < NumKinds {
		return kindNames[k]
	}
	return "unknown"
}

// Shell reports whether the face belongs to the room's shell, which is seen
// from inside only: the scene leaves it out when it stands between the viewer
// and the golfer.
func (k Kind) Shell() bool { return k <= Floor }

// Cloth reports whether the face is a sheet without a solid behind it, seen
// from both sides.
func (k Kind) Cloth() bool { return k == Screen || k == Return }

// Face is one flat convex polygon, its corners counter-clockwise as seen from
// the free side (from inside the room; from outside a solid).
type Face struct {
	Name    string
	Kind    Kind
	Polygon []Vec
}

// Part names one capsule of golfer or club and gives its radius.
type Part struct {
	Name   string
	Radius float32 // m
}

// Segment is the axis of a capsule.
type Segment struct{ A, B Vec }

// Frame is one instant of the swing.
type Frame struct {
	Phase     uint8     // index into Recording.Phases
	Clearance float32   // signed distance from golfer and club to the nearest surface, m
	Club      float32   // the same from the club alone
	Pose      []Segment // one for each of Recording.Parts
	// Typical is the pose of the player's typical swing at the same time from impact;
	// empty when the recording has none, which goes for all its frames.
	Typical []Segment
}

// Strike is a place where golfer or club goes through a surface.
type Strike struct {
	Frame   int     // the frame from which the mark is seen
	At      Vec     // on the surface
	Normal  Vec     // unit, into the free side
	Radius  float32 // of the part that strikes, m
	Surface string
	Part    string
}

// Club is what the head of the club looks like.
type Club struct {
	Kind string  // "driver", "wood", "hybrid", "iron", "wedge"
	Loft float32 // degrees; 0: usual for the kind
}

// Verdict is how the tightest moment is judged.
type Verdict uint8

// The verdicts, from best to worst.
const (
	Clear Verdict = iota
	Tight
	Strikes
	NumVerdicts
)

var verdictNames = [NumVerdicts]string{"clear", "tight", "strikes"}

func (v Verdict) String() string {
	if v < NumVerdicts {
		return verdictNames[v]
	}
	return "unknown"
}

// Tightest is the tightest moment, where the measuring tape is stretched: from
// the part to the surface, with the reading a person is to see. Without a Label
// there is none.
type Tightest struct {
	Time     float32 // s into the swing
	From, To Vec     // on the part, on the surface
	Label    string  // "5 7/8 in · 149 mm"
	Verdict  Verdict
	Surface  string
	Part     string
	// Fray is how far (m) the tape may be wrong, over which its end at the part is
	// drawn frayed.
	Fray float32
}

// Recording is one swing of one golfer with one club from one tee in one room.
type Recording struct {
	Title  string
	Room   Vec // length, width, height of the bare box
	Faces  []Face
	Phases []string // names that Frame.Phase points into
	Parts  []Part
	Rate   float32 // frames a second
	Frames []Frame
	// Strikes is in order of Frame.
	Strikes  []Strike
	Tightest Tightest
	Ball     Vec // centre
	Club     Club
	// Margin is the clearance (m) that is asked for; less is tight.
	Margin float32
	// Tick is the spacing of the small marks on tape and ribbon (an inch or a
	// centimetre), Major how many of them make a long one.
	Tick   float32
	Major  int
	Flight Flight
}

// Duration is the time of the last frame, s; 0 for a recording without frames.
func (s *Recording) Duration() float64 {
	if len(s.Frames) == 0 || s.Rate <= 0 {
		return 0
	}
	return float64(len(s.Frames)-1) / float64(s.Rate)
}

// FrameAt is the index of the frame at or just before t seconds, kept inside
// the recording. A time within a thousandth of a frame of the next counts as it, so
// that seeking to k/Rate lands on frame k whatever the rounding.
func (s *Recording) FrameAt(t float64) int {
	t = max(0, min(t, s.Duration()))
	return max(0, min(int(t*float64(s.Rate)+1e-3), len(s.Frames)-1))
}

// PartIndex is the index of the named part, or -1.
func (s *Recording) PartIndex(name string) int {
	for i, p := range s.Parts {
		if p.Name == name {
			return i
		}
	}
	return -1
}
