package protocol

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"wideberth/internal/golden"
	"wideberth/internal/sim/plan"
	"wideberth/internal/sim/plan/plantest"
	"wideberth/internal/solver/reply"
	"wideberth/internal/solver/words"
	"wideberth/internal/units"
)

var update = flag.Bool("update", false, "write the golden files anew")

// askBall asks about the ball; more is further fields of the request.
func askBall(t *testing.T, s *Solver, p plan.Plan, f Focus, more string) ballAnswer {
	t.Helper()
	focus, _ := json.Marshal(f)
	raw := s.Handle(fmt.Appendf(nil, `{"kind":"ball","plan":%s,"focus":%s%s}`, p.JSON(), focus, more))
	var out struct {
		ballAnswer
		Error *reply.Problem
	}
	if err := json.Unmarshal(raw, &out); err != nil {
		t.Fatal(err)
	}
	if out.Error != nil {
		t.Fatalf("ball: %s", out.Error.Message)
	}
	return out.ballAnswer
}

// one is the demo with a single player and club.
func one(player, club int) plan.Plan {
	p := plantest.Loft().WithDefaults()
	p.Players, p.Clubs = p.Players[player:player+1], p.Clubs[club:club+1]
	p.Players[0].Clubs = nil
	return p
}

func TestBallGolden(t *testing.T) {
	var s Solver
	var got bytes.Buffer
	raw := s.Handle(fmt.Appendf(nil, `{"kind":"ball","plan":%s}`, plantest.Loft().JSON()))
	var tree any
	if err := json.Unmarshal(raw, &tree); err != nil {
		t.Fatal(err)
	}
	write := json.NewEncoder(&got)
	write.SetIndent("", " ")
	if err := write.Encode(golden.Rounded(tree, threeFigures)); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join("testdata", "ball-demo.json")
	if *update {
		if err := os.WriteFile(file, got.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got.Bytes(), want) {
		t.Errorf("the answer about the demo's ball differs from %s; look at it and run with -update", file)
	}
}

// threeFigures keeps so many of a number, so that a golden file holds what
// an answer says and not the last digit of a swing.
func threeFigures(v float64) float64 {
	out, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 3, 64), 64)
	return out
}

// Every way a ball can end is said, and none of it flatters.
func TestBallSentences(t *testing.T) {
	cases := []struct {
		name, more string
		plan       func() plan.Plan
		summary    []string // parts of the summary
		told       []string // parts of the sentences together
	}{
		{"the driver meets the screen", "", func() plan.Plan { return one(1, 0) },
			[]string{"Tall guest, driver, middle tee: a well-struck ball meets the screen", "mph", "all 1,000 ordinary balls", "as few as 99.6 %"},
			[]string{"Every ball with the driver meets the screen first", "Off the screen the well-struck ball may come back past the golfer"}},
		{"a steep wedge under a low ceiling", "", func() plan.Plan {
			p := one(0, 2)
			p.Clubs[0].Loft, p.Clubs[0].Ball = 58, &plan.Ball{Speed: 33, Launch: 45, Spin: 9500}
			p.Room.Height, p.Room.Slopes, p.Room.Solids, p.Hung = 2.30, nil, nil, nil
			return p
		},
			[]string{"a well-struck ball meets the ceiling", "before the screen"},
			[]string{"with the pitching wedge meet the ceiling first, up to", "before the screen"}},
		{"past a narrow screen", "", func() plan.Plan {
			p := one(0, 1)
			p.Players[0].Skill = plan.SkillWild
			p.Screen.Width, p.Screen.SideReturn, p.Screen.TopReturn = 1.2, 0, 0
			return p
		},
			[]string{"Screen and returns catch", "95 % interval"},
			[]string{"passes left of the screen and meets", "passes right of the screen and meets", "1 ball in "}},
		{"no screen", "", func() plan.Plan {
			p := one(0, 0)
			p.Screen = nil
			return p
		},
			[]string{"meets the front wall", "The plan has no screen to catch it."},
			[]string{"Off the front wall"}},
		{"metric", "", func() plan.Plan {
			p := one(0, 0)
			p.Units = units.Metric
			return p
		}, []string{" mm above the bare floor", " m/s"}, []string{" m/s"}},
		{"a measured ball speed is taken as it is", "", func() plan.Plan {
			p := one(0, 0)
			p.Units = units.Metric
			p.Clubs[0].Ball.Speed = 40
			return p
		}, []string{"at 40 m/s"}, nil},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var s Solver
			out := askBall(t, &s, c.plan(), Focus{}, c.more)
			told := strings.Join(out.Sentences, "\n")
			for _, part := range c.summary {
				if !strings.Contains(out.Summary, part) {
					t.Errorf("summary = %q, want it to hold %q", out.Summary, part)
				}
			}
			for _, part := range c.told {
				if !strings.Contains(told, part) {
					t.Errorf("sentences = %q, want them to hold %q", told, part)
				}
			}
			everything, _ := json.Marshal(out)
			for _, bad := range []string{"safe", "%!", "NaN", "-0 %", "balls meets", "in in "} {
				if strings.Contains(strings.ToLower(string(everything)), strings.ToLower(bad)) {
					t.Errorf("the answer holds %q", bad)
				}
			}
		})
	}
}

// A higher catch rate never asks for a shallower return, and the curve that goes
// with it falls to nothing.
func TestCatchRate(t *testing.T) {
	var s Solver
	p := plantest.Loft()
	need := -1.0
	for _, rate := range []string{"0.95", "0.99", "0.999"} {
		e := askBall(t, &s, p, Focus{}, `,"catch":`+rate).Enclosure
		if e.Top.Need < need {
			t.Errorf("catch %s: top return %v m, want no less than %v at a lower rate", rate, e.Top.Need, need)
		}
		need = e.Top.Need
		for i, at := range e.Curve {
			if i > 0 && (at.Top > e.Curve[i-1].Top || at.Side > e.Curve[i-1].Side || at.Depth <= e.Curve[i-1].Depth) {
				t.Errorf("catch %s: the curve rises at %v m", rate, at.Depth)
			}
		}
		if last := e.Curve[len(e.Curve)-1]; last.Top != 0 || last.Side != 0 {
			t.Errorf("catch %s: the curve ends at %+v, want nothing missed", rate, last)
		}
		if e.Top.Need > e.Top.All {
			t.Errorf("catch %s: needs %v m, more than all balls take (%v m)", rate, e.Top.Need, e.Top.All)
		}
	}
	if need <= 0 {
		t.Error("no rate asks for a top return in the demo: the wedge climbs over its screen")
	}
}

// Ordinary balls may need no side return while a shot off the hosel does; the
// answer has to show both.
func TestMishitsStandBesideOrdinaryBalls(t *testing.T) {
	var s Solver
	p := one(0, 0)
	p.Players[0].Skill = plan.SkillSteady
	p.Screen.SideReturn = 0
	out := askBall(t, &s, p, Focus{}, "")
	if out.Enclosure.Side.Need != 0 || out.Enclosure.Side.Verdict != "clear" {
		t.Fatalf("side return = %+v, want none needed for a steady driver", out.Enclosure.Side)
	}
	found := false
	for _, m := range out.Enclosure.Mishits {
		if m.Name == "Hosel 45°" {
			found = true
			if m.OK || !strings.Contains(m.Text, "side return") || !strings.Contains(m.Text, "the plan has none") {
				t.Errorf("hosel 45° = %+v, want a side return asked for that the plan has not got", m)
			}
		}
	}
	if !found {
		t.Error("the hosel shot is missing")
	}
}

func TestBallRefusals(t *testing.T) {
	var s Solver
	demo := string(plantest.Loft().JSON())
	for _, c := range []struct{ name, body, want string }{
		{"catches more than all", `{"kind":"ball","catch":1.5,"plan":` + demo + `}`, "outside 0.5–1"},
		{"catches hardly any", `{"kind":"ball","catch":0.2,"plan":` + demo + `}`, "outside 0.5–1"},
		{"no plan", `{"kind":"ball"}`, "must be an object"},
	} {
		t.Run(c.name, func(t *testing.T) {
			problem, _ := ask(t, &s, c.body)["error"].(map[string]any)
			if message, _ := problem["message"].(string); !strings.Contains(message, c.want) {
				t.Errorf("message = %q, want it to hold %q", message, c.want)
			}
		})
	}
}

func TestOneIn(t *testing.T) {
	for _, c := range []struct {
		share float64
		good  bool
		want  string
	}{
		{1, false, "Every ball"}, {0.025, false, "1 ball in 40"}, {0.0249, false, "1 ball in 40"},
		{0.0249, true, "1 ball in 41"}, {0.5, false, "1 ball in 2"}, {0.001, false, "1 ball in 1,000"},
		{0.61, false, "7 balls in 10"}, {0.61, true, "6 balls in 10"}, {0.97, false, "Nearly every ball"}, {0.97, true, "9 balls in 10"},
	} {
		if got := oneIn(c.share, c.good); got != c.want {
			t.Errorf("oneIn(%v, good %v) = %q, want %q", c.share, c.good, got, c.want)
		}
	}
}

func TestBallLabelsNeverFlatter(t *testing.T) {
	for _, c := range []struct{ name, got, want string }{
		{"a speed that threatens", words.Words{Units: units.Metric}.SpeedUp(12.01), "13 m/s"},
		{"exactly", words.Words{Units: units.Metric}.SpeedUp(12), "12 m/s"},
		{"in mph", words.Words{Units: units.Imperial}.SpeedUp(0.44704 * 20.2), "21 mph"},
		{"a limit", words.Words{Units: units.Imperial}.SpeedDown(0.44704 * 14.9), "14 mph"},
		{"what is caught", words.ShareDown(0.9999), "99.9 %"},
		{"what is missed", words.ShareUp(0.0001), "0.1 %"},
		{"nothing missed", words.ShareUp(0), "0 %"},
		{"a depth needed", words.Words{Units: units.Metric}.Up(0.3251), "326 mm"},
		{"a depth there is", words.Words{Units: units.Metric}.Down(0.3259), "325 mm"},
		{"spare", degreesDown(-0.01), "−0.1°"},
		{"own launch", degreesUp(12.5), "12.5°"},
	} {
		if c.got != c.want {
			t.Errorf("%s = %q, want %q", c.name, c.got, c.want)
		}
	}
}
