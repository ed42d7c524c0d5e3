package family

import (
	"math"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// along is a track of a golfer who is one point that moves as way says, in n steps
// of h seconds.
func along(way func(t float64) geom.Vec, n int, h float64) *sweep.Track {
	var times []float64
	var poses []swing.Pose
	for i := range n + 1 {
		at := way(float64(i) * h)
		var p swing.Pose
		for k := range p {
			p[k] = geom.Capsule{A: at, B: at}
		}
		times, poses = append(times, float64(i)*h), append(poses, p)
	}
	return sweep.NewTrack(times, poses)
}

// TestCoarseTimes: between the times that are picked no point leaves its chord by
// more than the tolerance, and no step could be longer.
func TestCoarseTimes(t *testing.T) {
	const h, a, tol = 0.006, 8.0, 0.004 // s, m/s², m
	for _, c := range []struct {
		name string
		way  func(t float64) geom.Vec
		step float64 // the longest that is allowed, in steps of h
	}{
		// Only the bound on a coarse step holds a straight way: 0.08 s.
		{"straight", func(t float64) geom.Vec { return geom.Vec{X: 7 * t} }, 13},
		{"still", func(float64) geom.Vec { return geom.Vec{Y: 3} }, 13},
		// A fall leaves its chord by a·H²/8 in the middle: 0.004 m over 0.0632 s.
		{"a fall", func(t float64) geom.Vec { return geom.Vec{Z: -a * t * t / 2} }, 10},
		// Sixteen times as sharp: a quarter of that.
		{"a sharper fall", func(t float64) geom.Vec { return geom.Vec{X: t, Z: -16 * a * t * t / 2} }, 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			const n = 96
			times := coarseTimes(along(c.way, n, h), tol)
			if times[0] != 0 || math.Abs(times[len(times)-1]-n*h) > 1e-9 {
				t.Errorf("from %v to %v s, want 0 to %v", times[0], times[len(times)-1], n*h)
			}
			for i := 1; i < len(times)-1; i++ {
				if got := (times[i] - times[i-1]) / h; math.Abs(got-c.step) > 1e-6 {
					t.Errorf("a step of %v, want %v", got, c.step)
				}
			}
		})
	}
	// Each of the five points counts.
	for name, e := range map[string]end{"head of the club": {swing.Clubhead, true}, "grip": {swing.Grip, false}, "lead elbow": {swing.LeadUpperArm, true}, "trail elbow": {swing.TrailUpperArm, true}, "head": {swing.Head, true}} {
		track := along(func(float64) geom.Vec { return geom.Vec{} }, 4, h)
		_, poses := track.Samples()
		c := &poses[2][e.part]
		if e.b {
			c.B.Y = 0.01
		} else {
			c.A.Y = 0.01
		}
		if times := coarseTimes(track, tol); len(times) < 3 {
			t.Errorf("the %s jumps aside and is passed over: %v", name, times)
		}
	}
}

// TestOff: how far a point is from where a landmark passes: straight across its
// way, or from the moment's own place beyond half way to the next.
func TestOff(t *testing.T) {
	var w way
	for i := range w {
		w[i][1] = geom.Vec{X: float64(i)} // a metre from moment to moment
	}
	by := passedOf(&w)
	off := func(i, mark int, at geom.Vec) float64 {
		var g gaps
		var own way
		g[i][mark], own[i][mark] = math.Inf(1), at
		if worst := g.follow(&own, by); worst != g[i][mark] {
			t.Errorf("moment %d: the largest gap is %v, the only one %v", i, worst, g[i][mark])
		}
		return g[i][mark]
	}
	for _, c := range []struct {
		name string
		i    int
		at   geom.Vec
		want float64
	}{
		{"there", 5, geom.Vec{X: 5}, 0},
		{"beside", 5, geom.Vec{X: 5, Z: 0.3}, 0.09},
		{"a little later", 5, geom.Vec{X: 5.4}, 0},
		{"a little earlier and beside", 5, geom.Vec{X: 4.5, Y: 0.3}, 0.09},
		{"half way to the next and more", 5, geom.Vec{X: 5.7}, 0.04},
		{"long before", 5, geom.Vec{X: 3}, 2.25},
		{"later than the first", 0, geom.Vec{X: 0.4}, 0.16},
		{"earlier than the last", coverMoments - 1, geom.Vec{X: coverMoments - 1.5}, 0.25},
	} {
		if got := off(c.i, 1, c.at); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %v m², want %v", c.name, got, c.want)
		}
	}
	if got := off(5, 0, geom.Vec{X: 3, Y: 4}); got != 25 {
		t.Errorf("from a landmark that stands still: %v m², want 25", got)
	}
}

func TestUnit(t *testing.T) {
	if got := unit(geom.Vec{X: 3, Z: -4}); math.Abs(got.X-0.6) > 1e-12 || math.Abs(got.Z+0.8) > 1e-12 || got.Y != 0 {
		t.Errorf("unit = %v, want (0.6, 0, −0.8)", got)
	}
	if got := unit(geom.Vec{X: 1e-7}); got != (geom.Vec{}) {
		t.Errorf("unit of next to nothing = %v, want none", got)
	}
}

// TestFootprintOfAShaft: spheres of a layer's radius and Slack around the marks in
// the middles of bins hold every point that is within the part's radius of its
// axis, and no mark is higher than the axis gets.
func TestFootprintOfAShaft(t *testing.T) {
	const (
		radius, more = 0.013, 0.08 // m
		length       = 1.2         // m
	)
	axis := func(t float64) (a, b geom.Vec) {
		s, c := math.Sincos(6 * t)
		a = geom.Vec{X: 0.2 * t, Y: 0.1, Z: 1.2}
		return a, geom.Vec{X: a.X + length*s, Y: a.Y + 0.4*length*c, Z: a.Z - 0.8*length*c}
	}
	var times []float64
	var poses []swing.Pose
	for i := range 121 {
		var p swing.Pose
		a, b := axis(float64(i) / 240)
		p[swing.Shaft] = geom.Capsule{A: a, B: b, R: radius}
		times, poses = append(times, float64(i)/240), append(poses, p)
	}
	f := &Footprint{X0: -2, Y0: -2, NX: 400, NY: 400}
	f.mark(sweep.NewTrack(times, poses), swing.Shaft, more)
	if len(f.Layers) != 1 || math.Abs(f.Layers[0].Radius-0.10) > 1e-9 {
		t.Fatalf("layers %v, want one of 0.10 m: 0.013 and 0.08 and a lull of 0.005, rounded up", f.Layers)
	}
	l := &f.Layers[0]
	top := math.Inf(-1)
	for _, z := range l.Top {
		top = max(top, float64(z))
	}
	if highest := 1.2 + 0.8*length; top > highest || top < highest-0.05 {
		t.Errorf("the highest mark is %v m up, want nearly %v", top, highest)
	}
	// A mark within reach of a point at its own height: of the axis and, upright,
	// a radius above it.
	reach := l.Radius + Slack(l.Radius)
	held := func(p geom.Vec) bool {
		n := int(reach/Bin) + 1
		ci, cj := int((p.X-f.X0)/Bin), int((p.Y-f.Y0)/Bin)
		for j := cj - n; j <= cj+n; j++ {
			for i := ci - n; i <= ci+n; i++ {
				z := float64(l.Top[j*f.NX+i])
				x, y := f.X0+(float64(i)+0.5)*Bin-p.X, f.Y0+(float64(j)+0.5)*Bin-p.Y
				if d := reach*reach - x*x - y*y; d > 0 && z+math.Sqrt(d) >= p.Z {
					return true
				}
			}
		}
		return false
	}
	for i := range 480 {
		a, b := axis(float64(i) / 960)
		for k := range 21 {
			p := geom.Lerp(a, b, float64(k)/20)
			p.Z += radius + more
			if !held(p) {
				t.Fatalf("%v, above the shaft at %.4f s, is higher than the footprint has it", p, float64(i)/960)
			}
		}
	}
	// Away from its way nothing is marked.
	if got := l.Top[0]; got != empty {
		t.Errorf("in a corner where nothing passes: %v m", got)
	}
}

// TestLayers: parts of nearly one thickness share a layer, whose radius is rounded
// up to whole centimetres.
func TestLayers(t *testing.T) {
	f := &Footprint{NX: 2, NY: 2}
	for _, c := range []struct{ radius, want float64 }{{0.041, 0.05}, {0.05, 0.05}, {0.0501, 0.06}, {0.06, 0.06}} {
		if got := f.layerFor(c.radius).Radius; math.Abs(got-c.want) > 1e-12 {
			t.Errorf("layer of %v m for %v m, want %v", got, c.radius, c.want)
		}
	}
	if len(f.Layers) != 2 {
		t.Errorf("%d layers, want 2", len(f.Layers))
	}
	for p, want := range map[swing.Part]float64{swing.Head: bodyLull, swing.Pelvis: bodyLull, swing.LeadUpperArm: lull, swing.TrailHand: lull, swing.LeadThigh: bodyLull, swing.TrailFoot: bodyLull, swing.Grip: lull, swing.Clubhead: lull} {
		if got := lullOf(p); got != want {
			t.Errorf("%v may rest %v m, want %v", p, got, want)
		}
	}
	// The middle of a bin is up to half its diagonal away, a bead half a bead's way.
	if got, want := Slack(0.1), 0.008+0.0016/0.4+0.01*math.Sqrt2/2; math.Abs(got-want) > 1e-12 {
		t.Errorf("Slack(0.1) = %v, want %v", got, want)
	}
}

// TestEnds: each end of a part, with the part's radius.
func TestEnds(t *testing.T) {
	var p swing.Pose
	p[swing.Shaft] = geom.Capsule{A: geom.Vec{X: 1}, B: geom.Vec{X: 2}, R: 3}
	for b, want := range map[bool]float64{false: 1, true: 2} {
		if at, r := (end{swing.Shaft, b}).of(&p); at.X != want || r != 3 {
			t.Errorf("end %v of the shaft is %v, %v", b, at, r)
		}
	}
}

// TestSwing: the central swing and members of the sample by number, of whom and
// from where the plan says.
func TestSwing(t *testing.T) {
	p := plan.Plan{Room: plan.Room{Length: 8, Width: 6, Height: 4}, Floor: plan.Floor{Layers: []plan.Layer{{Name: "turf", Thickness: 0.02}}},
		Tees:    []plan.Tee{{Name: "right", X: 4, Y: 2}, {Name: "left", X: 4, Y: 4}},
		Clubs:   []plan.Club{plan.DefaultClub(plan.KindIron, "7-iron")},
		Players: []plan.Player{{Name: "Ann", Height: 1.7}, {Name: "Bob", Height: 1.8, Hand: plan.HandLeft, Tees: []string{"left"}}}}
	given := plantest.Checked(p)
	same := func(a, b *swing.Swing) bool { return a.PoseAt(0.5) == b.PoseAt(0.5) }
	central, at, err := Swing(given, "Bob", "", "", 0)
	if err != nil || at != (sweep.Placement{Ball: geom.Vec{X: 4, Y: 4, Z: 0.02}, Left: true}) {
		t.Fatalf("Bob stands at %+v, %v", at, err)
	}
	checked := given.Plan()
	if own, err := SwingOf(checked.Players[1], checked.Clubs[0], swing.Variation{}); err != nil || !same(own, central) {
		t.Errorf("member 0 is not the central swing (%v)", err)
	}
	for _, n := range []int{1, Sampled} {
		s, _, err := Swing(given, "Bob", "", "", n)
		if err != nil {
			t.Fatal(err)
		}
		want, err := SwingOf(checked.Players[1], checked.Clubs[0], swing.Variations(Sampled, seed)[n-1])
		if err != nil || !same(s, want) || same(s, central) {
			t.Errorf("member %d is not the %d-th of the sample (%v)", n, n, err)
		}
	}
	for _, c := range []struct {
		player, tee string
		n           int
		want        string
	}{
		{"Ann", "", -1, "sample -1 is outside 0–256"},
		{"Ann", "", 257, "sample 257 is outside 0–256"},
		{"Cy", "", 0, `player "Cy" is not in the plan`},
		{"Bob", "right", 0, `player "Bob" has no tee "right"`},
	} {
		if _, _, err := Swing(given, c.player, "", c.tee, c.n); err == nil || err.Error() != c.want {
			t.Errorf("Swing(%s, %s, %d) = %v, want %s", c.player, c.tee, c.n, err, c.want)
		}
	}
}
