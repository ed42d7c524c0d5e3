package record

import (
	"math"
	"testing"

	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/body"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/swing"
)

// roomTolerance is above the rounding of float32 at room size, in metres.
const roomTolerance = 1e-5

// input is a player of the demo plan with the driver on its first tee.
func input(t *testing.T, player string, change func(*plan.Plan)) Input {
	t.Helper()
	p := plan.Demo()
	if change != nil {
		change(&p)
	}
	for _, pl := range p.Players {
		if pl.Name != player {
			continue
		}
		sw, err := swing.New(body.New(pl), swing.NewClub(p.Clubs[0]), swing.StyleOf(pl))
		if err != nil {
			t.Fatalf("swing of %q: %v", player, err)
		}
		return Input{Plan: p, Player: pl, Club: p.Clubs[0], Tee: p.Tees[0], Swing: sw}
	}
	t.Fatalf("the demo plan has no player %q", player)
	return Input{}
}

func TestSwingSurvivesTheWire(t *testing.T) {
	s := Swing(input(t, "Tall guest", nil))
	got, err := wire.Decode(s.Encode())
	if err != nil {
		t.Fatalf("Decode(Encode(Build)): %v", err)
	}
	if got.Title != "Tall guest, driver, middle tee" {
		t.Errorf("title = %q, want %q", got.Title, "Tall guest, driver, middle tee")
	}
	if want := int(math.Ceil(input(t, "Tall guest", nil).Swing.Duration()*Rate)) + 1; len(got.Frames) != want {
		t.Errorf("%d frames, want %d", len(got.Frames), want)
	}
}

func TestShellIsClosed(t *testing.T) {
	s := wire.Recording{Faces: Faces(plan.Demo())}
	var volume float64
	edges := map[[2]wire.Vec]int{}
	for _, f := range s.Faces {
		if !f.Kind.Shell() {
			continue
		}
		for i, a := range f.Polygon {
			b := f.Polygon[(i+1)%len(f.Polygon)]
			edges[[2]wire.Vec{round(a), round(b)}]++
			if i >= 2 {
				p, q := f.Polygon[0], f.Polygon[i-1]
				volume += determinant(p, q, a) / 6
			}
		}
	}
	for e, n := range edges {
		if n != 1 || edges[[2]wire.Vec{e[1], e[0]}] != 1 {
			t.Errorf("edge %v: met %d times forwards and %d times backwards, want once each", e, n, edges[[2]wire.Vec{e[1], e[0]}])
		}
	}
	// The demo's room less its rafters' wedge and its floor layers; normals
	// point inwards, so the signed volume is negative.
	r := plan.Demo().Room
	want := r.Length * (r.Width*(r.Height-0.040) - 0.90*(r.Height-2.10)/2)
	if math.Abs(-volume-want) > 1e-3 {
		t.Errorf("volume inside the shell = %.4f m³, want %.4f m³ (0.001)", -volume, want)
	}
}

func round(v wire.Vec) wire.Vec {
	for i := range v {
		v[i] = float32(math.Round(float64(v[i])*1e4) / 1e4)
		if v[i] == 0 {
			v[i] = 0 // no negative zero in a map key
		}
	}
	return v
}

func determinant(a, b, c wire.Vec) float64 {
	p := geom.Vec{X: float64(a[0]), Y: float64(a[1]), Z: float64(a[2])}
	q := geom.Vec{X: float64(b[0]), Y: float64(b[1]), Z: float64(b[2])}
	r := geom.Vec{X: float64(c[0]), Y: float64(c[1]), Z: float64(c[2])}
	return geom.Dot(p, cross(q, r))
}

func TestBoxesTurnOutwards(t *testing.T) {
	for _, f := range Faces(plan.Demo()) {
		if f.Kind != wire.Solid && f.Kind != wire.Hung {
			continue
		}
		var centre wire.Vec
		n := 0
		for _, g := range Faces(plan.Demo()) {
			if g.Name == f.Name {
				for _, p := range g.Polygon {
					centre = wire.Vec{centre[0] + p[0], centre[1] + p[1], centre[2] + p[2]}
					n++
				}
			}
		}
		for i := range centre {
			centre[i] /= float32(n)
		}
		a, b, c := sub(f.Polygon[0], centre), sub(f.Polygon[1], centre), sub(f.Polygon[2], centre)
		if determinant(a, b, c) <= 0 {
			t.Errorf("%s: face %v turns inwards", f.Name, f.Polygon)
		}
	}
}

func sub(a, b wire.Vec) wire.Vec { return wire.Vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

// The tightest moment is the report's, word for word and number for number.
func TestTightestIsTheReports(t *testing.T) {
	for v, verdict := range []string{"clear", "tight", "strikes"} {
		in := input(t, "Host", nil)
		in.Tightest = Tightest{
			Time: 1.25, From: geom.Vec{X: 1, Y: 2, Z: 3}, To: geom.Vec{X: 1, Y: 2.5, Z: 3.5},
			Label: "5 7/8 in · 149 mm", Verdict: verdict, Surface: "left wall", Part: "clubhead",
		}
		want := wire.Tightest{
			Time: 1.25, From: wire.Vec{1, 2, 3}, To: wire.Vec{1, 2.5, 3.5},
			Label: "5 7/8 in · 149 mm", Verdict: wire.Verdict(v), Surface: "left wall", Part: "clubhead",
		}
		if got := Swing(in).Tightest; got != want {
			t.Errorf("%s: tightest moment = %+v, want %+v", verdict, got, want)
		}
	}
	if got := Swing(input(t, "Host", nil)).Tightest; got != (wire.Tightest{}) {
		t.Errorf("tightest moment = %+v, want none without a reading", got)
	}
}

// A swing that touches leaves marks, one in a hall leaves none.
func TestStrikesOnlyWhereItTouches(t *testing.T) {
	tests := []struct {
		name, player string
		change       func(*plan.Plan)
		want         bool
	}{
		{"low ceiling", "Tall guest", lowCeiling, true},
		{"hall", "Host", hall, false},
		{"hall, left-hander", "Left-handed friend", hall, false},
	}
	for _, tt := range tests {
		if s := Swing(input(t, tt.player, tt.change)); (len(s.Strikes) > 0) != tt.want {
			t.Errorf("%s: %d strike marks, want some: %v", tt.name, len(s.Strikes), tt.want)
		}
	}
}

// lowCeiling is the demo's room, bare and low.
func lowCeiling(p *plan.Plan) {
	p.Room.Height = 2.40
	p.Room.Slopes, p.Room.Solids, p.Hung = nil, nil, nil
}

// hall is the demo's room grown so that nothing can be struck.
func hall(p *plan.Plan) {
	p.Room = plan.Room{Length: 12, Width: 10, Height: 6}
	p.Hung, p.Screen = nil, nil
	p.Tees[0].X, p.Tees[0].Y = 6, 5
}

func TestStrikesLieOnTheirSurfaces(t *testing.T) {
	in := input(t, "Tall guest", lowCeiling)
	s := Swing(in)
	for _, k := range s.Strikes {
		if k.Surface == "ceiling" && math.Abs(float64(k.At[2])-2.40) > roomTolerance {
			t.Errorf("mark of frame %d at height %.5f m, want on the ceiling at 2.40 m", k.Frame, k.At[2])
		}
		if c := s.Frames[k.Frame].Clearance; c > 0.05 {
			t.Errorf("mark of frame %d, where the nearest surface is %.3f m away", k.Frame, c)
		}
	}
}

func TestLeftHanderIsMirrored(t *testing.T) {
	in := input(t, "Host", hall)
	right := Swing(in)
	in.Player.Hand = "left"
	left := Swing(in)
	for i := range right.Frames {
		for p := range right.Parts {
			a, b := right.Frames[i].Pose[p].A, left.Frames[i].Pose[p].A
			want := 2*right.Ball[1] - a[1]
			if math.Abs(float64(b[1]-want)) > roomTolerance || a[0] != b[0] || a[2] != b[2] {
				t.Fatalf("frame %d, %s: left-hander at %v, want the mirror image of %v", i, right.Parts[p].Name, b, a)
			}
		}
	}
}
