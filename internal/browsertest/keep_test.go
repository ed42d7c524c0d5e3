//go:build browser

package browsertest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// keptNames are the plans on the shelf as they are listed.
func (tb *tab) keptNames() string {
	tb.t.Helper()
	return eval[string](tb, `[...document.querySelectorAll(".kept .kept-name")].map((e) => e.textContent).sort().join()`)
}

// Plans are kept, copied, renamed, removed and brought back; two of them are swung
// side by side on one clock, with what differs; a full browser is told of in words.
func TestKeepAndCompare(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, light)
	keepAs := func(name string) {
		t.Helper()
		tb.find("textbox", "Keep the plan as it is now, as").fill(name)
		tb.press(kb.Enter)
		tb.until("the kept plan", `[...document.querySelectorAll(".kept .kept-name")].some((e) => e.textContent === `+quote(name)+`)`)
	}
	tb.find("button", "Plans").click()
	keepAs("One")
	tb.press(kb.Escape)
	tb.typeInStrip("Ball off the middle", "6 in right")
	tb.until("the answer", settled)
	tb.find("button", "Plans").click()
	keepAs("Two")
	tb.find("button", "Duplicate Two").click()
	tb.find("button", "Rename Two 2").click()
	tb.press("Three" + kb.Enter)
	tb.until("another name", `document.querySelector(".keep .notice").innerText.includes("“Three” now")`)
	tb.find("button", "Remove One").click()
	if got := tb.keptNames(); got != "Three,Two" {
		t.Errorf("after removing one there are %s", got)
	}
	eval[bool](tb, `(document.querySelector(".keep .notice button").click(), true)`)
	if got := tb.keptNames(); got != "One,Three,Two" {
		t.Errorf("after Undo there are %s", got)
	}

	choose := func(which, name string) {
		eval[bool](tb, `(() => { const s = document.querySelector("#compare-`+which+`"); s.value = [...s.options].find((o) => o.innerText === `+quote(name)+`).value; return true; })()`)
	}
	choose("a", "One")
	choose("b", "As it is now")
	tb.find("button", "Compare").click()
	tb.until("both swings", `document.querySelectorAll("#comparison .compare-table").length === 2`)
	if got := tb.section("#comparison ul"); got != "tee “middle” 6 in to the right" {
		t.Errorf("what differs is %q", got)
	}
	rows := eval[[]string](tb, `[...document.querySelectorAll(".compare-table tr.is-changed")].map((r) => [...r.children].map((c) => c.innerText.trim()).join(" | "))`)
	if !strings.Contains(strings.Join(rows, "\n"), "rafters, left") || strings.Contains(strings.Join(rows, "\n"), "ceiling") {
		t.Errorf("what changed: %q, want the rafters and not the ceiling, which stays as far", rows)
	}
	const pictures = `[...document.querySelectorAll(".compare-stage canvas:not(.stage-swept)")].filter((c) => c.checkVisibility()).map((c) => c.toDataURL())`
	before := eval[[]string](tb, pictures)
	eval[bool](tb, `(() => { const s = document.querySelector("#compare-slider"); s.value = Number(s.max) * 0.3; s.dispatchEvent(new Event("input")); return true; })()`)
	after := eval[[]string](tb, pictures)
	if len(before) < 2 || len(before) != len(after) {
		t.Fatalf("%d drawings, then %d, want at least one of each plan", len(before), len(after))
	}
	for i := range before {
		if before[i] == after[i] {
			t.Errorf("drawing %d did not go along with the clock", i)
		}
	}
	tb.axe("two plans side by side", "dialog[open]")
	tb.shootWindow("compare-desktop-light")

	eval[bool](tb, `(Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); }, true)`)
	tb.find("button", "Duplicate Two").click()
	if got := tb.section(".keep .notice"); !strings.Contains(got, "no room left") {
		t.Errorf("a full browser is told as %q", got)
	}
	tb.reload()
	tb.ready()
	tb.find("button", "Plans").click()
	tb.until("the shelf", `document.querySelector("#keep-dialog")?.open`)
	if got := tb.keptNames(); got != "One,Three,Two" {
		t.Errorf("reloaded there are %s", got)
	}
	file := filepath.Join(t.TempDir(), "plans.json")
	if err := os.WriteFile(file, []byte(`{"kept":[{"name":"From a file","plan":{"version":1,"room":{"length":6,"width":5,"height":3.2},"clubs":[{"name":"driver","kind":"driver"}],"players":[{"name":"Ann","height":1.7}]}},{"name":"Wrong","plan":{"version":1,"room":{"length":-6}}}]}`), 0o644); err != nil {
		t.Fatal(err)
	}
	tb.do(chromedp.SetUploadFiles(chromedp.CSS("#keep-dialog input[type=file]"), []string{file}))
	tb.until("what was brought in", `document.querySelector(".keep .notice").innerText.includes("One plan was brought in")`)
	if got := tb.section(".keep .notice"); !strings.Contains(got, "“Wrong” was left out") {
		t.Errorf("of the file it says %q", got)
	}
	tb.find("button", "Open From a file").click()
	tb.untilVerdict("Ann, driver")
}

// Whatever comes in by the address or lies in the browser, the page ends in a
// sentence, a form and an answer: of the last good plan where there is one, else of
// the demonstration; and a link that is only looked at leaves the visitor's plan.
func TestWhateverComesIn(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, light)
	tb.typeInStrip("Height", "150 cm")
	tb.until("the plan to be kept", settled+` && localStorage.getItem("wide-berth.plan")`)
	mine, own := tb.kept(), eval[string](tb, `location.hash`)
	short := `{"version":1,"room":{"length":6,"width":5,"height":3},"clubs":[{"name":"short","kind":"wedge","length":0.45}],"players":[{"name":"Host","height":1.9}]}`
	packed := func(text string) string {
		return eval[string](tb, `import("/app/link.js").then(({pack}) => pack(`+text+`))`)
	}
	const sure = "&sheet=sure" // where nothing more is worked out
	for _, tt := range []struct {
		name, stored, hash, notice, verdict string
	}{
		{"a club nobody can stand to, stored", quote(short), "#" + sure, "Shown instead", "Tall guest"},
		{"the same as a link", quote(mine), packed(quote(short)) + sure, "Shown instead is your last good plan", "Tall guest"},
		{"9,000 brackets as a link", quote(mine), packed(`"[".repeat(9000) + "]".repeat(9000)`) + sure, "Shown instead is your last good plan", "Tall guest"},
		{"4 MB, stored", `"x".repeat(4e6)`, "#" + sure, "Shown instead", "Tall guest"},
		{"a full stop behind a link", quote(mine), own + ".", "", "Tall guest"},
		{"escaped by a mail", quote(mine), strings.Replace(own, "=", "%3D", 1) + "%26sheet%3Dswing", "", "Tall guest"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			tb.in(t)
			eval[bool](tb, `(localStorage.setItem("wide-berth.plan", `+tt.stored+`), true)`)
			tb.goTo("/?" + strings.ReplaceAll(tt.name, " ", "-") + tt.hash)
			tb.ready()
			if got := tb.notice(); !strings.Contains(got, tt.notice) || len(got) > 500 {
				t.Errorf("the notice = %q, want %q in it", got, tt.notice)
			}
			if got := tb.verdict(); !strings.Contains(got, tt.verdict) {
				t.Errorf("the verdict = %q, want %q in it", got, tt.verdict)
			}
			if n := eval[int](tb, `document.querySelectorAll("#cards input").length`); n < 20 {
				t.Errorf("the form has %d fields", n)
			}
			if tt.stored == quote(mine) && tb.kept() != mine {
				t.Error("the visitor's plan is another now")
			}
		})
	}
	// A plan file that nobody can swing in leaves no draft behind.
	tb.openText("short.json", short)
	tb.untilNotice("What was here is unchanged")
	tb.typeInStrip("Height", "151 cm")
	tb.until("the answer", settled)
	if got := tb.verdict(); strings.Contains(got, "short") || !strings.Contains(got, "Tall guest") {
		t.Errorf("the next edit brings %q", got)
	}
	// A browser that lets nothing be kept: the page works, and says so where one would keep a plan.
	// What was typed before its scripts came is not lost.
	tb.before(`Object.defineProperty(window, "localStorage", {get() { throw new DOMException("denied", "SecurityError"); }})`)
	early := tb.before(`new MutationObserver((_, seen) => {
		const field = document.querySelector("#strip-height");
		if (!field) return;
		seen.disconnect();
		field.value = "6'5\"";
	}).observe(document, {childList: true, subtree: true})`)
	tb.reload()
	tb.ready()
	tb.until("what was typed early", settled+` && document.querySelector("#strip-height").value === "6 ft 5 in"`)
	tb.without(early)
	tb.typeInStrip("Height", "152 cm")
	tb.until("the answer", settled+` && document.querySelector("#strip-height").value === "4 ft 11 7/8 in"`)
	tb.find("button", "Plans").click()
	tb.until("why nothing is kept", `document.querySelector(".keep .notice")?.innerText.includes("lets the page keep nothing")`)
	// Where the page is not kept, nobody is told to load it anew without a network.
	if got := eval[string](tb, `import("/app/again.js").then(({again}) => { Object.defineProperty(Navigator.prototype, "onLine", {get: () => false}); return again(); })`); !strings.Contains(got, "no network now") {
		t.Errorf("without a network the page advises %q", got)
	}
}
