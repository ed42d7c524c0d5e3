package render

import (
	"math"

	"wideberth/internal/render/show"
)

// sampleShow is a room of 6 × 4 × 2.8 m with a beam, and a stick golfer whose
// club goes once round in a tilted circle and through the left wall.
func sampleShow() *show.Show {
	s := &show.Show{
		Title: "Guest, driver, middle tee", Room: show.Vec{6, 4, 2.8}, Rate: 240, Tick: 0.0254, Major: 12,
		Phases: []string{"address", "downswing", "impact", "finish"},
		Parts: []show.Part{
			{Name: "head", Radius: 0.11}, {Name: "trunk", Radius: 0.16}, {Name: "lead thigh", Radius: 0.08},
			{Name: "shaft", Radius: 0.006}, {Name: "clubhead", Radius: 0.05},
		},
		Ball: show.Vec{3, 1.6, ballRadius},
		Feet: []show.Segment{{A: show.Vec{3.2, 2.5, 0.04}, B: show.Vec{3.2, 2.25, 0.04}}, {A: show.Vec{2.8, 2.5, 0.04}, B: show.Vec{2.8, 2.25, 0.04}}},
	}
	s.Faces = append(boxFaces("room", show.Wall, show.Vec{0, 0, 0}, show.Vec{6, 4, 2.8}, true),
		boxFaces("beam", show.Solid, show.Vec{3.4, 0, 2.5}, show.Vec{3.6, 4, 2.8}, false)...)
	s.Faces = append(s.Faces, show.Face{Name: "screen", Kind: show.Screen, Polygon: []show.Vec{{5.5, 0.5, 0}, {5.5, 0.5, 2}, {5.5, 3.5, 2}, {5.5, 3.5, 0}}})
	const frames = 241
	for i := range frames {
		u := 2 * math.Pi * float64(i) / (frames - 1)
		hands := show.Vec{3, 2.2, 1.2}
		head := show.Vec{3 + 1.6*float32(math.Sin(u)), 2.9 - 1.2*float32(math.Cos(u)), 1.3 - 1.2*float32(math.Cos(u))}
		f := show.Frame{Phase: uint8(4 * i / (frames + 1)), Clearance: 4 - head[1] - 0.05}
		f.Pose = []show.Segment{
			{A: show.Vec{3, 2.4, 1.75}, B: show.Vec{3, 2.4, 1.75}}, {A: show.Vec{3, 2.5, 1}, B: show.Vec{3, 2.4, 1.45}},
			{A: show.Vec{3.1, 2.5, 0.9}, B: show.Vec{3.2, 2.4, 0.5}}, {A: hands, B: head}, {A: head, B: head},
		}
		s.Frames = append(s.Frames, f)
		if f.Clearance < 0 {
			s.Strikes = append(s.Strikes, show.Strike{Frame: i, At: show.Vec{head[0], 4, head[2]}, Normal: show.Vec{0, -1, 0}, Radius: 0.05, Surface: "left wall", Part: "clubhead"})
		}
	}
	s.Tape = show.Tape{Time: 0.5, From: show.Vec{3, 4.15, 2.5}, To: show.Vec{3, 4, 2.5}, Label: "5 7/8 in · 149 mm", Verdict: show.Strikes, Surface: "left wall", Part: "clubhead"}
	// The clubhead is at the ball half way; there the third phase begins.
	s.Flight = show.Flight{
		Trail:   []show.Moment{{Time: 0.5, At: s.Ball}, {Time: 0.55, At: show.Vec{5.47, 1.6, 0.9}}, {Time: 0.8, At: show.Vec{4.4, 1.6, ballRadius}}},
		Touches: []show.Touch{{Time: 0.55, At: show.Vec{5.5, 1.6, 0.9}, Normal: show.Vec{-1, 0, 0}, Surface: "screen"}, {Time: 0.8, At: show.Vec{4.4, 1.6, 0}, Normal: show.Vec{0, 0, 1}, Surface: "floor"}},
		Fan:     []show.Ray{{Label: "5°", Points: []show.Vec{s.Ball, {5.47, 1.6, 0.24}}}, {Label: "30°", Points: []show.Vec{s.Ball, {5.47, 1.6, 1.45}}}, {Label: "19.5°", Points: []show.Vec{s.Ball, {5.47, 1.6, 0.9}}}},
	}
	return s
}

// boxFaces are the six faces of a box, turned inwards for a room.
func boxFaces(name string, kind show.Kind, lo, hi show.Vec, inwards bool) []show.Face {
	p := [2]show.Vec{lo, hi}
	at := func(i, j, k int) show.Vec { return show.Vec{p[i][0], p[j][1], p[k][2]} }
	var faces []show.Face
	for _, q := range [][]show.Vec{
		{at(0, 0, 0), at(0, 0, 1), at(0, 1, 1), at(0, 1, 0)}, {at(1, 0, 0), at(1, 1, 0), at(1, 1, 1), at(1, 0, 1)},
		{at(0, 0, 0), at(1, 0, 0), at(1, 0, 1), at(0, 0, 1)}, {at(0, 1, 0), at(0, 1, 1), at(1, 1, 1), at(1, 1, 0)},
		{at(0, 0, 0), at(0, 1, 0), at(1, 1, 0), at(1, 0, 0)}, {at(0, 0, 1), at(1, 0, 1), at(1, 1, 1), at(0, 1, 1)},
	} {
		if inwards {
			q = []show.Vec{q[3], q[2], q[1], q[0]}
		}
		faces = append(faces, show.Face{Name: name, Kind: kind, Polygon: q})
	}
	return faces
}

// sampleScene is the sample with lettering of a plausible size.
func sampleScene() *Scene {
	sc := New(sampleShow())
	for _, t := range sc.Texts() {
		sc.SetGlyphs(t.String, Glyphs{U: 10, V: 0, Width: 14 * float32(len(t.String)), Height: 30})
	}
	return sc
}

// sampleView is a picture of the usual size from behind.
func sampleView() View {
	o, _ := Preset("behind", false)
	return View{Width: 1280, Height: 720, Scale: 1, Orbit: o}
}
