package drawing

import (
	"bytes"
	"encoding/json"
	"flag"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/swing"
)

var update = flag.Bool("update", false, "rewrite the golden files")

const (
	// areaTol is the share by which an outline's area may be off.
	areaTol = 0.01
	// smallTol is the same for a lone disc of 5 cm, where the field's
	// interpolation (1.6 mm) and outlineTol tell most: 0.9 mm of radius on average.
	smallTol = 0.035
	// rimTol is how far (m) from an outline a point may be judged wrongly: in
	// the notch between two parts gaps narrower than a cell close up.
	rimTol = cell / 2
	// roundTol is what rounding to whole millimetres does to a mirrored point.
	roundTol = 0.001 + 1e-9
)

func sumArea(polys [][]Point) (a float64) {
	for _, p := range polys {
		a += area(p)
	}
	return a
}

// inside reports whether p is in the polygons by the even-odd rule.
func inside(polys [][]Point, p Point) bool {
	in := false
	for _, poly := range polys {
		for i, a := range poly {
			b := poly[(i+1)%len(poly)]
			if (a[1] <= p[1]) != (b[1] <= p[1]) && p[0] < a[0]+(p[1]-a[1])*(b[0]-a[0])/(b[1]-a[1]) {
				in = !in
			}
		}
	}
	return in
}

func TestSilhouetteArea(t *testing.T) {
	ball := func(x, y, r float64) []geom.Capsule {
		c := geom.Vec{X: x, Y: y}
		return []geom.Capsule{{A: c, B: c, R: r}}
	}
	lens := func(r, d float64) float64 { // overlap of two discs of radius r, d apart
		return 2*r*r*math.Acos(d/2/r) - d/2*math.Sqrt(4*r*r-d*d)
	}
	// A spoke of length 1 that turns by a quarter in 40 steps, 5 cm thick.
	var spoke []geom.Capsule
	for i := range 41 {
		sin, cos := math.Sincos(math.Pi / 2 * float64(i) / 40)
		spoke = append(spoke, geom.Capsule{B: geom.Vec{X: cos, Y: sin}, R: 0.05})
	}
	// The same length that turns about its middle: it crosses its own last place.
	var cross []geom.Capsule
	for i := range 41 {
		sin, cos := math.Sincos(math.Pi * float64(i) / 40)
		cross = append(cross, geom.Capsule{A: geom.Vec{X: -cos, Y: -sin}, B: geom.Vec{X: cos, Y: sin}, R: 0.05})
	}
	var ring []geom.Capsule
	for i := range 81 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 80)
		p := geom.Vec{X: 0.6 * cos, Y: 0.6 * sin}
		ring = append(ring, geom.Capsule{A: p, B: p, R: 0.06})
	}
	cases := []struct {
		name string
		keys [][]geom.Capsule
		want float64
		tol  float64
	}{
		{"disc of 5 cm", [][]geom.Capsule{ball(0.013, 0.007, 0.05)}, math.Pi * 0.0025, smallTol},
		{"disc of 20 cm", [][]geom.Capsule{ball(1.013, -2.007, 0.2)}, math.Pi * 0.04, areaTol},
		{"two discs apart", [][]geom.Capsule{ball(0, 0, 0.1), ball(0.5, 0.3, 0.1)}, 2 * math.Pi * 0.01, areaTol},
		{"two discs that overlap", [][]geom.Capsule{ball(0, 0, 0.15), ball(0.2, 0, 0.15)}, 2*math.Pi*0.0225 - lens(0.15, 0.2), areaTol},
		{"aslant capsule", [][]geom.Capsule{{{A: geom.Vec{X: 0.1, Y: 0.2}, B: geom.Vec{X: 0.9, Y: 0.8}, R: 0.08}}}, 0.16 + math.Pi*0.0064, areaTol},
		{"disc that moves 10 cm", [][]geom.Capsule{append(ball(0, 0, 0.1), ball(0.06, 0.08, 0.1)...)}, 0.02 + math.Pi*0.01, areaTol},
		{"quarter turn", [][]geom.Capsule{spoke}, math.Pi/4 + math.Pi/2*0.05 + 2*0.05 + math.Pi*0.0025*0.75, areaTol},
		{"half turn about the middle", [][]geom.Capsule{cross}, math.Pi * 1.05 * 1.05, areaTol},
		{"ring with a hole", [][]geom.Capsule{ring}, math.Pi * (0.66*0.66 - 0.54*0.54), areaTol},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := sumArea(silhouette(c.keys, projections[viewPlan]))
			if math.Abs(got-c.want) > c.tol*c.want {
				t.Errorf("area of the outline = %.5f m², want %.5f m² (%v)", got, c.want, c.tol*c.want)
			}
		})
	}
}

// The outline of random capsules agrees with a count of random points against
// the exact distances, and its lines lie on the union's rim.
func TestSilhouetteAgainstDistances(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 7))
	for round := range 20 {
		var keys [][]geom.Capsule
		for range 5 {
			keys = append(keys, []geom.Capsule{randomCapsule(rng)})
		}
		for view, pr := range projections {
			distance := func(p Point) float64 {
				d := math.Inf(1)
				for _, k := range keys {
					c := k[0]
					d = min(d, math.Sqrt(dist2Segment(p, pr.flat(c.A), pr.flat(c.B)))-max(c.R, thin))
				}
				return d
			}
			polys := silhouette(keys, pr)
			for range 500 {
				p := Point{3.4*rng.Float64() - 0.2, 3.4*rng.Float64() - 0.2}
				d := distance(p)
				if in := inside(polys, p); math.Abs(d) > rimTol && in != (d < 0) {
					t.Fatalf("round %d view %d: inside(%v) = %v at distance %.4f m", round, view, p, in, d)
				}
			}
		}
	}
}

func TestOutlineContainsEveryCentre(t *testing.T) {
	m := Reduce(Sample(synthPose, 1))
	for i := range 2000 {
		pose := synthPose(float64(i) / 2000)
		for view, pr := range projections {
			for part, c := range pose {
				for _, s := range []float64{0, 0.25, 0.5, 0.75, 1} {
					p := pr.flat(r3.Add(c.A, r3.Scale(s, r3.Sub(c.B, c.A))))
					if !inside(m.sweep[view], p) {
						t.Fatalf("view %d, t = %.4f s: the %v at %v lies outside the outline", view, float64(i)/2000, swing.Part(part), p)
					}
				}
			}
		}
	}
}

func TestSampleStepsAreShort(t *testing.T) {
	poses := Sample(synthPose, 1)
	for i := 1; i < len(poses); i++ {
		if got := farthestMove(&poses[i-1], &poses[i]); got > poseStep {
			t.Errorf("move from pose %d to the next = %.3f m, want ≤ %v m", i-1, got, poseStep)
		}
	}
	first, last := synthPose(0), synthPose(1)
	if poses[0] != first || poses[len(poses)-1] != last {
		t.Error("the first and the last pose are not those of the motion's ends")
	}
}

// A left-hander in the mirrored room is drawn as the mirror image.
func TestMirror(t *testing.T) {
	in := synthInput()
	w := in.Plan.Room.Width
	straight := Build(in)

	mirror := func(v geom.Vec) geom.Vec { v.Y = w - v.Y; return v }
	in.At.Ball, in.At.Left = mirror(in.At.Ball), true
	in.Tightest.From, in.Tightest.To = mirror(in.Tightest.From), mirror(in.Tightest.To)
	in.Plan.Tees = []plan.Tee{{Name: "middle", X: 2.9, Y: w - 2.21}, {Name: "left", X: 2.9, Y: w - 2.6}}
	turned := Build(in)

	same := func(t *testing.T, what string, a, b Point, mirrored int) {
		t.Helper()
		if mirrored >= 0 {
			a[mirrored] = w - a[mirrored]
		}
		if math.Abs(a[0]-b[0]) > roundTol || math.Abs(a[1]-b[1]) > roundTol {
			t.Errorf("%s = %v, want %v", what, b, a)
		}
	}
	views := []struct {
		name   string
		a, b   View
		mirror int // index of the coordinate that is y
	}{
		{"plan", straight.Plan, turned.Plan, 1},
		{"side", straight.Side, turned.Side, -1},
		{"face", straight.Face, turned.Face, 0},
	}
	for _, v := range views {
		t.Run(v.name, func(t *testing.T) {
			if len(v.a.Sweep) != len(v.b.Sweep) || len(v.a.Sweep) == 0 {
				t.Fatalf("%d outlines, want %d and at least one", len(v.b.Sweep), len(v.a.Sweep))
			}
			for i := range v.a.Sweep {
				for j := range v.a.Sweep[i] {
					same(t, "sweep point", v.a.Sweep[i][j], v.b.Sweep[i][j], v.mirror)
				}
			}
			limbs := map[string]Limb{}
			for _, l := range v.b.Figure {
				limbs[l.Part] = l
			}
			for _, l := range v.a.Figure {
				same(t, l.Part, l.A, limbs[l.Part].A, v.mirror)
				same(t, l.Part, l.B, limbs[l.Part].B, v.mirror)
			}
			for i := range v.a.Marks {
				same(t, v.a.Marks[i].Name, v.a.Marks[i].At, v.b.Marks[i].At, v.mirror)
			}
			same(t, "tape", v.a.Tape.A, v.b.Tape.A, v.mirror)
		})
	}
}

func TestGolden(t *testing.T) {
	got, err := json.MarshalIndent(Build(synthInput()), "", "\t")
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join("testdata", "synthetic.json")
	if *update {
		if err := os.WriteFile(file, append(got, '\n'), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(bytes.TrimSpace(want), got) {
		t.Errorf("the drawings differ from %s; look at them, then run with -update", file)
	}
}

// TestFray: the frayed end is as long as the model's error, and never longer than
// the tape.
func TestFray(t *testing.T) {
	cases := []struct {
		name          string
		length, error float64
		want          float64
	}{
		{"a third", 0.15, 0.05, 0.333}, {"all of a short tape", 0.03, 0.05, 1}, {"a tape of no length", 0, 0.05, 1}, {"nothing", 0.2, 0, 0},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			in := synthInput()
			in.Tightest.From, in.Tightest.To = geom.Vec{X: 1, Y: 1, Z: 1}, geom.Vec{X: 1, Y: 1, Z: 1 + c.length}
			in.Tightest.ModelError = c.error
			f := Build(in)
			for name, v := range map[string]View{"plan": f.Plan, "side": f.Side, "face": f.Face} {
				if v.Tape.Fray != c.want {
					t.Errorf("%s: fray = %v of the tape, want %v", name, v.Tape.Fray, c.want)
				}
			}
		})
	}
}

// TestFirst: the strike mark is where the first touch is, and only where there is
// one.
func TestFirst(t *testing.T) {
	in := synthInput()
	f := Build(in)
	for name, got := range map[string]struct {
		mark *Mark
		want Point
	}{"plan": {f.Plan.First, Point{2.6, 2.4}}, "side": {f.Side.First, Point{2.6, 2.87}}, "face": {f.Face.First, Point{2.4, 2.87}}} {
		if got.mark == nil || got.mark.At != got.want || got.mark.Name != in.First.Words {
			t.Errorf("%s: first touch = %+v, want %q at %v", name, got.mark, in.First.Words, got.want)
		}
	}
	in.First = nil
	if f := Build(in); f.Plan.First != nil || f.Side.First != nil || f.Face.First != nil {
		t.Error("a first touch is marked where there is none")
	}
}

func TestRoomLines(t *testing.T) {
	lines := roomLines(synthInput())
	find := func(view int, name string) []Line {
		var out []Line
		for _, l := range lines[view] {
			if l.Name == name {
				out = append(out, l)
			}
		}
		return out
	}
	cases := []struct {
		name   string
		view   int
		line   string
		kind   string
		hidden []bool
		first  Point
		last   Point
	}{
		{"beam is above the cut", viewPlan, "boxed beam", KindSolid, []bool{true}, Point{3, 0}, Point{3, 4.42}},
		{"beam shows in the side", viewSide, "boxed beam", KindSolid, []bool{false}, Point{3, 2.62}, Point{3, 2.87}},
		{"left slope edge-on", viewFace, "rafters, left", KindSlope, []bool{false}, Point{4.42, 2.1}, Point{3.52, 2.87}},
		{"left slope's knee", viewSide, "rafters, left", KindSlope, []bool{false}, Point{0, 2.1}, Point{6.4, 2.1}},
		{"left slope's crease", viewPlan, "rafters, left", KindSlope, []bool{true}, Point{0, 3.52}, Point{6.4, 3.52}},
		{"back slope edge-on", viewSide, "eaves", KindSlope, []bool{false}, Point{0, 0.8}, Point{1.2, 2.87}},
		{"back slope's knee is behind", viewFace, "eaves", KindSlope, []bool{true}, Point{0, 0.8}, Point{4.42, 0.8}},
		{"back slope is cut", viewPlan, "eaves", KindSlope, []bool{true, false}, Point{1.2, 0}, Point{1.2, 4.42}},
		{"screen from above", viewPlan, "screen", KindScreen, []bool{false}, Point{6, 0.43}, Point{6, 3.99}},
		{"top return", viewSide, "top return", KindReturn, []bool{false}, Point{5.1, 2.05}, Point{6, 2.05}},
		{"mat under ball and feet", viewPlan, "mat", KindMat, []bool{false}, Point{2.15, 1.905}, Point{2.15, 3.405}},
		{"inset mat lies flush", viewSide, "mat", KindMat, []bool{false}, Point{2.15, 0}, Point{2.15, 0.04}},
		{"top layer", viewFace, "turf", KindFloor, []bool{false}, Point{0, 0.04}, Point{4.42, 0.04}},
		{"projector", viewFace, "projector", KindHung, []bool{false}, Point{2, 2.45}, Point{2, 2.8}},
		{"sensor", viewPlan, "sensor strip", KindSensor, []bool{false}, Point{2.6, 1.9}, Point{2.6, 2.5}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := find(c.view, c.line)
			if len(got) != len(c.hidden) {
				t.Fatalf("%d lines, want %d", len(got), len(c.hidden))
			}
			for i, l := range got {
				if l.Hidden != c.hidden[i] || l.Kind != c.kind {
					t.Errorf("line %d: hidden %v kind %q, want %v %q", i, l.Hidden, l.Kind, c.hidden[i], c.kind)
				}
			}
			l := got[0]
			if l.Points[0] != c.first || l.Points[len(l.Points)-1] != c.last {
				t.Errorf("from %v to %v, want %v to %v", l.Points[0], l.Points[len(l.Points)-1], c.first, c.last)
			}
		})
	}
	// The eaves reach the cut 0.4 m above their knee of 2.07 m rise: 1.2·0.4/2.07.
	if got := find(viewPlan, "eaves")[1].Points[0][0]; got != 0.232 {
		t.Errorf("cut of the eaves at x = %v m, want 0.232 m", got)
	}
}

func BenchmarkReduce(b *testing.B) {
	poses := Sample(synthPose, 1)
	for b.Loop() {
		Reduce(poses)
	}
}

func BenchmarkBuild(b *testing.B) {
	in := synthInput()
	for b.Loop() {
		Build(in)
	}
}

// Limbs come farthest first, whichever hand: each view looks along another axis.
func TestFigureIsPaintedFarToNear(t *testing.T) {
	for _, left := range []bool{false, true} {
		in := synthInput()
		in.At.Left = left
		for view, pr := range projections {
			depth := map[string]float64{}
			for i, c := range in.Tightest.Pose {
				depth[swing.Part(i).String()] = pr.depth(in.At.ToRoom(r3.Scale(0.5, r3.Add(c.A, c.B))))
			}
			last := math.Inf(-1)
			for _, l := range figure(in.Tightest.Pose, pr, in.At) {
				if depth[l.Part] < last-roundTol {
					t.Errorf("left %v, view %d: the %s (depth %.3f m) is painted after something nearer (%.3f m)", left, view, l.Part, depth[l.Part], last)
				}
				last = depth[l.Part]
			}
		}
	}
}
