package family

import (
	"math"
	"math/bits"
	"math/rand/v2"
	"slices"
	"testing"

	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/r3"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// manners calls test with families of golfers of all manners.
func manners(t *testing.T, test func(name string, r *Relatives)) {
	players := []plan.Player{
		{Name: "Loose", Height: 1.92, Follow: "loose", Span: 2.01, Turn: "long"},
		{Name: "Full", Height: 1.78},
		{Name: "Held", Height: 1.60, Follow: "held", Plane: "flat", Turn: "compact"},
		{Name: "Child", Height: 1.25, Plane: "upright", Turn: "long"},
		{Name: "Giant", Height: 2.15, Follow: "loose", Plane: "flat", Span: 2.28},
		{Name: "Woman", Height: 1.58, Sex: "female", Follow: "loose", Plane: "upright"},
	}
	if testing.Short() {
		players = players[:1]
	}
	for _, player := range players {
		for _, club := range []plan.Club{plan.DefaultClub("driver", "driver"), plan.DefaultClub("wedge", "wedge")} {
			r, err := New(player, club, []geom.Vec{{Z: -1}})
			if err != nil {
				t.Fatal(err)
			}
			test(player.Name+", "+club.Name, r)
		}
	}
}

// TestNear: where anybody comes near a box is told as if every part that may be there
// had been looked at of everybody in every step, whatever was asked before; and without
// looking at most of that.
func TestNear(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	manners(t, func(name string, r *Relatives) {
		times := r.rougher
		all := slices.Repeat([]swing.Parts{swing.AllParts}, len(times)-1)
		r.know(all)
		whole := r.where.swath
		none := func() {
			clear(r.where.known)
			r.where.swath = sweep.NewSwath(times, len(r.Far)+len(r.Sample)+len(r.Singles))
		}
		none()
		some, looked := 0, 0
		const boxes = 60
		for range boxes {
			at := geom.Vec{X: 5*rng.Float64() - 2.5, Y: 5*rng.Float64() - 2.5, Z: 3 * rng.Float64()}
			b := geom.Box{Min: at, Max: r3.Add(at, geom.Vec{X: rng.Float64(), Y: rng.Float64(), Z: rng.Float64()})}
			limit := rng.Float64() - 0.2
			got, may := r.near(&b, limit), r.mayBe(&b, limit)
			for i, near := range got {
				if want := whole.Near(i, may[i], &b, limit); near != want {
					t.Errorf("%s: nearer than %.3f m to %v in step %d are %b, want %b", name, limit, b, i, near, want)
				}
			}
			if union(got) != 0 {
				some++
			}
			for _, parts := range r.where.known {
				looked += bits.OnesCount32(uint32(parts))
			}
			if rng.IntN(4) == 0 { // from now on it knows only what is asked next
				none()
			}
		}
		if all := boxes * len(r.where.known) * int(swing.NumParts); some < boxes/15 || looked > all*2/3 {
			t.Errorf("%s: of %d boxes %d are near to somebody, and %d of %d parts in steps were looked at", name, boxes, some, looked, all)
		}
	})
}

// TestSpreadHoldsEveryMember checks the boxes that say when anybody may be at a
// surface at all.
func TestSpreadHoldsEveryMember(t *testing.T) {
	holds := func(name string, r *Relatives, spread Spread, steps []float64) {
		const between = 3
		for j, boxes := range spread {
			var times []float64
			for k := range between + 1 {
				times = append(times, steps[j]+(steps[j+1]-steps[j])*float64(k)/between)
			}
			r.Family.SetTimes(times)
			poses := make([]swing.Pose, len(times))
			for _, m := range r.All() {
				r.Family.Poses(m.Swing, swing.AllParts, poses)
				for k := range poses {
					for p := range swing.NumParts {
						if b := poses[k][p].Bounds(); boxes[p].Union(b) != boxes[p] {
							t.Fatalf("%s: %v of %v at %.4f s is at %v, outside %v", name, p, m.Variation, times[k], b, boxes[p])
						}
					}
				}
			}
		}
	}
	manners(t, func(name string, r *Relatives) {
		holds(name, r, r.Spread(), r.Times)
		holds(name+", roughly", r, r.rough().spread, r.rougher)
	})
}

// TestClears: nobody comes nearer to a box than a step is said to be clear of it; and that is said
// of most steps of which it is so.
func TestClears(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 6))
	manners(t, func(name string, r *Relatives) {
		r.rough()
		w, members := r.where.sways, r.All()
		said, could := 0, 0
		for range 40 {
			at := geom.Vec{X: 4*rng.Float64() - 2, Y: 4*rng.Float64() - 2, Z: 3 * rng.Float64()}
			b := geom.Box{Min: at, Max: r3.Add(at, geom.Vec{X: rng.Float64(), Y: rng.Float64(), Z: rng.Float64()})}
			step, part := rng.IntN(len(r.rougher)-1), swing.Part(rng.IntN(int(swing.NumParts)))
			from, to := r.rougher[step], r.rougher[step+1]
			r.Family.SetTimes([]float64{from, from + (to-from)/3, from + (to-from)*2/3, to})
			poses, nearest := make([]swing.Pose, 4), math.Inf(1)
			for _, m := range members {
				r.Family.Poses(m.Swing, part.Set(), poses)
				for k := range poses {
					nearest = min(nearest, b.Separate(poses[k][part]).D)
				}
			}
			if nearest <= 0 {
				continue
			}
			if w.clears(step, part, &b, nearest+1e-6) {
				t.Errorf("%s: the %v is said to stay %.3f m from %v in step %d, and comes within %.3f", name, part, nearest+1e-6, b, step, nearest)
			}
			could++
			if w.clears(step, part, &b, nearest-0.4) {
				said++
			}
		}
		if could < 15 || said < could/2 {
			t.Errorf("%s: of %d steps that are clear by 0.4 m more %d are said to be", name, could, said)
		}
	})
}
