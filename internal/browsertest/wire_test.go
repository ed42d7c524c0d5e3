//go:build browser

package browsertest

import "testing"

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

// An edit is few messages: the answer carries its figures as text, and the link
// is made without the solver. A map that is open comes with its reading.
func TestQuietWire(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, "/")
	tb.untilBall()
	tb.untilMaps()
	tb.countMessages()
	for _, state := range []struct {
		name string
		then func()
	}{
		{"as opened", func() {}},
		{"with the map of where to stand", func() { tb.showMap("where to stand") }},
		{"with the map of what may hang", func() { tb.showMap("what may hang") }},
	} {
		state.then()
		tb.untilMaps()
		eval[bool](tb, `(posted.length = 0, true)`)
		address := eval[string](tb, "location.hash")
		field := tb.field("Room", "", "Ceiling height")
		length := "9 ft 8 in"
		if field.value() == length {
			length = "9 ft 9 in"
		}
		// At once and left: typed slowly it would be several edits.
		call[bool](tb, field.object, `function() { this.value = `+quote(length)+`; this.dispatchEvent(new Event("change")); return true; }`)
		tb.until("the new plan in the address", `location.hash !== `+quote(address))
		tb.untilBall()
		tb.untilMaps()
		if posted := eval[[]string](tb, `posted`); len(posted) > mostMessages || len(posted) < 2 {
			t.Errorf("%s an edit costs the messages %q, want at most %d", state.name, posted, mostMessages)
		}
	}
}
