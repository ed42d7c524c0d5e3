// Package remedy solves the smallest changes of a plan that make a check clear, and
// makes them: edits of the plan, each verified on the changed plan.
package remedy

import "wideberth/internal/sim/fit"

// The kinds of remedy.
const (
	KindTee     = "tee"     // move the tee Subject by Amount Towards a side
	KindCeiling = "ceiling" // raise the ceiling and its slopes; Value is the room's height
	KindLength  = "length"  // the shortest room for everybody on the tee Subject
	KindWidth   = "width"   // the narrowest room for everybody on the tee Subject
	KindFloor   = "floor"   // a thinner floor build-up; Value is its height
	KindClub    = "club"    // the longest club Subject; Value is its length
	KindPlayer  = "player"  // the tallest golfer in place of Subject; Value is their height
	KindRaise   = "raise"   // raise the hung thing Subject
	KindShift   = "shift"   // shift the hung thing Subject Towards a side
	KindRemove  = "remove"  // take the hung thing Subject away
)

// The sides that things are moved towards.
const (
	TowardsTarget = "target"
	TowardsBack   = "back wall"
	TowardsLeft   = "left wall"
	TowardsRight  = "right wall"
)

var sides = []struct {
	name string
	x, y float64
}{{TowardsTarget, 1, 0}, {TowardsBack, -1, 0}, {TowardsLeft, 0, 1}, {TowardsRight, 0, -1}}

// Remedy is the smallest change of one kind that makes a check clear, found by
// computation and verified on the changed plan. For a check that is clear
// already the room, the ceiling, the club and the golfer say how much less room,
// or how much more golfer, would still be.
type Remedy struct {
	Kind    string  `json:"kind"`
	Subject string  `json:"subject"`           // the name of what changes; "" for the room
	Towards string  `json:"towards,omitempty"` // a side, for what moves
	Amount  float64 `json:"amount"`            // m; negative: as much could be given up
	Value   float64 `json:"value"`             // the new value, m, where there is one
	Edits   []Edit  `json:"edits"`             // the change of the plan

	// Clearance and Verdict are the check's after the change.
	Clearance float64     `json:"clearance"`
	Verdict   fit.Verdict `json:"verdict"`
	// PlanClearance and PlanVerdict are the tightest of all checks after it, as
	// cautious as a Reading's: the change may help one golfer and hurt another.
	PlanClearance float64     `json:"planClearance"`
	PlanVerdict   fit.Verdict `json:"planVerdict"`
}
