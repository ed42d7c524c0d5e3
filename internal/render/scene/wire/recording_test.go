package wire

import (
	"bytes"
	"encoding/binary"
	"math"
	"reflect"
	"strings"
	"testing"

	"wideberth/internal/fuzzed"
)

// sample is a small recording that uses every field.
func sample() *Recording {
	return &Recording{
		Title: "Tall guest, driver, middle tee",
		Room:  Vec{6.40, 4.42, 2.87},
		Faces: []Face{
			{Name: "left wall", Kind: Wall, Polygon: []Vec{{0, 4.42, 0}, {0, 4.42, 2.1}, {6.4, 4.42, 2.1}, {6.4, 4.42, 0}}},
			{Name: "rafters, left", Kind: Slope, Polygon: []Vec{{0, 4.42, 2.1}, {0, 3.52, 2.87}, {6.4, 3.52, 2.87}}},
		},
		Phases: []string{"address", "takeaway"},
		Parts:  []Part{{Name: "head", Radius: 0.1}, {Name: "shaft", Radius: 0.006}},
		Rate:   240,
		Frames: []Frame{
			{Phase: 0, Clearance: 0.3, Club: 0.4, Typical: []Segment{{Vec{1, 2, 3}, Vec{1, 2, 2.9}}, {Vec{4, 5, 5.9}, Vec{7, 8, 8.9}}}, Pose: []Segment{{Vec{1, 2, 3}, Vec{1, 2, 3}}, {Vec{4, 5, 6}, Vec{7, 8, 9}}}},
			{Phase: 1, Clearance: -0.02, Club: -0.01, Typical: []Segment{{Vec{1, 2, 3.2}, Vec{1, 2, 3}}, {Vec{4, 5, 6.4}, Vec{7, 8, 9.1}}}, Pose: []Segment{{Vec{1, 2, 3.1}, Vec{1, 2, 3.1}}, {Vec{4, 5, 6.5}, Vec{7, 8, 9.5}}}},
		},
		Strikes: []Strike{{Frame: 1, At: Vec{3, 4.42, 1.9}, Normal: Vec{0, -1, 0}, Radius: 0.05, Surface: "left wall", Part: "clubhead"}},
		Tightest: Tightest{Time: 1.0 / 240, From: Vec{3, 4.3, 1.9}, To: Vec{3, 4.42, 1.9}, Label: "5 7/8 in · 149 mm",
			Verdict: Strikes, Surface: "left wall", Part: "clubhead", Fray: 0.05},
		Ball:   Vec{2.9, 2.21, 0.061},
		Club:   Club{"driver", 10.5},
		Margin: 0.05,
		Tick:   0.0254,
		Major:  12,
		Flight: Flight{
			Trail:   []Moment{{0.004, Vec{2.9, 2.21, 0.061}}, {0.06, Vec{5.98, 2.21, 0.8}}, {0.3, Vec{5, 2.21, 0.1}}},
			Touches: []Touch{{0.06, Vec{6, 2.21, 0.8}, Vec{-1, 0, 0}, "screen"}},
			Fan:     []Ray{{"5°", []Vec{{2.9, 2.21, 0.061}, {5.98, 2.21, 0.3}}}, {"12.5°", []Vec{{2.9, 2.21, 0.061}, {5.98, 2.21, 0.8}}}},
		},
	}
}

// crowd is the sample with so many of each thing that a reader which takes one
// of them for larger or smaller than it is finds too few bytes or too many.
func crowd() *Recording {
	s := sample()
	grow := func(n int, add func(i int)) {
		for i := range n {
			add(i)
		}
	}
	grow(200, func(i int) { s.Faces = append(s.Faces, s.Faces[i%2]) })
	grow(200, func(i int) { s.Phases = append(s.Phases, s.Phases[i%2]) })
	grow(300, func(int) { s.Frames = append(s.Frames, s.Frames[1]) })
	grow(300, func(int) { s.Strikes = append(s.Strikes, s.Strikes[0]) })
	grow(300, func(int) { s.Flight.Trail = append(s.Flight.Trail, s.Flight.Trail[2]) })
	grow(200, func(int) { s.Flight.Touches = append(s.Flight.Touches, s.Flight.Touches[0]) })
	grow(200, func(i int) { s.Flight.Fan = append(s.Flight.Fan, s.Flight.Fan[i%2]) })
	return s
}

func TestRoundTrip(t *testing.T) {
	tests := []struct {
		name      string
		recording *Recording
	}{
		{"every field", sample()},
		{"many of everything", crowd()},
		{"only a frame rate", &Recording{Rate: 240, Faces: []Face{}, Phases: []string{}, Parts: []Part{}, Frames: []Frame{}, Strikes: []Strike{},
			Flight: Flight{Trail: []Moment{}, Touches: []Touch{}, Fan: []Ray{}}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := Decode(tt.recording.Encode())
			if err != nil {
				t.Fatalf("Decode(Encode(recording)) failed: %v", err)
			}
			if !reflect.DeepEqual(got, tt.recording) {
				t.Errorf("Decode(Encode(recording)) = %+v, want %+v", got, tt.recording)
			}
		})
	}
}

func TestDecodeRefuses(t *testing.T) {
	good := sample().Encode()
	change := func(f func(b []byte) []byte) []byte { return f(bytes.Clone(good)) }
	nan := binary.LittleEndian.AppendUint32(nil, math.Float32bits(float32(math.NaN())))
	shaft := sample()
	shaft.Strikes[0].Frame = 7
	early := sample()
	early.Strikes = append(early.Strikes, early.Strikes[0])
	early.Strikes[1].Frame = 0
	noFrames := sample()
	noFrames.Frames, noFrames.Strikes[0].Frame = nil, 1
	phase := sample()
	phase.Frames[1].Phase = 2
	kind := sample()
	kind.Faces[0].Kind = NumKinds
	corners := sample()
	corners.Faces[0].Polygon = corners.Faces[0].Polygon[:2]
	verdict := sample()
	verdict.Tightest.Verdict = NumVerdicts
	far := sample()
	far.Ball[1] = 100_001
	touch := sample()
	touch.Flight.Touches = append(touch.Flight.Touches, touch.Flight.Touches[0])
	touch.Flight.Touches[1].Time = 0.01
	back := sample()
	back.Flight.Trail[2].Time = 0.01
	noRate := sample()
	noRate.Rate = 0
	tests := []struct {
		name  string
		bytes []byte
		want  string // part of the message
	}{
		{"nothing", nil, "not a recording"},
		{"other bytes", []byte("hello, world"), "not a recording"},
		{"next version", change(func(b []byte) []byte { b[3]++; return b }), "not a recording"},
		{"a huge string table", change(func(b []byte) []byte { b[4], b[5] = 0xff, 0xff; return b }), "number of strings"},
		{"one byte missing", good[:len(good)-1], "damaged"},
		{"one byte too many", append(bytes.Clone(good), 0), "end"},
		{"not a number", bytes.Replace(good, binary.LittleEndian.AppendUint32(nil, math.Float32bits(2.87)), nan, 1), "number out of range"},
		{"a strike past the last frame", shaft.Encode(), "frame of a strike"},
		{"strikes that go back in time", early.Encode(), "frame of a strike"},
		{"a strike without frames", noFrames.Encode(), "frame of a strike"},
		{"a phase without a name", phase.Encode(), "phase of a frame"},
		{"an unknown kind of face", kind.Encode(), "face"},
		{"a face with two corners", corners.Encode(), "face"},
		{"an unknown verdict", verdict.Encode(), "verdict"},
		{"a ball a hundred kilometres away", far.Encode(), "number out of range"},
		{"touches that go back in time", touch.Encode(), "time of a touch"},
		{"a name past the table", change(func(b []byte) []byte {
			at := bytes.Index(b, binary.LittleEndian.AppendUint32(nil, math.Float32bits(6.40))) - 2
			b[at] = 200
			return b
		}), "(name)"},
		{"a ball that goes back in time", back.Encode(), "time of the ball"},
		{"frames without a pose", change(func(b []byte) []byte { b[posesAt(b)] = 0; return b }), "number of poses"},
		{"frames with three poses", change(func(b []byte) []byte { b[posesAt(b)] = 3; return b }), "number of poses"},
		{"no frame rate", noRate.Encode(), "frame rate"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := Decode(tt.bytes)
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("Decode = %v, error %v, want an error with %q", got, err, tt.want)
			}
		})
	}
}

// posesAt is where the encoded sample says how many poses a frame has: behind the rate
// and the number of frames.
func posesAt(b []byte) int {
	rate := binary.LittleEndian.AppendUint32(nil, math.Float32bits(240))
	return bytes.Index(b, rate) + 8
}

func TestDecodeRefusesEveryCut(t *testing.T) {
	good := sample().Encode()
	for n := range len(good) {
		if _, err := Decode(good[:n]); err == nil {
			t.Errorf("Decode(first %d of %d bytes) succeeded, want an error", n, len(good))
		}
	}
}

func TestFrameAt(t *testing.T) {
	s := &Recording{Rate: 240, Frames: make([]Frame, 481)}
	if got, want := s.Duration(), 2.0; got != want {
		t.Errorf("Duration() = %v, want %v", got, want)
	}
	for i := range s.Frames {
		if got := s.FrameAt(float64(i) / 240); got != i {
			t.Errorf("FrameAt(%d/240) = %d, want %d", i, got, i)
		}
	}
	for _, tt := range []struct {
		t    float64
		want int
	}{{-1, 0}, {99, 480}, {1e300, 480}, {0.5 / 240, 0}, {0.998 / 240, 0}, {0.9995 / 240, 1}} {
		if got := s.FrameAt(tt.t); got != tt.want {
			t.Errorf("FrameAt(%v) = %d, want %d", tt.t, got, tt.want)
		}
	}
	if got := (&Recording{}).FrameAt(1); got != 0 {
		t.Errorf("FrameAt of an empty recording = %d, want 0", got)
	}
	if got := (&Recording{Frames: make([]Frame, 9)}).Duration(); got != 0 {
		t.Errorf("Duration without a rate = %v, want 0", got)
	}
	if got := (&Recording{Rate: 1, Frames: make([]Frame, 9)}).Duration(); got != 8 {
		t.Errorf("Duration of 9 frames at 1 a second = %v, want 8", got)
	}
}

func TestBallAt(t *testing.T) {
	s := sample()
	mid := s.Flight.Trail[0].At
	for i, v := range s.Flight.Trail[1].At {
		mid[i] = (mid[i] + v) / 2
	}
	const tol = 1e-5 // float32 at a few metres
	for _, c := range []struct {
		name string
		t    float64
		want Vec
	}{
		{"before impact", 0, s.Ball}, {"at impact", 0.004, s.Ball}, {"half way", 0.032, mid},
		{"at the screen", 0.06, s.Flight.Trail[1].At}, {"long after", 9, s.Flight.Trail[2].At},
	} {
		got := s.BallAt(c.t)
		for i := range got {
			if math.Abs(float64(got[i]-c.want[i])) > tol {
				t.Errorf("%s: BallAt(%v) = %v, want %v", c.name, c.t, got, c.want)
				break
			}
		}
	}
	if got := (&Recording{Ball: Vec{1, 2, 3}}).BallAt(5); got != (Vec{1, 2, 3}) {
		t.Errorf("BallAt of a recording without a flight = %v, want the tee", got)
	}
}

// Counts past their field are cut off, and a pose is made as long as the parts.
func TestEncodeCuts(t *testing.T) {
	s := sample()
	s.Parts = append(s.Parts, Part{Name: "clubhead"})
	s.Frames[1].Pose = append(s.Frames[1].Pose, s.Frames[1].Pose...)
	s.Title = strings.Repeat("a", 70_000)
	s.Phases = make([]string, 300)
	s.Faces[1].Polygon = make([]Vec, 300)
	s.Flight.Touches = make([]Touch, 300)
	s.Flight.Fan = make([]Ray, 300)
	s.Flight.Fan[0].Points = make([]Vec, 70_000)
	got, err := Decode(s.Encode())
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		name      string
		got, want int
	}{
		{"first pose", len(got.Frames[0].Pose), 3}, {"second pose", len(got.Frames[1].Pose), 3}, {"title", len(got.Title), 65_535},
		{"phases", len(got.Phases), 255}, {"corners", len(got.Faces[1].Polygon), 255}, {"touches", len(got.Flight.Touches), 255},
		{"rays", len(got.Flight.Fan), 255}, {"points of a ray", len(got.Flight.Fan[0].Points), 65_535},
	} {
		if tt.got != tt.want {
			t.Errorf("%s: %d, want %d", tt.name, tt.got, tt.want)
		}
	}
	if got.Frames[0].Pose[2] != (Segment{}) || got.Frames[1].Pose[2] != s.Frames[1].Pose[2] {
		t.Errorf("third parts = %v, %v, want nothing and %v", got.Frames[0].Pose[2], got.Frames[1].Pose[2], s.Frames[1].Pose[2])
	}
}

// Kinds and verdicts have names; what is built of what decides how it is drawn.
func TestKinds(t *testing.T) {
	var names []string
	for k := range NumKinds + 1 {
		name := k.String()
		if k.Shell() {
			name += " (shell)"
		}
		if k.Cloth() {
			name += " (cloth)"
		}
		names = append(names, name)
	}
	for v := range NumVerdicts + 1 {
		names = append(names, v.String())
	}
	want := "wall (shell), ceiling (shell), slope (shell), floor (shell), mat, solid, screen (cloth), return (cloth), hung, unknown, clear, tight, strikes, unknown"
	if got := strings.Join(names, ", "); got != want {
		t.Errorf("kinds and verdicts = %s, want %s", got, want)
	}
}

func TestPartIndex(t *testing.T) {
	s := sample()
	for name, want := range map[string]int{"head": 0, "shaft": 1, "tail": -1} {
		if got := s.PartIndex(name); got != want {
			t.Errorf("PartIndex(%q) = %d, want %d", name, got, want)
		}
	}
}

func FuzzDecode(engine *testing.F) {
	f := fuzzed.New(engine)
	f.Add(sample().Encode())
	f.Add((&Recording{Rate: 1}).Encode())
	f.Add([]byte("WBS\x04"))
	f.Fuzz(func(t *testing.T, b []byte) {
		s, err := Decode(b)
		if err != nil {
			return
		}
		again, err := Decode(s.Encode())
		if err != nil {
			t.Fatalf("Decode(Encode(decoded)) failed: %v", err)
		}
		if !bytes.Equal(s.Encode(), again.Encode()) {
			t.Error("Encode is not stable over Decode")
		}
	})
}
