//go:build browser

package browsertest

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// words counts those that are seen in a part of the page; what is drawn counts not.
func (tb *tab) words(selector string) int {
	tb.t.Helper()
	return eval[int](tb, `(() => {
		const part = document.querySelector(`+quote(selector)+`);
		const drawn = [...part.querySelectorAll("svg")].map((svg) => svg.textContent).join(" ");
		const count = (text) => (text.match(/\S+/g) ?? []).length;
		return count(part.innerText) - count(drawn);
	})()`)
}

// The ball's sheet opens with three sentences, each with its verdict: caught or
// not, how deep the returns must be, what comes back. Everything else folds, so
// that little is read and a phone has it in four screens.
func TestBallInThreeSentences(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, phone, light+"&sheet=ball")
	tb.openSheet("ball")
	said := eval[[]string](tb, `[...document.querySelectorAll("#ball-summary > p")].map((p) => p.dataset.verdict + ": " + p.innerText.trim())`)
	for i, start := range []string{"clear: Caught: every well-struck ball", "clear: Returns: ", "tight: What comes back: "} {
		if len(said) != 3 || !strings.HasPrefix(said[i], start) {
			t.Fatalf("the sheet says %q, want three sentences, of which number %d starts with %q", said, i+1, start)
		}
	}
	if n := tb.words("#sheet-ball"); n > 250 {
		t.Errorf("%d words before anything is unfolded, want at most 250", n)
	}
	tb.top()
	if n := eval[float64](tb, `document.querySelector("main").getBoundingClientRect().bottom / innerHeight`); n > 4 {
		t.Errorf("the sheet is %.1f screens of a phone, want at most 4", n)
	}
	if n := tb.sideways(); n > 0 {
		t.Errorf("the page is %d px wider than the phone", n)
	}
	for _, sentence := range said {
		_, text, _ := strings.Cut(sentence, ": ")
		if n := eval[int](tb, `document.querySelector("#sheet-ball").textContent.split(`+quote(text)+`).length - 1`); n > 1 {
			t.Errorf("%q is said %d times", text, n)
		}
	}
}

// Each part that folds is named by its figure, and opens by keyboard.
func ballUnfoldsByKeys(t *testing.T, tb *tab) {
	tb.openSheet("ball")
	eval[bool](tb, `(document.querySelector("input[name=ball-catch]:checked").focus(), true)`)
	folds := []string{"Met first: screen or returns, by 2 of 2", "On the screen: ", "Returns: ", "Steepest start: ", "Mishits: ", "Rebound: ", "Pads: ", "These figures rest on "}
	// From the rate the way goes over the boxes of the drawing.
	for range eval[int](tb, `document.querySelectorAll("#ball-toggles input").length`) {
		tb.press(kb.Tab)
	}
	for _, name := range folds {
		tb.press(kb.Tab)
		at := eval[string](tb, `document.activeElement.tagName + " " + document.activeElement.textContent`)
		if !strings.HasPrefix(at, "SUMMARY "+name) {
			t.Fatalf("the focus is on %q, want the fold %q", short(at), name)
		}
		tb.press(kb.Enter)
		if !eval[bool](tb, `document.activeElement.parentElement.open && document.activeElement.nextElementSibling.getBoundingClientRect().height > 20`) {
			t.Errorf("%q does not open by Enter, or is empty", name)
		}
		tb.press(kb.Enter)
	}
}
