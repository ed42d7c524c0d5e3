package draw

import (
	"testing"

	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/rules"
)

// The ball leaves at impact, is where the recording says at every moment, and marks
// what it meets; switched off, nothing of it is drawn.
func TestFlight(t *testing.T) {
	p := samplePicture()
	draw := func(time float64) (vertices int) {
		p.Draw(sampleView(), time*240)
		return len(p.canvas.Vertices)
	}
	for _, tt := range []struct {
		name string
		time float64
		want wire.Vec
	}{
		{"on its tee", 0.2, p.recording.Ball}, {"half way to the screen", 0.525, wire.Vec{4.235, 1.6, (0.9 + rules.BallRadius) / 2}},
		{"at the screen", 0.55, wire.Vec{5.47, 1.6, 0.9}}, {"at rest", 1, wire.Vec{4.4, 1.6, rules.BallRadius}},
	} {
		draw(tt.time)
		const tol = 1e-4 // float32
		if d := p.ball.at.Sub(fromWire(tt.want)).Norm(); d > tol {
			t.Errorf("%s: the ball is at %v, want %v", tt.name, p.ball.at, tt.want)
		}
	}

	before, touched, back := draw(0.549), draw(0.551), draw(0.79)
	if touched-before < ringSides*4 {
		t.Errorf("%d vertices before the screen is met, %d after: no ring", before, touched)
	}
	if back <= touched {
		t.Errorf("%d vertices on the way back, %d before: no trail", back, touched)
	}
	faceOn := sampleView()
	faceOn.Stand = preset("face-on")
	for _, tt := range []struct {
		name string
		view View
		want bool
	}{{"face-on", faceOn, true}, {"from behind, where all rays are one line", sampleView(), false}} {
		p.ball.angles = p.ball.angles[:0]
		p.Draw(tt.view, 60)
		if got := len(p.ball.angles); (got > 0) != tt.want || (got > 0 && p.ball.angles[0].text != p.canvas.texts["19.5°"]) {
			t.Errorf("%s: %d angles are lettered, want any: %v, the ball's own first", tt.name, got, tt.want)
		}
	}

	p.ShowBall(false)
	off := draw(0.79)
	bare := sampleRecording()
	bare.Flight = wire.Flight{}
	p = New(bare)
	for _, text := range p.Texts() {
		p.SetGlyphs(text.String, Glyphs{U: 10, V: 0, Width: 14 * float32(len(text.String)), Height: 30})
	}
	if without := draw(0.79); off != without {
		t.Errorf("switched off, %d vertices are drawn, want the %d of a recording without a flight", off, without)
	}
	if off >= back {
		t.Errorf("switched off, %d vertices are drawn, with the ball %d: want fewer", off, back)
	}
}

// The flight costs no allocation once its buffers have grown.
func TestFlightAllocatesNothing(t *testing.T) {
	p := samplePicture()
	v := sampleView()
	p.Draw(v, 200)
	if n := testing.AllocsPerRun(20, func() { p.Draw(v, 199); p.Draw(v, 120) }); n > 0 {
		t.Errorf("a picture with the flight takes %v allocations, want none", n)
	}
}
