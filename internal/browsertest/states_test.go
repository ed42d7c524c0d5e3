//go:build browser

package browsertest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// The page in its main states on a phone, for pictures at three sizes: the verdict is the one the room
// deserves, nothing sticks out sideways, the accessibility checker finds
// nothing. With -shots each is written down as a picture, and then with the scene.
func TestStates(t *testing.T) {
	t.Parallel()
	states := []struct {
		name, plan string
		want       []string // parts of the verdict
		then       func(tb *tab)
	}{
		{"demo", "", []string{"Tall guest"}, nil},
		{"clear", "clear-room.json", []string{"Clear"}, nil},
		{"ceiling-strike", "backswing.json", []string{"Strikes", "ceiling", "backswing"}, nil},
		{"wall-strike", "narrow.json", []string{"Strikes", "wall"}, nil},
		{"left-hander", "left-hander.json", []string{"Left-handed friend"}, (*tab).chooseLeftHander},
		{"bad-input", "low-ceiling.json", []string{"Strikes"}, (*tab).typeNonsense},
	}
	browser := noGL
	if *shots != "" {
		browser = withGL
	}
	views := []size{phone}
	if *shots != "" {
		views = []size{desktop, tablet, phone}
	}
	for _, view := range views {
		t.Run(view.name, func(t *testing.T) {
			t.Parallel()
			tb := openPage(t, browser, view, "/")
			for _, state := range states {
				t.Run(state.name, func(t *testing.T) {
					tb.in(t)
					tb.openSheet("swing")
					if state.plan != "" { // the demonstration room is what a first visit opens
						tb.openPlan(filepath.Join(plansDir, state.plan))
					}
					if *shots != "" {
						tb.loadScene()
						tb.seekTightest()
					}
					if state.then != nil {
						state.then(tb)
					}
					verdict := tb.verdict()
					for _, part := range state.want {
						if !strings.Contains(verdict, part) {
							t.Errorf("the verdict = %q, want it to say %q", verdict, part)
						}
					}
					if over := tb.sideways(); over > 0 {
						t.Errorf("the page is %d px too wide; the widest: %s", over, tb.widest())
					}
					if view == desktop || state.name == "bad-input" { // the sheets as such are checked at every size elsewhere
						tb.axe(state.name + " on a " + view.name)
					}
					tb.shoot(state.name + "-" + view.name)
				})
			}
		})
	}
}

// chooseLeftHander presses a cell of the left-hander in the table of everyone.
func (tb *tab) chooseLeftHander() {
	tb.t.Helper()
	eval[bool](tb, `([...document.querySelectorAll("#matrix button")].find((b) => JSON.parse(b.dataset.key)[0] === "Left-handed friend").click(), true)`)
	tb.untilVerdict("Left-handed friend")
	tb.until("the answer", `document.documentElement.dataset.busy === "no"`)
}

// typeNonsense types a ceiling that cannot be.
func (tb *tab) typeNonsense() {
	tb.t.Helper()
	tb.openSheet("room")
	tb.find("textbox", "Ceiling height").fill("400 m")
	tb.press(kb.Tab)
	tb.until("the field to be marked", `document.querySelector('[data-path="room.height"]').getAttribute("aria-invalid") === "true"`)
}

// shoot writes the window at its top, the window at the scene, and the whole page,
// when asked to.
func (tb *tab) shoot(name string) {
	tb.t.Helper()
	if *shots == "" {
		return
	}
	if err := os.MkdirAll(*shots, 0o755); err != nil {
		tb.t.Fatal(err)
	}
	const best = 100 // the quality that makes chromedp write PNG
	whole, err := chromedp.Run(tb.ctx, chromedp.FullScreenshot(best))
	if err != nil {
		tb.t.Fatal(err)
	}
	tb.top()
	_, top := tb.picture()
	eval[bool](tb, `(document.querySelector("#stage").scrollIntoView({block: "start", behavior: "instant"}), true)`)
	_, stage := tb.picture()
	for file, data := range map[string][]byte{name + ".png": top, name + "-scene.png": stage, name + "-whole.png": whole} {
		if err := os.WriteFile(filepath.Join(*shots, file), data, 0o644); err != nil {
			tb.t.Fatal(err)
		}
	}
}
