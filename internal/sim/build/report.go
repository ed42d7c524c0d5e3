// Package build answers what the same person has to settle once the swing fits: the
// floor that meets the mat, the image and its projector, where putts run, what to
// buy, and what to ask about. It computes from a checked plan and spec.Spec; every
// figure says where its rule comes from (Rules).
package build

import (
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/build/floor"
	"wideberth/internal/sim/build/projector"
	"wideberth/internal/sim/build/quantity"
	"wideberth/internal/sim/build/screen"
	"wideberth/internal/sim/fit"
)

// Report is the whole answer. Lengths are m, room frame.
type Report struct {
	Image      screen.Image    `json:"image"`
	Screen     Screen          `json:"screen"`
	Projector  *Projector      `json:"projector"` // null where none is planned
	Floor      Floor           `json:"floor"`
	Putting    Putting         `json:"putting"`
	Sensor     *Sensor         `json:"sensor,omitempty"`
	Walls      []Found         `json:"walls"` // walls as they are
	Sound      Sound           `json:"sound"`
	Quantities []quantity.Line `json:"quantities"`
	Total      float64         `json:"total"`    // of the lines with a price, in any money
	Unpriced   int             `json:"unpriced"` // lines without
	Cautions   []Caution       `json:"cautions"`
	Rules      []Rule          `json:"rules"`
	Notes      []string        `json:"notes"` // what the answer could not take into account

	CSV string `json:"-"` // the quantities
}

// Screen is what lies around the image.
type Screen struct {
	Around *screen.Around `json:"around,omitempty"` // without a screen nothing
	Views  []screen.View  `json:"views"`
	Hard   []ball.Pad     `json:"hard"` // bare hard places that balls meet
}

// Throw is between which distances from the cloth the lens must be, m.
type Throw struct {
	Least float64 `json:"least"`
	Most  float64 `json:"most"`
	Is    float64 `json:"is"` // where it is
	Fits  bool    `json:"fits"`
}

// Projector is how a projector fares where it is planned.
type Projector struct {
	Throw        Throw      `json:"throw"`
	Angle        float64    `json:"angle"`      // full horizontal angle of the image from the lens, degrees
	EdgeOffset   float64    `json:"edgeOffset"` // from the lens axis to the nearest edge, share of the image height; negative into the image
	FarOffset    float64    `json:"farOffset"`  // the other convention: to the farthest edge
	SideShift    float64    `json:"sideShift"`  // of the image's middle from the lens, share of its width
	OffsetFits   *bool      `json:"offsetFits"` // null where the projector's offset is not known
	SideFits     bool       `json:"sideFits"`
	Luminance    float64    `json:"luminance"`    // of white, with the rated light, cd/m²
	FootLambert  float64    `json:"footLamberts"` //
	Used         [2]float64 `json:"used"`         // with what is left of the rated light in use, cd/m²
	Stray        float64    `json:"stray"`        // what the room light gives the screen, cd/m²
	Contrast     float64    `json:"contrast"`     // of white over black in that light, with the least of Used; 0: dark room
	CinemaLumens float64    `json:"cinemaLumens"` // light that gives 48 cd/m² on this image, lm
	Pixel        float64    `json:"pixel"`        // width of one, m

	Shadow    []projector.Shadow  `json:"shadow"`
	Unshaded  bool                `json:"unshaded"`  // no part of any modelled swing reaches the light, cautiously
	Clearance float64             `json:"clearance"` // from the case to the nearest of all swings, m
	Verdict   fit.Verdict         `json:"verdict"`   // of the case
	Nearest   string              `json:"nearest"`   // player, club and tee that come nearest
	Case      Box                 `json:"case"`
	Name      string              `json:"name"`   // of the hung thing that it is
	InPlan    bool                `json:"inPlan"` // it hangs in the plan, so the check counts it
	Inside    bool                `json:"inside"` // the case is inside the room and under the ceiling
	Blocked   []projector.Blocked `json:"blocked"`
	Region    []projector.Column  `json:"region"`
}

// Box is a box in the room, m.
type Box struct {
	Min [3]float64 `json:"min"`
	Max [3]float64 `json:"max"`
}

// Floor is the floor as it is planned, and stacks that would meet the mat.
type Floor struct {
	Target   float64      `json:"target"` // height of the mat's top, m
	Height   float64      `json:"height"` // of the planned layers
	Error    float64      `json:"error"`  // of those
	Wanted   float64      `json:"wanted"` // the owner's tolerance
	Standing float64      `json:"standing"`
	Headroom float64      `json:"headroom"` // from there to the flat ceiling
	Stacks   []Stack      `json:"stacks"`
	Covers   floor.Rect   `json:"covers"`
	Mats     []floor.Rect `json:"mats"`
	Panels   floor.Layout `json:"panels"`
	Sheets   int          `json:"sheets"` // of all panel layers of the plan together
	Turf     floor.Roll   `json:"turf"`
	Step     Step         `json:"step"`
}

// Stack is a stack with what it does to the room.
type Stack struct {
	floor.Stack
	Headroom  float64     `json:"headroom"`  // with every layer at its thickest, m
	Verdict   fit.Verdict `json:"verdict"`   // of the plan with that floor
	Clearance float64     `json:"clearance"` // the least of its checks, m
}

// Step is the edge of the floor.
type Step struct {
	Height float64 `json:"height"` // m
	Free   bool    `json:"free"`   // the floor ends inside the room, so people step off it
	Steep  bool    `json:"steep"`  // higher than one riser may be
	Guard  bool    `json:"guard"`  // so high that a guard is asked for
}

// The heights of the building code, m: IRC R311.7.5 and R312.1, read.
const (
	MostRiser = 0.19685 // 7 3/4 in
	GuardFrom = 0.762   // 30 in
)

// Putting is what the cups allow.
type Putting struct {
	Longest float64      `json:"longest"` // over no seam and no mat edge, m
	OneSeam float64      `json:"oneSeam"`
	Cups    []floor.Putt `json:"cups"`
	Depth   float64      `json:"depth"` // that the floor gives a cup, m
	Deep    bool         `json:"deep"`  // as deep as the Rules ask
}

// Sensor is how the case of a ball sensor fares.
type Sensor struct {
	Name      string      `json:"name"`
	Place     string      `json:"place"`
	Reads     []Read      `json:"reads"`
	Clearance float64     `json:"clearance"` // from the case to the nearest of all swings, m
	Verdict   fit.Verdict `json:"verdict"`
	InFlight  bool        `json:"inFlight"` // ordinary balls come as near as the margin
	KeepOut   []KeepOut   `json:"keepOut"`
}

// Read is whether a tee lies in what the sensor reads.
type Read struct {
	Tee   string   `json:"tee"`
	Hands []string `json:"hands"` // of those who play from it
	Reads bool     `json:"reads"`
}

// KeepOut is what is in a box that must stay free.
type KeepOut struct {
	Number int      `json:"number"` // from 1
	Holds  []string `json:"holds"`  // things of the plan
	Swept  bool     `json:"swept"`  // golfer or club come into it
}

// Found is something about a wall as it is.
type Found struct {
	What      string      `json:"what"` // "ledge", "gap", "door", "garage door", "slab"
	Name      string      `json:"name"`
	Box       *Box        `json:"box,omitempty"` // that it takes, if it is a thing
	Clearance float64     `json:"clearance"`     // to the swings, if there is a box
	Verdict   fit.Verdict `json:"verdict,omitempty"`
	Amount    float64     `json:"amount"` // m: see Line
	Bad       bool        `json:"bad"`
}

// Sound is Sabine's estimate before and after, s.
type Sound struct {
	Bands  [6]float64 `json:"bands"` // Hz
	Before [6]float64 `json:"before"`
	After  [6]float64 `json:"after"`
}
