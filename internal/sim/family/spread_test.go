package family

import (
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

// TestBodiesNear: where bodies come near a box is told as if every part of every body
// had been looked at in every step, whatever was asked before; and of most boxes without
// looking at them.
func TestBodiesNear(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	manners(t, func(name string, r *Relatives) {
		whole := r.swath(swing.BodyParts, r.clubs().Times())
		some, far := 0, 0
		const boxes = 60
		for range boxes {
			at := geom.Vec{X: 5*rng.Float64() - 2.5, Y: 5*rng.Float64() - 2.5, Z: 3 * rng.Float64()}
			b := geom.Box{Min: at, Max: r3.Add(at, geom.Vec{X: rng.Float64(), Y: rng.Float64(), Z: rng.Float64()})}
			limit := rng.Float64() - 0.2
			want := whole.Near(b, limit)
			got, near := r.bodiesNear(b, limit)
			if near != slices.ContainsFunc(want, func(p swing.Parts) bool { return p != 0 }) || !slices.Equal(got, want) {
				t.Errorf("%s: nearer than %.3f m to %v are %v, want %v", name, limit, b, got, want)
			}
			if near {
				some++
			}
			if !slices.ContainsFunc(r.bodies.known, func(p swing.Parts) bool { return p != 0 }) {
				far++
			}
			if rng.IntN(4) == 0 { // from now on it knows only this
				clear(r.bodies.known)
				r.bodies.swath = sweep.NewSwath(swing.BodyParts, r.clubs().Times())
			}
		}
		if some < boxes/15 || far < boxes/15 {
			t.Errorf("%s: of %d boxes %d are near to bodies, and %d told without looking", name, boxes, some, far)
		}
	})
}

// TestSpreadHoldsEveryMember checks the boxes that say when anybody may be at a
// surface at all.
func TestSpreadHoldsEveryMember(t *testing.T) {
	manners(t, func(name string, r *Relatives) {
		const between = 3
		for j, boxes := range r.Spread() {
			var times []float64
			for k := range between + 1 {
				times = append(times, r.Times[j]+(r.Times[j+1]-r.Times[j])*float64(k)/between)
			}
			r.Family.SetTimes(times)
			poses := make([]swing.Pose, len(times))
			for m := range r.All() {
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
	})
}
