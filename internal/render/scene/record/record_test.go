package record

import (
	"math"
	"testing"

	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/body"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
	"wideberth/internal/units"
)

// roomTolerance is above the rounding of float32 at room size, in metres.
const roomTolerance = 1e-5

// input is a player of the demo plan with the driver on its first tee.
func input(t *testing.T, player string, change func(*plan.Plan)) Input {
	t.Helper()
	p := plantest.Loft()
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
	s := wire.Recording{Faces: Faces(plantest.Loft(), plan.Player{}, swing.Pose{})}
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
	r := plantest.Loft().Room
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
	return geom.Dot(p, r3.Cross(q, r))
}

func TestBoxesTurnOutwards(t *testing.T) {
	for _, f := range Faces(plantest.Loft(), plan.Player{}, swing.Pose{}) {
		if f.Kind != wire.Solid && f.Kind != wire.Hung {
			continue
		}
		var centre wire.Vec
		n := 0
		for _, g := range Faces(plantest.Loft(), plan.Player{}, swing.Pose{}) {
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
	for verdict, v := range map[fit.Verdict]wire.Verdict{fit.Clear: wire.Clear, fit.Tight: wire.Tight, fit.Strikes: wire.Strikes, "": wire.Strikes} {
		in := input(t, "Host", nil)
		in.Tightest = Tightest{
			Time: 1.25, From: geom.Vec{X: 1, Y: 2, Z: 3}, To: geom.Vec{X: 1, Y: 2.5, Z: 3.5},
			Label: "5 7/8 in · 149 mm", Verdict: verdict, Surface: "left wall", Part: "clubhead", ModelError: 0.05,
		}
		want := wire.Tightest{
			Time: 1.25, From: wire.Vec{1, 2, 3}, To: wire.Vec{1, 2.5, 3.5},
			Label: "5 7/8 in · 149 mm", Verdict: v, Surface: "left wall", Part: "clubhead", Fray: 0.05,
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

// TestMarksBeginAtTheFirstTouch: the family's first touch leaves the first mark,
// where and when it is, though the swing that is shown touches later.
func TestMarksBeginAtTheFirstTouch(t *testing.T) {
	in := input(t, "Tall guest", lowCeiling)
	without := Swing(in)
	in.First = &Touch{Time: 0.3012, At: geom.Vec{X: 2, Y: 3, Z: 2.40}, Surface: "ceiling", Part: "clubhead"}
	s := Swing(in)
	if len(s.Strikes) != len(without.Strikes)+1 || s.Strikes[1].Frame != without.Strikes[0].Frame {
		t.Fatalf("%d marks with a first touch, %d without", len(s.Strikes), len(without.Strikes))
	}
	k := s.Strikes[0]
	want := wire.Strike{Frame: 72, At: wire.Vec{2, 3, 2.40}, Normal: wire.Vec{0, 0, -1}, Radius: k.Radius, Surface: "ceiling", Part: "clubhead"}
	if k != want || k.Radius != s.Parts[s.PartIndex("clubhead")].Radius || k.Frame >= s.Strikes[1].Frame {
		t.Errorf("first mark = %+v, want %+v before frame %d", k, want, s.Strikes[1].Frame)
	}
	in.First.Part = "nose"
	if got := Swing(in); len(got.Strikes) != len(without.Strikes) {
		t.Errorf("%d marks with the touch of no part, want %d", len(got.Strikes), len(without.Strikes))
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

// Every frame is the swing's pose at its time, in the room, with the clearance
// that the sweep finds there.
func TestFramesAreTheSwing(t *testing.T) {
	in := input(t, "Tall guest", lowCeiling)
	in.Plan.Units = units.Metric
	s := Swing(in)
	place := sweep.Place(in.Plan, in.Tee, in.Player)
	for i, f := range s.Frames {
		at := min(float64(i)/Rate, in.Swing.Duration())
		nearest := math.Inf(1)
		for p, c := range in.Swing.PoseAt(at) {
			c = place.Capsule(c)
			if got := f.Pose[p]; got != (wire.Segment{A: vec(c.A), B: vec(c.B)}) {
				t.Fatalf("frame %d: %s at %v, want %v", i, s.Parts[p].Name, got, c)
			}
			for _, surface := range sweep.Surfaces(in.Plan) {
				if surface.Kind.Flat() {
					nearest = min(nearest, surface.Plane.Distance(c))
				} else {
					d, _, _ := surface.Box.Distance(c)
					nearest = min(nearest, d)
				}
			}
		}
		if math.Abs(float64(f.Clearance)-nearest) > roomTolerance {
			t.Fatalf("frame %d: clearance %v, want %v", i, f.Clearance, nearest)
		}
		if got, want := s.Phases[f.Phase], string(in.Swing.PhaseAt(at)); got != want {
			t.Fatalf("frame %d: %s, want %s", i, got, want)
		}
	}
	for p, c := range in.Swing.PoseAt(0) {
		if want := (wire.Part{Name: swing.Part(p).String(), Radius: float32(c.R)}); s.Parts[p] != want {
			t.Errorf("part %d = %+v, want %+v", p, s.Parts[p], want)
		}
	}
	if s.Tick != 0.01 || s.Major != 10 {
		t.Errorf("metric ticks are %v m apart and every %d long, want 0.01 and 10", s.Tick, s.Major)
	}
	in.Plan.Units = units.Imperial
	if s := Swing(in); s.Tick != 0.0254 || s.Major != 12 {
		t.Errorf("imperial ticks are %v m apart and every %d long, want 0.0254 and 12", s.Tick, s.Major)
	}
	if want := in.Plan.Floor.Standing() + 0.04267/2; math.Abs(float64(s.Ball[2])-want) > roomTolerance {
		t.Errorf("the ball's middle is at %v m, want %v", s.Ball[2], want)
	}
	last := 0
	for _, k := range s.Strikes {
		i := 0
		for s.Parts[i].Name != k.Part {
			i++
		}
		if k.Frame < last || k.Radius != s.Parts[i].Radius {
			t.Errorf("mark of frame %d after %d with radius %v, want %v", k.Frame, last, k.Radius, s.Parts[i].Radius)
		}
		last = k.Frame
	}
}

func TestNormalAt(t *testing.T) {
	box := sweep.Surface{Kind: sweep.Solid, Box: geom.Box{Min: geom.Vec{X: 1, Y: 2, Z: 3}, Max: geom.Vec{X: 2, Y: 4, Z: 6}}}
	wall := sweep.Surface{Kind: sweep.Wall, Plane: geom.Halfspace{N: geom.Vec{Y: -1}, D: -4}}
	tests := []struct {
		name    string
		surface sweep.Surface
		at      geom.Vec
		want    geom.Vec
	}{
		{"a wall", wall, geom.Vec{X: 1, Y: 4, Z: 3}, geom.Vec{Y: -1}},
		{"back of a box", box, geom.Vec{X: 1, Y: 3, Z: 4}, geom.Vec{X: -1}},
		{"front of a box", box, geom.Vec{X: 2, Y: 3, Z: 4}, geom.Vec{X: 1}},
		{"right of a box", box, geom.Vec{X: 1.5, Y: 2, Z: 4}, geom.Vec{Y: -1}},
		{"left of a box", box, geom.Vec{X: 1.5, Y: 4, Z: 4}, geom.Vec{Y: 1}},
		{"bottom of a box", box, geom.Vec{X: 1.5, Y: 3, Z: 3}, geom.Vec{Z: -1}},
		{"top of a box", box, geom.Vec{X: 1.5, Y: 3, Z: 6}, geom.Vec{Z: 1}},
		{"just inside the bottom", box, geom.Vec{X: 1.2, Y: 3, Z: 3.1}, geom.Vec{Z: -1}},
	}
	for _, tt := range tests {
		if got := normalAt(tt.surface, tt.at); got != tt.want {
			t.Errorf("%s: normalAt = %v, want %v", tt.name, got, tt.want)
		}
	}
}
