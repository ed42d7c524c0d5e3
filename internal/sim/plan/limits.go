package plan

// What a plan may hold. Lengths are metres. These are limits of sense, wide
// enough for any room and any person; they are choices of this program unless a
// source is named.
const (
	MaxPlayers = 12
	MaxClubs   = 14 // the most a golfer may carry: Rules of Golf, rule 4.1b
	MaxTees    = 6
	MaxSolids  = 40
	MaxSlopes  = 8
	MaxLayers  = 12
	MaxHung    = 20
	MaxSeats   = 12
	MaxPairs   = 48  // players with each of their clubs: each takes a browser some 0.2 s and 4 MB
	MaxChecks  = 120 // the same with each of their tees

	maxName  = 40 // characters
	maxTitle = 80

	// LongestClub is the longest club that may be played, putters excepted:
	// 48 in, Equipment Rules (USGA and R&A), Part 2, 1c. Longer is allowed here,
	// with a note.
	LongestClub = 1.2192

	// ShortestMeasured and TallestMeasured bound the statures of the people whose
	// proportions the body is built from: ANSUR II (C. C. Gordon et al. 2014,
	// NATICK/TR-15/007), least woman 1.409 m, tallest man 1.993 m, rounded.
	ShortestMeasured = 1.41
	TallestMeasured  = 2.00

	// ballDiameter is the least that the Equipment Rules, Part 4, 3, allow: 1.680 in.
	ballDiameter = 0.04267

	// smallMargin is the margin under which a note is due: a hand's breadth.
	smallMargin = 0.10

	// sitting (m) is how high a seat reaches over the floor: a beam above it is none
	// in its way.
	sitting = 0.5

	// fitTolerance forgives what is left over when a plan is rounded to 0.1 mm:
	// two coordinates, each 0.05 mm out.
	fitTolerance = 1e-4
)

// span is a closed range.
type span struct{ lo, hi float64 }

var (
	rangeMargin     = span{0.01, 1}
	rangeRoomLength = span{2, 60}
	rangeRoomWidth  = span{1.5, 60}
	rangeRoomHeight = span{1.5, 20}
	rangeCoordinate = span{-1, 61} // of a solid or hung thing, which may stick out of the room
	rangeThickness  = span{0, 0.5}
	rangeMatSide    = span{0.3, 6}
	rangeReturn     = span{0, 5}
	rangeScreenSide = span{0.5, 20}
	rangeClub       = span{0.45, 1.60}
	rangeLie        = span{40, 80}
	rangeLoft       = span{4, 70}
	rangeBallSpeed  = span{5, 95}
	rangeLaunch     = span{0, 70}
	rangeSpin       = span{0, 15000}
	rangeStature    = span{0.9, 2.4}
	rangeSpan       = span{0.7, 2.8}
	rangeArm        = span{0.25, 1.1}
	rangeToes       = span{0.35, 1.20} // a child with a short driver; any adult, 0.75–0.90 being usual
	rangeHands      = span{0.35, 1.05} // the same; the longest legal driver held at 20° to the ground
	rangeShoe       = span{0, 0.10}
	rangeThrow      = span{0.1, 10}
	rangeLens       = span{0, 20}
	rangeLumens     = span{50, 100000}
	rangeSeat       = span{0.1, 2}
	rangeCelsius    = span{-40, 55}
	rangeAltitude   = span{-450, 6000}
)

// reservedNames are what the report calls the room's own surfaces; nothing in
// the room may share a name with them, since the report is keyed by name.
var reservedNames = []string{
	"ceiling", "floor", "left wall", "right wall", "front wall", "back wall",
	"screen", "left return", "right return", "top return",
}

// Fits reports whether a length (m) is within the limits of a field, by the pattern
// of its path, such as players[].height. ok is false where a bare number could mean
// too many things to tell by them.
func Fits(pattern string, metres float64) (fits, ok bool) {
	limits := map[string]span{
		"players[].height": rangeStature, "clubs[].length": rangeClub,
		"room.length": rangeRoomLength, "room.width": rangeRoomWidth, "room.height": rangeRoomHeight,
	}
	r, ok := limits[pattern]
	return metres >= r.lo && metres <= r.hi, ok
}
