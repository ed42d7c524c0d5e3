//go:build browser

package browsertest

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// The paper is made of answers asked for when somebody prints, to a scale that a ruler
// proves, on both sizes of paper; nothing on it is to be pressed.
func TestPaper(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, light)
	eval[bool](tb, `(window.print = () => { window.printed = true; }, true)`)
	tb.find("button", "Share").click()
	tb.find("button", "Print the sheet").click()
	tb.until("the paper", `window.printed`)

	if _, err := chromedp.Call(tb.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"}); err != nil {
		t.Fatal(err)
	}
	// As laid out: CSS has 96 px in an inch of paper.
	type seen struct {
		Ruler, Room, Across float64
		Scale, Text         string
		Pressable, Hidden   int
	}
	on := eval[seen](tb, `(() => {
		const rects = (selector) => document.querySelector("#paper " + selector).getBoundingClientRect();
		const shown = (e) => e.checkVisibility();
		return {
			Ruler: rects(".paper-ruler path").width, Room: rects(".paper-plan .room-paper").width, Across: 6.4008,
			Scale: [...document.querySelectorAll("#paper .paper-head p")].map((p) => p.innerText).join(),
			Text: document.querySelector("#paper").innerText,
			Pressable: [...document.querySelectorAll("button, input, select, a, summary")].filter(shown).length,
			Hidden: [...document.querySelectorAll("body > :not(#paper, script, .sprite)")].filter(shown).length,
		};
	})()`)
	by := regexp.MustCompile(`1:(\d+)`).FindStringSubmatch(on.Scale)
	if by == nil || by[1] != "64" {
		t.Fatalf("the scale is %q, want 1:64", on.Scale)
	}
	if want := on.Across / 64 / 0.0254 * 96; math.Abs(on.Room-want) > 1 {
		t.Errorf("the room is %.1f px long on paper, want %.1f", on.Room, want)
	}
	if want := 4 * 96.0; math.Abs(on.Ruler-want) > 1 {
		t.Errorf("the ruler is %.1f px long, want %.1f", on.Ruler, want)
	}
	if on.Pressable+on.Hidden > 0 {
		t.Errorf("%d things to press and %d other parts of the page are printed", on.Pressable, on.Hidden)
	}
	for _, want := range []string{"Strikes: ", "Tall guest", "from the back wall", "Mat", "Projector: clear", "Returns", "3/16 in to the foot", "Before anyone swings", "4 in when printed at 100 %", "putting cup", "One for each cup in the plan", "No prices are in the plan"} {
		if !strings.Contains(on.Text, want) {
			t.Errorf("the paper does not say %q: %q", want, on.Text)
		}
	}
	eval[bool](tb, `(document.querySelector("dialog[open]").close(), true)`)
	again := false
	for name, inches := range map[string][2]float64{"a4": {8.27, 11.69}, "letter": {8.5, 11}} {
		if again { // after printing the paper is gone
			tb.until("the paper put away", `document.querySelector("#paper") === null`)
			eval[bool](tb, `(window.printed = false, dispatchEvent(new KeyboardEvent("keydown", {key: "p", ctrlKey: true})))`)
			tb.until("the paper again", `window.printed`)
		}
		again = true
		pdf, err := chromedp.Call(tb.ctx, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: inches[0], PaperHeight: inches[1]})
		if err != nil {
			t.Fatal(err)
		}
		data := pdf.Data
		if n := len(regexp.MustCompile(`/Type\s*/Page\b`).FindAll(data, -1)); n != 3 {
			t.Errorf("on %s it takes %d pages, want one for the wall, one for the builder and one for the shop", name, n)
		}
		if !bytes.HasPrefix(data, []byte("%PDF")) {
			t.Errorf("%s is no PDF", name)
		}
		if *shots != "" {
			if err := os.WriteFile(filepath.Join(*shots, "paper-"+name+".pdf"), data, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	// Names that nothing breaks stay on the paper.
	tb.until("the paper put away", `document.querySelector("#paper") === null`)
	tb.prefer("prefers-color-scheme", "light") // not print any more
	tb.again(hostile)
	eval[bool](tb, `(window.printed = false, dispatchEvent(new KeyboardEvent("keydown", {key: "p", ctrlKey: true})))`)
	tb.until("the paper again", `window.printed`)
	if _, err := chromedp.Call(tb.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"}); err != nil {
		t.Fatal(err)
	}
	over := eval[[]string](tb, `((edge) => [...document.querySelectorAll("#paper *")].filter((e) => e.checkVisibility() && e.getBoundingClientRect().right > edge + 1).map((e) => e.tagName + "." + e.getAttribute("class")))(document.querySelector("#paper").getBoundingClientRect().right)`)
	if text := eval[string](tb, `document.querySelector("#paper").innerText`); len(over) > 0 || !strings.Contains(text, markup) {
		t.Errorf("beyond the paper's edge: %q; on it: %q", over, short(text))
	}
}
