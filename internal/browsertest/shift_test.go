//go:build browser

package browsertest

import "testing"

// mostShift is how much of a window may move by itself from load until everything
// is there, as browsers measure it: the limit that is called good.
const mostShift = 0.1

// While the page comes in, nothing that is there already jumps: what comes later
// has its place reserved.
func TestLayoutShift(t *testing.T) {
	t.Parallel()
	for _, view := range []size{desktop, tablet, phone} {
		t.Run(view.name, func(t *testing.T) {
			t.Parallel()
			tb := openPage(t, cold, view, light)
			tb.until("the changes that would do, the last part", `document.querySelector("#changes button")`)
			total, moved := tb.shifts()
			if total > mostShift {
				t.Errorf("the page shifts by %.3f, want at most %.1f: %q", total, mostShift, moved)
			}
			t.Logf("the page shifts by %.3f", total)
			// A shift that is made is seen, or the test would pass without looking.
			eval[bool](tb, `(document.querySelector("main").style.marginTop = "200px", true)`)
			eval[bool](tb, `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))`)
			if now, _ := tb.shifts(); now <= total {
				t.Errorf("moved by 200 px the page shifts by %.3f, as before", now)
			}
		})
	}
}

// shifts is how far the page has moved by itself since it was loaded, as a share
// of the window, and what moved: how far and from where to where, in pixels.
func (tb *tab) shifts() (total float64, moved []string) {
	tb.t.Helper()
	type shifts struct {
		Total float64
		Moved []string
	}
	s := eval[shifts](tb, `new Promise((done) => {
		const name = (node) => node?.id ? "#" + node.id : (node?.parentElement ? name(node.parentElement) + " > " : "") + (node?.className || node?.nodeName);
		const told = {Total: 0, Moved: []};
		new PerformanceObserver((list) => {
			for (const {value, hadRecentInput, startTime, sources} of list.getEntries()) {
				if (hadRecentInput) continue;
				told.Total += value;
				told.Moved.push(Math.round(startTime) + " ms: " + value.toFixed(3) + " " + sources.map(({node, previousRect: a, currentRect: b}) => name(node) + " " + [a.x, a.y, a.width, a.height].map(Math.round) + " to " + [b.x, b.y, b.width, b.height].map(Math.round)).join("; "));
			}
		}).observe({type: "layout-shift", buffered: true});
		setTimeout(() => done(told), 300); // entries of the past come in a task of their own
	})`)
	return s.Total, s.Moved
}
