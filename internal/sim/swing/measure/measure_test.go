package measure

import (
	"math"
	"testing"

	"wideberth/internal/sim/body"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/swing"
)

// driverOf is the central swing with a driver of somebody of whom only the height
// (m) is known.
func driverOf(t *testing.T, height float64) *swing.Swing {
	t.Helper()
	b := body.New(plan.Player{Name: "golfer", Height: height, Shoe: plan.DefaultShoe})
	s, err := swing.New(b, swing.NewClub(plan.DefaultClub(plan.KindDriver, "driver")), swing.Style{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.6f, want %.6f (± %.2g)", what, got, want, tol)
	}
}

// A quantity is looked up by its name, which therefore names one.
func TestNames(t *testing.T) {
	seen := map[string]bool{}
	for _, m := range Swing(driverOf(t, 1.75)) {
		if seen[m.Name] {
			t.Errorf("%q is measured twice", m.Name)
		}
		seen[m.Name] = true
	}
}

func TestFitPlane(t *testing.T) {
	// An arc in a plane through the origin, of any slope, a steep one as well as a flat one.
	for _, slope := range []float64{0.1, 0.8, 1.2, 1.5, math.Pi / 2} {
		for _, trace := range []float64{-0.3, 0, 0.4} {
			level := geom.Vec{X: math.Cos(trace), Y: math.Sin(trace)}
			fall := geom.Vec{X: math.Sin(trace) * math.Cos(slope), Y: -math.Cos(trace) * math.Cos(slope), Z: -math.Sin(slope)}
			normal := r3.Cross(level, fall)
			var arc, rough []geom.Vec
			for i := range 41 {
				angle := -1.2 + 0.06*float64(i)
				dir := r3.Add(r3.Scale(math.Cos(angle), fall), r3.Scale(math.Sin(angle), level))
				arc = append(arc, dir)
				rough = append(rough, r3.Add(dir, r3.Scale(0.01*math.Cos(float64(i)*math.Pi), normal)))
			}
			got, rms := fitPlane(arc)
			near(t, "slope", got, slope, 1e-7)
			near(t, "misfit, m", rms, 0, 1e-9)
			got, rms = fitPlane(rough)
			near(t, "slope of a rough arc", got, slope, 0.02)
			near(t, "misfit of a rough arc, m", rms, 0.01, 5e-4)
		}
	}
	if slope, _ := fitPlane([]geom.Vec{{}, {}, {}}); !math.IsNaN(slope) {
		t.Errorf("slope of one point = %g, want NaN", slope)
	}
}
