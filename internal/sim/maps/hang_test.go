package maps

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"wideberth/internal/sim/ball"
	"wideberth/internal/sim/family"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/sweep"
	"wideberth/internal/sim/swing"
)

// truthTolerance (m) is how much a map may promise beyond the modelled swings.
const truthTolerance = 0.002

// members returns some swings of a cast as full tracks: the central one, members
// of the sample and the corners.
func members(t *testing.T, c *fit.Cast) (out []*sweep.Track) {
	t.Helper()
	all := []*family.Member{c.Kin.Central}
	for i := 0; i < len(c.Kin.Sample); i += 23 {
		all = append(all, c.Kin.Sample[i])
	}
	for i := 0; i < len(c.Kin.Far); i += 9 {
		all = append(all, c.Kin.Far[i])
	}
	for _, m := range all {
		out = append(out, sweep.Sample(m.Swing, sweep.FineTolerance))
	}
	return out
}

// column is the air over a place from a height up.
func column(x, y, from float64) geom.Box {
	return geom.Box{Min: geom.Vec{X: x - hair, Y: y - hair, Z: from}, Max: geom.Vec{X: x + hair, Y: y + hair, Z: from + 30}}
}

// TestHangMapAgainstSwings hangs a thread at the height that the map allows and
// measures how near each swing comes to it.
func TestHangMapAgainstSwings(t *testing.T) {
	p := plantest.OneClub("driver")
	p.Margin = 0.12
	p.Tees = append(p.Tees, plan.Tee{Name: "other", X: 3.2, Y: 1.9})
	p.Players[1].Tees = []string{"other"}
	lab := labOf("loft")
	m, err := Hang(lab, plantest.Checked(p), HangOptions{})
	if err != nil {
		t.Fatal(err)
	}
	casts, err := lab.Casts(p, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	tracks := make([][]*sweep.Track, len(casts))
	for k := range casts {
		tracks[k] = members(t, &casts[k])
	}
	nearest := func(b geom.Box) float64 {
		best := math.Inf(1)
		for k := range casts {
			for _, tee := range p.TeesOf(casts[k].Player) {
				local := casts[k].Placed(fit.Spot{X: tee.X, Y: tee.Y}).Surface(sweep.Surface{Kind: sweep.Hung, Box: b})
				for _, track := range tracks[k] {
					if c, near := track.ClearanceWithin(local, best); near {
						best = c.Clearance
					}
				}
			}
		}
		return best
	}
	rnd := rand.New(rand.NewPCG(10, 11))
	over, loose := 0, 0
	for range 150 {
		x, y := 6.4*rnd.Float64(), 4.42*rnd.Float64()
		lowest, who := m.at(x, y)
		if (lowest == 0) != (who < 0) {
			t.Errorf("(%.3f, %.3f): lowest %.3f of %d", x, y, lowest, who)
		}
		if got := nearest(column(x, y, lowest)); got < p.Margin-truthTolerance {
			t.Errorf("a thread down to %.3f m at (%.3f, %.3f) is %.4f m from a swing, want at least %.2f", lowest, x, y, got, p.Margin)
		}
		if lowest > 0.3 {
			over++
			// Not needlessly cautious: somewhere in the cell a thread a little lower
			// is too near to the farthest-reaching members.
			far := math.Inf(1)
			i, j := m.Grid.cellOf(x, y)
			mid := m.Grid.spot(i, j)
			for _, d := range [5][2]float64{{0, 0}, {-1, -1}, {-1, 1}, {1, -1}, {1, 1}} {
				b := column(mid.X+d[0]*m.Grid.Cell[0]/2, mid.Y+d[1]*m.Grid.Cell[1]/2, lowest-0.35)
				for k := range casts {
					for _, tee := range p.TeesOf(casts[k].Player) {
						v, _ := casts[k].BoxWithin(b, fit.Spot{X: tee.X, Y: tee.Y}, far)
						far = min(far, v+casts[k].Kin.Atlas().Hollow)
					}
				}
			}
			one, err := HangAt(lab, plantest.Checked(p), HangOptions{}, x, y)
			if err != nil {
				t.Fatal(err)
			}
			if one.Lowest > lowest+truthTolerance {
				t.Errorf("HangAt(%.3f, %.3f) = %.4f, above the map's %.4f", x, y, one.Lowest, lowest)
			}
			if got := nearest(column(x, y, one.Lowest)); got < p.Margin-truthTolerance {
				t.Errorf("a thread down to HangAt(%.3f, %.3f) = %.4f is %.4f from a swing", x, y, one.Lowest, got)
			}
			if far > p.Margin {
				loose++
			}
		}
	}
	if over < 40 {
		t.Errorf("only %d of 150 places are under a swing", over)
	}
	if loose > over/5 {
		t.Errorf("at %d of %d places the map asks for more than 0.35 m too much", loose, over)
	}
}

// TestHangMapAgainstFrames takes swings frame by frame, as the command line
// prints them: nothing of any frame is above the map less the margin.
func TestHangMapAgainstFrames(t *testing.T) {
	if testing.Short() {
		t.Skip("takes long; says nothing that differs from one machine to the next")
	}
	p := plantest.OneClub("driver", "7-iron")
	lab := labOf("loft")
	m, err := Hang(lab, plantest.Checked(p), HangOptions{})
	if err != nil {
		t.Fatal(err)
	}
	for _, player := range p.Players {
		for _, club := range p.Clubs {
			for _, n := range []int{0, 1, 77, 200} {
				s, at, err := family.Swing(plantest.Checked(p), player.Name, club.Name, "", n)
				if err != nil {
					t.Fatal(err)
				}
				for time := 0.0; time < s.Duration(); time += 1.0 / 240 {
					for part, c := range s.PoseAt(time) {
						c = at.Capsule(c)
						for u := 0.0; u <= 1; u += 0.125 {
							q := geom.Lerp(c.A, c.B, u)
							if q.X < 0 || q.Y < 0 || q.X > p.Room.Length || q.Y > p.Room.Width {
								continue
							}
							lowest, _ := m.at(q.X, q.Y)
							if top := q.Z + c.R; top > lowest-p.Margin+truthTolerance {
								t.Fatalf("%s, %s, member %d: the %v is at %.4f over (%.3f, %.3f), the map less the margin at %.4f",
									player.Name, club.Name, n, swing.Part(part), top, q.X, q.Y, lowest-p.Margin)
							}
						}
					}
				}
			}
		}
	}
}

// TestHangMapAgainstBalls flies ordinary balls under the map.
func TestHangMapAgainstBalls(t *testing.T) {
	p := plantest.OneClub("7-iron")
	p.Players = p.Players[:1]
	p.Hung = nil
	var lab fit.Lab
	bare, err := Hang(&lab, plantest.Checked(p), HangOptions{})
	if err != nil {
		t.Fatal(err)
	}
	m, err := Hang(&lab, plantest.Checked(p), HangOptions{Ball: true})
	if err != nil {
		t.Fatal(err)
	}
	raised := 0
	for i, v := range m.Grid.Values {
		if v < bare.Grid.Values[i] {
			t.Fatalf("cell %d: %d mm without balls, %d with", i, bare.Grid.Values[i], v)
		}
		if v > bare.Grid.Values[i] {
			raised++
			if name := m.Swings[m.Who[i]]; !name.Ball {
				t.Fatalf("cell %d is raised by %+v", i, name)
			}
		}
	}
	if raised < 100 {
		t.Errorf("the balls raise %d cells only", raised)
	}
	scene := ball.NewScene(p)
	skill := ball.SkillOf(p.Players[0])
	launch := ball.FromClub(p.Clubs[0], 0)
	fly := func(l ball.Launch) {
		path := scene.Fly(l.At(p, p.Tees[0]).State(), true)
		for _, s := range path.Trail {
			lowest, _ := m.at(s.P.X, s.P.Y)
			if top := s.P.Z + ball.Radius; top > lowest-p.Margin+truthTolerance {
				t.Errorf("the ball's top is at %.4f over (%.3f, %.3f), the map less the margin at %.4f", top, s.P.X, s.P.Y, lowest-p.Margin)
				return
			}
		}
	}
	for _, d := range ball.Draws(200) {
		if max(math.Abs(d.Direction), math.Abs(d.Launch), math.Abs(d.Speed)) > sure {
			continue
		}
		l := launch
		l.Azimuth += skill.Direction * d.Direction
		l.Elevation += skill.Launch * d.Launch
		l.Speed *= 1 + skill.Speed*d.Speed
		fly(l)
	}
}

// TestOnlookMap checks that nothing swept and no ball gets to where onlookers
// may be, and that the distances are neither too long nor needlessly short.
func TestOnlookMap(t *testing.T) {
	if testing.Short() {
		t.Skip("takes long; says nothing that differs from one machine to the next")
	}
	p := plantest.OneClub("driver")
	p.Hung = nil
	lab := labOf("loft")
	m, err := Onlookers(lab, plantest.Checked(p), OnlookOptions{})
	if err != nil {
		t.Fatal(err)
	}
	casts, err := lab.Casts(p, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	// Discs of everything swept, seen from above.
	type disc struct {
		fit.Spot
		r float64
	}
	var discs []disc
	for k := range casts {
		at := casts[k].Placed(fit.Spot{X: p.Tees[0].X, Y: p.Tees[0].Y})
		for _, track := range members(t, &casts[k]) {
			_, poses := track.Samples()
			for j := 0; j < len(poses); j += 3 {
				for _, c := range poses[j] {
					c = at.Capsule(c)
					for u := 0.0; u <= 1; u += 0.1 {
						q := geom.Lerp(c.A, c.B, u)
						discs = append(discs, disc{fit.Spot{X: q.X, Y: q.Y}, c.R})
					}
				}
			}
		}
	}
	flying := cones(p, casts, true)
	rnd := rand.New(rand.NewPCG(12, 13))
	free := 0
	for range 250 {
		at := fit.Spot{X: 6.4 * rnd.Float64(), Y: 4.42 * rnd.Float64()}
		truth := math.Inf(1)
		for _, d := range discs {
			truth = min(truth, d.To(at)-d.r)
		}
		ballFree, _ := nearestCone(flying, at)
		truth = min(truth, ballFree-ball.Radius)
		reach, hollow := truth, 0.0 // of the farthest-reaching members
		for k := range casts {
			v, _ := casts[k].BoxWithin(column(at.X, at.Y, -1), fit.Spot{X: p.Tees[0].X, Y: p.Tees[0].Y}, reach)
			reach = min(reach, v+casts[k].Kin.Atlas().Hollow)
			hollow = max(hollow, casts[k].Kin.Atlas().Hollow)
		}
		got := m.Grid.at(at.X, at.Y)
		if got > max(truth, 0)+truthTolerance {
			t.Errorf("map at (%.3f, %.3f) = %.3f, but something comes to %.3f", at.X, at.Y, got, truth)
		}
		// Hollow, a cell and a half's diagonal, a bin, the steps of radii and what a coarse look takes off.
		if most := hollow + 0.12; got < min(reach, m.Cap)-most && reach > most {
			t.Errorf("map at (%.3f, %.3f) = %.3f, nothing comes nearer than %.3f", at.X, at.Y, got, reach)
		}
		i, j := m.Grid.cellOf(at.X, at.Y)
		if m.Mask[j*m.Grid.NX+i] == 0 {
			free++
			if got < p.Margin-0.001 {
				t.Errorf("(%.3f, %.3f) is free at %.3f", at.X, at.Y, got)
			}
		}
	}
	if free < 20 || free > 230 {
		t.Errorf("%d of 250 places are free", free)
	}
	if share := m.Area / (6.4 * 4.42); math.Abs(share-float64(free)/250) > 0.1 {
		t.Errorf("the free area is %.2f of the floor, %.2f of the places are free", share, float64(free)/250)
	}
	// Mishits and ordinary balls.
	scene := ball.NewScene(p)
	for _, pl := range p.Players {
		l := ball.FromClub(p.Clubs[0], 0)
		for _, miss := range ball.Misses(l, pl.Hand) {
			for _, s := range scene.Fly(miss.Launch.At(p, p.Tees[0]).State(), true).Trail {
				if got := m.Grid.at(s.P.X, s.P.Y); got > 0 {
					t.Errorf("%s's %s ball passes (%.3f, %.3f), where the map has %.3f", pl.Name, miss.Name, s.P.X, s.P.Y, got)
					break
				}
			}
		}
	}
}

func TestSeats(t *testing.T) {
	p := plantest.OneClub("driver")
	p.Hung = nil
	p.Seats = []plan.Seat{
		{Name: "corner stool", X: 0.35, Y: 0.35, Radius: 0.2},
		{Name: "in the swing", X: 2.9, Y: 3.0},
		{Name: "in the line", X: 4.5, Y: 2.21},
		{Name: "toe side", X: 4.0, Y: 1.0},
	}
	var lab fit.Lab
	m, err := Onlookers(&lab, plantest.Checked(p), OnlookOptions{})
	if err != nil {
		t.Fatal(err)
	}
	want := []struct{ verdict, club, ball fit.Verdict }{
		{fit.Clear, fit.Clear, fit.Clear}, {fit.Strikes, fit.Strikes, ""}, {fit.Strikes, "", fit.Strikes}, {fit.Strikes, "", fit.Strikes},
	}
	for i, s := range m.Seats {
		w := want[i]
		if s.Verdict != w.verdict || w.club != "" && s.ClubVerdict != w.club || w.ball != "" && s.BallVerdict != w.ball {
			t.Errorf("seat %q is %q (club %q %.2f m, ball %q %.2f m), want %+v", s.Name, s.Verdict, s.ClubVerdict, s.Club, s.BallVerdict, s.Ball, w)
		}
		// The middle of a seat on the map, less its radius, agrees.
		r := p.WithDefaults().Seats[i].Radius
		if got, want := m.Grid.at(p.Seats[i].X, p.Seats[i].Y)-r, min(s.Club, s.Ball); want > 0 && want < m.Cap-r && math.Abs(got-want) > 0.12 {
			t.Errorf("seat %q: %.3f by the map, %.3f by itself", s.Name, got, want)
		}
	}
}

// TestMostMapped: a map of more golfers and clubs than there is memory for is refused with
// what to do, of one of them it is made.
func TestMostMapped(t *testing.T) {
	p := plantest.OneClub("7-iron")
	p.Players, p.Clubs, p.Room.Length, p.Room.Height = nil, nil, 9, 4
	for i := range plan.MaxPlayers {
		p.Players = append(p.Players, plan.Player{Name: fmt.Sprint("player ", i), Height: 1.7})
	}
	for i := range fit.MostMapped/plan.MaxPlayers + 1 {
		p.Clubs = append(p.Clubs, plan.Club{Name: fmt.Sprint("club ", i), Kind: plan.KindIron, Length: 0.9})
	}
	doc := plantest.Checked(p)
	var lab fit.Lab
	if _, err := Hang(&lab, doc, HangOptions{}); err == nil || !strings.Contains(err.Error(), "choose one player or one club") {
		t.Errorf("Hang for %d players: %v, want what to do", len(p.Players), err)
	}
	if _, err := Hang(&lab, doc, HangOptions{Players: []string{"player 0"}}); err != nil {
		t.Errorf("Hang for one player: %v", err)
	}
}
