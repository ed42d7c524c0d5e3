package draw

import (
	"fmt"
	"testing"

	"wideberth/internal/render/scene/paint"
)

// TestEveryVertexIsInThePicture draws the sample from all round and checks that
// what is drawn is finite, indexed rightly and, at zoom 1, inside the picture.
func TestEveryVertexIsInThePicture(t *testing.T) {
	p := samplePicture()
	for _, size := range [][2]float32{{1280, 720}, {390, 300}, {300, 800}} {
		for yaw := -3.0; yaw < 3.2; yaw += 0.7 {
			for _, pitch := range []float64{minPitch, 0.2, 0.9, maxPitch} {
				v := View{Width: size[0], Height: size[1], Scale: 1, Orbit: Orbit{yaw, pitch, 1}}
				for _, frame := range []float64{0, 119.5, 240} {
					m := p.Draw(v, frame)
					if len(m.Vertices) >= paint.MaxVertices || len(m.Indices)%3 != 0 || len(m.Indices) == 0 {
						t.Fatalf("%v, frame %v: %d vertices, %d indices", v, frame, len(m.Vertices), len(m.Indices))
					}
					for _, i := range m.Indices {
						q := m.Vertices[i]
						if !(q.X > -40 && q.X < v.Width+40 && q.Y > -40 && q.Y < v.Height+40) {
							t.Fatalf("%v, frame %v: vertex at (%v, %v), want inside the picture", v, frame, q.X, q.Y)
						}
						if !(q.A >= 0 && q.A <= 1 && q.R <= q.A+1e-6 && q.G <= q.A+1e-6 && q.B <= q.A+1e-6) {
							t.Fatalf("%v: colour %v is not premultiplied", v, q)
						}
					}
				}
			}
		}
	}
}

func TestMarksComeWithThePlayHead(t *testing.T) {
	p := samplePicture()
	strike := paint.ThemeOf(false).Strike
	count := func() (n int) {
		for _, v := range p.canvas.Vertices {
			if v.R == strike.R && v.G == strike.G && v.B == strike.B {
				n++
			}
		}
		return n
	}
	first := p.recording.Strikes[0].Frame
	tests := []struct {
		frame     int
		marks     bool
		tapeShown bool
	}{{0, false, false}, {first - 2, false, false}, {first, true, false}, {119, true, false}, {120, true, true}, {240, true, true}}
	for _, tt := range tests {
		p.Draw(sampleView(), float64(tt.frame))
		probe := p.Probe()
		if (len(probe.Marks) > 0) != tt.marks || (probe.Tape[0] >= 0) != tt.tapeShown {
			t.Errorf("frame %d: %d marks, tape at %v, want marks %v, tape %v", tt.frame, len(probe.Marks), probe.Tape, tt.marks, tt.tapeShown)
		}
		if got := count(); (got > 0) != tt.marks {
			t.Errorf("frame %d: %d vertices of the strike's colour, want marks %v", tt.frame, got, tt.marks)
		}
	}
}

func TestUnderTape(t *testing.T) {
	p := samplePicture()
	p.Draw(sampleView(), 200)
	x0, y0, _ := p.canvas.cam.project(fromWire(p.recording.Tightest.From))
	x1, y1, _ := p.canvas.cam.project(fromWire(p.recording.Tightest.To))
	tests := []struct {
		name string
		at   point
		want bool
	}{
		{"the tape's middle", point{x0, y0}.lerp(point{x1, y1}, 0.5), true},
		{"the plate's middle", p.tape.corner.add(p.tape.size.mul(0.5)), true},
		{"beside the plate", point{p.tape.corner.x - 40, p.tape.corner.y + p.tape.size.y + 40}, false},
		{"the picture's corner", point{2, 718}, false},
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

func TestSameFrameSamePicture(t *testing.T) {
	a, b := samplePicture(), samplePicture()
	for _, f := range []float64{0, 60, 120, 240, 30} { // b jumps straight to the last one
		a.Draw(sampleView(), f)
	}
	ma, mb := a.Draw(sampleView(), 77), b.Draw(sampleView(), 77)
	if got, want := fmt.Sprint(*ma), fmt.Sprint(*mb); got != want {
		t.Error("the picture of frame 77 depends on what was drawn before")
	}
}

func TestEmptyRecording(t *testing.T) {
	p := New(sampleRecording())
	p.recording.Frames, p.recording.Strikes = nil, nil
	p = New(p.recording)
	if m := p.Draw(sampleView(), 10); len(m.Indices) == 0 {
		t.Error("a recording without frames draws nothing, want the empty room")
	}
}

func TestDrawAllocatesNothing(t *testing.T) {
	p := samplePicture()
	v := sampleView()
	play := func() {
		for frame := range 241 {
			p.Draw(v, float64(frame))
		}
	}
	play()
	if got := testing.AllocsPerRun(3, play); got != 0 {
		t.Errorf("playing 241 frames allocates %v times, want 0", got)
	}
}

// BenchmarkPlay is the work of a frame while playing, the view at rest.
func BenchmarkPlay(b *testing.B) {
	p := samplePicture()
	v := sampleView()
	p.Draw(v, 240)
	b.ReportAllocs()
	frame := 0
	for b.Loop() {
		frame = (frame + 4) % 241
		p.Draw(v, float64(frame))
	}
	b.ReportMetric(float64(len(p.canvas.Indices)/3), "triangles")
}

// BenchmarkOrbit is the work of a frame while the view turns.
func BenchmarkOrbit(b *testing.B) {
	p := samplePicture()
	v := sampleView()
	b.ReportAllocs()
	for b.Loop() {
		v.Orbit.Yaw += 0.01
		p.Draw(v, 150)
	}
}
