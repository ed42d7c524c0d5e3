package maps

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/sweep"
)

// mapTolerance is how far a map may lie from the clearance it stands for, m: the
// promise of every clearance, and what rounding to a millimetre and leaving out
// improvements of half of one add.
const mapTolerance = 0.002

func TestStandMapIsTheClearance(t *testing.T) {
	for name, p := range plantest.Rooms() {
		t.Run(name, func(t *testing.T) {
			lab := labOf(name)
			m, err := Stand(lab, plantest.Checked(p), StandOptions{})
			if err != nil {
				t.Fatal(err)
			}
			casts, err := lab.Casts(p, nil, nil)
			if err != nil {
				t.Fatal(err)
			}
			f := fit.NewGround(p, casts)
			rnd := rand.New(rand.NewPCG(6, 7))
			byBox := 0
			for n := range 200 {
				// Half of the cells where something other than a wall may decide.
				i, j := rnd.IntN(m.Grid.NX), rnd.IntN(m.Grid.NY)
				for tries := 0; n%2 == 0 && tries < 50 && m.Grid.Values[j*m.Grid.NX+i] <= int16(1000*m.Floor); tries++ {
					i, j = rnd.IntN(m.Grid.NX), rnd.IntN(m.Grid.NY)
				}
				at := m.Grid.spot(i, j)
				direct := f.Tightest(at, math.Inf(1))
				if slices.ContainsFunc(f.Boxes, func(s sweep.Surface) bool { return s.Name == direct.Surface }) {
					byBox++
				}
				want := min(max(direct.Clearance, m.Floor), m.Cap)
				if got := m.Grid.at(at.X, at.Y); math.Abs(got-want) > mapTolerance {
					t.Errorf("map at (%.3f, %.3f) = %.4f, want %.4f (%g) of %s", at.X, at.Y, got, want, mapTolerance, direct.Surface)
				}
			}
			t.Logf("a box decides at %d of 200", byBox)
		})
	}
}

// TestStandMapPromisesNoMoreThanCheck runs whole checks on a few cells.
func TestStandMapPromisesNoMoreThanCheck(t *testing.T) {
	if testing.Short() {
		t.Skip("takes long; says nothing that differs from one machine to the next")
	}
	for name, p := range plantest.Rooms() {
		lab := labOf(name)
		m, err := Stand(lab, plantest.Checked(p), StandOptions{})
		if err != nil {
			t.Fatal(err)
		}
		casts, err := lab.Casts(p, nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		rnd := rand.New(rand.NewPCG(8, 9))
		for range 5 {
			var i, j int
			for tries := 0; tries < 200; tries++ {
				i, j = rnd.IntN(m.Grid.NX), rnd.IntN(m.Grid.NY)
				if v := m.Grid.Values[j*m.Grid.NX+i]; v > int16(1000*m.Floor) {
					break
				}
			}
			at := m.Grid.spot(i, j)
			q := p
			q.Tees = []plan.Tee{{Name: "here", X: at.X, Y: at.Y}}
			if !fit.BallFits(q, at) {
				continue
			}
			r, err := lab.Check(plantest.Checked(q))
			if err != nil {
				t.Fatal(err)
			}
			least := math.Inf(1)
			for _, c := range r.Checks {
				least = min(least, c.Clearance)
			}
			got := m.Grid.at(at.X, at.Y)
			hollow := 0.0
			for k := range casts {
				hollow = max(hollow, casts[k].Kin.Atlas().Hollow)
			}
			if got > max(least, m.Floor)+mapTolerance {
				t.Errorf("%s: map at (%.3f, %.3f) = %.4f, but a check finds %.4f", name, at.X, at.Y, got, least)
			}
			if got < min(least, m.Cap)-hollow-coarseCaution-2*mapTolerance {
				t.Errorf("%s: map at (%.3f, %.3f) = %.4f, a check finds %.4f: more than %g too cautious", name, at.X, at.Y, got, least, hollow)
			}
			quick, err := lab.At(plantest.Checked(q), "here", at.X, at.Y)
			if err != nil {
				t.Fatal(err)
			}
			for k, c := range quick.Checks {
				want := r.Checks[k].Clearance
				low := want - mapTolerance
				if c.Caution > 0 || r.Checks[k].Nearest.Surface != c.Surface {
					low -= hollow + coarseCaution
				}
				if want < 0 { // how deep a box is struck is only said roughly
					low -= 0.10
				}
				if c.Clearance > want+mapTolerance || c.Clearance < low {
					t.Errorf("%s: At(%.3f, %.3f) of %s with %s = %.4f (%s), a check finds %.4f", name, at.X, at.Y, c.Player, c.Club, c.Clearance, c.Surface, want)
				}
			}
		}
	}
}

// TestBestIsBest compares the best places with the cells of the map: none serves
// the worst off better by more than Slack, nor as well and the next better, and so on.
func TestBestIsBest(t *testing.T) {
	if testing.Short() {
		t.Skip("takes long; says nothing that differs from one machine to the next")
	}
	rooms := plantest.Rooms()
	rooms["one who strikes everywhere"] = lowLoft()
	for name, p := range rooms {
		lab := labOf(name)
		m, err := Stand(lab, plantest.Checked(p), StandOptions{Cell: 0.05})
		if err != nil {
			t.Fatal(err)
		}
		casts, err := lab.Casts(p, nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		check := func(who string, b Best, f floor) {
			t.Helper()
			if !b.Found {
				t.Errorf("%s: no best place for %s", name, who)
				return
			}
			if got := f.Tightest(fit.Spot{X: b.X, Y: b.Y}, math.Inf(1)).Clearance; got != b.Clearance {
				t.Errorf("%s: best for %s claims %.4f, a look there gives %.4f", name, who, b.Clearance, got)
			}
			have := fares(p, f.Casts, fit.Spot{X: b.X, Y: b.Y})
			for j := 0; j < m.Grid.NY; j += 2 {
				for i := range m.Grid.NX {
					if m.Mask[j*m.Grid.NX+i] != 0 {
						continue
					}
					at := m.Grid.spot(i, j)
					if v := min(f.Tightest(at, f.cap).Clearance, f.cap); v > b.Clearance+Slack+0.0005 || b.Clearance >= p.Margin && v > b.Clearance+0.0005 {
						t.Errorf("%s: best for %s is %.4f, but (%.3f, %.3f) has %.4f", name, who, b.Clearance, at.X, at.Y, v)
						return
					}
					if there := fares(p, f.Casts, at); servesBetter(there, have) {
						t.Errorf("%s: best for %s serves %.4f, but (%.3f, %.3f) serves %.4f", name, who, have, at.X, at.Y, there)
						return
					}
				}
			}
		}
		check("everybody", m.Best, newFloor(p, casts))
		for _, q := range m.Players {
			var own []fit.Cast
			for _, c := range casts {
				if c.Player.Name == q.Player {
					own = append(own, c)
				}
			}
			check(q.Player, q.Best, newFloor(p, own))
		}
	}
}

// fares are the clearances of everybody on a spot, the worst first, up to the margin.
func fares(p plan.Plan, casts []fit.Cast, at fit.Spot) []float64 {
	out := make([]float64, len(casts))
	for k := range casts {
		out[k] = fit.NewGround(p, casts[k:k+1]).Tightest(at, p.Margin).Clearance
	}
	slices.Sort(out)
	return out
}

// servesBetter reports whether a serves the worst off better than b by more than
// Slack, or no worse and the next so, and so on.
func servesBetter(a, b []float64) bool {
	for k := range a {
		if a[k] > b[k]+Slack+0.0005 {
			return true
		}
		if a[k] < b[k] {
			return false
		}
	}
	return false
}

// lowLoft is a loft under whose ceiling the tall guest strikes wherever they stand:
// what is best is decided by the others.
func lowLoft() plan.Plan {
	p := plantest.OneClub("7-iron")
	p.Room.Height, p.Room.Width, p.Room.Slopes, p.Hung = 2.77, 3.4, nil, nil
	p.Screen, p.Seats, p.Tees[0].Y, p.Floor.Mat = nil, nil, 1.7, nil
	p.Room.Solids = nil
	return p
}

// Where one strikes from everywhere, the best tee is the best of the others, not
// the one at which the one who strikes has most room to the walls.
func TestBestServesTheNext(t *testing.T) {
	p := lowLoft()
	var lab fit.Lab
	m, err := Stand(&lab, plantest.Checked(p), StandOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if !m.Best.Found || m.Best.Verdict != fit.Strikes {
		t.Fatalf("the best place is %+v, want one where somebody strikes", m.Best)
	}
	casts, err := lab.Casts(p, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	have := fares(p, casts, fit.Spot{X: m.Best.X, Y: m.Best.Y})
	if have[0] >= 0 || have[1] < 0 {
		t.Errorf("at the best place (%.3f, %.3f) the clearances are %.3f, want one strike", m.Best.X, m.Best.Y, have)
	}
	for j := 0; j < m.Grid.NY; j += 2 {
		for i := 0; i < m.Grid.NX; i += 2 {
			at := m.Grid.spot(i, j)
			if there := fares(p, casts, at); m.Mask[j*m.Grid.NX+i] == 0 && servesBetter(there, have) {
				t.Fatalf("the best place serves %.4f, but (%.3f, %.3f) serves %.4f", have, at.X, at.Y, there)
			}
		}
	}
}

// TestStandMapOfMirroredPair checks that a right-hander and their mirror image
// in a symmetrical room give a symmetrical map, and that neither alone does.
func TestStandMapOfMirroredPair(t *testing.T) {
	p := plantest.OneClub("7-iron")
	p.Room.Slopes, p.Hung = nil, nil
	p.Room.Height = 2.75
	p.Hung = []plan.Hung{{Name: "lamp", Min: [3]float64{2.9, 2.11, 2.4}, Max: [3]float64{3.1, 2.31, 2.75}}}
	right := plan.Player{Name: "Right", Height: 1.8, Hand: "right"}
	left := right
	left.Name, left.Hand = "Left", "left"
	var lab fit.Lab
	gap := func(players ...plan.Player) int16 {
		q := p
		q.Players = players
		m, err := Stand(&lab, plantest.Checked(q), StandOptions{})
		if err != nil {
			t.Fatal(err)
		}
		worst := int16(0)
		for j := range m.Grid.NY {
			for i := range m.Grid.NX {
				d := m.Grid.Values[j*m.Grid.NX+i] - m.Grid.Values[(m.Grid.NY-1-j)*m.Grid.NX+i]
				worst = max(worst, d, -d)
			}
		}
		if len(players) == 2 {
			a, b := m.Players[0].Best, m.Players[1].Best
			if math.Abs(a.Clearance-b.Clearance) > mapTolerance {
				t.Errorf("mirrored players have best clearances %.4f and %.4f", a.Clearance, b.Clearance)
			}
			if !m.Sharing.Both {
				t.Error("a pair of both hands is not said to be one")
			}
		}
		return worst
	}
	if d := gap(right, left); d > 2 {
		t.Errorf("the map of a mirrored pair is lopsided by %d mm", d)
	}
	if d := gap(right); d < 100 {
		t.Errorf("the map of a right-hander is symmetrical to %d mm", d)
	}
}

// TestStandMapIsMonotone: a bigger room never takes a place away, and another
// player never adds one.
func TestStandMapIsMonotone(t *testing.T) {
	if testing.Short() {
		t.Skip("takes long; says nothing that differs from one machine to the next")
	}
	var lab fit.Lab
	draw := func(p plan.Plan) StandMap {
		t.Helper()
		m, err := Stand(&lab, plantest.Checked(p), StandOptions{})
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	p := plantest.OneClub("7-iron")
	p.Room.Slopes = nil // whose normals would change with the height
	small := draw(p)
	atLeast := func(what string, big, small StandMap) {
		t.Helper()
		for j := range small.Grid.NY {
			for i := range small.Grid.NX {
				at := small.Grid.spot(i, j)
				// Where the grids differ, Lipschitz bridges the cells.
				slack := mapTolerance + big.Grid.spot(big.Grid.cellOf(at.X, at.Y)).To(at)
				if a, b := big.Grid.at(at.X, at.Y), small.Grid.at(at.X, at.Y); a < b-slack {
					t.Errorf("%s: (%.3f, %.3f) falls from %.3f to %.3f", what, at.X, at.Y, b, a)
					return
				}
			}
		}
	}
	higher := p
	higher.Room.Height += 0.25
	higher.Room.Solids = nil
	atLeast("a higher room", draw(higher), small)
	wider := p
	wider.Room.Width += 0.4
	atLeast("a wider room", draw(wider), small)
	longer := p
	longer.Room.Length += 0.5
	longer.Screen = nil
	none := p
	none.Screen = nil
	atLeast("a longer room", draw(longer), draw(none))
	fewer := p
	fewer.Players = fewer.Players[:1]
	atLeast("fewer players", draw(fewer), small)
}

func TestContour(t *testing.T) {
	g := newGrid(4, 4, 0)
	ring := make([]float64, g.NX*g.NY)
	for j := range g.NY {
		for i := range g.NX {
			r := g.spot(i, j).To(fit.Spot{X: 2, Y: 2})
			ring[j*g.NX+i] = min(1.5-r, r-0.5)
		}
	}
	c := g.contour("ring", 0, ring)
	if len(c.Rings) != 2 {
		t.Fatalf("an annulus has %d rings, want 2", len(c.Rings))
	}
	area := 0.0
	for _, r := range c.Rings {
		for k := range r {
			a, b := r[k], r[(k+1)%len(r)]
			area += (a[0]*b[1] - a[1]*b[0]) / 2
			if d := (fit.Spot{X: a[0], Y: a[1]}).To(fit.Spot{X: 2, Y: 2}); math.Abs(d-1.5) > 0.003 && math.Abs(d-0.5) > 0.003 {
				t.Errorf("a point of the outline is %.4f from the middle, want 0.5 or 1.5 (0.003)", d)
			}
		}
	}
	if want := math.Pi * 2; math.Abs(math.Abs(area)-want) > 0.02 {
		t.Errorf("the annulus has %.4f m², want %.4f (0.02)", math.Abs(area), want)
	}
	if c := g.contour("all", -9, ring); len(c.Rings) != 1 {
		t.Errorf("a map that is above the level everywhere has %d rings, want 1 round the rim", len(c.Rings))
	}
	if c := g.contour("none", 9, ring); len(c.Rings) != 0 {
		t.Errorf("a map below the level everywhere has %d rings", len(c.Rings))
	}
	// Two high corners opposite each other make a saddle; both lines must close.
	s := Grid{NX: 2, NY: 2, Cell: [2]float64{1, 1}, Origin: [2]float64{0.5, 0.5}}
	for _, v := range [][]float64{{1, -2, -2, 1}, {2, -1, -1, 2}} {
		c := s.contour("saddle", 0, v)
		points := 0
		for _, r := range c.Rings {
			points += len(r)
		}
		if want := map[float64]int{1: 2, 2: 1}[v[0]]; len(c.Rings) != want {
			t.Errorf("saddle %v has %d rings (%d points), want %d", v, len(c.Rings), points, want)
		}
	}
}

// coarseCaution is how much less (m) a map may promise near a box than a check,
// beyond hollow: what the coarse look over the family takes off.
const coarseCaution = 0.01
