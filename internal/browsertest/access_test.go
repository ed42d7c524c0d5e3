//go:build browser

package browsertest

import (
	"slices"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// narrowest is the width at which nothing may need scrolling sideways (WCAG 2.2, 1.4.10
// Reflow): what four times zoom leaves of a desktop.
var narrowest = size{"narrowest", 320, 640}

// lowest is as wide, and as high as that zoom leaves of it.
var lowest = size{"lowest", 320, 256}

// Tab goes through the whole first sheet and out of it again, and shows where it
// is. With the scene there, it passes that too.
func keyboardWalk(t *testing.T, tb *tab) {
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

// widest names what sticks out of the page on the right.
func (tb *tab) widest() string {
	tb.t.Helper()
	return eval[string](tb, `[...document.querySelectorAll("body *")].filter((e) => e.getBoundingClientRect().right > innerWidth + 1)
		.slice(0, 6).map((e) => e.tagName + "#" + e.id + "." + e.getAttribute("class")).join(", ")`)
}

// Status messages are live regions from the start (WCAG 2.2, 4.1.3): a region
// that comes together with its text is not announced. The verdict's speaks of an
// answer once, and not of a tee on its way.
func liveRegions(t *testing.T, tb *tab) {
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

// The 3D scene on a phone.
func TestSceneOnAPhone(t *testing.T) {
	onePage(t, withGL, phone, light,
		fact{"less motion", func(t *testing.T, tb *tab) { moves(t, tb, false) }},
		fact{"plays", scenePlays})
}

// What moves for everybody else, so that the test of less motion would see it, on a page
// whose scene does not come at first.
func TestMotion(t *testing.T) {
	t.Parallel()
	tb := open(t, withGL, phone)
	tb.prefer("prefers-reduced-motion", "no-preference")
	tb.withhold("scene/scene.js")
	tb.goTo(light)
	tb.ready()
	tb.triesSceneAgain("did not come")
	tb.withhold("build/scene.wasm")
	tb.find("button", "Show the 3D model").click()
	tb.triesSceneAgain("could not be loaded")
	tb.withhold()
	tb.find("button", "Show the 3D model").click()
	moves(t, tb, true)
}

// triesSceneAgain waits until the page says in words why there is no scene and offers it:
// the drawings stand meanwhile, and nothing seems to be under way.
func (tb *tab) triesSceneAgain(why string) {
	tb.t.Helper()
	tb.until("a sentence: "+why, `document.querySelector(".stage-note [role=status]").innerText.includes(`+quote(why)+`)`)
	if got := eval[string](tb, `[...document.querySelectorAll(".stage-note progress:not([hidden]), .stage-scene iframe, .stage-picture.is-solid")].map((e) => e.outerHTML).join()`); got != "" {
		tb.t.Errorf("%s: on the page is still %s", why, got)
	}
}

// moves holds the page to moving by itself or not: for somebody who asked for less
// motion the swing stands at its tightest moment, and another view of the scene is
// there at once.
func moves(t *testing.T, tb *tab, want bool) {
	eval[bool](tb, `(window.told = [], addEventListener("message", ({data}) => { if (data?.type === "state") told.push(data); }), true)`)
	eval[bool](tb, `(document.querySelector("#stage").scrollIntoView({behavior: "instant"}), true)`)
	tb.loadScene()
	if want {
		tb.until("the scene to move", `told.some((state) => state.moving)`)
	} else if tightest := eval[bool](tb, `((slider) => Math.abs(slider.value - slider.dataset.tightest) < 1e-6)(document.querySelector("#stage-slider"))`); !tightest {
		t.Errorf("the swing is at %s, want its tightest moment", tb.moment())
	}
	if played := eval[string](tb, `document.querySelector("#stage-play").innerText`) == "Pause"; played != want {
		t.Errorf("the swing plays by itself: %t, want %t", played, want)
	}
	// While it plays, slowly, the scene tells of itself all the time, gliding
	// or not.
	rate := tb.find("combobox", "Speed")
	usual := rate.value()
	set := func(value string) {
		call[bool](tb, rate.object, `function() { this.value = `+quote(value)+`; this.dispatchEvent(new Event("change")); return true; }`)
	}
	set("0.0625")
	if !want {
		tb.find("button", "Play").click()
	}
	tb.until("the swing to move", `told.at(-1)?.moving`)
	eval[bool](tb, `(told.length = 0, true)`)
	tb.find("button", "From above").click()
	tb.until("a while of the view from above", `told.filter((state) => state.view === "above").length >= 10`)
	if glides := eval[bool](tb, `told.some((state) => state.view === "above" && state.left > 0)`); glides != want {
		t.Errorf("the view glided: %t, want %t", glides, want)
	}
	set(usual)
}

// The dark scheme is the same page by lamplight: as legible.
func darkScene(t *testing.T, tb *tab) {
	tb.prefer("prefers-color-scheme", "dark")
	tb.loadScene()
	tb.axe("in the dark scheme with the scene")
	tb.prefer("prefers-color-scheme", "light")
}
