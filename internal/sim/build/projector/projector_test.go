package projector

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"wideberth/internal/sim/build/figures"
	"wideberth/internal/sim/build/screen"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

func TestAngles(t *testing.T) {
	for _, r := range figures.Read("angles.csv") {
		if got := screen.Degrees(Angle(r.Number("ratio"))); math.Abs(got-r.Number("angle")) > 0.06 {
			t.Errorf("ratio %s: %v°, want %s°", r["ratio"], got, r["angle"])
		}
	}
}

func TestLuminances(t *testing.T) {
	for _, r := range figures.Read("light.csv") {
		got := Luminance(r.Number("lumens"), 1, r.Number("width_m")*r.Number("height_m"))
		if math.Abs(got-r.Number("cd_m2")) > 0.1 || math.Abs(got/FootLambert-r.Number("fL")) > 0.06 {
			t.Errorf("%v: %v cd/m², %v fL", r, got, got/FootLambert)
		}
	}
	if math.Abs(FootLambert-3.4263) > 5e-5 || math.Abs(14*FootLambert-CinemaWhite) > 0.05 {
		t.Errorf("a foot-lambert is %v cd/m²", FootLambert)
	}
}

// TestPyramid: how low the light is before the screen, and who just clears it.
func TestPyramid(t *testing.T) {
	p := Pyramid{Lens: geom.Vec{X: 2.4, Y: 2, Z: 2.55}, Image: screen.Image{X: 6, Centre: 2, Width: 3.44, Height: 2.15, Bottom: 0.30}}
	for _, r := range figures.Read("pyramid.csv") {
		if got := p.LowestAt(r.Number("from_screen")); math.Abs(got-r.Number("lowest")) > 1e-9 {
			t.Errorf("%s m from the screen: %v m, want %s", r["from_screen"], got, r["lowest"])
		}
	}
	// A golfer of 1.80 m on the centre line just clears at 2.5 m, and not at 2.0 m.
	stands := func(fromScreen float64) float64 {
		s := NewShade(MeshOf(240, p.Image))
		s.Capsule(p, geom.Capsule{A: geom.Vec{X: 6 - fromScreen, Y: 2, Z: 0.01}, B: geom.Vec{X: 6 - fromScreen, Y: 2, Z: 1.79}, R: 0.01})
		return s.Share()
	}
	if stands(2.5) > 0 || stands(2.0) == 0 {
		t.Errorf("shadows %v at 2.5 m, %v at 2.0 m; want none, and some", stands(2.5), stands(2.0))
	}
}

// TestOffsets: 15 % to the nearest edge is 115 % to the farthest; 0 is 100 %, and the
// middle of the image 50 %.
func TestOffsets(t *testing.T) {
	for _, c := range []struct{ lens, edge, far float64 }{
		{2 + 0.15*1, 0.15, 1.15}, {2, 0, 1}, {1.5, -0.5, 0.5}, {0.85, 0.15, 1.15}, {1.8, -0.2, 0.8},
	} {
		edge, far := Offsets(c.lens, 1, 1)
		if math.Abs(edge-c.edge) > 1e-12 || math.Abs(far-c.far) > 1e-12 {
			t.Errorf("lens at %v: %v and %v, want %v and %v", c.lens, edge, far, c.edge, c.far)
		}
	}
}

// darkAt is the slow way: it walks from the lens to a point of the image in small steps
// and looks whether any step is in a part.
func darkAt(lens, to geom.Vec, parts []geom.Capsule, boxes []geom.Box) bool {
	const steps = 500
	for k := range steps + 1 {
		at := geom.Lerp(lens, to, float64(k)/steps)
		for _, c := range parts {
			ab := geom.Vec{X: c.B.X - c.A.X, Y: c.B.Y - c.A.Y, Z: c.B.Z - c.A.Z}
			ap := geom.Vec{X: at.X - c.A.X, Y: at.Y - c.A.Y, Z: at.Z - c.A.Z}
			u := 0.0
			if n := geom.Dot(ab, ab); n > 0 {
				u = min(max(geom.Dot(ap, ab)/n, 0), 1)
			}
			d := geom.Vec{X: ap.X - u*ab.X, Y: ap.Y - u*ab.Y, Z: ap.Z - u*ab.Z}
			if geom.Norm(d) < c.R {
				return true
			}
		}
		for _, b := range boxes {
			if b.Clamp(at) == at {
				return true
			}
		}
	}
	return false
}

// TestShadowAgainstWalkedRays holds the share that is dark against random rays that are
// walked step by step, for golfers of both hands at several moments and lens places.
func TestShadowAgainstWalkedRays(t *testing.T) {
	p := plan.Demo()
	p.Players = []plan.Player{p.Players[1], p.Players[2]}
	p.Clubs = p.Clubs[:1]
	p.Players[1].Clubs = nil
	var lab fit.Lab
	casts, err := lab.Casts(p, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	image := screen.Image{X: 5.99, Centre: 2.74, Width: 3.4, Height: 2.1, Bottom: 0.2}
	rng := rand.New(rand.NewPCG(11, 11))
	dark := 0
	for _, lens := range []geom.Vec{{X: 2.5, Y: 2.74, Z: 2.9}, {X: 1.2, Y: 2.0, Z: 1.4}, {X: 0.8, Y: 3.4, Z: 0.4}} {
		light := Pyramid{lens, image}
		for _, c := range casts {
			f := FilmOf(p, c, p.Tees[0])
			for _, time := range []float64{0, 1.33} {
				s := NewShade(MeshOf(saidMesh, image))
				f.Dark(s, light, time)
				var parts []geom.Capsule
				pose := c.Kin.Family.Central.PoseAt(time)
				for i := range pose {
					parts = append(parts, sweep.Place(p, p.Tees[0], c.Player).Capsule(pose[i]))
				}
				const rays = 500
				n := 0
				for range rays {
					if darkAt(lens, light.point(rng.Float64(), rng.Float64()), parts, nil) {
						n++
					}
				}
				share := float64(n) / rays
				got := s.Share()
				// Four standard deviations of that many rays, and half a cell.
				if math.Abs(got-share) > 4*math.Sqrt(max(got*(1-got), 1e-3)/rays)+0.004 {
					t.Errorf("%s from %v at %v s: %.4f dark, walked rays find %.4f", c.Player.Name, lens, time, got, share)
				}
				if got > 0.05 {
					dark++
				}
			}
		}
	}
	if dark < 4 {
		t.Errorf("only %d of the moments have a shadow worth the name", dark)
	}
}

// TestBoxShadow: of a box the same, in many random places.
func TestBoxShadow(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	image := screen.Image{X: 6, Centre: 2, Width: 3, Height: 2, Bottom: 0.3}
	for range 40 {
		lens := geom.Vec{X: 4 * rng.Float64(), Y: 4 * rng.Float64(), Z: 3 * rng.Float64()}
		lo := geom.Vec{X: 5 * rng.Float64(), Y: 4 * rng.Float64(), Z: 2.5 * rng.Float64()}
		b := geom.Box{Min: lo, Max: geom.Vec{X: lo.X + 0.1 + 0.7*rng.Float64(), Y: lo.Y + 0.1 + 0.7*rng.Float64(), Z: lo.Z + 0.1 + 0.7*rng.Float64()}}
		light := Pyramid{lens, image}
		s := NewShade(MeshOf(120, image))
		s.Box(light, b)
		const rays = 400
		n := 0
		for range rays {
			if darkAt(lens, light.point(rng.Float64(), rng.Float64()), nil, []geom.Box{b}) {
				n++
			}
		}
		if got, share := s.Share(), float64(n)/rays; math.Abs(got-share) > 4*math.Sqrt(max(got*(1-got), 2e-3)/rays)+0.01 {
			t.Errorf("box %v from %v: %v dark, walked rays find %v", b, lens, got, share)
		}
	}
}

// TestDarkest: no frame of a swing is darker than the one that is told, at the mesh
// that is searched with.
func TestDarkest(t *testing.T) {
	p := plan.Demo()
	c, err := fit.NewCast(p, "Tall guest", "driver")
	if err != nil {
		t.Fatal(err)
	}
	light := Pyramid{geom.Vec{X: 1.0, Y: 3.6, Z: 1.7}, screen.Image{X: 5.99, Centre: 2.74, Width: 3.4, Height: 2.1, Bottom: 0.2}}
	s := NewShade(MeshOf(searchMesh, light.Image))
	f := FilmOf(p, c, p.Tees[0])
	_, got := f.darkest(s, light)
	most := 0.0
	for k := range f.Frames() {
		most = max(most, f.share(s, light, k))
	}
	if got < most-0.005 || got < 0.05 {
		t.Errorf("the darkest of all frames is %v, told is %v", most, got)
	}
}

// TestItself: the hung thing that holds the lens is the projector; without one a case
// is put about the lens.
func TestItself(t *testing.T) {
	p := plan.Demo()
	j := spec.Projector{Lens: [3]float64{2.5146, 2.7432, 2.8702}, Body: [3]float64{0.4, 0.3, 0.2}, Mount: spec.MountCeiling}
	if h, in := Itself(p, j); !in || h.Name != "projector" {
		t.Errorf("%+v, %v", h, in)
	}
	j.Lens[1] = 1
	h, in := Itself(p, j)
	if in || h.Max[0] != j.Lens[0] || math.Abs(h.Min[1]-0.85) > 1e-9 || math.Abs(h.Max[2]-2.9702) > 1e-9 {
		t.Errorf("%+v, %v", h, in)
	}
	j.Mount = spec.MountRear
	if h, _ := Itself(p, j); h.Min[0] != j.Lens[0] {
		t.Errorf("from behind the case lies beyond the lens: %+v", h)
	}
}

// castsOf checks a plan and has everybody in it cast.
func castsOf(t *testing.T, p plan.Plan) (plan.Checked, *fit.Lab, []fit.Cast) {
	t.Helper()
	c, err := plan.Check(p)
	if err != nil {
		t.Fatal(err)
	}
	lab := new(fit.Lab)
	casts, err := lab.Casts(c.Plan(), nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	return c, lab, casts
}

// TestRegion: where a lens may hang the check finds the case clear, and just under what
// is swept it does not; the light's top edge passes under the beam at the height told.
func TestRegion(t *testing.T) {
	p := plan.Demo()
	p.Room.Solids[0].Min[2] = 2.5 // a deep beam
	c, lab, casts := castsOf(t, p)
	p = c.Plan()
	j := spec.Projector{Lens: [3]float64{2.5, 2.7432, 2.8}, ThrowRatio: [2]float64{0.9, 1.1}, Body: [3]float64{0.4, 0.3, 0.2}, Mount: spec.MountCeiling}
	i := screen.Image{X: p.Screen.X, Centre: 2.7432, Width: 3.4, Height: 1.9, Bottom: 0.1}
	region, err := Region(lab, c, casts, j, i)
	if err != nil || len(region) != columns {
		t.Fatalf("%d columns, %v", len(region), err)
	}
	for k, v := range region {
		if k > 0 && !(v.Throw > region[k-1].Throw && v.X < region[k-1].X) {
			t.Errorf("throw %v at x %v after %v", v.Throw, v.X, region[k-1].Throw)
		}
		beam := NewShade(MeshOf(60, i))
		at := func(z float64) float64 {
			beam.Clear()
			beam.Box(Pyramid{geom.Vec{X: v.X, Y: j.Lens[1], Z: z}, i}, sweep.Surfaces(p)[6].Box)
			return beam.Share()
		}
		if s := sweep.Surfaces(p)[6]; s.Name != "boxed beam" {
			t.Fatalf("surface 6 is %s", s.Name)
		}
		if at(v.Free) > 0 || at(v.Free+0.1) == 0 && v.Free < p.Room.Height-0.2 {
			t.Errorf("x %v: the beam cuts %v at %v, %v above it", v.X, at(v.Free), v.Free, at(v.Free+0.1))
		}
		dark := NewShade(MeshOf(searchMesh, i))
		for _, c := range casts {
			f := FilmOf(p, c, p.Tees[0])
			if _, share := f.darkest(dark, Pyramid{geom.Vec{X: v.X, Y: j.Lens[1], Z: v.Shade}, i}); share > 0 {
				t.Errorf("x %v: from %v %s with %s cuts %v", v.X, v.Shade, c.Player.Name, c.Club.Name, share)
			}
		}
	}
}

// TestRegionUnderKnee: where the ceiling comes down lower than the case is high the lens
// may not hang, and that is no mistake.
func TestRegionUnderKnee(t *testing.T) {
	p := plan.Demo()
	p.Players, p.Clubs = p.Players[:1], p.Clubs[:1]
	p.Room.Slopes = append(p.Room.Slopes, plan.Slope{Name: "eaves", Wall: plan.WallBack, KneeHeight: 0, Run: 1.5})
	c, lab, casts := castsOf(t, p)
	j := spec.Projector{Lens: [3]float64{0.6, 2.7, 0.2}, ThrowRatio: [2]float64{1, 1.6}, Body: [3]float64{0.4, 0.3, 1}, Mount: spec.MountCeiling}
	region, err := Region(lab, c, casts, j, screen.Image{X: 5.99, Centre: 2.7, Width: 3.4, Height: 2, Bottom: 0.1})
	if err != nil || len(region) == 0 || len(region) >= columns {
		t.Errorf("%d columns, %v; want some, less than %d", len(region), err, columns)
	}
}

// TestShadowsNamed: of two tees the darker is told, in a phase of the swing.
func TestShadowsNamed(t *testing.T) {
	p := plan.Demo()
	p.Players, p.Clubs = p.Players[:1], p.Clubs[:1]
	var lab fit.Lab
	casts, err := lab.Casts(p, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	p.Tees = append(p.Tees, plan.Tee{Name: "nearer the screen", X: 3.6, Y: 2.7432})
	light := Pyramid{geom.Vec{X: 1.0, Y: 3.6, Z: 1.6}, screen.Image{X: 5.99, Centre: 2.74, Width: 3.4, Height: 2.1, Bottom: 0.2}}
	all := Shadows(p, casts, light)
	if len(all) != 1 || all[0].Tee != "middle" || all[0].Worst < all[0].Address || all[0].Address == 0 {
		t.Fatalf("%+v, want one, from the tee that is nearer the lens", all)
	}
	known := false
	for _, ph := range swing.Phases() {
		known = known || string(ph) == all[0].Phase
	}
	if !known {
		t.Errorf("phase %q", all[0].Phase)
	}
	// Higher up, a ceiling's lens is cut less: never more by the same golfer.
	last := 1.0
	for z := 1.6; z < 4; z += 0.3 {
		light.Lens.Z = z
		worst := Shadows(p, casts, light)[0].Worst
		if worst > last+0.01 {
			t.Errorf("from %v m up more is cut than from lower: %v after %v", z, worst, last)
		}
		last = worst
	}
}

var update = flag.Bool("update", false, "rewrite the golden files")

// TestGoldenLight holds where a lens may hang, shadows and what stands in the light, for
// lenses before and behind the golfer, high and low.
func TestGoldenLight(t *testing.T) {
	p := plan.Demo()
	p.Players, p.Clubs = p.Players[:1], p.Clubs[:1]
	c, lab, casts := castsOf(t, p)
	p = c.Plan()
	type seen struct {
		Region   []Column
		Shadows  []Shadow
		Blocked  []Blocked
		Unshaded bool
		Itself   plan.Hung
	}
	all := []seen{}
	for _, lens := range [][3]float64{{2.5146, 2.7432, 2.8702}, {1.5, 3.4, 2.1}, {4.2, 2.2, 2.7}, {0.8, 2.7, 0.4}} {
		j := spec.Projector{Lens: lens, ThrowRatio: [2]float64{0.5, 1.4}, Offset: []float64{0.1, 0.5}, Body: [3]float64{0.4, 0.3, 0.2}, Mount: spec.MountCeiling}
		i := screen.Image{X: p.Screen.X, Centre: 2.7432, Width: 3.4, Height: 2, Bottom: 0.1}
		light := Pyramid{Point(lens), i}
		one := seen{Shadows: Shadows(p, casts, light), Unshaded: Unshaded(p, casts, light)}
		one.Itself, _ = Itself(p, j)
		one.Blocked = InTheWay(p, light, one.Itself.Name)
		region, err := Region(lab, c, casts, j, i)
		if err != nil {
			t.Fatal(err)
		}
		one.Region = region
		all = append(all, one)
	}
	if err := figures.Held("light.golden.json", all, *update); err != nil {
		t.Error(err)
	}
}

// TestApart: the distance of two segments against a fine walk along both, also of
// parallel ones, points and ends beyond one another.
func TestApart(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 8))
	at := func() geom.Vec { return geom.Vec{X: rng.Float64(), Y: rng.Float64(), Z: rng.Float64()} }
	for k := range 300 {
		p, q, a, b := at(), at(), at(), at()
		switch k % 4 {
		case 1: // a point
			b = a
		case 2: // parallel
			b = geom.Vec{X: a.X + 0.5*(q.X-p.X), Y: a.Y + 0.5*(q.Y-p.Y), Z: a.Z + 0.5*(q.Z-p.Z)}
		case 3: // parallel, beyond the end
			a = geom.Vec{X: q.X + (q.X - p.X), Y: q.Y + (q.Y - p.Y), Z: q.Z + 0.1}
			b = geom.Vec{X: a.X + (q.X - p.X), Y: a.Y + (q.Y - p.Y), Z: a.Z + (q.Z - p.Z)}
		}
		least := math.Inf(1)
		const steps = 100
		for i := range steps + 1 {
			for j := range steps + 1 {
				u, v := geom.Lerp(p, q, float64(i)/steps), geom.Lerp(a, b, float64(j)/steps)
				least = min(least, (u.X-v.X)*(u.X-v.X)+(u.Y-v.Y)*(u.Y-v.Y)+(u.Z-v.Z)*(u.Z-v.Z))
			}
		}
		if got := apart2(p, q, a, b); got > least+1e-9 || math.Sqrt(least)-math.Sqrt(got) > 0.02 {
			t.Errorf("case %d: %v, walked %v", k, math.Sqrt(got), math.Sqrt(least))
		}
	}
}
