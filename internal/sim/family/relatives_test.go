package family

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

// reducedTolerance is how far a reach that was found by looking at part of a
// swing may lie from the one found by looking at all of it: the chord deviations
// of both.
const reducedTolerance = 2 * fineTolerance

// TestSampleReachesAsWholeSwings compares the reduced sample, for which only the
// promising moments and parts are looked at, with full tracks of the same swings.
func TestSampleReachesAsWholeSwings(t *testing.T) {
	slope := geom.Vec{Y: -0.6, Z: -0.8}
	dirs := []geom.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: -1}, slope}
	const roughly = 0.12 // m
	players := []plan.Player{
		{Name: "Host", Height: 1.78},
		{Name: "Tall guest", Height: 1.98, Follow: "loose", Turn: "long"},
		{Name: "Short and held", Height: 1.55, Follow: "held", Plane: "flat", Turn: "compact"},
	}
	for _, player := range players {
		for _, club := range []plan.Club{plan.DefaultClub("driver", "driver"), plan.DefaultClub("wedge", "wedge")} {
			t.Run(player.Name+" "+club.Name, func(t *testing.T) {
				r, err := New(player, club, dirs)
				if err != nil {
					t.Fatal(err)
				}
				for i := 0; i < len(r.Sample); i += 5 {
					full := sweep.Sample(r.Sample[i].Swing, sweep.FineTolerance)
					extremes := make([]sweep.Extreme, len(dirs))
					full.Support(dirs, extremes)
					for k := range dirs {
						m := r.Sample[i]
						want, rough := extremes[k].Value, m.least[k]
						if m.look[k] == roughLook {
							r.closer(m, k)
						}
						got := m.least[k]
						if rough > want+reducedTolerance || rough < want-roughly {
							t.Errorf("member %d reaches %.4f along %v at a rough look, want %.4f or up to %.2f less", i, rough, dirs[k], want, roughly)
						}
						if got > want+reducedTolerance || got < want-reducedTolerance-sampleTolerance {
							t.Errorf("member %d reaches %.4f along %v, want %.4f (± %.4f)", i, got, dirs[k], want, reducedTolerance)
						}
					}
				}
			})
		}
	}
}

// TestBeyondWhateverWasAsked: whether a member goes beyond a surface is told alike before
// and after it was looked at closely for another one.
func TestBeyondWhateverWasAsked(t *testing.T) {
	looked := 0
	for _, player := range []plan.Player{{Name: "Child", Height: 1.25}, {Name: "Host", Height: 1.78}, {Name: "Loose", Height: 1.92, Follow: "loose", Turn: "long"}} {
		r, err := New(player, plan.DefaultClub("wedge", "wedge"), Directions(nil))
		if err != nil {
			t.Fatal(err)
		}
		for i, m := range r.Sample {
			for k := range r.dirs {
				if m.look[k] != roughLook {
					continue
				}
				looked++
				d := m.least[k]
				before := r.beyond(m, k, d)
				if !r.beyond(m, k, math.Inf(1)) || m.look[k] == roughLook {
					t.Errorf("%s, member %d is not looked at for a surface that everybody passes", player.Name, i)
				}
				if after := r.beyond(m, k, d); after != before {
					t.Errorf("%s, member %d goes beyond %.4f along %v: %t, and %t once it was looked at closely", player.Name, i, d, r.dirs[k], before, after)
				}
			}
		}
	}
	if looked < 2000 {
		t.Errorf("%d looks were rough ones, want most of %d", looked, 3*5*Sampled)
	}
}

// TestTreeHoldsTheSample checks boxes: the atlas's tree is the answer of maps for
// a box, so no sampled member may come nearer to one than the atlas's hollow.
func TestTreeHoldsTheSample(t *testing.T) {
	r, err := New(plan.Player{Name: "Host", Height: 1.78}, plan.DefaultClub("driver", "driver"), []geom.Vec{{Z: -1}})
	if err != nil {
		t.Fatal(err)
	}
	boxes := map[string]geom.Box{
		"beam ahead, overhead":   {Min: geom.Vec{X: 0.2, Y: -3, Z: 2.45}, Max: geom.Vec{X: 0.4, Y: 3, Z: 2.8}},
		"beam behind, overhead":  {Min: geom.Vec{X: -0.9, Y: -3, Z: 2.35}, Max: geom.Vec{X: -0.7, Y: 3, Z: 2.8}},
		"projector behind":       {Min: geom.Vec{X: -0.8, Y: 0.1, Z: 2.35}, Max: geom.Vec{X: -0.4, Y: 0.5, Z: 2.7}},
		"lamp over the ball":     {Min: geom.Vec{X: -0.1, Y: -0.1, Z: 2.0}, Max: geom.Vec{X: 0.1, Y: 0.1, Z: 2.7}},
		"column behind the back": {Min: geom.Vec{X: -0.6, Y: 2.0, Z: 0}, Max: geom.Vec{X: -0.3, Y: 2.3, Z: 3}},
		"column on the far side": {Min: geom.Vec{X: -0.6, Y: -0.8, Z: 0}, Max: geom.Vec{X: -0.3, Y: -0.5, Z: 3}},
		"low duct at the side":   {Min: geom.Vec{X: -2, Y: 1.4, Z: 2.2}, Max: geom.Vec{X: 2, Y: 2, Z: 3}},
		"bench behind the heels": {Min: geom.Vec{X: -1, Y: 1.5, Z: 0}, Max: geom.Vec{X: 1, Y: 1.9, Z: 0.45}},
	}
	for name, box := range boxes {
		s := sweep.Surface{Name: name, Kind: sweep.Solid, Box: box}
		tree := r.Atlas().tree.Clearance(box).Clearance
		all := math.Inf(1)
		for _, m := range append(slices.Clone(r.Far), r.Sample...) {
			if c, nearer := sweep.Sample(m.Swing, sweep.FineTolerance).ClearanceWithin(s, all); nearer {
				all = c.Clearance
			}
		}
		if tree-all > r.Atlas().Hollow {
			t.Errorf("%s: a member comes to %.3f m, the tree only to %.3f m", name, all, tree)
		}
		got, _, _ := r.againstBox(s, make([]bool, len(r.Sample)))
		if got > all+reducedTolerance {
			t.Errorf("%s: clearance = %.4f, want %.4f over all members", name, got, all)
		}
	}
}

// TestTreeHoldsTheSampleAnywhere is the same for things of all shapes at random
// places all round and inside the sweep, for golfers of all manners.
func TestTreeHoldsTheSampleAnywhere(t *testing.T) {
	if testing.Short() {
		t.Skip("takes long; says nothing that differs from one machine to the next")
	}
	shapes := map[string]func(x, y, z float64) geom.Box{
		"thread": func(x, y, z float64) geom.Box {
			const hair = 1e-4 // m
			return geom.Box{Min: geom.Vec{X: x - hair, Y: y - hair, Z: z}, Max: geom.Vec{X: x + hair, Y: y + hair, Z: z + 30}}
		},
		"box": func(x, y, z float64) geom.Box {
			return geom.Box{Min: geom.Vec{X: x, Y: y, Z: z}, Max: geom.Vec{X: x + 0.4, Y: y + 0.4, Z: z + 0.3}}
		},
		"post": func(x, y, _ float64) geom.Box {
			return geom.Box{Min: geom.Vec{X: x, Y: y}, Max: geom.Vec{X: x + 0.1, Y: y + 0.1, Z: 4}}
		},
		"beam": func(x, _, z float64) geom.Box {
			return geom.Box{Min: geom.Vec{X: x, Y: -9, Z: z}, Max: geom.Vec{X: x + 0.2, Y: 9, Z: 9}}
		},
	}
	for _, player := range []plan.Player{
		{Name: "Full", Height: 1.78},
		{Name: "Loose", Height: 1.92, Follow: "loose", Span: 2.01},
		{Name: "Held", Height: 1.60, Follow: "held"},
	} {
		r, err := New(player, plan.DefaultClub("driver", "driver"), []geom.Vec{{Z: -1}})
		if err != nil {
			t.Fatal(err)
		}
		tracks := sampleTracks(r)
		for name, shape := range shapes {
			rnd := rand.New(rand.NewPCG(14, 15))
			worst, tried := 0.0, 0
			for tried < 40 {
				box := shape(-2.2+4.4*rnd.Float64(), -1.2+4*rnd.Float64(), 3*rnd.Float64())
				c, near := r.Atlas().tree.ClearanceWithin(box, 0.4)
				if !near || c.Clearance < 0 {
					continue
				}
				tried++
				for _, track := range tracks {
					if q, nearer := track.ClearanceWithin(sweep.Surface{Kind: sweep.Solid, Box: box}, c.Clearance-worst); nearer {
						worst = c.Clearance - q.Clearance
					}
				}
			}
			if hollow := r.Atlas().Hollow; worst > hollow {
				t.Errorf("%s, %s: a member comes %.4f m nearer than the tree, want at most %.2f", player.Name, name, worst, hollow)
			}
		}
	}
}

// TestBoxesAreNeverFlattered holds the clearance of a check to a box, near or far,
// against every member of the sample.
func TestBoxesAreNeverFlattered(t *testing.T) {
	for _, player := range []plan.Player{
		{Name: "Full", Height: 1.78},
		{Name: "Loose", Height: 1.92, Follow: "loose", Span: 2.01},
		{Name: "Held", Height: 1.60, Follow: "held"},
	} {
		r, err := New(player, plan.DefaultClub("driver", "driver"), []geom.Vec{{Z: -1}})
		if err != nil {
			t.Fatal(err)
		}
		tracks := sampleTracks(r)
		rnd := rand.New(rand.NewPCG(16, 17))
		for range 40 {
			x, y, z := -2.8+5.6*rnd.Float64(), -1.8+5*rnd.Float64(), 3.2*rnd.Float64()
			box := geom.Box{Min: geom.Vec{X: x, Y: y, Z: z}, Max: geom.Vec{X: x + 0.4, Y: y + 0.4, Z: z + 0.3}}
			s := sweep.Surface{Kind: sweep.Solid, Box: box}
			got, _, _ := r.againstBox(s, make([]bool, len(r.Sample)))
			for i, track := range tracks {
				if c, nearer := track.ClearanceWithin(s, got-reducedTolerance); nearer {
					t.Errorf("%s: clearance to %v = %.4f, but member %d comes to %.4f", player.Name, box, got, i, c.Clearance)
					break
				}
			}
		}
	}
}

// sampleTracks returns every member of the sample as a full track.
func sampleTracks(r *Relatives) (out []*sweep.Track) {
	for _, m := range r.Sample {
		out = append(out, sweep.Sample(m.Swing, sweep.FineTolerance))
	}
	return out
}

// TestAgainst: a flat surface is as far from the typical swing and from the loosest as
// their tracks are, and a box in the way costs clearance as much as single traits say.
func TestAgainst(t *testing.T) {
	wall := geom.Vec{Y: -1}
	r, err := New(plan.Player{Name: "Host", Height: 1.8}, plan.DefaultClub("driver", "driver"), []geom.Vec{wall})
	if err != nil {
		t.Fatal(err)
	}
	s := sweep.Surface{Name: "wall", Kind: sweep.Wall, Plane: geom.Halfspace{N: wall, D: -2.5}}
	away := func(m *Member) float64 { return sweep.Sample(m.Swing, sweep.FineTolerance).Clearance(s).Clearance }
	least, typical, who := r.Against(s, make([]bool, len(r.Sample)))
	if math.Abs(typical-away(r.Central)) > sampleTolerance+reducedTolerance || math.Abs(least-away(who)) > reducedTolerance || least > typical {
		t.Errorf("the wall is %.4f m from the typical swing and %.4f from the loosest, their tracks are %.4f and %.4f away", typical, least, away(r.Central), away(who))
	}

	s = sweep.Surface{Name: "box", Kind: sweep.Solid, Box: geom.Box{Min: geom.Vec{X: -1, Y: 1.9, Z: 0}, Max: geom.Vec{X: 1, Y: 2.1, Z: 3}}}
	cost := r.Costs(s)
	for trait := range cost {
		less, more := away(r.Singles[2*trait]), away(r.Singles[2*trait+1])
		if want := (less - more) / 2; math.Abs(cost[trait]-want) > 0.02 {
			t.Errorf("trait %d costs %.3f m to the box, single swings say %.3f", trait, cost[trait], want)
		}
	}
}

// TestReachIsFine: how far the loosest member reaches is told without flattery, and with no more
// taken off than a fine look takes.
func TestReachIsFine(t *testing.T) {
	const step = 2e-4 // s
	manners(t, func(name string, r *Relatives) {
		for _, n := range r.dirs {
			least, _, who := r.Reach(n)
			want := math.Inf(1)
			for at := 0.0; at < who.Swing.Duration(); at += step {
				pose := who.Swing.PoseAt(at)
				for _, part := range pose {
					want = min(want, part.Reach(n))
				}
			}
			if least > want+1e-4 || least < want-fineTolerance {
				t.Errorf("%s: against %v the loosest reaches %.5f m, want %.5f less %.5f at most", name, n, least, want, fineTolerance)
			}
		}
	})
}
