package record

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// furnished is a room with everything that has faces, some of it reaching into
// a wall and one slope that meets another.
func furnished() plan.Plan {
	return plan.Plan{
		Room: plan.Room{Length: 6, Width: 4, Height: 3,
			Slopes: []plan.Slope{{Name: "rafters", Wall: "left", KneeHeight: 2, Run: 1}, {Name: "eaves", Wall: "back", KneeHeight: 1.5, Run: 0.8}},
			Solids: []plan.Solid{{Name: "beam", Min: [3]float64{2.5, -0.3, 2.7}, Max: [3]float64{2.8, 4.2, 3.1}}, {Name: "flat", Min: [3]float64{1, 1, 1}, Max: [3]float64{1, 2, 2}}},
		},
		Floor:  plan.Floor{Layers: []plan.Layer{{Name: "ply", Thickness: 0.018}, {Name: "turf", Thickness: 0.012}}, Mat: &plan.Mat{Thickness: 0.04, Length: 1.4, Width: 1.2}},
		Screen: &plan.Screen{X: 5.5, Centre: 2.1, Bottom: 0.1, Width: 3, Height: 2.2, SideReturn: 0.6, TopReturn: 0.4},
		Tees:   []plan.Tee{{Name: "one", X: 3, Y: 2}, {Name: "two", X: 3.3, Y: 0.5}},
		Hung:   []plan.Hung{{Name: "lamp", Min: [3]float64{1.5, 1.8, 2.4}, Max: [3]float64{1.9, 2.1, 2.6}}},
	}
}

// TestFaces holds every corner of the room's faces to the millimetre.
func TestFaces(t *testing.T) {
	bare := plan.Plan{Room: plan.Room{Length: 5, Width: 4, Height: 2.5}, Tees: []plan.Tee{{X: 2, Y: 2}}}
	inset := furnished()
	inset.Floor.Mat.Inset = true
	inset.Screen.SideReturn, inset.Screen.TopReturn = 0, 0
	inset.Room.Slopes, inset.Room.Solids, inset.Hung, inset.Tees = nil, nil, nil, inset.Tees[:1]
	noWidth := inset
	noWidth.Floor.Mat = &plan.Mat{Thickness: 0.04, Length: 1.4}
	var b strings.Builder
	for _, c := range []struct {
		name string
		plan plan.Plan
	}{{"bare", bare}, {"inset mat, no returns", inset}, {"a mat without width", noWidth}, {"furnished", furnished()}} {
		fmt.Fprintf(&b, "%s\n", c.name)
		for _, f := range Faces(c.plan, plan.Player{}, swing.Pose{}) {
			fmt.Fprintf(&b, "  %-8v %-12q", f.Kind, f.Name)
			for _, p := range f.Polygon {
				fmt.Fprintf(&b, " %.3f,%.3f,%.3f", p[0]+0, p[1]+0, p[2]+0)
			}
			b.WriteByte('\n')
		}
	}
	got := strings.ReplaceAll(b.String(), "-0.000", "0.000")
	file := filepath.Join("testdata", "faces.txt")
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	now, was := strings.Split(got, "\n"), strings.Split(string(want), "\n")
	for i := range max(len(now), len(was)) {
		line := func(l []string) string {
			if i < len(l) {
				return l[i]
			}
			return "nothing"
		}
		if line(now) != line(was) {
			t.Fatalf("line %d of %s is now\n%s\nand was\n%s", i+1, file, line(now), line(was))
		}
	}
}

// TestMatIsUnderfoot: on every tee the mat is where the flat drawing has it.
func TestMatIsUnderfoot(t *testing.T) {
	in := input(t, "Left-handed friend", nil)
	address := in.Swing.PoseAt(0)
	faces := Faces(in.Plan, in.Player, address)
	for _, tee := range in.Plan.Tees {
		m, ok := sweep.Place(in.Plan, tee, in.Player).Mat(in.Plan, address)
		want := vec(m.Min)
		if !ok || !slices.ContainsFunc(faces, func(f wire.Face) bool {
			return f.Kind == wire.Mat && f.Polygon[0][0] == want[0] && f.Polygon[0][1] == want[1]
		}) {
			t.Errorf("tee %q: no mat has its corner at %v", tee.Name, want)
		}
	}
}

func TestArea(t *testing.T) {
	const tol = 1e-12
	for _, tt := range []struct {
		name string
		p    []geom.Vec
		want float64
	}{
		{"nothing", nil, 0},
		{"a line", []geom.Vec{{X: 1}, {X: 3}}, 0},
		{"a triangle", []geom.Vec{{X: 1, Z: 5}, {X: 3, Z: 5}, {X: 1, Y: 3, Z: 5}}, 3},
		{"a square on edge", []geom.Vec{{Y: 1}, {Y: 3}, {Y: 3, Z: 2}, {Y: 1, Z: 2}}, 4},
	} {
		if got := area(tt.p); math.Abs(got-tt.want) > tol {
			t.Errorf("%s: area = %v m², want %v", tt.name, got, tt.want)
		}
	}
}
