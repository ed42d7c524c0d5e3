//go:build browser

package browsertest

import (
	"math"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"wideberth/internal/link"
	"wideberth/internal/sim/build/spec"
	"wideberth/internal/sim/plan"
)

// inAddress is the plan that the address keeps, and what it says of building.
func (tb *tab) inAddress() (plan.Plan, spec.Spec) {
	tb.t.Helper()
	c, err := link.Decode(eval[string](tb, "location.hash"))
	if err != nil {
		tb.t.Fatal(err)
	}
	s, err := spec.Of(c)
	if err != nil {
		tb.t.Fatal(err)
	}
	return c.Plan(), s
}

// untilSheet waits until a sheet of the builder's is that of the plan.
func (tb *tab) untilSheet(name string) {
	tb.t.Helper()
	tb.until("the sheet "+name+" worked out", `document.querySelector("#`+name+`").dataset.busy === "no" && document.documentElement.dataset.busy === "no"`)
}

// Somebody lays a floor, moves a cup, types a price and reads where a figure comes
// from; then hangs the projector elsewhere. Nothing of it is fetched before.
func TestBuilder(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, light+"&sheet=sure")
	const fetched = `performance.getEntriesByType("resource").filter((r) => /builder/.test(r.name)).length`
	tb.until("the page at rest", `document.documentElement.dataset.busy === "no"`)
	if n := eval[int](tb, fetched); n != 0 {
		t.Errorf("%d files of the builder are fetched before its sheet is opened", n)
	}
	tb.openSheet("build")

	// A figure opens to its rule and source.
	if said := eval[string](tb, `((fold) => (fold.querySelector("summary").click(), fold.innerText))(document.querySelector("#build .fact"))`); !strings.Contains(said, "APA") || !strings.Contains(said, "as read") {
		t.Errorf("the first figure opens to %q, want its rule and source", said)
	}
	// A stack is laid, and is then the floor.
	lay := eval[string](tb, `document.querySelector("#build td button").getAttribute("aria-label")`)
	tb.find("button", lay).click()
	tb.until("the floor laid", `document.querySelector("#build tbody tr").innerText.includes("laid")`)
	tb.untilSheet("build")
	p, _ := tb.inAddress()
	if names := strings.TrimPrefix(lay, "Lay it: "); len(p.Floor.Layers) != strings.Count(names, " + ")+1 {
		t.Errorf("%q makes the floor %+v", names, p.Floor.Layers)
	}
	// A price makes a cost, a word is refused beside it.
	price := tb.find("textbox", "Unit price of putting cup")
	price.fill("cheap")
	tb.press(kb.Tab)
	tb.until("the sentence beside the price", `document.querySelector("#build").innerText.includes("“cheap” is not a number")`)
	price.fill("12.5")
	tb.press(kb.Tab)
	tb.until("the total", `document.querySelector(".build-total").innerText.includes("25.00, and")`)
	tb.untilSheet("build")
	// A cup is dragged, and by keys.
	_, before := tb.inAddress()
	at := eval[[2]float64](tb, `((cup) => { cup.scrollIntoView({block: "center", behavior: "instant"}); const r = cup.querySelector(".build-hole").getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })(document.querySelector("[data-cup='1']"))`)
	for _, step := range []struct {
		kind input.DispatchMouseEventType
		dx   float64
	}{{input.DispatchMouseEventTypeMousePressed, 0}, {input.DispatchMouseEventTypeMouseMoved, -60}, {input.DispatchMouseEventTypeMouseReleased, -60}} {
		if _, err := chromedp.Call(tb.ctx, input.DispatchMouseEvent, input.DispatchMouseEventParams{Type: step.kind, X: at[0] + step.dx, Y: at[1], Button: input.MouseButtonLeft, Buttons: 1, ClickCount: 1}); err != nil {
			t.Fatal(err)
		}
	}
	tb.until("the cup moved", `document.querySelector("#build").dataset.busy === "yes"`)
	tb.untilSheet("build")
	_, after := tb.inAddress()
	if dx := after.Build.Cups[0].X - before.Build.Cups[0].X; dx > -0.3 || after.Build.Cups[0].Y != before.Build.Cups[0].Y {
		t.Errorf("dragged 60 px to the left the cup went %v m", dx)
	}
	keys := tb.find("spinbutton", "Cup 2, from the right wall")
	keys.click()
	tb.press(kb.ArrowDown)
	tb.press(kb.Tab)
	tb.until("the cup moved by a key", `document.querySelector("#build").dataset.busy === "yes"`)
	tb.untilSheet("build")
	if _, moved := tb.inAddress(); math.Abs(moved.Build.Cups[1].Y-after.Build.Cups[1].Y+0.0254) > 1e-4 {
		t.Errorf("by a key the cup went from %v to %v", after.Build.Cups[1].Y, moved.Build.Cups[1].Y)
	}
	// Foam goes where balls meet a bare wall.
	tb.find("button", "Add padding, left wall").click()
	tb.until("the foam in the plan", `[...document.querySelectorAll("#build button")].every((b) => b.innerText !== "Add padding, left wall") && document.querySelector("#build").innerText.includes("foam padding")`)
	tb.untilSheet("build")
	if p, _ := tb.inAddress(); len(p.Room.Solids) != 2 || p.Room.Solids[1].Cover != plan.CoverFoam {
		t.Errorf("solids %+v", p.Room.Solids)
	}
	// A door is added and typed over.
	eval[bool](tb, `[...document.querySelectorAll("#build details")].filter((fold) => fold.querySelector("summary").innerText.includes("Walls as they are")).map((fold) => { fold.open = true; }).length === 1`)
	tb.find("button", "Add a door").click()
	tb.until("the door's fields", `document.querySelector("#build [data-path='build.walls.doors[0].width']") !== null`)
	tb.untilSheet("build")
	wide := tb.find("textbox", "Width of the leaf")
	wide.fill("3 ft")
	tb.press(kb.Tab)
	tb.until("a wider door", `document.querySelector("#build").dataset.busy === "yes"`)
	tb.untilSheet("build")
	if _, s := tb.inAddress(); len(s.Build.Walls.Doors) != 1 || s.Build.Walls.Doors[0].Width != 0.9144 {
		t.Errorf("doors %+v", s.Build.Walls.Doors)
	}
	if said := eval[string](tb, `document.querySelector("#build").innerText`); !strings.Contains(said, "lock it while anybody swings") {
		t.Error("nothing is said of the door")
	}
	tb.axe("what to build, with a cost and a door", "#build")
	tb.shootSheet("build-door")

	// The projector: a shadow frame by frame, a wrong number, and a lens that moves.
	tb.openSheet("projector")
	tb.untilSheet("projector")
	said := eval[string](tb, `document.querySelector(".build-told").innerText`)
	tb.find("slider", "Moment of it").click()
	tb.press(kb.End)
	tb.until("another moment", `document.querySelector(".build-told").innerText !== `+quote(said))
	lens := tb.find("textbox", "Lens, from the back wall")
	lens.fill("30 ft")
	tb.press(kb.Tab)
	tb.until("the sentence at the lens", `document.querySelector("#projector [data-path='projector.lens[0]']").closest(".field").innerText.includes("between the back wall and the screen")`)
	lens.fill("6 ft 6 in")
	tb.press(kb.Tab)
	tb.until("a lens that hangs nowhere", `document.querySelector("#projector").innerText.includes("does not hang in the plan yet")`)
	tb.untilSheet("projector")
	tb.find("button", "Put it here").click()
	tb.until("the projector hung", `document.querySelector("#projector").innerText.includes("It hangs in the plan")`)
	tb.untilSheet("projector")
	p, s := tb.inAddress()
	if len(p.Hung) != 1 || math.Abs(p.Hung[0].Max[0]-s.Projector.Lens[0]) > 1e-4 || math.Abs(s.Projector.Lens[0]-1.9812) > 1e-4 {
		t.Errorf("hung %+v for a lens at %v", p.Hung, s.Projector.Lens)
	}
	tb.axe("the projector, moved", "#projector")
}
