//go:build browser

package browsertest

import (
	"fmt"
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
			posted.push(JSON.parse(message.body ?? message.show).kind);
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
	tb := openPage(t, noGL, desktop, "/")
	tb.countMessages()
	tb.comeToMarks()
	for _, sheet := range sheets { // from now on every part of the page has been there
		tb.openSheet(sheet)
	}
	for i, tt := range []struct {
		sheet string
		most  int
	}{
		{"swing", mostMessages}, {"stand", mostMessages}, {"overhead", mostMessages}, {"others", mostMessages}, {"room", mostMessages - 1},
	} {
		t.Run(tt.sheet, func(t *testing.T) {
			tb.in(t)
			tb.openSheet(tt.sheet)
			tb.untilBall()
			eval[bool](tb, `(posted.length = 0, true)`)
			address := eval[string](tb, "location.hash")
			// At once and left: typed slowly it would be several edits.
			eval[bool](tb, fmt.Sprintf(`(() => {
				const field = document.querySelector('[data-path="room.height"]');
				field.value = "9 ft %d in";
				field.dispatchEvent(new Event("change"));
				return true;
			})()`, 6+i))
			tb.until("the new plan in the address", `location.hash !== `+quote(address))
			tb.untilBall()
			tb.until("the marks", `document.querySelector("#marks").dataset.busy === "no"`)
			tb.openSheet(tt.sheet)
			posted := eval[[]string](tb, `posted`)
			if len(posted) > tt.most || len(posted) < 2 {
				t.Errorf("an edit costs the messages %q, want at most %d", posted, tt.most)
			}
		})
	}
}
