package record

import (
	"math"
	"reflect"
	"testing"

	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/geom"
)

// sample is a ball at a place at a time.
func sample(t, x, z float64) ball.Sample {
	var s ball.Sample
	s.Time, s.P = t, geom.Vec{X: x, Y: 2, Z: z}
	return s
}

// TestAddFlight follows a made-up ball: to the screen, back to the floor, and
// rolling for longer than it is followed.
func TestAddFlight(t *testing.T) {
	shot := Shot{
		Legs: []ball.Path{
			{Trail: []ball.Sample{sample(0, 3, 0), sample(0.05, 4, 0.5), sample(0.1, 5, 1)},
				End: ball.Contact{Kind: ball.KindScreen, Surface: "screen", Point: [3]float64{5.1, 2, 1}, Time: 0.1, Normal: geom.Vec{X: -1}}},
			{Trail: []ball.Sample{sample(0, 5, 1), sample(0.2, 4.5, 1.2), sample(0.4, 4, 0)},
				End: ball.Contact{Kind: ball.KindFloor, Surface: "floor", Point: [3]float64{4, 2, 0}, Time: 0.4, Normal: geom.Vec{Z: 1}}},
			{Trail: []ball.Sample{sample(0, 4, 0), sample(0.9, 3, 0), sample(1.1, 2.9, 0), sample(2, 2, 0)},
				End: ball.Contact{Kind: ball.KindGolfer, Time: 0.95}},
			{Trail: []ball.Sample{sample(0, 2, 0), sample(0.02, 2, 0)}, End: ball.Contact{Kind: ball.KindNone, Time: 0.02}},
			{Trail: []ball.Sample{sample(0, 1, 0), sample(0.2, 1, 0)}, End: ball.Contact{Kind: ball.KindWall, Surface: "back wall", Time: 0.2}},
			{Trail: []ball.Sample{sample(0, 9, 0)}, End: ball.Contact{Kind: ball.KindWall, Time: 0.1}},
		},
		Fan: []ball.Ray{
			{Launch: 10, Points: [][3]float64{{3, 2, 0}, {3.39, 2, 0}, {3.41, 2, 0}, {3.6, 2, 0}, {3.7, 2, 0}}},
			{Launch: 12.46, Own: true, Points: [][3]float64{{3, 2, 0}, {4, 2, 0.2}}},
		},
	}
	var s wire.Recording
	addFlight(&s, shot, 1)
	at := func(x, z float32) wire.Vec { return wire.Vec{x, 2, z} }
	want := wire.Flight{
		Trail: []wire.Moment{
			{Time: 1, At: at(3, 0)}, {Time: 1.1, At: at(5, 1)}, // straight: the middle is left out
			{Time: 1.1, At: at(5, 1)}, {Time: 1.3, At: at(4.5, 1.2)}, {Time: 1.5, At: at(4, 0)},
			{Time: 1.5, At: at(4, 0)}, {Time: 2.4, At: at(3, 0)},
			{Time: 2.45, At: at(2, 0)}, {Time: 2.47, At: at(2, 0)},
			{Time: 2.47, At: at(1, 0)},
		},
		Touches: []wire.Touch{
			{Time: 1.1, At: wire.Vec{5.1, 2, 1}, Normal: wire.Vec{-1, 0, 0}, Surface: "screen"},
			{Time: 1.5, At: wire.Vec{4, 2, 0}, Normal: wire.Vec{0, 0, 1}, Surface: "floor"},
		},
		Fan: []wire.Ray{
			{Label: "10°", Points: []wire.Vec{{3, 2, 0}, {3.41, 2, 0}, {3.7, 2, 0}}},
			{Label: "12.5°", Points: []wire.Vec{{3, 2, 0}, {4, 2, 0.2}}},
		},
	}
	// Times are sums; compared to the nearest 0.1 ms.
	for i := range s.Flight.Trail {
		s.Flight.Trail[i].Time = float32(math.Round(float64(s.Flight.Trail[i].Time)*1e4) / 1e4)
	}
	for i := range s.Flight.Touches {
		s.Flight.Touches[i].Time = float32(math.Round(float64(s.Flight.Touches[i].Time)*1e4) / 1e4)
	}
	if !reflect.DeepEqual(s.Flight, want) {
		t.Errorf("flight =\n%+v, want\n%+v", s.Flight, want)
	}
}

// A sample is kept where the ball would be drawn farther off than it may.
func TestThin(t *testing.T) {
	tests := []struct {
		name string
		in   []ball.Sample
		want []float64 // times
	}{
		{"two", []ball.Sample{sample(0, 0, 0), sample(1, 1, 0)}, []float64{0, 1}},
		{"straight and even", []ball.Sample{sample(0, 0, 0), sample(1, 1, 0), sample(2, 2, 0), sample(3, 3, 0)}, []float64{0, 3}},
		{"nearly straight", []ball.Sample{sample(0, 0, 0), sample(1, 1, 0.0029), sample(2, 2, 0)}, []float64{0, 2}},
		{"bent", []ball.Sample{sample(0, 0, 0), sample(1, 1, 0.0031), sample(2, 2, 0)}, []float64{0, 1, 2}},
		{"straight but uneven", []ball.Sample{sample(0, 0, 0), sample(1, 0.5, 0), sample(2, 2, 0)}, []float64{0, 1, 2}},
		{"bent twice", []ball.Sample{sample(0, 0, 0), sample(1, 1, 0), sample(2, 2, 1), sample(3, 3, 2), sample(4, 4, 0)}, []float64{0, 1, 3, 4}},
	}
	for _, tt := range tests {
		var got []float64
		for _, m := range thin(tt.in) {
			got = append(got, m.Time)
		}
		if !reflect.DeepEqual(got, tt.want) {
			t.Errorf("%s: kept %v, want %v", tt.name, got, tt.want)
		}
	}
}
