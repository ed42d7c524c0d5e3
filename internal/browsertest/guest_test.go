//go:build browser

package browsertest

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"wideberth/internal/sim/plan"
)

// guest opens the view of the i-th guest on the sheet where everyone stands.
func (tb *tab) guest(i int) {
	tb.t.Helper()
	tb.openSheet("stand")
	tb.comeToMarks()
	eval[bool](tb, fmt.Sprintf(`(document.querySelectorAll("#marks-list .mark-row > button")[%d].click(), true)`, i))
	tb.until("the guest's view", `document.querySelector("#guest")?.open`)
}

// shootWindow writes the window as it is, when asked to.
func (tb *tab) shootWindow(name string) {
	tb.t.Helper()
	if *shots == "" {
		return
	}
	_, window := tb.picture()
	if err := os.WriteFile(filepath.Join(*shots, name+".png"), window, 0o644); err != nil {
		tb.t.Fatal(err)
	}
}

// guestName is who is shown.
func (tb *tab) guestName() string {
	tb.t.Helper()
	return strings.TrimSpace(tb.section("#guest-title"))
}

// lastClub chooses the last club of the guest who is shown.
func (tb *tab) lastClub() {
	tb.t.Helper()
	eval[bool](tb, `(() => {
		const s = document.querySelector("#guest-club");
		s.selectedIndex = s.options.length - 1;
		s.dispatchEvent(new Event("change"));
		return true;
	})()`)
}

// A guest's view is one screen at every size, every guest's, also of those with the longest
// names: nothing scrolls,
// nothing is cut, the plan is there, and from across the room the sentence and the
// distances can be read.
func TestGuestFits(t *testing.T) {
	t.Parallel()
	tb := openPage(t, noGL, desktop, withDrivers(2, func(p *plan.Plan) { p.Clubs = plan.Demo().Clubs[:2] })+"&sheet=stand")
	long := narrowest
	long.name = "long names"
	for _, view := range []size{desktop, narrowest, {"beamer", 1920, 1080}, long} {
		t.Run(view.name, func(t *testing.T) {
			tb.in(t)
			if view == long {
				tb.again(hostile + "&sheet=stand")
			}
			tb.resize(view)
			tb.guest(0)
			for i := range 4 {
				name := tb.guestName()
				if i >= 2 { // the second round with another club, of which there is more to say
					tb.lastClub()
				}
				got := eval[struct {
					Over, Sideways, Wide, Tall, Figure, Feet int
					Out                                      []string
					Apart                                    bool
					Sentence, Tape                           float64
				}](tb, `(() => {
					const sheet = document.querySelector(".guest-sheet");
					const svg = document.querySelector(".guest-drawing").getBoundingClientRect();
					const parts = [...sheet.querySelectorAll("h2, select, button, #guest-sentence, dt, dd, .guest-drawing, .hint, summary")].filter((e) => !e.closest(".guest-more"));
					const size = (selector) => parseFloat(getComputedStyle(sheet.querySelector(selector)).fontSize);
					return {
						Over: sheet.scrollHeight - sheet.clientHeight, Sideways: sheet.scrollWidth - sheet.clientWidth,
						Wide: Math.round(svg.width), Tall: Math.round(svg.height),
						Figure: sheet.querySelectorAll(".guest-figure .capsule").length, Feet: sheet.querySelectorAll(".guest-foot").length,
						Out: parts.filter((e) => { const r = e.getBoundingClientRect(); return r.left < 0 || r.top < 0 || r.right > innerWidth + 1 || r.bottom > innerHeight + 1; }).map((e) => e.outerHTML.slice(0, 60)),
						Apart: (([a, b]) => a.right <= b.left || a.bottom <= b.top)([".guest-drawing", ".guest-tapes"].map((one) => sheet.querySelector(one).getBoundingClientRect())),
						Sentence: size("#guest-sentence"), Tape: size("dd"),
					};
				})()`)
				if got.Over > 0 || got.Sideways > 0 || len(got.Out) > 0 {
					t.Errorf("%s: %d px too tall, %d too wide; outside the window: %q", name, got.Over, got.Sideways, got.Out)
				}
				if !got.Apart {
					t.Errorf("%s: the plan lies over the distances", name)
				}
				if got.Tall < 100 || got.Wide < 140 {
					t.Errorf("%s: the plan is %d × %d px", name, got.Wide, got.Tall)
				}
				if got.Figure < 19 || got.Feet != 2 {
					t.Errorf("%s: %d limbs and %d feet are drawn, want golfer and club whole", name, got.Figure, got.Feet)
				}
				if view.width >= desktop.width && (got.Sentence < 40 || got.Tape < 40) {
					t.Errorf("%s: the sentence is %.0f px and the tapes %.0f, want 40 to be read from across the room", name, got.Sentence, got.Tape)
				}
				tb.shootWindow(fmt.Sprintf("guest-%s-%d", view.name, i))
				tb.press(kb.ArrowRight)
				if now := tb.guestName(); now == name {
					t.Fatalf("the right arrow stays with %s", name)
				}
			}
			tb.axe("the guest's view, "+view.name, "#guest")
			tb.press(kb.Escape)
			tb.until("the page again", `document.querySelector("#guest") === null`)
		})
	}
}

// A guest who holds the phone.
func TestGuests(t *testing.T) {
	onePage(t, noGL, phone, light,
		fact{"shown", guestShown},
		fact{"by turn", guestsByTurn},
		fact{"among others", guestAmongOthers})
}

// Arrows, buttons and swipes go to the next guest and the one before, round and
// round; the club is chosen there; Escape leaves to the button that was pressed.
func guestsByTurn(t *testing.T, tb *tab) {
	tb.openPlan(filepath.Join(plansDir, "clear-room.json"))
	tb.guest(0)
	names := eval[[]string](tb, `[...document.querySelectorAll("#marks-list h3")].map((e) => e.textContent.trim())`)
	if len(names) < 2 {
		t.Fatalf("only %q stand there", names)
	}
	at := func(what string, i int) {
		t.Helper()
		if got := tb.guestName(); got != names[i] {
			t.Errorf("%s shows %q, want %q", what, got, names[i])
		}
	}
	swipe := func(dx int) {
		t.Helper()
		eval[bool](tb, fmt.Sprintf(`(() => {
			const sheet = document.querySelector(".guest-sheet");
			const point = (type, x) => sheet.dispatchEvent(new PointerEvent(type, {bubbles: true, pointerId: 7, pointerType: "touch", clientX: x, clientY: 300}));
			point("pointerdown", 200);
			point("pointerup", 200 + %d);
			return true;
		})()`, dx))
	}
	last := len(names) - 1
	at("the first button", 0)
	tb.press(kb.ArrowRight)
	at("the right arrow", 1)
	tb.press(kb.ArrowLeft)
	tb.press(kb.ArrowLeft)
	at("the left arrow twice", last)
	tb.find("button", "Next ›").click()
	at("Next", 0)
	tb.find("button", "‹ Previous").click()
	at("Previous", last)
	swipe(-120)
	at("a swipe to the left", 0)
	swipe(20)
	at("a short swipe", 0)
	swipe(120)
	at("a swipe to the right", last)
	tb.press(kb.ArrowRight)

	heels := `document.querySelectorAll("#guest .guest-tapes dd")[2].innerText`
	before := eval[string](tb, heels)
	tb.lastClub()
	if now := eval[string](tb, heels); now == before {
		t.Errorf("with another club the heels are still %q from the wall", now)
	}
	if got := tb.section("#guest-sentence"); !strings.Contains(got, " nearest thing is ") {
		t.Errorf("with another club the guest reads %q, want the nearest thing", got)
	}
	tb.press(kb.Escape)
	tb.until("the page again", `document.querySelector("#guest") === null`)
	if got := eval[string](tb, `document.activeElement.innerText`); got != "Show "+names[0] {
		t.Errorf("the focus is on %q, want the button that was pressed", got)
	}
}

// On every map the golfer and what the swing sweeps move with the tee at once,
// before anything is answered, and stay in the room; let go, they are drawn there.
func golferFollowsTee(t *testing.T, tb *tab) {
	for _, sheet := range []string{"stand", "overhead", "others"} {
		t.Run(sheet, func(t *testing.T) {
			tb.in(t)
			tb.openSheet(sheet)
			tb.untilMaps()
			address := eval[string](tb, "location.hash")
			// One task: no answer can come in between.
			got := eval[struct {
				Golfer, Map [2]float64
				Handle      [2]float64
				Limbs       int
				Clip        bool
			}](tb, `(() => {
				const plan = document.querySelector("#view-plan");
				const where = (selector) => { const m = plan.querySelector(selector)?.transform.baseVal.consolidate()?.matrix; return m ? [m.e, m.f] : [0, 0]; };
				const handle = plan.querySelector(".handle-tee");
				const from = where(".handle-tee");
				const at = handle.querySelector(".handle-ring").getBoundingClientRect();
				const event = (type, dx, dy) => new PointerEvent(type, {bubbles: true, pointerId: 5, button: 0, clientX: at.x + 10 + dx, clientY: at.y + 10 + dy});
				handle.dispatchEvent(event("pointerdown", 0, 0));
				dispatchEvent(event("pointermove", -40, 30));
				const to = where(".handle-tee");
				return {
					Golfer: where(".golfer [data-follows]"), Map: where(".map-moving [data-follows]"), Handle: [to[0] - from[0], to[1] - from[1]],
					Limbs: plan.querySelectorAll(".golfer .capsule").length, Clip: plan.querySelector(".golfer > g").hasAttribute("clip-path"),
				};
			})()`)
			near := func(a, b [2]float64) bool { return math.Abs(a[0]-b[0]) < 0.3 && math.Abs(a[1]-b[1]) < 0.3 }
			if got.Handle[0] > -20 || !near(got.Golfer, got.Handle) {
				t.Errorf("the handle moved by %v, the golfer by %v", got.Handle, got.Golfer)
			}
			if sheet != "stand" && !near(got.Map, got.Handle) {
				t.Errorf("the handle moved by %v, what is swept on the map by %v", got.Handle, got.Map)
			}
			if got.Limbs < 19 || !got.Clip {
				t.Errorf("%d limbs are drawn, kept to the room: %v", got.Limbs, got.Clip)
			}
			tb.until("what it would mean", `!document.querySelector("#tee-reading").hidden && document.querySelector("#tee-reading").innerText.length > 20`)
			left := `(([a, b]) => a.left - b.left)(["#view-plan .ln-mat", "#view-plan svg.view"].map((one) => document.querySelector(one).getBoundingClientRect()))`
			moved := eval[float64](tb, left)
			eval[bool](tb, `(dispatchEvent(new PointerEvent("pointerup", {pointerId: 5})), true)`)
			tb.until("another address", `location.hash !== `+quote(address))
			tb.until("the tee to lie still", `document.querySelector("#view-plan").dataset.moving === "no"`)
			// Another swing may be the tightest there, with other feet; along the wall the
			// mat lies about the ball alike.
			if now := eval[float64](tb, left); math.Abs(now-moved) > 4 {
				t.Errorf("let go, the mat is drawn at %v, want about %v", now, moved)
			}
			if got := eval[string](tb, `document.querySelector(".golfer [data-follows]").getAttribute("transform")`); got != "translate(0.0 0.0)" {
				t.Errorf("let go, the golfer is still shifted by %q, want it drawn anew", got)
			}
		})
	}
}

// Each map says under its own name what it shows and for whom, in the caption, in
// the key and for who cannot see it; nothing of another map is left.
func mapsAreNamed(t *testing.T, tb *tab) {
	for _, tt := range []struct{ sheet, caption, key string }{
		{"stand", "where the ball may lie", "no place for a tee"},
		{"overhead", "how low a thing may hang", "nothing may hang"},
		{"others", "where others may be", "others may be here"},
	} {
		t.Run(tt.sheet, func(t *testing.T) {
			tb.in(t)
			tb.openSheet(tt.sheet)
			tb.untilMaps()
			caption := tb.section("#view-plan figcaption")
			alt := eval[string](tb, `document.querySelector("#view-plan .alt").textContent + document.querySelector("#view-plan svg.view").getAttribute("aria-label")`)
			if want := tt.caption + ", for everybody with every club"; !strings.Contains(caption, want) || strings.Count(alt, want) != 2 || strings.Contains(alt, "tightest moment") {
				t.Errorf("the caption = %q and the text alternatives %q, want %q", caption, alt, want)
			}
			key := eval[string](tb, `[...document.querySelectorAll("#view-plan .map-key")].filter((e) => e.offsetParent !== null).map((e) => e.innerText).join("|")`)
			if strings.Contains(key, "|") || !strings.Contains(key, tt.key) || !strings.Contains(key, "Tall guest, driver") {
				t.Errorf("the key = %q, want one with %q and the golfer", key, tt.key)
			}
		})
	}
	for _, tt := range []struct{ value, want string }{{"Host", "for Host with every club"}, {"", "for everybody with every club"}} {
		eval[bool](tb, `(() => { const s = document.querySelector("#map-player"); s.value = `+quote(tt.value)+`; s.dispatchEvent(new Event("change")); return true; })()`)
		if got := tb.section("#view-plan figcaption"); !strings.Contains(got, tt.want) {
			t.Errorf("with the player %q the caption = %q", tt.value, got)
		}
	}
}

// A seat is added and taken away beside its map; one sentence says how all fare.
func seatsBesideTheMap(t *testing.T, tb *tab) {
	tb.openSheet("others")
	tb.untilMaps()
	if got := tb.section(".map-summary"); !strings.HasPrefix(got, "Both seats are clear of clubs and of balls on their first flight.") {
		t.Errorf("the first sentence = %q", got)
	}
	count := func(n int) string {
		return fmt.Sprintf(`[...document.querySelectorAll("#map-panel .map-things > li")].filter((e) => e.offsetParent !== null).length === %d`, n)
	}
	tb.find("button", "Add a seat").click()
	tb.until("three seats", count(3))
	tb.untilMaps()
	tb.find("button", "Remove bench").click()
	tb.until("two seats", count(2))
	if got := tb.section("#map-panel"); strings.Contains(got, "Bench") || !strings.Contains(got, "Stool") {
		t.Errorf("after the bench was removed: %q", got)
	}
}

// untilMaps waits until the map of the sheet, on Stand with the marks, is that of the plan shown.
func (tb *tab) untilMaps() {
	tb.t.Helper()
	tb.until("the maps", `document.documentElement.dataset.busy === "no" && document.querySelector("#view-plan").dataset.busy === "no" && (document.querySelector("#marks").hidden || document.querySelector("#marks").dataset.busy === "no")`)
}
