//go:build browser

package browsertest

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// The moving swing without the scene.
func TestStage(t *testing.T) {
	onePage(t, noGL, desktop, light,
		fact{"targets", stageTargets(24)},
		fact{"model error", modelError},
		fact{"steps", stageSteps},
		fact{"strikes", stageStrikes},
		fact{"without WebGL", withoutWebGL})
}

// The moving swing on a phone.
func TestStageOnAPhone(t *testing.T) {
	onePage(t, noGL, phone, light,
		fact{"at rest", stageStill},
		fact{"targets", stageTargets(44)})
}

// golfer is the large drawing's moving layer as it is painted now.
func (tb *tab) golfer() string {
	tb.t.Helper()
	return eval[string](tb, `(() => {
		const large = document.querySelector(".stage-flat").dataset.large;
		return document.querySelector('.stage-view[data-view="' + large + '"] canvas:not(.stage-swept)').toDataURL();
	})()`)
}

// line is what the timeline says is nearest.
func (tb *tab) line() string {
	tb.t.Helper()
	return eval[string](tb, `document.querySelector(".stage-line").innerText`)
}

// The golfer swings without anything being pressed, from address on, pauses when
// asked, and an edit leaves the clock where it is.
func TestStageMoves(t *testing.T) {
	t.Parallel()
	tb := open(t, noGL, desktop)
	tb.prefer("prefers-reduced-motion", "no-preference")
	tb.goTo(light)
	tb.ready()
	tb.showStage()
	before := tb.golfer()
	tb.until("the swing to move", `document.querySelector("#stage-slider").value > 0.2`)
	if tb.golfer() == before {
		t.Error("the slider has moved and the golfer has not")
	}
	tb.find("button", "Pause").click()
	tb.until("the swing to stop", `document.querySelector("#stage-play").innerText === "Play"`)
	at, seen := tb.playHead(), tb.golfer()
	tb.frames60(20)
	if tb.playHead() != at || tb.golfer() != seen {
		t.Errorf("paused at %v s, it went on to %v s", at, tb.playHead())
	}
	tb.seekTightest()
	phase := strings.Split(tb.moment(), ":")[0]
	phase = phase[strings.Index(phase, ",")+1:]
	tb.openPlan(filepath.Join(plansDir, "low-ceiling.json"))
	tb.showStage()
	if got := tb.moment(); !strings.Contains(got, phase) {
		t.Errorf("after another plan the clock says %q, want it still in the%s", got, phase)
	}
}

// frames60 lets the page paint some frames.
func (tb *tab) frames60(n int) {
	tb.t.Helper()
	eval[bool](tb, fmt.Sprintf(`new Promise((done) => {
		let left = %d;
		const frame = () => (left-- > 0 ? requestAnimationFrame(frame) : done(true));
		frame();
	})`, n))
}

// Who asked for less motion sees the tightest moment at rest, and may play it.
func stageStill(t *testing.T, tb *tab) {
	tb.showStage()
	still := `((slider) => Math.abs(slider.value - slider.dataset.tightest) < 1e-6)(document.querySelector("#stage-slider"))`
	tb.frames60(20)
	if !eval[bool](tb, still) {
		t.Errorf("the swing is at %s, want it at rest at its tightest moment", tb.moment())
	}
	tape := `!document.querySelector('.stage-view[data-view="face"] .pull').classList.contains("is-away")`
	if !eval[bool](tb, tape) {
		t.Error("at the tightest moment the tape is not shown")
	}
	tb.find("button", "Play").click()
	tb.until("the swing to move", `!`+still)
	tb.until("the tape to go", `!(`+tape+`)`)
}

// A step changes what is said, by its button and by its keys; Shift steps finer.
func stageSteps(t *testing.T, tb *tab) {
	tb.showStage()
	tb.seekTightest()
	said := tb.line()
	for range 2 { // the clubhead turns back at the tightest moment: the first step may read the same
		tb.find("button", "One frame forward").click()
	}
	if got := tb.line(); got == said || !strings.Contains(got, " mph") {
		t.Errorf("two frames on it says %q, before %q", got, said)
	}
	status := `[...document.querySelectorAll("#stage-root [role=status]")].some((at) => at.innerText.includes(` + quote(tb.line()) + `))`
	if !eval[bool](tb, status) {
		t.Errorf("the step to %q is not announced", tb.line())
	}
	eval[bool](tb, `(document.querySelector("#stage-slider").focus(), true)`)
	for _, step := range []struct {
		key       string
		modifiers []chromedp.KeyOption
		want      float64 // s
	}{
		{".", nil, 1.0 / 60}, {",", nil, -1.0 / 60}, {">", []chromedp.KeyOption{chromedp.KeyModifiers(chromedp.ModifierShift)}, 1.0 / 240},
		{"<", []chromedp.KeyOption{chromedp.KeyModifiers(chromedp.ModifierShift)}, -1.0 / 240},
	} {
		at := tb.playHead()
		tb.do(chromedp.KeyEvent(step.key, step.modifiers...))
		if d := tb.playHead() - at - step.want; d > 1e-5 || d < -1e-5 {
			t.Errorf("%q goes from %v to %v s, want %v further", step.key, at, tb.playHead(), step.want)
		}
	}
	tb.press(" ")
	tb.until("the swing to play", `document.querySelector("#stage-play").innerText === "Pause"`)
	tb.press(" ")
	tb.until("the swing to stop", `document.querySelector("#stage-play").innerText === "Play"`)
}

// The ways to the next and the previous strike lead to the strike, where the tape
// is shown and the line says that it is past.
func stageStrikes(t *testing.T, tb *tab) {
	tb.openPlan(filepath.Join(plansDir, "low-ceiling.json"))
	tb.showStage()
	tb.goToStop("first touch")
	first := tb.playHead()
	tb.find("button", "Next strike or tight place").click()
	if next := tb.playHead(); next <= first || !strings.Contains(tb.line(), " past ceiling") {
		t.Errorf("after the first touch at %v s comes %v s, where it says %q", first, next, tb.line())
	}
	tb.find("button", "Previous strike or tight place").click()
	if got := tb.playHead(); got != first {
		t.Errorf("back again it is %v s, want the first touch at %v", got, first)
	}
	if marks := eval[int](tb, `document.querySelectorAll(".stage-view .burst:not(.is-away)").length`); marks != 3 {
		t.Errorf("%d strike marks in the three drawings, want one each", marks)
	}
	if ticks := eval[int](tb, `document.querySelectorAll(".stage-ticks .is-strikes").length`); ticks == 0 {
		t.Error("the timeline marks no strike")
	}
}

// What may be touched is at least so large, CSS px.
func stageTargets(want float64) func(t *testing.T, tb *tab) {
	return func(t *testing.T, tb *tab) {
		tb.showStage()
		small := eval[[]string](tb, fmt.Sprintf(`[...document.querySelectorAll("#stage-root :is(button, select, input)")].filter((e) => {
			const { width, height } = e.getBoundingClientRect();
			return width > 0 && !e.closest(".stage-note") && (width < %[1]v || height < %[1]v);
		}).map((e) => e.ariaLabel ?? e.innerText)`, want))
		if len(small) > 0 {
			t.Errorf("smaller than %v px: %q", want, small)
		}
		tb.axe("the stage", "#stage")
	}
}
