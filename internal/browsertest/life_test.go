//go:build browser

package browsertest

import (
	"strings"
	"testing"
)

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
	eval[bool](tb, `(setTimeout(() => history.back()), true)`) // not before this is answered
	tb.until("the page again", `document.querySelector("#strip-height")?.value === "4 ft 11 in"`)
	tb.ready()
	if got := tb.answer(); got != after {
		t.Errorf("come back to, the page reads\n%s\nwant\n%s", got, after)
	}
	tb.typeInStrip("Height", "151 cm")
	tb.until("another answer", settled+` && document.querySelector("#strip-height").value !== "4 ft 11 in"`)
	tb.in2Tabs()
}

// in2Tabs works on the one kept plan in two tabs by turns: each goes on with its own, is
// told where the other's is, and nothing that either made is gone.
func (tb *tab) in2Tabs() {
	tb.t.Helper()
	other := openIn(tb.t, tb.ctx, desktop)
	other.goTo("/")
	other.ready()
	const heights = `JSON.stringify([localStorage.getItem("wide-berth.plan"), ...Object.keys(localStorage).filter((key) => key.startsWith("wide-berth.kept.")).map((key) => localStorage.getItem(key))].map((text) => { const one = JSON.parse(text); return (one.plan ?? one).players.find(({name}) => name === document.querySelector("#strip-who").value).height; }).sort())`
	for _, step := range []struct {
		by           *tab
		typed, shown string
		told         string
		want         string
	}{
		{other, "152 cm", "4 ft 11 7/8 in", "", `[1.52]`},
		{tb, "153 cm", "5 ft 1/4 in", "Another tab kept a plan of its own meanwhile", `[1.52,1.53]`},
		{other, "154 cm", "5 ft 5/8 in", "Another tab kept a plan of its own meanwhile", `[1.52,1.53,1.54]`},
	} {
		step.by.typeInStrip("Height", step.typed)
		step.by.until("the answer", settled+` && document.querySelector("#strip-height").value === `+quote(step.shown))
		if got := step.by.notice(); !strings.Contains(got, step.told) {
			tb.t.Errorf("%s: the notice = %q, want %q in it", step.typed, got, step.told)
		}
		if got := eval[string](tb, heights); got != step.want {
			tb.t.Errorf("%s: heights %s are kept, want %s", step.typed, got, step.want)
		}
	}
}
