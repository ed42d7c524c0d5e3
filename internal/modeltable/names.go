package modeltable

import (
	"fmt"

	"wideberth/internal/sim/swing/published"
	"wideberth/internal/units"
)

// kind is one group of the table.
type kind struct {
	name, about string
	quantities  [][2]string // name in measure.Swing, name for people
}

const ofHeight = "Places are parts of the golfer's height, from the floor midway between the ankles: towards the target, towards the ball and up count as more, the other way as less than nothing."

// byRecorded says who is compared with the recorded clubs.
var byRecorded = "of two skilled men and of a modelled golfer of " + units.Label(published.RecordedHeight, units.Metric) + " (" + units.Label(published.RecordedHeight, units.Imperial) + ")."

// Quantities that the pictures speak of.
const (
	behindThrough = "face: farthest behind in the follow-through"
	trailBack     = "face: farthest from the target in the backswing"
	highThrough   = "face: highest in the follow-through"
)

var kinds = []kind{
	{"Standing to the ball", "The club is soled behind the ball. Angles of the trunk are from vertical, along the line from the middle of the hips to the middle of the shoulders.", [][2]string{
		{"address: trunk lean", "Trunk, lean towards the ball"},
		{"address: trunk side lean", "Trunk, lean away from the target"},
		{"address: knee flexion", "Knees, bend"},
		{"address: shaft to the ground", "Shaft, angle to the ground"},
		{"address: arms forward of vertical", "Arms, forward of hanging"},
		{"address: shaft to forearm", "Shaft to forearm, seen from behind"},
		{"address: butt height", "Grip end, height"},
		{"address: butt reach", "Grip end, distance from the clubhead"},
		{"address: ball to toes", "Ball to toes"},
		{"address: stance width", "Width of the stance"},
		{"address: mid-shoulder z", "Middle of the shoulders, height"},
		{"address: hub radius", "Middle of the shoulders to the hands"},
	}},
	{"At the top of the backswing", "Turns are in plan, against the stance at address. " + ofHeight, [][2]string{
		{"top: shoulder turn", "Shoulders, turn"},
		{"top: pelvis turn", "Hips, turn"},
		{"top: separation", "Shoulders' turn less the hips'"},
		{"top: lead arm above level", "Lead arm, above level"},
		{"top: wrist hinge", "Wrists, lead arm to shaft"},
		{"top: shaft above level", "Shaft, above level"},
		{"top: trunk lean", "Trunk, lean towards the ball"},
		{"top: grip above mid-shoulder", "Hands, above the middle of the shoulders"},
		{"top: grip x", "Hands, along the target line"},
		{"top: grip y", "Hands, towards the ball"},
		{"top: grip z", "Hands, height"},
		{"top: mid-shoulder z", "Middle of the shoulders, height"},
		{"top: hub radius", "Middle of the shoulders to the hands"},
	}},
	{"Planes of the swing", "The slope to the floor of the plane that fits a path best.", [][2]string{
		{"clubhead plane slope", "Clubhead, round impact"},
		{"lead-arm plane, start of downswing slope", "Lead arm, start of the downswing"},
		{"lead-arm plane, impact slope", "Lead arm, impact"},
		{"grip plane, backswing slope", "Hands, backswing"},
		{"grip plane, downswing slope", "Hands, downswing"},
		{"grip plane, late downswing slope", "Hands, late in the downswing"},
		{"grip plane, after impact slope", "Hands, after impact"},
	}},
	{"At impact", "Open is turned towards the target, against the stance at address. " + ofHeight, [][2]string{
		{"impact: shoulders open", "Shoulders, open"},
		{"impact: pelvis open", "Hips, open"},
		{"impact: wrist hinge", "Wrists, lead arm to shaft"},
		{"impact: shaft lean", "Shaft, lean to the target"},
		{"impact: trunk lean", "Trunk, lean towards the ball"},
		{"impact: grip above address", "Hands, higher than at address"},
		{"impact: grip farther out than address", "Hands, farther out than at address"},
		{"impact: mid-shoulder z", "Middle of the shoulders, height"},
		{"impact: hub radius", "Middle of the shoulders to the hands"},
	}},
	{"At the finish", "Open is turned towards the target, against the stance at address. " + ofHeight, [][2]string{
		{"finish: shoulders open", "Shoulders, open"},
		{"finish: pelvis open", "Hips, open"},
		{"finish: trunk lean", "Trunk, lean towards the ball"},
		{"finish: lead arm above level", "Lead arm, above level"},
		{"finish: grip z", "Hands, height"},
		{"finish: mid-shoulder z", "Middle of the shoulders, height"},
		{"finish: hub radius", "Middle of the shoulders to the hands"},
	}},
	{"The club, recorded and modelled", "Read off the path of the club alone, " + byRecorded + " Heights are above the surface stood on; behind is from the ball to the golfer's back, and the hands are the point of the shaft between both.", [][2]string{
		{"address: hands from the ball", "Hands at address, from the ball"},
		{"address: hands height", "Hands at address, height"},
		{"address: hands to face slope", "Hands to clubface at address, to the ground"},
		{"top: hands from the ball", "Hands at the top, from the ball"},
		{"top: hands height", "Hands at the top, height"},
		{"impact: hands from the ball", "Hands at impact, from the ball"},
		{"impact: hands height", "Hands at impact, height"},
		{"impact: hands to face slope", "Hands to clubface at impact, to the ground"},
		{"clubhead plane, late downswing slope", "Clubhead's plane, last 0.12 s before impact"},
		{"clubhead plane, after impact slope", "Clubhead's plane, first 0.10 s after impact"},
		{"face: farthest behind in the backswing", "Clubface, farthest behind in the backswing"},
		{"face: farthest behind in the downswing", "Clubface, farthest behind in the downswing"},
		{behindThrough, "Clubface, farthest behind in the follow-through"},
		{"face: farthest behind, time after impact", "The same, time after impact"},
		{"face: farthest behind, speed", "The same, speed there"},
		{trailBack, "Clubface, farthest from the target in the backswing"},
		{"face: farthest from the target in the follow-through", "Clubface, farthest from the target in the follow-through"},
		{"face: farthest to the target", "Clubface, farthest to the target"},
		{"face: highest in the backswing", "Clubface, highest in the backswing"},
		{highThrough, "Clubface, highest in the follow-through"},
		{"face: speed 0.05 s after impact", "Clubface, 0.05 s after impact"},
		{"face: speed 0.10 s after impact", "Clubface, 0.10 s after impact"},
		{"face: speed 0.15 s after impact", "Clubface, 0.15 s after impact"},
		{"face: speed 0.20 s after impact", "Clubface, 0.20 s after impact"},
		{"face: speed 0.30 s after impact", "Clubface, 0.30 s after impact"},
		{"hands: highest in the follow-through", "Hands, highest in the follow-through"},
		{"hands: farthest behind in the follow-through", "Hands, farthest behind in the follow-through"},
		{"hands: to the target, 0.6 s after impact", "Hands 0.6 s after impact, to the target"},
		{"hands: from the ball, 0.6 s after impact", "Hands 0.6 s after impact, from the ball"},
		{"hands: height 0.6 s after impact", "Hands 0.6 s after impact, height"},
	}},
	{"How far hands, elbows and head go", "This is what decides about walls and ceilings. " + ofHeight, [][2]string{
		{"grip: most to the trail side", "Hands, farthest from the target"},
		{"grip: most to the target", "Hands, farthest to the target"},
		{"grip: most behind", "Hands, farthest behind"},
		{"grip: most to the ball", "Hands, farthest to the ball"},
		{"grip: most behind in the backswing", "Hands, farthest behind in the backswing"},
		{"grip: highest in the backswing", "Hands, highest in the backswing"},
		{"grip: highest", "Hands, highest"},
		{"lead elbow: most behind", "Lead elbow, farthest behind"},
		{"trail elbow: most behind", "Trail elbow, farthest behind"},
		{"lead elbow: highest", "Lead elbow, highest"},
		{"trail elbow: highest", "Trail elbow, highest"},
		{"head top: most to the trail side", "Head, farthest from the target"},
		{"head top: most to the target", "Head, farthest to the target"},
		{"head top: highest", "Head, highest"},
	}},
	{"Time and speed", "All swings of a family share the central swing's timing: where a swing goes does not depend on how fast it goes there.", [][2]string{
		{"time: backswing", "Backswing, takeaway to top"},
		{"time: downswing", "Downswing, top to impact"},
		{"time: backswing over downswing", "Backswing against downswing"},
		{"time: through", "Impact to finish"},
		{"speed: clubhead, impact", "Clubhead at impact"},
		{"hands: speed at impact", "Hands at impact"},
		{"speed: shaft turning, peak", "Shaft's turning, fastest"},
	}},
}

// nameOf returns the group of a quantity, as an index of kinds, and its name for
// people.
func nameOf(quantity string) (int, string, error) {
	for i, k := range kinds {
		for _, q := range k.quantities {
			if q[0] == quantity {
				return i, q[1], nil
			}
		}
	}
	return 0, "", fmt.Errorf("the figure %q has no name for people: add it to internal/modeltable/names.go", quantity)
}
