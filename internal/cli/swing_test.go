package main

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"wideberth/internal/sim/swing"
)

// partNames is every part that the document promises, in its order.
var partNames = []string{
	"head", "neck", "trunk", "pelvis",
	"lead upper arm", "trail upper arm", "lead forearm", "trail forearm",
	"lead hand", "trail hand", "lead thigh", "trail thigh",
	"lead shank", "trail shank", "lead foot", "trail foot",
	"grip", "shaft", "clubhead",
}

func swingFrames(t *testing.T, plan string, args ...string) []frame {
	t.Helper()
	code, out, errOut := invoke(t, planText(t, plan), append(append([]string{"swing"}, args...), "-")...)
	if code != exitClear {
		t.Fatalf("swing = %d, stderr %q", code, errOut)
	}
	var doc struct {
		Frames []frame `json:"frames"`
	}
	if err := json.Unmarshal([]byte(out), &doc); err != nil {
		t.Fatal(err)
	}
	return doc.Frames
}

func (f frame) part(t *testing.T, name string) part {
	t.Helper()
	i := slices.IndexFunc(f.Parts, func(p part) bool { return p.Name == name })
	if i < 0 {
		t.Fatalf("frame %v has no %s", f.T, name)
	}
	return f.Parts[i]
}

func TestSwingFrames(t *testing.T) {
	frames := swingFrames(t, "low-ceiling.json", "-player", "Host", "-club", "driver", "-tee", "middle")
	var phases []swing.Phase
	for i, f := range frames {
		if i > 0 && i < len(frames)-1 && math.Abs(f.T-float64(i)/frameRate) > 1e-12 {
			t.Fatalf("frame %d is at %v s, want %d/%d", i, f.T, i, frameRate)
		}
		if len(f.Parts) != len(partNames) {
			t.Fatalf("frame %d has %d parts, want %d", i, len(f.Parts), len(partNames))
		}
		for j, p := range f.Parts {
			if p.Name != partNames[j] || !(p.Radius > 0) {
				t.Fatalf("frame %d, part %d = %q of radius %v, want %q of some", i, j, p.Name, p.Radius, partNames[j])
			}
		}
		if len(phases) == 0 || phases[len(phases)-1] != f.Phase {
			phases = append(phases, f.Phase)
		}
	}
	if phases[0] != "address" || phases[len(phases)-1] != "finish" {
		t.Errorf("phases = %q, want from address to finish", phases)
	}
	// The shaft is one stiff length from first to last.
	length := func(f frame) float64 {
		s := f.part(t, "shaft")
		return math.Hypot(math.Hypot(s.A[0]-s.B[0], s.A[1]-s.B[1]), s.A[2]-s.B[2])
	}
	const tenthMillimetre = 1e-4 // rounding of poses, far below what could matter
	for _, f := range frames {
		if d := math.Abs(length(f) - length(frames[0])); d > tenthMillimetre {
			t.Fatalf("at %v s the shaft is %v m longer or shorter than at address", f.T, d)
		}
	}
	// At address and somewhere in the impact the clubhead is at the ball: within
	// the size of a head, and the ball, of the tee.
	const atBall = 0.16
	nearest := func(f frame) float64 {
		c := f.part(t, "clubhead")
		return min(math.Hypot(c.A[0]-2.9, c.A[1]-2.7432), math.Hypot(c.B[0]-2.9, c.B[1]-2.7432))
	}
	if d := nearest(frames[0]); d > atBall {
		t.Errorf("at address the clubhead is %v m from the ball, want at most %v", d, atBall)
	}
	met := math.Inf(1)
	for _, f := range frames {
		if f.Phase == "impact" {
			met = min(met, nearest(f))
		}
	}
	if met > atBall {
		t.Errorf("in the impact the clubhead comes no nearer to the ball than %v m, want %v", met, atBall)
	}
}

// A left-hander stands on the other side of the ball, the right wall behind.
func TestSwingSides(t *testing.T) {
	right := swingFrames(t, "clear-room.json", "-player", "Host", "-club", "7-iron", "-tee", "middle")
	left := swingFrames(t, "clear-room.json", "-player", "Left-handed friend", "-club", "7-iron", "-tee", "middle")
	const teeY = 4.5
	if y := right[0].part(t, "pelvis").A[1]; y <= teeY {
		t.Errorf("a right-hander's pelvis is at y = %v, want beyond the ball's %v, at the left wall's side", y, teeY)
	}
	if y := left[0].part(t, "pelvis").A[1]; y >= teeY {
		t.Errorf("a left-hander's pelvis is at y = %v, want short of the ball's %v", y, teeY)
	}
}

// Another sample of the family is another swing, and the same one each time.
func TestSwingSample(t *testing.T) {
	args := []string{"-player", "Host", "-club", "driver", "-tee", "middle", "-sample"}
	third := swingFrames(t, "clear-room.json", append(args, "3")...)
	again := swingFrames(t, "clear-room.json", append(args, "3")...)
	central := swingFrames(t, "clear-room.json", append(args, "0")...)
	same := func(a, b []frame) bool {
		return slices.EqualFunc(a, b, func(f, g frame) bool { return f.Phase == g.Phase && slices.Equal(f.Parts, g.Parts) })
	}
	if !same(third, again) {
		t.Errorf("sample 3 differs from itself")
	}
	if same(third, central) {
		t.Errorf("sample 3 is the central swing")
	}
}
