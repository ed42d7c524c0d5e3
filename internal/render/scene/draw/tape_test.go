package draw

import (
	"testing"
)

func TestUnderTape(t *testing.T) {
	p := samplePicture()
	p.Draw(sampleView(), 200)
	x0, y0, _ := p.canvas.cam.project(fromWire(p.recording.Tightest.From))
	x1, y1, _ := p.canvas.cam.project(fromWire(p.recording.Tightest.To))
	from, to := point{x0, y0}, point{x1, y1}
	side := to.sub(from).unit().side().mul(p.tape.width / 2)
	tests := []struct {
		name string
		at   point
		want bool
	}{
		{"the tape's middle", from.lerp(to, 0.5), true},
		{"its one edge", from.lerp(to, 0.5).add(side), true},
		{"its other edge", from.lerp(to, 0.5).sub(side), true},
		{"just beside it", from.lerp(to, 0.5).add(side.mul(2.1)), false},
		{"just beside it on the other side", from.lerp(to, 0.5).sub(side.mul(2.1)), false},
		{"its end on the club", from.lerp(to, 0.01), true},
		{"its end on the surface", from.lerp(to, 0.99), true},
		{"past the club", from.lerp(to, -0.1), false},
		{"past the surface", from.lerp(to, 1.1), false},
		{"the bare spot", p.tape.bare, true},
		{"the plate's first corner", p.tape.corner, true},
		{"the plate's last corner", p.tape.corner.add(p.tape.size), true},
		{"right of the plate", p.tape.corner.add(point{p.tape.size.x + 1, 3}), false},
		{"left of the plate", p.tape.corner.add(point{-1, 3}), false},
		{"above the plate", p.tape.corner.add(point{3, -1}), false},
		{"below the plate", p.tape.corner.add(point{3, p.tape.size.y + 1}), false},
		{"the plate's middle", p.tape.corner.add(p.tape.size.mul(0.5)), true},
		{"beside the plate", point{p.tape.corner.x - 40, p.tape.corner.y + p.tape.size.y + 40}, false},
		{"the picture's corner", point{2, 718}, false},
	}
	if off := p.tape.bare.sub(from.lerp(to, 0.5)).norm(); off > p.tape.width/2 || off < p.tape.width/8 {
		t.Errorf("the bare spot is %v pixels from the blade's middle, want between its ticks and its edge (width %v)", off, p.tape.width)
	}
	for _, tt := range tests {
		if got := p.tape.covers(tt.at); got != tt.want {
			t.Errorf("%s: covers(%v) = %v, want %v (tape %v, plate %v)", tt.name, tt.at, got, tt.want, p.tape.blade, p.tape.plate)
		}
	}
	p.Draw(sampleView(), 0)
	if p.tape.covers(point{}) || p.tape.covers(tests[0].at) {
		t.Error("something is under a tape that is not shown")
	}
}

// Over the model's error the end of the tape at the club is threads, the rest a
// whole blade with a bare spot; a tape shorter than that is threads only.
func TestFrayedEnd(t *testing.T) {
	for _, tt := range []struct {
		name  string
		fray  float32
		whole float32 // share of the tape that is not frayed
	}{{"not at all", 0, 1}, {"a third", 0.05, 2.0 / 3}, {"more than there is", 0.2, 0}, {"as much as there is", 0.15001, 0}} {
		s := sampleRecording() // its tape is 0.15 m long
		s.Tightest.Fray = tt.fray
		p := New(s)
		p.Draw(sampleView(), 200)
		from, to := p.tape.ends[0], p.tape.ends[1]
		if got := to.sub(p.tape.whole).norm() / to.sub(from).norm(); abs(got-tt.whole) > 1e-3 {
			t.Errorf("%s: %.3f of the tape is whole, want %.3f", tt.name, got, tt.whole)
		}
		if bare := p.Probe().Tape; (bare[0] >= 0) != (tt.whole > 0) {
			t.Errorf("%s: a bare spot of the blade at %v", tt.name, bare)
		}
	}
}
