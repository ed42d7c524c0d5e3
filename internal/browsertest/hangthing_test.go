//go:build browser

package browsertest

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// hungThings are the names and verdicts in the list of hung things.
func (tb *tab) hungThings() []string {
	tb.t.Helper()
	return eval[[]string](tb, `[...document.querySelectorAll("[aria-label='Hung things'] > li")].map((li) => li.dataset.verdict + ": " + li.innerText.trim().split("\n")[0])`)
}

// outlineOf is the middle of a hung thing's outline on the map, in the window.
func (tb *tab) outlineOf(name string) []float64 {
	tb.t.Helper()
	return eval[[]float64](tb, `((r) => [r.x + r.width / 2, r.y + r.height / 2])(document.querySelector("[data-handle='`+name+`'] .footprint").getBoundingClientRect())`)
}

// A lamp is judged where the spot is, as its sizes change; a button hangs it as
// one edit, which Undo takes back; hung, it is listed, dragged by its outline and
// removed.
func hangAThing(t *testing.T, tb *tab) {
	tb.openSheet("overhead")
	before := len(tb.hungThings())
	told := `document.querySelector("#thing-told")`
	tb.until("the lamp judged", told+`.innerText.trim().startsWith("Lamp")`)
	name := tb.find("textbox", "Name")
	name.fill("chandelier")
	tb.press(kb.Tab)
	tb.until("the chandelier judged", told+`.innerText.trim().startsWith("Chandelier")`)

	drop := tb.find("textbox", "Drop")
	drop.fill("6 ft")
	tb.press(kb.Tab)
	tb.until("a deep one struck", told+`.dataset.verdict === "strikes"`)
	drop.fill("a gallon")
	tb.press(kb.Tab)
	tb.until("the field marked", `document.querySelector("#thing-drop[aria-invalid]") && document.querySelector("#thing-error").innerText !== ""`)
	drop.fill("2 in")
	tb.press(kb.Tab)
	field := tb.find("spinbutton", "Spot, from the back wall")
	field.fill("1 ft")
	tb.press(kb.Tab)
	tb.until("a shallow one by the back wall clear", told+`.dataset.verdict === "clear"`)
	tb.axe("a thing to hang", "#map-panel")

	address := eval[string](tb, "location.hash")
	tb.find("button", "Hang it here").click()
	tb.until("the chandelier hung", `location.hash !== `+quote(address)+` && document.querySelector("[aria-label='Remove chandelier']") !== null`)
	tb.untilMap()
	list := tb.hungThings()
	if len(list) != before+1 || !strings.HasPrefix(list[before], "clear: Chandelier: ") {
		t.Fatalf("hung are %q, want the chandelier last and clear", list)
	}

	address = eval[string](tb, "location.hash")
	eval[bool](tb, `(document.querySelector("#view-plan").scrollIntoView({block: "center", behavior: "instant"}), true)`)
	// The footprint of a next one lies over it: its spot moves away first.
	was := tb.section("#thing-told")
	field.fill("10 ft")
	tb.press(kb.Tab)
	tb.until("the next one elsewhere", told+`.innerText !== `+quote(was))
	at := tb.outlineOf("chandelier")
	tb.do(chromedp.MouseEvent("mousePressed", at[0], at[1], chromedp.ButtonLeft))
	tb.do(chromedp.MouseEvent("mouseMoved", at[0]+20, at[1]-30, chromedp.ButtonLeft))
	if got := eval[string](tb, "location.hash"); got != address {
		t.Error("the plan changed before the chandelier was let go")
	}
	tb.do(chromedp.MouseEvent("mouseReleased", at[0]+20, at[1]-30, chromedp.ButtonLeft))
	tb.until("another address", `location.hash !== `+quote(address))
	tb.untilMap()
	if now := tb.outlineOf("chandelier"); now[0]-at[0] < 15 || at[1]-now[1] < 25 {
		t.Errorf("dragged by 20, −30 px the outline went from %v to %v", at, now)
	}
	undo := tb.find("button", "Undo")
	undo.click()
	tb.until("where it was hung", `location.hash === `+quote(address))
	undo.click()
	tb.untilMap()
	if got := tb.hungThings(); len(got) != before {
		t.Errorf("after Undo hung are %q, want the %d of the demonstration room", got, before)
	}
	tb.find("button", "Redo").click()
	tb.until("the chandelier again", `document.querySelector("[aria-label='Remove chandelier']") !== null`)
	tb.untilMap()
	tb.find("button", "Remove chandelier").click()
	tb.until("it gone", `document.documentElement.dataset.busy === "no" && document.querySelector("[aria-label='Remove chandelier']") === null`)
}
