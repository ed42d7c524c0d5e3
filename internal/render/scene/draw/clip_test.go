package draw

import (
	"math/rand/v2"
	"testing"

	"wideberth/internal/render/scene/wire"
)

func TestClipSegment(t *testing.T) {
	n, d := xyz(1, 0, 0), float32(1)
	tests := []struct {
		name       string
		a, b, p, q vec
		ok         bool
	}{
		{"inside", xyz(2, 0, 0), xyz(3, 1, 0), xyz(2, 0, 0), xyz(3, 1, 0), true},
		{"outside", xyz(0, 0, 0), xyz(0.5, 1, 0), vec{}, vec{}, false},
		{"starts outside", xyz(0, 0, 0), xyz(2, 2, 0), xyz(1, 1, 0), xyz(2, 2, 0), true},
		{"ends outside", xyz(2, 2, 0), xyz(0, 0, 0), xyz(2, 2, 0), xyz(1, 1, 0), true},
	}
	for _, tt := range tests {
		p, q, ok := clipSegment(tt.a, tt.b, n, d)
		if ok != tt.ok || (ok && (p != tt.p || q != tt.q)) {
			t.Errorf("%s: clipSegment = %v, %v, %v, want %v, %v, %v", tt.name, p, q, ok, tt.p, tt.q, tt.ok)
		}
	}
}

func TestClipPolygonKeepsTheFreeSide(t *testing.T) {
	square := []vec{xyz(0, 0, 0), xyz(2, 0, 0), xyz(2, 2, 0), xyz(0, 2, 0)}
	got := clipPolygon(nil, square, xyz(1, 0, 0), 0.5)
	want := []vec{xyz(0.5, 0, 0), xyz(2, 0, 0), xyz(2, 2, 0), xyz(0.5, 2, 0)}
	if len(got) != len(want) {
		t.Fatalf("clipPolygon = %v, want %v", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("corner %d = %v, want %v", i, got[i], want[i])
		}
	}
	if got := clipPolygon(nil, square, xyz(1, 0, 0), 5); len(got) != 0 {
		t.Errorf("clipPolygon outside = %v, want nothing", got)
	}
}

// blocked tells by casting a ray whether the face stands between eye and p.
func blocked(eye, p vec, f *face) bool {
	ray := p.Sub(eye)
	slope := f.normal.Dot(ray)
	t := (f.d - f.normal.Dot(eye)) / slope
	return t > 0 && t < 1 && f.holds(eye.Add(ray.Mul(t)))
}

// TestHiddenSpan compares the exact interval with rays cast at points along the
// segment, for random faces, eyes and segments.
func TestHiddenSpan(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 2))
	random := func(r float32) vec {
		return xyz(r*(2*rng.Float32()-1), r*(2*rng.Float32()-1), r*(2*rng.Float32()-1))
	}
	hidden, seen := 0, 0
	for range 3000 {
		f := face{kind: wire.Solid}
		u, v := perpendiculars(random(1).Unit())
		o := random(1)
		w, h := 0.3+rng.Float32(), 0.3+rng.Float32()
		f.polygon = []vec{o, o.Add(u.Mul(w)), o.Add(u.Mul(w)).Add(v.Mul(h)), o.Add(v.Mul(h))}
		f.normal, f.centre = polygonNormal(f.polygon), centroid(f.polygon)
		f.d = f.normal.Dot(f.centre)
		eye, a, b := random(1).Unit().Mul(6), random(2.5), random(2.5)
		s, ok := hiddenSpan(eye, a, b, &f)
		for range 8 {
			k := rng.Float32()
			got := ok && k >= s.from && k <= s.to
			// Close to an end of the interval or to the face the two may differ.
			if p := a.Lerp(b, k); abs(f.normal.Dot(p)-f.d) < 0.01 || (ok && (abs(k-s.from) < 0.01 || abs(k-s.to) < 0.01)) {
				continue
			} else if want := blocked(eye, p, &f); got != want {
				near := blocked(eye, a.Lerp(b, k-0.01), &f) != want || blocked(eye, a.Lerp(b, k+0.01), &f) != want
				if !near {
					t.Fatalf("eye %v, segment %v–%v at %v: hidden = %v, want %v (span %+v)", eye, a, b, k, got, want, s)
				}
			} else if want {
				hidden++
			} else {
				seen++
			}
		}
	}
	if hidden < 300 || seen < 300 {
		t.Errorf("only %d hidden and %d seen points were tried", hidden, seen)
	}
}

// TestRoomLines counts the lines of an empty box seen from a corner: three of
// its twelve edges meet in the corner nearest to the viewer and are cut away,
// the other nine are ink.
func TestRoomLines(t *testing.T) {
	s := &wire.Recording{Rate: 240, Room: wire.Vec{6, 4, 3}, Faces: boxFaces("room", wire.Wall, wire.Vec{}, wire.Vec{6, 4, 3}, true)}
	p := New(s)
	if got := len(p.room.edges); got != 12 {
		t.Fatalf("%d edges, want 12", got)
	}
	p.Draw(View{Width: 800, Height: 600, Scale: 1, Stand: Stand{Orbit: Orbit{0.7, 0.6, 1}}}, 0)
	cut := 0
	for _, e := range p.room.edges {
		if !p.room.faces[e.faces[0]].seen(p.canvas.cam.eye) && !p.room.faces[e.faces[1]].seen(p.canvas.cam.eye) {
			cut++
		}
	}
	if cut != 3 {
		t.Errorf("%d edges are cut away, want 3", cut)
	}
}
