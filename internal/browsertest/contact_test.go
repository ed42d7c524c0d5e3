//go:build browser

package browsertest

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// stars counts the strike marks of the stage's flat drawings.
func (tb *tab) stars() int {
	tb.t.Helper()
	return eval[int](tb, `document.querySelectorAll(".stage-flat .view .burst").length`)
}

// Where something is struck, the sentence says when and how fast the first touch
// is; the drawings mark it, and in the scene the marks begin there.
func firstTouch(t *testing.T, tb *tab) {
	tb.openPlan(filepath.Join(plansDir, "low-ceiling.json"))
	verdict := tb.verdict()
	for _, part := range []string{"strikes the ceiling", "s before impact", "mph", "the loosest swing would go"} {
		if !strings.Contains(verdict, part) {
			t.Errorf("the verdict = %q, want it to say %q", verdict, part)
		}
	}
	tb.loadScene()
	if got := tb.stars(); got != 3 {
		t.Errorf("%d strike marks in the three drawings, want one each", got)
	}
	tb.goToStop("first touch")
	if n := tb.strikes(); n < fewest {
		t.Errorf("at the first touch (%s) the scene has %d pixels of the strike's colour, want at least %d", tb.moment(), n, fewest)
	}
	for range 2 {
		tb.find("button", "One frame back").click()
	}
	tb.until("the frames before", `!document.querySelector("#stage-slider").getAttribute("aria-valuetext").endsWith("first touch")`)
	if n := tb.strikes(); n >= fewest {
		t.Errorf("two frames before the first touch (%s) the scene has %d pixels of the strike's colour, want none", tb.moment(), n)
	}
}

// goToStop goes on from strike to tight place until the moment's words end so.
func (tb *tab) goToStop(words string) {
	tb.t.Helper()
	tb.showStage()
	eval[bool](tb, `((slider) => { slider.value = 0; slider.dispatchEvent(new Event("input")); return true; })(document.querySelector("#stage-slider"))`)
	const most = 12 // stops in a swing
	for range most {
		tb.find("button", "Next strike or tight place").click()
		if strings.HasSuffix(tb.moment(), words) {
			return
		}
	}
	tb.t.Fatalf("no stop of %d ends with %q; the last is %q", most, words, tb.moment())
}

// Beside the clearance stands how near the model is, and, where a finer margin is
// asked for, that it is finer.
func modelError(t *testing.T, tb *tab) {
	model := func() string { return eval[string](tb, `document.querySelector("#verdict-model").textContent`) }
	if got := model(); !strings.Contains(got, "of recorded ones") || strings.Contains(got, "more than your") {
		t.Errorf("the page says %q of the model with the usual margin", got)
	}
	tb.showStage()
	if got := eval[int](tb, `document.querySelectorAll(".stage-flat .view .tape-thread").length`); got != 3 {
		t.Errorf("%d of three tapes end in threads", got)
	}
	tb.openSheet("room")
	tb.find("textbox", "Clearance to call it clear").fill("1 in")
	tb.press(kb.Tab)
	tb.until("the words about a fine margin", `document.querySelector("#verdict-model").textContent.includes("more than your 1 in margin")`)
}
