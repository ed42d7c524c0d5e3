//go:build browser

package browsertest

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// settled is true once the last edit is answered, painted and in the address.
const settled = `document.documentElement.dataset.busy === "no"`

// strip is the tape strip of the first sheet.
func (tb *tab) strip() element {
	tb.t.Helper()
	return tb.find("form", "Who swings")
}

// inStrip is what a field of the strip holds, by its id.
func (tb *tab) inStrip(id string) string {
	tb.t.Helper()
	return eval[string](tb, `document.querySelector("#strip-`+id+`").value`)
}

// typeInStrip fills a field of the strip, leaves it by Tab and waits for the answer.
func (tb *tab) typeInStrip(label, text string) {
	tb.t.Helper()
	tb.strip().find("textbox", label).fill(text)
	tb.press(kb.Tab)
	tb.until("the answer", settled)
}

// swings has the strip show a player.
func (tb *tab) swings(player string) {
	tb.t.Helper()
	tb.strip().find("combobox", "Who").choose(player)
	tb.until(player+" in the strip", `document.querySelector("#strip-who").value === `+quote(player)+` && `+settled)
}

// somebodyNew adds a visitor by keyboard: the last choice of who swings.
func (tb *tab) somebodyNew() {
	tb.t.Helper()
	who := tb.strip().find("combobox", "Who")
	call[bool](tb, who.object, `function() { this.focus(); return true; }`)
	tb.press(kb.End)
	tb.until("the visitor's height, to be typed over", `document.querySelector("#strip-who").value === "Visitor" && `+settled+` && (({id, selectionStart, selectionEnd, value}) => id === "strip-height" && selectionStart === 0 && selectionEnd === value.length)(document.activeElement)`)
}

// visitor adds a visitor of a height, with a driver of their own.
func (tb *tab) visitor(height, driver string) {
	tb.t.Helper()
	tb.somebodyNew()
	tb.press(height)
	tb.press(kb.Tab)
	tb.until("the answer", settled)
	tb.typeInStrip("Driver length", driver)
}

// headline is the large line of the verdict.
func (tb *tab) headline() string {
	tb.t.Helper()
	return strings.TrimSpace(tb.section("#verdict .verdict-headline"))
}

// The tape strip: who swings, and where.
func TestStrip(t *testing.T) {
	onePage(t, noGL, desktop, light,
		fact{"every field", everyField},
		fact{"live regions", liveRegions},
		fact{"metric heights", metricHeights},
		fact{"slider", stripSlider},
		fact{"errors", stripErrors},
		fact{"verdict on the way", verdictMoves},
		fact{"a driver of others", sharedDriver})
}

// Somebody who is not in the plan walks in.
func TestVisitor(t *testing.T) {
	onePage(t, noGL, desktop, light,
		fact{"kept", keepVisitor},
		fact{"headline", headlineStays},
		fact{"tall and small", visitorTyped})
}

// Every field of the strip changes what is answered, and shows what was read.
func everyField(t *testing.T, tb *tab) {
	player := tb.inStrip("who")
	const told = `["#verdict", "#everyone", "#surfaces"].map((s) => document.querySelector(s).textContent).join("\n")`
	for _, step := range []struct{ label, id, typed, shown string }{
		{"Height", "height", "190 cm", "6 ft 2 3/4 in"},
		{"Arm span", "span", "200 cm", "6 ft 6 3/4 in"},
		{"Driver length", "club", "115 cm", "45 1/4 in"},
		{"To the back wall", "back", "2.5 m", "8 ft 2 3/8 in"},
		{"Ball off the middle", "off", "25 cm left", "9 7/8 in left"},
		{"Ball off the middle", "off", "-25 cm", "9 7/8 in right"},
		{"Ball off the middle", "off", "in the middle", "in the middle"},
	} {
		t.Run(step.label+" "+step.typed, func(t *testing.T) {
			tb.in(t)
			address, answer := eval[string](tb, "location.hash"), eval[string](tb, told)
			tb.typeInStrip(step.label, step.typed)
			tb.until("another address", `location.hash !== `+quote(address)+` && `+settled)
			if now := eval[string](tb, told); now == answer {
				t.Errorf("the answer is as it was: %q", now)
			}
			if got := tb.inStrip(step.id); got != step.shown {
				t.Errorf("the field shows %q, want %q", got, step.shown)
			}
			if got := tb.inStrip("who"); got != player {
				t.Errorf("the strip is of %q now, want still %q", got, player)
			}
		})
	}

	answer := eval[string](tb, told)
	tb.strip().find("radio", "Left").click()
	tb.until("another answer", settled+` && document.querySelector("#strip").elements["strip-hand"].value === "left" && `+told+` !== `+quote(answer))

	other := eval[string](tb, `[...document.querySelector("#strip-who").options].map((o) => o.value).find((v) => v !== `+quote(player)+`)`)
	tb.swings(other)
	tb.until("a sentence about "+other, `document.querySelector("#verdict .verdict-sentence").innerText.includes(`+quote(other)+`)`)
}

// A driver that others swing too is not theirs to change: the player gets one of
// their own, and everybody else stays as clear or not as they were.
func sharedDriver(t *testing.T, tb *tab) {
	player := tb.inStrip("who")
	others := func() (kept []cell) {
		for _, c := range tb.cells() {
			if c.Player != player {
				kept = append(kept, c)
			}
		}
		return kept
	}
	before := others()
	tb.typeInStrip("Driver length", "40 in")
	if got := tb.inStrip("club"); got != "40 in" {
		t.Errorf("the strip shows a driver of %q, want 40 in", got)
	}
	after := others()
	if len(after) != len(before) {
		t.Fatalf("the others have %d checks, want %d", len(after), len(before))
	}
	for i := range after {
		if after[i] != before[i] {
			t.Errorf("%+v became %+v", before[i], after[i])
		}
	}
	mine := 0
	for _, c := range tb.cells() {
		if c.Player == player && c.Club == player+"'s driver" {
			mine++
		}
	}
	if mine != 1 {
		t.Errorf("%d checks of %s with a driver of their own, want 1", mine, player)
	}
	tb.typeInStrip("Driver length", "41 in")
	if n := eval[int](tb, `document.querySelectorAll("#matrix thead th").length - 1`); n != 2 {
		t.Errorf("%d clubs after another length, want the room's and the one", n)
	}
}

// Somebody new stays, through Undo and Redo, and when Back goes to a sheet from before
// they came. The address holds the plan: reloaded, or opened by somebody else, it gives
// the same answer. Without it, the browser's own copy does.
func TestSomebodyNew(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, alone)
	before := tb.cells()
	tb.openSheet("ball")
	tb.openSheet("swing") // two steps in the history whose links know of no visitor
	tb.visitor("150 cm", "42 in")
	here := func(where string) {
		t.Helper()
		tb.until("the visitor "+where, settled+` && document.querySelector("#strip-who").value === "Visitor" && document.querySelector("#strip-height").value === "4 ft 11 in" && document.querySelector("#strip-club").value === "42 in"`)
		if n := len(tb.cells()); n != len(before)+1 {
			t.Errorf("%s there are %d checks, want %d", where, n, len(before)+1)
		}
	}
	here("typed in")
	link := eval[string](tb, `location.hash`)
	if !strings.HasPrefix(link, "#p=") || len(link) > 1500 {
		t.Errorf("the address ends in %q (%d characters), want #p= and at most 1,500", short(link), len(link))
	}

	eval[bool](tb, `(history.back(), true)`)
	tb.until("the sheet before", `document.documentElement.dataset.sheet === "ball"`)
	tb.openSheet("swing")
	here("after Back")
	if now := eval[string](tb, `location.hash`); now != link {
		t.Errorf("after Back the link is %q, want %q", short(now), short(link))
	}

	tb.find("button", "Undo").click()
	tb.until("the driver of before", `document.querySelector("#strip-club").value !== "42 in" && `+settled)
	tb.find("button", "Redo").click()
	tb.until("the driver again", `document.querySelector("#strip-club").value === "42 in" && `+settled)

	want := tb.cells()
	same := func(where string, got []cell) {
		t.Helper()
		if !slices.Equal(got, want) {
			t.Errorf("%s the checks are %+v, want %+v", where, got, want)
		}
	}
	tb.reload()
	tb.ready()
	same("reloaded", tb.cells())
	tb.swings("Visitor") // a visit opens on the worst of everybody
	here("reloaded")
	friend := openPage(t, noGL, desktop, "/"+link)
	same("on a friend's machine", friend.cells())
	friend.swings("Visitor")
	if got, want := friend.answer(), tb.answer(); got != want {
		t.Errorf("a friend reads\n%s\nwant\n%s", got, want)
	}
	tb.goTo("/?again#sheet=sure") // another address, so that the page loads anew
	tb.ready()
	same("without the link", tb.cells())
}

// A visitor is kept under the name that is asked for, which need not be free, or
// removed with the driver that was theirs.
func keepVisitor(t *testing.T, tb *tab) {
	alone := tb.cells()
	tb.visitor("150 cm", "42 in")
	tb.strip().find("button", "Remove").click()
	tb.until("the visitor to be gone", settled+` && !document.querySelector("#matrix").innerText.includes("Visitor")`)
	if got := tb.cells(); len(got) != len(alone) {
		t.Errorf("without the visitor there are %d checks, want %d", len(got), len(alone))
	}

	tb.visitor("150 cm", "42 in")
	tb.strip().find("button", "Keep as a player").click()
	tb.press(kb.Escape)
	tb.until("the button again", `document.activeElement.id === "strip-keep"`)
	tb.press(kb.Enter)
	tb.until("a field for the name", `document.activeElement.id === "strip-name"`)
	tb.press("Host" + kb.Enter) // somebody is called so already
	tb.until("the new player in the strip", settled+` && document.querySelector("#strip-who").value === "Host 2"`)
	if got := tb.inStrip("height"); got != "4 ft 11 in" {
		t.Errorf("Host 2 is %q tall, want the visitor's height", got)
	}
	if got := eval[string](tb, `[...document.querySelector("#strip-who").options].map((o) => o.innerText).join()`); !strings.HasSuffix(got, "Host 2,Somebody new…") {
		t.Errorf("the choice is %q, want the kept one, and room for somebody new", got)
	}
	if eval[bool](tb, `document.querySelector("#strip-keep").checkVisibility()`) {
		t.Error("a player who was kept is offered to be kept")
	}
}

// By keyboard the slider moves the tee; the text and the plan follow, and at its
// ends the ball still lies in the room.
func stripSlider(t *testing.T, tb *tab) {
	slider := tb.strip().find("slider", "Ball off the middle, left to right")
	call[bool](tb, slider.object, `function() { this.focus(); return true; }`)
	address, before := eval[string](tb, "location.hash"), tb.inStrip("off")
	for range 3 {
		tb.press(kb.ArrowRight)
	}
	tb.until("the text and the address to follow", `document.querySelector("#strip-off").value !== `+quote(before)+` && location.hash !== `+quote(address)+` && `+settled)
	if got := tb.inStrip("off"); !strings.HasSuffix(got, " right") {
		t.Errorf("moved to the right the field shows %q", got)
	}
	if said := slider.attribute("aria-valuetext"); said != tb.inStrip("off") {
		t.Errorf("the slider is read %q, and the field shows %q", said, tb.inStrip("off"))
	}
	for _, end := range []struct{ key, side string }{{kb.End, " right"}, {kb.Home, " left"}} {
		address := eval[string](tb, "location.hash")
		tb.press(end.key)
		tb.until("the end"+end.side, `document.querySelector("#strip-off").value.endsWith(`+quote(end.side)+`) && location.hash !== `+quote(address)+` && `+settled)
		if got := eval[string](tb, `document.documentElement.dataset.stale + document.querySelectorAll("#strip [aria-invalid]").length`); got != "no0" {
			t.Errorf("at the end%s the page says %q", end.side, tb.notice())
		}
	}
}

// An error stands beside its field, in the words of who typed it, and goes with a
// good number.
func stripErrors(t *testing.T, tb *tab) {
	for _, tt := range []struct{ label, id, typed, want string }{
		{"Height", "height", "tall", "“tall”"},
		{"Height", "height", "99 ft", "99 ft is more than the 7 ft 10 in this can do"},
		{"Arm span", "span", "5 in", "5 in is less than the"},
		{"Driver length", "club", "3 m", "3 m is more than the"},
		{"Ball off the middle", "off", "over there", "over there"},
		{"Ball off the middle", "off", "20 ft left", "20 ft left is outside the room, which is 18 ft 0 in wide"},
		{"To the back wall", "back", "30 ft", "30 ft is more than the 21 ft this can do"},
		{"To the back wall", "back", "far", "“far”"},
	} {
		t.Run(tt.label+" "+tt.typed, func(t *testing.T) {
			tb.in(t)
			verdict, good := tb.verdict(), tb.inStrip(tt.id)
			tb.typeInStrip(tt.label, tt.typed)
			tb.until("the field to be marked", `document.querySelector("#strip-`+tt.id+`").getAttribute("aria-invalid") === "true" && `+settled)
			if n := eval[int](tb, `document.querySelectorAll("#strip [aria-invalid]").length`); n != 1 {
				t.Errorf("%d fields of the strip are marked, want the one", n)
			}
			if got := tb.inStrip(tt.id); got != tt.typed {
				t.Errorf("the field shows %q, want what was typed", got)
			}
			error := tb.section("#strip-" + tt.id + "-error")
			if !strings.Contains(error, tt.want) {
				t.Errorf("beside it stands %q, want %q in it", error, tt.want)
			}
			if strings.Contains(error, "tees[") || strings.Contains(error, "players[") {
				t.Errorf("the sentence %q is in the plan's words", error)
			}
			if now := tb.verdict(); now != verdict {
				t.Errorf("the verdict became %q, want the last good one", now)
			}
			tb.typeInStrip(tt.label, good)
			tb.until("the mark to go", `!document.querySelector("#strip [aria-invalid]") && `+settled)
		})
	}
}

// While the tee is on its way the words lead with the worst of everybody, and so
// does the sign beside them; let go, the answer comes back.
func verdictMoves(t *testing.T, tb *tab) {
	tb.openPlan(filepath.Join(plansDir, "clear-room.json"))
	clear := tb.verdict()
	if !strings.HasPrefix(clear, "Clear") {
		t.Fatalf("the verdict = %q, want a clear room to begin with", clear)
	}
	box := tb.rectOf("#strip-slide")
	middle := (box[1] + box[3]) / 2
	at := func(share float64) (x, y float64) { return box[0] + share*(box[2]-box[0]), middle }
	x, y := at(0.5)
	tb.do(chromedp.MouseEvent("mouseMoved", x, y), chromedp.MouseEvent("mousePressed", x, y, chromedp.ButtonLeft))
	for _, share := range []float64{0.6, 0.8, 0.97} {
		x, y = at(share)
		tb.do(chromedp.MouseEvent("mouseMoved", x, y, chromedp.ButtonLeft))
	}
	tb.until("a strike on the way", `(({hidden, innerText}) => !hidden && /^Strikes: (all |\d+ of )\d+\. /.test(innerText))(document.querySelector("#verdict-moving"))`)
	if got := eval[string](tb, `document.querySelector("#verdict-box").dataset.verdict + document.querySelector("#verdict-box use").getAttribute("href")`); got != "strikes#icon-strikes" {
		t.Errorf("beside it the sign is %q, want that of a strike", got)
	}
	if got := eval[string](tb, `document.querySelector("#verdict-box").innerText`); strings.Contains(got, "Clear") {
		t.Errorf("on the way the answer says %q", got)
	}
	tb.do(chromedp.MouseEvent("mouseReleased", x, y, chromedp.ButtonLeft))
	tb.until("the answer for the new place", `document.querySelector("#verdict-moving").hidden && `+settled)
	if got := tb.headline(); !strings.HasPrefix(got, "Strikes: ") {
		t.Errorf("let go, the headline = %q, want the strikes", got)
	}
}

// rectOf is where an element lies in the window: left, top, right, bottom.
func (tb *tab) rectOf(selector string) [4]float64 {
	tb.t.Helper()
	return eval[[4]float64](tb, `(() => { const r = document.querySelector(`+quote(selector)+`).getBoundingClientRect(); return [r.left, r.top, r.right, r.bottom]; })()`)
}
