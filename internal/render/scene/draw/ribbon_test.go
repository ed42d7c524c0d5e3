package draw

import (
	"math"
	"testing"

	"wideberth/internal/render/scene/wire"
)

func TestRibbonTicks(t *testing.T) {
	s := &wire.Recording{Rate: 240, Tick: 0.0254, Major: 12, Parts: []wire.Part{{Name: "shaft"}, {Name: "clubhead"}}}
	for i := range 200 {
		x := float32(i*i) * 1e-4 // a straight way, ever faster, 3.96 m long
		head := wire.Vec{x, 0, 0}
		s.Frames = append(s.Frames, wire.Frame{Pose: []wire.Segment{{A: wire.Vec{x, 0, 1}, B: head}, {A: head, B: head}}})
	}
	f := newFigure(s)
	r := newRibbon(s, &f)
	if want := int(math.Floor(199 * 199 * 1e-4 / 0.0254)); len(r.ticks) != want {
		t.Errorf("%d ticks, want %d", len(r.ticks), want)
	}
	const tolerance = 1e-4 // m, rounding of float32 sums
	for i, k := range r.ticks {
		if want := 0.0254 * float64(i+1); math.Abs(float64(k.at.X)-want) > tolerance || k.number != i+1 {
			t.Errorf("tick %d at %v m with number %d, want at %v m", i, k.at.X, k.number, want)
		}
		if k.across.Sub(xyz(0, 0, 1)).Norm() > tolerance {
			t.Errorf("tick %d points %v, want towards the grip", i, k.across)
		}
	}
}

func TestTickEvery(t *testing.T) {
	tests := []struct {
		major        int
		spacing, gap float32
		want         int
	}{{12, 10, 5, 1}, {12, 3, 5, 2}, {12, 1.7, 5, 3}, {12, 0.1, 5, 12}, {10, 1, 5, 5}, {10, 2.6, 5, 2}, {0, 1, 5, 1}}
	for _, tt := range tests {
		if got := tickEvery(tt.major, tt.spacing, tt.gap); got != tt.want {
			t.Errorf("tickEvery(%d, %v, %v) = %d, want %d", tt.major, tt.spacing, tt.gap, got, tt.want)
		}
	}
}

// The ribbon says by the shape of its ticks and by its colour where the club is clear,
// tight and through a surface.
func TestRibbonShowsTheClearance(t *testing.T) {
	for _, tt := range []struct {
		name    string
		club    float32
		verdict wire.Verdict
		strokes int // of a tick
	}{{"clear", 0.15, wire.Clear, 1}, {"tight", 0.149, wire.Tight, 1}, {"touching", 0, wire.Tight, 1}, {"through", -0.001, wire.Strikes, 2}} {
		s := sampleRecording()
		s.Margin = 0.15
		for i := range s.Frames {
			s.Frames[i].Club = tt.club
		}
		f := newFigure(s)
		r := newRibbon(s, &f)
		c := &canvas{}
		p := samplePicture()
		v := sampleView()
		v.Stand = preset("face-on")
		c.start(v, p.cameraOf(v), p.corners)
		tick := r.ticks[len(r.ticks)/2]
		if tick.verdict != tt.verdict {
			t.Errorf("%s: the tick says %v, want %v", tt.name, tick.verdict, tt.verdict)
		}
		r.drawTick(c, &tick, c.theme.Ink)
		if got := len(c.Vertices) / 4; got != tt.strokes {
			t.Errorf("%s: %d strokes of a tick, want %d", tt.name, got, tt.strokes)
		}
		way := c.cam.unproject(c.Vertices[0].X, c.Vertices[0].Y, c.cam.depth(tick.at)).Sub(tick.at)
		if slanted := abs(way.Dot(tick.along)) > 0.2*ribbonWidth; slanted != (tt.verdict != wire.Clear) {
			t.Errorf("%s: the tick begins %v beside the way, slanted: %v", tt.name, way, slanted)
		}
	}
}

// What the clubhead has left behind pales, what is to come is a thin line only.
func TestRibbonFades(t *testing.T) {
	for _, tt := range []struct{ frames, want float32 }{{0, 1}, {-3, 1}, {72, 0.65}, {144, fadedTo}, {900, fadedTo}} {
		if got := fresh(tt.frames, 240); abs(got-tt.want) > 1e-6 {
			t.Errorf("after %v frames at 240 a second %v of the ink is left, want %v", tt.frames, got, tt.want)
		}
	}
	s := frozen(t)
	p := New(s)
	v := sampleView()
	count := func(frame float64) (washes int) {
		p.Draw(v, frame)
		for i := 0; i < len(p.canvas.Vertices); i++ {
			if q := p.canvas.Vertices[i]; q.A > 0 && q.A <= p.canvas.theme.Ribbon.A+1e-6 && q.B > q.R {
				washes++
			}
		}
		return washes
	}
	if at, later := count(0), count(60); at > 8 || later < 100 {
		t.Errorf("%d corners of the ribbon at the start, %d in the downswing: want none ahead of the play-head", at, later)
	}
}
