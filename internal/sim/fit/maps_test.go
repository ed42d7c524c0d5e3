package fit

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"wideberth/internal/lean/json"
	"wideberth/internal/sim/plan"
)

// everything asks a lab all it can be asked about a plan, and fails the test
// when an answer cannot be written down, for instance because of a NaN.
func everything(t *testing.T, lab *Lab, p plan.Plan) {
	t.Helper()
	note := func(what string, v any, err error) {
		t.Helper()
		if err == nil {
			_, err = json.Encode(v)
		}
		if err != nil {
			t.Errorf("%s: %s: %v", p.Title, what, err)
		}
	}
	r, err := lab.Check(checked(p))
	note("Check", r, err)
	s, err := lab.Stand(checked(p), StandOptions{})
	note("Stand", s, err)
	h, err := lab.Hang(checked(p), HangOptions{Ball: true, Mishits: true})
	note("Hang", h, err)
	at, err := lab.HangAt(checked(p), HangOptions{Ball: true}, p.Room.Length/3, p.Room.Width/3)
	note("HangAt", at, err)
	o, err := lab.Onlookers(checked(p), OnlookOptions{})
	note("Onlookers", o, err)
	m, err := lab.Marks(checked(p), "")
	note("Marks", m, err)
	q, err := lab.At(checked(p), "", p.Room.Length/2, p.Room.Width/2)
	note("At", q, err)
	rem, err := lab.Remedies(checked(p), "", "", "")
	note("Remedies", rem, err)
}

// TestStartingRooms answers everything about every room to start from. They are
// rooms that people have, not rooms that fit, but nothing in them is absurd: an
// iron finds a place in each.
func TestStartingRooms(t *testing.T) {
	if testing.Short() {
		t.Skip("takes long; says nothing that differs from one machine to the next")
	}
	for _, p := range plan.Rooms() {
		t.Run(p.Title, func(t *testing.T) {
			p.Clubs = p.Clubs[1:2]
			var lab Lab
			everything(t, &lab, p)
			m, err := lab.Stand(checked(p), StandOptions{Farthest: 9})
			if err != nil {
				t.Fatal(err)
			}
			for _, q := range m.Players {
				t.Logf("%s: %.3f at (%.2f, %.2f) of %s", q.Player, q.Best.Clearance, q.Best.X, q.Best.Y, q.Best.Surface)
				if !q.Best.Found {
					t.Errorf("no place for %s at all", q.Player)
				}
			}
		})
	}
}

func TestMarks(t *testing.T) {
	p := oneClub("driver", "7-iron")
	p.Tees = append(p.Tees, plan.Tee{Name: "other", X: 3.1, Y: 1.9})
	var lab Lab
	marks, err := lab.Marks(checked(p), "")
	if err != nil {
		t.Fatal(err)
	}
	r, err := lab.Check(checked(p))
	if err != nil {
		t.Fatal(err)
	}
	if len(marks) != len(r.Checks) {
		t.Fatalf("%d marks for %d checks", len(marks), len(r.Checks))
	}
	for i, m := range marks {
		c := r.Checks[i]
		if m.Player != c.Player || m.Club != c.Club || m.Tee != c.Tee {
			t.Fatalf("mark %d is of %s, %s, %s; the check of %s, %s, %s", i, m.Player, m.Club, m.Tee, c.Player, c.Club, c.Tee)
		}
		back := 1.0 // the side of the golfer's back
		if m.Hand == "left" {
			back = -1
		}
		for name, f := range map[string]Foot{"lead": m.Lead, "trail": m.Trail} {
			out := back * (f.Heel[1] - m.Ball[1])
			if math.Abs(out-c.Heels) > 0.03 || out < back*(f.Toe[1]-m.Ball[1])+0.15 {
				t.Errorf("%s with %s: the %s heel is %.3f m behind the ball, want about %.3f, and the toe nearer", m.Player, m.Club, name, out, c.Heels)
			}
			if d := math.Hypot(f.Heel[0]-f.Toe[0], f.Heel[1]-f.Toe[1]); d < 0.2 || d > 0.35 {
				t.Errorf("%s: the %s foot is %.3f m long", m.Player, name, d)
			}
		}
		if m.Lead.Heel[0] < m.Trail.Heel[0]+0.15 {
			t.Errorf("%s: the lead foot is not nearer the target", m.Player)
		}
		wall := map[string]string{"right": "left wall", "left": "right wall"}[m.Hand]
		if m.Behind.Wall != wall || math.Abs(m.Behind.Clearance-c.BySurface[wall]) > 1e-9 || math.Abs(m.Behind.Typical-c.TypicalBySurface[wall]) > 1e-9 {
			t.Errorf("%s: behind %+v, the check has %.4f and %.4f to the %s", m.Player, m.Behind, c.BySurface[wall], c.TypicalBySurface[wall], wall)
		}
		if m.Behind.Part == "" || m.Behind.Phase == "" {
			t.Errorf("%s: nothing is said to come nearest to the wall", m.Player)
		}
		for _, tape := range m.Tapes {
			if d := math.Hypot(tape.A[0]-tape.B[0], tape.A[1]-tape.B[1]); math.Abs(d-tape.Distance) > 1e-9 || d > 6.4 {
				t.Errorf("%s: tape %+v is %.3f long", m.Player, tape, d)
			}
		}
		if want := map[string]float64{"middle": 0, "other": math.Hypot(0.2, 0.31)}[m.Tee]; math.Abs(m.Moved[2]-want) > 1e-9 {
			t.Errorf("%s on %s: moved by %.3f, want %.3f", m.Player, m.Tee, m.Moved[2], want)
		}
	}
	if _, err := lab.Marks(checked(p), "Nobody"); err == nil {
		t.Error("Marks of somebody who is not in the plan: want an error")
	}
}

// randomPlan makes a plan out of a seed, often an odd one; it may be invalid.
func randomPlan(seed uint64) plan.Plan {
	rnd := rand.New(rand.NewPCG(seed, 21))
	in := func(lo, hi float64) float64 { return lo + (hi-lo)*rnd.Float64() }
	p := plan.Plan{Title: "seed " + strconv.FormatUint(seed, 10), Margin: in(0.02, 0.6)}
	l, w, h := in(3, 9), in(2.2, 7), in(2.2, 4)
	p.Room = plan.Room{Length: l, Width: w, Height: h}
	for i := range rnd.IntN(3) {
		p.Room.Slopes = append(p.Room.Slopes, plan.Slope{Name: fmt.Sprint("slope ", i), Wall: []string{"left", "right", "front", "back"}[rnd.IntN(4)],
			KneeHeight: in(0.5, h), Run: in(0.2, min(l, w))})
	}
	box := func() (lo, hi [3]float64) {
		for i, size := range [3]float64{l, w, h} {
			lo[i] = in(0, size-0.1)
			hi[i] = min(size, lo[i]+in(0.02, 1.5))
			if rnd.IntN(3) == 0 {
				hi[i] = size
			}
			if rnd.IntN(4) == 0 {
				lo[i] = 0
			}
		}
		return lo, hi
	}
	for i := range rnd.IntN(4) {
		lo, hi := box()
		lo[2] = max(lo[2], 0.3)
		hi[2] = max(hi[2], lo[2]+0.1)
		p.Room.Solids = append(p.Room.Solids, plan.Solid{Name: fmt.Sprint("solid ", i), Min: lo, Max: hi})
	}
	for i := range rnd.IntN(3) {
		lo, hi := box()
		p.Hung = append(p.Hung, plan.Hung{Name: fmt.Sprint("thing ", i), Min: lo, Max: hi})
	}
	if rnd.IntN(3) > 0 {
		p.Screen = &plan.Screen{X: in(l/2, l), Centre: w / 2, Width: in(1, w), Height: in(1, h), SideReturn: in(0, 1), TopReturn: in(0, 1)}
	}
	if rnd.IntN(3) == 0 {
		p.Sensor = &plan.Sensor{Name: "sensor", Min: [2]float64{in(0, l/2), in(0, w/2)}, Max: [2]float64{in(l/2, l), in(w/2, w)}}
	}
	p.Floor.Mat = &plan.Mat{Thickness: in(0, 0.06), Inset: rnd.IntN(2) == 0}
	p.Floor.Layers = []plan.Layer{{Name: "layer", Thickness: in(0, 0.1)}}
	p.Tees = []plan.Tee{{Name: "tee", X: in(0.2, l-0.2), Y: in(0.2, w-0.2)}}
	p.Clubs = []plan.Club{plan.DefaultClub([]string{"driver", "iron", "wedge"}[rnd.IntN(3)], "club")}
	p.Players = []plan.Player{{Name: "player", Height: in(1.4, 2.05), Hand: []string{"right", "left"}[rnd.IntN(2)]}}
	p.Seats = []plan.Seat{{Name: "seat", X: in(0, l), Y: in(0, w)}}
	return p.WithDefaults()
}

// FuzzMaps asks everything about random plans: nothing panics, and no number is
// missing from an answer.
func FuzzMaps(f *testing.F) {
	seeds := uint64(12)
	if testing.Short() {
		seeds = 2
	}
	for seed := range seeds {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, seed uint64) {
		p := randomPlan(seed)
		if p.Validate() != nil {
			return
		}
		var lab Lab
		if _, err := lab.Check(checked(p)); err != nil {
			return // no stance: the plan's own sentence
		}
		everything(t, &lab, p)
	})
}
