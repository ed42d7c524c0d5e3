//go:build browser

package browsertest

import (
	"fmt"
	"image/color"
	"path/filepath"
	"strings"
	"testing"
)

// vermilion is the one loud colour: only a strike is drawn in it.
var vermilion = color.RGBA{0xD9, 0x38, 0x1E, 0xFF}

// shade is how far a pixel may lie from a colour, per channel, and still be it:
// edges are smoothed and some marks are translucent.
const shade = 24

// loadScene asks for the 3D view by its button and waits until it is drawn.
func (tb *tab) loadScene() {
	tb.t.Helper()
	if eval[bool](tb, `!document.querySelector("#stage-load").hidden`) {
		tb.find("button", "Show the swing in 3D").click()
	}
	tb.until("the scene", `document.querySelector("#stage-frame").classList.contains("is-ready") && /\d s, /.test(document.querySelector("#stage-moment").innerText)`)
}

// moment is the time and phase under the scrubber.
func (tb *tab) moment() string {
	tb.t.Helper()
	return eval[string](tb, `document.querySelector("#stage-moment").innerText`)
}

// playHead is where the scrubber stands, s; finer than the words under it.
func (tb *tab) playHead() float64 {
	tb.t.Helper()
	return eval[float64](tb, `Number(document.querySelector("#stage-scrub").value)`)
}

// seekTightest goes to the tightest moment and waits until the scene is there.
func (tb *tab) seekTightest() {
	tb.t.Helper()
	tb.until("the swing in the scene", `document.querySelector("#stage-scrub").dataset.tightest !== undefined`)
	tb.find("button", "Tightest moment").click()
	tb.until("a still scene", `(({ value, dataset }) => document.querySelector("#stage-play").innerText === "Play" && Math.abs(value - dataset.tightest) < 0.005)(document.querySelector("#stage-scrub"))`)
}

// strikes counts the loud pixels of the scene as it is drawn now.
func (tb *tab) strikes() int {
	tb.t.Helper()
	eval[bool](tb, `(document.querySelector("#stage-frame").scrollIntoView({block: "center", behavior: "instant"}), true)`)
	img, _ := tb.picture()
	frame := tb.rect("#stage-frame iframe")
	if n := colours(img, frame); n < 4 {
		tb.t.Fatalf("the scene has %d colours: it is blank", n)
	}
	return count(img, frame, vermilion, shade)
}

// fewest is the fewest loud pixels that make a mark a person can see.
const fewest = 30

// At the frame of the strike the mark is on the surface; one frame on and one
// back, it is still there or gone with the club, and the controls say when. A
// room that is clear shows none.
func TestStrikeMark(t *testing.T) {
	t.Parallel()
	tb := openPage(t, withGL, desktop, "/")
	tb.openPlan(filepath.Join(plansDir, "low-ceiling.json"))
	tb.loadScene()
	tb.seekTightest()
	if n := tb.strikes(); n < fewest {
		t.Errorf("at the tightest moment (%s) the scene has %d pixels of the strike's colour, want at least %d", tb.moment(), n, fewest)
	}

	// The tightest moment lies between two frames, perhaps just before the next: two
	// frames on are seen to move the scrubber, two back lead to the frame before it.
	at := tb.playHead()
	for range 2 {
		tb.find("button", "One frame forward").click()
	}
	tb.until("the next frames", fmt.Sprintf(`document.querySelector("#stage-scrub").value > %v`, at+0.002))
	for range 2 {
		tb.find("button", "One frame back").click()
	}
	tb.until("the same frame again", fmt.Sprintf(`Math.abs(document.querySelector("#stage-scrub").value - %v) <= 1 / 240 + 1e-3`, at))

	tb.openPlan(filepath.Join(plansDir, "clear-room.json"))
	tb.seekTightest()
	if n := tb.strikes(); n >= fewest {
		t.Errorf("in a clear room the scene has %d pixels of the strike's colour, want none", n)
	}
}

// Playing moves the moment on, and pausing stops it.
func TestPlay(t *testing.T) {
	t.Parallel()
	tb := openPage(t, withGL, phone, "/")
	tb.loadScene()
	tb.seekTightest()
	at := tb.moment()
	tb.find("button", "Play").click()
	tb.until("the swing to move", `document.querySelector("#stage-moment").innerText !== `+quote(at)+` && document.querySelector("#stage-play").innerText === "Pause"`)
	tb.find("button", "Pause").click()
	tb.until("the swing to stop", `document.querySelector("#stage-play").innerText === "Play"`)
	for _, view := range []string{"From behind", "Face-on", "From above", "From the target"} {
		tb.find("button", view).click()
	}
	if strings.Contains(tb.moment(), "NaN") {
		t.Errorf("the moment reads %q", tb.moment())
	}
}
