// Package fit answers the question of the whole program: does every golfer who
// will play clear every surface with every club? It runs each golfer's family of
// swings through the room and reports the clearances.
package fit

import "wideberth/internal/sim/swing"

// Version is the version of the report that this package writes.
const Version = 1

// Report is the answer for a plan: one check per player, club and tee. Lengths
// are metres, times seconds, speeds metres per second, in room coordinates.
type Report struct {
	Version int     `json:"version"`
	Verdict Verdict `json:"verdict"` // the worst check's
	Checks  []Check `json:"checks"`

	// Changes are what would do for the whole room, and where that helps not everybody
	// what is left, in words. A Lab leaves them out, like a check's remedies.
	Changes []string `json:"changes,omitempty"`

	// ModelError is how far the model's paths lie from recorded ones, m; a clearance
	// smaller than that means nothing tighter. ModelErrorHow says how it was found.
	ModelError    float64 `json:"modelError"`
	ModelErrorHow string  `json:"modelErrorHow"`
}

// Check is the answer for one player with one club on one tee.
type Check struct {
	Player  string  `json:"player"`
	Club    string  `json:"club"`
	Tee     string  `json:"tee"`
	Verdict Verdict `json:"verdict"`

	// Clearance is the signed distance from the nearest surface to the nearest
	// part of golfer or club over the loosest swing of the family; negative is
	// how far past the surface it would go. It is never more than 2 mm above the
	// true minimum of the modelled swings. Typical is the same for the central
	// swing.
	Clearance float64 `json:"clearance"`
	Typical   float64 `json:"typical"`

	HitShare float64 `json:"hitShare"` // share of the sampled family that touches anything
	HitError float64 `json:"hitError"` // half of the 95 % interval of HitShare
	Tried    int     `json:"tried"`    // sampled members of the family
	Hits     int     `json:"hits"`     // of them, those that touch

	Nearest Nearest `json:"nearest"`

	// Contact is the first touch in time, where anything is struck, over the member
	// of the family that touches soonest; ContactTypical is the same for the central
	// swing, where that strikes anything.
	Contact        *Contact `json:"contact,omitempty"`
	ContactTypical *Contact `json:"contactTypical,omitempty"`

	BySurface        map[string]float64 `json:"bySurface"`
	TypicalBySurface map[string]float64 `json:"typicalBySurface"`

	// Causes says what each trait of the family costs at the tightest surface,
	// the dearest first.
	Causes []Cause `json:"causes,omitempty"`

	HeadSpeed float64  `json:"headSpeed"` // of the clubhead at impact
	Heels     float64  `json:"heels"`     // from the ball to the line of the heels
	Notes     []string `json:"notes,omitempty"`

	// Remedies are what would make the check clear, in words. A Lab leaves them out:
	// whoever prints the report adds them (words.Advise).
	Remedies []string `json:"remedies,omitempty"`
}

// Nearest is where one member of a family meets a surface: in a check, the
// meeting that sets its clearance.
type Nearest struct {
	Surface string      `json:"surface"`
	Part    string      `json:"part"`
	Phase   swing.Phase `json:"phase"`
	Time    float64     `json:"time"`
	At      [3]float64  `json:"at"`    // on the surface
	On      [3]float64  `json:"on"`    // on golfer or club
	Speed   float64     `json:"speed"` // of the part there, at the place that meets the surface

	// Variation is the member of the family that does it; the zero value is the
	// central swing.
	Variation swing.Variation `json:"variation"`
}

// Cause is one trait's part in a clearance: how much of it one standard
// deviation takes away.
type Cause struct {
	Trait string  `json:"trait"`
	Cost  float64 `json:"cost"` // m; positive takes room
}
