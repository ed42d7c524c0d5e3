package draw

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"wideberth/internal/render/scene/paint"
	"wideberth/internal/render/scene/wire"
)

// TestEveryVertexIsInThePicture draws the sample from all round and checks that
// what is drawn is finite, indexed rightly and, at zoom 1, inside the picture.
func TestEveryVertexIsInThePicture(t *testing.T) {
	p := samplePicture()
	for _, size := range [][2]float32{{1280, 720}, {390, 300}, {300, 800}} {
		for yaw := -3.0; yaw < 3.2; yaw += 0.7 {
			for _, pitch := range []float64{minPitch, 0.2, 0.9, maxPitch} {
				v := View{Width: size[0], Height: size[1], Scale: 1, Stand: Stand{Orbit: Orbit{yaw, pitch, 1}}}
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
	first := float64(p.recording.Strikes[0].Frame)
	tests := []struct {
		frame     float64
		marks     bool
		tapeShown bool
	}{{0, false, false}, {first - 2, false, false}, {first - 0.6, false, false}, {first - 0.4, true, false}, {first, true, false}, {119, true, false}, {120, true, true}, {240, true, true}}
	for _, tt := range tests {
		p.Draw(sampleView(), tt.frame)
		probe := p.Probe()
		if (len(probe.Marks) > 0) != tt.marks || (probe.Tape[0] >= 0) != tt.tapeShown {
			t.Errorf("frame %v: %d marks, tape at %v, want marks %v, tape %v", tt.frame, len(probe.Marks), probe.Tape, tt.marks, tt.tapeShown)
		}
		if got := count(); (got > 0) != tt.marks {
			t.Errorf("frame %v: %d vertices of the strike's colour, want marks %v", tt.frame, got, tt.marks)
		}
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
	s := sampleRecording()
	s.Frames, s.Strikes = nil, nil
	p := New(s)
	m := p.Draw(sampleView(), 10)
	if len(m.Indices) == 0 {
		t.Error("a recording without frames draws nothing, want the empty room")
	}
	ball := paint.ThemeOf(false).Ball.Lit(0.62)
	for _, v := range m.Vertices {
		if v.R == ball.R && v.G == ball.G && v.B == ball.B {
			t.Fatal("a recording without frames has a ball")
		}
	}
	if got := p.Probe(); len(got.Marks) != 0 || got.Head != [2]float32{} {
		t.Errorf("Probe() = %+v, want nothing but a tape", got)
	}
	New(&wire.Recording{Rate: 240}).Draw(sampleView(), 3) // before the first recording is there
}

// The clubhead is found wherever it is among the parts; without one the last
// part's way is drawn.
func TestClubheadPart(t *testing.T) {
	for _, tt := range []struct {
		name string
		part int // that is named clubhead, -1: none
		want int
	}{{"the fifth", 4, 4}, {"the first", 0, 0}, {"none", -1, 18}} {
		s := sampleRecording()
		s.Parts[4].Name = "ball of lead"
		if tt.part >= 0 {
			s.Parts[tt.part].Name = "clubhead"
		}
		p := New(s)
		p.Draw(sampleView(), 60)
		x, y, _ := p.canvas.cam.project(axisOf(s.Frames[60].Pose[tt.want]).Middle())
		if got := p.Probe().Head; got != [2]float32{x, y} {
			t.Errorf("%s: clubhead at %v, want (%v, %v)", tt.name, got, x, y)
		}
	}
}

// The play-head is kept inside the recording.
func TestMomentAt(t *testing.T) {
	s := sampleRecording()
	for _, tt := range []struct {
		at   float64
		want moment
	}{
		{0, moment{}}, {-3, moment{}}, {math.NaN(), moment{}}, {60, moment{frames: 60, frame: 60, time: 0.25}}, {60.6, moment{frames: 60.6, frame: 60, time: 60.6 / 240}},
		{240, moment{frames: 240, frame: 240, time: 1}}, {999, moment{frames: 240, frame: 240, time: 1}},
	} {
		if got := momentAt(s, tt.at); got != tt.want {
			t.Errorf("momentAt(%v) = %+v, want %+v", tt.at, got, tt.want)
		}
	}
	if got := momentAt(&wire.Recording{}, 7); got != (moment{}) {
		t.Errorf("without frames: %+v, want the start", got)
	}
}

// A tee on its way takes the golfer along; what is known of the old place only goes,
// and comes back with it.
func TestShift(t *testing.T) {
	s := sampleRecording()
	p := New(s)
	v := View{Width: 800, Height: 500, Scale: 1}
	v.Stand, _ = p.Preset("behind")
	const at = 60
	still := slices.Clone(p.Draw(v, at).Vertices)
	before, _ := p.figure.clubhead()
	p.Shift(0.3, -0.2)
	p.Draw(v, at)
	after, _ := p.figure.clubhead()
	if d := after.Sub(before); math.Hypot(float64(d.X)-0.3, float64(d.Y)+0.2) > 1e-6 || d.Z != 0 {
		t.Errorf("the clubhead moved by %v, want 0.3, -0.2, 0", d)
	}
	if p.tape.drawn || len(p.marks.shown) > 0 {
		t.Error("the tape or a strike of the old place is still drawn")
	}
	p.Shift(0, 0)
	if !slices.Equal(p.Draw(v, at).Vertices, still) {
		t.Error("shifted back, the picture is another one")
	}
}

// Each text is lettered once, nothing for no name, the reading in bold.
func TestTexts(t *testing.T) {
	s := sampleRecording()
	s.Faces[0].Name = ""
	want := []Text{{"5 7/8 in · 149 mm", true, mostLine}, {"STRIKES · clubhead past left wall", false, mostLine}, {"door, 6 ft 8 in", false, mostName}, {"1 yd", false, mostName}, {"room", false, mostName}, {"beam", false, mostName}, {"screen", false, mostName}, {"5°", false, mostName}, {"30°", false, mostName}, {"19.5°", false, mostName}}
	if got := New(s).Texts(); !slices.Equal(got, want) {
		t.Errorf("Texts() = %v, want %v", got, want)
	}
	s.Tightest.Label = ""
	if got := New(s).Texts(); !slices.Equal(got, want[2:]) {
		t.Errorf("Texts() without a tape = %v, want %v", got, want[2:])
	}
}

// What the room is prepared for is drawn anew when lettering or ball change,
// and what the picture must hold is in it.
func TestPreparedAnew(t *testing.T) {
	v := sampleView()
	v.Stand = preset("face-on")
	p := samplePicture()
	with := len(p.Draw(v, 0).Indices)
	p.ShowBall(false)
	without := len(p.Draw(v, 0).Indices)
	p.ShowBall(true)
	if again := len(p.Draw(v, 0).Indices); without >= with || again != with {
		t.Errorf("%d indices with the ball, %d without, %d with it again", with, without, again)
	}
	p.SetGlyphs("room", Glyphs{})
	if got := len(p.Draw(v, 0).Indices); got >= with {
		t.Errorf("%d indices without lettering on the walls, want fewer than %d", got, with)
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
