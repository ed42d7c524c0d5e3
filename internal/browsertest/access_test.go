//go:build browser

package browsertest

import (
	"slices"
	"testing"

	"github.com/chromedp/chromedp"
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
	tb.goTo(light)
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
		"A#tab-swing", "BUTTON#share", "BUTTON#plans", "SELECT#strip-who", "INPUT#strip-height", "INPUT#strip-club", "INPUT#strip-slide", "INPUT#strip-back",
		"BUTTON#stage-play", "INPUT#stage-slider",
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
	tb := openPage(t, noGL, narrowest, light)
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
	// The same desktop, four times as large, is low as well.
	tb.do(chromedp.EmulateViewport(narrowest.width, 256))
	if over := eval[[]string](tb, `[...document.querySelectorAll("body *")].filter((e) => e.checkVisibility() && ["fixed", "sticky"].includes(getComputedStyle(e).position)).map((e) => e.className)`); len(over) > 0 {
		t.Errorf("in a low window %q lies over the page", over)
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
	tb := openPage(t, noGL, desktop, light)
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

// Nothing moves by itself for somebody who asked for less motion: the swing stands
// at its tightest moment, and another view of the scene is there at once. For
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
			tb.goTo(light)
			tb.ready()
			eval[bool](tb, `(window.told = [], addEventListener("message", ({data}) => { if (data.type === "state") told.push(data); }), true)`)
			eval[bool](tb, `(document.querySelector("#stage").scrollIntoView({behavior: "instant"}), true)`)
			tb.loadScene()
			if tt.moves {
				tb.until("the scene to move", `told.some((state) => state.moving)`)
			} else if tightest := eval[bool](tb, `((slider) => Math.abs(slider.value - slider.dataset.tightest) < 1e-6)(document.querySelector("#stage-slider"))`); !tightest {
				t.Errorf("the swing is at %s, want its tightest moment", tb.moment())
			}
			if played := eval[string](tb, `document.querySelector("#stage-play").innerText`) == "Pause"; played != tt.moves {
				t.Errorf("the swing plays by itself: %t, want %t", played, tt.moves)
			}
			// While it plays, slowly, the scene tells of itself all the time, gliding
			// or not.
			eval[bool](tb, `(() => {
				const rate = document.querySelector("select[aria-label=Speed]");
				rate.value = "0.0625";
				rate.dispatchEvent(new Event("change"));
				if (document.querySelector("#stage-play").innerText === "Play") document.querySelector("#stage-play").click();
				return true;
			})()`)
			tb.until("the swing to move", `told.at(-1)?.moving`)
			eval[bool](tb, `(told.length = 0, true)`)
			tb.find("button", "From above").click()
			tb.until("a while of the view from above", `told.filter((state) => state.view === "above").length >= 10`)
			if glides := eval[bool](tb, `told.some((state) => state.view === "above" && state.left > 0)`); glides != tt.moves {
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
	tb.goTo(light)
	tb.ready()
	tb.loadScene()
	tb.axe("in the dark scheme with the scene")
}
