package sweep

import (
	"math"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
)

func TestPlace(t *testing.T) {
	p := loft()
	proud := loft()
	proud.Floor.Mat.Inset = false
	bare := loft()
	bare.Floor = plan.Floor{}
	for _, c := range []struct {
		name   string
		plan   plan.Plan
		player int
		want   Placement
	}{
		{"mat let in", p, 0, Placement{Ball: geom.Vec{X: 2.90, Y: 2.21, Z: 0.040}}},
		{"mat on top", proud, 0, Placement{Ball: geom.Vec{X: 2.90, Y: 2.21, Z: 0.080}}},
		{"bare floor, left-hander", bare, 1, Placement{Ball: geom.Vec{X: 2.90, Y: 2.21}, Left: true}},
	} {
		got := Place(c.plan, c.plan.Tees[0], c.plan.Players[c.player])
		off := geom.Vec{X: got.Ball.X - c.want.Ball.X, Y: got.Ball.Y - c.want.Ball.Y, Z: got.Ball.Z - c.want.Ball.Z}
		if geom.Norm(off) > rounding || got.Left != c.want.Left {
			t.Errorf("%s: Place = %+v, want %+v", c.name, got, c.want)
		}
	}
}

// TestFrames checks that distances do not depend on the frame they are taken in.
func TestFrames(t *testing.T) {
	p := loft()
	w := newWobble(1)
	for _, pl := range p.Players {
		at := Place(p, p.Tees[0], pl)
		for _, s := range Surfaces(p) {
			for _, c := range w.PoseAt(0.1) {
				golfer := at.Surface(s)
				room, _, _ := s.separate(at.Capsule(c))
				if got, _, _ := golfer.separate(c); math.Abs(got-room) > 1e-9 {
					t.Errorf("%s, %s: distance in the golfer frame = %.12f, want %.12f", pl.Name, s.Name, got, room)
				}
			}
		}
		v := geom.Vec{X: 1.1, Y: -0.4, Z: 1.9}
		if got := at.ToGolfer(at.ToRoom(v)); geom.Norm(geom.Vec{X: got.X - v.X, Y: got.Y - v.Y, Z: got.Z - v.Z}) > rounding {
			t.Errorf("%s: there and back: %v, want %v", pl.Name, got, v)
		}
	}
	// A right-hander's back is to the left wall, a left-hander's to the right.
	for i, y := range []float64{2.21 + 0.8, 2.21 - 0.8} {
		if got := Place(p, p.Tees[0], p.Players[i]).ToRoom(geom.Vec{Y: 0.8}).Y; math.Abs(got-y) > rounding {
			t.Errorf("%s: behind the back is y = %v, want %v", p.Players[i].Name, got, y)
		}
	}
}

// mirrored returns the room seen in a mirror along its length.
func mirrored(p plan.Plan) plan.Plan {
	w := p.Room.Width
	flip := func(lo, hi *[3]float64) { lo[1], hi[1] = w-hi[1], w-lo[1] }
	p.Room.Slopes = append([]plan.Slope(nil), p.Room.Slopes...)
	for i := range p.Room.Slopes {
		s := &p.Room.Slopes[i]
		switch s.Wall {
		case "left":
			s.Wall = "right"
		case "right":
			s.Wall = "left"
		}
	}
	p.Room.Solids = append([]plan.Solid(nil), p.Room.Solids...)
	for i := range p.Room.Solids {
		flip(&p.Room.Solids[i].Min, &p.Room.Solids[i].Max)
	}
	p.Hung = append([]plan.Hung(nil), p.Hung...)
	for i := range p.Hung {
		flip(&p.Hung[i].Min, &p.Hung[i].Max)
	}
	s := *p.Screen
	s.Centre = w - s.Centre
	p.Screen = &s
	p.Tees = append([]plan.Tee(nil), p.Tees...)
	for i := range p.Tees {
		p.Tees[i].Y = w - p.Tees[i].Y
	}
	return p
}

// binary rounds the lengths of a plan to 1/1024 m, so that the mirror image of
// the room is exact in floating point and any difference is one of the code.
func binary(p plan.Plan) plan.Plan {
	r := func(vs ...*float64) {
		for _, v := range vs {
			*v = math.Round(*v*1024) / 1024
		}
	}
	r(&p.Room.Length, &p.Room.Width, &p.Room.Height, &p.Tees[0].X, &p.Tees[0].Y)
	r(&p.Screen.X, &p.Screen.Centre, &p.Screen.Bottom, &p.Screen.Width, &p.Screen.Height)
	for i := range p.Room.Slopes {
		r(&p.Room.Slopes[i].KneeHeight, &p.Room.Slopes[i].Run)
	}
	for i := range 3 {
		r(&p.Room.Solids[0].Min[i], &p.Room.Solids[0].Max[i], &p.Hung[0].Min[i], &p.Hung[0].Max[i])
	}
	return p
}

// TestMirroredRoom: a left-hander in the mirrored room has a right-hander's
// clearances to the last bit, except where the room itself is no exact mirror
// image: a slope's normal and the 5 mm of cloth are no binary fractions.
func TestMirroredRoom(t *testing.T) {
	p := binary(loft())
	p.Tees[0].Y = 1.75 // not the middle, where a mirror changes nothing
	p.Players = []plan.Player{{Hand: "right"}, {Hand: "left"}}
	q := mirrored(p)
	opposite := map[string]string{
		"left wall": "right wall", "right wall": "left wall",
		"left return": "right return", "right return": "left return",
	}
	left := map[string]Surface{}
	for _, s := range Place(q, q.Tees[0], q.Players[1]).Surfaces(Surfaces(q)) {
		left[s.Name] = s
	}
	for seed := range uint64(4) {
		track := Sample(newWobble(seed), FineTolerance)
		for _, s := range Place(p, p.Tees[0], p.Players[0]).Surfaces(Surfaces(p)) {
			name := s.Name
			if o, ok := opposite[name]; ok {
				name = o
			}
			m, ok := left[name]
			if !ok {
				t.Fatalf("no %s in the mirrored room", name)
			}
			tol := 0.0
			if s.Kind == Return || s.Kind == Slope {
				tol = rounding
			}
			want, got := track.Clearance(s), track.Clearance(m)
			if math.Abs(got.Clearance-want.Clearance) > tol || got.Part != want.Part {
				t.Errorf("%s: Clearance = %v (%v), mirrored %v (%v), want the same", s.Name, want.Clearance, want.Part, got.Clearance, got.Part)
			}
		}
	}
}
