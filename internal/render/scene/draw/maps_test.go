package draw

import (
	"math"
	"testing"
)

// The stretches of parallel lines inside a region make up its area, holes left out, at
// any angle.
func TestSpans(t *testing.T) {
	square := func(lo, hi float32) [][2]float32 { return [][2]float32{{lo, lo}, {hi, lo}, {hi, hi}, {lo, hi}} }
	c := &canvas{}
	for _, tt := range []struct {
		name string
		a, b [][][2]float32
		area float64
	}{
		{"a square", [][][2]float32{square(0, 4)}, nil, 16},
		{"a square with a hole", [][][2]float32{square(0, 4), square(1, 3)}, nil, 12},
		{"between two contours", [][][2]float32{square(0, 4)}, [][][2]float32{square(1, 2)}, 15},
		{"away from the origin", [][][2]float32{square(-3, -1)}, nil, 4},
		{"nothing", nil, nil, 0},
	} {
		for _, angle := range []float64{0, math.Pi / 4, -math.Pi / 3} {
			const apart = 0.01
			sum := 0.0
			c.spans(angle, apart, tt.a, tt.b, func(_, from, to float32) { sum += float64(to-from) * apart })
			if math.Abs(sum-tt.area) > 0.02*max(1, tt.area) {
				t.Errorf("%s at %.1f rad: %.3f m² are hatched, want %.3f", tt.name, angle, sum, tt.area)
			}
		}
	}
}

// Maps are drawn when they are sent and gone when nothing is sent; the floor's is on the
// floor and the ceiling's under it.
func TestMaps(t *testing.T) {
	p := samplePicture()
	v := sampleView()
	count := func() int { return len(p.Draw(v, 0).Indices) }
	bare := count()
	stand, hang := sampleMaps()
	p.ShowMaps(stand, nil)
	floor := count()
	p.ShowMaps(nil, hang)
	ceiling := count()
	p.ShowMaps(stand, hang)
	both := count()
	if floor <= bare || ceiling <= bare || both-bare != floor-bare+ceiling-bare {
		t.Errorf("%d indices bare, %d with the floor's map, %d with the ceiling's, %d with both", bare, floor, ceiling, both)
	}
	if n := testing.AllocsPerRun(3, func() { p.Draw(v, 3); p.Draw(v, 5) }); n > 0 {
		t.Errorf("a picture with maps takes %v allocations, want none", n)
	}
	p.ShowMaps(nil, nil)
	if got := count(); got != bare {
		t.Errorf("%d indices with the maps away again, want %d", got, bare)
	}
}

// The post is as high as a door, on the floor, in the room, at the wall behind the
// golfer; the staff is as long as it says.
func TestYardstick(t *testing.T) {
	for hand, s := range handed(t) {
		for _, metric := range []bool{false, true} {
			words, long := "1 yd", float32(0.9144)
			if metric {
				s.Tick, words, long = 0.01, "1 m", 1
			}
			p := New(s)
			y := p.scale
			if y.stickWords != words || abs(y.stick[1].Sub(y.stick[0]).Norm()-long) > 1e-5 {
				t.Errorf("%s-hander: the staff reads %q and is %v m long, want %q and %v", hand, y.stickWords, y.stick[1].Sub(y.stick[0]).Norm(), words, long)
			}
			if high := y.post[1].Sub(y.post[0]); abs(high.Z-2.032) > 1e-5 || high.X != 0 || high.Y != 0 {
				t.Errorf("%s-hander: the post is %v, want 2.032 m upright", hand, high)
			}
			if p.room.through(y.post[1]) || abs(y.post[0].Z-p.room.floor) > 1e-5 {
				t.Errorf("%s-hander: the post stands at %v up to %v", hand, y.post[0], y.post[1])
			}
			if behind := (y.post[0].Y-p.room.size.Y/2)*(p.room.golfer.Y-p.recording.Ball[1]) > 0; !behind {
				t.Errorf("%s-hander: the post at %v is not behind the golfer at %v", hand, y.post[0], p.room.golfer)
			}
		}
	}
	low := sampleRecording()
	for i := range low.Faces {
		for j := range low.Faces[i].Polygon {
			low.Faces[i].Polygon[j][2] = min(low.Faces[i].Polygon[j][2], 2.0)
		}
	}
	low.Room[2] = 2
	if y := New(low).scale; y.post[0] != y.post[1] {
		t.Errorf("under a ceiling of 2 m there is a post up to %v", y.post[1])
	}
}
