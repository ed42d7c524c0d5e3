//go:build browser

package browsertest

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"wideberth/internal/link"
	"wideberth/internal/sim/plan"
)

// Numbers that cannot be: the sentence stands beside the field and is part of
// what a screen reader says of it, the last good answer stays, and a good
// number puts everything right.
func badNumbers(t *testing.T, tb *tab) {
	tests := []struct {
		name, card, group, label, text string
		want                           string // a part of the sentence
		elsewhere                      bool   // the sentence stands beside another field, which the number clashes with
	}{
		{"words", "Room", "", "Ceiling height", "tall", "tall", false},
		{"zero", "Room", "", "Ceiling height", "0", "height", false},
		{"negative", "Room", "", "Ceiling height", "-2.4 m", "-2.4 m", false},
		{"absurd", "Room", "", "Ceiling height", "400 m", "Ceiling height: 400 m is more than the 20 m this can do", false},
		{"a mile", "Players", "Player 1", "Height", "99 ft", "Height: 99 ft is more than the 7 ft 10 in this can do", false},
		{"missing", "Room", "", "Room width", "", "length", false},
		{"under the rafters", "Room", "", "Ceiling height", "1.7 m", "rafters", true},
		{"giant", "Players", "Player 1", "Height", "7.3 m", "height", false},
		{"tee outside", "Tees", "Tee 1", "From the back wall", "30 ft", "30 ft is more than the 21 ft this can do", false},
		{"ball past the screen", "Tees", "Tee 1", "From the back wall", "20 ft", "screen", false},
	}
	tb.openSheet("room")
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			tb.in(t)
			tb.find("button", "Start over with the demo").click()
			tb.untilNotice("The demo is back")
			tb.until("its answer", `document.querySelector("[aria-invalid]") === null && document.documentElement.dataset.busy === "no"`)
			field := tb.field(tt.card, tt.group, tt.label)
			good, verdict := field.value(), tb.verdict()
			field.fill(tt.text)
			tb.press(kb.Tab)
			tb.until("a field to be marked", `document.querySelector("[aria-invalid=true]") !== null && document.documentElement.dataset.busy === "no"`)
			if mine := field.attribute("aria-invalid") == "true"; mine == tt.elsewhere {
				t.Errorf("the field typed into is marked: %t, want %t", mine, !tt.elsewhere)
			}
			described := tb.marked()
			if !strings.Contains(strings.ToLower(described), strings.ToLower(tt.want)) || len(described) < 20 {
				t.Errorf("the field says %q, want a sentence with %q", described, tt.want)
			}
			if got := tb.verdict(); got != verdict {
				t.Errorf("the verdict became %q, want the last good one, %q", got, verdict)
			}
			if got := tb.notice(); !strings.Contains(got, "last good numbers") {
				t.Errorf("the notice = %q, want it to say that the answer is from the last good numbers", got)
			}

			tb.field(tt.card, tt.group, tt.label).fill(good)
			tb.press(kb.Tab)
			tb.until("the mark to go", `document.querySelector("[aria-invalid]") === null && document.documentElement.dataset.busy === "no"`)
			if got := tb.verdict(); got != verdict {
				t.Errorf("after %q again the verdict = %q, want %q", good, got, verdict)
			}
		})
	}
}

// marked is what a screen reader adds to the name of the first field that is
// marked as wrong.
func (tb *tab) marked() string {
	tb.t.Helper()
	return eval[string](tb, `document.querySelector("[aria-invalid=true]").getAttribute("aria-describedby").split(" ").map((id) => document.getElementById(id).innerText).join(" ")`)
}

// field finds a field of a card, opening the card when it is shut.
func (tb *tab) field(card, group, label string) element {
	tb.t.Helper()
	eval[bool](tb, `(() => {
		for (const d of document.querySelectorAll("#cards details")) {
			if (d.querySelector("summary").innerText.trim().startsWith(`+quote(card)+`)) d.open = true;
		}
		return true;
	})()`)
	if group == "" {
		return tb.find("textbox", label)
	}
	return tb.find("group", group).find("textbox", label)
}

// A height of 180 or 1.85 can only be metric: it is read so, and the page says so.
func metricHeights(t *testing.T, tb *tab) {
	for _, tt := range []struct{ typed, shown, note string }{
		{"180", "5 ft 10 7/8 in", "“180” is read as 180 cm"},
		{"1.85", "6 ft 7/8 in", "“1.85” is read as 1.85 m"},
	} {
		t.Run(tt.typed, func(t *testing.T) {
			tb.in(t)
			tb.openSheet("room")
			tb.field("Players", "Player 1", "Height").fill(tt.typed)
			tb.press(kb.Tab)
			tb.untilNotice(tt.note)
			tb.until("the field to show it", `document.querySelector('[data-path="players[0].height"]').value === `+quote(tt.shown))

			tb.openSheet("swing")
			height := tb.strip().find("textbox", "Height")
			height.fill("")
			height.fill(tt.typed)
			tb.until("how it is read", `document.querySelector("#strip-height-hint").innerText === "Read as `+tt.shown+`"`)
			tb.press(kb.Tab)
			tb.until("the strip's field to show it", `document.querySelector("#strip-height").value === `+quote(tt.shown))
		})
	}
}

// A huge paste into any field widens nothing.
func hugePaste(t *testing.T, tb *tab) {
	for _, label := range []string{"Ceiling height", "Name of this plan", "players[0].name", "players[0].height", "strip-height", "strip-off"} {
		sheet := "room"
		if strings.HasPrefix(label, "strip-") {
			sheet = "swing"
		}
		tb.openSheet(sheet)
		eval[bool](tb, `(() => {
			const label = `+quote(label)+`;
			const input = document.querySelector("#" + CSS.escape(label)) ?? document.querySelector('[data-path="' + label + '"]')
				?? [...document.querySelectorAll("#cards label")].find((one) => one.innerText.trim() === label).control;
			input.value = "W".repeat(5000);
			input.dispatchEvent(new Event("input", {bubbles: true}));
			input.dispatchEvent(new Event("change", {bubbles: true}));
			return true;
		})()`)
		tb.until("a sentence about it", `document.querySelector("#notice").innerText.length > 20 && document.documentElement.dataset.busy === "no"`)
		if over := tb.sideways(); over > 0 {
			t.Errorf("%s: the page is %d px too wide; the widest: %s", label, over, tb.widest())
		}
		if got := tb.notice(); len(got) > 400 {
			t.Errorf("%s: the notice has %d characters", label, len(got))
		}
	}
	tb.axe("a huge paste")
}

// Links that somebody cut or forged: the page says so and starts from what it
// has. More of them are tried in Node and on the command line, and with -mutated here.
func TestMalformedLinks(t *testing.T) {
	t.Parallel()
	demo, err := plan.Check(plan.Demo())
	if err != nil {
		t.Fatal(err)
	}
	whole, err := link.Encode(demo)
	if err != nil {
		t.Fatal(err)
	}
	tb := open(t, noGL, desktop)
	tb.before(weighedWorkers)
	tb.goTo("/" + whole[:len(whole)/2])
	tb.ready()
	check := func(t *testing.T) {
		t.Helper()
		if got := tb.notice(); !strings.Contains(got, "link is damaged or cut short") {
			t.Errorf("the notice = %q, want a sentence about the link", got)
		}
		if got := tb.verdict(); !strings.Contains(got, "Tall guest") {
			t.Errorf("the verdict = %q, want the demonstration room's", got)
		}
	}
	check(t)
	// Pasted into the address of a page that is open, a link replaces the plan, and
	// a damaged one leaves it and the address alone.
	for _, tt := range []struct{ name, hash, notice string }{
		{"whole", whole, "The plan of that link is open"},
		{"noise", "#p=AAAAAAAAAAAAAAAA", "What was here is unchanged"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			tb.in(t)
			tb.typeInStrip("Height", "150 cm")
			tb.until("the height in the address", settled+` && document.querySelector("#strip-height").value === "4 ft 11 in"`)
			mine := eval[string](tb, "location.hash")
			eval[bool](tb, `(location.hash = `+quote(tt.hash)+`, true)`)
			tb.untilNotice(tt.notice)
			tb.until("the answer", settled)
			opened := eval[string](tb, "location.hash") != mine
			if want := tt.name == "whole"; opened != want {
				t.Errorf("another plan is open: %t, want %t", opened, want)
			}
		})
	}
	check(t)
	mutatedLinks(t, tb)
}

// Plan files that are none: one sentence, and the answer stays.
func badPlanFiles(t *testing.T, tb *tab) {
	tests := []struct{ name, json, want string }{
		{"a megabyte of JSON", `{"version":1,"title":"` + strings.Repeat("x", 1<<20) + `"}`, "1 MB"},
		{"deep nesting", strings.Repeat("[", 100_000), ""},
		{"another document", `{"version":1,"walls":[]}`, "walls"},
		{"nothing", "", ""},
		{"half", `{"version":1,"room":{"leng`, ""},
	}
	tb.openPlan(filepath.Join(plansDir, "narrow.json"))
	verdict := tb.verdict()
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			tb.in(t)
			before := tb.notice()
			tb.openText("bad.json", tt.json)
			tb.until("another notice", `document.querySelector("#notice").innerText.trim() !== `+quote(before))
			got := tb.notice()
			if strings.Contains(got, "is open") || !strings.Contains(strings.ToLower(got), strings.ToLower(tt.want)) || len(got) > 400 {
				t.Errorf("the notice = %q, want one sentence with %q", short(got), tt.want)
			}
			if now := tb.verdict(); now != verdict {
				t.Errorf("the verdict became %q, want the last good one, %q", now, verdict)
			}
		})
	}
	tb.openPlan(filepath.Join(plansDir, "clear-room.json")) // the solver lives
}
