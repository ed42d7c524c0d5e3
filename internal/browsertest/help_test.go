//go:build browser

package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// Who comes for the first time is shown three steps, once; who brings a link is not.
func TestFirstSteps(t *testing.T) {
	t.Parallel()
	const box = `document.querySelector(".steps")`
	for _, view := range []size{desktop, phone} {
		t.Run(view.name, func(t *testing.T) {
			t.Parallel()
			tb := open(t, noGL, view)
			tb.without(tb.noSteps)
			tb.goTo("/")
			tb.ready()
			inside := func(step string) {
				t.Helper()
				tb.until("the step "+step, box+`?.innerText.includes(`+quote(step)+`)`)
				tb.until(step+" below what it points at", `document.querySelector(".is-pointed-at").getBoundingClientRect().top < `+box+`.getBoundingClientRect().top`)
				tb.until(step+" in the window", `(({top, bottom, left, right}) => top >= 0 && left >= 0 && bottom <= innerHeight && right <= innerWidth)(`+box+`.getBoundingClientRect())`)
			}
			inside("Whose swing?")
			if covered := eval[bool](tb, `((r) => `+box+`.contains(document.elementFromPoint(r.left + r.width / 2, r.top + r.height / 2)))(document.querySelector("#verdict").getBoundingClientRect())`); covered {
				t.Error("the first step lies over the verdict")
			}
			tb.axe("first steps", ".steps")
			tb.shootWindow("steps-1-" + view.name)
			tb.find("button", "Next").click()
			inside("The worst of everyone")
			tb.shootWindow("steps-2-" + view.name)
			tb.press(kb.Enter) // the focus is on the button
			inside("What would do")
			tb.shootWindow("steps-3-" + view.name)
			tb.press(kb.Escape)
			tb.until("no step", box+` === null && !document.querySelector(".is-pointed-at")`)
			if view == desktop {
				tb.goTo("/?again")
				tb.ready()
				tb.until("the stage", `document.querySelector("#stage-root").dataset.ready === "yes"`)
				if eval[bool](tb, box+` !== null`) {
					t.Error("the steps come again")
				}
				return
			}

			tb.openSheet("room")
			tb.find("button", "How to measure").click()
			tb.until("the drawings", `document.querySelectorAll("dialog[open] .measuring-drawing").length === 3`)
			if over := tb.sideways(); over > 0 {
				t.Errorf("the page is %d px too wide", over)
			}
			tb.axe("how to measure", "dialog[open]")
			tb.shootWindow("measuring-" + view.name)
			tb.find("button", "Close").click()
		})
	}
}
