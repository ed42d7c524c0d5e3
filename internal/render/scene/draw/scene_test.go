package draw

import (
	"fmt"
	"testing"
)

// TestEveryVertexIsInThePicture draws the sample from all round and checks that
// what is drawn is finite, indexed rightly and, at zoom 1, inside the picture.
func TestEveryVertexIsInThePicture(t *testing.T) {
	sc := sampleScene()
	for _, size := range [][2]float32{{1280, 720}, {390, 300}, {300, 800}} {
		for yaw := -3.0; yaw < 3.2; yaw += 0.7 {
			for _, pitch := range []float64{minPitch, 0.2, 0.9, maxPitch} {
				v := View{Width: size[0], Height: size[1], Scale: 1, Orbit: Orbit{yaw, pitch, 1}}
				for _, frame := range []float64{0, 119.5, 240} {
					m := sc.Draw(v, frame)
					if len(m.Vertices) >= maxVertices || len(m.Indices)%3 != 0 || len(m.Indices) == 0 {
						t.Fatalf("%v, frame %v: %d vertices, %d indices", v, frame, len(m.Vertices), len(m.Indices))
					}
					for _, i := range m.Indices {
						p := m.Vertices[i]
						if !(p.X > -40 && p.X < v.Width+40 && p.Y > -40 && p.Y < v.Height+40) {
							t.Fatalf("%v, frame %v: vertex at (%v, %v), want inside the picture", v, frame, p.X, p.Y)
						}
						if !(p.A >= 0 && p.A <= 1 && p.R <= p.A+1e-6 && p.G <= p.A+1e-6 && p.B <= p.A+1e-6) {
							t.Fatalf("%v: colour %v is not premultiplied", v, p)
						}
					}
				}
			}
		}
	}
}

func TestMarksComeWithThePlayHead(t *testing.T) {
	sc := sampleScene()
	strike := hex(StrikeRGB)
	count := func() (n int) {
		for _, v := range sc.Vertices {
			if v.R == strike.R && v.G == strike.G && v.B == strike.B {
				n++
			}
		}
		return n
	}
	first := sc.show.Strikes[0].Frame
	tests := []struct {
		frame     int
		marks     bool
		tapeShown bool
	}{{0, false, false}, {first - 2, false, false}, {first, true, false}, {119, true, false}, {120, true, true}, {240, true, true}}
	for _, tt := range tests {
		sc.Draw(sampleView(), float64(tt.frame))
		p := sc.Probe()
		if (len(p.Marks) > 0) != tt.marks || (p.Tape[0] >= 0) != tt.tapeShown {
			t.Errorf("frame %d: %d marks, tape at %v, want marks %v, tape %v", tt.frame, len(p.Marks), p.Tape, tt.marks, tt.tapeShown)
		}
		if got := count(); (got > 0) != tt.marks {
			t.Errorf("frame %d: %d vertices of the strike's colour, want marks %v", tt.frame, got, tt.marks)
		}
	}
}

func TestUnderTape(t *testing.T) {
	sc := sampleScene()
	sc.Draw(sampleView(), 200)
	x0, y0, _ := sc.cam.project(fromShow(sc.show.Tightest.From))
	x1, y1, _ := sc.cam.project(fromShow(sc.show.Tightest.To))
	tests := []struct {
		name string
		p    point
		want bool
	}{
		{"the tape's middle", point{x0, y0}.lerp(point{x1, y1}, 0.5), true},
		{"the plate's middle", sc.plate[0].lerp(sc.plate[1], 0.5), true},
		{"beside the plate", point{sc.plate[0].x - 40, sc.plate[1].y + 40}, false},
		{"the picture's corner", point{2, 718}, false},
	}
	for _, tt := range tests {
		if got := sc.underTape(tt.p); got != tt.want {
			t.Errorf("%s: underTape(%v) = %v, want %v (tape %v, plate %v)", tt.name, tt.p, got, tt.want, sc.blade, sc.plate)
		}
	}
	sc.Draw(sampleView(), 0)
	if sc.underTape(point{}) || sc.underTape(tests[0].p) {
		t.Error("something is under a tape that is not shown")
	}
}

func TestSameFrameSamePicture(t *testing.T) {
	a, b := sampleScene(), sampleScene()
	for _, f := range []float64{0, 60, 120, 240, 30} { // b jumps straight to the last one
		a.Draw(sampleView(), f)
	}
	ma, mb := a.Draw(sampleView(), 77), b.Draw(sampleView(), 77)
	if got, want := fmt.Sprint(*ma), fmt.Sprint(*mb); got != want {
		t.Error("the picture of frame 77 depends on what was drawn before")
	}
}

func TestEmptyShow(t *testing.T) {
	sc := New(sampleShow())
	sc.show.Frames, sc.show.Strikes = nil, nil
	sc = New(sc.show)
	if m := sc.Draw(sampleView(), 10); len(m.Indices) == 0 {
		t.Error("a show without frames draws nothing, want the empty room")
	}
}

func TestDrawAllocatesNothing(t *testing.T) {
	sc := sampleScene()
	v := sampleView()
	play := func() {
		for frame := range 241 {
			sc.Draw(v, float64(frame))
		}
	}
	play()
	if got := testing.AllocsPerRun(3, play); got != 0 {
		t.Errorf("playing 241 frames allocates %v times, want 0", got)
	}
}

// BenchmarkPlay is the work of a frame while playing, the view at rest.
func BenchmarkPlay(b *testing.B) {
	sc := sampleScene()
	v := sampleView()
	sc.Draw(v, 240)
	b.ReportAllocs()
	frame := 0
	for b.Loop() {
		frame = (frame + 4) % 241
		sc.Draw(v, float64(frame))
	}
	b.ReportMetric(float64(len(sc.Indices)/3), "triangles")
}

// BenchmarkOrbit is the work of a frame while the view turns.
func BenchmarkOrbit(b *testing.B) {
	sc := sampleScene()
	v := sampleView()
	b.ReportAllocs()
	for b.Loop() {
		v.Orbit.Yaw += 0.01
		sc.Draw(v, 150)
	}
}
