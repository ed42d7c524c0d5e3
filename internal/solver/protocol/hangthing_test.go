package protocol

import (
	"fmt"
	"strings"
	"testing"

	"wideberth/internal/sim/fit"
)

// A thing is judged before it hangs, in words of the plan's units; what cannot be
// judged is refused by the name of its field.
func TestHangThing(t *testing.T) {
	var s Solver
	p := wide()
	for _, c := range []struct {
		name    string
		x, y    float64
		drop    float64
		verdict fit.Verdict
		want    []string
	}{
		{"in the corner", 0.2, 0.2, 0.25, fit.Clear, []string{"Lamp: ", "down to the floor"}},
		{"down into the swing", 5.2, 4.2, 2, fit.Strikes, []string{"Lamp: ", "strikes it", "may hang no lower than "}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got hangThingAnswer
			askFor(t, &s, "hangThing", p, fmt.Sprintf(`,"text":"lamp","x":%g,"y":%g,"length":0.3,"width":0.3,"drop":%g`, c.x, c.y, c.drop), &got)
			for _, part := range c.want {
				if !strings.Contains(got.Text, part) {
					t.Errorf("hangThing = %q, want it to hold %q", got.Text, part)
				}
			}
			if got.Verdict != c.verdict || got.Thing.Name != "lamp" || got.Thing.Min[2] != p.Room.Height-c.drop {
				t.Errorf("%+v, want %s with its underside %g m under the ceiling", got, c.verdict, c.drop)
			}
		})
	}
	for _, c := range []struct{ name, more, field string }{
		{"no name", `,"text":" ","length":0.3,"width":0.3,"drop":0.3`, "name"},
		{"no size", `,"text":"lamp","length":0.3,"drop":0.3`, "width"},
	} {
		problem, _ := ask(t, &s, fmt.Sprintf(`{"kind":"hangThing","plan":%s%s}`, p.JSON(), c.more))["error"].(map[string]any)
		if problem["field"] != c.field {
			t.Errorf("%s: %v, want the field %q named", c.name, problem, c.field)
		}
	}
}
