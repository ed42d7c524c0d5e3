//go:build browser

package browsertest

import "testing"

// What happens to a page that is open for long: it is hidden and shown, left and come
// back to, and spoken to by windows that are not its own.
func TestLife(t *testing.T) {
	t.Parallel()
	tb := open(t, noGL, desktop)
	tb.prefer("prefers-reduced-motion", "no-preference")
	tb.goTo(alone)
	tb.ready()
	tb.showStage()
	tb.until("the swing to play", `document.querySelector("#stage-play").innerText === "Pause"`)
	frames := func(n string) []float64 {
		return eval[[]float64](tb, `(async () => {
			const at = [];
			for (let i = 0; i < `+n+`; i++) { await new Promise(requestAnimationFrame); at.push(Number(document.querySelector("#stage-slider").value)); }
			return at;
		})()`)
	}
	hide := func(hidden string) {
		eval[bool](tb, `(Object.defineProperty(document, "hidden", {configurable: true, get: () => `+hidden+`}), document.dispatchEvent(new Event("visibilitychange")), true)`)
	}
	hide("true")
	if at := frames("12"); at[2] != at[11] {
		t.Errorf("out of sight the swing goes on: %v", at)
	}
	stood := frames("1")[0]
	hide("false")
	if at := frames("3"); at[0] == at[2] || at[0]-stood > 0.2 {
		t.Errorf("in sight again the swing goes from %.3f over %.3f s", stood, at)
	}
	tb.find("button", "Pause").click()

	read := func() string { return tb.verdict() + tb.notice() + tb.section(".stage-note") }
	before := read()
	for _, hostile := range []string{`{type: "failed", message: "Send money."}`, `{type: "ready"}`, `{type: "state", view: "above", t: 9}`, `{type: "received", plan: {}}`, `"PLAYS"`, `null`, `{id: 1, body: "{}"}`} {
		eval[bool](tb, `(window.postMessage(`+hostile+`, "*"), true)`)
	}
	eval[bool](tb, `new Promise((done) => setTimeout(() => done(true)))`)
	if got := read(); got != before {
		t.Errorf("after strangers' messages the page reads %q, want %q", got, before)
	}

	tb.typeInStrip("Height", "150 cm")
	tb.until("the answer", settled+` && document.querySelector("#strip-height").value === "4 ft 11 in"`)
	after := tb.answer()
	tb.goTo("/sw.js")
	eval[bool](tb, `(history.back(), true)`)
	tb.until("the page again", `document.querySelector("#strip-height")?.value === "4 ft 11 in"`)
	tb.ready()
	if got := tb.answer(); got != after {
		t.Errorf("come back to, the page reads\n%s\nwant\n%s", got, after)
	}
	tb.typeInStrip("Height", "151 cm")
	tb.until("another answer", settled+` && document.querySelector("#strip-height").value !== "4 ft 11 in"`)
}
