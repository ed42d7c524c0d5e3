package sweep

import (
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/swing"
)

// A footprint ends where the foot's capsule does, on the standing surface, and a
// left-hander's is the mirror image.
func TestFootprint(t *testing.T) {
	const tol = 1e-12 // m, rounding
	foot := geom.Capsule{A: geom.Vec{X: 0.2, Y: 0.9, Z: 0.05}, B: geom.Vec{X: 0.26, Y: 0.82, Z: 0.04}, R: 0.05}
	at := Placement{Ball: geom.Vec{X: 3, Y: 2, Z: 0.04}}
	tests := []struct {
		name      string
		at        Placement
		foot      geom.Capsule
		heel, toe geom.Vec
	}{
		{"right-hander", at, foot, geom.Vec{X: 3.17, Y: 2.94, Z: 0.04}, geom.Vec{X: 3.29, Y: 2.78, Z: 0.04}},
		{"left-hander", Placement{Ball: at.Ball, Left: true}, foot, geom.Vec{X: 3.17, Y: 1.06, Z: 0.04}, geom.Vec{X: 3.29, Y: 1.22, Z: 0.04}},
		{"on tiptoe", at, geom.Capsule{A: geom.Vec{X: 0.2, Y: 0.9, Z: 0.3}, B: geom.Vec{X: 0.2, Y: 0.9}, R: 0.05},
			geom.Vec{X: 3.2, Y: 2.9, Z: 0.04}, geom.Vec{X: 3.2, Y: 2.9, Z: 0.04}},
	}
	for _, tt := range tests {
		heel, toe := tt.at.Footprint(tt.foot)
		if geom.Norm(r3.Sub(heel, tt.heel)) > tol || geom.Norm(r3.Sub(toe, tt.toe)) > tol {
			t.Errorf("%s: Footprint = %v, %v, want %v, %v", tt.name, heel, toe, tt.heel, tt.toe)
		}
	}
}

// The mat lies about ball and feet, behind the ball as the golfer is, and not
// beyond the walls.
func TestMat(t *testing.T) {
	var address swing.Pose
	address[swing.LeadFoot] = geom.Capsule{A: geom.Vec{X: 0.2, Y: 0.9}, B: geom.Vec{X: 0.3, Y: 0.7}, R: 0.05}
	address[swing.TrailFoot] = geom.Capsule{A: geom.Vec{X: -0.4, Y: 0.9}, B: geom.Vec{X: -0.4, Y: 0.7}, R: 0.05}
	in := plan.Plan{Room: plan.Room{Length: 6, Width: 4}, Floor: plan.Floor{Mat: &plan.Mat{Thickness: 0.03, Length: 1.5, Width: 1.2}}}
	noWidth := in
	noWidth.Floor.Mat = &plan.Mat{Thickness: 0.03, Length: 1.5}
	ball := geom.Vec{X: 3, Y: 2, Z: 0.04}
	for _, tt := range []struct {
		name string
		plan plan.Plan
		at   Placement
		want geom.Box
	}{
		// Ball and feet take −0.45 to 0.35 along the room and 0 to 0.95 behind the ball.
		{"right-hander", in, Placement{Ball: ball}, geom.Box{Min: geom.Vec{X: 2.2, Y: 1.875, Z: 0.01}, Max: geom.Vec{X: 3.7, Y: 3.075, Z: 0.04}}},
		{"left-hander", in, Placement{Ball: ball, Left: true}, geom.Box{Min: geom.Vec{X: 2.2, Y: 0.925, Z: 0.01}, Max: geom.Vec{X: 3.7, Y: 2.125, Z: 0.04}}},
		{"by two walls", in, Placement{Ball: geom.Vec{X: 0.5, Y: 3.2, Z: 0.02}}, geom.Box{Min: geom.Vec{Y: 3.075}, Max: geom.Vec{X: 1.2, Y: 4, Z: 0.02}}},
		{"no mat", plan.Plan{Room: in.Room}, Placement{Ball: ball}, geom.Box{}},
		{"no width", noWidth, Placement{Ball: ball}, geom.Box{}},
	} {
		got, ok := tt.at.Mat(tt.plan, address)
		if ok != (tt.want != geom.Box{}) || geom.Norm(r3.Sub(got.Min, tt.want.Min)) > 1e-12 || geom.Norm(r3.Sub(got.Max, tt.want.Max)) > 1e-12 {
			t.Errorf("%s: Mat = %v, %v, want %v", tt.name, got, ok, tt.want)
		}
	}
}
