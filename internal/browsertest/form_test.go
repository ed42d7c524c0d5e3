//go:build browser

package browsertest

import (
	"fmt"
	"testing"
)

// rows is how many rows the lists of a card have.
func (tb *tab) rows(card string) int {
	tb.t.Helper()
	return eval[int](tb, fmt.Sprintf(`document.querySelectorAll("#card-%s .rows > li").length`, card))
}

// The form is what the solver describes: every list takes a first row that is
// good as it comes, with the focus in its name, and gives it up again; parts come
// and go; a copy has a name of its own.
func formRows(t *testing.T, tb *tab) {
	tb.openSheet("room")
	const accepted = settled + ` && document.documentElement.dataset.stale === "no"`
	press := func(key string) {
		t.Helper()
		eval[bool](tb, `(document.querySelector('[data-key="`+key+`"]').click(), true)`)
	}
	for _, list := range []struct{ card, path string }{
		{"room", "room.slopes"}, {"room", "room.solids"}, {"players", "players"}, {"clubs", "clubs"}, {"tees", "tees"},
		{"floor", "floor.layers"}, {"hung", "hung"}, {"seats", "seats"},
	} {
		t.Run(list.path, func(t *testing.T) {
			tb.in(t)
			before := tb.rows(list.card)
			eval[bool](tb, `(document.querySelector("#card-`+list.card+`").open = true)`)
			press("add-" + list.path)
			tb.until("another row", fmt.Sprintf(`document.querySelectorAll("#card-%s .rows > li").length === %d && %s`, list.card, before+1, accepted))
			tb.until("the focus in its name", fmt.Sprintf(`/^%s\[\d+\]\.name$/.test(document.activeElement.dataset.path)`, list.path))
			if n := eval[int](tb, `[...document.querySelectorAll("#card-`+list.card+` input[type=text]")].filter((e) => e.value === "" && !e.closest(".more")).length`); n > 0 {
				t.Errorf("%d fields of the card are blank", n)
			}
			last := eval[string](tb, `document.activeElement.dataset.path.replace(".name", "")`)
			press("remove-" + last)
			tb.until("the row to go", fmt.Sprintf(`document.querySelectorAll("#card-%s .rows > li").length === %d && %s`, list.card, before, accepted))
		})
	}

	press("copy-players[0]")
	tb.until("the copy", `document.querySelectorAll("#card-players .rows > li").length === 3 && `+accepted)
	if got := eval[string](tb, `document.querySelector('[data-path="players[2].name"]').value`); got != "Player" {
		t.Errorf("the copy is called %q, want a name of its own", got)
	}

	for _, part := range []struct{ path, field string }{{"screen", "screen.width"}, {"sensor", "sensor.min[0]"}, {"floor.mat", "floor.mat.thickness"}} {
		t.Run(part.path, func(t *testing.T) {
			tb.in(t)
			there := func() bool {
				return eval[bool](tb, `document.querySelector('[data-path="`+part.field+`"]') !== null`)
			}
			was := there()
			for _, want := range []bool{!was, was} {
				press("has-" + part.path)
				tb.until("the part to come or go", fmt.Sprintf(`(document.querySelector('[data-path="%s"]') !== null) === %t && %s`, part.field, want, accepted))
			}
		})
	}
}

// A club that is renamed is followed by the players who swing it, and another
// kind brings its usual figures.
func formFollows(t *testing.T, tb *tab) {
	tb.openSheet("room")
	set := func(path, value string) {
		t.Helper()
		eval[bool](tb, `(() => {
			const field = document.querySelector('[data-path="`+path+`"]');
			field.value = `+quote(value)+`;
			field.dispatchEvent(new Event("change"));
			return true;
		})()`)
		tb.until("the answer", `document.documentElement.dataset.busy === "no" && document.documentElement.dataset.stale === "no"`)
	}
	set("clubs[0].name", "big stick")
	if got := tb.section("#matrix"); len(tb.cells()) != 2 || tb.cells()[0].Club != "big stick" {
		t.Errorf("after a new name everyone = %q, want the same two checks", got)
	}
	set("clubs[0].kind", "iron")
	tb.until("the usual length", `document.querySelector('[data-path="clubs[0].length"]').value === "37 in"`)
	set("clubs[0].length", "95 cm")
	if got := eval[string](tb, `document.querySelector('[data-path="clubs[0].length"]').value`); got != "37 3/8 in" {
		t.Errorf("95 cm reads %q, want 37 3/8 in", got)
	}
	set("clubs[0].length", "")
	if got := eval[string](tb, `document.querySelector('[data-path="clubs[0].length"]').value`); got != "37 in" {
		t.Errorf("blank reads %q, want the usual 37 in", got)
	}
}
