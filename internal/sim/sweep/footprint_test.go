package sweep

import (
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/r3"
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
