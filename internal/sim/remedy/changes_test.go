package remedy

import (
	"slices"
	"testing"

	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
)

func everybody(fit.Check) bool { return true }

// rooms are rooms that one, two or three changes help, or that help not everybody.
func rooms() map[string]plan.Plan {
	out := map[string]plan.Plan{"demo": plan.Demo(), "iron in a tight loft": plantest.OneClub("7-iron")}
	for _, p := range plan.Rooms() {
		out[p.Title] = p
	}
	return out
}

// Every change that is offered does what it says when the plan is checked afresh,
// worsens nobody's verdict, and does no longer when one of its steps is left out.
func TestChangesAreVerified(t *testing.T) {
	if testing.Short() {
		t.Skip("takes long; says nothing that differs from one machine to the next")
	}
	counts := map[int]int{}
	for name, p := range rooms() {
		t.Run(name, func(t *testing.T) {
			var lab, second fit.Lab // the second has heard of no change
			doc := plantest.Checked(p)
			before, err := lab.Check(doc)
			if err != nil {
				t.Fatal(err)
			}
			found, err := Changes(&lab, doc, before, everybody)
			if err != nil {
				t.Fatal(err)
			}
			if len(found) == 0 || len(found) > mostOffered {
				t.Fatalf("%d changes are offered, want 1 to %d", len(found), mostOffered)
			}
			for _, c := range found {
				counts[c.Count]++
				if c.Count != found[0].Count || c.Count > mostAtOnce {
					t.Errorf("%d changes at once beside %d: %+v", c.Count, found[0].Count, c.Steps)
				}
				after := rerun(t, &second, p, c.Edits)
				for i, x := range after.Checks {
					if x.Clearance != c.Report.Checks[i].Clearance {
						t.Errorf("%s with %s: %.4f is promised, a fresh check finds %.4f", x.Player, x.Club, c.Report.Checks[i].Clearance, x.Clearance)
					}
					if was := before.Checks[i].Verdict; was.Worse(x.Verdict) != was {
						t.Errorf("%s with %s: %s becomes %s by %+v", x.Player, x.Club, was, x.Verdict, c.Steps)
					}
				}
				if score(after) >= score(before) {
					t.Errorf("%+v makes nothing better", c.Steps)
				}
				for _, without := range oneLess(c.Steps) {
					if len(without) == 0 {
						continue
					}
					if less := rerun(t, &second, p, inOrder(without)); score(less) <= score(after) {
						t.Errorf("%+v does as well as all of %+v", without, c.Steps)
					}
				}
			}
		})
	}
	if counts[1] == 0 || counts[2] == 0 || counts[3] == 0 {
		t.Errorf("changes by how many are made at once: %v, want some of 1, 2 and 3", counts)
	}
}

// oneLess are the steps of a change with one of its changes left out: a tee that
// moves along both axes is one.
func oneLess(steps []Remedy) (out [][]Remedy) {
	for _, gone := range steps {
		out = append(out, slices.DeleteFunc(slices.Clone(steps), func(r Remedy) bool { return r.Kind == gone.Kind && r.Subject == gone.Subject }))
	}
	return out
}

// score is how bad a report is: strikes first.
func score(r fit.Report) (n int) {
	for _, c := range r.Checks {
		switch c.Verdict {
		case fit.Strikes:
			n += 100
		case fit.Tight:
			n++
		}
	}
	return n
}

// rerun checks the changed plan by a lab that did not search for the change.
func rerun(t *testing.T, lab *fit.Lab, p plan.Plan, edits []Edit) fit.Report {
	t.Helper()
	q, err := Apply(p, edits)
	if err != nil {
		t.Fatal(err)
	}
	r, err := lab.Check(plantest.Checked(q))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The last lever is pulled no farther than it must be.
func TestChangesAreSmall(t *testing.T) {
	p := plan.Demo()
	doc := plantest.Checked(p)
	var lab fit.Lab
	before, err := lab.Check(doc)
	if err != nil {
		t.Fatal(err)
	}
	found, err := Changes(&lab, doc, before, everybody)
	if err != nil {
		t.Fatal(err)
	}
	for _, kind := range []string{KindTee, KindCeiling} {
		i := slices.IndexFunc(found, func(c Change) bool { return c.Count == 1 && c.Steps[0].Kind == kind })
		if i < 0 {
			t.Errorf("no single change of the %s is offered: %+v", kind, found)
			continue
		}
		r := found[i].Steps[0]
		if less := rerun(t, new(fit.Lab), p, scaled(p, r, 2*ceilingStep)); less.Verdict == fit.Clear {
			t.Errorf("%s: %.3f m is offered, but %.3f would do", kind, r.Amount, r.Amount-2*ceilingStep)
		}
	}
}

// What is asked for one check helps it and worsens nobody, whoever else strikes.
func TestChangesForOneCheck(t *testing.T) {
	p := plantest.OneClub("7-iron")
	doc := plantest.Checked(p)
	var lab fit.Lab
	before, err := lab.Check(doc)
	if err != nil {
		t.Fatal(err)
	}
	asked := before.Checks[0]
	found, err := Changes(&lab, doc, before, func(c fit.Check) bool { return c.Player == asked.Player })
	if err != nil || len(found) == 0 {
		t.Fatalf("nothing helps %s with %s, %v", asked.Player, asked.Club, err)
	}
	for _, c := range found {
		if got := c.Report.Checks[0]; got.Verdict != fit.Clear {
			t.Errorf("%+v leaves %s with %s %s", c.Steps, got.Player, got.Club, got.Verdict)
		}
	}
}

// A room in which everybody is clear needs no change.
func TestNoChangeWhereClear(t *testing.T) {
	p := plan.Demo()
	p.Tees[0].Y -= 0.365
	doc := plantest.Checked(p)
	var lab fit.Lab
	before, err := lab.Check(doc)
	if err != nil || before.Verdict != fit.Clear {
		t.Fatalf("the room is %s, %v, want clear", before.Verdict, err)
	}
	if found, err := Changes(&lab, doc, before, everybody); err != nil || len(found) != 0 {
		t.Errorf("a clear room is offered %+v, %v", found, err)
	}
}
