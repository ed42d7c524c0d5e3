//go:build browser

package browsertest

import (
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// finger does one thing with one finger: touchEnd where it last was.
func (tb *tab) finger(kind input.DispatchTouchEventType, at ...*input.TouchPoint) {
	tb.t.Helper()
	if _, err := chromedp.Call(tb.ctx, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: at}); err != nil {
		tb.t.Fatal(err)
	}
}

// fingerOn puts a finger on the middle of an element and moves it dx, dy px on; how far
// the page has scrolled by then is returned.
func (tb *tab) fingerOn(selector string, dx, dy float64) (scrolled float64) {
	tb.t.Helper()
	at := tb.middle(selector)
	before := eval[float64](tb, "scrollY")
	tb.finger(input.DispatchTouchEventTypeTouchStart, &input.TouchPoint{X: at[0], Y: at[1]})
	const steps = 4
	for i := 1.0; i <= steps; i++ {
		tb.finger(input.DispatchTouchEventTypeTouchMove, &input.TouchPoint{X: at[0] + dx*i/steps, Y: at[1] + dy*i/steps})
	}
	return eval[float64](tb, "scrollY") - before
}

// A finger drags a wall and the tee without scrolling the page; beside them it scrolls.
func fingerDrags(t *testing.T, tb *tab) {
	undone := func(address string) {
		t.Helper()
		tb.find("button", "Undo").click()
		tb.until("the plan as it was", `location.hash === `+quote(address)+` && `+settled)
	}
	tb.openSheet("room")
	address := eval[string](tb, "location.hash")
	if d := tb.fingerOn("[data-wall=width] .wall-knob", 0, -40); d != 0 {
		t.Errorf("a finger on a wall scrolls the page by %g px", d)
	}
	tb.until("the wall's label", `document.querySelector("[data-wall=width] .wall-label").textContent !== ""`)
	tb.finger(input.DispatchTouchEventTypeTouchEnd)
	tb.until("another room", `location.hash !== `+quote(address)+` && `+roomAnswered)
	undone(address)

	tb.openSheet("stand")
	address = eval[string](tb, "location.hash")
	before := tb.section(".map-reading")
	if d := tb.fingerOn(".handle-tee .handle-ring", -10, -60); d != 0 {
		t.Errorf("a finger on the tee scrolls the page by %g px", d)
	}
	tb.until("another reading", `document.querySelector(".map-reading").innerText !== `+quote(before))
	tb.finger(input.DispatchTouchEventTypeTouchEnd)
	tb.until("the tee elsewhere", `location.hash !== `+quote(address)+` && `+settled)
	undone(address)

	if d := tb.fingerOn("#view-plan figcaption", 0, -120); d < 30 {
		t.Errorf("a finger beside the drawing scrolls the page by %g px, want it to", d)
	}
	tb.finger(input.DispatchTouchEventTypeTouchEnd)
	tb.openSheet("room")
}
