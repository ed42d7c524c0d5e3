package draw

import (
	"math"

	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/rules"
)

// sampleRecording is a room of 6 × 4 × 2.8 m with a beam, and a stick golfer whose
// club goes once round in a tilted circle and through the left wall.
func sampleRecording() *wire.Recording {
	s := &wire.Recording{
		Title: "Guest, driver, middle tee", Room: wire.Vec{6, 4, 2.8}, Rate: 240, Tick: 0.0254, Major: 12,
		Phases: []string{"address", "downswing", "impact", "finish"},
		Parts: []wire.Part{
			{Name: "head", Radius: 0.11}, {Name: "trunk", Radius: 0.16}, {Name: "lead thigh", Radius: 0.08},
			{Name: "shaft", Radius: 0.006}, {Name: "clubhead", Radius: 0.05},
			{Name: "lead foot", Radius: 0.04}, {Name: "trail foot", Radius: 0.04},
			{Name: "neck", Radius: 0.07}, {Name: "pelvis", Radius: 0.14}, {Name: "trail thigh", Radius: 0.08},
			{Name: "lead shank", Radius: 0.06}, {Name: "trail shank", Radius: 0.06},
			{Name: "lead upper arm", Radius: 0.06}, {Name: "trail upper arm", Radius: 0.06},
			{Name: "lead forearm", Radius: 0.05}, {Name: "trail forearm", Radius: 0.05},
			{Name: "lead hand", Radius: 0.05}, {Name: "trail hand", Radius: 0.05}, {Name: "grip", Radius: 0.0135},
		},
		Ball: wire.Vec{3, 1.6, rules.BallRadius},
	}
	s.Faces = append(boxFaces("room", wire.Wall, wire.Vec{0, 0, 0}, wire.Vec{6, 4, 2.8}, true),
		boxFaces("beam", wire.Solid, wire.Vec{3.4, 0, 2.5}, wire.Vec{3.6, 4, 2.8}, false)...)
	s.Faces = append(s.Faces, wire.Face{Name: "screen", Kind: wire.Screen, Polygon: []wire.Vec{{5.5, 0.5, 0}, {5.5, 0.5, 2}, {5.5, 3.5, 2}, {5.5, 3.5, 0}}})
	const frames = 241
	for i := range frames {
		u := 2 * math.Pi * float64(i) / (frames - 1)
		hands := wire.Vec{3, 2.2, 1.2}
		head := wire.Vec{3 + 1.6*float32(math.Sin(u)), 2.9 - 1.2*float32(math.Cos(u)), 1.3 - 1.2*float32(math.Cos(u))}
		f := wire.Frame{Phase: uint8(4 * i / (frames + 1)), Clearance: 4 - head[1] - 0.05}
		f.Pose = []wire.Segment{
			{A: wire.Vec{3, 2.4, 1.75}, B: wire.Vec{3, 2.4, 1.75}}, {A: wire.Vec{3, 2.5, 1}, B: wire.Vec{3, 2.4, 1.45}},
			{A: wire.Vec{3.1, 2.5, 0.9}, B: wire.Vec{3.2, 2.4, 0.5}}, {A: hands, B: head}, {A: head, B: head},
			{A: wire.Vec{3.2, 2.5, 0.05}, B: wire.Vec{3.2, 2.25, 0.05}}, {A: wire.Vec{2.8, 2.5, 0.05}, B: wire.Vec{2.8, 2.25, 0.05}},
			{A: wire.Vec{3, 2.4, 1.5}, B: wire.Vec{3, 2.4, 1.65}}, {A: wire.Vec{2.9, 2.5, 0.95}, B: wire.Vec{3.1, 2.5, 0.95}},
			{A: wire.Vec{2.9, 2.5, 0.9}, B: wire.Vec{2.8, 2.4, 0.5}}, {A: wire.Vec{3.2, 2.4, 0.5}, B: wire.Vec{3.2, 2.5, 0.1}}, {A: wire.Vec{2.8, 2.4, 0.5}, B: wire.Vec{2.8, 2.5, 0.1}},
			{A: wire.Vec{3.2, 2.4, 1.5}, B: wire.Vec{3.15, 2.3, 1.35}}, {A: wire.Vec{2.8, 2.4, 1.5}, B: wire.Vec{2.85, 2.3, 1.35}},
			{A: wire.Vec{3.15, 2.3, 1.35}, B: wire.Vec{3.05, 2.22, 1.25}}, {A: wire.Vec{2.85, 2.3, 1.35}, B: wire.Vec{2.95, 2.22, 1.25}},
			{A: wire.Vec{3.05, 2.22, 1.25}, B: hands}, {A: wire.Vec{2.95, 2.22, 1.25}, B: hands}, {A: hands, B: wire.Vec{hands[0], hands[1], hands[2] - 0.1}},
		}
		s.Frames = append(s.Frames, f)
		if f.Clearance < 0 {
			s.Strikes = append(s.Strikes, wire.Strike{Frame: i, At: wire.Vec{head[0], 4, head[2]}, Normal: wire.Vec{0, -1, 0}, Radius: 0.05, Surface: "left wall", Part: "clubhead"})
		}
	}
	s.Tightest = wire.Tightest{Time: 0.5, From: wire.Vec{3, 4.15, 2.5}, To: wire.Vec{3, 4, 2.5}, Label: "5 7/8 in · 149 mm", Verdict: wire.Strikes, Surface: "left wall", Part: "clubhead"}
	// The clubhead is at the ball half way; there the third phase begins.
	s.Flight = wire.Flight{
		Trail:   []wire.Moment{{Time: 0.5, At: s.Ball}, {Time: 0.55, At: wire.Vec{5.47, 1.6, 0.9}}, {Time: 0.8, At: wire.Vec{4.4, 1.6, rules.BallRadius}}},
		Touches: []wire.Touch{{Time: 0.55, At: wire.Vec{5.5, 1.6, 0.9}, Normal: wire.Vec{-1, 0, 0}, Surface: "screen"}, {Time: 0.8, At: wire.Vec{4.4, 1.6, 0}, Normal: wire.Vec{0, 0, 1}, Surface: "floor"}},
		Fan:     []wire.Ray{{Label: "5°", Points: []wire.Vec{s.Ball, {5.47, 1.6, 0.24}}}, {Label: "30°", Points: []wire.Vec{s.Ball, {5.47, 1.6, 1.45}}}, {Label: "19.5°", Points: []wire.Vec{s.Ball, {5.47, 1.6, 0.9}}}},
	}
	return s
}

// boxFaces are the six faces of a box, turned inwards for a room.
func boxFaces(name string, kind wire.Kind, lo, hi wire.Vec, inwards bool) []wire.Face {
	p := [2]wire.Vec{lo, hi}
	at := func(i, j, k int) wire.Vec { return wire.Vec{p[i][0], p[j][1], p[k][2]} }
	var faces []wire.Face
	for _, q := range [][]wire.Vec{
		{at(0, 0, 0), at(0, 0, 1), at(0, 1, 1), at(0, 1, 0)}, {at(1, 0, 0), at(1, 1, 0), at(1, 1, 1), at(1, 0, 1)},
		{at(0, 0, 0), at(1, 0, 0), at(1, 0, 1), at(0, 0, 1)}, {at(0, 1, 0), at(0, 1, 1), at(1, 1, 1), at(1, 1, 0)},
		{at(0, 0, 0), at(0, 1, 0), at(1, 1, 0), at(1, 0, 0)}, {at(0, 0, 1), at(1, 0, 1), at(1, 1, 1), at(0, 1, 1)},
	} {
		if inwards {
			q = []wire.Vec{q[3], q[2], q[1], q[0]}
		}
		faces = append(faces, wire.Face{Name: name, Kind: kind, Polygon: q})
	}
	return faces
}

// samplePicture is the sample with lettering of a plausible size.
func samplePicture() *Picture {
	p := New(sampleRecording())
	for _, t := range p.Texts() {
		p.SetGlyphs(t.String, Glyphs{U: 10, V: 0, Width: 14 * float32(len(t.String)), Height: 30})
	}
	return p
}

// sampleView is a picture of the usual size from behind.
func sampleView() View {
	return View{Width: 1280, Height: 720, Scale: 1, Stand: preset("behind")}
}

// preset is a named view of the sample.
func preset(name string) Stand {
	s, _ := New(sampleRecording()).Preset(name)
	return s
}

// sampleMaps are maps for a room of at least 6 by 4 m, as the solver sends them.
func sampleMaps() (stand, hang []MapShape) {
	around := func(x, y, a, b float32) [][2]float32 {
		var ring [][2]float32
		for i := range 40 {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / 40)
			ring = append(ring, [2]float32{x + a*float32(cos), y + b*float32(sin)})
		}
		return ring
	}
	stand = []MapShape{
		{"strike", [][][2]float32{around(3, 1.7, 1.7, 0.9)}}, {"margin", [][][2]float32{around(3, 1.7, 1.4, 0.6)}},
		{"comfort", [][][2]float32{around(3, 1.7, 1, 0.4)}}, {"barred", [][][2]float32{{{5, 0}, {6, 0}, {6, 4}, {5, 4}}}},
	}
	hang = []MapShape{
		{"level", [][][2]float32{around(2.8, 2.4, 1.6, 1.2)}}, {"swept", [][][2]float32{around(2.8, 2.4, 1.9, 1.6)}},
		{"closed", [][][2]float32{around(2.8, 2.4, 1.2, 0.9), around(2.8, 2.4, 0.3, 0.2)}},
	}
	return stand, hang
}
