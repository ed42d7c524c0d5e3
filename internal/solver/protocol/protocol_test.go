package protocol

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"wideberth/internal/sim/plan"
)

// ask serves one request and decodes the answer, which must be one JSON object.
func ask(t *testing.T, s *Solver, body string) map[string]any {
	t.Helper()
	var out map[string]any
	if err := json.Unmarshal(s.Handle([]byte(body)), &out); err != nil {
		t.Fatalf("Handle(%.80q): the answer is not a JSON object: %v", body, err)
	}
	return out
}

// quoted is text as a JSON string.
func quoted(text string) string {
	out, _ := json.Marshal(text)
	return string(out)
}

func TestRefusals(t *testing.T) {
	var s Solver
	demo := string(plan.Demo().JSON())
	noRoom := strings.Replace(demo, `"room"`, `"rooom"`, 1)
	giant := strings.Replace(demo, `"height":1.9304`, `"height":7.3`, 1)
	huge := strings.Replace(demo, `"title":"`, `"title":"`+strings.Repeat("x", 1<<20), 1)
	cases := []struct {
		name, body     string
		message, field string // message is a part of the sentence
	}{
		{"nothing", "", "cannot be read", ""},
		{"junk", "\x00\xff{{{", "cannot be read", ""},
		{"a number", "7", "cannot be read", ""},
		{"a list", "[1,2]", "cannot be read", ""},
		{"no kind", "{}", `asked for ""`, ""},
		{"unknown kind", `{"kind":"dance"}`, `asked for "dance"`, ""},
		{"long kind", `{"kind":"` + strings.Repeat("k", 5000) + `"}`, "…", ""},
		{"kind of a wrong type", `{"kind":7}`, "kind in the page's request is a number", ""},
		{"focus of a wrong type", `{"kind":"solve","focus":{"player":1}}`, "focus.player in the page's request is a number", ""},
		{"deep nesting", strings.Repeat(`{"plan":`, 100000) + strings.Repeat("}", 100000), "cannot be read", ""},
		{"deep plan", `{"kind":"solve","plan":` + strings.Repeat("[", 60) + strings.Repeat("]", 60) + `}`, "must be an object", ""},
		{"a plan deeper than a browser's stack", `{"kind":"solve","plan":` + strings.Repeat("[", 9000) + strings.Repeat("]", 9000) + `}`, "lie too deep in one another", ""},
		{"1 MB of title", `{"kind":"solve","plan":` + huge + `}`, "80 characters", "title"},
		{"3 MB", strings.Repeat(" ", 3<<20), "more than the 2 MB", ""},
		{"no plan", `{"kind":"solve"}`, "must be an object", ""},
		{"null plan", `{"kind":"solve","plan":null}`, "must be an object", ""},
		{"plan is text", `{"kind":"solve","plan":"room"}`, "must be an object", ""},
		{"unknown field", `{"kind":"solve","plan":` + noRoom + `}`, "rooom", "rooom"},
		{"a giant", `{"kind":"solve","plan":` + giant + `}`, "Height: 23 ft 11 3/8 in is more than the 7 ft 10 in this can do", "players[1].height"},
		{"height is text", `{"kind":"solve","plan":{"room":{"length":"long"}}}`, "cannot be read as a length", "room.length"},
		{"typed height of a word", `{"kind":"solve","plan":` + strings.Replace(demo, `"height":1.9304`, `"height":"tall"`, 1) + `}`, "tall", "players[1].height"},
		{"typed height, but not in a show", `{"kind":"ball","plan":` + strings.Replace(demo, `"height":1.9304`, `"height":"6'3"`, 1) + `}`, "must be a number", "players[1].height"},
		{"no length", `{"kind":"length","text":"","units":"imperial"}`, "no length given", ""},
		{"length is a word", `{"kind":"length","text":"tall","units":"imperial"}`, "tall", ""},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			out := ask(t, &s, c.body)
			problem, ok := out["error"].(map[string]any)
			if !ok {
				t.Fatalf("no error in %v", out)
			}
			message, _ := problem["message"].(string)
			field, _ := problem["field"].(string)
			if message == "" || !strings.Contains(message, c.message) {
				t.Errorf("message = %q, want it to hold %q", message, c.message)
			}
			if field != c.field {
				t.Errorf("field = %q, want %q", field, c.field)
			}
			if len(message) > 500 {
				t.Errorf("the message is %d bytes long: not a sentence", len(message))
			}
			if strings.Contains(message, "fault of the program") {
				t.Errorf("bad input ran into a panic: %s", message)
			}
			if _, err := s.Show([]byte(c.body)); err == nil {
				t.Error("Show took the same request")
			}
		})
	}
}

func TestStart(t *testing.T) {
	named := func(title string) plan.Plan {
		p := plan.Demo()
		p.Title = title
		return p
	}
	linked := string(named("linked").JSON())
	saved := string(named("saved").JSON())
	odd := named("odd")
	odd.Clubs = slices.Clone(odd.Clubs)
	odd.Clubs[0].Length = 1.25
	demo := plan.Demo().Title
	cases := []struct {
		name, linked, saved, title string
		fails, notes               bool
	}{
		{"nothing", "", "", demo, false, false},
		{"linked beats saved", linked, saved, "linked", false, false},
		{"saved beats demo", "", saved, "saved", false, false},
		{"a bad link falls back to saved", linked[:len(linked)-9], saved, "saved", true, false},
		{"a bad link falls back to demo", "{}", "", demo, true, false},
		{"broken saved falls back to demo", "", "{", demo, true, false},
		{"an odd plan comes with notes", "", string(odd.JSON()), "odd", false, true},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var s Solver
			out := ask(t, &s, fmt.Sprintf(`{"kind":"start","linked":%s,"saved":%s}`, quoted(c.linked), quoted(c.saved)))
			got, _ := out["plan"].(map[string]any)
			if got["title"] != c.title {
				t.Errorf("title = %v, want %s", got["title"], c.title)
			}
			if _, failed := out["error"]; failed != c.fails {
				t.Errorf("error = %v, want one: %v", out["error"], c.fails)
			}
			if _, noted := out["notes"]; noted != c.notes {
				t.Errorf("notes = %v, want some: %v", out["notes"], c.notes)
			}
			if cards, _ := out["cards"].([]any); len(cards) < 8 {
				t.Errorf("%d cards of the form, want them all", len(cards))
			}
		})
	}
}

func TestOpen(t *testing.T) {
	var s Solver
	for _, body := range []string{`{"kind":"open"}`, `{"kind":"open","linked":` + quoted(string(plan.Demo().Sparse().JSON())) + `}`} {
		var out struct {
			Plan  json.RawMessage
			Cards []any
		}
		if err := json.Unmarshal(s.Handle([]byte(body)), &out); err != nil {
			t.Fatal(err)
		}
		if p, err := plan.Parse(out.Plan); err != nil || !bytes.Equal(p.Plan().JSON(), plan.Demo().JSON()) {
			t.Errorf("%.40s: the demo does not come back as the demo: %v", body, err)
		}
		if out.Cards != nil {
			t.Errorf("%.40s: the form came along again", body)
		}
	}
}

func TestLength(t *testing.T) {
	for _, c := range []struct{ name, body, want string }{
		{"feet and inches", `{"kind":"length","text":"5'11\"","units":"imperial"}`, `{"metres":1.8034,"label":"5 ft 11 in"}`},
		{"centimetres in an imperial plan", `{"kind":"length","text":"180 cm","units":"imperial"}`, `{"metres":1.8,"label":"5 ft 10 7/8 in"}`},
		{"units left out", `{"kind":"length","text":"6 ft"}`, `{"metres":1.8288,"label":"6 ft 0 in"}`},
		{"a bare number in a metric plan", `{"kind":"length","text":"180","units":"metric"}`, `{"metres":1.8,"label":"1.800 m"}`},
	} {
		t.Run(c.name, func(t *testing.T) {
			var s Solver
			if got := string(s.Handle([]byte(c.body))); got != c.want {
				t.Errorf("Handle\n got %s\nwant %s", got, c.want)
			}
		})
	}
}
