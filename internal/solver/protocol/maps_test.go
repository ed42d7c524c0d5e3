package protocol

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"wideberth/internal/render/drawing"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/remedy"
	"wideberth/internal/solver/reply"
	"wideberth/internal/solver/words"
	"wideberth/internal/units"
)

// wide is a room in which the demo's people swing freely.
func wide() plan.Plan {
	p := plantest.Loft().WithDefaults()
	p.Room = plan.Room{Length: 9, Width: 7, Height: 4}
	p.Screen.X, p.Screen.Centre = 8.4, 3.5
	p.Tees[0].X, p.Tees[0].Y = 5.2, 3.5
	p.Hung, p.Seats = nil, nil
	return p
}

// askFor serves a request about a plan into out; more is further fields.
func askFor(t *testing.T, s *Solver, kind string, p plan.Plan, more string, out any) {
	t.Helper()
	raw := s.Handle(fmt.Appendf(nil, `{"kind":%q,"plan":%s%s}`, kind, p.JSON(), more))
	var failed reply.Failure
	if err := json.Unmarshal(raw, &failed); err != nil || failed.Error.Message != "" {
		t.Fatalf("%s%s: %v %s", kind, more, err, failed.Error.Message)
	}
	if err := json.Unmarshal(raw, out); err != nil {
		t.Fatalf("%s%s: %v", kind, more, err)
	}
	for _, bad := range []string{"safe", "%!", "NaN", "in in ", "  "} {
		if strings.Contains(strings.ToLower(string(raw)), strings.ToLower(bad)) {
			t.Errorf("%s%s: the answer holds %q", kind, more, bad)
		}
	}
}

// The maps draw what their sentences say.
func TestMaps(t *testing.T) {
	var s Solver
	var stand standAnswer
	askFor(t, &s, "maps", wide(), `,"of":"stand"`, &stand)
	if !strings.HasPrefix(stand.Summary, "Most room for everybody: the tee ") || stand.Best == nil || stand.Best.Verdict != fit.Clear {
		t.Errorf("stand = %q, %+v, want a place where everybody is clear", stand.Summary, stand.Best)
	}
	rings := map[string]int{}
	for _, one := range stand.Shapes {
		rings[one.Name] += len(one.Rings)
	}
	if rings["strike"] == 0 || rings["margin"] == 0 || rings["comfort"] == 0 || rings["barred"] == 0 {
		t.Errorf("stand draws %v, want rings of every kind", rings)
	}
	if stand.Sharing == "" || len(stand.Players) != 3 || len(stand.Limits) == 0 {
		t.Errorf("stand = sharing %q, %d players, limits %q", stand.Sharing, len(stand.Players), stand.Limits)
	}
	var alone standAnswer
	askFor(t, &s, "maps", wide(), `,"of":"stand","focus":{"player":"Host","club":"7-iron"}`, &alone)
	if len(alone.Players) != 1 || alone.Sharing != "" || !strings.HasPrefix(alone.Summary, "Most room for Host") {
		t.Errorf("for one = %q, %d players, sharing %q", alone.Summary, len(alone.Players), alone.Sharing)
	}

	var watch watchAnswer
	p := wide()
	p.Seats = []plan.Seat{{Name: "corner stool", X: 0.5, Y: 0.5}, {Name: "front row", X: 6.5, Y: 3.5}}
	askFor(t, &s, "maps", p, `,"of":"watch"`, &watch)
	if watch.Summary != "1 of 2 seats can be hit: front row." || !strings.Contains(watch.Note, " sq ft") {
		t.Errorf("watch = %q, then %q: want the seats first, then the part that is free", watch.Summary, watch.Note)
	}
	for _, one := range watch.Shapes {
		if len(one.Rings) == 0 {
			t.Errorf("watch draws nothing of %q", one.Name)
		}
	}
	if watch.Seats[0].Verdict != fit.Clear || watch.Seats[1].Verdict != fit.Strikes || !strings.Contains(watch.Seats[1].Text, "can hit it") {
		t.Errorf("seats = %+v, want the corner clear and the one in the ball's way hit", watch.Seats)
	}

	p.Seats = nil
	askFor(t, &s, "maps", p, `,"of":"watch"`, &watch)
	if !strings.Contains(watch.Summary, " sq ft") {
		t.Errorf("without seats watch = %q, want the part that is free", watch.Summary)
	}

	var hang hangAnswer
	p.Hung = []plan.Hung{{Name: "lamp", Min: [3]float64{5, 3.6, 1.9}, Max: [3]float64{5.3, 3.9, 4}}}
	askFor(t, &s, "maps", p, `,"of":"hang"`, &hang)
	if len(hang.Things) != 1 || hang.Things[0].Verdict != fit.Strikes || len(hang.Things[0].Remedies) == 0 {
		t.Errorf("hung = %+v, want a lamp over the golfer's head struck, and remedies", hang.Things)
	}
}

// How low a thing may hang is said in the plan's units and never lower than it is.
func TestHangAt(t *testing.T) {
	var s Solver
	p := wide()
	cases := []struct {
		name, units string
		x, y        float64
		want        []string
	}{
		{"over the golfer", units.Imperial, 5.2, 4.2, []string{"Down to ", " ft ", " here", "passes beneath", "5 7/8 in kept"}},
		{"over the golfer, metric", units.Metric, 5.2, 4.2, []string{"Down to ", " m here", "150 mm kept"}},
		{"in the corner", units.Imperial, 0.2, 0.2, []string{"Down to the floor here"}},
		{"outside is held to the wall", units.Imperial, -3, 0.2, []string{"Down to the floor here"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			p.Units = c.units
			var at hangAnswerAt
			askFor(t, &s, "hangAt", p, fmt.Sprintf(`,"x":%g,"y":%g`, c.x, c.y), &at)
			for _, part := range c.want {
				if !strings.Contains(at.Text, part) {
					t.Errorf("hangAt = %q, want it to hold %q", at.Text, part)
				}
			}
			if m, err := units.ParseLength(between(at.Text, "Down to ", " here"), c.units); err == nil && m < at.Lowest-1e-9 {
				t.Errorf("hangAt says %v m, lower than %v m", m, at.Lowest)
			}
		})
	}
}

func between(text, from, to string) string {
	_, rest, _ := strings.Cut(text, from)
	out, _, _ := strings.Cut(rest, to)
	return out
}

// A tee that is moved is answered at once, and as a check answers it.
func TestDrag(t *testing.T) {
	var s Solver
	p := wide()
	cases := []struct {
		name    string
		x, y    float64
		verdict fit.Verdict
		says    string
	}{
		{"the middle", 5.2, 3.5, fit.Clear, "Clear: all 8. Tall guest with the driver keeps "},
		{"by the left wall", 5.2, 6.5, fit.Strikes, "of 8. Tall guest with the driver strikes the left wall"},
		{"beyond the screen", 8.8, 3.5, fit.Strikes, "No ball can lie here"},
		{"outside", 50, -50, fit.Strikes, "No ball can lie here"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var at dragAnswer
			askFor(t, &s, "drag", p, fmt.Sprintf(`,"x":%g,"y":%g`, c.x, c.y), &at)
			if at.Verdict != c.verdict || !strings.Contains(at.Sentence, c.says) {
				t.Errorf("drag = %s: %q, want %s: %q", at.Verdict, at.Sentence, c.verdict, c.says)
			}
			if !(at.X > 0 && at.X < p.Room.Length && at.Y > 0 && at.Y < p.Room.Width) {
				t.Errorf("drag leaves the tee at %v, %v, outside the room", at.X, at.Y)
			}
		})
	}
}

// A tee on its way that is clear tells of those who strike from another tee.
func TestDragTellsOfEverybody(t *testing.T) {
	var s Solver
	p := wide()
	p.Players, p.Clubs = p.Players[:2], p.Clubs[:1]
	p.Tees = append(p.Tees, plan.Tee{Name: "wall", X: 5.2, Y: 6.5})
	p.Players[0].Tees, p.Players[1].Tees = []string{"middle"}, []string{"wall"}
	var at dragAnswer
	askFor(t, &s, "drag", p, `,"focus":{"tee":"middle"},"x":5.2,"y":3.4`, &at)
	if want := "Strikes: 1 of 2. From the middle tee, Host with the driver keeps "; at.Verdict != fit.Strikes || !strings.HasPrefix(at.Sentence, want) {
		t.Errorf("drag = %s: %q, want it to start %q", at.Verdict, at.Sentence, want)
	}
}

// Remedies, applied, do what they say.
// The changes for everybody come with edits that lead where their sentences say.
func TestChangesApplied(t *testing.T) {
	var s Solver
	var out changesAnswer
	askFor(t, &s, "changes", plan.Demo(), "", &out)
	if len(out.Offers) == 0 || !strings.HasPrefix(out.Offers[0].Sentence, "Move the tee ") || len(out.Plays) > 0 || out.Compromise != nil {
		t.Fatalf("the demo is offered %+v, want the tee moved first, and no compromise", out)
	}
	for _, o := range out.Offers {
		p, err := remedy.Apply(plan.Demo(), o.Edits)
		if err != nil {
			t.Fatal(err)
		}
		var after solveAnswer
		askFor(t, &s, "solve", p, "", &after)
		if after.Sentences.Headline != o.Headline || after.Report.Verdict != o.Verdict || o.Verdict != fit.Clear {
			t.Errorf("%q is said to lead to %q, and leads to %q", o.Sentence, o.Headline, after.Sentences.Headline)
		}
	}
}

func TestRemediesApplied(t *testing.T) {
	var s Solver
	p := wide()
	p.Players, p.Clubs = p.Players[:1], p.Clubs[:1]
	p.Room.Height, p.Screen.Height = 2.75, 2
	var out remediesAnswer
	askFor(t, &s, "remedies", p, "", &out)
	if len(out.Remedies) == 0 {
		t.Fatal("a low ceiling has no remedy")
	}
	kinds := map[string]bool{}
	for _, r := range out.Remedies {
		kinds[r.Kind] = true
		edits, _ := json.Marshal(r.Edits)
		var changed planAnswer
		askFor(t, &s, "apply", p, `,"edits":`+string(edits), &changed)
		report, err := new(fit.Lab).Check(checked(changed.Plan))
		if err != nil {
			t.Fatalf("%s: %v", r.Text, err)
		}
		const tol = 0.003 // m: a check's own, and a step of a remedy
		if got := report.Checks[0].Clearance; got < r.Clearance-tol || got < p.Margin-tol {
			t.Errorf("%s: %s; the check then finds %.3f m", r.Text, r.After, got)
		}
	}
	if !kinds[remedy.KindCeiling] {
		t.Errorf("remedies %v, want the ceiling raised", kinds)
	}
}

// A guest whose swing strikes is told not to make it, whichever club is looked at;
// one who is clear is told what is nearest, and the room behind.
func TestMarks(t *testing.T) {
	var s Solver
	var out marksAnswer
	askFor(t, &s, "maps", wide(), `,"of":"marks"`, &out)
	if len(out.Marks) != 8 {
		t.Fatalf("%d marks, want one for each player with each club: 8", len(out.Marks))
	}
	for _, m := range out.Marks {
		if m.Verdict != fit.Clear || !strings.HasPrefix(m.Sentence, "Clear for you: the nearest thing is the screen's ") || !strings.Contains(m.More, " to the wall behind you with the "+m.Club) || len(m.Tapes) != 5 || m.Moved != "" {
			t.Errorf("mark = %+v, want the nearest thing, the room behind, five tapes and nothing moved", m)
		}
	}
	for _, m := range out.Marks {
		head := slices.IndexFunc(m.Figure, func(l drawing.Limb) bool { return l.Part == "head" })
		club := slices.IndexFunc(m.Figure, func(l drawing.Limb) bool { return l.Part == "clubhead" })
		if head < 0 || club < 0 || len(m.Lines) < 4 {
			t.Fatalf("%s with the %s is drawn of %d limbs among %d lines", m.Player, m.Club, len(m.Figure), len(m.Lines))
		}
		back := 1.0 // the side of the golfer's back
		if m.Hand == plan.HandLeft {
			back = -1
		}
		if out := back * (m.Figure[head].A[1] - m.Ball[1]); out < 0.3 || out > back*(m.Lead.Heel[1]-m.Ball[1]) {
			t.Errorf("%s with the %s: the head is %.2f m from the ball, want it over the toes or before them", m.Player, m.Club, out)
		}
		if d := math.Hypot(m.Figure[club].A[0]-m.Ball[0], m.Figure[club].A[1]-m.Ball[1]); d > 0.15 {
			t.Errorf("%s with the %s: the clubhead is %.2f m from the ball", m.Player, m.Club, d)
		}
		if !strings.HasPrefix(m.Brief, "The ") || m.Nearest.Name == "" || !strings.Contains(m.Brief, words.Surface(m.Nearest.Name)) {
			t.Errorf("%s = %q, nearest to %q", m.Player, m.Brief, m.Nearest.Name)
		}
	}
	askFor(t, &s, "maps", plantest.Loft(), `,"of":"marks"`, &out)
	for _, m := range out.Marks {
		friend := m.Player == "Left-handed friend" // who strikes nothing, where others do
		if strings.Contains(m.Beside, "With the "+m.Club) != (m.Club != "driver") || strings.Contains(m.Beside, "This is yours alone") != friend {
			t.Errorf("%s with the %s reads beside the sentence: %q", m.Player, m.Club, m.Beside)
		}
		if m.Player == "Host" && (m.Verdict != fit.Strikes || !strings.HasPrefix(m.Sentence, "Do not swing the driver here")) {
			t.Errorf("%s's mark with the %s = %q (%s), want a warning off the driver", m.Player, m.Club, m.Sentence, m.Verdict)
		}
	}
	two := wide()
	two.Tees = append(two.Tees, plan.Tee{Name: "left", X: 5.0, Y: 3.9})
	askFor(t, &s, "maps", two, `,"of":"marks"`, &out)
	const want = "The ball lies 7 7/8 in towards the back wall and 15 3/4 in towards the left wall from the middle tee."
	if m := out.Marks[1]; m.Tee != "left" || m.Moved != want {
		t.Errorf("moved = %q on the %s, want %q", m.Moved, m.Tee, want)
	}
}

func TestRooms(t *testing.T) {
	var s Solver
	var out roomsAnswer
	if err := json.Unmarshal(s.Handle([]byte(`{"kind":"rooms"}`)), &out); err != nil || len(out.Rooms) < 5 {
		t.Fatalf("rooms = %d, %v, want several", len(out.Rooms), err)
	}
	for _, p := range out.Rooms {
		if err := p.Validate(); err != nil || p.Title == "" {
			t.Errorf("room %q: %v", p.Title, err)
		}
	}
}

func TestMapRefusals(t *testing.T) {
	var s Solver
	demo := string(plantest.Loft().JSON())
	for _, c := range []struct{ name, body, want string }{
		{"no kind of map", `{"kind":"maps","plan":` + demo + `}`, `map of ""`},
		{"no plan", `{"kind":"maps","of":"stand"}`, "must be an object"},
		{"no such tee", `{"kind":"drag","focus":{"tee":"far"},"plan":` + demo + `}`, "far"},
		{"an edit of nothing", `{"kind":"apply","edits":[{"path":"moon[3].x","value":1}],"plan":` + demo + `}`, "moon"},
		{"an edit too far", `{"kind":"apply","edits":[{"path":"room.height","value":900}],"plan":` + demo + `}`, "900"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out reply.Failure
			if err := json.Unmarshal(s.Handle([]byte(c.body)), &out); err != nil || !strings.Contains(out.Error.Message, c.want) {
				t.Errorf("error = %q (%v), want it to hold %q", out.Error.Message, err, c.want)
			}
		})
	}
}
