package protocol

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"wideberth/internal/form"
	"wideberth/internal/fuzzed"
	"wideberth/internal/render/drawing"
	"wideberth/internal/render/scene/wire"
	"wideberth/internal/sim/fit"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/sim/swing"
	"wideberth/internal/solver/reply"
	"wideberth/internal/solver/words"
	"wideberth/internal/units"
)

// small is the demo with one player and one club: one check, worked out once.
func small() plan.Plan {
	p := plantest.Loft()
	p.Players, p.Clubs = p.Players[1:2], p.Clubs[:1]
	return p
}

func solveRequest(p plan.Plan, f Focus) []byte {
	focus, _ := json.Marshal(f)
	return fmt.Appendf(nil, `{"kind":"solve","plan":%s,"focus":%s}`, p.JSON(), focus)
}

// solved is what the tests read of an answer.
type solved struct {
	Plan      plan.Plan
	Report    fit.Report
	Focus     Focus
	Sentences words.Sentences
	Flat      drawing.Set
	Sparse    json.RawMessage
	Figures   figures
	Fresh     form.Fresh
	Error     *reply.Problem
}

func solve(t *testing.T, s *Solver, p plan.Plan, f Focus) solved {
	t.Helper()
	var out solved
	if err := json.Unmarshal(s.Handle(solveRequest(p, f)), &out); err != nil {
		t.Fatal(err)
	}
	if out.Error != nil {
		t.Fatalf("solve: %s", out.Error.Message)
	}
	return out
}

func TestSolveHangsTogether(t *testing.T) {
	var s Solver
	p := small()
	out := solve(t, &s, p, Focus{})
	want := Focus{"Tall guest", "driver", "middle"}
	if out.Focus != want {
		t.Errorf("focus = %+v, want %+v", out.Focus, want)
	}
	c := out.Report.Checks[0]
	if !strings.HasPrefix(out.Sentences.Verdict, "Tall guest, driver, middle tee: ") || !strings.Contains(out.Sentences.Verdict, words.Surface(c.Nearest.Surface)) {
		t.Errorf("verdict %q does not name who and the surface %q", out.Sentences.Verdict, c.Nearest.Surface)
	}
	for name, v := range map[string]drawing.View{"plan": out.Flat.Plan, "side": out.Flat.Side, "face": out.Flat.Face} {
		if len(v.Sweep) == 0 || len(v.Path) < 10 || len(v.Figure) != 19 || len(v.Lines) < 4 {
			t.Errorf("%s: %d outlines, %d points of path, %d limbs, %d lines: something is missing", name, len(v.Sweep), len(v.Path), len(v.Figure), len(v.Lines))
		}
		if v.Tape == nil || v.Tape.Label != tapeLabel(c.Clearance, p.Units) || v.Tape.Verdict != c.Verdict {
			t.Errorf("%s: tape %+v does not read %s of the report", name, v.Tape, tapeLabel(c.Clearance, p.Units))
		}
	}
	if back, err := plan.Parse(out.Sparse); err != nil || !reflect.DeepEqual(back.Plan(), out.Plan) {
		t.Errorf("what the link keeps does not lead back to the plan: %v", err)
	}

	// The same request again, and the plan that came back, give the same bytes.
	first := s.Handle(solveRequest(p, Focus{}))
	if again := s.Handle(solveRequest(out.Plan, Focus{})); !bytes.Equal(first, again) {
		t.Error("the plan with its defaults filled in gives another answer")
	}
	// What no clearance depends on is not worked out again; what one does is.
	key := s.cache.key
	p.Title, p.Units = "Another title", units.Metric
	metric := solve(t, &s, p, Focus{})
	if s.cache.key != key {
		t.Error("another title and other units ran the whole plan again")
	}
	if !strings.Contains(metric.Sentences.Verdict, " mm") {
		t.Errorf("metric verdict %q has no millimetres", metric.Sentences.Verdict)
	}

	// The scene's tape reads as the page's.
	body := bytes.Replace(solveRequest(p, Focus{}), []byte("solve"), []byte("show"), 1)
	packed, err := s.Show(body)
	if err != nil {
		t.Fatal(err)
	}
	scene, err := wire.Decode(packed)
	if err != nil {
		t.Fatal(err)
	}
	if scene.Tightest.Label != metric.Flat.Plan.Tape.Label {
		t.Errorf("tape of the scene reads %q, of the page %q", scene.Tightest.Label, metric.Flat.Plan.Tape.Label)
	}
}

// A left-hander in the mirrored room gets the mirrored drawings: see package
// drawing. Here: a low ceiling strikes, a barn is clear, and words follow.
func TestVerdictFollowsTheRoom(t *testing.T) {
	cases := []struct {
		name    string
		size    [3]float64
		verdict fit.Verdict
		says    string
	}{
		{"low ceiling", [3]float64{6.4, 6, 2.3}, fit.Strikes, " strikes the "},
		{"barn", [3]float64{12, 10, 6}, fit.Clear, ": clear; the closest is "},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			p := small()
			p.Room = plan.Room{Length: c.size[0], Width: c.size[1], Height: c.size[2]}
			p.Screen, p.Hung, p.Seats = nil, nil, nil
			p.Tees = []plan.Tee{{Name: "middle", X: 3, Y: c.size[1] / 2}}
			var s Solver
			out := solve(t, &s, p, Focus{})
			if out.Report.Verdict != c.verdict || !strings.Contains(out.Sentences.Verdict, c.says) {
				t.Errorf("%s: %s\nwant %s and %q", out.Report.Verdict, out.Sentences.Verdict, c.verdict, c.says)
			}
		})
	}
}

func TestWorstOf(t *testing.T) {
	checks := []fit.Check{
		{Player: "a", Club: "driver", Tee: "t", Clearance: 0.3},
		{Player: "b", Club: "driver", Tee: "t", Clearance: -0.1},
		{Player: "b", Club: "iron", Tee: "t", Clearance: 0.2},
		{Player: "c", Club: "iron", Tee: "t", Clearance: -0.1},
	}
	cases := []struct {
		name  string
		focus Focus
		want  int
	}{
		{"all", Focus{}, 1},
		{"one named", Focus{"b", "iron", "t"}, 2},
		{"a player", Focus{Player: "b"}, 1},
		{"a club", Focus{Club: "iron"}, 3},
		{"nobody", Focus{Player: "d"}, -1},
	}
	for _, c := range cases {
		if got := worstOf(checks, c.focus); got != c.want {
			t.Errorf("%s: worstOf(%+v) = %d, want %d", c.name, c.focus, got, c.want)
		}
	}
}

func TestTapeLabel(t *testing.T) {
	cases := []struct {
		m     float64
		units string
		want  string
	}{
		{0.1499, units.Imperial, "5 7/8 in · 149 mm"},
		{0.1499, units.Metric, "149 mm · 5 7/8 in"},
		{-0.042, units.Imperial, "1 3/4 in · 42 mm past"},
		{0.001, units.Imperial, "0 in · 1 mm"},
	}
	for _, c := range cases {
		if got := tapeLabel(c.m, c.units); got != c.want {
			t.Errorf("tapeLabel(%v m, %s) = %q, want %q", c.m, c.units, got, c.want)
		}
	}
}

// FuzzHandle looks for requests that panic, or whose answer is not one JSON
// object. Whole plans are left out: each takes a good part of a second.
func FuzzHandle(engine *testing.F) {
	f := fuzzed.New(engine)
	for _, seed := range []string{
		`{"kind":"open"}`, `{"kind":"length","text":"5'11\"","units":"imperial"}`, `{"kind":"solve","plan":{"room":{"length":"6 m"},"clubs":[{"ball":7}]}}`,
		`{"kind":"start","linked":"#p=a","saved":"{}"}`, `{"kind":"solve","plan":{"room":{}}}`, `[`, "\xff",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, body []byte) {
		var s Solver
		out := s.Handle(body)
		var object map[string]json.RawMessage
		if err := json.Unmarshal(out, &object); err != nil {
			t.Fatalf("Handle(%q) = %q: %v", body, out, err)
		}
		if bytes.Contains(out, []byte("fault of the program")) {
			t.Fatalf("Handle(%q) ran into a panic: %s", body, out)
		}
	})
}

// Every field of a player and a club either makes another swing, and then is in
// the key under which swings are kept, or is known not to: a field added to the
// plan must be put on one side.
func TestKeyHoldsWhatASwingDependsOn(t *testing.T) {
	no := map[string]bool{
		"Player.Name": true, "Player.Hand": true, "Player.Skill": true, "Player.Clubs": true, "Player.Tees": true,
		"Club.Name": true, "Club.Loft": true, "Club.Ball": true,
	}
	plain := keyOf(cast{}, swing.Variation{})
	var who cast
	for _, part := range []any{&who.player, &who.club} {
		v := reflect.ValueOf(part).Elem()
		for i := range v.NumField() {
			field, name := v.Field(i), v.Type().Name()+"."+v.Type().Field(i).Name
			switch field.Kind() {
			case reflect.String:
				field.SetString("x")
			case reflect.Float64:
				field.SetFloat(1)
			default:
				if !no[name] {
					t.Errorf("%s: neither in the key nor known not to matter", name)
				}
				continue
			}
			if differs := keyOf(who, swing.Variation{}) != plain; differs == no[name] {
				t.Errorf("%s: another value gives another key: %v, want %v", name, differs, !no[name])
			}
			field.SetZero()
		}
	}
	if keyOf(cast{}, swing.Variation{1}) == plain {
		t.Error("another member of the family has the same key")
	}
}
