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

// sheets are the tabs of the index as they are named on a wide window; the first
// is what a visit opens.
var sheets = []string{"swing", "stand", "overhead", "others", "ball", "build", "projector", "room", "sure"}

// openSheet chooses a sheet by its tab and waits until it is whole.
func (tb *tab) openSheet(name string) {
	tb.t.Helper()
	eval[bool](tb, `(document.querySelector("[data-sheet=`+name+`]").click(), true)`)
	tb.until("the sheet "+name, `document.documentElement.dataset.sheet === `+quote(name)+` && document.documentElement.dataset.busy === "no"`)
	switch name {
	case "stand", "overhead", "others":
		tb.until("the map", `document.querySelector("#view-plan").dataset.busy === "no"`)
	case "ball":
		tb.untilBall()
	case "build", "projector":
		tb.until("the sheet "+name+" worked out", `document.querySelector("#`+name+`").dataset.busy === "no"`)
		if said := eval[string](tb, `document.querySelector("#`+name+`-said").innerText`); said != "" {
			tb.t.Fatalf("instead of the sheet %s there is %q", name, said)
		}
	case "room": // its head is laid out anew when the rooms to start from come
		tb.until("the rooms and the walls", `!document.querySelector("#rooms").hidden && document.querySelectorAll("[data-wall]").length === 3`)
	}
}

// Every sheet on a phone and on a desktop, the one by lamplight (with -shots at all sizes): nothing sticks out
// sideways, also when the desktop is zoomed in four times, and the accessibility checker
// finds nothing. There everything has the longest names that nothing breaks, or such as
// would be more than text. With -shots the window and the whole page are written down.
func TestSheets(t *testing.T) {
	t.Parallel()
	for _, view := range []size{desktop, tablet, phone} {
		for _, scheme := range []string{"light", "dark"} {
			if *shots == "" && (view == tablet || (scheme == "dark") != (view == desktop)) {
				continue // the colours are the same at every size; the tablet is for pictures, its layout is TestLayoutShift's too
			}
			t.Run(view.name+"-"+scheme, func(t *testing.T) {
				t.Parallel()
				tb := open(t, noGL, view)
				tb.prefer("prefers-color-scheme", scheme)
				switch {
				case *shots != "":
					tb.goTo("/") // pictures show the whole demonstration
				case view == desktop:
					tb.goTo(hostile)
				default:
					tb.goTo(light)
				}
				tb.ready()
				for _, sheet := range sheets {
					t.Run(sheet, func(t *testing.T) {
						tb.in(t)
						tb.openSheet(sheet)
						tb.fits(sheet)
						if all := eval[string](tb, `document.body.innerText + (document.querySelector("img[src=x]") ? " A name has become a picture." : "")`); view == desktop && *shots == "" && sheet == "swing" && !strings.Contains(all, markup) || strings.Contains(all, "A name has") {
							t.Errorf("the name %s is not shown as text", markup)
						}
						tb.shootSheet(sheet + "-" + view.name + "-" + scheme)
						if view == desktop && *shots == "" {
							tb.resize(narrowest)
							tb.frames60(2) // drawings follow their place
							if over := tb.sideways(); over > 0 {
								t.Errorf("%s at 320 px: the page is %d px too wide; the widest: %s", sheet, over, tb.widest())
							}
							tb.resize(lowest)
							if over := eval[[]string](tb, `[...document.querySelectorAll("body *")].filter((e) => e.checkVisibility() && ["fixed", "sticky"].includes(getComputedStyle(e).position)).map((e) => e.className)`); len(over) > 0 {
								t.Errorf("in a low window %q lies over the page", over)
							}
							tb.resize(view)
						}
					})
				}
			})
		}
	}
}

// fits holds the page to its window's width and to the accessibility checker.
func (tb *tab) fits(what string) {
	tb.t.Helper()
	if over := tb.sideways(); over > 0 {
		tb.t.Errorf("%s: the page is %d px too wide; the widest: %s", what, over, tb.widest())
	}
	tb.axe(what)
}

// shootSheet writes the window and the whole page, when asked to.
func (tb *tab) shootSheet(name string) {
	tb.t.Helper()
	if *shots == "" {
		return
	}
	if err := os.MkdirAll(*shots, 0o755); err != nil {
		tb.t.Fatal(err)
	}
	tb.top()
	_, window := tb.picture()
	whole, err := chromedp.Run(tb.ctx, chromedp.FullScreenshot(100))
	if err != nil {
		tb.t.Fatal(err)
	}
	for file, data := range map[string][]byte{name + ".png": window, name + "-whole.png": whole} {
		if err := os.WriteFile(filepath.Join(*shots, file), data, 0o644); err != nil {
			tb.t.Fatal(err)
		}
	}
}

// The index works as tabs do: arrow keys go round, the address names the sheet,
// Back goes to the one before, a reload opens it again, and the link stays.
func TestIndex(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, light)
	shown := func(want string) {
		t.Helper()
		tb.until("the sheet "+want, `document.documentElement.dataset.sheet === `+quote(want))
	}
	shown("swing")
	link := eval[string](tb, `new URLSearchParams(location.hash.slice(1)).get("p")`)
	if link == "" {
		t.Fatal("the address holds no plan")
	}
	eval[bool](tb, `(document.querySelector("[aria-selected=true]").focus(), true)`)
	tb.press(kb.ArrowRight)
	shown("stand")
	tb.press(kb.End)
	shown("sure")
	tb.press(kb.ArrowRight)
	shown("swing")
	tb.press(kb.ArrowLeft)
	shown("sure")
	eval[bool](tb, `(history.back(), true)`)
	shown("swing")
	tb.find("tab", "Overhead").click()
	shown("overhead")
	tb.reload()
	tb.ready()
	shown("overhead")
	if now := eval[string](tb, `new URLSearchParams(location.hash.slice(1)).get("p")`); now != link {
		t.Errorf("the link in the address = %.40q, want %.40q: choosing sheets must not change it", now, link)
	}
}
