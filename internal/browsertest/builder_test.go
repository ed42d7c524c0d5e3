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

// edited does what makes another plan, and waits until the address keeps it and a sheet of
// the builder's is that of it. That the sheet is busy may be over before anybody looks.
func (tb *tab) edited(what, sheet string, does func()) {
	tb.t.Helper()
	address := eval[string](tb, "location.hash")
	does()
	tb.until(what, `location.hash !== `+quote(address))
	tb.untilSheet(sheet)
}

// mouse does one thing with the left button held.
func (tb *tab) mouse(kind input.DispatchMouseEventType, x, y float64) {
	tb.t.Helper()
	if _, err := chromedp.Call(tb.ctx, input.DispatchMouseEvent, input.DispatchMouseEventParams{Type: kind, X: x, Y: y, Button: input.MouseButtonLeft, Buttons: 1, ClickCount: 1}); err != nil {
		tb.t.Fatal(err)
	}
}

// Somebody lays a floor, moves a cup, types a price and reads where a figure comes
// from; then hangs the projector elsewhere, drags its lens, and sees its shadow on the
// stage. Nothing of it is fetched before.
func TestBuilder(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, everybody+"&sheet=sure") // only the left-hander's balls meet a bare wall
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
	tb.edited("the cup moved", "build", func() {
		tb.mouse(input.DispatchMouseEventTypeMousePressed, at[0], at[1])
		tb.mouse(input.DispatchMouseEventTypeMouseMoved, at[0]-60, at[1])
		tb.mouse(input.DispatchMouseEventTypeMouseReleased, at[0]-60, at[1])
	})
	_, after := tb.inAddress()
	if dx := after.Build.Cups[0].X - before.Build.Cups[0].X; dx > -0.3 || after.Build.Cups[0].Y != before.Build.Cups[0].Y {
		t.Errorf("dragged 60 px to the left the cup went %v m", dx)
	}
	keys := tb.find("spinbutton", "Cup 2, from the right wall")
	tb.edited("the cup moved by a key", "build", func() {
		keys.click()
		tb.press(kb.ArrowDown)
		tb.press(kb.Tab)
	})
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
	tb.edited("a wider door", "build", func() {
		wide.fill("3 ft")
		tb.press(kb.Tab)
	})
	if _, s := tb.inAddress(); len(s.Build.Walls.Doors) != 1 || s.Build.Walls.Doors[0].Width != 0.9144 {
		t.Errorf("doors %+v", s.Build.Walls.Doors)
	}
	if said := eval[string](tb, `document.querySelector("#build").innerText`); !strings.Contains(said, "lock it while anybody swings") {
		t.Error("nothing is said of the door")
	}
	// The stock is one's own from its first change, and the usual again.
	eval[bool](tb, `([...document.querySelectorAll("#build details")].filter((fold) => /What there is to lay|^1\/4 panel/.test(fold.querySelector("summary").innerText)).forEach((fold) => { fold.open = true; }), true)`)
	thick := `document.querySelector("#build [data-path='build.stock[0].most']")`
	if was := eval[string](tb, thick+".value"); was != "0.281 in" {
		t.Errorf("the first panel is at most %q thick", was)
	}
	eval[bool](tb, `((input) => { input.focus(); input.value = "8 mm"; input.dispatchEvent(new Event("input")); input.dispatchEvent(new Event("change")); return true; })(`+thick+`)`)
	tb.until("a stock of one's own", `[...document.querySelectorAll("#build button")].some((b) => b.innerText === "Back to the usual stock")`)
	tb.untilSheet("build")
	if _, s := tb.inAddress(); s.Build.Stock[0].Most != 0.008 || len(s.Build.Stock) != len(spec.UsualStock()) {
		t.Errorf("stock %+v", s.Build.Stock)
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
	// The lens is dragged in elevation: its verdict follows on the way, and Undo takes back
	// the whole drag. Then by a key.
	told := eval[string](tb, `document.querySelector("#projector .build-lead").innerText`)
	grip := eval[[2]float64](tb, `((handle) => { handle.scrollIntoView({block: "center", behavior: "instant"}); const r = handle.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })(document.querySelector("#projector .build-figure.build-side [role=slider]"))`)
	tb.mouse(input.DispatchMouseEventTypeMousePressed, grip[0], grip[1])
	for i := 1; i <= 4; i++ {
		tb.mouse(input.DispatchMouseEventTypeMouseMoved, grip[0]+15*float64(i), grip[1]+5*float64(i))
	}
	tb.until("a verdict on the way", `document.querySelector("#projector .build-lead").innerText !== `+quote(told))
	if _, on := tb.inAddress(); on.Projector.Lens != s.Projector.Lens {
		t.Errorf("while it is dragged the plan has the lens at %v", on.Projector.Lens)
	}
	tb.edited("the lens let go", "projector", func() {
		tb.mouse(input.DispatchMouseEventTypeMouseReleased, grip[0]+60, grip[1]+20)
	})
	if _, d := tb.inAddress(); d.Projector.Lens[0] < s.Projector.Lens[0]+0.3 || d.Projector.Lens[2] > s.Projector.Lens[2]-0.1 || d.Projector.Lens[1] != s.Projector.Lens[1] {
		t.Errorf("dragged on and down the lens went from %v to %v", s.Projector.Lens, d.Projector.Lens)
	}
	tb.edited("the drag undone", "projector", func() { tb.find("button", "Undo").click() })
	if _, d := tb.inAddress(); d.Projector.Lens != s.Projector.Lens {
		t.Errorf("undone the lens is at %v, not at %v", d.Projector.Lens, s.Projector.Lens)
	}
	eval[bool](tb, `(document.querySelector("#projector .build-figure.build-plan [role=slider]").focus(), true)`)
	for range 2 {
		tb.edited("the lens moved by a key", "projector", func() { tb.press(kb.ArrowUp) })
	}
	if _, d := tb.inAddress(); math.Abs(d.Projector.Lens[1]-s.Projector.Lens[1]-2*0.0254) > 1e-4 {
		t.Errorf("by two keys the lens went from %v to %v", s.Projector.Lens, d.Projector.Lens)
	}
	// Both conventions of the offset are one, and the link keeps what was typed.
	eval[bool](tb, `([...document.querySelectorAll("#projector details")].find((fold) => fold.querySelector("summary").innerText.includes("Its data sheet")).open = true)`)
	far := tb.find("textbox", "Offset B, most")
	far.fill("165")
	tb.press(kb.Tab)
	tb.until("the other convention", `document.querySelector("#projector [data-path='projector.offset[1]']").value === "65"`)
	tb.untilSheet("projector")
	tb.axe("the projector, moved", "#projector")
	if _, d := tb.inAddress(); len(d.Projector.Offset) != 2 || d.Projector.Offset[1] != 0.65 {
		t.Errorf("offset %v", d.Projector.Offset)
	}
	// On the stage the shadow lies on the screen once it is asked for.
	tb.openSheet("swing")
	tb.showStage()
	tb.find("button", "Shadow of golfer and club on the image").click()
	tb.until("the shadow", `/^Shadow: (none|under 0.1 %|[0-9.]+ %)$/.test(document.querySelector(".stage-dark").innerText)`)
	tb.axe("the stage with a shadow", "#stage")
}
