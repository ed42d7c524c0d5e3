package maps

import (
	"testing"

	"wideberth/internal/fuzzed"
	"wideberth/internal/lean/json"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/remedy"
)

// labs keep what was modelled from test to test, one for each of plantest.Rooms, by its
// name: what a lab answers does not depend on what it was asked before.
var labs = map[string]*fit.Lab{}

func labOf(room string) *fit.Lab {
	if labs[room] == nil {
		labs[room] = new(fit.Lab)
	}
	return labs[room]
}

// questions are all that a lab can be asked about a plan.
var questions = []struct {
	what string
	ask  func(lab *fit.Lab, p plan.Checked) (any, error)
}{
	{"Check", func(lab *fit.Lab, p plan.Checked) (any, error) { return lab.Check(p) }},
	{"Stand", func(lab *fit.Lab, p plan.Checked) (any, error) { return Stand(lab, p, StandOptions{}) }},
	{"Hang", func(lab *fit.Lab, p plan.Checked) (any, error) { return Hang(lab, p, HangOptions{Ball: true}) }},
	{"HangAt", func(lab *fit.Lab, p plan.Checked) (any, error) {
		room := p.Plan().Room
		return HangAt(lab, p, HangOptions{Ball: true}, room.Length/3, room.Width/3)
	}},
	{"Onlookers", func(lab *fit.Lab, p plan.Checked) (any, error) { return Onlookers(lab, p, OnlookOptions{}) }},
	{"Marks", func(lab *fit.Lab, p plan.Checked) (any, error) { return lab.Marks(p, "") }},
	{"At", func(lab *fit.Lab, p plan.Checked) (any, error) {
		room := p.Plan().Room
		return lab.At(p, "", room.Length/2, room.Width/2)
	}},
	{"Remedies", func(lab *fit.Lab, p plan.Checked) (any, error) { return remedy.Solve(lab, p, "", "", "") }},
}

// answers fails the test when the answer to a question of a plan cannot be written
// down, for instance because of a NaN.
func answers(t *testing.T, lab *fit.Lab, p plan.Plan, question int) {
	t.Helper()
	q := questions[question]
	v, err := q.ask(lab, plantest.Checked(p))
	if err == nil {
		_, err = json.Encode(v)
	}
	if err != nil {
		t.Errorf("%s: %s: %v", p.Title, q.what, err)
	}
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
			var lab fit.Lab
			for k := range questions {
				answers(t, &lab, p, k)
			}
			m, err := Stand(&lab, plantest.Checked(p), StandOptions{Farthest: 9})
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

// FuzzMaps asks about random rooms: nothing panics, and no number is missing from an
// answer. So that it asks often, rooms are small, the golfer is the same in all, and
// each time one question is asked.
func FuzzMaps(engine *testing.F) {
	f := fuzzed.New(engine)
	for k := range questions {
		f.Add(uint64(k), uint8(k))
	}
	// A lab forgets what maps of another golfer, or with slopes, are made from.
	var labs [2][2]fit.Lab
	f.Fuzz(func(t *testing.T, seed uint64, question uint8) {
		p := plantest.Small(seed)
		for ; p.Validate() != nil; p = plantest.Small(seed) {
			seed++
		}
		lab := &labs[min(len(p.Room.Slopes), 1)]
		if p.Players[0].Hand == plan.HandLeft {
			answers(t, &lab[0], p, int(question)%len(questions))
		} else {
			answers(t, &lab[1], p, int(question)%len(questions))
		}
	})
}
