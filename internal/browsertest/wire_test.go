//go:build browser

package browsertest

import (
	"fmt"
	"path/filepath"
	"slices"
	"testing"
)

// mostMessages is what an edit may cost in messages to the solvers.
const mostMessages = 4

// countMessages has the page count what it posts to its workers.
func (tb *tab) countMessages() {
	tb.t.Helper()
	eval[bool](tb, `(() => {
		const post = Worker.prototype.postMessage;
		window.posted = [];
		Worker.prototype.postMessage = function (message, ...more) {
			if (message.stop === undefined && message.patience < 2) posted.push(JSON.parse(message.body ?? message.show).kind); // giving up is not asking, and for what is learnt when there is nothing else to do nobody waits
			return post.call(this, message, ...more);
		};
		return true;
	})()`)
}

// An edit is few messages, whichever sheet is open and whatever was opened before:
// the answer carries its figures as text, the link is made without the solver, and
// a map is asked for only while it is shown.
func TestQuietWire(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, light)
	tb.openPlan(filepath.Join(plansDir, "low-ceiling.json")) // one golfer, and not clear: changes are asked for too
	tb.countMessages()
	for _, sheet := range sheets { // from now on every part of the page has been there
		tb.openSheet(sheet)
	}
	settled := map[string]string{ // by the parts that a sheet asks for
		"swing":    `document.querySelector("#changes")?.dataset.busy !== "yes"`,
		"stand":    `document.querySelector("#marks").dataset.busy === "no" && document.querySelector("#view-plan").dataset.busy === "no"`,
		"overhead": `document.querySelector("#view-plan").dataset.busy === "no"`,
		"others":   `document.querySelector("#view-plan").dataset.busy === "no"`,
		"ball":     `document.querySelector("#ball").dataset.busy === "no"`,
	}
	for i, sheet := range sheets {
		t.Run(sheet, func(t *testing.T) {
			tb.in(t)
			tb.openSheet(sheet)
			eval[bool](tb, `(posted.length = 0, true)`)
			address := eval[string](tb, "location.hash")
			// At once and left: typed slowly it would be several edits.
			eval[bool](tb, fmt.Sprintf(`(() => {
				const field = document.querySelector('[data-path="room.height"]');
				field.value = "8 ft %d in";
				field.dispatchEvent(new Event("change"));
				return true;
			})()`, 1+i))
			tb.until("the new plan in the address", `location.hash !== `+quote(address))
			tb.openSheet(sheet)
			if what := settled[sheet]; what != "" {
				tb.until("what the sheet asks for", what)
			}
			posted := eval[[]string](tb, `posted`)
			if len(posted) > mostMessages || !slices.Contains(posted, "solve") {
				t.Errorf("an edit costs the messages %q, want at most %d, the plan's answer among them", posted, mostMessages)
			}
		})
	}
}
