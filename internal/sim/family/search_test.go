package family_test

import (
	"encoding/json"
	"flag"
	"fmt"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"wideberth/internal/sim/family"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/geom"
	"wideberth/internal/sim/maps"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/sweep"
)

var (
	searchFor  = flag.Duration("search", 0, "how long TestSearch searches; without it a fixed number of golfers")
	searchFrom = flag.Uint64("from", 1, "the first golfer that TestSearch draws; a long search of others than the last one")
)

// found is where finds of the search are kept, each asked again by TestFinds.
const found = "testdata/search"

// subject is what a question is asked about: a golfer, who is the first player of
// the plan with the first club on the first tee, and by the kind of the question a
// direction, a box of the golfer frame, or the plan's room and a place in it.
type subject struct {
	Plan   plan.Plan
	Normal geom.Vec
	Box    geom.Box
	Place  []float64 // m
}

// question is what the search is pointed at.
type question struct {
	name string
	// ask returns how far (m) each thing that is said lies above what some member
	// does, −∞ where it is not said.
	says []string
	ask  func(g *golfer, s subject, above []float64)
	// room and place count the numbers from 0 to 1 by which draw poses a subject: a
	// place is cheap to ask about where the room is the last one's.
	room, place int
	draw        func(of plan.Plan, room, place []float64) subject
}

var questions = []question{
	{"plane", []string{"reach"}, askPlane, 2, 0, drawPlane},
	{"box", []string{"check", "atlas", "atlas beyond a check"}, askBox, 6, 0, drawBox},
	{"check", []string{"walls and slopes", "boxes"}, askCheck, roomNumbers, 0, drawRoom},
	{"drag", []string{"reading"}, askDrag, roomNumbers, 2, drawRoom},
	{"stand", []string{"cell", "best place"}, askStand, roomNumbers, 2, drawRoom},
	{"hang", []string{"cell", "thread", "footprint", "thing"}, askHang, roomNumbers, 5, drawRoom},
	{"onlookers", []string{"cell", "seat"}, askOnlookers, roomNumbers, 2, drawRoom},
}

// nothing is what is above when nothing is said.
func (q *question) nothing() []float64 { return slices.Repeat([]float64{math.Inf(-1)}, len(q.says)) }

// golfer is somebody who is asked about, with every member of the family, and what
// was last answered about a room.
type golfer struct {
	*family.Crowd
	lab  fit.Lab
	room string
	said any
}

// between takes a number from 0 to 1 to a range.
func between(lo, hi, u float64) float64 { return lo + (hi-lo)*u }

// near is between with half of the numbers in the first quarter of the range.
func near(lo, hi, u float64) float64 { return between(lo, hi, u*u) }

// drawGolfer draws a golfer with a club, left- or right-handed, of any build and way.
func drawGolfer(rnd *rand.Rand) plan.Plan {
	one := func(of ...string) string { return of[rnd.IntN(len(of))] }
	p := plan.Player{
		Name: "golfer", Height: between(1.35, 2.1, rnd.Float64()), Hand: plan.Hand(one(string(plan.HandRight), string(plan.HandLeft))),
		Sex: one("", "man", "woman"), Turn: one(plan.TurnFull, plan.TurnCompact, plan.TurnLong),
		Plane: one(plan.PlaneNeutral, plan.PlaneUpright, plan.PlaneFlat), Follow: one(plan.FollowFull, plan.FollowHeld, plan.FollowLoose),
	}
	if rnd.IntN(2) == 0 {
		p.Span = p.Height * between(0.96, 1.08, rnd.Float64())
	}
	c := plan.DefaultClub(one(plan.KindDriver, plan.KindDriver, plan.KindWood, plan.KindHybrid, plan.KindIron, plan.KindWedge), "club")
	if rnd.IntN(2) == 0 {
		c.Length, c.Lie = c.Length+between(-0.08, 0.08, rnd.Float64()), c.Lie+between(-4, 4, rnd.Float64())
	}
	// One slope in all rooms of a golfer, so that nobody is swung anew for a room.
	rise := math.Round(between(200, 2000, rnd.Float64())) / 1000
	return plan.Plan{
		Title: "search", Players: []plan.Player{p}, Clubs: []plan.Club{c},
		Room: plan.Room{Height: rise, Slopes: []plan.Slope{{
			Name: "slope", Run: between(0.1, 3, rnd.Float64()),
			Wall: plan.Wall(one(string(plan.WallLeft), string(plan.WallRight), string(plan.WallFront), string(plan.WallBack))),
		}}},
	}.WithDefaults()
}

// newGolfer models the golfer of a plan; nil where nobody can stand like that.
func newGolfer(p plan.Plan) *golfer {
	c, err := family.NewCrowd(p.Players[0], p.Clubs[0])
	if err != nil {
		return nil
	}
	return &golfer{Crowd: c}
}

func drawPlane(of plan.Plan, u, _ []float64) subject {
	z := 2*u[0] - 1
	s, c := math.Sincos(2 * math.Pi * u[1])
	r := math.Sqrt(1 - z*z)
	return subject{Plan: of, Normal: geom.Vec{X: r * c, Y: r * s, Z: z}}
}

func askPlane(g *golfer, s subject, above []float64) {
	side := sweep.Surface{Kind: sweep.Slope, Plane: geom.Halfspace{N: s.Normal}}
	kin, err := family.New(s.Plan.Players[0], s.Plan.Clubs[0], family.Directions([]sweep.Surface{side}))
	if err == nil {
		said, _, _ := kin.Reach(s.Normal)
		above[0] = said - g.Meet(kin)(side)
	}
}

// stretch returns where something begins and ends along an axis from lo to hi: thin
// things more often than thick ones, and one in seven from end to end.
func stretch(lo, hi, at, size float64) (from, to float64) {
	if size > 0.85 {
		return lo, hi
	}
	from = between(lo, hi, at)
	return from, min(hi, from+near(0.01, 3, size/0.85))
}

func drawBox(of plan.Plan, u, _ []float64) subject {
	const far = 5.0 // m
	var b geom.Box
	b.Min.X, b.Max.X = stretch(-far, far, u[0], u[1])
	b.Min.Y, b.Max.Y = stretch(-far, far, u[2], u[3])
	b.Min.Z, b.Max.Z = stretch(-0.5, far, u[4], u[5])
	return subject{Plan: of, Box: b}
}

// askBox asks what a check says of a box, and a map. No map may say more than a
// check either, as far down as a map tells apart: the loosest swing that a check
// climbs to is the box's own, and no member.
func askBox(g *golfer, s subject, above []float64) {
	const deepest = -0.10 // m
	box := sweep.Surface{Name: "box", Kind: sweep.Solid, Box: s.Box}
	truth, check := g.Meet(g.Kin)(box), g.Kin.NearestTo(box)
	chart, _ := g.Kin.Atlas().Between(s.Box, math.Inf(-1), math.Inf(1))
	above[0], above[1], above[2] = check-truth, chart-truth, chart-max(check, deepest)
}

// roomNumbers is how many numbers drawRoom takes.
const roomNumbers = 28

// drawRoom draws a room with a slope, a solid, a hung thing, a screen, a floor, a tee
// and a seat, from one in which nobody can swing to a hall, and up to five lengths
// for a place: where it is, and how large something there is.
func drawRoom(p plan.Plan, u, place []float64) subject {
	next := func() (v float64) { v, u = u[0], u[1:]; return v }
	l, w, h := near(2.6, 14, next()), near(2.4, 12, next()), near(2.3, 6, next())
	slope := p.Room.Slopes[0]
	slope.KneeHeight += h - p.Room.Height
	p.Room = plan.Room{Length: l, Width: w, Height: h, Slopes: []plan.Slope{slope}}
	p.Margin = between(0.02, 0.4, next())
	box := func() (lo, hi [3]float64) {
		for i, size := range [3]float64{l, w, h} {
			lo[i], hi[i] = stretch(0, size, next(), next())
		}
		return lo, hi
	}
	lo, hi := box()
	p.Room.Solids = []plan.Solid{{Name: "solid", Min: lo, Max: hi}}
	lo, hi = box()
	p.Hung = []plan.Hung{{Name: "thing", Min: lo, Max: hi}}
	screen := plan.Screen{X: between(0.3*l, l, next()), Centre: w / 2, Bottom: 0.05, Width: between(1, w, next()), Height: between(0.5, h-0.05, next()),
		SideReturn: between(0, 1.5, next()), TopReturn: between(0, 1.5, next())}
	if next() < 0.7 {
		p.Screen = &screen
	}
	p.Floor = plan.Floor{Layers: []plan.Layer{{Name: "layer", Thickness: between(0, 0.3, next())}}}
	p.Tees = []plan.Tee{{Name: "tee", X: l * next(), Y: w * next()}}
	p.Seats = []plan.Seat{{Name: "seat", X: l * next(), Y: w * next(), Radius: between(0.1, 0.6, next())}}
	var at []float64
	for i, size := range []float64{l, w, l, w, h}[:len(place)] {
		at = append(at, size*place[i])
	}
	return subject{Plan: p.WithDefaults(), Place: at}
}

// of returns what is said of a room, asked once for every place in it.
func of[T any](g *golfer, what string, p plan.Plan, say func(plan.Checked) (T, error)) (said T, ok bool) {
	key := fmt.Sprintf("%s %+v %+v", what, p, p.Screen)
	if g.room != key {
		g.room, g.said = key, nil
		if c, err := plan.Check(p); err == nil {
			if v, err := say(c); err == nil {
				g.said = v
			}
		}
	}
	said, ok = g.said.(T)
	return said, ok
}

// truth returns how near any member comes to things of a room, with the ball on a spot.
func (g *golfer) truth(p plan.Plan, x, y float64) func(...sweep.Surface) float64 {
	casts := must(g.lab.Casts(p, nil, nil))
	place, meet := casts[0].Placed(fit.Spot{X: x, Y: y}), g.Meet(casts[0].Kin)
	return func(of ...sweep.Surface) float64 {
		v := math.Inf(1)
		for _, s := range of {
			v = min(v, meet(place.Surface(s)))
		}
		return v
	}
}

// onTee is the truth with the ball where the plan has it.
func (g *golfer) onTee(p plan.Plan) func(...sweep.Surface) float64 {
	return g.truth(p, p.Tees[0].X, p.Tees[0].Y)
}

func askCheck(g *golfer, s subject, above []float64) {
	r, ok := of(g, "check", s.Plan, g.lab.Check)
	if !ok {
		return
	}
	c, to := r.Checks[0], g.onTee(s.Plan)
	for _, q := range sweep.Surfaces(s.Plan) {
		k := 1
		if q.Kind.Flat() {
			k = 0
		}
		above[k] = max(above[k], max(c.Clearance, c.BySurface[q.Name])-to(q))
	}
}

func askDrag(g *golfer, s subject, above []float64) {
	given, ok := of(g, "drag", s.Plan, func(c plan.Checked) (plan.Checked, error) { return c, nil })
	if !ok {
		return
	}
	if r, err := g.lab.At(given, "", s.Place[0], s.Place[1]); err == nil {
		above[0] = r.Checks[0].Clearance - g.truth(s.Plan, s.Place[0], s.Place[1])(sweep.Surfaces(s.Plan)...)
	}
}

// cell returns the number of a grid's cell that holds a place, and its middle.
func cell(g *maps.Grid, at []float64) (k int, x, y float64) {
	i, j := min(int(at[0]/g.Cell[0]), g.NX-1), min(int(at[1]/g.Cell[1]), g.NY-1)
	return j*g.NX + i, g.Origin[0] + float64(i)*g.Cell[0], g.Origin[1] + float64(j)*g.Cell[1]
}

func askStand(g *golfer, s subject, above []float64) {
	m, ok := of(g, "stand", s.Plan, func(c plan.Checked) (maps.StandMap, error) { return maps.Stand(&g.lab, c, maps.StandOptions{}) })
	if !ok {
		return
	}
	room := sweep.Surfaces(s.Plan)
	k, x, y := cell(&m.Grid, s.Place)
	if said := float64(m.Grid.Values[k]) / 1000; said > m.Floor {
		above[0] = said - g.truth(s.Plan, x, y)(room...)
	}
	if m.Best.Found {
		above[1] = m.Best.Clearance - g.truth(s.Plan, m.Best.X, m.Best.Y)(room...)
	}
}

// over is the air over a footprint of these half sizes, from a height on.
func over(x, y, alongX, alongY, from float64) sweep.Surface {
	const high = 30.0 // m
	return sweep.Surface{Kind: sweep.Hung, Box: geom.Box{Min: geom.Vec{X: x - alongX, Y: y - alongY, Z: from}, Max: geom.Vec{X: x + alongX, Y: y + alongY, Z: high}}}
}

// hair (m) is half the width of a thread.
const hair = 1e-4

// askHang hangs a thread as low as the map allows, and as low as is said of the very
// place, and a thing of any size.
func askHang(g *golfer, s subject, above []float64) {
	m, ok := of(g, "hang", s.Plan, func(c plan.Checked) (maps.HangMap, error) { return maps.Hang(&g.lab, c, maps.HangOptions{}) })
	if !ok {
		return
	}
	given, x, y := must(plan.Check(s.Plan)), s.Place[0], s.Place[1]
	to := g.onTee(s.Plan)
	k, _, _ := cell(&m.Grid, s.Place)
	above[0] = s.Plan.Margin - to(over(x, y, hair, hair, float64(m.Grid.Values[k])/1000))
	if at, err := maps.HangAt(&g.lab, given, maps.HangOptions{}, x, y); err == nil {
		above[1] = s.Plan.Margin - to(over(x, y, hair, hair, at.Lowest))
	}
	thing := maps.Hanging{Name: "new", X: x, Y: y, Length: s.Place[2], Width: s.Place[3], Drop: s.Place[4]}
	if c, err := maps.HangThing(&g.lab, given, thing); err == nil {
		above[2] = s.Plan.Margin - to(over(c.Spot.X, c.Spot.Y, thing.Length/2, thing.Width/2, c.Spot.Lowest))
		q := s.Plan
		q.Hung = []plan.Hung{c.Thing}
		for _, hung := range sweep.Surfaces(q) {
			if hung.Name == c.Thing.Name {
				above[3] = c.Check.Clearance - to(hung)
			}
		}
	}
}

// askOnlookers puts somebody thin on a place, and the seat where the plan has it. How
// deep somebody stands in a swing is not said.
func askOnlookers(g *golfer, s subject, above []float64) {
	m, ok := of(g, "onlookers", s.Plan, func(c plan.Checked) (maps.OnlookMap, error) {
		return maps.Onlookers(&g.lab, c, maps.OnlookOptions{})
	})
	if !ok {
		return
	}
	to := g.onTee(s.Plan)
	k, _, _ := cell(&m.Grid, s.Place)
	if said := float64(m.Grid.Values[k]) / 1000; said > 0 {
		above[0] = said - to(over(s.Place[0], s.Place[1], hair, hair, -1))
	}
	if seat, said := s.Plan.Seats[0], m.Seats[0].Club; said > -seat.Radius {
		above[1] = said + seat.Radius - to(over(seat.X, seat.Y, hair, hair, -1))
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// tally is how often a question was asked, and the most that each thing that is said
// was found to flatter.
type tally struct {
	asked int
	worst []float64
}

// climb poses subjects in ever smaller steps to where one of the things that are said
// flatters most, from one that is drawn. Where anything does by more than it may, it
// returns the worst such subject.
func (q *question) climb(g *golfer, of plan.Plan, rnd *rand.Rand, steps int, sum *tally) (find *subject, by float64) {
	aim := rnd.IntN(len(q.says))
	at, highest := make([]float64, q.room+q.place), math.Inf(-1)
	by = sweep.Tolerance
	size := 0.2
	for range steps {
		next := slices.Clone(at)
		elsewhere := q.place > 0 && rnd.IntN(8) > 0 // in the same room
		for i := range next {
			switch {
			case math.IsInf(highest, -1):
				next[i] = rnd.Float64()
			case elsewhere && i >= q.room, !elsewhere && rnd.IntN(4) == 0:
				next[i] = min(max(next[i]+size*rnd.NormFloat64(), 0), 1)
			}
		}
		s := q.draw(of, next[:q.room], next[q.room:])
		above := q.nothing()
		q.ask(g, s, above)
		for i, v := range above {
			sum.worst[i] = max(sum.worst[i], v)
		}
		if v := slices.Max(above); !math.IsInf(v, -1) {
			if sum.asked++; v > by {
				find, by = &s, v
			}
		}
		if above[aim] > highest {
			at, highest = next, above[aim]
		} else {
			size = max(0.005, 0.93*size)
		}
	}
	return find, by
}

// TestSearch looks for an answer that is more reassuring than the swings: it draws
// golfers and climbs, for each question, to where most is flattered. What it finds
// it writes down for TestFinds.
func TestSearch(t *testing.T) {
	golfers, steps := uint64(1), 4
	more := func(n uint64) bool { return n < golfers }
	if *searchFor > 0 {
		steps = 60
		end := time.Now().Add(*searchFor)
		more = func(uint64) bool { return time.Now().Before(end) }
	}
	var lock sync.Mutex // of what follows
	people, all := 0, make([]tally, len(questions))
	for i := range all {
		all[i].worst = questions[i].nothing()
	}
	tell := func() {
		for i, q := range questions {
			for k, what := range q.says {
				t.Logf("%d golfers, %s asked %d times: %s at most %.4f m above some member", people, q.name, all[i].asked, what, all[i].worst[k])
			}
		}
	}
	var drawn atomic.Uint64
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		workers.Go(func() {
			for n := drawn.Add(1) - 1; more(n); n = drawn.Add(1) - 1 {
				rnd := rand.New(rand.NewPCG(*searchFrom+n, 3))
				of := drawGolfer(rnd)
				g := newGolfer(of)
				if g == nil {
					continue
				}
				for i, q := range questions {
					sum := tally{worst: q.nothing()}
					find, by := q.climb(g, of, rnd, steps, &sum)
					if find != nil {
						t.Errorf("golfer %d, %s: what is said is %.4f m more than some member leaves: %s", *searchFrom+n, q.name, by, keep(t, q.name, *find))
					}
					lock.Lock()
					all[i].asked += sum.asked
					for k, v := range sum.worst {
						all[i].worst[k] = max(all[i].worst[k], v)
					}
					lock.Unlock()
				}
				lock.Lock()
				if people++; people%5 == 0 {
					tell()
				}
				lock.Unlock()
			}
		})
	}
	workers.Wait()
	tell()
}

// keep writes a find down and returns where.
func keep(t *testing.T, name string, s subject) string {
	text := must(json.MarshalIndent(s, "", " "))
	sum := fnv.New32a()
	sum.Write(text)
	file := filepath.Join(found, fmt.Sprintf("%s_%08x.json", name, sum.Sum32()))
	if err := os.MkdirAll(found, 0o755); err != nil {
		t.Error(err)
	}
	if err := os.WriteFile(file, append(text, '\n'), 0o644); err != nil {
		t.Error(err)
	}
	return file
}

// TestFinds asks again what the search once found to be flattered. A file's name is
// its question, then what is to be remembered of it.
func TestFinds(t *testing.T) {
	files := must(filepath.Glob(filepath.Join(found, "*.json")))
	if len(files) == 0 {
		t.Fatalf("no finds in %s", found)
	}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".json")
		t.Run(name, func(t *testing.T) {
			var s subject
			if err := json.Unmarshal(must(os.ReadFile(file)), &s); err != nil {
				t.Fatal(err)
			}
			kind, _, _ := strings.Cut(name, "_")
			i := slices.IndexFunc(questions, func(q question) bool { return q.name == kind })
			g := newGolfer(s.Plan)
			if i < 0 || g == nil {
				t.Fatalf("no question %q of such a golfer", kind)
			}
			above := questions[i].nothing()
			questions[i].ask(g, s, above)
			if v := slices.Max(above); !(v <= sweep.Tolerance) || math.IsInf(v, -1) {
				t.Errorf("what is said is %.4f m more than some member leaves, want at most %.3f", v, sweep.Tolerance)
			}
		})
	}
}
