package plan

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"wideberth/internal/fuzzed"
)

const plansDir = "../../../testdata/plans"

func readPlan(t *testing.T, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(plansDir, name))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func TestParseGoodFiles(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(plansDir, "*.json"))
	if err != nil || len(files) == 0 {
		t.Fatalf("Glob(%s) = %v, %v, want files", plansDir, files, err)
	}
	for _, file := range files {
		name := filepath.Base(file)
		if strings.HasPrefix(name, "bad-") {
			continue
		}
		t.Run(name, func(t *testing.T) {
			p, err := parsed(readPlan(t, name))
			if err != nil {
				t.Fatalf("Parse(%s) = error %v, want a plan", name, err)
			}
			again, err := parsed(p.JSON())
			if err != nil || !reflect.DeepEqual(again, p) {
				t.Errorf("Parse(p.JSON()) = %v, %v, want the same plan", again, err)
			}
		})
	}
}

// TestParseBadFiles holds one sentence for every bad-*.json; a file without a
// row, or a row without a file, fails.
func TestParseBadFiles(t *testing.T) {
	want := map[string]struct{ field, message string }{
		"bad-height.json":          {"players[1].height", `player "Tall guest": height 7.3 m is outside 0.9–2.4 m (2 ft 11 3/8 in to 7 ft 10 1/2 in)`},
		"bad-negative-length.json": {"room.length", `room: length -6.4 m is outside 2–60 m (6 ft 6 3/4 in to 196 ft 10 1/4 in)`},
		"bad-zero-width.json":      {"room.width", `room: width 0 m is outside 1.5–60 m (4 ft 11 in to 196 ft 10 1/4 in)`},
		"bad-missing-height.json":  {"room.height", `room.height is missing`},
		"bad-text-for-number.json": {"room.height", `room.height must be a number, not text`},
		"bad-unknown-field.json":   {"players[1].heigth", `players[1].heigth is not a field of a plan; the fields there are name, height, hand, sex, span, arm, ballToToes, ballToHands, shoe, turn, plane, follow, skill, clubs, tees`},
		"bad-tee-outside.json":     {"tees[0].y", `tee "middle": y 14 ft 9 1/8 in (4.5 m) is outside the room, which is 14 ft 6 in (4.42 m) wide`},
		"bad-tee-past-screen.json": {"tees[0].x", `tee "middle": 20 ft 1/8 in (6.1 m) from the back wall is beyond the screen, which hangs at 19 ft 8 1/4 in (6 m)`},
		"bad-tee-in-solid.json":    {"tees[0].x", `tee "middle": it lies inside solid "column"`},
		"bad-unknown-club.json":    {"players[0].clubs[0]", `player "Host": there is no club called "putter"`},
		"bad-same-name.json":       {"players[1].name", `player 2: the name "host" is already used by player 1`},
		"bad-wall-name.json":       {"room.solids[0].name", `solid 1: the name "ceiling" is already used by the room itself`},
		"bad-does-not-stand.json":  {"players[1].height", `player "Tall guest": height 6 ft 3 5/8 in (1.92 m) and 1 in (0.025 m) of shoe do not fit under the ceiling, which is 6 ft 2 3/4 in (1.9 m) above the surface to stand on`},
		"bad-long-club.json":       {"clubs[0].length", `club "driver": length 1.7 m is outside 0.45–1.6 m (1 ft 5 3/4 in to 5 ft 3 in)`},
		"bad-kind.json":            {"clubs[0].kind", `club "driver": kind "putter" is not one of driver, wood, hybrid, iron, wedge`},
		"bad-newer-version.json":   {"version", `version 3 is newer than this program reads (2): reload the page, or get a newer program`},
		"bad-screen-wide.json":     {"screen.width", `screen: width 15 ft 1 1/8 in (4.6 m) is more than the room's 14 ft 6 in (4.42 m)`},
		"bad-cut-short.json":       {"", `the plan breaks off at line 18, column 2: a brace, bracket or quote is not closed: unexpected EOF`},
	}
	files, err := filepath.Glob(filepath.Join(plansDir, "bad-*.json"))
	if err != nil {
		t.Fatal(err)
	}
	if len(files) != len(want) {
		t.Errorf("%d files match bad-*.json, want %d, one for each row", len(files), len(want))
	}
	for _, file := range files {
		name := filepath.Base(file)
		t.Run(name, func(t *testing.T) {
			w, ok := want[name]
			if !ok {
				t.Fatalf("%s has no row in this test", name)
			}
			_, err := parsed(readPlan(t, name))
			if err == nil || err.Error() != w.message {
				t.Fatalf("Parse(%s) = error\n%v, want\n%s", name, err, w.message)
			}
			checkField(t, err, w.field)
		})
	}
}

func checkField(t *testing.T, err error, want string) {
	t.Helper()
	got := ""
	var fe *FieldError
	if errors.As(err, &fe) {
		got = fe.Field
	}
	if got != want {
		t.Errorf("error %q has field %q, want %q", err, got, want)
	}
}

// minimal is the least that parses; %s is room for more top-level fields.
const minimal = `{"room":{"length":6,"width":4,"height":3},"clubs":[{"name":"driver","kind":"driver"}],"players":[{"name":"Host","height":1.8}]%s}`

func TestParseErrors(t *testing.T) {
	huge := append([]byte(`{"title":"`), bytes.Repeat([]byte("x"), maxBytes)...)
	for _, tc := range []struct{ name, data, field, message string }{
		{"empty", " \n", "", "the plan is empty"},
		{"not an object", `[1]`, "", "must be an object in braces, not a list"},
		{"null", `null`, "", "must be an object in braces, not null"},
		{"syntax", "{\n  \"version\" 1}", "", "not valid JSON at line 2, column 13"},
		{"text after the end", fmt.Sprintf(minimal, "") + " x", "", "more text after its end"},
		{"second document", fmt.Sprintf(minimal, "") + "{}", "", "more text after its end"},
		{"a megabyte", string(huge), "", "more than the 1 MB"},
		{"deep nesting", strings.Repeat(`{"a":`, 20000), "", "not valid JSON"},
		{"unknown at the top", fmt.Sprintf(minimal, `,"colour":1`), "colour", "colour is not a field of a plan"},
		{"unknown of many lines", fmt.Sprintf(minimal, `,"a\nb`+strings.Repeat("c", 999)+`":1`), "a b" + strings.Repeat("c", 57) + "…", "ccc… is not a field of a plan"},
		{"wrong case", fmt.Sprintf(minimal, `,"Title":"a"`), "Title", "Title is not a field of a plan"},
		{"number too large", fmt.Sprintf(minimal, `,"margin":1e999`), "margin", "margin is too large a number"},
		{"null for a number", fmt.Sprintf(minimal, `,"margin":null`), "margin", "margin must be a number, not null"},
		{"bool for a group", fmt.Sprintf(minimal, `,"screen":true`), "screen", "screen must be a group of fields in braces, not true or false"},
		{"group for a list", fmt.Sprintf(minimal, `,"tees":{}`), "tees", "tees must be a list, not a group of fields in braces"},
		{"number for text", fmt.Sprintf(minimal, `,"title":5`), "title", "title must be text, not a number"},
		{"text for a bool", fmt.Sprintf(minimal, `,"floor":{"mat":{"thickness":0.03,"inset":"yes"}}`), "floor.mat.inset", "floor.mat.inset must be true or false, not text"},
		{"two numbers for a corner", fmt.Sprintf(minimal, `,"hung":[{"name":"a","min":[1,2],"max":[1,2,3]}]`), "hung[0].min", "hung[0].min must be a list of 3 numbers, not of 2"},
		{"text in a corner", fmt.Sprintf(minimal, `,"hung":[{"name":"a","min":[1,"2",3],"max":[1,2,3]}]`), "hung[0].min[1]", "hung[0].min[1] must be a number, not text"},
		{"air without altitude", fmt.Sprintf(minimal, `,"air":{"temperature":10}`), "air.altitude", "air.altitude is missing"},
		{"version as text", fmt.Sprintf(minimal, `,"version":"1"`), "version", "version must be a number, not text"},
		{"broken version", fmt.Sprintf(minimal, `,"version":0.5`), "version", "version must be a whole number"},
		{"negative version", fmt.Sprintf(minimal, `,"version":-1`), "version", "version must be a whole number"},
		{"absurd version", fmt.Sprintf(minimal, `,"version":1e40`), "version", "version 1e40 is newer"},
		{"room missing", `{"clubs":[],"players":[]}`, "room", "room is missing"},
		{"no club", `{"room":{"length":6,"width":4,"height":3},"players":[{"name":"Host","height":1.8}]}`, "clubs", "at least one club"},
		{"no player", `{"room":{"length":6,"width":4,"height":3},"clubs":[{"name":"driver","kind":"driver"}]}`, "players", "at least one player"},
	} {
		t.Run(tc.name, func(t *testing.T) {
			_, err := parsed([]byte(tc.data))
			if err == nil || !strings.Contains(err.Error(), tc.message) {
				t.Fatalf("Parse(%.80s) = error %v, want one with %q", tc.data, err, tc.message)
			}
			checkField(t, err, tc.field)
		})
	}
}

func TestParseMigrates(t *testing.T) {
	want, err := parsed([]byte(fmt.Sprintf(minimal, `,"version":1`)))
	if err != nil {
		t.Fatal(err)
	}
	for _, version := range []string{``, `,"version":0`, `,"version":1.0`} {
		got, err := parsed([]byte(fmt.Sprintf(minimal, version)))
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("Parse(plan with %q) = %+v, %v, want %+v", version, got, err, want)
		}
	}
	if want.Version != Version {
		t.Errorf("Parse(version 1).Version = %d, want %d", want.Version, Version)
	}
}

func FuzzParse(engine *testing.F) {
	f := fuzzed.New(engine)
	files, err := filepath.Glob(filepath.Join(plansDir, "*.json"))
	if err != nil {
		f.Fatal(err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add([]byte(demoJSON))
	f.Add([]byte(fmt.Sprintf(minimal, `,"tees":[],"air":null,"margin":-0.0`)))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := parsed(data)
		if err != nil {
			if err.Error() == "" {
				t.Errorf("Parse(%q) has an empty error", data)
			}
			return
		}
		again, err := parsed(p.JSON())
		if err != nil || !reflect.DeepEqual(again, p) {
			t.Errorf("Parse(p.JSON()) = %+v, %v, want %+v", again, err, p)
		}
		if want, err := json.Marshal(p); err != nil || !bytes.Equal(p.JSON(), want) {
			t.Errorf("p.JSON() = %s, want encoding/json's %s (error %v)", p.JSON(), want, err)
		}
		p.Notes()
	})
}

func ExampleParse() {
	_, err := Parse([]byte(`{
		"room": {"length": 6.4, "width": 4.4, "height": 2.9},
		"clubs": [{"name": "driver", "kind": "driver"}],
		"players": [{"name": "Tall guest", "height": 7.3}],
		"units": "metric"
	}`))
	fmt.Println(err)
	// Output: player "Tall guest": height 7.3 m is outside 0.9–2.4 m
}

// parsed is Parse's plan.
func parsed(data []byte) (Plan, error) {
	c, err := Parse(data)
	return c.Plan(), err
}

// A checked plan has its defaults, and shares nothing with what it was made of.
func TestCheckCopies(t *testing.T) {
	p := Demo()
	p.Players[0].Hand, p.Tees = "", nil
	c, err := Check(p)
	if err != nil {
		t.Fatal(err)
	}
	p.Players[0].Height, p.Clubs[0].Ball.Speed = 7.3, 1000
	if got := c.Plan(); got.Players[0].Hand != HandRight || len(got.Tees) != 1 || got.Players[0].Height != 1.778 || got.Clubs[0].Ball.Speed != 62 {
		t.Errorf("Check(p).Plan() = %+v, want the plan as it was, with its defaults", got)
	}
	if _, err := Check(p); err == nil {
		t.Error("Check took a giant")
	}
}

// TestZeroIsNoAbsence: a number that counts as not given where it is zero may be left
// out, but not given as zero; TestEveryValue holds that of each. A document of version 1
// says so of two, as its links had them.
func TestZeroIsNoAbsence(t *testing.T) {
	const zeros = `{%s"margin":0,"room":{"length":6,"width":4,"height":3},"clubs":[{"name":"driver","kind":"driver","ball":{"speed":0,"launch":12,"spin":2500}},{"name":"iron","kind":"iron"}],"players":[{"name":"Host","height":1.8}]}`
	for _, version := range []string{``, `"version":0,`, `"version":2,`} {
		_, err := Parse(fmt.Appendf(nil, zeros, version))
		const want = "margin is 0, which would count as not given: leave it out, or give it a number above 0"
		if e, ok := errors.AsType[*FieldError](err); !ok || e.Field != "margin" || e.Message != want {
			t.Errorf("%s: %v, want %q", version, err, want)
		}
	}
	got, err := parsed(fmt.Appendf(nil, zeros, `"version":1,`))
	if err != nil || got.Margin != 0.1524 || *got.Clubs[0].Ball != (Ball{Speed: 62, Launch: 12, Spin: 2500}) || got.Version != Version {
		t.Errorf("of version 1: %+v, %v, want the usual margin and speed", got, err)
	}
	for _, odd := range []string{`"clubs":5`, `"clubs":[5,{"ball":[]}]`, `"margin":"0"`} {
		if _, err := Parse([]byte(`{"version":1,` + odd + `}`)); err == nil {
			t.Errorf("%s is taken", odd)
		}
	}
}

// TestEditorsMarks: what an editor writes before a plan is no part of it, and a name
// that is given twice is no matter of taste.
func TestEditorsMarks(t *testing.T) {
	if _, err := Parse([]byte("\ufeff" + demoJSON)); err != nil {
		t.Errorf("after a byte-order mark: %v", err)
	}
	_, err := Parse([]byte(strings.Replace(demoJSON, `"height": 3.2004`, `"height": 2.5, "height": 3.2004`, 1)))
	if err == nil || !strings.Contains(err.Error(), `at line 6`) || !strings.Contains(err.Error(), `the name "height" is given twice`) {
		t.Errorf("two heights: %v", err)
	}
}
