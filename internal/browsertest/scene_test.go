//go:build browser

package browsertest

import (
	"fmt"
	"image/color"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// vermilion is the one loud colour: only a strike is drawn in it.
var vermilion = color.RGBA{0xD9, 0x38, 0x1E, 0xFF}

// shade is how far a pixel may lie from a colour, per channel, and still be it:
// edges are smoothed and some marks are translucent.
const shade = 24

// loadScene waits until the 3D scene has come and taken the stage.
func (tb *tab) loadScene() {
	tb.t.Helper()
	tb.showStage()
	tb.until("the scene", `document.querySelector(".stage-picture.is-solid") !== null && document.querySelector(".stage-picture").dataset.t !== undefined`)
}

// showStage brings the stage into view, where it asks for the swing of the answer,
// and waits until it has it.
func (tb *tab) showStage() {
	tb.t.Helper()
	eval[bool](tb, `(document.querySelector("#stage-root").scrollIntoView({block: "start", behavior: "instant"}), true)`)
	tb.until("the swing on the stage", `document.querySelector("#stage-root").dataset.ready === "yes"`)
}

// moment is the time, the phase and what is nearest, as the slider has it.
func (tb *tab) moment() string {
	tb.t.Helper()
	return eval[string](tb, `document.querySelector("#stage-slider").getAttribute("aria-valuetext")`)
}

// playHead is where the slider stands, s; finer than its words.
func (tb *tab) playHead() float64 {
	tb.t.Helper()
	return eval[float64](tb, `Number(document.querySelector("#stage-slider").value)`)
}

// seekTightest goes to the tightest moment of the answer.
func (tb *tab) seekTightest() {
	tb.t.Helper()
	tb.showStage()
	tb.find("button", "Tightest").click()
	tb.until("the tightest moment", `(({ value, dataset }) => document.querySelector("#stage-play").innerText === "Play" && Math.abs(value - dataset.tightest) < 1e-6)(document.querySelector("#stage-slider"))`)
}

// untilDrawn waits until the scene has drawn the answer's swing at the moment of
// the slider.
func (tb *tab) untilDrawn() {
	tb.t.Helper()
	tb.showStage()
	tb.until("the scene to be drawn", `(({ value, dataset }, drawn) => Math.abs(value - drawn.t) < 1e-3 && Math.abs(dataset.tightest - drawn.tightest) < 1e-3)(document.querySelector("#stage-slider"), document.querySelector(".stage-picture").dataset)`)
}

// strikes counts the loud pixels of the scene as it is drawn now.
func (tb *tab) strikes() int {
	tb.t.Helper()
	tb.untilDrawn()
	eval[bool](tb, `(document.querySelector(".stage-picture").scrollIntoView({block: "center", behavior: "instant"}), true)`)
	img, _ := tb.picture()
	frame := tb.rect(".stage-scene iframe")
	if n := colours(img, frame); n < 4 {
		tb.t.Fatalf("the scene has %d colours: it is blank", n)
	}
	return count(img, frame, vermilion, shade)
}

// fewest is the fewest loud pixels that make a mark a person can see.
const fewest = 30

// The 3D scene in the page.
func TestScene(t *testing.T) {
	onePage(t, withGL, desktop, light,
		fact{"keyboard walk", keyboardWalk},
		fact{"dark", darkScene},
		fact{"first touch", firstTouch},
		fact{"strike mark", strikeMark})
}

// At the frame of the strike the mark is on the surface; one frame on and one
// back, it is still there or gone with the club, and the controls say when. A
// room that is clear shows none.
func strikeMark(t *testing.T, tb *tab) {
	tb.openPlan(filepath.Join(plansDir, "low-ceiling.json"))
	tb.loadScene()
	tb.seekTightest()
	if n := tb.strikes(); n < fewest {
		t.Errorf("at the tightest moment (%s) the scene has %d pixels of the strike's colour, want at least %d", tb.moment(), n, fewest)
	}

	// The tightest moment lies between two frames: on and back leads to one of them.
	at := tb.playHead()
	tb.find("button", "One frame forward").click()
	tb.until("the next frame", fmt.Sprintf(`document.querySelector("#stage-slider").value > %v`, at))
	tb.find("button", "One frame back").click()
	tb.until("the frame before", fmt.Sprintf(`Math.abs(document.querySelector("#stage-slider").value - %v) <= 1 / 60`, at))

	tb.openPlan(filepath.Join(plansDir, "clear-room.json"))
	tb.seekTightest()
	if n := tb.strikes(); n >= fewest {
		t.Errorf("in a clear room the scene has %d pixels of the strike's colour, want none", n)
	}
	if got := tb.stars(); got != 0 || eval[bool](tb, `document.querySelector(".stage-ticks .is-strikes") !== null`) {
		t.Errorf("in a clear room there are %d strike marks, or one on the timeline", got)
	}
}

// reddish is what a map of strikes makes of the floor, yellowish what light makes of the
// screen; 16 bits a channel.
func reddish(r, g, b uint32) bool   { return r > g+g/6 && r > b+b/6 }
func yellowish(r, g, b uint32) bool { return r < g+g/8 && r > b+b/8 }

// untilColoured waits until so many pixels of the scene are of some colour that enough
// says yes, and returns their number.
func (tb *tab) untilColoured(what string, colour func(r, g, b uint32) bool, enough func(n int) bool) int {
	tb.t.Helper()
	frame := tb.rect(".stage-scene iframe")
	for end := time.Now().Add(patience); ; {
		img, _ := tb.picture()
		n := 0
		for y := frame.Min.Y; y < frame.Max.Y; y++ {
			for x := frame.Min.X; x < frame.Max.X; x++ {
				if r, g, b, _ := img.At(x, y).RGBA(); colour(r, g, b) {
					n++
				}
			}
		}
		if enough(n) {
			return n
		}
		if time.Now().After(end) {
			tb.t.Fatalf("waited for %s: %d pixels of its colour", what, n)
		}
	}
}

// The scene goes where the page's clock is, while it plays and at rest, and its
// views are a press away.
func scenePlays(t *testing.T, tb *tab) {
	tb.loadScene()
	tb.seekTightest()
	tb.untilDrawn()
	tb.find("button", "Play").click()
	tb.until("the scene to move", `((drawn, slider) => Math.abs(drawn.t - slider.dataset.tightest) > 0.05)(document.querySelector(".stage-picture").dataset, document.querySelector("#stage-slider"))`)
	tb.find("button", "Pause").click()
	tb.until("the swing to stop", `document.querySelector("#stage-play").innerText === "Play"`)
	tb.untilDrawn()
	for _, view := range []string{"From behind", "Face-on", "From above", "From the target"} {
		tb.find("button", view).click()
		tb.until("the view "+view, `[...document.querySelectorAll(".stage-bar [aria-pressed=true]")].some((button) => (button.getAttribute("aria-label") ?? button.innerText) === `+quote(view)+`)`)
	}

	// What strangers say is heard neither by the page nor by the scene: another origin in
	// the scene's or the page's name, and windows of our own that are neither.
	tb.seekTightest()
	tb.untilDrawn()
	read := func() string {
		return tb.section(".stage-note") + tb.moment() + eval[string](tb, `[...document.querySelectorAll(".stage-bar [aria-pressed=true]")].map((b) => b.getAttribute("aria-label") ?? b.innerText).join() + document.querySelector(".stage-picture").className`)
	}
	known := read()
	eval[bool](tb, `(() => {
		const its = document.querySelector(".stage-scene iframe").contentWindow;
		const tell = (whom, data, origin, source) => whom.dispatchEvent(new whom.MessageEvent("message", {data, origin, source}));
		const strangers = (whom, owner, all) => all.forEach((data) => [["https://elsewhere.example", owner], ["null", owner], [location.origin, whom], [location.origin, null]].forEach(([origin, source]) => tell(whom, data, origin, source)));
		strangers(window, its, [{type: "failed", message: "Send money."}, {type: "state", view: "above", t: 9}, {type: "ready"}, {type: "picture"}, null, 7]);
		strangers(its, window, [{type: "view", name: "above"}, {type: "seek", t: 0}, {type: "theme", dark: true}]);
		return true;
	})()`)
	tb.find("button", "Play").click()
	tb.find("button", "Pause").click()
	tb.seekTightest()
	tb.untilDrawn()
	if got := read(); got != known {
		t.Errorf("after strangers' messages the page reads %q, want %q", got, known)
	}

	// The map of where to stand is laid on the floor, and taken away again.
	tb.find("button", "From above").click()
	tb.until("the view to settle", `document.querySelector("[aria-label='From above']").getAttribute("aria-pressed") === "true"`)
	eval[bool](tb, `([...document.querySelectorAll(".stage-corners details")].at(-1).open = true)`)
	floor := tb.find("button", "Floor map: where to stand")
	bare := tb.untilColoured("no map", reddish, func(n int) bool { return true })
	floor.click()
	tb.untilColoured("the map on the floor", reddish, func(n int) bool { return n > bare+1000 })
	floor.click()
	tb.untilColoured("the floor bare again", reddish, func(n int) bool { return n < bare+1000 })

	// The image is lit on the screen, with the shadow on it, and taken away again.
	tb.find("button", "From behind").click()
	tb.until("the view from behind", `document.querySelector("[aria-label='From behind']").getAttribute("aria-pressed") === "true"`)
	shadow := tb.find("button", "Shadow of golfer and club on the image")
	before := -1
	dark := tb.untilColoured("the view at rest", yellowish, func(n int) bool {
		rests := n == before
		before = n
		return rests
	})
	shadow.click()
	tb.untilColoured("the image on the screen", yellowish, func(n int) bool { return n > dark+1000 })
	shadow.click()
	tb.untilColoured("the screen dark again", yellowish, func(n int) bool { return n < dark+1000 })

	// A browser may take the picture away: the drawings stand in, and it comes back as it was seen.
	tb.find("button", "From above").click()
	tb.until("the view to settle", `document.querySelector("[aria-label='From above']").getAttribute("aria-pressed") === "true"`)
	drawings := `!document.querySelector(".stage-picture").classList.contains("is-solid")`
	eval[bool](tb, `(() => {
		addEventListener("message", ({data}) => { if (data?.type === "state") window.viewed = data.view; });
		document.querySelector(".stage-scene iframe").contentDocument.querySelector("canvas").getContext("webgl2").getExtension("WEBGL_lose_context").loseContext();
		return true;
	})()`)
	tb.until("the drawings instead", drawings)
	tb.until("the scene again, from above", `document.querySelector(".stage-picture.is-solid") && window.viewed === "above"`)

	tb.find("button", "Drawings").click()
	tb.until("the drawings", drawings)
	if strings.Contains(tb.moment(), "NaN") {
		t.Errorf("the moment reads %q", tb.moment())
	}
}
