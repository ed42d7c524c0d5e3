//go:build browser

package browsertest

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"wideberth/internal/sim/plan/plantest"
)

// untilBall waits until the answer about the ball is that of the plan shown.
func (tb *tab) untilBall() {
	tb.t.Helper()
	tb.until("the answer about the ball", `document.documentElement.dataset.busy === "no" && document.querySelector("#ball").dataset.busy === "no"`)
}

// section is the text of a part of the page.
func (tb *tab) section(selector string) string {
	tb.t.Helper()
	return eval[string](tb, `document.querySelector(`+quote(selector)+`).innerText`)
}

// topReturn is the sentence about the depth of the top return.
func (tb *tab) topReturn() string {
	tb.t.Helper()
	return eval[string](tb, `[...document.querySelectorAll(".enclosure-told li")].map((li) => li.innerText).find((text) => text.includes("top return"))`)
}

// The sheet about the ball.
func TestBall(t *testing.T) {
	onePage(t, noGL, desktop, light+"&sheet=ball",
		fact{"unfolds by keys", ballUnfoldsByKeys},
		fact{"speed", ballSpeed},
		fact{"unfolded", ballUnfolded},
		fact{"steep wedge", steepWedge})
}

// The parts of the ball that fold hold what they held: the screen with its spots,
// everybody's first contact, what the enclosure must be and what the figures rest
// on. A higher catch rate asks for a deeper return.
func ballUnfolded(t *testing.T, tb *tab) {
	tb.openText("loft.json", string(plantest.Loft().JSON())) // low: some balls go over the screen
	tb.untilNotice("loft.json is open")
	tb.until("the answer", settled)
	tb.openSheet("ball")
	if live := eval[string](tb, `[...document.querySelectorAll("#ball [role=status], #ball [aria-live]")].map((e) => e.id).join()`); live != "ball-summary" {
		t.Errorf("%s speak up in the section about the ball, want the three sentences only", live)
	}
	eval[bool](tb, `(() => { for (const d of document.querySelectorAll("#ball details")) d.open = true; return true; })()`)
	if got := tb.section("#ball-focus"); !strings.Contains(got, "Tall guest, driver") || !strings.Contains(got, "meets the screen") {
		t.Errorf("the check looked at = %q, want what the tall guest's driver meets", got)
	}
	if n := eval[int](tb, `document.querySelectorAll("#ball-face .heat").length`); n < 20 {
		t.Errorf("%d spots on the screen, want a spread of them", n)
	}
	if n := eval[int](tb, `document.querySelectorAll(".first-table .first-met").length`); n != 8 {
		t.Errorf("%d first contacts, want one for each player with each club: 8", n)
	}
	told := tb.section("#ball-answer")
	for _, part := range []string{"Balls missed, by depth of return", "Hosel 45°", "Pad this: ", "Bare wall"} {
		if !strings.Contains(told, part) {
			t.Errorf("the section does not say %q", part)
		}
	}
	if n := eval[int](tb, `[...document.querySelectorAll(".assumed li")].filter((li) => li.textContent.startsWith("Assumed: ") && li.querySelector(".status").textContent !== "").length`); n < 10 {
		t.Errorf("%d assumptions with a status, want all that the figures rest on", n)
	}
	tb.axe("the ball, all of it opened", "#ball")

	before := tb.topReturn()
	tb.find("radio", "99.9 %").click()
	tb.until("a deeper return", `[...document.querySelectorAll(".enclosure-told li")].some((li) => li.innerText.includes("top return") && li.innerText !== `+quote(before)+`)`)
	tb.untilBall()
	if lead := tb.section("#ball-enclosure > p"); !strings.Contains(lead, "99.9 %") {
		t.Errorf("the enclosure = %q, want it for 99.9 %%", lead)
	}
}

// A wedge of 58° that sends the ball off at 45° meets a low ceiling, and the
// page says so; the fan in the side elevation shows which angles do.
func steepWedge(t *testing.T, tb *tab) {
	const low = `{"version":1,"title":"Low shed","units":"imperial",
		"room":{"length":6.4,"width":4.4,"height":2.4},
		"screen":{"x":6.0,"centre":2.2,"bottom":0.05,"width":3.5,"height":2.0,"sideReturn":1.0,"topReturn":0.3},
		"tees":[{"name":"middle","x":2.9,"y":2.2}],
		"clubs":[{"name":"lob wedge","kind":"wedge","loft":58,"ball":{"speed":33,"launch":45,"spin":9500}}],
		"players":[{"name":"Host","height":1.70}]}`
	tb.openText("low.json", low)
	tb.untilNotice("low.json is open")
	tb.openSheet("ball")
	if got := tb.section("#ball-summary"); !strings.HasPrefix(got, "Not caught: ") || !strings.Contains(got, "a well-struck ball meets the ceiling") || !strings.Contains(got, "before the screen") {
		t.Errorf("the summary = %q, want the ceiling met before the screen", got)
	}
	eval[bool](tb, `(document.querySelector("#fold-first").open = true)`)
	if got := tb.section("#ball-told"); !strings.Contains(got, "with the lob wedge meets the ceiling first") {
		t.Errorf("the ordinary balls = %q, want nearly all at the ceiling", got)
	}

	angles := eval[[]string](tb, `[...document.querySelectorAll("#view-side .ball-angle")].map((text) => text.textContent)`)
	if len(angles) < 5 || angles[0] != "5°" {
		t.Errorf("the fan says %q, want its angles from 5° on", angles)
	}
	rays := `document.querySelectorAll("#view-side .ball-fan").length`
	if n := eval[int](tb, rays); n != 12 {
		t.Errorf("%d rays in the side elevation, want 5° to 60° in steps of 5°", n)
	}
	if n := eval[int](tb, `document.querySelectorAll("#view-side .ball-flight").length`); n != 1 {
		t.Errorf("%d flights in the side elevation, want the wedge's", n)
	}
	tb.find("checkbox", "fan of launch angles…").click()
	if n := eval[int](tb, rays); n != 0 {
		t.Errorf("%d rays with the fan switched off", n)
	}
}

// A measured ball speed is typed in the plan's unit and kept in metres a second;
// the ball then leaves so for everybody. Without it the swing decides again.
func ballSpeed(t *testing.T, tb *tab) {
	tb.openSheet("room")
	unfold := func() {
		eval[bool](tb, `((el) => { while ((el = el.parentElement?.closest("details"))) el.open = true; return true; })(document.querySelector('[data-path="clubs[0].ball.speed"]'))`)
	}
	unfold()
	speed := tb.field("Clubs", "Club 1", "Ball speed")
	if got := speed.value(); got != "138.7 mph" {
		t.Errorf("the driver's ball speed reads %q, want 138.7 mph", got)
	}
	speed.fill("100")
	tb.press(kb.Tab)
	tb.openSheet("ball")
	eval[bool](tb, `(document.querySelector("#fold-first").open = true)`)
	tb.until("the speed in the table", `document.querySelector(".first-table td").innerText.includes("100 mph")`)
	tb.untilBall()
	if got := eval[int](tb, `[...document.querySelectorAll(".first-table tr")].filter((tr) => tr.cells[1].innerText.includes("100 mph")).length`); got != 2 {
		t.Errorf("%d of 2 players send the driver's ball off at 100 mph", got)
	}
	tb.openSheet("room")
	unfold()
	speed = tb.field("Clubs", "Club 1", "Ball speed")
	speed.fill("a gallon")
	tb.press(kb.Tab)
	tb.until("the field to be marked", `document.querySelector("[aria-invalid=true]") !== null`)
	if got := tb.marked(); !strings.Contains(got, "139 mph") {
		t.Errorf("the field says %q, want a good form shown", got)
	}
}
