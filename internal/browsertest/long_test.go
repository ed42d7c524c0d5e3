//go:build browser

package browsertest

import (
	"fmt"
	"testing"

	"wideberth/internal/sim/plan"
)

// A plan of many swings shows how far it is, can be stopped, and leaves the last
// answer; after a worker that died the next edit is answered by another.
func TestLongWork(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, light)
	before := tb.verdict()

	long := plan.Demo()
	host := long.Players[0]
	long.Players = nil
	for i := range 12 {
		host.Name, host.Height = fmt.Sprintf("Guest %d", i), 1.6+0.02*float64(i)
		long.Players = append(long.Players, host)
	}
	tb.openText("long.json", string(long.JSON()))
	tb.until("progress", `!document.querySelector("#progress").hidden && document.querySelector("#progress progress").value > 0`)
	tb.find("button", "Stop").click()
	tb.until("the end of it", `document.querySelector("#progress").hidden && document.documentElement.dataset.busy === "no"`)
	tb.untilNotice("stopped before it was answered")
	if after := tb.verdict(); after != before {
		t.Errorf("the answer after a stop is %q, want %q as before", after, before)
	}

	eval[bool](tb, `(() => {
		// The next message finds a worker that has stopped without a word to say.
		const post = Worker.prototype.postMessage;
		Worker.prototype.postMessage = function (...message) {
			Worker.prototype.postMessage = post;
			this.dispatchEvent(new MessageEvent("message", { data: { fatal: "The solver stopped." } }));
		};
		return true;
	})()`)
	height := func(text string) {
		eval[bool](tb, fmt.Sprintf(`(() => {
			const field = document.querySelector('[data-path="room.height"]');
			field.value = %q;
			field.dispatchEvent(new Event("change"));
			return true;
		})()`, text))
	}
	height("10 ft")
	tb.untilNotice("The solver stopped")
	height("11 ft")
	tb.until("another worker's answer", `document.documentElement.dataset.state === "ready" && document.documentElement.dataset.busy === "no" && document.documentElement.dataset.stale === "no"`)
}
