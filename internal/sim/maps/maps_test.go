package maps

import (
	"testing"

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

// everything asks a lab all it can be asked about a plan, and fails the test
// when an answer cannot be written down, for instance because of a NaN.
func everything(t *testing.T, lab *fit.Lab, p plan.Plan) {
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
	r, err := lab.Check(plantest.Checked(p))
	note("Check", r, err)
	s, err := Stand(lab, plantest.Checked(p), StandOptions{})
	note("Stand", s, err)
	h, err := Hang(lab, plantest.Checked(p), HangOptions{Ball: true})
	note("Hang", h, err)
	at, err := HangAt(lab, plantest.Checked(p), HangOptions{Ball: true}, p.Room.Length/3, p.Room.Width/3)
	note("HangAt", at, err)
	o, err := Onlookers(lab, plantest.Checked(p), OnlookOptions{})
	note("Onlookers", o, err)
	m, err := lab.Marks(plantest.Checked(p), "")
	note("Marks", m, err)
	q, err := lab.At(plantest.Checked(p), "", p.Room.Length/2, p.Room.Width/2)
	note("At", q, err)
	rem, err := remedy.Solve(lab, plantest.Checked(p), "", "", "")
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
			var lab fit.Lab
			everything(t, &lab, p)
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
		p := plantest.Random(seed)
		if p.Validate() != nil {
			return
		}
		var lab fit.Lab
		if _, err := lab.Check(plantest.Checked(p)); err != nil {
			return // no stance: the plan's own sentence
		}
		everything(t, &lab, p)
	})
}
