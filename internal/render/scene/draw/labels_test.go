package draw

import (
	"fmt"
	"testing"

	"wideberth/internal/render/scene/wire"
)

// lettered are the boxes of the texts that the last picture letters, by their place in
// the atlas; the two lines of the plate are one box with the plate.
func lettered(p *Picture, a *atlas) map[string]box {
	out := map[string]box{}
	for i := range p.canvas.Indices {
		v := &p.canvas.Vertices[p.canvas.Indices[i]]
		for text, g := range a.places {
			if v.V < g.V-0.5 || v.V > g.V+g.Height+0.5 {
				continue
			}
			if p.tape.shown() && (text == p.tape.reading || text == p.tape.words) {
				text = "the plate"
			}
			b, ok := out[text]
			if !ok {
				b = emptyBox()
			}
			out[text] = b.add(point{v.X, v.Y}, 0)
		}
	}
	return out
}

// No label covers another or the plate with the reading, and the plate keeps clear of
// the golfer's head, at any play-head, in any view, at any size.
func TestLabelsKeepClear(t *testing.T) {
	recordings := handed(t)
	recordings["sample"] = sampleRecording()
	long := frozen(t)
	for i := range long.Faces {
		if long.Faces[i].Name != "" {
			long.Faces[i].Name += " with a name that nobody could want to read on a wall"
		}
	}
	long.Tightest.Surface = "the surface with the longest name in the whole house, and then some"
	recordings["long names"] = long
	for name, s := range recordings {
		p := New(s)
		a := newAtlas(p.Texts())
		for text, g := range a.places {
			p.SetGlyphs(text, g)
		}
		labels := 0
		for i, view := range append([]string{"target"}, views...) {
			for _, size := range shapes {
				v := View{Width: size[0], Height: size[1], Scale: 1}
				v.Stand, _ = p.Preset(view)
				if i == 0 { // closer, so that names go to other corners
					v.Orbit.Zoom, v.Orbit.Yaw = 3, v.Orbit.Yaw+0.2
				}
				tight := float64(s.Tightest.Time * s.Rate)
				for _, frame := range []float64{0, tight / 2, tight, (tight + float64(len(s.Frames))) / 2, float64(len(s.Frames))} {
					where := fmt.Sprintf("%s, %s, %v×%v, frame %.0f", name, view, size[0], size[1], frame)
					p.Draw(v, frame)
					all := lettered(p, a)
					labels += len(all)
					for one, b := range all {
						for other, o := range all {
							if one < other && b.grown(-0.5).common(o) > 0 {
								t.Errorf("%s: %q at %v and %q at %v cover one another", where, one, b, other, o)
							}
						}
					}
					for _, f := range p.room.faces {
						if b, ok := all[f.name]; ok && view == "target" && (f.kind == wire.Screen) && b.common(p.canvas.golfer) > 0 {
							t.Errorf("%s: %q at %v is written on the golfer at %v", where, f.name, b, p.canvas.golfer)
						}
					}
					if !p.tape.drawn {
						continue
					}
					plate := boxAt(p.tape.corner, p.tape.size)
					if !plate.inside(box{point{}, point{size[0], size[1]}}) {
						t.Errorf("%s: the plate at %v is not in the picture", where, plate)
					}
					for one, b := range all {
						if one != "the plate" && plate.common(b) > 0 {
							t.Errorf("%s: %q at %v is under the plate at %v", where, one, b, plate)
						}
					}
					if head := headIn(p, s, frame); plate.common(head) > 0 {
						t.Errorf("%s: the plate at %v covers the head at %v", where, plate, head)
					}
				}
			}
		}
		if labels < 100 {
			t.Errorf("%s: %d labels in all pictures together, want them lettered", name, labels)
		}
	}
}

// headIn is where the golfer's head is in the last picture, but for its rim.
func headIn(p *Picture, s *wire.Recording, frame float64) box {
	out := emptyBox()
	i := s.PartIndex("head")
	axis := p.figure.parts[i].Axis
	for _, end := range [2]vec{axis.A, axis.B} {
		if x, y, d := p.canvas.cam.project(end); d >= nearPlane {
			out = out.add(point{x, y}, 0.8*s.Parts[i].Radius*p.canvas.cam.pixels(end))
		}
	}
	return out
}
