package draw

import (
	"testing"

	"wideberth/internal/render/scene/wire"
)

// With the ghost the typical swing is solid and the deciding one a sheet behind it;
// without it, or without a typical swing, the deciding one is solid.
func TestGhost(t *testing.T) {
	s := frozen(t)
	typicalBehind(s)
	with := New(s)
	plain := New(frozen(t))
	v := sampleView()
	frame := phaseStart(s, "release")
	solidHead := func(p *Picture) vec {
		g := &p.figure.deciding
		if p.figure.besideTypical(p.recording) {
			g = &p.figure.typical
		}
		return g.solids[len(g.solids)-1].At
	}
	clubhead := func(pose []wire.Segment) vec { return axisOf(pose[s.PartIndex("clubhead")]).Middle() }

	alone := len(with.Draw(v, frame).Indices)
	if got, want := solidHead(with), clubhead(s.Frames[int(frame)].Pose); got.Sub(want).Norm() > 1e-5 {
		t.Errorf("without the ghost the solid clubhead is at %v, want the deciding one's %v", got, want)
	}
	with.ShowGhost(true)
	both := len(with.Draw(v, frame).Indices)
	if got, want := solidHead(with), clubhead(s.Frames[int(frame)].Typical); got.Sub(want).Norm() > 1e-5 {
		t.Errorf("with the ghost the solid clubhead is at %v, want the typical one's %v", got, want)
	}
	ghost := with.canvas.theme.Ghost
	sheet := 0
	for _, q := range with.canvas.Vertices {
		if q.A == ghost.A {
			sheet++
		}
	}
	if both <= alone || sheet < 1000 {
		t.Errorf("%d indices with the ghost, %d of its corners, and %d indices without: nothing was added", both, sheet, alone)
	}
	if got := len(plain.Draw(v, frame).Indices); got != alone {
		t.Errorf("%d indices of a recording without a typical swing, want %d", got, alone)
	}
	plain.ShowGhost(true)
	if got := len(plain.Draw(v, frame).Indices); got != alone {
		t.Errorf("%d indices with the ghost of a recording without a typical swing, want %d", got, alone)
	}
	if n := testing.AllocsPerRun(5, func() { with.Draw(v, frame+3); with.Draw(v, frame) }); n > 0 {
		t.Errorf("a picture with the ghost takes %v allocations, want none", n)
	}
}

// The ghost is queued behind every part of the solid golfer, and its mark is its own
// colour: what is through a surface is loud in both.
func TestGhostBehind(t *testing.T) {
	s := frozen(t)
	typicalBehind(s)
	p := New(s)
	p.ShowGhost(true)
	for _, name := range views[:4] {
		v := View{Width: 800, Height: 500, Scale: 1}
		v.Stand, _ = p.Preset(name)
		p.ShowBall(false)
		p.Draw(v, phaseStart(s, "release")) // the ball, which is outlined too, has gone
		last, first := -1, -1
		for i, k := range p.canvas.Indices {
			switch q := p.canvas.Vertices[k]; {
			case q.A == p.canvas.theme.Ghost.A:
				last = i
			case first < 0 && q.R == p.canvas.theme.Outline.R && q.G == p.canvas.theme.Outline.G && q.B == p.canvas.theme.Outline.B && q.A == 1:
				first = i
			}
		}
		if last < 0 || first < 0 || last > first {
			t.Errorf("%s: the ghost's last corner is laid down as number %d, the first outline of the solid golfer as %d", name, last, first)
		}
	}
}
