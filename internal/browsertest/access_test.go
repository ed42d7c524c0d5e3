//go:build browser

package browsertest

import (
	"slices"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// narrowest is the width at which nothing may need scrolling sideways
// (WCAG 2.2, 1.4.10 Reflow).
var narrowest = size{"narrowest", 320, 640}

// Tab goes through the whole first sheet and out of it again, and shows where it
// is. With the scene there, it passes that too.
func TestKeyboardWalk(t *testing.T) {
	t.Parallel()
	tb := open(t, withGL, desktop)
	tb.prefer("prefers-reduced-motion", "reduce") // no smooth scrolling: a focus is in view at once
	tb.goTo("/")
	tb.ready()
	tb.loadScene()
	eval[bool](tb, `(document.querySelector("a").focus(), true)`) // the first stop of the page

	type stop struct {
		Key     string
		Nth     int // place among all elements: names need not be unique
		Frame   bool
		Stage   bool
		Visible bool
		Ringed  bool
	}
	const here = `(() => {
		const e = document.activeElement;
		if (!e || e === document.body) return {Key: ""};
		const r = e.getBoundingClientRect(), s = getComputedStyle(e);
		const hit = document.elementFromPoint(r.left + r.width / 2, r.top + r.height / 2);
		return {
			Nth: [...document.querySelectorAll("*")].indexOf(e),
			Key: e.tagName + "#" + (e.id || e.dataset.key || e.dataset.path || e.dataset.view || e.dataset.act || e.dataset.orbit || e.dataset.zoom || e.innerText || e.value),
			Frame: e.tagName === "IFRAME",
			Stage: e.closest("#stage") !== null && e.tagName !== "IFRAME",
			Visible: r.width > 0 && r.height > 0 && r.bottom > 0 && r.top < innerHeight && (hit === e || e.contains(hit) || !!hit?.closest("label, fieldset, summary")),
			Ringed: (s.outlineStyle !== "none" && parseFloat(s.outlineWidth) >= 1) || s.boxShadow !== "none",
		};
	})()`
	const limit = 500
	seen, been := map[string]bool{}, map[int]bool{}
	inFrame, onStage := 0, 0
	for press := range limit {
		tb.press(kb.Tab)
		at := eval[stop](tb, here)
		if at.Key == "" || (press > 5 && been[at.Nth] && !at.Frame) {
			break // out of the page, or round it
		}
		if at.Frame {
			if inFrame++; inFrame > 4 {
				t.Fatalf("Tab stays in the scene's frame")
			}
		} else {
			if !at.Visible {
				t.Errorf("%s has the focus and cannot be seen", at.Key)
			}
			if !at.Ringed {
				t.Errorf("%s has the focus and does not show it", at.Key)
			}
		}
		if at.Stage {
			onStage++
		}
		seen[at.Key], been[at.Nth] = true, true
		if press == limit-1 {
			t.Fatalf("%d times Tab did not leave the page", limit)
		}
	}
	for _, want := range []string{
		"A#tab-swing", "BUTTON#copy", "SELECT#strip-who", "INPUT#strip-height", "INPUT#strip-club", "INPUT#strip-slide", "INPUT#strip-back",
	} {
		if !seen[want] {
			t.Errorf("Tab never came to %s", want)
		}
	}
	if onStage < 2 {
		t.Errorf("Tab came to %d controls of the stage", onStage)
	}
}

// At 320 CSS pixels, which is also what four times zoom leaves of a desktop, no
// sheet needs scrolling sideways.
func TestReflow(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, narrowest, "/")
	for _, sheet := range sheets {
		t.Run(sheet, func(t *testing.T) {
			tb.in(t)
			tb.openSheet(sheet)
			if over := tb.sideways(); over > 0 {
				t.Errorf("at 320 px the page is %d px too wide; the widest: %s", over, tb.widest())
			}
			tb.axe("at 320 px")
		})
	}
}

// widest names what sticks out of the page on the right.
func (tb *tab) widest() string {
	tb.t.Helper()
	return eval[string](tb, `[...document.querySelectorAll("body *")].filter((e) => e.getBoundingClientRect().right > innerWidth + 1)
		.slice(0, 6).map((e) => e.tagName + "#" + e.id + "." + e.getAttribute("class")).join(", ")`)
}

// Status messages are live regions from the start (WCAG 2.2, 4.1.3): a region
// that comes together with its text is not announced. The verdict's speaks of an
// answer once, and not of a tee on its way.
func TestLiveRegions(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, "/")
	raw := eval[string](tb, `fetch("/").then((r) => r.text())`)
	live := eval[[]string](tb, `[...new DOMParser().parseFromString(`+quote(raw)+`, "text/html").querySelectorAll("[role=status]:empty")].map((e) => e.id)`)
	for _, want := range []string{"verdict", "notice", "map-live", "ball-summary"} {
		if !slices.Contains(live, want) {
			t.Errorf("the page as it arrives has the empty live regions %q, want %q among them", live, want)
		}
	}
	eval[bool](tb, `(window.spoken = 0, new MutationObserver((seen) => { spoken += seen.length; }).observe(document.querySelector("#verdict"), {childList: true}), true)`)
	tb.find("radio", "Left").click()
	tb.until("another verdict", settled+` && spoken > 0`)
	if n := eval[int](tb, `spoken`); n != 1 {
		t.Errorf("one answer changed the live region %d times", n)
	}
}

// Nothing moves by itself for somebody who asked for less motion: the swing does
// not start when its model is fetched, and another view is there at once. For
// everybody else both move, so the test would see it if these did.
func TestReducedMotion(t *testing.T) {
	t.Parallel()
	for _, tt := range []struct {
		name, motion string
		moves        bool
	}{
		{"less motion", "reduce", false},
		{"motion", "no-preference", true},
	} {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			tb := open(t, withGL, phone)
			tb.prefer("prefers-reduced-motion", tt.motion)
			tb.goTo("/")
			tb.ready()
			eval[bool](tb, `(window.told = [], addEventListener("message", ({data}) => { if (data.type === "state") told.push(data); }), true)`)
			// By script, because a mouse would first scroll there, which fetches the
			// model too, but does not ask for it to play.
			eval[bool](tb, `(document.querySelector("#stage-load").click(), true)`)
			// What the scene is told it answers in turn: once it has gone to another
			// view, whatever was to start before has shown up.
			tb.until("the scene", `told.length > 0`)
			tb.find("button", "Face-on").click()
			tb.until("the view face-on", `told.some((state) => state.view === "face-on")`)
			if played := eval[bool](tb, `told.some((state) => state.playing)`); played != tt.moves {
				t.Errorf("the swing started by itself: %t, want %t", played, tt.moves)
			}
			// While it plays, slowly, the scene tells of itself all the time, gliding
			// or not.
			eval[bool](tb, `(() => {
				const rate = document.querySelector("#stage-rate");
				rate.value = "0.1";
				rate.dispatchEvent(new Event("change"));
				if (document.querySelector("#stage-play").innerText === "Play") document.querySelector("#stage-play").click();
				return true;
			})()`)
			tb.until("the swing to move", `told.at(-1).playing`)
			eval[bool](tb, `(told.length = 0, true)`)
			tb.find("button", "From above").click()
			tb.until("a while of the view from above", `told.filter((state) => state.view === "above").length >= 10`)
			if glides := eval[int](tb, `new Set(told.filter((state) => state.view === "above").map((state) => state.pitch)).size`) > 1; glides != tt.moves {
				t.Errorf("the view glided: %t, want %t", glides, tt.moves)
			}
		})
	}
}

// The dark scheme is the same page by lamplight: as legible.
func TestDark(t *testing.T) {
	t.Parallel()
	tb := open(t, withGL, desktop)
	tb.prefer("prefers-color-scheme", "dark")
	tb.goTo("/")
	tb.ready()
	tb.loadScene()
	tb.axe("in the dark scheme with the scene")
}
