package draw

import (
	"math"
	"math/rand/v2"
	"testing"
)

// roundTripTolerance is the rounding of float32 over a dozen metres, m.
const roundTripTolerance = 2e-4

func boxCorners(x, y, z float32) []vec {
	return []vec{{}, xyz(x, 0, 0), xyz(0, y, 0), xyz(x, y, 0), xyz(0, 0, z), xyz(x, 0, z), xyz(0, y, z), xyz(x, y, z)}
}

func TestProjectAndBack(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	for range 500 {
		o := Orbit{rng.Float64()*7 - 3.5, rng.Float64() * 1.6, 1 + 4*rng.Float64()}.Clamped()
		c := newCamera(o, xyz(3, 2, 1), boxCorners(6, 4, 2.8), 1280, 720)
		want := xyz(6*rng.Float32(), 4*rng.Float32(), 2.8*rng.Float32())
		x, y, d := c.project(want)
		if got := c.unproject(x, y, d); got.Sub(want).Norm() > roundTripTolerance {
			t.Fatalf("unproject(project(%v)) = %v at %+v (%v)", want, got, o, roundTripTolerance)
		}
	}
}

// TestFit checks that every corner lies in the picture and that the picture is
// well used: the corners span it in one direction.
func TestFit(t *testing.T) {
	tests := []struct {
		name string
		w, h float32
	}{{"desktop", 1280, 720}, {"phone", 390, 300}, {"tall", 320, 900}}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			for yaw := -3.1; yaw < 3.1; yaw += 0.31 {
				for pitch := minPitch; pitch <= maxPitch; pitch += 0.2 {
					c := newCamera(Orbit{yaw, pitch, 1}, xyz(2.9, 2.6, 1), boxCorners(6.4, 4.4, 2.9), tt.w, tt.h)
					x0, x1, y0, y1 := tt.w, float32(0), tt.h, float32(0)
					for _, p := range boxCorners(6.4, 4.4, 2.9) {
						x, y, d := c.project(p)
						if d < nearPlane {
							t.Fatalf("yaw %.2f, pitch %.2f: corner %v is behind the viewer", yaw, pitch, p)
						}
						x0, x1, y0, y1 = min(x0, x), max(x1, x), min(y0, y), max(y1, y)
					}
					if x0 < 0 || y0 < 0 || x1 > tt.w || y1 > tt.h {
						t.Errorf("yaw %.2f, pitch %.2f: corners span (%v, %v)–(%v, %v), want inside %v×%v", yaw, pitch, x0, y0, x1, y1, tt.w, tt.h)
					}
					if (x1-x0)/tt.w < 0.9 && (y1-y0)/tt.h < 0.9 {
						t.Errorf("yaw %.2f, pitch %.2f: corners take %v×%v of %v×%v, want one side filled", yaw, pitch, x1-x0, y1-y0, tt.w, tt.h)
					}
				}
			}
		})
	}
}

func TestClamped(t *testing.T) {
	nan := math.NaN()
	tests := []struct {
		name     string
		in, want Orbit
	}{
		{"inside", Orbit{1, 0.5, 2}, Orbit{1, 0.5, 2}},
		{"past the top", Orbit{0, 3, 1}, Orbit{0, maxPitch, 1}},
		{"under the floor", Orbit{0, -1, 1}, Orbit{0, minPitch, 1}},
		{"zoom", Orbit{0, 0, 99}, Orbit{0, 0, maxZoom}},
		{"not a number", Orbit{nan, nan, nan}, Orbit{0, 0, 1}},
		{"infinite", Orbit{math.Inf(1), math.Inf(1), math.Inf(-1)}, Orbit{0, maxPitch, minZoom}},
	}
	for _, tt := range tests {
		if got := tt.in.Clamped(); got != tt.want {
			t.Errorf("%s: Clamped() = %v, want %v", tt.name, got, tt.want)
		}
	}
}
